"""After the work: what came off and which marks are left, panel by panel."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.basics.workings import COMMON_PRACTICE
from detailbench.body.names import panel_name
from detailbench.findings.agreement_words import approved_words
from detailbench.findings.changes import PanelChange, changes
from detailbench.findings.limits import panel_list
from detailbench.findings.mark_results import mark_results
from detailbench.findings.states import state_of
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.handover.panels_meant import polished
from detailbench.screens.stages.work_parts.figure_line import FigureLine
from detailbench.screens.stages.work_parts.open_list import Line, OpenList


class AfterPage(QWidget):
    """Every polished panel; the chosen one's change with its working."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self.none = sentence(_("No panel was polished yet."))
        self.level = sentence()
        self.wipe = sentence()
        self.list = OpenList(context.dress, _("Polished panels, before and after"))
        self.change = FigureLine(_("came off"), context)
        self.readings = button(_("To Thickness"), lambda: self._to("thickness"), name=_("Take readings after the work"))
        self.marks = button(_("To Marks"), lambda: self._to("marks"), name=_("Look at the marks after the work"))
        self.list.chosen.connect(self._chosen)
        row = QHBoxLayout()
        row.addWidget(self.readings)
        row.addWidget(self.marks)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(self.none)
        column.addWidget(self.level)
        column.addWidget(self.wipe)
        column.addWidget(self.list, 1)
        column.addWidget(self.change)
        column.addLayout(row)

    def redraw(self) -> None:
        picture = self._context.picture
        panels = polished(picture) if picture is not None else ()
        self.none.setVisible(not panels)
        level = approved_words(picture) if picture is not None else ""
        self.level.setText(level)
        self.level.setVisible(bool(level))
        oily = [p for p in panels if _not_wiped(picture, p)] if picture is not None else []
        self.wipe.setText(
            _("Panel wipe first, then measure and look again: {panels}. Polishing leaves oils ({source}).").format(
                panels=panel_list(oily), source=_(COMMON_PRACTICE)
            )
        )
        self.wipe.setVisible(bool(oily))
        for part in (self.list, self.change):
            part.setVisible(bool(panels))
        if picture is None or not panels:
            return
        found = changes(picture)
        self.list.set_lines([Line(k, panel_words(picture, k, found.get(k))) for k in panels], self._panel(panels))
        change = found.get(self.list.key)
        if change is None:
            self.change.show_value(_("no readings after the work yet"))
        elif change.change is None:
            self.change.show_value(change.why_none or _("no like pair"))
        else:
            working = change.change.working
            self.change.show_value(change_words(change), working)

    def _panel(self, panels: tuple[str, ...]) -> str:
        selected = self._context.selected_panel
        return selected if selected in panels else self.list.key or panels[0]

    def _chosen(self, panel: str) -> None:
        self._context.select_panel(panel)
        self.redraw()

    def _to(self, stage: str) -> None:
        if self.list.key:
            self._context.select_panel(self.list.key)
        self._context.stage_wanted.emit(stage)


def _not_wiped(picture: JobPicture, panel: str) -> bool:
    state = state_of(picture, panel)
    return state.clean != "wiped" and state.cover != "protected"


def change_words(found: PanelChange) -> str:
    """The change of one panel, and whether it may be printed."""
    if found.change is None:
        return found.why_none or _("no like pair")
    if found.for_print:
        return found.change.sentence
    return _("{change}; on the screen only: temperature or gauge check missing").format(change=found.change.sentence)


def panel_words(picture: JobPicture, panel: str, found: PanelChange | None) -> str:
    """A panel's readings and marks after the work, line by line."""
    name = panel_name(panel)
    rows = [name[:1].upper() + name[1:]]
    rows.append(_("no readings after the work yet") if found is None else change_words(found))
    for result in mark_results(picture, panel):
        after = "–" if result.after is None else str(result.after.severity)
        rows.append(
            _("{kind}: {before} → {after}, {says}").format(
                kind=result.kind.name, before=result.mark.severity, after=after, says=result.says
            )
        )
    return "\n".join(rows)
