"""What every chart has: a fixed view nobody can turn, zoom or drag, the look in use, and the same said in words."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPen, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import UNIT_LABELS, thickness_unit
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face
from detailbench.screens.look.looks import Look
from detailbench.screens.look.parts import caption, sentence

SMALLEST_PX = (300, 180)


class FixedPlot(pg.PlotWidget):
    """A plot that nothing moves: the wheel and the pointer pass through to whatever it stands in."""

    resized = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents, True)
        self.setMouseEnabled(x=False, y=False)
        self.setMenuEnabled(False)
        self.hideButtons()
        for part in (self, self.viewport()):
            part.setFocusPolicy(Qt.FocusPolicy.NoFocus)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.resized.emit()


class Chart(QWidget):
    """A plot with its key above and a line of words under it. A subclass draws in ``_draw`` and says the same in
    ``words``; it calls ``redraw`` once it is made."""

    def __init__(self, dress: Dress, name: str) -> None:
        super().__init__()
        self._dress = dress
        self.said = sentence()
        self.said.setVisible(False)
        self.key = caption("")
        self.plot = FixedPlot()
        self.plot.setMinimumSize(*SMALLEST_PX)
        self.plots = QHBoxLayout()
        self.plots.setSpacing(0)
        self.plots.addWidget(self.plot, 3)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.key)
        column.addLayout(self.plots, 1)
        column.addWidget(self.said)
        self.setAccessibleName(name)
        dress.changed.connect(self.redraw)
        self.plot.resized.connect(self.redraw)

    def words(self) -> str:
        """Everything the chart shows, in words."""
        raise AssertionError("every chart says what it shows")

    def show_key(self, *parts: str) -> None:
        """What the signs mean; nothing given: no plot either, the words under it say why."""
        self.key.setText("   ".join(parts))
        self.key.setVisible(bool(parts))
        self.plot.setVisible(bool(parts))

    def redraw(self) -> None:
        """Draw again what is shown, in the look and unit in use."""
        self.clear(self.plot)
        self._draw()
        self.setAccessibleDescription(self.words())

    def clear(self, plot: pg.PlotWidget) -> None:
        """An empty plot in the look in use."""
        plot.clear()
        plot.setBackground(QColor(self.look.palette.well))
        for side in ("left", "bottom"):
            axis = plot.getAxis(side)
            axis.setPen(QColor(self.look.palette.line))
            axis.setTextPen(QColor(self.look.palette.ink_soft))
            axis.setStyle(tickFont=self.small, tickLength=0)

    def _draw(self) -> None:
        raise AssertionError("every chart draws")

    @property
    def look(self) -> Look:
        return self._dress.look

    @property
    def small(self) -> QFont:
        """The face of everything written in the plot."""
        return face(self.look.measure.type("small"))

    @property
    def metrics(self) -> QFontMetricsF:
        return QFontMetricsF(self.small)

    def width_of(self, text: str) -> float:
        """Dots that words take in the plot, with a little to spare: at small sizes letters are drawn wider than laid
        out."""
        return 1.12 * self.metrics.horizontalAdvance(text) + 2

    def pen(self, colour: str, mm: float = 0.0, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
        """A pen in a colour of the look; no width given: one dot."""
        return pg.mkPen(QColor(self._dress.colour(colour)), width=self.look.measure.px(mm) or 1, style=style)

    def write(
        self,
        text: str,
        x: float,
        y: float,
        anchor: tuple[float, float],
        colour: str = "ink",
        plot: pg.PlotWidget | None = None,
    ) -> pg.TextItem:
        """Words at a place of the plot; ``anchor`` is the point of the words that lies there, (0, 0) top left."""
        item = pg.TextItem(text, color=QColor(self._dress.colour(colour)), anchor=anchor)
        item.setFont(self.small)
        item.setPos(x, y)
        (plot or self.plot).addItem(item, ignoreBounds=True)
        return item


def unit_label() -> str:
    """The sign of the unit thicknesses are shown in."""
    return UNIT_LABELS[thickness_unit()]
