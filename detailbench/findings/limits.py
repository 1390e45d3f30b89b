"""The owner's limits in force: they bind whatever the shop thinks, and only a new agreement lifts them.

Which steps use a solvent is common practice, no source: tar remover and panel wipe do. A panel not to be touched is
washed with the car; nothing rubs material off it (clay, white-pad rub, trial, any step) or is put on it.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from detailbench.basics.numbers import format_thickness
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreements import allowed_to_sand
from detailbench.findings.stop import Stop
from detailbench.record.picture import JobPicture
from detailbench.record.things import OwnerLimit
from detailbench.thickness.permission import OwnerLimits

SOLVENT_STEPS = ("tar", "panel_wipe")


def limits_in_force(picture: JobPicture) -> tuple[OwnerLimit, ...]:
    """Neither lifted by an agreement nor withdrawn, in the order of entry."""
    return tuple(limit for limit in picture.limits if not limit.lifted_by)


def limits_on(picture: JobPicture, panel: str, kind: str = "") -> tuple[OwnerLimit, ...]:
    """Those in force that bind this panel; of one kind where it is named."""
    return tuple(
        limit
        for limit in limits_in_force(picture)
        if kind in ("", limit.kind) and (not limit.panels or panel in limit.panels)
    )


def owner_allows(picture: JobPicture, panel: str) -> OwnerLimits:
    """What may come off this panel as the owner wants it; of several figures the least binds."""
    most = [m.most_off_um for m in limits_on(picture, panel, "most_off") if m.most_off_um is not None]
    return OwnerLimits(barred=bool(limits_on(picture, panel, "bar_panel")), most_um=min(most, default=None))


def limit_words(limit: OwnerLimit) -> str:
    """The limit in one line; the owner's own words, where there are any, stand in quotes."""
    where = ", ".join(panel_name(p) for p in limit.panels) or _("whole car")
    return _("{where}: {what}").format(where=where, what=what_it_says(limit))


def what_it_says(limit: OwnerLimit) -> str:
    """The same without where."""
    quoted = _("“{words}”").format(words=limit.words) if limit.words else ""
    if limit.kind == "most_off" and limit.most_off_um is not None:
        what = _("at most {most} may come off").format(most=format_thickness(limit.most_off_um))
    else:
        what = {
            "bar_panel": _("not to be touched"),
            "no_sanding": _("no sanding"),
            "no_solvent": _("no solvent"),
        }.get(limit.kind, "")
    return ", ".join(part for part in (what, quoted) if part)


def binding_words(picture: JobPicture, panel: str) -> str:
    """What binds on this panel, in one sentence without an end; empty where nothing does."""
    limits = "; ".join(what_it_says(limit) for limit in limits_on(picture, panel))
    return _("owner's limits: {limits}").format(limits=limits) if limits else ""


# other: nothing can be computed from it, so it is read
def other_limits(picture: JobPicture) -> tuple[OwnerLimit, ...]:
    """Limits of kind *other* in force: shown at every trial and every start."""
    return tuple(limit for limit in limits_in_force(picture) if limit.kind == "other")


def unread(picture: JobPicture, person_id: str, day: date) -> tuple[OwnerLimit, ...]:
    """Those of them this person has not acknowledged on this day."""
    seen = {s.limit_id for s in picture.limits_seen if s.entered_by == person_id and s.day == day and person_id}
    return tuple(limit for limit in other_limits(picture) if limit.id not in seen)


def unread_stops(picture: JobPicture, person_id: str, day: date) -> tuple[Stop, ...]:
    """What stands against a trial or a start until it is read; nobody can set it aside, only read it."""
    waiting = unread(picture, person_id, day)
    if not waiting:
        return ()
    text = _("Owner's limit (other): {words}. It is read and acknowledged once a day, before a trial or a start.")
    words = "; ".join(_("“{words}”").format(words=limit.words) for limit in waiting)
    return (Stop("other", text.format(words=words), may_override=False),)


def reminder(picture: JobPicture) -> str:
    """The limits of kind *other* in one sentence, for a start that goes on; empty where there are none."""
    words = "; ".join(_("“{words}”").format(words=limit.words) for limit in other_limits(picture))
    return _("The owner's limit: {words}.").format(words=words) if words else ""


# barred, sanding and solvents
def barred(picture: JobPicture, panels: Sequence[str]) -> tuple[str, ...]:
    """Those of these panels that the owner wants untouched."""
    return tuple(p for p in panels if limits_on(picture, p, "bar_panel"))


def barred_stops(picture: JobPicture, panels: Sequence[str]) -> tuple[Stop, ...]:
    """What stands against what takes material off a panel outside a process (clay, a white-pad rub), or stays on it."""
    limit = barred_words(picture, panels)
    if not limit:
        return ()
    text = _("The owner's limit on {limit}. Only a new agreement lifts it.")
    return (Stop("owner_limit", text.format(limit=limit), may_override=False),)


def barred_words(picture: JobPicture, panels: Sequence[str]) -> str:
    """Which of these panels the owner wants untouched: "roof: not to be touched, “painted by hand”"; or empty."""
    against = barred(picture, panels)
    return _named(picture, against, "bar_panel") if against else ""


def word_asks(picture: JobPicture, panels: Sequence[str], clean: str, cover: str) -> str:
    """Why a state set by a person's word must say how, in words: what usually makes it so is what a limit forbids.
    Empty where nothing is asked."""
    solvent = [p for p in panels if limits_on(picture, p, "no_solvent")] if clean == "wiped" else []
    if solvent:
        text = _(
            "The owner's limit on {limit}, and a panel wipe is a solvent. Say in at least two words how it was wiped; "
            "what was wiped with one needs a new agreement first."
        )
        return text.format(limit=_named(picture, solvent, "no_solvent"))
    untouched = barred_words(picture, panels) if cover == "protected" else ""
    text = _("The owner's limit on {limit}. Say in at least two words how it comes to be protected.")
    return text.format(limit=untouched) if untouched else ""


def _named(picture: JobPicture, panels: Sequence[str], kind: str) -> str:
    """The panels and what binds there: "roof: not to be touched, “painted by hand”"."""
    said = dict.fromkeys(what_it_says(limit) for p in panels for limit in limits_on(picture, p, kind))
    return _("{where}: {what}").format(where=panel_list(panels), what="; ".join(said))


def may_not_sand(picture: JobPicture, panel: str) -> bool:
    """A limit forbids sanding here and no later agreement about sanding names this panel."""
    limits = limits_on(picture, panel, "no_sanding")
    return bool(limits) and not allowed_to_sand(picture, panel, max(limit.seq for limit in limits))


def sanding_stops(picture: JobPicture, panels: Sequence[str]) -> tuple[Stop, ...]:
    """What stands against sanding, where it may be done on none of these panels."""
    if not panels or not all(may_not_sand(picture, p) for p in panels):
        return ()
    text = _("The owner wants no sanding on {panels}: only a new agreement allows it.")
    return (Stop("no_sanding", text.format(panels=panel_list(panels)), may_override=False),)


def solvent_stops(picture: JobPicture, step_kind: str, panels: Sequence[str]) -> tuple[Stop, ...]:
    """What stands against a step of the wash that uses a solvent."""
    against = [p for p in panels if limits_on(picture, p, "no_solvent")] if step_kind in SOLVENT_STEPS else []
    if not against:
        return ()
    text = _("The owner wants no solvent on {panels}: only a new agreement allows it.")
    return (Stop("no_solvent", text.format(panels=panel_list(against)), may_override=False),)


def panel_list(panels: Sequence[str], most: int = 4) -> str:
    """The panels by name; many of them in short."""
    names = ", ".join(panel_name(p) for p in panels[:most])
    left = len(panels) - most
    return names if left <= 0 else _("{panels} and {n} more").format(panels=names, n=left)
