"""Text entry: one line, entered by Enter or by leaving the field; a sentence at the place when it will not do."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QLineEdit, QPlainTextEdit, QVBoxLayout, QWidget

from detailbench.basics.errors import DetailbenchError
from detailbench.screens.look.parts import caption, sentence, set_kind


class RefusedAtField(QEvent):
    """Sent to the window when a field refuses what was typed: what the notice line said last is of the past."""

    KIND = QEvent.Type(QEvent.registerEventType())

    def __init__(self, sentence: str) -> None:
        super().__init__(self.KIND)
        self.sentence = sentence


class FieldSentence(QWidget):
    """A title, a field, and the sentence that belongs to it."""

    def __init__(self, title: str, field: QWidget) -> None:
        super().__init__()
        self.field = field
        self.says = sentence()
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(2)
        self.column.addWidget(caption(title))
        self.column.addWidget(field)
        self.column.addWidget(self.says)
        self.says.hide()
        field.setAccessibleName(title)
        self.setFocusProxy(field)

    def say(self, text: str, kind: str = "stop") -> None:
        """Put a sentence at the place (empty: none) and mark the field."""
        self.says.setText(text)
        self.says.setVisible(bool(text))
        set_kind(self.says, kind if text else "")
        set_kind(self.field, kind if text else "")
        self.field.setAccessibleDescription(text)
        if text and kind == "stop":
            QApplication.sendEvent(self.window(), RefusedAtField(f"{self.field.accessibleName()}: {text}"))


class TextField(FieldSentence):
    """``committed`` gives the text. ``check`` may raise a DetailbenchError: its sentence is shown, the text stays, also
    after the field is left. ``refuse`` does the same for what could be read and yet was not kept. ``of_form``: a form
    reads it with its other fields; Enter or leaving it enters nothing by itself."""

    committed = Signal(str)

    def __init__(
        self, title: str, text: str = "", *, check: Callable[[str], object] | None = None, of_form: bool = False
    ) -> None:
        self.line = QLineEdit(text)
        super().__init__(title, self.line)
        self._check = check
        self._entered = self._before = text
        self._unkept = False
        if not of_form:
            self.line.editingFinished.connect(self.commit)

    def text(self) -> str:
        return self.line.text()

    def set_text(self, text: str) -> None:
        """Show what is kept now; leaves typing alone that is not entered yet, or could not be."""
        if self.line.hasFocus() and self.line.isModified():
            return
        if self._unkept and text == self._entered:
            return
        self.line.setText(text)
        self._entered = text
        self._unkept = False
        self.say("")

    def forget(self) -> None:
        """Let go of typing that could not be entered: another job is shown."""
        self._unkept = False
        self.line.setModified(False)

    def refuse(self, sentence: str) -> None:
        """What was entered last was not kept: the typing stays, with the sentence why."""
        self._entered = self._before
        self._unkept = True
        self.say(sentence)

    def clear(self) -> None:
        """Empty it for the next entry."""
        self.line.clear()
        self._before = self._entered = ""
        self._unkept = False
        self.say("")

    def commit(self) -> None:
        """Enter what stands there, if it changed and will do."""
        text = self.line.text().strip()
        if text == self._entered:
            if self._unkept:
                self._unkept = False
                self.say("")
            return
        if self._check is not None:
            try:
                self._check(text)
            except DetailbenchError as error:
                self._unkept = True
                self.say(str(error))
                return
        self._unkept = False
        self.say("")
        self._before, self._entered = self._entered, text
        self.line.setModified(False)
        self.committed.emit(text)


class NoteField(FieldSentence):
    """Several lines; entered on leaving or with Ctrl+Enter. Tab leaves the field."""

    committed = Signal(str)

    def __init__(self, title: str, text: str = "", lines: int = 3) -> None:
        self.edit = _NoteEdit(text)
        super().__init__(title, self.edit)
        self._entered = text
        self.edit.setFixedHeight(self.edit.fontMetrics().lineSpacing() * lines + 16)
        self.edit.left.connect(self.commit)

    def text(self) -> str:
        return self.edit.toPlainText()

    def set_text(self, text: str) -> None:
        if not (self.edit.hasFocus() and self.edit.document().isModified()):
            self.edit.setPlainText(text)
            self._entered = text

    def clear(self) -> None:
        """Empty it for the next entry."""
        self.edit.clear()
        self._entered = ""

    def commit(self) -> None:
        text = self.edit.toPlainText().strip()
        if text != self._entered:
            self._entered = text
            self.edit.document().setModified(False)
            self.committed.emit(text)


class _NoteEdit(QPlainTextEdit):
    left = Signal()

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.setTabChangesFocus(True)

    def focusOutEvent(self, event: object) -> None:
        super().focusOutEvent(event)  # type: ignore[arg-type]
        self.left.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if enter and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.left.emit()
            return
        super().keyPressEvent(event)
