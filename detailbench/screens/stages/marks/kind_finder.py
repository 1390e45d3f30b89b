"""Every kind of the catalogue by its words."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.marks.words import group_name
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import button, gives_way, tip
from detailbench.screens.stages.marks.quick_keys import matching


class KindFinder(QWidget):
    """``chosen`` gives the kind's key; ``left`` says that none was wanted."""

    chosen = Signal(str)
    left = Signal()

    def __init__(self, dress: Dress) -> None:
        super().__init__()
        self.line = QLineEdit()
        self.line.setAccessibleName(_("Find a kind of mark by its words"))
        self.line.setPlaceholderText(_("words of the kind, such as: etch, sag, rust"))
        self.list = QListWidget()
        self.list.setAccessibleName(_("Kinds of marks"))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        gives_way(self.list, dress.look.measure.px(36))
        self.back = button(_("Back to the quick keys"), self.left.emit, role="quiet")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(dress.look.measure.space("thin"))
        column.addWidget(self.line)
        column.addWidget(self.list, 1)
        column.addWidget(self.back)
        self.line.textChanged.connect(self._typed)
        self.line.returnPressed.connect(self._take)
        self.list.itemActivated.connect(lambda item: self.chosen.emit(item.data(Qt.ItemDataRole.UserRole)))
        self.list.itemClicked.connect(lambda item: self.chosen.emit(item.data(Qt.ItemDataRole.UserRole)))

    def begin(self) -> None:
        """Empty, with the focus in the line."""
        self.line.clear()
        self._typed("")
        self.line.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _typed(self, words: str) -> None:
        self.list.clear()
        for kind in matching(words):
            item = QListWidgetItem(f"{kind.name}\n{kind.looks}")
            item.setData(Qt.ItemDataRole.UserRole, kind.key)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{kind.name}: {kind.looks}")
            item.setToolTip(tip(group_name(kind.group)))
            self.list.addItem(item)
        self.list.setCurrentRow(0)

    def _take(self) -> None:
        item = self.list.currentItem()
        if item is not None:
            self.chosen.emit(item.data(Qt.ItemDataRole.UserRole))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        elif event.key() == Qt.Key.Key_Down and self.line.hasFocus():
            self.list.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            super().keyPressEvent(event)
