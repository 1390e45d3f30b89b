"""A refinish that may not have cured: what the painter said, and what it leaves to do. Common practice, no source."""

from __future__ import annotations

from datetime import date, timedelta

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.processes import group_of
from detailbench.findings.settings import setting
from detailbench.findings.stop import Stop
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup


def cure_of(picture: JobPicture, group: FinishGroup, day: date) -> str:
    """none (no recent refinish), cured, unknown or not_cured (under the paint maker's stated time) on this day.

    A refinish is recent until the shop's own number of days has passed; the painter's words are read by people only.
    """
    if group.refinished != "yes":
        return "none"
    if group.refinished_on is None:
        return "unknown"
    if group.cure_days is not None:
        return "not_cured" if day < group.refinished_on + timedelta(days=group.cure_days) else "cured"
    recent = timedelta(days=float(setting(picture.shop, "refinish_recent_days")))
    return "unknown" if day < group.refinished_on + recent else "cured"


def cure_words(picture: JobPicture, group: FinishGroup, day: date) -> str:
    """The cure in one sentence, with the painter's word where there is one; empty where nothing was refinished."""
    cure = cure_of(picture, group, day)
    if cure == "none":
        return ""
    said = {
        "cured": _("Refinished; the stated cure time is over, or it was long ago."),
        "unknown": _("Refinished; whether it has cured is not known: the first trial is the mildest."),
        "not_cured": _("Refinished; under the paint maker's stated time: nothing but the painter's own finish."),
    }[cure]
    if cure == "not_cured" and group.refinished_on is not None and group.cure_days is not None:
        until = _("Until {day} ({n} days).").format(
            day=(group.refinished_on + timedelta(days=group.cure_days)).isoformat(), n=format_number(group.cure_days)
        )
        said = f"{said} {until}"
    word = _("The painter's word: “{words}”.").format(words=group.cure_word) if group.cure_word.strip() else ""
    return f"{said} {word}".strip()


def cure_stops(picture: JobPicture, panel: str, day: date) -> tuple[Stop, ...]:
    """What stands against any abrasive on a panel whose refinish is under the stated time on this day."""
    group = group_of(picture, panel)
    if group is None or cure_of(picture, group, day) != "not_cured":
        return ()
    return (Stop("cure", cure_words(picture, group, day)),)
