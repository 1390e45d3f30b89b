"""The arrival record as plain content: the car as it stood here, before anything was done."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from detailbench.basics.texts import _
from detailbench.findings.entered_later import arrival_entered
from detailbench.findings.parties import authority_of
from detailbench.record.past import PutRight
from detailbench.record.picture import JobPicture
from detailbench.report.content.accepting import signings
from detailbench.report.content.arrival_front import arrival_front
from detailbench.report.content.blocks import Block, DocumentContent, Fact, Facts, Heading, Para, PlanBeside, Section
from detailbench.report.content.damage import damage_blocks, damage_view, repair_blocks
from detailbench.report.content.figures import day, recorded
from detailbench.report.content.frame_of import framed
from detailbench.report.content.gathered import Gathered, ReadFile, gather
from detailbench.report.content.keeping import keeping_facts, moves_blocks
from detailbench.report.content.later import arrival_later
from detailbench.report.content.limits import limit_blocks
from detailbench.report.content.order import car_facts, hope_facts, remark_blocks
from detailbench.report.content.parties import deleted, gone, party_facts, visit_facts
from detailbench.report.content.parts import Text, joined, text_of, typed
from detailbench.report.content.photographs import photo_blocks
from detailbench.report.content.recording import limits_blocks, recording_blocks, settings_blocks
from detailbench.report.content.standing import standing


def arrival_content(
    picture: JobPicture,
    *,
    now: datetime,
    version: str,
    read_file: ReadFile,
    key_fingerprint: str = "",
    past: Sequence[PutRight] = (),
) -> DocumentContent:
    """The content of the arrival record of ``picture``; arguments as of :func:`handover_content`."""
    g = gather(picture, now=now, version=version, read_file=read_file, key_fingerprint=key_fingerprint, past=past)
    kind = _("Arrival record")
    view, legend = damage_view(g)
    beside = PlanBeside(picture.car.style, picture.car.length_mm, view, legend, Facts((*_first(g),)))
    sections = (
        Section(_("The car as it came"), (beside, *damage_blocks(g), *repair_blocks(g)), new_page=True),
        Section(_("Owner's limits and hopes"), (Facts(tuple(hope_facts(g))), *limit_blocks(g, kept=False))),
        Section(_("In our keeping"), (Facts(keeping_facts(g, "in")), *moves_blocks(g), *remark_blocks(g, "arrival"))),
        Section(_("Photographs on arrival"), photo_blocks(g, ("arrival",))),
        Section(_("How this was recorded"), recording_blocks(g, "arrival")),
        Section(_("Settings in force"), settings_blocks(g)),
        Section(_("What this record is not"), (Para(standing("arrival_what")), *limits_blocks(g, "arrival"))),
    )
    signing = Section(_("Seen and signed"), _signing(g), new_page=True)
    return framed(g, kind, arrival_front(g, kind), sections, signing, None)


def _first(g: Gathered) -> list[Fact]:
    state: Text = (_("Unwashed, as it stood."),)
    late = arrival_later(g)
    rows = [*car_facts(g), *party_facts(g), *visit_facts(g), Fact(_("Surface"), (state,))]
    if late:
        rows.append(Fact(_("Entered later"), (late,)))
    return rows


def _signing(g: Gathered) -> tuple[Block, ...]:
    return (*_statements(g), signings(g, "arrival"))


def _statements(g: Gathered) -> tuple[Block, ...]:
    """What was signed, by whom; open lines where nobody signed yet."""
    signed = [s for s in g.picture.signatures if s.moment == "arrival" and s.role in ("owner", "bearer")]
    drawn = {s.role: s for s in signed if s.way == "drawn"}
    if not signed:
        return (Para(standing("arrival_open")),)
    if not drawn:
        return ()
    found = arrival_entered(g.picture)
    late = "_late" if found is not None and found.after_work else ""
    out: list[Block] = []
    for role, signature in drawn.items():
        at = text_of(day(signature.entered_at, recorded(signature, "entered_at")))
        words = standing(f"arrival{late}_{role}", day=at, remarks=_remarks(g), authority=_authority(g))
        title = _("What the owner signed") if role == "owner" else _("What the bearer signed")
        out += [Heading((title,)), Para(words)]
    return tuple(out)


def _remarks(g: Gathered) -> Text:
    found = [typed(g.picture.said(r.id, "remarks")) for r in g.picture.remarks if r.moment == "arrival"]
    return joined([f for f in found if f], " · ") or (_("none"),)


def _authority(g: Gathered) -> Text:
    bearers = [p for p in g.picture.parties if p.role == "bearer" and p.errand != "fetches"]
    if bearers and gone(g, bearers[-1]):
        return deleted(g)
    words = [authority_of(g.picture, p).rstrip(".") for p in bearers]
    newest = next((w for w in reversed(words) if w), "")
    return typed(newest) if newest else (_("somebody not noted"),)
