"""Whether the adopted combination was the mildest that served: what documents may say."""

from __future__ import annotations

from detailbench.findings.half_rungs import half_key, halved
from detailbench.findings.kit_renewal import stands_for
from detailbench.findings.processes import process_of, steps_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup
from detailbench.trials.adopt import mildest_words, serves
from detailbench.trials.rungs import Range


def mildest_sentence(
    picture: JobPicture, group: FinishGroup, combination_id: str, *, cut: bool | None = None
) -> str | None:
    """What documents may say of the adopted combination: "the mildest that served" or "the mildest tried"; None where
    it is not known to serve any more, or a milder one served too. Where it served only with a smaller section or worked
    longer, it is proven the mildest by itself as usual. ``cut``: it is the first of two steps, so it serves where it
    clears; None: as the group's process says, and where none begins with it, where it is not known to finish clear."""
    range_, at, cut = _served(picture, group, combination_id, cut)
    return None if at is None else mildest_words(range_, at, cut=cut)


def milder_served(picture: JobPicture, group: FinishGroup, combination_id: str, *, cut: bool) -> bool:
    """A milder combination of the range is known to serve too: by itself, or, of a ``cut``, to clear."""
    range_, at, cut = _served(picture, group, combination_id, cut)
    return at is not None and any(serves(seen, cut=cut) for seen in range_[:at])


def _served(
    picture: JobPicture, group: FinishGroup, combination_id: str, cut: bool | None
) -> tuple[Range, int | None, bool]:
    """(the range with its half-rungs, where the combination stands in it, whether it is asked about as a cut)."""
    found = halved(picture, group.id)
    key = stands_for(picture.shop, combination_id)
    at = {seen.rung.key: i for i, seen in enumerate(found.range)}
    if key not in at:
        return found.range, None, bool(cut)
    half = at.get(half_key(key))
    tried = [i for i in (at[key], half) if i is not None]
    if cut is None:
        cut = _adopted_as_cut(picture, group, key)
    if cut is None:
        cut = not any(serves(found.range[i], cut=False) for i in tried)
    as_cut = cut
    return found.range, next((i for i in tried if serves(found.range[i], cut=as_cut)), at[key]), cut


def _adopted_as_cut(picture: JobPicture, group: FinishGroup, key: str) -> bool | None:
    """Whether the group's process refines on top of this first step; None where no process begins with it."""
    process = process_of(picture, group.id)
    steps = [s for s in steps_of(picture, process) if s.means != "sanding"] if process is not None else []
    if not steps or stands_for(picture.shop, steps[0].combination_id) != key:
        return None
    return len(steps) > 1
