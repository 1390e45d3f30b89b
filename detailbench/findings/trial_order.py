"""What comes first among the trials of a finish group: the mildest on a doubtful refinish, the worst place not first,
the whole process on a second panel before it is adopted."""

from __future__ import annotations

from datetime import date

from detailbench.basics.texts import _
from detailbench.findings.cure import cure_of
from detailbench.findings.gates import held_back
from detailbench.findings.processes import group_of
from detailbench.findings.stop import Stop
from detailbench.findings.trial_story import known_range, trials_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup


def first_trial_stops(picture: JobPicture, group: FinishGroup, combination_id: str, day: date) -> tuple[Stop, ...]:
    """Where nobody knows whether a refinish has cured, the first trial is the mildest that may be used."""
    if cure_of(picture, group, day) != "unknown" or trials_of(picture, group.id):
        return ()
    allowed = [seen.rung for seen in known_range(picture, group.id) if seen.usable]
    if not allowed or allowed[0].key == combination_id:
        return ()
    text = _("Whether the refinish has cured is not known: the first trial here is the mildest, {name}.")
    return (Stop("cure_unknown", text.format(name=allowed[0].label)),)


def worst_too_early(picture: JobPicture, group: FinishGroup, spot: str) -> str:
    """A warning where the worst place is tried before anything serves on the typical one; empty otherwise."""
    if spot != "worst" or has_keeper(picture, group):
        return ""
    return _("The worst place comes second, once something serves on the typical one: so it says what will remain.")


def worst_due(picture: JobPicture, group: FinishGroup) -> str:
    """The sentence that asks for a trial on the worst place, once something serves; empty otherwise."""
    if not has_keeper(picture, group) or any(t.spot == "worst" for t in trials_of(picture, group.id)):
        return ""
    return _("The worst place has not been tried yet: it says what will remain.")


def has_keeper(picture: JobPicture, group: FinishGroup) -> bool:
    """Something was seen to serve on this paint, in one step or with a refining one on top."""
    range_ = known_range(picture, group.id)
    return any(seen.works or seen.refined for seen in range_)


def confirming_stops(picture: JobPicture, group: FinishGroup, due: str | None) -> tuple[Stop, ...]:
    """What stands against adopting before the whole process was seen on a second panel (``due``: what is still to be
    shown there); nothing where the group has no second one that may be worked."""
    if due is None:
        return ()
    held = held_back(picture)
    free = [p for p in group.panels if p not in held and group_of(picture, p) == group]
    return (Stop("not_confirmed", due),) if len(free) > 1 else ()
