"""Where Tab leads: rail, header, map, card, strip, and within each as one reads, whatever was built when; and who has
the keys when what had them hides itself or goes dead."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QWidget

from detailbench.screens.actions import TEXT_FIELDS

SAME_ROW_PX = 12


def stops(window: QWidget, areas: Iterable[QWidget]) -> list[QWidget]:
    """Every widget Tab stops at, in order; hidden and disabled ones are left out."""
    out: list[QWidget] = []
    for area in areas:
        if area.isVisibleTo(window):
            found = [w for w in _shown(area) if _stops_at(w) and w not in out]
            out += sorted(found, key=lambda w: _reading_order(w, window))
    return out


def next_stop(window: QWidget, areas: Sequence[QWidget], forward: bool) -> QWidget | None:
    """The stop after (or before) what has the focus; round at the ends. An area that has the keys itself leads to its
    own first stop. What has the focus and can keep it no longer hands it on within its area."""
    all_stops = stops(window, areas)
    now = QApplication.focusWidget()
    if now in all_stops:
        return all_stops[(all_stops.index(now) + (1 if forward else -1)) % len(all_stops)]
    area = next((a for a in areas if now is not None and (a is now or a.isAncestorOf(now))), None)
    if now is not None and area is not None and area.isVisibleTo(window):
        if now is not area and not (now.isVisibleTo(window) and now.isEnabled()):
            return _handed_to(now, area, window)
        inside = stops(window, (area,))
        if inside:
            return inside[0 if forward else -1]
    return all_stops[0 if forward else -1] if all_stops else None


def _handed_to(now: QWidget, area: QWidget, window: QWidget) -> QWidget:
    """The next stop in the area that leaves the stage its keys, else the area itself: a field would take the letters of
    an outcome, a choice its Enter."""
    here = _reading_order(now, window)
    found = (w for w in stops(window, (area,)) if w is not area and not _takes_keys(w))
    return next((w for w in found if _reading_order(w, window) >= here), area)


def _takes_keys(widget: QWidget) -> bool:
    return isinstance(widget, (*TEXT_FIELDS, QComboBox)) or (
        isinstance(widget, QAbstractButton) and widget.isCheckable()
    )


def _shown(widget: QWidget) -> Iterator[QWidget]:
    """It and what is shown within it; what is hidden is not looked into, and most of a window is."""
    yield widget
    for child in widget.children():
        if isinstance(child, QWidget) and not child.isHidden():
            yield from _shown(child)


def _stops_at(widget: QWidget) -> bool:
    policy = widget.focusPolicy()
    return bool(policy.value & Qt.FocusPolicy.TabFocus.value) and widget.isEnabled() and widget.focusProxy() is None


def _reading_order(widget: QWidget, window: QWidget) -> tuple[int, int]:
    at = widget.mapTo(window, QPoint(0, 0))
    return (at.y() + widget.height() // 2) // SAME_ROW_PX, at.x()
