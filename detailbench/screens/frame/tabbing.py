"""Where Tab leads: rail, header, map, card, strip, and within each as one reads, whatever was built when."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

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


def next_stop(window: QWidget, areas: Sequence[QWidget], forward: bool) -> QWidget | None:
    """The stop after (or before) what has the focus; round at the ends. What has it and can keep it no longer (a button
    that hid itself) hands it on within its own area."""
    all_stops = stops(window, areas)
    if not all_stops:
        return None
    now = QApplication.focusWidget()
    if now not in all_stops:
        return _beside(window, areas, now) or all_stops[0 if forward else -1]
    return all_stops[(all_stops.index(now) + (1 if forward else -1)) % len(all_stops)]


def _beside(window: QWidget, areas: Iterable[QWidget], now: QWidget | None) -> QWidget | None:
    area = next((a for a in areas if now is not None and a.isAncestorOf(now)), None)
    found = stops(window, (area,)) if area is not None else []
    if now is None or not found:
        return None
    here = _reading_order(now, window)
    return next((w for w in found if _reading_order(w, window) >= here), found[-1])


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
