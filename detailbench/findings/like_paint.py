"""Like paint in this shop before: what each earlier job's trials left possible, and how like its paint is."""

from __future__ import annotations

from collections.abc import Iterable

from detailbench.findings.brought_in import as_own
from detailbench.findings.kit_renewal import what_it_is
from detailbench.findings.trial_story import known_range
from detailbench.record.picture import JobPicture, ShopPicture
from detailbench.trials.adviser_prior import Box, whole
from detailbench.trials.adviser_seen import box_of
from detailbench.trials.rungs import Range, RungSeen

YEARS_ALIKE = 3  # common practice, no source


def like_paint(picture: JobPicture, group_id: str, earlier: Iterable[JobPicture]) -> tuple[tuple[Box, str], ...]:
    """(box, likeness) of every finish group of other jobs whose trials say something about the range used here.

    Combinations are matched by what they are, not by where they stand or what they are called; a job that
    used none of them is left out, and so is what another workshop tried. A refinish is like no paint that was not
    refinished.
    """
    here = tuple(s for s in known_range(picture, group_id) if s.usable)
    own = next((g for g in picture.groups if g.id == group_id), None)
    system = own.paint_system if own is not None else "unknown"
    refinished = own is not None and own.refinished == "yes"
    found = []
    for other in as_own(earlier):
        if other.job.id == picture.job.id:
            continue
        for group in other.groups:
            if group.paint_system != system:
                continue
            box = box_of(_on_this_range(picture.shop, here, known_range(other, group.id)))
            if box != whole(len(here)) and box.holds:
                # a refinish is another paint than the maker's, whatever code the car carries
                alike = (group.refinished == "yes") is refinished
                found.append((box, likeness(picture, other) if alike else "other"))
    return tuple(found)


def code_key(code: str) -> str:
    """A colour code as it is compared: case and spaces aside."""
    return "".join(code.split()).casefold()


def likeness(picture: JobPicture, other: JobPicture) -> str:
    """same_code, same_maker_and_age or other, by what is noted of the two cars; nothing noted is nothing alike."""
    mine, theirs = picture.car, other.car
    code = code_key(mine.paint_code)
    if code and code == code_key(theirs.paint_code):
        return "same_code"
    maker = mine.vin.strip().upper()[:3]  # ISO 3780: the first three figures name the maker
    known = len(maker) == 3 and maker == theirs.vin.strip().upper()[:3]
    if known and mine.year is not None and theirs.year is not None and abs(mine.year - theirs.year) <= YEARS_ALIKE:
        return "same_maker_and_age"
    return "other"


def _on_this_range(shop: ShopPicture, here: Range, theirs: Range) -> tuple[RungSeen, ...]:
    """What was seen there, on the rungs of here."""
    what = {c.id: what_it_is(shop, c) for c in shop.combinations}
    by_what = {what[s.rung.key]: s for s in theirs}
    return tuple(by_what.get(what[s.rung.key], RungSeen(s.rung)) for s in here)
