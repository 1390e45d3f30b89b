"""The supplement as plain content: what came to light after the wash or on the way, put to the owner."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.body.outlines import style_name
from detailbench.findings.supplement import ItemSeen, items
from detailbench.marks.catalogue import kind as kind_of
from detailbench.marks.severity import depth_words
from detailbench.record.past import PutRight
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Mark
from detailbench.report.content.accepting import signings
from detailbench.report.content.agreed import answer_text, price
from detailbench.report.content.arrival_front import owner_line
from detailbench.report.content.blocks import (
    Block,
    Column,
    DocumentContent,
    Fact,
    Facts,
    Fill,
    Front,
    Grid,
    Heading,
    Legend,
    Para,
    PlanView,
    Rows,
    Section,
)
from detailbench.report.content.figures import count, moment, of_thing, recorded
from detailbench.report.content.frame_of import framed
from detailbench.report.content.front import MOST_NAME, under_the_car
from detailbench.report.content.gathered import Gathered, ReadFile, gather
from detailbench.report.content.marking import position_of, shapes_of
from detailbench.report.content.order import remark_blocks
from detailbench.report.content.papers import arrival_text
from detailbench.report.content.parts import Text, clipped, joined, said, text_of, typed
from detailbench.report.content.photographs import photo_blocks
from detailbench.report.content.recording import limits_blocks, recording_blocks, settings_blocks
from detailbench.report.content.standing import standing
from detailbench.report.content.taken_in import taken_in_facts
from detailbench.report.content.washed import at_and_by
from detailbench.report.content.wording import counted, ended, initials, lamp_words, opening, place_words, state_words

MOST = 5


def supplement_content(
    picture: JobPicture,
    *,
    now: datetime,
    version: str,
    read_file: ReadFile,
    key_fingerprint: str = "",
    past: Sequence[PutRight] = (),
) -> DocumentContent:
    """The content of the supplement of ``picture``; arguments as of :func:`handover_content`."""
    g = gather(picture, now=now, version=version, read_file=read_file, key_fingerprint=key_fingerprint, past=past)
    kind = _("Supplement")
    marks = {i.mark_id for i in picture.supplement if i.mark_id}
    panels = {i.panel for i in picture.supplement if i.panel}
    photos = tuple(p.id for p in picture.photos if p.mark_id in marks or (p.panel in panels and p.moment == "before"))
    sections = (
        Section(_("What was found"), (_items(g), *_questions(g), *remark_blocks(g, "supplement")), new_page=True),
        Section(_("Photographs of it"), photo_blocks(g, only=photos)),
        Section(_("How this was recorded"), recording_blocks(g, "supplement")),
        Section(_("Settings in force"), settings_blocks(g)),
        Section(_("What this supplement is not"), limits_blocks(g, "supplement")),
    )
    blocks: tuple[Block, ...] = (Para(standing("supplement_what")), *_to_answer(g), signings(g, "supplement"))
    signing = Section(_("The owner's answer"), blocks, new_page=True)
    return framed(g, kind, _front(g, kind), sections, signing, None)


def _front(g: Gathered, kind: str) -> Front:
    car = g.picture.car
    on: dict[str, list[str]] = {}
    for item in g.picture.supplement:
        if item.panel in g.outline.panels:
            on.setdefault(item.panel, []).append(item.id)
    fills = {k: Fill(None, "falling", text_of(count(on[k]))) if k in on else Fill() for k in g.order}
    named = [one(g.picture.marks, i.mark_id) for i in g.picture.supplement if _has_mark(g, i.mark_id)]
    view = PlanView((_("Found: number of entries"),), fills, shapes_of(g, {m.id for m in named}))
    legend = Legend(hatches=(("falling", _("found there")),) if on else ())
    return Front(
        kind=kind,
        car=clipped(car.described, MOST_NAME)[0] or opening(style_name(car.style)),
        under=under_the_car(g),
        rows=Facts(tuple(_rows(g))),
        style=car.style,
        length_mm=car.length_mm,
        plan=view,
        plan_legend=legend,
    )


def _has_mark(g: Gathered, id_: str) -> bool:
    return any(m.id == id_ for m in g.picture.marks)


def _rows(g: Gathered) -> list[Fact]:
    found = items(g.picture)
    shown = [ended(_short_item(seen)) for seen in found[:MOST]]
    more = [seen.item.id for seen in found[MOST:]]
    if more:
        shown.append(counted(more, _("And {n} more, inside."), _("And {n} more, inside.")))
    waiting = [seen.item.id for seen in found if not seen.answered]
    answer: Text = (_("Answered by the owner; the answer stands inside."),)
    if not found:
        answer = (_("Nothing was put to the owner."),)
    elif waiting:
        answer = counted(waiting, _("{n} thing is not answered yet."), _("{n} things are not answered yet."))
    return [
        Fact(_("Who"), (owner_line(g),)),
        *taken_in_facts(g),
        Fact(_("Found"), tuple(shown) or ((_("Nothing came to light after the arrival record."),),)),
        Fact(_("Question"), tuple(_question_lines(g)) or ((_("No question is noted yet."),),)),
        Fact(_("Answer"), (answer,)),
        Fact(_("Until then"), (standing("supplement_what"),)),
        Fact(_("Arrival record"), (arrival_text(g),)),
    ]


def _short_item(seen: ItemSeen) -> Text:
    words = clipped(seen.item.words, 120)[0]
    return (
        said("{panel}: {words}", panel=opening(panel_name(seen.item.panel)), words=words) if seen.item.panel else words
    )


def _question_lines(g: Gathered) -> list[Text]:
    return [
        joined(
            [
                clipped(a.question, 160)[0],
                said(_("({price})"), price=price(g, a.price, a)) if a.price is not None else (),
            ]
        )
        for a in g.picture.agreements
        if a.about == "supplement"
    ]


def _to_answer(g: Gathered) -> tuple[Para, ...]:
    """Lines to fill in while something waits for an answer; else the answers as they were given."""
    found = items(g.picture)
    if not found:
        return (Para((_("Nothing came to light after the arrival record."),)),)
    if any(not seen.answered for seen in found):
        return (Para(standing("supplement_answer")),)
    given = dict.fromkeys(seen.answer for seen in found if seen.answer is not None)
    return tuple(
        Para(said(_("{question} {answer}"), question=ended(typed(a.question)), answer=ended(answer_text(g, a))))
        for a in given
    )


def _items(g: Gathered) -> Grid:
    columns = (
        Column(_("Panel"), 0.15), Column(_("Found, as typed"), 0.30), Column(_("The mark"), 0.33),
        Column(_("When, by"), 0.22),
    )  # fmt: skip
    rows = tuple(
        (
            opening(panel_name(seen.item.panel)) if seen.item.panel else (_("not on a panel"),),
            typed(seen.item.words),
            mark_text(g, one(g.picture.marks, seen.item.mark_id)) if _has_mark(g, seen.item.mark_id) else ("–",),
            at_and_by(g, seen.item),
        )
        for seen in items(g.picture)
    )
    return Grid(columns, (Rows((), rows),))


def mark_text(g: Gathered, mark: Mark) -> Text:
    """A mark in one cell: kind, where, severity, depth, lamp and state."""
    at = position_of(mark)
    depth: Text = ()
    if mark.depth is not None:
        depth = said(_("depth {n} ({words})"), n=of_thing(mark, "depth", 0), words=depth_words(mark.depth))
    return joined(
        [
            opening(kind_of(mark.kind).printed_name),
            (_("all over"),) if at is None else place_words(mark, at),
            said(_("severity {n}"), n=of_thing(mark, "severity", 0)),
            depth,
            lamp_words(g.picture.shop, mark.lamp_id),
            (state_words(mark),),
        ],
        "; ",
    )


def _questions(g: Gathered) -> tuple[Block, ...]:
    asked = [a for a in g.picture.agreements if a.about == "supplement"]
    title = Heading((_("Put to the owner, and the answer so far"),))
    if not asked:
        return (title, Para((_("The question goes out with this supplement; no answer is recorded yet."),)))
    columns = (Column(_("Question as typed"), 0.36), Column(_("Asked"), 0.24), Column(_("Answer"), 0.40))
    rows = tuple(
        (
            joined([typed(a.question), said(_("price {price}"), price=price(g, a.price, a)) if a.price else ()], "; "),
            said(
                "{at}, {who}",
                at=moment(a.entered_at, recorded(a, "entered_at")),
                who=initials(g.picture.shop, a.entered_by),
            ),
            answer_text(g, a),
        )
        for a in asked
    )
    return (title, Grid(columns, (Rows((), rows),)))
