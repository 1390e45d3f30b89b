"""One photograph as large as the card allows; of a pair, the one from before while a key or the button is held."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QSizePolicy, QWidget

from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face

LEAST_MM = 24.0


class PhotoView(QWidget):
    """Painted; ``show_photo`` also says in words what is seen. ``held`` while it is pressed."""

    held = Signal(bool)

    def __init__(self, dress: Dress) -> None:
        super().__init__()
        self._dress = dress
        self._picture: QPixmap | None = None
        self._words = ""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.MinimumExpanding)

    def show_photo(self, picture: QPixmap | None, words: str) -> None:
        self._picture, self._words = picture, words
        self.setAccessibleName(words)
        self.update()

    def sizeHint(self) -> QSize:
        m = self._dress.look.measure
        return QSize(m.px(80), m.px(LEAST_MM))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.held.emit(True)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        self.held.emit(False)

    def paintEvent(self, event: QPaintEvent) -> None:
        look = self._dress.look
        m = look.measure
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(look.palette.well))
        font = face(m.type("small"))
        painter.setFont(font)
        line = painter.fontMetrics().height() + m.px(1)
        room = self.rect().adjusted(0, 0, 0, -line)
        if self._picture is not None and not self._picture.isNull():
            ratio = self.devicePixelRatioF()
            scaled = self._picture.scaled(
                room.size() * ratio,
                Qt.AspectRatioMode.KeepAspectRatio,
                Qt.TransformationMode.SmoothTransformation,
            )
            scaled.setDevicePixelRatio(ratio)
            size = scaled.deviceIndependentSize().toSize()
            painter.drawPixmap((room.width() - size.width()) // 2, (room.height() - size.height()) // 2, scaled)
        painter.setPen(QColor(look.palette.ink_soft))
        foot = self.rect().adjusted(m.px(1), self.height() - line, -m.px(1), 0)
        painter.drawText(foot, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), self._words)
        painter.end()
