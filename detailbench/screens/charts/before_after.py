"""Before and after: the places of a panel as pairs, and the mean difference with its interval, or why there is none."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtCore import Qt

from detailbench.basics.even_marks import thickness_ticks
from detailbench.basics.numbers import format_thickness, format_thickness_change
from detailbench.basics.texts import _
from detailbench.screens.charts.chart import Chart, FixedPlot, unit_label
from detailbench.screens.charts.values import BeforeAfterValues, PlacePair
from detailbench.screens.look.dress import Dress

LEAST_ROOM_UM = 3.0


class BeforeAfter(Chart):
    """One column a place: a ring before, a filled square after, a line between; a place that is not compared is a
    cross. Beside them the differences, their mean and its interval against nought. The sentence under it is the
    finding's own.

        chart = BeforeAfter(context.dress)
        chart.show_values(before_after(context.picture, "bonnet"))   # None: nothing read after the work yet
        layout.addWidget(chart)
    """

    def __init__(self, dress: Dress) -> None:
        super().__init__(dress, _("Thickness before and after"))
        self._values: BeforeAfterValues | None = None
        self.removed_plot = FixedPlot()
        self.plots.addWidget(self.removed_plot, 1)
        self.redraw()

    def show_values(self, values: BeforeAfterValues | None) -> None:
        """Draw these."""
        self._values = values
        self.redraw()

    def words(self) -> str:
        v = self._values
        if v is None:
            return _("Nothing read after the work yet.")
        pairs = [_pair_words(p) for p in v.pairs]
        return " ".join([_("{panel}, {unit}.").format(panel=v.name, unit=unit_label()), *pairs, v.sentence, *v.remarks])

    def _draw(self) -> None:
        v = self._values
        said = [self.words()] if v is None else [v.sentence, *v.remarks]
        self.said.setText("\n".join(said))
        self.said.setVisible(True)
        self._removed(v)
        left, bottom = self.plot.getAxis("left"), self.plot.getAxis("bottom")
        left.setWidth(self.width_of("8888") + self.look.measure.px(1))
        bottom.setHeight(self.metrics.height() + self.look.measure.px(1.5))
        every = [] if v is None else [x for p in v.pairs for x in (p.before_um, p.after_um) if x is not None]
        if v is None or not every:
            self.show_key()
            return
        apart = [_("× not compared")] if any(p.why_not for p in v.pairs) else []
        self.show_key(unit_label(), _("○ before"), _("■ after"), *apart)
        room = max(LEAST_ROOM_UM, 0.15 * (max(every) - min(every)))
        low, high = min(every) - room, max(every) + room
        self.plot.setYRange(low, high, padding=0)
        self.plot.setXRange(-0.6, len(v.pairs) - 0.4, padding=0)
        self.plot.showGrid(y=True, alpha=0.7)
        left.setTicks([thickness_ticks(low, high)])
        bottom.setTicks([[(i, str(p.number)) for i, p in enumerate(v.pairs)]])
        for i, pair in enumerate(v.pairs):
            self._pair(i, pair)

    def _pair(self, at: int, pair: PlacePair) -> None:
        size = self.look.measure.px(2.4)
        both = [x for x in (pair.before_um, pair.after_um) if x is not None]
        if pair.why_not:
            cross = pg.ScatterPlotItem(x=[at] * len(both), y=both, symbol="x", size=size, pen=self.pen("ink_soft"))
            self.plot.addItem(cross)
            return
        before, after = both
        self.plot.addItem(pg.PlotDataItem([at, at], both, pen=self.pen("ink_soft", 0.4)))
        self.plot.addItem(
            pg.ScatterPlotItem(
                x=[at, at],
                y=both,
                symbol=["o", "s"],
                size=size,
                pen=self.pen("ink"),
                brush=[pg.mkBrush(self.look.palette.well), pg.mkBrush(self.look.palette.accent_fill)],
                antialias=True,
            )
        )
        up = after >= before
        first, last = ((0.5, -0.1), (0.5, 1.1)) if up else ((0.5, 1.1), (0.5, -0.1))
        self.write(format_thickness(before, digits=0, with_unit=False), at, before, first)
        self.write(format_thickness_change(after - before, digits=1).split("\u00a0")[0], at, after, last, "accent")

    def _removed(self, v: BeforeAfterValues | None) -> None:
        plot = self.removed_plot
        known = v is not None and v.removed_um is not None and v.low_um is not None and v.high_um is not None
        plot.setVisible(known)
        if v is None or v.removed_um is None or v.low_um is None or v.high_um is None:
            return
        self.clear(plot)
        pairs = [p.before_um - p.after_um for p in v.pairs if not p.why_not and p.before_um and p.after_um]
        every = [*pairs, v.low_um, v.high_um, 0.0]
        room = 0.12 * (max(every) - min(every))
        plot.setYRange(min(every) - room, max(every) + room, padding=0)
        plot.setXRange(-0.7, 1.5, padding=0)
        plot.getAxis("left").setWidth(self.look.measure.px(1))
        plot.getAxis("left").setTicks([[]])
        plot.getAxis("bottom").setHeight(self.plot.getAxis("bottom").height())
        plot.getAxis("bottom").setTicks([[(0.4, _("taken off"))]])
        plot.addItem(pg.InfiniteLine(0.0, 0, pen=self.pen("ink_soft", style=Qt.PenStyle.DashLine)))
        zero_clear = min(abs(v.low_um), abs(v.high_um), abs(v.removed_um)) > room
        if zero_clear:
            self.write(format_thickness(0.0, digits=0, with_unit=False), 1.5, 0.0, (1.0, 1.0), "ink_soft", plot)
        x = [-0.35] * len(pairs)
        plot.addItem(pg.ScatterPlotItem(x=x, y=pairs, size=self.look.measure.px(1.3), pen=self.pen("ink_soft")))
        plot.addItem(pg.PlotDataItem([0.2, 0.2], [v.low_um, v.high_um], pen=self.pen("accent", 0.6)))
        for end in (v.low_um, v.high_um):
            plot.addItem(pg.PlotDataItem([0.08, 0.32], [end, end], pen=self.pen("accent", 0.6)))
        square = pg.mkBrush(self.look.palette.accent_fill)
        plot.addItem(
            pg.ScatterPlotItem(
                x=[0.2], y=[v.removed_um], symbol="s", size=self.look.measure.px(2.6), pen=self.pen("ink"), brush=square
            )
        )
        for value, anchor in ((v.high_um, (0.0, 0.8)), (v.removed_um, (0.0, 0.5)), (v.low_um, (0.0, 0.2))):
            self.write(format_thickness(value, digits=1, with_unit=False), 0.45, value, anchor, "accent", plot)


def _pair_words(pair: PlacePair) -> str:
    if pair.why_not:
        return _("Place {n}: not comparable, {why}.").format(n=pair.number, why=pair.why_not)
    assert pair.before_um is not None
    assert pair.after_um is not None
    return _("Place {n}: {before} before, {after} after.").format(
        n=pair.number,
        before=format_thickness(pair.before_um, digits=1, with_unit=False),
        after=format_thickness(pair.after_um, digits=1, with_unit=False),
    )
