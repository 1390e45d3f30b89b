"""Sanding: only where the owner agreed to it, with readings before and after. The program never proposes it."""

from __future__ import annotations

from collections.abc import Sequence

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreements import allowed_to_sand
from detailbench.findings.limits import panel_list, sanding_stops
from detailbench.findings.panels import READABLE, outline_of
from detailbench.findings.processes import runs_of, steps_of
from detailbench.findings.stop import Stop
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import ProcessStep


def sanding_agreed_stops(picture: JobPicture, panels: Sequence[str]) -> tuple[Stop, ...]:
    """What stands against sanding these panels: an owner's limit, or that nobody agreed to it on any of them. Nobody
    can set it aside; the owner can be asked."""
    limited = sanding_stops(picture, panels)
    if limited or any(allowed_to_sand(picture, p) for p in panels):
        return limited
    text = _("Sanding is done only where the owner agreed to it: ask about sanding on {panels} first.")
    return (Stop("sanding_not_agreed", text.format(panels=panel_list(panels)), may_override=False),)


def sanding_start_stops(picture: JobPicture, panel: str, step: ProcessStep) -> tuple[Stop, ...]:
    """What stands against starting a step: a sanding one without agreement or readings before it, and any later one
    while the panel was not read again after it was sanded."""
    if step.means == "sanding":
        before = () if _read(picture, panel) else (_unread(panel, _("before it is sanded")),)
        return (*sanding_agreed_stops(picture, (panel,)), *before)
    sanded = [
        run
        for earlier in steps_of(picture, one(picture.processes, step.process_id))
        if earlier.means == "sanding" and earlier.number < step.number
        for run in runs_of(picture, panel, earlier.id)
        if run.ended == "finished"
    ]
    if not sanded or _read(picture, panel, max(run.seq for run in sanded)):
        return ()
    return (_unread(panel, _("after it was sanded, before it is refined")),)


def _unread(panel: str, when: str) -> Stop:
    text = _("Read the {panel} {when}: what sanding takes off is never guessed.")
    return Stop("sanding_not_read", text.format(panel=panel_name(panel), when=when))


def _read(picture: JobPicture, panel: str, since_seq: int = 0) -> bool:
    """The panel has a reading with a value after this entry, or no gauge can read it."""
    if outline_of(picture).panels[panel].substrate not in READABLE:
        return True
    places = {p.id for p in picture.places if p.panel == panel}
    return any(r.place_id in places and r.seq > since_seq and r.value_um for r in picture.readings)
