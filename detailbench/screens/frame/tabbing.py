"""Where Tab leads: rail, header, map, card, strip, and within each as one reads, whatever was built when."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QWidget

SAME_ROW_PX = 12


def stops(window: QWidget, areas: Iterable[QWidget]) -> list[QWidget]:
    """Every widget Tab stops at, in order; hidden and disabled ones are left out."""
    out: list[QWidget] = []
    for area in areas:
        if area.isVisibleTo(window):
            found = [w for w in (area, *area.findChildren(QWidget)) if _stops_at(w, window) and w not in out]
            out += sorted(found, key=lambda w: _reading_order(w, window))
    return out


def next_stop(window: QWidget, areas: Iterable[QWidget], forward: bool) -> QWidget | None:
    """The stop after (or before) what has the focus; round at the ends."""
    all_stops = stops(window, areas)
    if not all_stops:
        return None
    now = QApplication.focusWidget()
    if now not in all_stops:
        return all_stops[0 if forward else -1]
    return all_stops[(all_stops.index(now) + (1 if forward else -1)) % len(all_stops)]


def _stops_at(widget: QWidget, window: QWidget) -> bool:
    policy = widget.focusPolicy()
    return (
        bool(policy.value & Qt.FocusPolicy.TabFocus.value)
        and widget.isEnabled()
        and widget.isVisibleTo(window)
        and widget.focusProxy() is None
    )


def _reading_order(widget: QWidget, window: QWidget) -> tuple[int, int]:
    at = widget.mapTo(window, QPoint(0, 0))
    return (at.y() + widget.height() // 2) // SAME_ROW_PX, at.x()
