"""What the parts of the frame may know of the window they belong to."""

from __future__ import annotations

from typing import Protocol

from detailbench.screens.context import Context
from detailbench.screens.entry.burst_filter import BurstFilter
from detailbench.screens.frame.centre import Centre
from detailbench.screens.frame.notices import Flash, NoticeLine
from detailbench.screens.frame.rail import Rail
from detailbench.screens.frame.strip import EntryStrip
from detailbench.screens.look.dress import Dress
from detailbench.screens.stages.stage import Page, Stage


class Frame(Protocol):
    """The window, as its parts see it."""

    stages: tuple[Stage, ...]
    stage: Stage | None
    page: Page | None
    context: Context
    dress: Dress
    rail: Rail
    centre: Centre
    strip: EntryStrip
    notices: NoticeLine
    flash: Flash
    bursts: BurstFilter

    def to_map(self) -> None: ...
    def show_keys(self) -> None: ...
