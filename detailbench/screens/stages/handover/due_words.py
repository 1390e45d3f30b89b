"""What the handover still asks for, in words, and where it is done."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.gauges import spoiled_by_a_check
from detailbench.findings.level_met import still_unsaid
from detailbench.findings.second_look import found_words, second_look_due
from detailbench.findings.walking import OUTER, is_read
from detailbench.record.picture import JobPicture

PLACES: Mapping[str, str] = {
    "after_readings": "after",
    "after_marks": "after",
    "protection": "protect",
    "second_look": "second",
    "custody_out": "custody",
    "acceptance": "accept",
    "signatures": "accept",
    "odometer_out": "close",
    "report": "close",
    "report_left": "close",
}


def due_title(key: str) -> str:
    """A thing due, named."""
    words = {
        "after_readings": _("readings after the work"),
        "after_marks": _("marks after the work"),
        "protection": _("protection"),
        "second_look": _("second look"),
        "custody_out": _("custody out"),
        "acceptance": _("acceptance"),
        "signatures": _("signatures"),
        "odometer_out": _("odometer out"),
        "report": _("report closed"),
        "report_left": _("report left the shop"),
    }
    return words[key]


def due_state(picture: JobPicture, key: str, open_: bool, now: datetime) -> str:
    """How far a thing due is: how many, who is still missing, from when on."""
    polished = {r.panel for r in picture.runs if r.ended == "finished"}
    if key == "after_readings" and polished:
        spoiled = spoiled_by_a_check(picture)
        outer = [p for p in picture.places if p.surface == OUTER]
        read = {p.panel for p in outer if is_read(picture, p.id, "polished", spoiled)}
        if not open_ and not read & polished:
            return _("none due: nothing was measured before the work")
        return _("{done} of {n} polished panels").format(done=len(read & polished), n=len(polished))
    if key == "after_marks" and polished:
        marks = {m.id for m in picture.marks if m.panel in polished}
        looked = {c.mark_id for c in picture.mark_checks}
        return _("{done} of {n} marks looked at again").format(done=len(marks & looked), n=len(marks))
    if key == "acceptance" and open_ and (unsaid := still_unsaid(picture)):
        panels = ", ".join(panel_name(section.trial.panel) for section in unsaid)
        return _("not said whether as agreed: {panels}").format(panels=panels)
    if key == "signatures" and open_:
        signed = {s.role for s in picture.signatures if s.moment == "handover"}
        missing = [] if signed & {"owner", "bearer"} else [_("owner or bearer")]
        missing += [] if "workshop" in signed else [_("workshop")]
        return _("{who} still to sign").format(who=", ".join(missing))
    if key == "second_look":
        found = second_look_due(picture, now.tzinfo)
        if found.on is not None:
            words = _("of use from {day} on") if now.date() < found.on else _("still open, of use since {day}")
            return words.format(day=found.on.isoformat())
        return found_words(found.looks[-1].found)
    return _("still open") if open_ else _("done")
