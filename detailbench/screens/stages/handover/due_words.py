"""What the handover still asks for, in words, and where it is done."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime

from detailbench.basics.texts import _
from detailbench.findings.second_look import found_words, second_look_due
from detailbench.findings.walking import readings_at
from detailbench.record.picture import JobPicture

PLACES: Mapping[str, str] = {
    "after_readings": "after",
    "after_marks": "after",
    "protection": "protect",
    "custody_out": "custody",
    "acceptance": "accept",
    "signatures": "accept",
    "odometer_out": "close",
    "report": "close",
}


def due_title(key: str) -> str:
    """A thing due, named."""
    words = {
        "after_readings": _("readings after the work"),
        "after_marks": _("marks after the work"),
        "protection": _("protection"),
        "custody_out": _("custody out"),
        "acceptance": _("acceptance"),
        "signatures": _("signatures"),
        "odometer_out": _("odometer out"),
        "report": _("report closed"),
    }
    return words[key]


def due_state(picture: JobPicture, key: str, open_: bool) -> str:
    """How far a thing due is: how many, or who is still missing."""
    polished = {r.panel for r in picture.runs if r.ended == "finished"}
    if key == "after_readings" and polished:
        read = {p.panel for p in picture.places if readings_at(picture, p.id, "polished")}
        return _("{done} of {n} polished panels").format(done=len(read & polished), n=len(polished))
    if key == "after_marks" and polished:
        marks = {m.id for m in picture.marks if m.panel in polished}
        looked = {c.mark_id for c in picture.mark_checks}
        return _("{done} of {n} marks looked at again").format(done=len(marks & looked), n=len(marks))
    if key == "signatures" and open_:
        signed = {s.role for s in picture.signatures if s.moment == "handover"}
        missing = [] if signed & {"owner", "bearer"} else [_("owner or bearer")]
        missing += [] if "workshop" in signed else [_("workshop")]
        return _("{who} still to sign").format(who=", ".join(missing))
    return _("still open") if open_ else _("done")


def second_words(picture: JobPicture, now: datetime) -> str:
    """The second look in the list of what is due; it is shown, not counted: not every car stays over night."""
    found = second_look_due(picture, now.tzinfo)
    if found.on is not None:
        due = _("of use from {day} on").format(day=found.on.isoformat())
        return _("·  second look, if the car is still here: {state}").format(state=due)
    if found.looks:
        return _("✓  second look: {state}").format(state=found_words(found.looks[-1].found))
    return _("·  second look: nothing was polished")
