"""How many sections a panel takes and how many minutes, with what the panel's area leaves open."""

from __future__ import annotations

import math
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working

SOURCE = Source("Own arithmetic: tiling the panel with taped patches less their overlap", kind="own derivation")


@dataclass(frozen=True)
class Sections:
    """Sections of a panel: for its stated area, and for the smallest and largest it may be."""

    number: int
    low: int
    high: int
    working: Working


@dataclass(frozen=True)
class Minutes:
    """Minutes of one step on one panel, and for the fewest and most sections."""

    minutes: float
    low: float
    high: float
    working: Working


def sections(*, panel_m2: float, section_m2: float, overlap: float = 0.0, panel_share: float = 0.0) -> Sections:
    """Sections = max(1, ⌈panel·(1 + overlap)/section⌉).

    ``section_m2``: the taped patch; ``overlap``: share by which patches lap; ``panel_share``: the panel's area is
    known to ± this share (0 to below 1). Raises BadInput.
    """
    for name, value in (("panel_m2", panel_m2), ("section_m2", section_m2)):
        if not (math.isfinite(value) and value > 0):
            raise BadInput(_("{what} must be a number above zero.").format(what=opened(name)), field=name, given=value)
    if not (math.isfinite(overlap) and overlap >= 0):
        raise BadInput(_("The overlap cannot be below zero."), field="overlap", given=overlap)
    if not 0 <= panel_share < 1:
        raise BadInput(
            _("The share by which the area may be off lies from 0 to below 1."), field="panel_share", given=panel_share
        )
    number, low, high = (
        _tiles(panel_m2 * by * (1 + overlap) / section_m2) for by in (1, 1 - panel_share, 1 + panel_share)
    )
    working = Working(
        name="sections",
        formula="sections = max(1, ⌈panel area·(1 + overlap)/section⌉), over panel area·(1 ± share)",
        inputs={"panel_m2": panel_m2, "section_m2": section_m2, "overlap": overlap, "panel_share": panel_share},
        results={"sections": number, "sections_low": low, "sections_high": high},
        source=SOURCE,
        changes_with=_("section size, overlap and how well the panel's area is known"),
    )
    return Sections(number, low, high, working)


def _tiles(ratio: float) -> int:
    # a ratio that is whole but for the last binary digits is whole
    return max(1, math.ceil(ratio - 1e-9))


def minutes(
    *,
    sections: int,
    sections_low: int | None = None,
    sections_high: int | None = None,
    spread_s: float,
    polish_s: float,
    wipe_s: float,
    pad_care_every: int = 0,
    pad_care_s: float = 0.0,
    setup_s: float = 0.0,
) -> Minutes:
    """Minutes = sections·(spread + polish + wipe) + pad care after every so many sections + set-up. Raises BadInput."""
    low = sections if sections_low is None else sections_low
    high = sections if sections_high is None else sections_high
    if not 1 <= low <= sections <= high:
        raise BadInput(_("The sections must be at least one, from fewest to most."), field="sections", given=sections)
    for name, value in (
        ("spread_s", spread_s),
        ("polish_s", polish_s),
        ("wipe_s", wipe_s),
        ("pad_care_every", pad_care_every),
        ("pad_care_s", pad_care_s),
        ("setup_s", setup_s),
    ):
        if not (math.isfinite(value) and value >= 0):
            raise BadInput(_("{what} cannot be below zero.").format(what=opened(name)), field=name, given=value)

    def total(count: int) -> float:
        care = count // pad_care_every if pad_care_every else 0
        return (count * (spread_s + polish_s + wipe_s) + care * pad_care_s + setup_s) / 60

    found, fewest, most = total(sections), total(low), total(high)
    working = Working(
        name="minutes",
        formula="minutes = (sections·(spread + polish + wipe) + ⌊sections/every⌋·pad care + set-up)/60",
        inputs={
            "sections": sections,
            "sections_low": low,
            "sections_high": high,
            "spread_s": spread_s,
            "polish_s": polish_s,
            "wipe_s": wipe_s,
            "pad_care_every": pad_care_every,
            "pad_care_s": pad_care_s,
            "setup_s": setup_s,
        },
        results={"minutes": found, "minutes_low": fewest, "minutes_high": most},
        source=SOURCE,
        changes_with=_("seconds per section, section size and set-up"),
        notes=(_("A plan from the shop's own seconds; the range is of the area only, not of the work."),),
    )
    return Minutes(found, fewest, most, working)
