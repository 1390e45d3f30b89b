"""Scatter of thickness: the places of a panel beside its twin and the rest of its family."""

from __future__ import annotations

from itertools import accumulate, pairwise
from statistics import median

import pyqtgraph as pg
from PySide6.QtCore import Qt

from detailbench.basics.even_marks import thickness_ticks
from detailbench.basics.numbers import format_least_thickness, format_thickness
from detailbench.basics.texts import _
from detailbench.screens.charts.chart import Chart, unit_label
from detailbench.screens.charts.names_axis import ColumnName, NamesAxis
from detailbench.screens.charts.values import PanelPlaces, PanelScatterValues, PlaceDot
from detailbench.screens.look.dress import Dress

LEAST_ROOM_UM = 6.0
LEAST_HEIGHT_PX = 230  # the names take up to half of it
ROLE_SIGNS = {"this": "o", "twin": "d", "family": "o"}
ODD_SIGN, ASIDE_SIGN = "s", "x"
NEAR_UM = 40.0  # a panel of the family farther than this from its middle does not squash the rest
FAMILY_SHARE = 0.4  # of the width
WIDEST_NARROW = 4.0  # letters


class PanelScatter(Chart):
    """The panel chosen and its twin stand in wide columns with their numbers; every other panel in a narrow one.

    The panel's places are filled discs, its twin's diamonds, the family's small rings; a place that stands out is a
    square, one set aside a cross. A full bar is the mean, a broken one the lower bound. What lies far beyond the rest
    of the family is an arrow at the rim, its mean in figures with its name.

        chart = PanelScatter(context.dress)
        chart.show_values(panel_scatter(context.picture, "bonnet"))
        layout.addWidget(chart)
    """

    def __init__(self, dress: Dress) -> None:
        super().__init__(dress, _("Scatter of thickness"))
        self._values = PanelScatterValues((), "")
        self._low, self._high, self._per_unit = 0.0, 1.0, 1.0
        self._axis = NamesAxis()
        self.plot.setAxisItems({"bottom": self._axis})
        self.plot.setMinimumHeight(LEAST_HEIGHT_PX)
        self.redraw()

    def show_values(self, values: PanelScatterValues) -> None:
        """Draw these."""
        self._values = values
        self.redraw()

    def words(self) -> str:
        if not any(p.dots for p in self._values.panels):
            return _("Nothing measured yet.")
        told = [_panel_words(p) for p in self._values.panels]
        lead = _("Thickness {when}, {unit}.").format(when=self._values.moment, unit=unit_label())
        return " ".join([lead, *told])

    def _draw(self) -> None:
        panels = self._values.panels
        every = [d.value_um for p in panels for d in p.dots]
        self.said.setVisible(not every)
        if not every:
            self.said.setText(self.words())
            self.show_key()
            return
        self._scale(panels)
        self._key(panels)
        left = self.plot.getAxis("left")
        left.setWidth(self.width_of("8888") + self.look.measure.px(1))
        left.setTicks([thickness_ticks(self._low, self._high)])
        self.plot.setYRange(self._low, self._high, padding=0)
        self.plot.showGrid(y=True, alpha=0.7)
        width = self.plot.width() - left.width() - 2
        edges = _edges(panels, width / self.metrics.height())
        self.plot.setXRange(0.0, edges[-1], padding=0)
        self._per_unit = width / edges[-1]
        for panel, (x0, x1) in zip(panels, pairwise(edges), strict=True):
            self._column(panel, x0, x1)
        names = tuple(self._name(p, x0, x1) for p, (x0, x1) in zip(panels, pairwise(edges), strict=True))
        self._axis.show_names(names, self.small, (0.0, edges[-1]), width)

    def _scale(self, panels: tuple[PanelPlaces, ...]) -> None:
        """From the panel chosen, its twin and what lies near the middle of the family; the rest is shown at the rim."""
        near = [d.value_um for p in panels[:2] if p.role != "family" for d in p.dots]
        near += [p.lower_bound_um for p in panels if p.role != "family" and _has_bound(p) and p.lower_bound_um]
        others = [d.value_um for p in panels if p.role == "family" for d in p.dots]
        if others:
            middle = median(others)
            near += [v for v in others if abs(v - middle) <= NEAR_UM] or [middle]
        room = max(LEAST_ROOM_UM, 0.1 * (max(near) - min(near)))
        self._low, self._high = min(near) - room, max(near) + room

    def _beyond(self, panels: tuple[PanelPlaces, ...]) -> bool:
        return any(not self._low <= d.value_um <= self._high for p in panels for d in p.dots)

    def _key(self, panels: tuple[PanelPlaces, ...]) -> None:
        dots = [d for p in panels for d in p.dots]
        parts = [unit_label(), _("— mean")]
        if any(_has_bound(p) for p in panels if p.role != "family"):
            parts.append(_("- - lower bound"))
        if any(d.odd for d in dots):
            parts.append(_("■ stands out"))
        if any(d.set_aside for d in dots):
            parts.append(_("× set aside"))
        if self._beyond(panels):
            parts.append(_("▲▼ beyond the rim"))
        self.show_key(*parts)

    def _column(self, panel: PanelPlaces, x0: float, x1: float) -> None:
        wide = panel.role != "family"
        if x0 > 0:
            self.plot.addItem(pg.InfiniteLine(x0, 90, pen=self.pen("line")), ignoreBounds=True)
        margin = (0.06 if wide else 0.18) * (x1 - x0)  # no dot is cut by its neighbour or the rim
        at = _sideways(len(panel.dots), x0 + margin, x1 - x0 - 2 * margin)
        self._bars(panel, x0, x1)
        spots = [self._spot(panel, dot, x) for x, dot in zip(at, panel.dots, strict=True)]
        self.plot.addItem(pg.ScatterPlotItem(spots=spots, antialias=True))
        if wide:
            self._numbers(panel, at, x1 - x0)

    def _spot(self, panel: PanelPlaces, dot: PlaceDot, x: float) -> dict[str, object]:
        wide = panel.role != "family"
        sign = ASIDE_SIGN if dot.set_aside else ODD_SIGN if dot.odd else ROLE_SIGNS[panel.role]
        size = self.look.measure.px(2.4 if wide else 1.4)
        value, rim = dot.value_um, 0.03 * (self._high - self._low)
        if not self._low <= value <= self._high:
            up = value > self._high
            sign, value = ("t1", self._high - rim) if up else ("t", self._low + rim)
            size = self.look.measure.px(1.8)
        fill = pg.mkBrush(*self.look.ramp((value - self._low) / (self._high - self._low)))
        return {
            "pos": (x, value),
            "symbol": sign,
            "size": size,
            "brush": fill if wide or dot.odd else pg.mkBrush(None),
            "pen": self.pen("ink" if wide else "ink_soft"),
        }

    def _bars(self, panel: PanelPlaces, x0: float, x1: float) -> None:
        bars = [(panel.mean_um, "accent", Qt.PenStyle.SolidLine)]
        if panel.role != "family" and _has_bound(panel):
            bars.append((panel.lower_bound_um, "ink", Qt.PenStyle.DashLine))
        for value, colour, style in bars:
            if value is not None and self._low <= value <= self._high:
                self.plot.addItem(pg.PlotDataItem([x0, x1], [value, value], pen=self.pen(colour, 0.5, style)))

    def _name(self, panel: PanelPlaces, x0: float, x1: float) -> ColumnName:
        p = self.look.palette
        mean = "–" if panel.mean_um is None else format_thickness(panel.mean_um, digits=0, with_unit=False)
        if panel.role == "family":
            return ColumnName(f"{panel.short} {mean}", x0, x1, p.ink_soft, narrow=True)
        lines = [panel.name, f"— {mean}"]
        if _has_bound(panel) and panel.lower_bound_um is not None:
            lines.append("- - " + format_least_thickness(panel.lower_bound_um, with_unit=False))
        return ColumnName("\n".join(lines), x0, x1, p.ink, panel.role == "this")

    def _numbers(self, panel: PanelPlaces, at: list[float], inner: float) -> None:
        """Every value where there is room for it, otherwise the lowest, the highest and what stands out."""
        pitch = inner / max(len(panel.dots), 1) * self._per_unit
        # neighbours stand above and below their dots by turns, so two pitches must hold one number
        roomy = 2 * pitch >= self.width_of("888") + 6
        ends = _ends(panel.dots)
        for i, (x, dot) in enumerate(zip(at, panel.dots, strict=True)):
            if roomy or dot.odd or dot in ends:
                below = dot.odd or (i % 2 == 1 if roomy else dot is ends[0])
                text = format_thickness(dot.value_um, digits=0, with_unit=False)
                self.write(text, x, dot.value_um, (0.5, -0.1 if below else 1.1))


def _has_bound(panel: PanelPlaces) -> bool:
    return panel.lower_bound_um is not None and panel.lower_bound_um > 0


def _ends(dots: tuple[PlaceDot, ...]) -> tuple[PlaceDot, ...]:
    return (min(dots, key=lambda d: d.value_um), max(dots, key=lambda d: d.value_um)) if dots else ()


def _edges(panels: tuple[PanelPlaces, ...], letters: float) -> list[float]:
    """Where the columns begin and end, in heights of a letter; ``letters`` is the whole width. A family column is never
    narrower than a name stood upright, unless there are more of them than the width can hold."""
    narrow = sum(1 for p in panels if p.role == "family")
    wide = len(panels) - narrow
    room = min(max(narrow * 1.05, FAMILY_SHARE * letters), narrow * WIDEST_NARROW, 0.8 * letters)
    each = {"family": room / narrow if narrow else 0.0, "other": (letters - room) / wide}
    return [0.0, *accumulate(each["family" if p.role == "family" else "other"] for p in panels)]


def _sideways(n: int, left: float, width: float) -> list[float]:
    """Places in their walking order from left to right, so that the same job always looks the same."""
    return [left + width * (i + 0.5) / n for i in range(n)]


def _panel_words(panel: PanelPlaces) -> str:
    if panel.role == "family":
        return _family_words(panel)
    lead = {
        "this": _("{panel}: {places}."),
        "twin": _("Its twin, {panel}: {places}."),
    }[panel.role]
    parts = [", ".join(_dot_words(d) for d in panel.dots) or _("nothing measured")]
    if panel.mean_um is not None:
        parts.append(_("mean {value}").format(value=format_thickness(panel.mean_um, digits=1, with_unit=False)))
    if panel.lower_bound_um is not None and panel.lower_bound_um > 0:
        bound = format_least_thickness(panel.lower_bound_um, with_unit=False)
        parts.append(_("lower bound {value}").format(value=bound))
    said = lead.format(panel=panel.name, places="; ".join(parts))
    return f"{said} {panel.remark}".strip()


def _family_words(panel: PanelPlaces) -> str:
    if panel.mean_um is None or not panel.dots:
        return _("{panel}: {places}.").format(panel=panel.name, places=_("nothing measured"))
    low, high = (format_thickness(d.value_um, digits=0, with_unit=False) for d in _ends(panel.dots))
    mean = format_thickness(panel.mean_um, digits=0, with_unit=False)
    return _("{panel}: mean {mean}, from {low} to {high}.").format(panel=panel.name, mean=mean, low=low, high=high)


def _dot_words(dot: PlaceDot) -> str:
    value = format_thickness(dot.value_um, digits=1, with_unit=False)
    if dot.set_aside:
        return _("place {n}: {value} (set aside)").format(n=dot.number, value=value)
    if dot.odd:
        return _("place {n}: {value} (stands out)").format(n=dot.number, value=value)
    return _("place {n}: {value}").format(n=dot.number, value=value)
