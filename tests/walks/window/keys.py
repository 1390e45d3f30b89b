"""Keys alone: no mouse is touched."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QKeySequence, QWindow
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractItemView,
    QApplication,
    QFileDialog,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QTextEdit,
    QWidget,
)

from window.eyes import MAP, spoken_name
from window.hand import STAGES, Hand
from window.stuck import Stuck

Key = Qt.Key
CTRL = Qt.KeyboardModifier.ControlModifier
MOST_TABS = 160
FIND_PANEL = "Find a panel by its words"
SHORTEST_MM = 1
SMALL_STEP_MM, LARGE_IN_SMALL = 10, 5  # what Shift with an arrow, and an arrow alone, move the cross


class KeysHand(Hand):
    """Tab, arrows, Enter, and the keys the screen shows."""

    kind = "keys"

    def press(self, name: str, within: str = "") -> None:
        self.near()
        self._reach(self.eyes.control(name, within))
        self.key(Key.Key_Space)

    def focus(self, name: str, within: str = "") -> QWidget:
        field = self.eyes.control(name, within)
        self._reach(field)
        return field

    def _reach(self, wanted: QWidget) -> None:
        """Tab until the focus is there, the shorter way round first."""
        if wanted.hasFocus():
            return
        seen: list[str] = []
        back = self._lies_before(wanted)
        for _turn in range(MOST_TABS):
            self.key(Key.Key_Backtab if back else Key.Key_Tab)
            now = QApplication.focusWidget()
            if now is wanted:
                return
            seen.append(spoken_name(now) if now is not None else "nothing")
        raise Stuck(f"Tab does not lead to “{spoken_name(wanted)}”; it went: {', '.join(dict.fromkeys(seen))}")

    @staticmethod
    def _lies_before(wanted: QWidget) -> bool:
        now = QApplication.focusWidget()
        if now is None or now.parentWidget() is None:
            return False
        here, there = (w.mapTo(w.window(), QPoint(0, 0)) for w in (now, wanted))
        return (there.y(), there.x()) < (here.y(), here.x())

    def leave(self) -> None:
        field = QApplication.focusWidget()
        if isinstance(field, (QPlainTextEdit, QTextEdit)):
            self.key(Key.Key_Return, CTRL)
        else:
            self.key(Key.Key_Return)

    def enter(self, button: str, within: str = "") -> None:
        self.key(Key.Key_Return)

    def empty(self, field: QWidget) -> None:
        self.key(Key.Key_A, CTRL)

    def choose(self, list_name: str, part: str) -> None:
        self.near()
        wanted = self.eyes.line(list_name, part)
        view = self.focus(list_name)
        self.key(Key.Key_Home)
        assert isinstance(view, QAbstractItemView)
        first, second = (view.visualRect(view.model().index(row, 0)) for row in (0, 1))
        beside = second.isValid() and second.left() > first.left()  # pictures in a row, not lines
        for _row in range(wanted):
            self.key(Key.Key_Right if beside else Key.Key_Down)
        now = view.currentIndex().row()  # the line drawn as the chosen one
        if now != wanted:
            raise Stuck(f"arrow keys lead to line {now + 1} of “{list_name}”, not to line {wanted + 1}")

    def open_line(self, list_name: str, part: str) -> None:
        self.choose(list_name, part)
        self.key(Key.Key_Return)

    def open_row(self, title: str) -> None:
        rows = [spoken_name(w) for w in self.eyes.all(STAGES)]
        self.key(Key(Key.Key_0 + (rows.index(title) + 1) % 10), CTRL)

    def to_map(self) -> None:
        """The keys go to the map."""
        self.near()
        self.key(Key.Key_G, CTRL)
        if not self.eyes.wait(lambda: spoken_name(_focused()) == MAP):
            raise Stuck(f"the keys do not go to the map but to “{spoken_name(_focused())}”")

    def panel(self, name: str) -> None:
        self.near()
        if self.eyes.selected_panel() == name:
            return
        self.to_map()
        self.key(Key.Key_Slash)
        self.type_into(FIND_PANEL, name)
        self.key(Key.Key_Return)
        if not self.eyes.wait(lambda: self.eyes.selected_panel() == name):
            raise Stuck(f"“{name}” was typed and “{self.eyes.selected_panel()}” is selected")

    def place(self, name: str, across: float, down: float, from_words_mm: tuple[float, float] | None = None) -> None:
        """Enter on the map opens a cross in the middle of the panel; arrows move it, with Shift by small steps, Enter
        takes the place."""
        self.panel(name)
        self.to_map()
        self.key(Key.Key_Return)
        if from_words_mm is not None:
            self._step_to(*from_words_mm)
            self.key(Key.Key_Return)
            return
        box = self.eyes.panel(name).box
        steps = 4
        for share, less, more, size in (
            (across, Key.Key_Left, Key.Key_Right, box.width()),
            (down, Key.Key_Up, Key.Key_Down, box.height()),
        ):
            if size and abs(share - 0.5) > 0.05:
                for _step in range(steps):
                    self.key(more if share > 0.5 else less)
        self.key(Key.Key_Return)

    def _step_to(self, right_mm: float, down_mm: float) -> None:
        for way_mm, less, more in (
            (right_mm, Key.Key_Left, Key.Key_Right),
            (down_mm, Key.Key_Up, Key.Key_Down),
        ):
            large, small = divmod(round(abs(way_mm) / SMALL_STEP_MM), LARGE_IN_SMALL)
            for _step in range(large):
                self.key(more if way_mm > 0 else less)
            for _step in range(small):
                self.key(more if way_mm > 0 else less, Qt.KeyboardModifier.ShiftModifier)

    def act(self, button: str, key: str, within: str = "") -> None:
        self.eyes.control(button, within)
        if not key.startswith(("F", "Ctrl")):
            self.to_map()
        QTest.keySequence(self.glass, QKeySequence(key))

    def answer(self, name: str, within: str = "") -> None:
        control = self.eyes.control(name, within)
        caps = [cap.text() for cap in control.findChildren(QLabel) if len(cap.text()) == 1]
        self.act(name, (caps or [name[-1]])[0], within)

    def take_in(self, name: str) -> None:
        self.panel(name)
        self.press(f"Take in: {name}")

    def ask_person(self) -> None:
        self.near()
        self.key(Key.Key_F2)

    def undo(self) -> None:
        self.near()
        self.key(Key.Key_Z, CTRL)

    def redo(self) -> None:
        self.near()
        self.key(Key.Key_Y, CTRL)

    def name_file(self, glass: QWindow, dialog: QFileDialog, field: QLineEdit, path: str) -> None:
        """The field has the keys when the dialog comes up."""
        if not self.eyes.wait(field.hasFocus):
            raise Stuck("the name of the file cannot be typed: the field does not have the keys")
        self.write(path)
        QTest.keyClick(glass, Key.Key_Return)

    def near(self) -> None:
        if self.far_view() is not None:
            self.key(Key.Key_Escape)
            if not self.eyes.wait(lambda: self.far_view() is None):
                raise Stuck("Escape does not close the far view")


def _focused() -> QWidget:
    focused = QApplication.focusWidget()
    if focused is None:
        raise Stuck("nothing has the keys")
    return focused
