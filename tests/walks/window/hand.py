"""A hand at the window. What a walk asks of it; the two kinds of hand are keys.py and mouse.py."""

from __future__ import annotations

import re
from abc import ABC, abstractmethod
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QInputMethodEvent, QWindow
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QFileDialog, QLineEdit, QWidget

from window.eyes import FIELDS, Eyes, content
from window.stuck import Stuck

FAR_VIEW = "Far view"
STAGES = "Stages"
STOPPED = "A rule stops this"


class Hand(ABC):
    """Everything a person does, in terms of what stands on the screen."""

    kind = ""

    def __init__(self, eyes: Eyes) -> None:
        self.eyes = eyes

    @abstractmethod
    def press(self, name: str, within: str = "") -> None:
        """Press the button of this name."""

    @abstractmethod
    def focus(self, name: str, within: str = "") -> QWidget:
        """Go to a field."""

    @abstractmethod
    def leave(self) -> None:
        """Be done with the field typed into, so that it is entered."""

    @abstractmethod
    def enter(self, button: str, within: str = "") -> None:
        """Enter the value just typed: with the key, or with the button that stands for it."""

    @abstractmethod
    def empty(self, field: QWidget) -> None:
        """Mark all that stands in the field, so that typing replaces it."""

    @abstractmethod
    def choose(self, list_name: str, part: str) -> None:
        """Make the line with this in it the chosen one."""

    @abstractmethod
    def open_line(self, list_name: str, part: str) -> None:
        """Open the line with this in it."""

    @abstractmethod
    def panel(self, name: str) -> None:
        """Take a panel in hand."""

    @abstractmethod
    def place(self, name: str, across: float, down: float, from_words_mm: tuple[float, float] | None = None) -> None:
        """Point at a place of a panel: shares of its box, from the left and from the top; where it matters to the
        centimetre also how far from where the panel's words stand, to the right and down."""

    @abstractmethod
    def act(self, button: str, key: str, within: str = "") -> None:
        """Do what has a button and, shown beside it or on the line of keys, a key."""

    @abstractmethod
    def answer(self, name: str, within: str = "") -> None:
        """Give an answer that carries its own key: on a cap, or as the last sign of its words."""

    @abstractmethod
    def take_in(self, name: str) -> None:
        """While several panels are meant: take this one in."""

    @abstractmethod
    def ask_person(self) -> None:
        """Have the sheet opened that asks who is entering."""

    @abstractmethod
    def open_row(self, title: str) -> None:
        """Open a row of the rail."""

    @abstractmethod
    def undo(self) -> None:
        """Take back the last entry."""

    @abstractmethod
    def redo(self) -> None:
        """Do again what was taken back."""

    @abstractmethod
    def near(self) -> None:
        """Leave the far view, if it has come."""

    def put_away_stop(self) -> None:
        """Close the sheet that says a rule stops something, if it lies there."""
        if self.eyes.names(STOPPED):
            self.press("Close", STOPPED)

    def turn_to(self, title: str) -> None:
        """Open a stage or a page on the rail, unless it is open."""
        self.near()
        row = self.eyes.control(title, STAGES)
        if not (isinstance(row, QAbstractButton) and row.isChecked()):
            self.open_row(title)

    def turn_card(self, title: str) -> None:
        """Turn the card to a page of it, unless it is open."""
        self.turn_sheet(title, "Card")

    def turn_sheet(self, title: str, within: str) -> None:
        """Turn a sheet, or the card, to a page of it, unless it is open."""
        self.near()
        tab = self.eyes.control(title, within)
        if not (isinstance(tab, QAbstractButton) and tab.isChecked()):
            self.press(title, within)

    def pick(self, title: str, choice: str, within: str = "") -> None:
        """Pick one of the choices under a title, unless it is picked."""
        name = f"{title}: {choice}"
        made = self.eyes.control(name, within)
        if not (isinstance(made, QAbstractButton) and made.isChecked()):
            self.press(name, within)

    def fill(self, name: str, text: str, within: str = "") -> None:
        """Type into a field, replacing what stands in it, and enter it by leaving."""
        self.type_into(name, text, within)
        self.leave()

    def type_into(self, name: str, text: str, within: str = "") -> None:
        """Type into a field, replacing what stands in it; nothing is entered yet."""
        self.near()
        field = self.focus(name, within)
        if content(field):
            self.empty(field)
            self.key(Qt.Key.Key_Delete)  # so that what is read back below is what was typed
            if not self.eyes.wait(lambda: not content(field)):
                raise Stuck(f"“{name}” was to be emptied and “{content(field)}” stands there")
        self.write(text)
        if not self.eyes.wait(lambda: content(field) == text):
            raise Stuck(f"“{text}” was typed into “{name}” and “{content(field)}” stands there")

    def write(self, text: str) -> None:
        """Signs on the keyboard, one after the other; those no plain keyboard has come as an input method hands them
        over."""
        field = QApplication.focusWidget()
        if not isinstance(field, FIELDS):
            raise Stuck(f"“{text}” was to be typed and no field has the keys")
        for run in re.findall(r"[\x00-\xff]+|[^\x00-\xff]+", text):
            if run.isascii() or max(run) <= "\xff":
                QTest.keyClicks(field, run)
                continue
            written = QInputMethodEvent()
            written.setCommitString(run)
            QApplication.sendEvent(field, written)

    @staticmethod
    def dialogs() -> list[QFileDialog]:
        """The dialogs for choosing a file that are shown."""
        return [w for w in QApplication.topLevelWidgets() if isinstance(w, QFileDialog) and w.isVisible()]

    def choose_file(self, path: Path) -> None:
        """Name a file in the dialog that has just come up, and have it taken."""

        def in_front() -> bool:
            for dialog in self.dialogs():
                dialog.activateWindow()  # a desktop puts a new window in front; a bare screen does not
            return [dialog.isActiveWindow() for dialog in self.dialogs()] == [True]

        if not self.eyes.wait(in_front):
            raise Stuck(f"{len(self.dialogs())} dialogs for choosing a file, none in front")
        (dialog,) = self.dialogs()
        (field,) = (w for w in dialog.findChildren(QLineEdit) if w.isVisible())
        self.name_file(dialog.windowHandle(), dialog, field, str(path))
        if not self.eyes.wait(lambda: not self.dialogs()):
            raise Stuck(f"the dialog does not take “{path}”")
        self.eyes.window.activateWindow()
        if not self.eyes.wait(self.eyes.window.isActiveWindow):
            raise Stuck("the window does not come to the front again")

    @abstractmethod
    def name_file(self, glass: QWindow, dialog: QFileDialog, field: QLineEdit, path: str) -> None:
        """Type the file's name into the dialog and accept it."""

    @property
    def glass(self) -> QWindow:
        return self.eyes.window.windowHandle()

    def far_view(self) -> QWidget | None:
        """The far view while it covers the window."""
        return next((w for w in self.eyes.all() if w.accessibleName() == FAR_VIEW), None)

    def key(self, key: Qt.Key, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        QTest.keyClick(self.glass, key, modifier)
