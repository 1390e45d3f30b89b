"""Everything that can be done by a key, as data; and the one filter that turns keys into actions.

F-keys, Ctrl and Alt combinations act everywhere. Any other key never acts while a text field has the focus. No
QShortcut is used: a shortcut would take a gauge's digits before they can be seen to be a burst.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSpinBox,
    QApplication,
    QLineEdit,
    QPlainTextEdit,
    QTextEdit,
    QWidget,
)

TEXT_FIELDS = (QLineEdit, QPlainTextEdit, QTextEdit, QAbstractSpinBox)
_UNDO_KEYS = ("Ctrl+Z", "Ctrl+Y")


def always() -> bool:
    return True


@dataclass(frozen=True)
class Action:
    """One act. ``text`` is what the strip shows beside the key; ``shown`` whether the strip lists it at all."""

    key: str
    text: str
    shortcut: str
    run: Callable[[], object]
    enabled_when: Callable[[], bool] = always
    shown: bool = True

    @property
    def everywhere(self) -> bool:
        """True for F-keys, Ctrl and Alt combinations."""
        parts = self.shortcut.split("+")
        last = parts[-1]
        return "Ctrl" in parts[:-1] or "Alt" in parts[:-1] or (last[:1] == "F" and last[1:].isdigit())


def in_text_field() -> bool:
    """True while something one types text into has the focus."""
    widget = QApplication.focusWidget()
    return isinstance(widget, TEXT_FIELDS) and not (isinstance(widget, QLineEdit) and widget.isReadOnly())


def has_unsaved_typing() -> bool:
    """True while the focused text field holds typing that was not entered yet."""
    widget = QApplication.focusWidget()
    if isinstance(widget, QLineEdit):
        return widget.isModified() and widget.isUndoAvailable()
    if isinstance(widget, (QPlainTextEdit, QTextEdit)):
        return widget.document().isModified() and widget.document().isUndoAvailable()
    return False


OPENS = "opens"  # property of a button that opens a page: pressed again, it does nothing


def takes_space() -> bool:
    """Whether Space presses what has the focus: any button but one whose page is open already."""
    focused = QApplication.focusWidget()
    return isinstance(focused, QAbstractButton) and not (focused.property(OPENS) and focused.isChecked())


class KeyDoor(QObject):
    """Application-wide: runs the action that belongs to a key, for keys pressed in ``window``."""

    def __init__(self, window: QWidget, actions: Callable[[], Iterable[Action]]) -> None:
        super().__init__(window)
        self._window = window
        self._actions = actions

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() != QEvent.Type.KeyPress or not isinstance(event, QKeyEvent):
            return False
        if not isinstance(watched, QWidget) or watched.window() is not self._window:
            return False
        action = self.action_for(event)
        if action is None:
            return False
        if not event.isAutoRepeat():
            action.run()
        return True

    def action_for(self, event: QKeyEvent) -> Action | None:
        """The enabled action this key means here and now, or None."""
        pressed = key_text(event)
        typing = in_text_field()
        for action in self._actions():
            if not same_key(action.shortcut, pressed, event.text()):
                continue
            if action.everywhere:
                if action.shortcut in _UNDO_KEYS and has_unsaved_typing():
                    continue  # what is being typed is taken back before what was saved
            elif typing or (action.shortcut == "Space" and takes_space()):
                continue
            if action.enabled_when():
                return action
        return None


def same_key(shortcut: str, pressed: str, text: str) -> bool:
    """Whether a key event means this shortcut; single signs are compared by what they write, whatever the layout."""
    single = len(shortcut) == 1
    if pressed == (shortcut.upper() if single else shortcut):
        return True
    held = set(pressed.split("+")[:-1])
    # some systems write the sign along with Ctrl: Ctrl+4 is no figure; Ctrl with Alt is how others say AltGr
    return single and text == shortcut and "Meta" not in held and ("Ctrl" in held) == ("Alt" in held)


def key_text(event: QKeyEvent) -> str:
    """A key with its modifiers as text, such as ``Ctrl+Z`` or ``F6``; keypad keys like the others."""
    combined = event.keyCombination().toCombined() & ~Qt.KeyboardModifier.KeypadModifier.value
    return QKeySequence(combined).toString(QKeySequence.SequenceFormat.PortableText)
