"""What a car that goes back asks for: a fixed list, by what the job is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TypeVar

from detailbench.findings.delivered import newest_has_left
from detailbench.findings.gauges import spoiled_by_a_check
from detailbench.findings.level_met import still_unsaid
from detailbench.findings.processes import panel_steps
from detailbench.findings.second_look import second_look_due
from detailbench.findings.standing import ENDS, standing_of
from detailbench.findings.walking import OUTER, is_read, readings_at
from detailbench.record.picture import JobPicture
from detailbench.record.thing import JobThing

T = TypeVar("T", bound=JobThing)


def handover_list(picture: JobPicture) -> Mapping[str, bool]:
    """Thing due → whether it is done, in the order of the handover. After-readings and marks are asked for where
    something was or is to be polished, protection in a correction that runs to its end, a second look at what was
    polished while the car is here (later only where one was taken), custody out where something was taken into custody.
    Of several approved test sections the owner's word is due on each. Word, signatures, report and its leaving are
    asked for anew after a return."""
    polished = {r.panel for r in picture.runs if r.ended == "finished"}
    ended = standing_of(picture) in ENDS
    visit = picture.visits[-1] if picture.visits else None
    out: dict[str, bool] = {}
    if polished or (not ended and _to_be_polished(picture)):
        outer, spoiled = [p for p in picture.places if p.surface == OUTER], spoiled_by_a_check(picture)
        measured = {p.panel for p in outer if is_read(picture, p.id, "polished", spoiled)}
        with_before = {p.panel for p in outer if readings_at(picture, p.id, "as_found")}
        checked = {c.mark_id for c in picture.mark_checks}
        out["after_readings"] = bool(polished) and (polished & with_before) <= measured
        out["after_marks"] = bool(polished) and all(m.id in checked for m in picture.marks if m.panel in polished)
    if picture.job.kind == "correction" and not ended:
        out["protection"] = bool(picture.protections)
    here = visit is not None and visit.left_at is None
    if polished and (here or picture.second_looks):
        out["second_look"] = not second_look_due(picture).panels
    if any(c.moment == "in" for c in picture.custody):
        out["custody_out"] = any(c.moment == "out" for c in _of_this_visit(picture, picture.custody))
    out["acceptance"] = bool(_of_this_visit(picture, picture.acceptances)) and not still_unsaid(picture)
    signed = {s.role for s in _of_this_visit(picture, picture.signatures) if s.moment == "handover"}
    out["signatures"] = "workshop" in signed and bool(signed & {"owner", "bearer"})
    out["odometer_out"] = visit is not None and visit.odometer_out is not None
    reports = [d for d in _of_this_visit(picture, picture.documents) if d.kind == "handover"]
    out["report"] = bool(reports)
    out["report_left"] = newest_has_left(picture, reports)
    return out


def _to_be_polished(picture: JobPicture) -> bool:
    return any(panel_steps(picture, panel) for group in picture.groups for panel in group.panels)


def _of_this_visit(picture: JobPicture, things: Sequence[T]) -> list[T]:
    """What was entered since the car came in; before a second visit that is everything."""
    since = picture.visits[-1].seq if len(picture.visits) > 1 else 0
    return [t for t in things if t.seq > since]
