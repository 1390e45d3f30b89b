"""What can be seen in the window or heard of it: names, texts, lines, states. Nothing behind the glass is read."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QTextEdit,
    QWidget,
)

from window.stuck import Stuck, Unusable

CONTROLS = (QAbstractButton, QLineEdit, QPlainTextEdit, QTextEdit, QAbstractItemView)
FIELDS = (QLineEdit, QPlainTextEdit, QTextEdit)
MAP = "Panel map"
NOTICES = "Notices"
PROBES = 24  # points tried along each side of a panel's box to find one that lies on the panel

Wait = Callable[[Callable[[], bool]], bool]


@dataclass(frozen=True)
class PanelSeen:
    """A panel as the map tells of it. ``at``: a point of the map that lies on it."""

    name: str
    says: str
    selected: bool
    box: QRect
    at: QPoint


class Eyes:
    """Looks at one window. ``wait`` looks again and again until a fact is there, for a bounded time."""

    def __init__(self, window: QWidget, wait: Wait) -> None:
        self.window = window
        self.wait = wait

    # what is there
    def all(self, within: str = "") -> Iterator[QWidget]:
        """Every widget that is shown, inside the shown ones of this name if one is given."""
        roots = [self.window] if not within else [w for w in shown(self.window) if w.accessibleName() == within]
        for root in roots:
            yield from shown(root)

    def controls(self, name: str, within: str = "") -> list[QWidget]:
        """Everything to press, type into or choose from that bears this name."""
        return [w for w in self.all(within) if isinstance(w, CONTROLS) and spoken_name(w) == name]

    def has(self, name: str, within: str = "") -> bool:
        """Whether exactly one usable control of this name is there now."""
        return len([w for w in self.controls(name, within) if w.isEnabled()]) == 1

    def control(self, name: str, within: str = "") -> QWidget:
        """The one usable control of this name, waited for. Two of them are a defect: nobody could tell them apart."""
        usable: list[QWidget] = []

        def one() -> bool:
            usable[:] = [w for w in self.controls(name, within) if w.isEnabled()]
            return len(usable) == 1

        if not self.wait(one):
            found = self.controls(name, within)
            if not found:
                near = sorted({spoken_name(w) for w in self.all(within) if isinstance(w, CONTROLS)} - {""})
                raise Stuck(f"there is no “{name}” to use{_in(within)}; there are: {', '.join(near)}")
            if not any(w.isEnabled() for w in found):
                raise Unusable(f"“{name}” is there and cannot be used")
            raise Stuck(f"“{name}” is there {len(found)} times")
        return usable[0]

    def names(self, within: str = "") -> list[str]:
        """What there is to press, type into or choose from, by name."""
        return [spoken_name(w) for w in self.all(within) if isinstance(w, CONTROLS)]

    def name_like(self, pattern: str, within: str = "") -> str:
        """The whole name of the one usable control whose name fits; names that carry a figure change with it."""

        def found() -> list[str]:
            usable = [w for w in self.all(within) if isinstance(w, CONTROLS) and w.isEnabled()]
            return [name for w in usable if re.fullmatch(pattern, name := spoken_name(w))]

        names: list[str] = []

        def one() -> bool:
            names[:] = found()
            return len(names) == 1

        if not self.wait(one):
            raise Unusable(f"{len(names)} usable names fit “{pattern}”{_in(within)}: {names}")
        return names[0]

    # what is written
    def texts(self, within: str = "") -> list[str]:
        """Every text that can be read or heard, as it stands."""
        found: list[str] = []
        for widget in self.all(within):
            if isinstance(widget, QLabel):
                found += [widget.text(), widget.accessibleName()]
            elif isinstance(widget, QAbstractButton):
                found += [widget.text().replace("&&", "&"), widget.accessibleName()]
            elif isinstance(widget, QAbstractItemView):
                found += lines_of(widget)
            elif isinstance(widget, FIELDS):
                found.append(content(widget))
            found.append(widget.accessibleDescription())
        return [text for text in found if text]

    def says(self, part: str, within: str = "") -> bool:
        """Whether a text with this in it can be read now."""
        return any(part in text for text in self.texts(within))

    def expect(self, part: str, within: str = "") -> None:
        """Wait until a text with this in it can be read."""
        if not self.wait(lambda: any(part in text for text in self.texts(within))):
            said = " | ".join(dict.fromkeys(self.texts(within)))
            raise Stuck(f"“{part}” cannot be read{_in(within)}; the screen says: {said}")

    def expect_notice(self, part: str) -> None:
        """Wait until the notice line says this."""
        if not self.wait(lambda: part in self.notice()):
            said = self.notice()
            stuck = Unusable if said.startswith("stop:") else Stuck  # a stop may be what the next line looks for
            raise stuck(f"no notice with “{part}”; the last one is: {said}")

    def notice(self) -> str:
        """What the notice line says."""
        return self.said_of(NOTICES)

    def said_of(self, name: str, within: str = "") -> str:
        """What is told beside a name: what stands in a field, else its description."""
        for widget in self.all(within):
            if spoken_name(widget) == name:
                return content(widget) if isinstance(widget, FIELDS) else widget.accessibleDescription()
        raise Stuck(f"nothing named “{name}” is shown")

    def lines(self, name: str) -> list[str]:
        """The lines of a list."""
        found = self.control(name)
        if not isinstance(found, QAbstractItemView):
            raise Stuck(f"“{name}” is no list")
        return lines_of(found)

    def line(self, name: str, part: str) -> int:
        """The one line of a list that begins with this, or else the one that has it in it; waited for."""
        if not self.wait(lambda: any(part in text for text in self.lines(name))):
            raise Unusable(f"“{name}” has no line with “{part}”; its lines are: {self.lines(name)}")
        lines = self.lines(name)
        found = [i for i, text in enumerate(lines) if text.startswith(part)]
        found = found or [i for i, text in enumerate(lines) if part in text]
        if len(found) > 1:
            raise Stuck(f"“{name}” has {len(found)} lines with “{part}”")
        return found[0]

    def not_as_typed(self) -> list[str]:
        """Texts that would not be shown as they were typed: read as markup, or with a & taken for a key."""
        shown_now = list(self.all())
        labels = [w for w in shown_now if isinstance(w, QLabel) and w.textFormat() != Qt.TextFormat.PlainText]
        buttons = [w for w in shown_now if isinstance(w, QAbstractButton) and "&" in w.text().replace("&&", "")]
        return [w.text() for w in (*labels, *buttons) if w.text()]

    # the map
    def panels(self) -> dict[str, QAccessibleInterface]:
        """The panels the map tells of, by name."""
        voice = QAccessible.queryAccessibleInterface(self._map())
        children = [voice.child(i) for i in range(voice.childCount())]
        return {child.text(QAccessible.Text.Name): child for child in children if child is not None}

    def panel(self, name: str) -> PanelSeen:
        """One panel of the map."""
        voice = self.panels().get(name)
        if voice is None:
            raise Stuck(f"the map has no “{name}”")
        told = voice.text(QAccessible.Text.Description)
        return PanelSeen(name, told, bool(voice.state().selected), voice.rect(), self._on(name, voice.rect()))

    def told(self, name: str) -> str:
        """What the map tells of a panel."""
        return self.panels()[name].text(QAccessible.Text.Description)

    def selected_panel(self) -> str:
        """The name of the panel the map says is selected, or empty."""
        return next((n for n, v in self.panels().items() if v.state().selected), "")

    def _map(self) -> QWidget:
        found = [w for w in self.all() if w.accessibleName() == MAP]
        if not found:
            raise Stuck("the map is not shown")
        return found[0]

    def _on(self, name: str, box: QRect) -> QPoint:
        """A point on the glass that lies on a panel: its middle, else the nearest to it that the map says is on it."""
        voice = QAccessible.queryAccessibleInterface(self._map())
        middle = box.center()
        step_x, step_y = max(box.width() // PROBES, 1), max(box.height() // PROBES, 1)
        spots = [
            QPoint(x, y)
            for x in range(box.left(), box.right() + 1, step_x)
            for y in range(box.top(), box.bottom() + 1, step_y)
        ]
        for spot in (middle, *sorted(spots, key=lambda p: (p - middle).manhattanLength())):
            there = voice.childAt(spot.x(), spot.y())
            if there is not None and there.text(QAccessible.Text.Name) == name:
                return spot
        return middle


def shown(root: QWidget) -> Iterator[QWidget]:
    """What is shown inside a widget; what is hidden is not looked into."""
    for child in root.children():
        if isinstance(child, QWidget) and child.isVisible():
            yield child
            yield from shown(child)


def spoken_name(widget: QWidget) -> str:
    """What a widget is called for the ear."""
    if widget.accessibleName():
        return widget.accessibleName()
    if isinstance(widget, QAbstractButton):
        return widget.text().replace("&&", "&")
    return ""


def content(widget: QWidget) -> str:
    """What stands in a field."""
    if isinstance(widget, QLineEdit):
        return widget.text()
    if isinstance(widget, (QPlainTextEdit, QTextEdit)):
        return widget.toPlainText()
    raise Stuck(f"{spoken_name(widget)} is no field")


def lines_of(view: QAbstractItemView) -> list[str]:
    """The lines of a list, as they are read out where that differs."""
    model = view.model()
    found = []
    for row in range(model.rowCount()):
        index = model.index(row, 0)
        found.append(str(index.data(Qt.ItemDataRole.AccessibleTextRole) or index.data() or ""))
    return found


def _in(within: str) -> str:
    return f" in “{within}”" if within else ""
