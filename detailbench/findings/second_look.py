"""When a second look is due, and what it found: the day after the last step or protection on a panel."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta, tzinfo

from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture
from detailbench.record.things import SecondLook
from detailbench.record.words_kept import choices

FOUND = choices("second_look", "found")
NEXT_DAY = timedelta(days=1)


@dataclass(frozen=True)
class SecondLookDue:
    """``panels``: finished on and not looked at again since; ``on``: the first day it is of use; ``looks``: what was
    found so far."""

    panels: tuple[str, ...]
    on: date | None
    looks: tuple[SecondLook, ...]


def second_look_due(picture: JobPicture, zone: tzinfo | None = None) -> SecondLookDue:
    """What there is to look at again. Days are those of ``zone``; none given: of the clock each time was noted by."""
    worked: dict[str, datetime] = {}
    for run in picture.runs:
        if run.ended == "finished" and run.finished_at is not None:
            worked[run.panel] = run.finished_at
    for protection in picture.protections:
        for panel in protection.panels:
            if panel in worked:
                worked[panel] = max(worked[panel], protection.entered_at)
    looked: dict[str, datetime] = {}
    for look in picture.second_looks:
        looked.update(dict.fromkeys(look.panels, look.stated_at or look.entered_at))
    open_ = tuple(panel for panel, at in worked.items() if panel not in looked or looked[panel] < at)
    at = [worked[p] if zone is None else worked[p].astimezone(zone) for p in open_]
    on = max(((one + NEXT_DAY).date() for one in at), default=None)
    return SecondLookDue(open_, on, picture.second_looks)


def found_words(found: str) -> str:
    """What a second look found, in words."""
    words = {
        "still_clear": _("still clear"),
        "marks_back": _("marks are back"),
        "haze": _("haze"),
        "trails": _("trails"),
        "smear": _("smear"),
        "cannot_tell": _("can't tell"),
    }
    return words[found]
