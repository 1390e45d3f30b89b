"""The wash, the white-pad rubs, second looks and other work: who, when, on what, with what."""

from __future__ import annotations

from collections.abc import Sequence

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.rubs import found_words as rub_words
from detailbench.findings.second_look import found_words as look_words
from detailbench.findings.washing import kind_words
from detailbench.record.thing import Thing
from detailbench.record.things import WashStep
from detailbench.report.content.agreed import price
from detailbench.report.content.blocks import Block, Column, Fact, Facts, Grid, Heading, Para, Rows
from detailbench.report.content.figures import moment, of_thing, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, joined, said, text_of, typed
from detailbench.report.content.wording import ended, initials, lamp_words, opening, panels_listed, state_words


def at_and_by(g: Gathered, thing: Thing) -> Text:
    """ "6 May 2031, 08:20, BE": when it was, as stated or else as entered, and who entered it."""
    at = moment(thing.stated_at or thing.entered_at, recorded(thing, "stated_at" if thing.stated_at else "entered_at"))
    return said("{at}, {who}", at=at, who=initials(g.picture.shop, thing.entered_by))


def on_panels(g: Gathered, panels: Sequence[str]) -> Text:
    """The panels in walking order, or that it is the whole car."""
    if set(g.order) <= set(panels):
        return (_("whole car"),)
    return panels_listed(k for k in g.order if k in panels)


def wash_blocks(g: Gathered) -> tuple[Block, ...]:
    """Every step of the wash, done or left out, then the white-pad rubs."""
    out: list[Block] = []
    steps = g.picture.wash_steps
    if steps:
        columns = (Column(_("Step"), 0.15), Column(_("On"), 0.35), Column(_("With, or why not"), 0.28))
        rows = tuple(_step(g, s) for s in steps)
        out.append(Grid((*columns, Column(_("When, by"), 0.22)), (Rows((), rows),)))
    else:
        out.append(Para((_("No step of a wash is recorded."),)))
    if g.picture.rub_tests:
        words = rub_words()
        facts = tuple(
            Fact(
                _("White-pad rub"),
                (
                    joined(
                        [
                            said("{panel}: {found}", panel=opening(panel_name(r.panel)), found=words[r.found]),
                            typed(r.note),
                            (state_words(r),),
                            at_and_by(g, r),
                        ],
                        "; ",
                    ),
                ),
            )
            for r in g.picture.rub_tests
        )
        out.append(Facts(facts))
    return tuple(out)


def _step(g: Gathered, s: WashStep) -> tuple[Text, ...]:
    how = typed(s.product)
    if s.why_not:
        how = said(_("left out: {why}"), why=typed(s.why_not))
    return (
        opening(kind_words().get(s.kind, s.kind)),
        on_panels(g, s.panels),
        joined([how, typed(s.note)], "; ") or ("–",),
        at_and_by(g, s),
    )


def second_look_blocks(g: Gathered) -> tuple[Block, ...]:
    """Every second look: found what, on which panels, under which lamp."""
    title = Heading((_("Second look, the next day or after a wash"),))
    if not g.picture.second_looks:
        return (title, Para((_("No second look is recorded."),)))
    rows = []
    for s in g.picture.second_looks:
        text = joined(
            [
                said("{panels}: {found}", panels=opening(on_panels(g, s.panels)), found=look_words(s.found)),
                typed(s.words),
                lamp_words(g.picture.shop, s.lamp_id),
                (state_words(s),),
                at_and_by(g, s),
            ],
            "; ",
        )
        rows.append(Para(ended(text)))
    return (title, *rows)


def other_work_blocks(g: Gathered) -> tuple[Block, ...]:
    """Work that is no polishing."""
    if not g.picture.other_work:
        return ()
    rows = []
    for w in g.picture.other_work:
        parts: list[Text] = [typed(w.words)]
        if w.minutes is not None:
            parts.append(text_of(of_thing(w, "minutes", None, _("min"))))
        if w.price is not None:
            parts.append(said(_("price {price}"), price=price(g, w.price, w)))
        rows.append(Para(ended(joined([*parts, at_and_by(g, w)], "; "))))
    return (Heading((_("Other work"),)), *rows)
