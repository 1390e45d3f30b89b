"""The charts: a panel's places beside its twin and its family, and before beside after; and the same in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QGraphicsView, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import gives_way, sentence
from detailbench.screens.stages.thickness.desk import ThicknessDesk

if TYPE_CHECKING:
    from detailbench.screens.charts.before_after import BeforeAfter
    from detailbench.screens.charts.panel_scatter import PanelScatter


class ChartPart(QWidget):
    """The chart library is loaded when this is first opened."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        m = desk.context.dress.look.measure
        self._seen = ("", False)
        self.scatter: PanelScatter | None = None
        self.change: BeforeAfter | None = None
        self.which = ChoiceRow(
            _("chart"), [("scatter", _("beside the others")), ("change", _("before and after"))], columns=2
        )
        self.which.set_value("scatter")
        self.which.chosen.connect(lambda _key: self.redraw())
        self.words = sentence()
        self._said = QScrollArea()
        self._said.setWidgetResizable(True)
        self._said.setWidget(self.words)
        self._said.setAccessibleName(_("The chart in words"))
        self._said.setFixedHeight(m.px(22))
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(m.space("small"))
        self._column.addWidget(self.which)
        self._column.addWidget(self._said)
        desk.changed.connect(self.redraw)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self.scatter is None:
            self._make()
        self.redraw()

    def _make(self) -> None:
        from detailbench.screens.charts.before_after import BeforeAfter
        from detailbench.screens.charts.panel_scatter import PanelScatter

        dress = self._desk.context.dress
        self.scatter, self.change = PanelScatter(dress), BeforeAfter(dress)
        for chart in (self.scatter, self.change):
            gives_way(chart, dress.look.measure.px(50))
            for plot in chart.findChildren(QGraphicsView):
                plot.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
            self._column.insertWidget(1, chart, 1)

    def redraw(self) -> None:
        """Only while it is open."""
        scatter, change = self.scatter, self.change
        if scatter is None or change is None or not self.isVisible():
            return
        from detailbench.screens.charts.from_job import before_after, panel_scatter

        survey, panel = self._desk.survey, self._desk.panel
        has = survey is not None and bool(panel)
        after = survey is not None and panel in survey.changes
        if (panel, after) != self._seen:  # a panel read again opens on what came of it
            self._seen = (panel, after)
            self.which.set_value("change" if after else "scatter")
        self.which.setVisible(after)
        on_change = after and self.which.value == "change"
        scatter.setVisible(has and not on_change)
        change.setVisible(on_change)
        self._said.setVisible(has)
        if survey is None or not panel:
            return
        picture = survey.picture
        if on_change:
            change.show_values(before_after(picture, panel, survey.changes))
            self.words.setText(change.words())
        else:
            again = any(s.moment == "polished" for s in survey.newest.values())
            seen, found = (survey.newest, survey.odd_newest) if again else (survey.before, survey.odd)
            when = _("as last measured") if again else ""
            scatter.show_values(panel_scatter(picture, panel, seen=seen, found=found, when=when))
            self.words.setText(scatter.words())
