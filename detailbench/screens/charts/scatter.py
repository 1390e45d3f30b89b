"""Scatter of thickness: the places of a panel, those of its twin, and the other panels' means, side by side."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QColor, QFontMetrics, QWheelEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face

SPREAD = 0.22  # half width over which the points of a column are laid out, in columns
ROOM_UM = 6.0


@dataclass(frozen=True)
class Column:
    """One column: its words, its values (µm), what each value is (a number or a short name), and its middle."""

    title: str
    values_um: tuple[float, ...]
    labels: tuple[str, ...]
    middle_um: float | None = None
    flagged: frozenset[int] = frozenset()


class ScatterChart(QWidget):
    """``show_columns`` draws; nothing on it can be dragged, zoomed or turned."""

    def __init__(self, dress: Dress) -> None:
        super().__init__()
        self._dress = dress
        self._columns: tuple[Column, ...] = ()
        self._unit = ""
        self.plot = pg.PlotWidget()
        self.plot.setMenuEnabled(False)
        self.plot.setMouseEnabled(x=False, y=False)
        self.plot.hideButtons()
        self.plot.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.plot.getPlotItem().setContentsMargins(0, 4, 0, 0)
        self.plot.viewport().installEventFilter(self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.plot)
        dress.changed.connect(self._draw)

    @property
    def columns(self) -> tuple[Column, ...]:
        """What is drawn now."""
        return self._columns

    def show_columns(self, columns: tuple[Column, ...], unit: str) -> None:
        """Draw these; ``unit`` stands at the axis."""
        self._columns, self._unit = columns, unit
        self._draw()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        return isinstance(event, QWheelEvent)  # the card around it scrolls, the chart never

    def _draw(self) -> None:
        look = self._dress.look
        p, m = look.palette, look.measure
        plot = self.plot
        plot.clear()
        plot.setBackground(QColor(p.well))
        small = face(m.type("small"))
        for side in ("left", "bottom"):
            axis = plot.getAxis(side)
            axis.setPen(QColor(p.line))
            axis.setTextPen(QColor(p.ink_soft))
            axis.setStyle(tickFont=small, tickLength=-4)
        plot.getAxis("left").setLabel(self._unit, color=p.ink_soft)
        plot.getAxis("left").setWidth(QFontMetrics(small).horizontalAdvance("8888") + m.px(7))
        plot.getAxis("bottom").setHeight(2 * QFontMetrics(small).height() + m.px(2))
        every = [v for c in self._columns for v in c.values_um]
        if not every:
            plot.getAxis("bottom").setTicks([[]])
            return
        low, high = min(every), max(every)
        room = max(ROOM_UM, 0.12 * (high - low))
        plot.setYRange(low - room, high + room, padding=0)
        plot.setXRange(-0.5, len(self._columns) - 0.5, padding=0)
        plot.showGrid(x=False, y=True, alpha=0.15)
        ticks = []
        for at, column in enumerate(self._columns):
            middle = "–" if column.middle_um is None else format_number(column.middle_um, 0)
            ticks.append((at, f"{column.title}\n{middle}"))
            self._column(at, column, low, high)
        plot.getAxis("bottom").setTicks([ticks])

    def _column(self, at: int, column: Column, low: float, high: float) -> None:
        look = self._dress.look
        values = np.array(column.values_um)
        if not values.size:
            return
        spread = np.linspace(-SPREAD, SPREAD, values.size) if values.size > 1 else np.zeros(1)
        span = max(high - low, 1e-9)
        brushes = [pg.mkBrush(*look.ramp(float((v - low) / span))) for v in values]
        # a value that stands out is told by its shape, not by colour
        signs = ["s" if i in column.flagged else "o" for i in range(values.size)]
        self.plot.addItem(
            pg.ScatterPlotItem(
                x=at + spread,
                y=values,
                symbol=signs,
                size=look.measure.px(2.4),
                brush=brushes,
                pen=pg.mkPen(look.palette.ink_soft, width=1),
            )
        )
        if column.middle_um is not None:
            ends = ([at - 0.38, at + 0.38], [column.middle_um, column.middle_um])
            self.plot.addItem(pg.PlotDataItem(*ends, pen=pg.mkPen(look.palette.accent, width=2)))
        for x, y, text in zip(at + spread, values, column.labels, strict=True):
            if text:
                words = pg.TextItem(text, color=look.palette.ink_soft, anchor=(0.5, 1.25))
                words.setFont(face(look.measure.type("small")))
                words.setPos(float(x), float(y))
                self.plot.addItem(words)
