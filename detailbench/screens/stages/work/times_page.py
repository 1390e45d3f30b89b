"""Time planned against time done, panel by panel, as a chart and in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QGraphicsView, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.look.parts import gives_way, sentence
from detailbench.screens.stages.work.hand import WorkHand

if TYPE_CHECKING:
    from detailbench.screens.charts.time_chart import TimePlannedDone


class TimesPage(QWidget):
    """The chart library is loaded when this is first opened and there is a plan to draw."""

    def __init__(self, context: Context, hand: WorkHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self.chart: TimePlannedDone | None = None
        self.none = sentence(_("No process is adopted yet: nothing is planned."))
        self.words = sentence()
        self._said = QScrollArea()
        self._said.setWidgetResizable(True)
        self._said.setWidget(self.words)
        self._said.setAccessibleName(_("The chart in words"))
        self._said.setFixedHeight(context.dress.look.measure.px(22))
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(context.dress.look.measure.space("small"))
        self._column.addWidget(self.none)
        self._column.addWidget(self._said)
        self._column.addStretch(0)

    def redraw(self) -> None:
        picture, standing = self._context.picture, self._hand.standing
        planned = picture is not None and standing is not None and bool(standing.plan.steps)
        self.none.setVisible(not planned)
        self._said.setVisible(planned)
        if self.chart is not None:
            self.chart.setVisible(planned)
        if picture is None or standing is None or not planned:
            return
        from detailbench.screens.charts.from_job import time_planned_done

        chart = self._made()
        chart.show_values(time_planned_done(picture, self._hand.now, standing))
        self.words.setText(chart.words())

    def _made(self) -> TimePlannedDone:
        if self.chart is None:
            from detailbench.screens.charts.time_chart import TimePlannedDone

            measure = self._context.dress.look.measure
            self.chart = gives_way(TimePlannedDone(self._context.dress), measure.px(50))
            for plot in self.chart.findChildren(QGraphicsView):
                plot.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
            self._column.insertWidget(1, self.chart, 1)
        return self.chart
