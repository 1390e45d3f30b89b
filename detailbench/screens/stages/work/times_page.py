"""Time planned against time done, panel by panel, as a chart and in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QGraphicsView, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.learning import learned_minutes
from detailbench.findings.processes import group_of
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.look.parts import gives_way, sentence
from detailbench.screens.stages.work.hand import WorkHand
from detailbench.screens.stages.work_parts.figure_line import FigureLine

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
        self.learned = FigureLine(_("by earlier jobs of who is entering"), context)
        self._said = QScrollArea()
        self._said.setWidgetResizable(True)
        self._said.setWidget(self.words)
        self._said.setAccessibleName(_("The chart in words"))
        self._said.setFixedHeight(context.dress.look.measure.px(22))
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(context.dress.look.measure.space("small"))
        self._column.addWidget(self.learned)
        self._column.addWidget(self.none)
        self._column.addWidget(self._said)
        self._column.addStretch(0)

    def redraw(self) -> None:
        picture, standing = self._context.picture, self._hand.standing
        planned = picture is not None and standing is not None and bool(standing.plan.steps)
        self.none.setVisible(not planned)
        self._said.setVisible(planned)
        self._say_learned(picture)
        if self.chart is not None:
            self.chart.setVisible(planned)
        if picture is None or standing is None or not planned:
            return
        from detailbench.screens.charts.from_job import time_planned_done

        chart = self._made()
        chart.show_values(time_planned_done(picture, self._hand.now, standing))
        self.words.setText(chart.words())

    def _say_learned(self, picture: JobPicture | None) -> None:
        """What the same process took this person before, for the finish group of the panel in hand."""
        bench, panel = self._context.bench, self._hand.panel
        group = group_of(picture, panel) if picture is not None and panel else None
        found = None
        if picture is not None and group is not None and bench is not None:
            found = learned_minutes(picture, group.id, bench.person, bench.jobs_with_trials())
        self.learned.setVisible(found is not None)
        if found is not None and group is not None:
            text = _("{group}, planned {minutes} min. {sentence}")
            told = text.format(
                group=_(group.name), minutes=format_number(found.planned_min, 0), sentence=found.sentence
            )
            self.learned.show_value(told, found.learned.working if found.learned.jobs else None)

    def _made(self) -> TimePlannedDone:
        if self.chart is None:
            from detailbench.screens.charts.time_chart import TimePlannedDone

            measure = self._context.dress.look.measure
            self.chart = gives_way(TimePlannedDone(self._context.dress), measure.px(50))
            for plot in self.chart.findChildren(QGraphicsView):
                plot.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
            self._column.insertWidget(2, self.chart, 1)
        return self.chart
