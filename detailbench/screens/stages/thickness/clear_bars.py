"""The picture of an estimated clear coat: a range over a scale, and what it is made of. Painted, nothing to press."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from detailbench.basics.numbers import format_thickness
from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face
from detailbench.screens.map.shapes import hatch_brush
from detailbench.thickness.clear_picture import ClearPicture

AtX = Callable[[float], float]  # µm → pixels from the left
LEAST_SCALE_UM = 60.0
TICK_UM = 20.0


class ClearBars(QWidget):
    """Three bars with one middle: the whole range, that part of it which is scatter of the places, and that which is
    not knowing. A broken upright line is the shop's reserve."""

    def __init__(self, dress: Dress) -> None:
        super().__init__()
        self._dress = dress
        self._found: ClearPicture | None = None
        self._reserve_um: float | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        dress.changed.connect(self.updateGeometry)

    def show_picture(self, found: ClearPicture | None, reserve_um: float | None) -> None:
        self._found, self._reserve_um = found, reserve_um
        self.setAccessibleName(self.in_words())
        self.updateGeometry()
        self.update()

    def in_words(self) -> str:
        """The same for the ear."""
        found = self._found
        if found is None:
            return ""
        low, high = (format_thickness(v, digits=0) for v in (max(found.low_um, 0.0), found.high_um))
        scatter, ignorance = self._halves(found)
        return _(
            "Range from {low} to {high} ({label}): scatter of the places ± {scatter}, not knowing ± {ignorance}."
        ).format(
            low=low,
            high=high,
            label=found.label,
            scatter=format_thickness(scatter, digits=0),
            ignorance=format_thickness(ignorance, digits=0),
        )

    def sizeHint(self) -> QSize:
        return QSize(200, round((9 if self._reserve_um is not None else 8) * self._high()))

    def _high(self) -> float:
        """One line of small letters."""
        return QFontMetricsF(face(self._dress.look.measure.type("small"))).height()

    def _halves(self, found: ClearPicture) -> tuple[float, float]:
        """Half widths the scatter alone and the ignorance alone would have, µm."""
        whole = found.high_um - found.mean_um
        share = found.ignorance_share
        return whole * (1 - share) ** 0.5, whole * share**0.5

    def paintEvent(self, event: QPaintEvent) -> None:
        found = self._found
        if found is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look = self._dress.look
        painter.setFont(face(look.measure.type("small")))
        ink = QColor(look.palette.ink_soft)
        step = self._high()
        scale_um = max(LEAST_SCALE_UM, TICK_UM * -(-found.high_um // TICK_UM))
        room = self.width() - 2 * look.measure.px(4)

        def x(um: float) -> float:
            return look.measure.px(4) + room * min(max(um, 0.0), scale_um) / scale_um

        scatter, ignorance = self._halves(found)
        bars: tuple[tuple[str, float, Hatch, bool], ...] = (
            (_("all of it, {label}").format(label=found.label), found.high_um - found.mean_um, "", True),
            (_("scatter of the places"), scatter, "dots", False),
            (_("not knowing: undercoats and gauge"), ignorance, "rising", False),
        )
        foot = 6.6 * step
        for i, (words, half, hatch, whole) in enumerate(bars):
            top = 2.15 * i * step
            painter.setPen(ink)
            painter.drawText(QPointF(x(0), top + 0.8 * step), words)
            bar = QRectF(
                QPointF(x(found.mean_um - half), top + step), QPointF(x(found.mean_um + half), top + 1.7 * step)
            )
            painter.setPen(QPen(QColor(look.palette.accent if whole else look.palette.edge), 1.5))
            painter.setBrush(QColor(look.palette.accent_fill) if whole else QColor(look.palette.raised))
            painter.drawRect(bar)
            if hatch:
                painter.setBrush(hatch_brush(hatch, ink, look.measure.dots_per_mm))
                painter.drawRect(bar)
            self._reserve(painter, x, (bar.top() - 0.15 * step, bar.bottom() + 0.15 * step), scale_um)
        self._scale(painter, x, foot, scale_um, step)
        painter.end()

    def _scale(self, painter: QPainter, x: AtX, foot: float, scale_um: float, step: float) -> None:
        look, metrics = self._dress.look, QFontMetricsF(painter.font())
        painter.setPen(QPen(QColor(look.palette.edge), 1))
        painter.drawLine(QPointF(x(0), foot), QPointF(x(scale_um), foot))
        um = 0.0
        while um <= scale_um:
            text = format_thickness(um, digits=0, with_unit=um + TICK_UM > scale_um)
            wide = metrics.horizontalAdvance(text)
            painter.setPen(QPen(QColor(look.palette.edge), 1))
            painter.drawLine(QPointF(x(um), foot), QPointF(x(um), foot + 3))
            painter.setPen(QColor(look.palette.ink_soft))
            left = min(x(um) - wide / 2, self.width() - wide)
            painter.drawText(QPointF(max(left, 0.0), foot + 1.1 * step), text)
            um += TICK_UM
        if self._reserve(painter, x, (foot - 3, foot + 1.3 * step), scale_um) and self._reserve_um is not None:
            words = _("reserve {value}").format(value=format_thickness(self._reserve_um, digits=0))
            left = x(self._reserve_um) - metrics.horizontalAdvance(words) / 2
            painter.drawText(QPointF(max(left, 0.0), foot + 2.2 * step), words)

    def _reserve(self, painter: QPainter, x: AtX, span: tuple[float, float], scale_um: float) -> bool:
        """A piece of the reserve's upright; False where there is none or it lies beyond the scale."""
        if self._reserve_um is None or self._reserve_um > scale_um:
            return False
        at = x(self._reserve_um)
        painter.setPen(QPen(QColor(self._dress.look.palette.ink), 1.5, Qt.PenStyle.DashLine))
        painter.drawLine(QPointF(at, span[0]), QPointF(at, span[1]))
        return True
