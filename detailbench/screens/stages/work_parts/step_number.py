"""A number between a less and a more button: typed by those who have keys, stepped by those who have a glove on."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number, read_typed
from detailbench.basics.texts import _
from detailbench.screens.look.parts import button, caption, sentence, set_kind


class StepNumber(QWidget):
    """``committed`` gives the number, or None where the field was emptied and may be. What cannot be read, is no whole
    number where ``whole`` ones are counted, or lies above ``most``, stays with a sentence below it; so does what
    ``check`` has a sentence against."""

    committed = Signal(object)

    def __init__(
        self,
        title: str,
        unit: str = "",
        *,
        step: float = 1.0,
        least: float = 0.0,
        may_be_empty: bool = False,
        negative: bool = False,
        whole: bool = False,
        most: float | None = None,
        check: Callable[[float], str] | None = None,
    ) -> None:
        super().__init__()
        self._step, self._least, self._most, self._whole, self._check = step, least, most, whole, check
        self._may_be_empty, self._negative = may_be_empty, negative
        self.value: float | None = None
        self._refused = False
        self._unit = unit
        self.line = _WholeLine()
        self.line.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.line.setMinimumWidth(44)
        self.less = button("−", lambda: self._by(-1), name=_("{what}: less").format(what=title))
        self.more = button("+", lambda: self._by(1), name=_("{what}: more").format(what=title))
        self.says = sentence()
        self.says.hide()
        row = QHBoxLayout()
        row.setSpacing(2)
        for part in (self.less, self.line, self.more):
            row.addWidget(part, 1 if part is self.line else 0)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        self.title = caption("")
        column.addWidget(self.title)
        column.addLayout(row)
        column.addWidget(self.says)
        self.set_title(title)
        self.setFocusProxy(self.line)
        self.line.editingFinished.connect(self.commit)

    @property
    def buttons(self) -> tuple[QPushButton, QPushButton]:
        return self.less, self.more

    def set_title(self, title: str) -> None:
        """What the number is, in words."""
        name = f"{title}, {self._unit}" if self._unit else title
        self.title.setText(name)
        self.line.setAccessibleName(name)

    def set_value(self, value: float | None, *, same: bool = False) -> None:
        """Show what is kept now; leaves typing that is not entered yet alone, and where it is the ``same`` thing that
        is shown again, what was refused too: it stays with its sentence."""
        if self.line.hasFocus() and self.line.isModified():
            return
        if same and self._refused and value == self.value:
            return
        self.value = value
        self._show()
        self.say("")

    def forget(self) -> None:
        """Let go of typing that is not entered, or was refused: it belonged to another thing."""
        self._refused = False
        self.line.setModified(False)

    def commit(self) -> None:
        """Enter what stands there, if it changed and can be read."""
        text = self.line.text().strip()
        if text == self._text(self.value):
            self._refused = False
            self.say("")
            return
        if not text and self._may_be_empty:
            self._take(None)
            return
        self._refused = True
        typed = read_typed(text, expects="plain", allow_negative=self._negative)
        if typed.value is None:
            self.say(typed.question or typed.sentence)
        elif typed.value < self._least and not self._negative:
            self.say(_("At least {least} is needed here.").format(least=format_number(self._least)))
        elif self._whole and typed.value != int(typed.value):
            self.say(_("A whole number is needed here."))
        elif self._most is not None and typed.value > self._most:
            self.say(_("At most {most} can be entered here.").format(most=format_number(self._most)))
        elif against := self._against(typed.value):
            self.say(against)
        else:
            self._take(typed.value)

    def _against(self, value: float) -> str:
        return self._check(value) if self._check is not None else ""

    def _by(self, sign: int) -> None:
        """To the next whole step, up or down."""
        now = self.value if self.value is not None else self._least
        steps = round(now / self._step, 6)
        to = (steps + sign if steps == int(steps) else (int(steps // 1) + (1 if sign > 0 else 0))) * self._step
        if (to >= self._least or self._negative) and (self._most is None or to <= self._most):
            against = self._against(round(to, 6))
            if against:
                self.say(against)
            else:
                self._take(round(to, 6))

    def _take(self, value: float | None) -> None:
        self.value = value
        self._show()
        self.say("")
        self.committed.emit(value)

    def _show(self) -> None:
        self._refused = False
        self.line.setText(self._text(self.value))
        self.line.setModified(False)

    @staticmethod
    def _text(value: float | None) -> str:
        return "" if value is None else format_number(value)

    def say(self, text: str) -> None:
        """A sentence at the place; empty: none."""
        self.says.setText(text)
        self.says.setVisible(bool(text))
        set_kind(self.says, "stop" if text else "")
        set_kind(self.line, "stop" if text else "")
        self.line.setAccessibleDescription(text)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        sign = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}.get(Qt.Key(event.key()))
        if sign is not None and self.line.hasFocus():
            self._by(sign)
            return
        super().keyPressEvent(event)


class _WholeLine(QLineEdit):
    """A click into it takes the whole number: what is typed then stands in its place, not behind it."""

    _entered = False

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self._entered = event.reason() == Qt.FocusReason.MouseFocusReason
        if not self._entered:
            self.selectAll()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        super().mouseReleaseEvent(event)
        if self._entered and not self.hasSelectedText():
            self.selectAll()
        self._entered = False
