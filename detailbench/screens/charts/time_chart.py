"""Planned minutes against done, panel by panel."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtGui import QBrush, QColor, QTransform

from detailbench.basics.numbers import format_number, format_quantity
from detailbench.basics.texts import _
from detailbench.screens.charts.chart import Chart
from detailbench.screens.charts.values import PanelTime, TimeValues
from detailbench.screens.look.dress import Dress

PLANNED_HALF, DONE_HALF = 0.36, 0.2  # half heights of the two bars, in rows


class TimePlannedDone(Chart):
    """One row a panel: an open frame as long as the plan, a bar inside as long as the time taken (hatched while it
    runs), the minutes beside them. It grows with its rows; whoever embeds it scrolls.

        chart = TimePlannedDone(context.dress)
        chart.show_values(time_planned_done(context.picture, context.clock.now()))
        layout.addWidget(chart)
    """

    def __init__(self, dress: Dress) -> None:
        super().__init__(dress, _("Time planned and done"))
        self._values = TimeValues((), 0.0)
        self.redraw()

    def show_values(self, values: TimeValues) -> None:
        """Draw these."""
        self._values = values
        self.redraw()

    def words(self) -> str:
        if not self._values.panels:
            return _("Nothing is planned yet.")
        return " ".join([*(_row_words(p) for p in self._values.panels), self._whole()])

    def _whole(self) -> str:
        left = format_quantity(self._values.left_min, _("min"), 0)
        return _("Planned and not done yet: {minutes}.").format(minutes=left)

    def _draw(self) -> None:
        rows = self._values.panels
        self.said.setText(self._whole() if rows else self.words())
        self.said.setVisible(True)
        left, bottom = self.plot.getAxis("left"), self.plot.getAxis("bottom")
        bottom.setStyle(showValues=False)
        bottom.setHeight(1)
        row_px = self.metrics.height() * 1.35
        self.plot.setMinimumHeight(round(max(len(rows), 3) * row_px) + 4)
        if not rows:
            self.show_key()
            return
        going = [_("▨ under way")] if any(p.state == "running" for p in rows) else []
        self.show_key(_("□ planned"), _("■ done"), *going)
        left.setTicks([[(i, p.name) for i, p in enumerate(rows)]])
        left.setWidth(max(self.width_of(p.name) for p in rows) + self.look.measure.px(3))
        self.plot.setYRange(len(rows) - 0.5, -0.5, padding=0)
        self.plot.invertY(True)
        words = [_minutes(p) for p in rows]
        room = max(self.plot.width() - left.width() - 16.0, 1.0)
        free = [(room - self.width_of(w), _length(p)) for p, w in zip(rows, words, strict=True)]
        per_min = min(max(px, 0.2 * room) / minutes for px, minutes in free)
        self.plot.setXRange(0.0, room / per_min, padding=0)
        for i, (panel, text) in enumerate(zip(rows, words, strict=True)):
            self._row(i, panel)
            self.write(text, _length(panel), i, (0.0, 0.5))

    def _row(self, at: int, panel: PanelTime) -> None:
        frame = pg.BarGraphItem(x0=[0], y0=[at - PLANNED_HALF], width=[panel.planned_min], height=[2 * PLANNED_HALF])
        frame.setOpts(brush=QBrush(Qt.BrushStyle.NoBrush), pen=self.pen("edge"))
        self.plot.addItem(frame)
        if not panel.done_min:
            return
        bar = pg.BarGraphItem(x0=[0], y0=[at - DONE_HALF], width=[panel.done_min], height=[2 * DONE_HALF])
        colour = QColor(self.look.palette.accent_fill)
        running = panel.state == "running"
        bar.setOpts(brush=self._hatch(self.look.palette.accent) if running else QBrush(colour), pen=self.pen("accent"))
        self.plot.addItem(bar)

    def _hatch(self, colour: str) -> QBrush:
        brush = QBrush(QColor(colour), Qt.BrushStyle.BDiagPattern)
        # the pattern is laid out in dots, whatever the plot's scale
        x, y = self.plot.getViewBox().viewPixelSize()
        brush.setTransform(QTransform.fromScale(x, y))
        return brush


def _length(panel: PanelTime) -> float:
    return max(panel.planned_min, panel.done_min or 0.0, 1e-9)


def _minutes(panel: PanelTime) -> str:
    planned = format_number(panel.planned_min, 0)
    if panel.done_min is None:
        return _("time not known, {planned} min planned").format(planned=planned)
    if panel.state == "not_started":
        return _("{planned} min").format(planned=planned)
    return _("{done} of {planned} min").format(done=format_number(panel.done_min, 0), planned=planned)


def _row_words(panel: PanelTime) -> str:
    states = {"not_started": _("not started"), "running": _("under way"), "finished": _("finished")}
    return _("{panel}: {minutes}, {state}.").format(
        panel=panel.name, minutes=_minutes(panel), state=states[panel.state]
    )
