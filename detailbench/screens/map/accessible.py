"""The map for a screen reader: one child a panel, named with what is known about it."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, QPoint, QRect
from PySide6.QtGui import QAccessible, QAccessibleInterface, QColor, QWindow
from PySide6.QtWidgets import QAccessibleWidget

from detailbench.body.names import panel_name
from detailbench.screens.map.view import PanelMap


class PanelVoice(QAccessibleInterface):
    """One panel. It is no QObject of its own; the map answers for it."""

    def __init__(self, map_: PanelMap, key: str, parent: QAccessibleInterface) -> None:
        super().__init__()
        self._map = map_
        self._key = key
        self._parent = parent

    def isValid(self) -> bool:
        return self._key in self._map.items_by_key

    def object(self) -> QObject | None:  # type: ignore[override]  # Qt takes None
        return None

    def window(self) -> QWindow | None:  # type: ignore[override]  # Qt takes None
        return self._map.window().windowHandle()

    def parent(self) -> QAccessibleInterface:
        return self._parent

    def child(self, index: int) -> QAccessibleInterface | None:  # type: ignore[override]  # Qt takes None
        return None

    def childAt(self, x: int, y: int) -> QAccessibleInterface | None:  # type: ignore[override]  # Qt takes None
        return None

    def childCount(self) -> int:
        return 0

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        return -1

    def focusChild(self) -> QAccessibleInterface | None:  # type: ignore[override]  # Qt takes None
        return None

    def role(self) -> QAccessible.Role:
        return QAccessible.Role.ListItem

    def rect(self) -> QRect:
        item = self._map.items_by_key[self._key]
        box = self._map.viewportTransform().mapRect(item.shape().boundingRect()).toRect()
        return QRect(self._map.viewport().mapToGlobal(box.topLeft()), box.size())

    def text(self, kind: QAccessible.Text) -> str:
        if kind == QAccessible.Text.Name:
            return panel_name(self._key)
        if kind == QAccessible.Text.Description:
            return self._map.spoken(self._key)
        if kind == QAccessible.Text.Value:
            return self._map.fill_of(self._key).says or self._map.fill_of(self._key).text
        return ""

    def setText(self, kind: QAccessible.Text, text: str) -> None:
        """A panel's name is not the reader's to change."""

    def state(self) -> QAccessible.State:
        state = QAccessible.State()
        state.selectable = True
        state.selected = self._map.chosen == self._key
        state.focusable = True
        state.focused = self._map.hasFocus() and self._map.chosen == self._key
        return state

    def foregroundColor(self) -> QColor:
        return self._map.items_by_key[self._key].ink

    def backgroundColor(self) -> QColor:
        return self._map.palette().base().color()


class MapVoice(QAccessibleWidget):
    """The map itself; its children are the panels, in the outline's order."""

    def __init__(self, map_: PanelMap) -> None:
        super().__init__(map_, QAccessible.Role.List, map_.accessibleName())
        self._map = map_
        self._voices: dict[str, PanelVoice] = {}

    def _keys(self) -> list[str]:
        return list(self._map.items_by_key)

    def childCount(self) -> int:
        return len(self._keys())

    def child(self, index: int) -> QAccessibleInterface | None:  # type: ignore[override]  # Qt takes None
        keys = self._keys()
        if not 0 <= index < len(keys):
            return None
        key = keys[index]
        if key not in self._voices:
            self._voices[key] = PanelVoice(self._map, key, self)
        return self._voices[key]

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        name = child.text(QAccessible.Text.Name)
        return next((i for i, key in enumerate(self._keys()) if panel_name(key) == name), -1)

    def childAt(self, x: int, y: int) -> QAccessibleInterface | None:  # type: ignore[override]  # Qt takes None
        spot = self._map.mapToScene(self._map.viewport().mapFromGlobal(QPoint(x, y)))
        for i, item in enumerate(self._map.items_by_key.values()):
            if item.shape().contains(spot):
                return self.child(i)
        return None

    def focusChild(self) -> QAccessibleInterface | None:  # type: ignore[override]  # Qt takes None
        keys = self._keys()
        return self.child(keys.index(self._map.chosen)) if self._map.chosen in keys else None


def voice_factory() -> Callable[[str, QObject], QAccessibleInterface | None]:
    """A factory for ``QAccessible.installFactory``; it keeps the voices alive as long as their maps."""
    kept: dict[int, MapVoice] = {}

    def voice(_key: str, thing: QObject) -> QAccessibleInterface | None:
        if not isinstance(thing, PanelMap):
            return None
        number = id(thing)
        if number not in kept:
            kept[number] = MapVoice(thing)
            thing.destroyed.connect(lambda: kept.pop(number, None))
        return kept[number]

    return voice
