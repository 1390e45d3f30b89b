"""The line of live keys: what does not fit is left out at the end, and the line says so; it never widens the window."""

from __future__ import annotations

from PySide6.QtCore import QEvent
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from detailbench.basics.texts import _
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import caption, label


class KeyLine(QWidget):
    """Key caps with a word each, in the order given."""

    def __init__(self, dress: Dress) -> None:
        super().__init__()
        m = dress.look.measure
        self.listed: tuple[tuple[str, str], ...] = ()
        self._pairs: list[QWidget] = []
        self._more = caption("…")
        self._gap = m.space("gap")
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(m.space("gap"), m.space("thin"), m.space("gap"), m.space("thin"))
        self._row.setSpacing(self._gap)
        self._row.addWidget(self._more)
        self._row.addStretch(1)
        self._dress = dress
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(_("Keys"))
        dress.changed.connect(self._fit)

    @property
    def fitting(self) -> int:
        """How many find room."""
        return sum(1 for pair in self._pairs if not pair.isHidden())

    def show_keys(self, listed: tuple[tuple[str, str], ...]) -> None:
        if listed == self.listed:
            return
        self.listed = listed
        for old in self._pairs:
            self._row.removeWidget(old)
            old.hide()
            old.deleteLater()
        self._pairs = [self._pair(shortcut, text) for shortcut, text in listed]
        for i, pair in enumerate(self._pairs):
            self._row.insertWidget(i, pair)
        self.setAccessibleDescription(", ".join(f"{shortcut} {text}" for shortcut, text in listed))
        self._fit()

    def _pair(self, shortcut: str, text: str) -> QWidget:
        pair = QWidget(self)
        row = QHBoxLayout(pair)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(self._dress.look.measure.space("thin"))
        row.addWidget(label(shortcut, "cap"))
        row.addWidget(caption(text))
        return pair

    def _fit(self) -> None:
        room = self.width() - 3 * self._gap - self._more.sizeHint().width()
        used, full = 0, False
        for pair in self._pairs:
            pair.ensurePolished()
            used += pair.sizeHint().width() + self._gap
            full = full or used > room
            pair.setVisible(not full)
        self._more.setVisible(full)

    def resizeEvent(self, event: QResizeEvent) -> None:
        self._fit()

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.Polish:
            self._fit()
        return super().event(event)
