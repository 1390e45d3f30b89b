"""Where the first trial of a finish group starts, with what served on like paint in this shop."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.cure import cure_of
from detailbench.findings.like_paint import like_paint
from detailbench.findings.mild_end import thickness_word
from detailbench.findings.trial_stops import no_trial_here
from detailbench.findings.trial_story import known_range
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup
from detailbench.trials.start import Start, where_to_start

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


def today_or_arrival(picture: JobPicture, day: date | None) -> date:
    """The day asked about, else the day the car came."""
    return day or (picture.visits[-1].arrived_at.date() if picture.visits else picture.job.entered_at.date())


def served_before(picture: JobPicture, group: FinishGroup, earlier: Iterable[JobPicture]) -> int | None:
    """The mildest rung that served on like paint, in the group's own range: the likest, and of those the newest."""
    allowed = [i for i, seen in enumerate(known_range(picture, group.id)) if seen.usable]
    found = like_paint(picture, group.id, earlier)
    for word in ALIKE:
        served = [box.ch for box, likeness in found if likeness == word and box.ch < box.gl]
        if served:
            return allowed[served[-1]]
    return None


def start_for(
    picture: JobPicture,
    group: FinishGroup,
    panel: str = "",
    *,
    served_before: int | None = None,
    day: date | None = None,
) -> Start:
    """Where the first trial of a group starts. ``served_before``: the rung that served on like paint in this shop;
    ``day``: today, for a refinish that may not have cured (else the day the car came). Raises BadInput when the shop
    has no combinations yet."""
    range_ = known_range(picture, group.id)
    if not range_:
        raise BadInput(_("The shop has no combinations yet; add some under Shop."), field="combination")
    today = today_or_arrival(picture, day)
    stopped = no_trial_here(picture, group, panel, today)
    if stopped:
        return Start(None, stopped)
    return where_to_start(
        range_,
        thickness=thickness_word(picture, group, panel),
        served_before=served_before,
        cure=cure_of(picture, group, today),
    )
