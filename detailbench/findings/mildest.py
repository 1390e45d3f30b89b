"""Whether the adopted combination was the mildest that served: what documents may say."""

from __future__ import annotations

from detailbench.findings.half_rungs import half_key, halved
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup
from detailbench.trials.adopt import mildest_words


def mildest_sentence(picture: JobPicture, group: FinishGroup, combination_id: str) -> str | None:
    """What documents may say of the adopted combination: "the mildest that served" or "the mildest tried". Where it
    served only with a smaller section or worked longer, it is proven the mildest by itself as usual."""
    found = halved(picture, group.id)
    at = {seen.rung.key: i for i, seen in enumerate(found.range)}
    key, half = combination_id, half_key(combination_id)
    if key not in at:
        return None
    usual = found.range[at[key]]
    if half in at and not usual.works and found.range[at[half]].works:
        key = half
    return mildest_words(found.range, at[key])
