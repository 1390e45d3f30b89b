"""What was entered later than it is said to have happened, and where the computer's clock went back."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields

from detailbench.basics.texts import _
from detailbench.findings.clock import jumps
from detailbench.findings.entered_later import arrival_entered, span_words
from detailbench.record.picture import one
from detailbench.record.thing import JobThing
from detailbench.report.content.blocks import Fact
from detailbench.report.content.figures import moment, moment_with_offset, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Figure, Recorded, Text, joined, said, text_of, traced, typed
from detailbench.report.content.photographs import days_late, later
from detailbench.report.content.put_right import NOUNS
from detailbench.report.content.wording import counted, opening, person_words

SPAN = "span arrived_at entered_at"


def job_things(g: Gathered) -> Iterator[JobThing]:
    """Everything kept in this job, in the order of the picture."""
    for part in fields(g.picture):
        values = getattr(g.picture, part.name)
        if isinstance(values, tuple):
            yield from (v for v in values if isinstance(v, JobThing))


def arrival_later(g: Gathered) -> Text:
    """ "Entered 4 days after the stated arrival, after work had begun.", or nothing."""
    found = arrival_entered(g.picture)
    if found is None:
        return ()
    visit = g.picture.visits[-1]
    span = Figure(span_words(found.by), str(found.by), Recorded("visit", (visit.id,), SPAN))
    return (*opening(traced(found.words, [span])), ".")


def later_entries(g: Gathered) -> tuple[Text, ...]:
    """The arrival where it was entered later, then what was entered a day or more after it is said to have been."""
    out = [t for t in (arrival_later(g),) if t]
    for thing in job_things(g):
        if thing.stated_at is None or (out and thing.table == "visit"):
            continue
        late = days_late(thing.stated_at, thing.entered_at)
        if late:
            out.append(
                said(
                    _("{what}: stated for {stated}, {late} on {entered} by {who}."),
                    what=opening(_(NOUNS.get(thing.table, thing.table))),
                    stated=moment(thing.stated_at, recorded(thing, "stated_at")),
                    late=later(late, Recorded(thing.table, (thing.id,), "days later")),
                    entered=moment(thing.entered_at, recorded(thing, "entered_at")),
                    who=person_words(g.picture.shop, thing.entered_by),
                )
            )
    late_photos = [
        p
        for p in g.picture.photos
        for e in (one(g.picture.shop.evidence, p.evidence_id),)
        if e.taken_at is not None and days_late(e.taken_at, p.entered_at)
    ]
    if late_photos:
        out.append(
            counted(
                [p.id for p in late_photos],
                _("{n} photograph was entered a day or more after it was taken and says so."),
                _("{n} photographs were entered a day or more after they were taken; each says so."),
            )
        )
    return tuple(out)


def clock_facts(g: Gathered) -> list[Fact]:
    """Where the times of entries go back against their order, with what a person noted about it."""
    found = jumps(g.picture)
    if not found:
        return []
    things = {t.id: t for t in job_things(g)}
    seqs = sorted(things.values(), key=lambda t: t.seq)
    out: list[Text] = []
    for jump in found:
        after = things.get(jump.id)
        before = next((t for t in reversed(seqs) if after is not None and t.seq < after.seq), None)
        if after is None or before is None:
            out.append((_("The clock went back between two entries."),))
            continue
        noted: Text = (_("nothing was noted about it"),)
        if jump.noted is not None:
            noted = said(
                _("noted by {who}: {words}"),
                who=person_words(g.picture.shop, jump.noted.entered_by),
                words=typed(jump.noted.words) or (_("no words"),),
            )
        out.append(
            said(
                _("The computer's clock went back from {before} to {after}; entries keep their order. {noted}."),
                before=text_of(moment_with_offset(jump.before, recorded(before, "entered_at"))),
                after=text_of(moment_with_offset(jump.after, recorded(after, "entered_at"))),
                noted=opening(noted),
            )
        )
    return [Fact(_("Clock"), tuple(joined([t]) for t in out))]
