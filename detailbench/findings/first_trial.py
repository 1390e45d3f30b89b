"""Where the first trial of a finish group starts, with what served on like paint in this shop."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from detailbench.findings.like_paint import like_paint
from detailbench.findings.trial_story import known_range, start_for
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup
from detailbench.trials.start import Start

ALIKE = ("same_code", "same_maker_and_age")  # less alike than that starts nobody anywhere


def first_trial(
    picture: JobPicture,
    group: FinishGroup,
    panel: str = "",
    earlier: Iterable[JobPicture] = (),
    *,
    day: date | None = None,
) -> Start:
    """The first combination to try, as ``start_for``; where like paint was tried in ``earlier`` jobs, from what served
    there. Raises BadInput when the shop has no combinations yet."""
    return start_for(picture, group, panel, served_before=served_before(picture, group, earlier), day=day)


def served_before(picture: JobPicture, group: FinishGroup, earlier: Iterable[JobPicture]) -> int | None:
    """The mildest rung that served on like paint, in the group's own range: the likest, and of those the newest."""
    allowed = [i for i, seen in enumerate(known_range(picture, group.id)) if not seen.forbidden]
    found = like_paint(picture, group.id, earlier)
    for word in ALIKE:
        served = [box.ch for box, likeness in found if likeness == word and box.ch < box.gl]
        if served:
            return allowed[served[-1]]
    return None
