"""The car was here before: its finish groups and paint systems of then, taken over in one press by who says what was
painted since. Never by themselves."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.last_groups import GroupsOffered, groups_offered
from detailbench.moves.groups_as_last import TakeOverGroups
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.wash.words import paint_words


class LastGroupsPart(QWidget):
    """Takes no room while there is nothing to offer."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.says = sentence()
        self.none = button(_("None: take over"), self._none, name=_("Nothing was painted since: take the groups over"))
        self.one = button(_("Only this panel"), self._one)
        row = QHBoxLayout()
        row.setSpacing(m.space("thin"))
        row.addWidget(self.none, 1)
        row.addWidget(self.one, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.says)
        column.addLayout(row)

    def redraw(self) -> None:
        picture, panel = self._context.picture, self._context.selected_panel
        found = groups_offered(picture) if picture is not None else None
        self.setVisible(found is not None)
        if found is None:
            return
        self.says.setText(offered_words(found))
        self.says.setAccessibleName(self.says.text())
        known = bool(panel) and panel in self._context.outline.panels
        self.one.setEnabled(known)
        apart = _("Only {panel} painted since: take the groups over, that panel apart")
        self.one.setAccessibleName(
            apart.format(panel=panel_name(panel))
            if known
            else _("One panel was painted since: choose it on the map first")
        )

    def _none(self) -> None:
        self._take(())

    def _one(self) -> None:
        self._take((self._context.selected_panel,))

    def _take(self, painted: tuple[str, ...]) -> None:
        job = self._context.job_id
        if job is not None:
            self._context.do(TakeOverGroups(job, painted), initiator=self)


def offered_words(found: GroupsOffered) -> str:
    """ "Job 2030-004, 2030-03-08: body, 24 panels, clear over colour. Was a panel painted since?" """
    told = []
    for group in (g for g in found.groups if g.paint_system != "unknown" or len(found.groups) == 1):
        n = _("1 panel") if len(group.panels) == 1 else _("{n} panels").format(n=format_number(len(group.panels)))
        told.append(f"{_(group.name)}, {n}, {paint_words()[group.paint_system]}")
    return _("Finish groups of job {number}, {day}: {groups}. Was a panel painted since?").format(
        number=found.number, day=found.day.isoformat(), groups="; ".join(told)
    )
