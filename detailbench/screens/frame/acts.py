"""The window's own actions, as data. Stages add theirs."""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

from detailbench.basics.texts import _
from detailbench.screens.actions import Action
from detailbench.screens.frame.far_keeper import FarKeeper
from detailbench.screens.frame.frame import Frame
from detailbench.screens.frame.live import Live
from detailbench.screens.frame.map_shows import MapShows
from detailbench.screens.frame.owner_keeper import OwnerKeeper
from detailbench.screens.frame.safe_keeper import SafeKeeper
from detailbench.screens.frame.wipe_lock import WipeLock
from detailbench.screens.unsaved import KEY


class ActingFrame(Frame, Protocol):
    """A window whose acts can be bound to keys."""

    wipe_lock: WipeLock
    far: FarKeeper
    live: Live
    safe: SafeKeeper
    shows: MapShows
    owner: OwnerKeeper

    @property
    def has_top(self) -> bool: ...
    def explain(self) -> None: ...
    def ask_person(self) -> None: ...
    def switch_look(self) -> None: ...
    def undo(self) -> None: ...
    def redo(self) -> None: ...
    def find_panel(self) -> None: ...
    def close_top(self) -> None: ...
    def opener(self, key: str) -> Callable[[], None]: ...
    def rail_entries(self) -> list[tuple[str, str]]: ...


def window_actions(window: ActingFrame) -> tuple[Action, ...]:
    """Every act of the frame; the strip lists those that are enabled and shown."""
    context = window.context

    def has_job() -> bool:
        return context.job_id is not None

    def has_open_job() -> bool:
        return context.picture is not None

    def on_map() -> bool:
        return window.centre.page is None and context.picture is not None and not window.far.shown

    fixed = (
        Action("why", _("why"), "F1", window.explain),
        Action("person", _("person"), "F2", window.ask_person, lambda: context.bench is not None),
        Action("mishap", _("mishap"), "F4", window.owner.mishap, has_open_job),
        Action("owner", _("owner"), "Ctrl+O", window.owner.asked, has_open_job),
        Action("again", _("save again"), KEY, window.safe.try_again, lambda: context.unsaved.anything),
        Action("far", _("far view"), "F6", window.far.switch, has_job),
        Action("look", _("look"), "F7", window.switch_look),
        Action("wipe", _("wipe lock"), "F8", window.wipe_lock.switch),
        Action("undo", _("undo"), "Ctrl+Z", window.undo, lambda: window.live.can_undo),
        Action("redo", _("do again"), "Ctrl+Y", window.redo, lambda: window.live.can_redo),
        Action("find", _("panel"), "/", window.find_panel, on_map),
        Action("show", _("show"), "Ctrl+M", window.shows.ask, on_map, shown=False),
        Action("map", _("map"), "Ctrl+G", window.to_map, on_map, shown=False),
        Action("away", _("close"), "Esc", window.close_top, lambda: window.has_top, shown=False),
    )
    rows = tuple(
        Action(f"go_{key}", title, f"Ctrl+{i % 10}", window.opener(key), lambda: True, shown=False)
        for i, (key, title) in enumerate(window.rail_entries(), start=1)
        if i <= 10  # the tenth row is Ctrl+0
    )
    return fixed + rows
