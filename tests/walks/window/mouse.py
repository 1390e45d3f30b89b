"""Mouse alone: keys only write into a field that was clicked."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QWindow
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractItemView,
    QAbstractScrollArea,
    QDialogButtonBox,
    QFileDialog,
    QLineEdit,
    QScrollArea,
    QWidget,
)

from window.eyes import lines_of, spoken_name
from window.hand import STAGES, Hand
from window.stuck import Stuck

NOTCH = 120
MOST_NOTCHES = 200


class MouseHand(Hand):
    """Clicks where things are seen, and turns the wheel over what scrolls."""

    kind = "mouse"

    def press(self, name: str, within: str = "") -> None:
        self.near()
        self._click(self.eyes.control(name, within))

    def focus(self, name: str, within: str = "") -> QWidget:
        field = self.eyes.control(name, within)
        self._click(field)
        if not self.eyes.wait(lambda: field.hasFocus()):
            raise Stuck(f"“{name}” was clicked and does not take the typing")
        return field

    def leave(self) -> None:
        """The open row of the rail takes the keys and changes nothing."""
        row = next((w for w in self.eyes.all(STAGES) if w.isChecked()), None)  # type: ignore[attr-defined]
        if row is None:
            raise Stuck("no row of the rail is marked as open")
        self._click(row)

    def enter(self, button: str, within: str = "") -> None:
        self.press(button, within)

    def empty(self, field: QWidget) -> None:
        """Three clicks mark the line."""
        at = self._spot(field)
        QTest.mouseDClick(self.glass, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)
        QTest.mouseClick(self.glass, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)

    def choose(self, list_name: str, part: str) -> None:
        self.near()
        view = self.eyes.control(list_name)
        wanted = self.eyes.line(list_name, part)
        assert isinstance(view, QAbstractItemView)
        self._show_line(view, wanted)
        box = view.visualRect(view.model().index(wanted, 0)).intersected(view.viewport().rect())
        self._click(view.viewport(), box.center())

    def open_line(self, list_name: str, part: str) -> None:
        self.choose(list_name, part)

    def panel(self, name: str) -> None:
        self.near()
        if self.eyes.selected_panel() == name:
            return
        seen = self.eyes.panel(name)
        self._click_at(self.eyes.window.mapFromGlobal(seen.at), f"the panel “{name}”")
        if not self.eyes.wait(lambda: self.eyes.selected_panel() == name):
            raise Stuck(f"“{name}” was clicked and “{self.eyes.selected_panel()}” is selected")

    def place(self, name: str, across: float, down: float, from_words_mm: tuple[float, float] | None = None) -> None:
        self.near()
        box = self.eyes.panel(name).box
        spot = box.topLeft() + QPoint(round(across * box.width()), round(down * box.height()))
        self._click_at(self.eyes.window.mapFromGlobal(spot), f"a place on “{name}”")

    def act(self, button: str, key: str, within: str = "") -> None:
        self.press(button, within)

    def answer(self, name: str, within: str = "") -> None:
        self.press(name, within)

    def take_in(self, name: str) -> None:
        self.near()
        self._click_at(self.eyes.window.mapFromGlobal(self.eyes.panel(name).at), f"the panel “{name}”")

    def ask_person(self) -> None:
        self.press("Who is entering")

    def open_row(self, title: str) -> None:
        self.press(title, STAGES)

    def undo(self) -> None:
        self.press("Undo the last entry")

    def redo(self) -> None:
        self.press("Do again what was taken back")

    def name_file(self, glass: QWindow, dialog: QFileDialog, field: QLineEdit, path: str) -> None:
        """A press beside the names that are proposed while typing closes those first; the next one takes the file."""
        box = dialog.findChild(QDialogButtonBox)
        assert isinstance(box, QDialogButtonBox)
        take = box.button(QDialogButtonBox.StandardButton.Open)
        at, take_at = (w.mapTo(dialog, w.rect().center()) for w in (field, take))
        QTest.mouseClick(glass, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)
        if not self.eyes.wait(field.hasFocus):
            raise Stuck("the name of the file was clicked and does not take the typing")
        self.write(path)

        def taken() -> bool:
            if not self.dialogs():
                return True
            QTest.mouseClick(glass, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, take_at)
            return not self.dialogs()

        if not self.eyes.wait(taken):
            raise Stuck(f"“{path}” is typed and the button does not take it")

    def near(self) -> None:
        far = self.far_view()
        if far is not None:
            self._click_at(far.mapTo(self.eyes.window, far.rect().center()), "the far view")
            if not self.eyes.wait(lambda: self.far_view() is None):
                raise Stuck("a click does not close the far view")

    def _click(self, widget: QWidget, at: QPoint | None = None) -> None:
        spot = self._spot(widget, at)
        there = self.eyes.window.childAt(spot)
        if there is None or not (there is widget or widget.isAncestorOf(there)):
            over = (spoken_name(there) or type(there).__name__) if there is not None else "nothing"
            raise Stuck(f"“{spoken_name(widget)}” cannot be clicked: “{over}” lies there")
        self._click_at(spot, spoken_name(widget))

    def _click_at(self, spot: QPoint, what: str) -> None:
        if not self.eyes.window.rect().contains(spot):
            raise Stuck(f"{what} lies outside the window")
        QTest.mouseClick(self.glass, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, spot)

    def _spot(self, widget: QWidget, at: QPoint | None = None) -> QPoint:
        """Where to click, in the window; scrolled into sight first."""
        wanted = QRect(at, at) if at is not None else widget.rect()
        area = _scroller(widget)
        if area is not None and not _inside(widget, wanted.center(), area):
            self._scroll(area, lambda: _inside(widget, wanted.center(), area), widget)
        return widget.mapTo(self.eyes.window, wanted.center())

    def _show_line(self, view: QAbstractItemView, row: int) -> None:
        index = view.model().index(row, 0)
        text = lines_of(view)[row]

        def seen() -> bool:
            box = view.visualRect(index).intersected(view.viewport().rect())
            return box.height() > 8

        if not seen():
            up = view.visualRect(index).top() < 0
            for _notch in range(MOST_NOTCHES):
                if seen():
                    return
                self._notch(view.viewport(), up)
            raise Stuck(f"the wheel does not bring “{text}” into sight")

    def _scroll(self, area: QAbstractScrollArea, seen: object, widget: QWidget) -> None:
        up = widget.mapTo(area.viewport(), QPoint(0, 0)).y() < 0
        for _notch in range(MOST_NOTCHES):
            if seen():  # type: ignore[operator]
                return
            self._notch(area.viewport(), up)
        raise Stuck(f"the wheel does not bring “{spoken_name(widget)}” into sight")

    def _notch(self, viewport: QWidget, up: bool) -> None:
        at = viewport.mapTo(self.eyes.window, QPoint(viewport.width() - 3, viewport.height() // 2))
        QTest.wheelEvent(self.glass, at, QPoint(0, NOTCH if up else -NOTCH))


def _scroller(widget: QWidget) -> QScrollArea | None:
    around = widget.parentWidget()
    while around is not None and not isinstance(around, QScrollArea):
        around = around.parentWidget()
    return around


def _inside(widget: QWidget, point: QPoint, area: QScrollArea) -> bool:
    return area.viewport().rect().adjusted(0, 4, 0, -4).contains(widget.mapTo(area.viewport(), point))
