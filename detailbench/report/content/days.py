"""The job's days: from the stated or entered times, who did what, hour by hour."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta, tzinfo

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreement_words import about_words, answer_words, channel_words
from detailbench.findings.second_look import found_words
from detailbench.findings.standing import turn_words
from detailbench.findings.washing import kind_words
from detailbench.record.thing import Thing
from detailbench.record.things import StepRun
from detailbench.report.content.blocks import Block, Day, DayLine, Days, Para
from detailbench.report.content.figures import clock, clock_words, day_words, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.gauge_checks import session_letter
from detailbench.report.content.papers import kind_words as document_words
from detailbench.report.content.parties import who_comes
from detailbench.report.content.parts import Figure, Text, clipped, joined, said
from detailbench.report.content.washed import on_panels
from detailbench.report.content.wording import (
    counted,
    initials,
    marks_counted,
    opening,
    panels_listed,
    readings_counted,
)

DAY_S = 24 * 3600
TOGETHER = timedelta(minutes=30)
FIRST, LAST = 7, 19  # hours the ruler shows where nothing lies outside


@dataclass(frozen=True)
class _Event:
    """``what`` in words; several of one ``kind`` and person within half an hour become one line of ``many``."""

    at: datetime
    thing: Thing
    field: str
    who: str
    what: Text
    kind: str = ""
    end: datetime | None = None
    end_of: str = ""
    weight: int = 0
    last: bool = False


def day_blocks(g: Gathered) -> tuple[Block, ...]:
    """The days with a ruler each, or that nothing happened yet."""
    zone = _zone(g)
    events = sorted(_events(g), key=lambda e: (e.at, e.last, e.thing.seq))
    if not events:
        return (Para((_("Nothing is recorded yet."),)),)
    by_day: dict[date, list[_Event]] = {}
    for event in events:
        by_day.setdefault(event.at.astimezone(zone).date(), []).append(event)
    days = tuple(
        Day(_title(own[0], zone), _here(g, day, zone), tuple(_lines(g, own, zone))) for day, own in by_day.items()
    )
    shown = [line for d in days for line in d.lines]
    low = min([FIRST, *(int(line.at * 24) for line in shown)])
    high = max([LAST, *(int((line.end or line.at) * 24) + 1 for line in shown)])
    note = _(
        "Times as stated, else as entered. On the ruler: a thick bar is work on a panel, a stroke one entry, a tall "
        "stroke the car coming or going; the grey band is the time the car was here."
    )
    return (Para((note,), "note"), Days((low, min(high, 24)), days))


def _zone(g: Gathered) -> tzinfo | None:
    visits = g.picture.visits
    return (visits[0].arrived_at if visits else g.now).tzinfo


def _share(at: datetime, zone: tzinfo | None) -> float:
    local = at.astimezone(zone)
    return (local.hour * 3600 + local.minute * 60 + local.second) / DAY_S


def _title(first: _Event, zone: tzinfo | None) -> Text:
    names = (
        _("Monday"), _("Tuesday"), _("Wednesday"), _("Thursday"), _("Friday"), _("Saturday"), _("Sunday"),
    )  # fmt: skip
    local = first.at.astimezone(zone)
    trace = recorded(first.thing, first.field)
    return joined([names[local.weekday()], Figure(day_words(local), first.at.isoformat(), trace)], ", ")


def _here(g: Gathered, day: date, zone: tzinfo | None) -> tuple[float, float] | None:
    """From and to when the car was here on that day."""
    for visit in g.picture.visits:
        came, left = visit.arrived_at.astimezone(zone), (visit.left_at or g.now).astimezone(zone)
        if came.date() <= day <= left.date():
            low = _share(came, zone) if came.date() == day else 0.0
            return low, _share(left, zone) if left.date() == day else 1.0
    return None


def _lines(g: Gathered, events: Sequence[_Event], zone: tzinfo | None) -> Iterable[DayLine]:
    done: list[list[_Event]] = []
    for event in events:
        last = next((d for d in reversed(done) if d[0].kind == event.kind and d[0].who == event.who), None)
        if event.kind and last is not None and event.at - last[-1].at <= TOGETHER:
            last.append(event)
        else:
            done.append([event])
    for group in done:
        first, last_ = group[0], group[-1]
        what = _many(g, group) if first.kind else first.what
        yield DayLine(
            at=_share(first.at, zone),
            when=_when(first, zone),
            who=initials(g.picture.shop, first.who),
            what=what,
            end=_share(last_.end, zone) if last_.end is not None and last_.end >= first.at else None,
            weight=first.weight,
        )


def _when(event: _Event, zone: tzinfo | None) -> Text:
    at: Text = (_clock(event.at, event.thing, event.field, zone),)
    if event.end is not None and event.end_of:
        at = said("{at}–{end}", at=at, end=_clock(event.end, event.thing, event.end_of, zone))
    return said(_("{at} stated"), at=at) if event.field == "stated_at" else at


def _clock(at: datetime, thing: Thing, field: str, zone: tzinfo | None) -> Figure:
    return Figure(clock_words(at.astimezone(zone)), at.isoformat(), clock(at, recorded(thing, field)).trace)


def _many(g: Gathered, group: Sequence[_Event]) -> Text:
    """Several entries of a kind in one line."""
    ids = [e.thing.id for e in group]
    kind = group[0].kind
    if kind == "mark":
        return said(_("{n} entered"), n=marks_counted(ids))
    if kind == "photo":
        return counted(ids, _("{n} photograph added"), _("{n} photographs added"))
    if kind.startswith("reading"):
        session = kind.partition(" ")[2]
        return said(_("{n} in gauge session {letter}"), n=readings_counted(ids), letter=session_letter(g, session))
    if kind.startswith("gloss"):
        values = counted(ids, _("{n} gloss value"), _("{n} gloss values"))
        session = kind.partition(" ")[2]
        return said(_("{n} in gauge session {letter}"), n=values, letter=session_letter(g, session))
    if kind == "again":
        return counted(ids, _("{n} mark looked at again"), _("{n} marks looked at again"))
    if kind == "look":
        return counted(ids, _("{n} panel looked at, nothing seen"), _("{n} panels looked at, nothing seen"))
    names = list(dict.fromkeys(str(e.what[0]) for e in group if e.what))
    return opening(joined(names, ", "))


def _events(g: Gathered) -> Iterable[_Event]:
    p = g.picture

    def of(thing: Thing, what: Text | str, kind: str = "", weight: int = 0) -> _Event:
        field = "stated_at" if thing.stated_at is not None else "entered_at"
        at = thing.stated_at or thing.entered_at
        return _Event(at, thing, field, thing.entered_by, what if isinstance(what, tuple) else (what,), kind,
                      weight=weight)  # fmt: skip

    for visit in p.visits:
        came = joined([_("the car comes"), who_comes(g, "brings")], ", ")
        yield _Event(visit.arrived_at, visit, "arrived_at", visit.entered_by, opening(came), weight=2)
        if visit.left_at is not None:
            gone = joined([_("the car leaves"), who_comes(g, "fetches")], ", ")
            yield _Event(visit.left_at, visit, "left_at", "", opening(gone), weight=2, last=True)
    for m in p.car_moves:
        to = said(_("to {place}"), place=clipped(m.to_place, 80)[0]) if m.to_place else ()
        yield of(m, joined([_("Car moved"), to]))
    yield from (of(s, kind_words().get(s.kind, s.kind), "wash") for s in p.wash_steps if not s.why_not)
    yield from (of(r, said(_("White-pad rub, {panel}"), panel=panel_name(r.panel))) for r in p.rub_tests)
    yield from (of(m, "", "mark") for m in p.marks)
    yield from (of(m, "", "again") for m in p.mark_checks)
    yield from (of(m, "", "look") for m in p.panel_looks)
    yield from (of(m, "", "photo") for m in p.photos)
    yield from (of(r, "", f"reading {r.session_id}") for r in p.readings)
    yield from (of(r, "", f"gloss {r.session_id}") for r in p.gloss_readings)
    yield from (of(x, said(_("Test section, {panel}"), panel=panel_name(x.panel)), weight=1) for x in p.trials)
    for a in p.agreements:
        about = about_words(a.about)
        yield of(a, said(_("Asked the owner: {about}"), about=about), weight=1)
        if a.answered_at is not None and a.answer != "open":
            answer = said(_("Answer on {about}: {answer}"), about=about, answer=answer_words(a.answer))
            how = channel_words(a.channel) if a.channel else ""
            what = joined([answer, how], ", ")
            yield _Event(a.answered_at, a, "answered_at", a.answered_to or a.entered_by, what, weight=1)
    yield from (_run(g, r) for r in p.runs)
    for h in p.mishaps:
        yield of(h, joined([said(_("Mishap, {panel}"), panel=panel_name(h.panel)) if h.panel else (_("Mishap"),)]),
                 weight=1)  # fmt: skip
        if h.told_at is not None:
            who = {"owner": _("Mishap: the owner told"), "bearer": _("Mishap: the bearer told")}.get(h.told, h.told)
            yield _Event(h.told_at, h, "told_at", h.entered_by, (who,), weight=1)
    yield from (of(o, said(_("Rule set aside, {panel}"), panel=panel_name(o.panel))) for o in p.overrides)
    yield from (of(x, said(_("Held back: {panel}"), panel=panel_name(x.panel))) for x in p.holds)
    yield from (
        of(x, said(_("Protection on {panels}"), panels=on_panels(g, x.panels)), weight=1) for x in p.protections
    )
    for look in p.second_looks:
        yield of(look, said(_("Second look: {found}"), found=found_words(look.found)), weight=1)
    yield from (of(w, (_("Other work"),)) for w in p.other_work)
    yield from (of(x, opening(said(_("the job: {turn}"), turn=turn_words(x.turn))), weight=1) for x in p.turns)
    yield from (of(d, said(_("{kind} closed"), kind=document_words(d.kind)), weight=1) for d in p.documents)
    names = {d.id: document_words(d.kind) for d in p.documents}
    for x in p.deliveries:
        yield of(x, said(_("{kind} left the shop"), kind=names.get(x.document_id, _("Document"))), weight=1)
    yield from (of(x, (_("The owner's answer on the work"),), weight=1) for x in p.acceptances)


def _run(g: Gathered, r: StepRun) -> _Event:
    """One go at a panel: a bar where its end is known."""
    what: Text = said(_("Work on {panel}"), panel=panels_listed([r.panel]))
    words = {"paused": _("paused"), "left_running": _("left running"), "": _("running")}.get(r.ended, "")
    if words:
        what = said("{what}, {how}", what=what, how=words)
    known = r.finished_at is not None and r.ended != "left_running" and r.finished_at >= r.started_at
    same_day = known and r.finished_at is not None and r.finished_at - r.started_at < timedelta(hours=12)
    end = r.finished_at if same_day else None
    return _Event(r.started_at, r, "started_at", r.entered_by, what, end=end, end_of="finished_at" if end else "",
                  weight=1)  # fmt: skip
