"""The History page: the journal, and the trials of all jobs."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.look.parts import area
from detailbench.screens.pages.history.history_view import KEY, HistoryView
from detailbench.screens.pages.history.trials_part import TrialsPart
from detailbench.screens.stages.work_parts.pages import Pages


class HistoryPages(QWidget):
    """Redrawn only while it is in front; what another card asked to be looked for is looked for then."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        area(self, "surface")
        self._context = context
        m = context.dress.look.measure
        self.pages = Pages(context.dress)
        self.journal = HistoryView(context)
        self.trials = TrialsPart(context)
        self.pages.add("journal", _("Journal"), self.journal)
        self.pages.add("trials", _("Trials of all jobs"), self.trials)
        self.pages.turned.connect(lambda _key: self._draw())
        column = QVBoxLayout(self)
        column.setContentsMargins(m.space("wide"), m.space("thin"), m.space("wide"), m.space("thin"))
        column.addWidget(self.pages, 1)
        context.changed.connect(lambda _changes, _who: self._draw())
        context.stage_opened.connect(self._front)

    def _front(self, key: str) -> None:
        if key != KEY:
            return
        sought, self._context.sought = self._context.sought, None
        if sought is not None:
            self.pages.turn("trials")
            self.trials.look_for(sought)
        else:
            self._draw()

    def _draw(self) -> None:
        if self._context.open_stage == KEY and self.pages.page == "trials":
            self.trials.redraw()
