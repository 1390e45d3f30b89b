"""What must not happen to this car, as the owner says it."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import read_typed
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.kit_names import with_initials
from detailbench.findings.limits import limit_words
from detailbench.findings.limits_bound import bound
from detailbench.moves.limits import AddLimit, StrikeLimit
from detailbench.screens.asking import AskAbout
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, gives_way
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.owner_row import OwnerRow
from detailbench.screens.stages.work_parts.pages import in_line
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job


class LimitsPage(QWidget):
    """The kind first, then where; how much or which words; the list of what stands."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        kinds = (
            ("bar_panel", _("not touched")),
            ("most_off", _("most off")),
            ("no_sanding", _("no sanding")),
            ("no_solvent", _("no solvent")),
            ("other", _("other")),
        )
        self.kind = ChoiceRow(_("owner's limit"), kinds, columns=3)
        self.where = in_line(ChoiceRow(_("for"), (("panel", _("this panel")), ("car", _("whole car"))), columns=2))
        self.most = TextField(_("at most, µm"), of_form=True)
        self.words = TextField(_("in the owner's words"), of_form=True)
        emptied_for_each_job(context, self.most, self.words)
        for field in (self.most, self.words):
            field.line.returnPressed.connect(self._add)
        self.add = button(_("Note this limit"), self._add, role="main")
        self.strike = button(_("Strike out"), self._strike, name=_("Strike out the chosen limit"))
        self.lifts = OwnerRow(context, _("Ask the owner"), _("Ask the owner about the chosen limit"), self._about)
        self.list = gives_way(OpenList(context.dress, _("Owner's limits")), m.target * 2)
        self.kind.set_value("bar_panel")
        self.where.set_value("panel")
        self.kind.chosen.connect(self._kind_chosen)
        self.where.chosen.connect(lambda _key: self.redraw())
        self.list.chosen.connect(lambda _key: self._enable())
        row, does = QHBoxLayout(), QHBoxLayout()
        row.addWidget(self.most, 1)
        row.addWidget(self.words, 3)
        does.addWidget(self.add, 2)
        does.addWidget(self.strike, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.kind)
        column.addWidget(self.where)
        column.addLayout(row)
        column.addLayout(does)
        column.addWidget(self.lifts)
        column.addWidget(self.list, 1)

    def redraw(self) -> None:
        picture = self._context.picture
        kind, panel = self.kind.value, self._context.selected_panel
        self.where.buttons["car"].setEnabled(kind != "bar_panel")
        name = panel_name(panel) if panel else _("this panel")
        self.where.buttons["panel"].setText(name)
        self.most.setVisible(kind == "most_off")
        self.add.setEnabled(picture is not None)
        limits = picture.limits if picture is not None else ()
        lines = []
        for limit in limits:
            words = limit_words(limit)
            words = _("{limit} (lifted)").format(limit=words) if limit.lifted_by else words
            lines.append(Line(limit.id, words if picture is None else with_initials(picture.shop, words, limit)))
        self.list.set_lines(lines)
        self._enable()

    def _kind_chosen(self, kind: str) -> None:
        self.where.set_value("panel" if kind == "bar_panel" else "car")
        self.redraw()

    def _enable(self) -> None:
        picture = self._context.picture
        limit = next((x for x in picture.limits if x.id == self.list.key), None) if picture is not None else None
        binds = limit is not None and picture is not None and bound(picture, limit)
        self.strike.setEnabled(limit is not None and not binds)
        lifts = _("This limit binds by now: only an agreement with the owner lifts it.")
        self.lifts.show_words(lifts if binds else "")
        self.lifts.setVisible(binds and limit is not None and not limit.lifted_by)

    def _about(self) -> AskAbout:
        """A question about the chosen limit."""
        return AskAbout("ask", "limit", limit_id=self.list.key)

    def _add(self) -> None:
        job, kind, panel = self._context.job_id, self.kind.value, self._context.selected_panel
        if job is None:
            return
        if self.where.value == "panel" and not panel:
            self._context.notice(_("Choose the panel on the map first."), "stop")
            return
        try:
            most = _um(self.most.text()) if kind == "most_off" else None
        except BadInput as error:
            self.most.say(str(error))
            return
        self.most.say("")
        panels = (panel,) if self.where.value == "panel" else ()
        place = self.most if kind == "most_off" else self.words
        if self._context.do(AddLimit(job, kind, panels, most, self.words.text()), self, place.say) is not None:
            for field in (self.most, self.words):
                field.clear()

    def _strike(self) -> None:
        job = self._context.job_id
        if job is not None and self.list.key:
            self._context.do(StrikeLimit(job, self.list.key), self)


def _um(text: str) -> float | None:
    """A typed thickness in µm, or None. Raises BadInput."""
    if not text.strip():
        return None
    typed = read_typed(text, expects="plain")
    if typed.value is None or typed.question:
        raise BadInput(typed.question or typed.sentence, given=text)
    return typed.value
