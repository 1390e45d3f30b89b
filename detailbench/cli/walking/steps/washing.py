"""The wash step by step, the white-pad rub, what goes into the supplement."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import PANEL, PANELS, TEXT, word
from detailbench.cli.walking.step import Step, flag, named, value


@dataclass(frozen=True, kw_only=True)
class Wash(Step):
    verb = "wash"
    does = "a step of the wash on these panels, or left out and why; cover-off: a coating was taken off before the wipe"
    kind: str = value(word("pre_rinse", "contact_wash", "iron", "tar", "clay", "rinse", "dry", "panel_wipe"))
    panels: tuple[str, ...] = value(PANELS)
    product: str = named(TEXT, "")
    not_: str = named(TEXT, "")
    note: str = named(TEXT, "")
    cover_off: bool = flag()


@dataclass(frozen=True, kw_only=True)
class Rub(Step):
    verb = "rub"
    does = "white pad and mild polish on a hidden place of the panel in hand"
    found: str = value(word("colour", "no_colour", "cannot_tell"))
    note: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class Supplement(Step):
    verb = "supplement"
    does = "something found after the arrival record, for the owner; of the whole car unless a panel is named"
    words: str = value(TEXT)
    on: str = named(PANEL, "")


@dataclass(frozen=True, kw_only=True)
class SupplementMark(Step):
    verb = "supplement-mark"
    does = "the newest mark on the panel in hand goes into the supplement, in its own words"


@dataclass(frozen=True, kw_only=True)
class SupplementStrike(Step):
    verb = "supplement-strike"
    does = "the newest item is struck out of the supplement, while no closed supplement lists it"
