"""What the handover still asks for, in words, and where it is done."""

from __future__ import annotations

from collections.abc import Mapping

from detailbench.basics.texts import _
from detailbench.findings.walking import readings_at
from detailbench.record.picture import JobPicture

PLACES: Mapping[str, str] = {
    "after_readings": "after",
    "after_marks": "after",
    "protection": "protect",
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
        words = {"owner": _("owner"), "workshop": _("workshop")}
        missing = ", ".join(words[role] for role in words if role not in signed)
        return _("{who} still to sign").format(who=missing)
    return _("still open") if open_ else _("done")
