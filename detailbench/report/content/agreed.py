"""What was put to the owner and answered: how, by whom, when, for what price; what went wrong and who was told."""

from __future__ import annotations

from decimal import Decimal

from detailbench.basics.numbers import NBSP, format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreement_words import about_words, answer_words, channel_words, newer_counts
from detailbench.findings.agreements import sections_overtaken
from detailbench.findings.settings import setting
from detailbench.record.picture import one
from detailbench.record.things import Agreement, Mishap, OtherWork
from detailbench.report.content.blocks import Block, Column, Grid, Heading, Para, Rows
from detailbench.report.content.figures import moment, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parties import short_name
from detailbench.report.content.parts import Figure, Text, joined, said, text_of, typed
from detailbench.report.content.wording import initials, opening, panels_listed


def agreement_blocks(g: Gathered) -> tuple[Block, ...]:
    """Every question with its answer, those taken back and asked again too."""
    title = Heading((_("Put to the owner and answered"),))
    if not g.picture.agreements:
        return (title, Para((_("No question to the owner and no answer is recorded."),)))
    columns = (
        Column(_("About"), 0.13), Column(_("Question as typed"), 0.30), Column(_("Asked"), 0.19),
        Column(_("Answer"), 0.38),
    )  # fmt: skip
    rows = tuple(_row(g, a) for a in g.picture.agreements)
    return (title, Grid(columns, (Rows((), rows),)))


def _row(g: Gathered, a: Agreement) -> tuple[Text, ...]:
    asked = said(
        "{at}, {who}", at=moment(a.entered_at, recorded(a, "entered_at")), who=initials(g.picture.shop, a.entered_by)
    )
    panels = said(_("on {panels}"), panels=panels_listed(k for k in g.order if k in a.panels)) if a.panels else ()
    price_ = said(_("price {price}"), price=price(g, a.price, a)) if a.price is not None else ()
    again = (_("asked again"),) if a.replaces else ()
    return (
        opening(about_words(a.about)),
        joined([typed(a.question), panels, price_], "; "),
        joined([asked, again], "; "),
        answer_text(g, a),
    )


def answer_text(g: Gathered, a: Agreement) -> Text:
    """ "Yes, by telephone, Third Invented Owner, 7 May 2031, 10:12, to AE; remark: …" """
    if a.answer == "open":
        later = next((b for b in g.picture.agreements if b.replaces == a.id), None)
        return (_("Asked again since."),) if later is not None else (_("Not answered."),)
    who: Text = ()
    if a.party_id:
        who = short_name(g, one(g.picture.parties, a.party_id))
    parts: list[Text] = [opening(answer_words(a.answer))]
    if a.channel:
        parts.append((channel_words(a.channel),))
    parts.append(who)
    if a.answered_at is not None:
        parts.append(text_of(moment(a.answered_at, recorded(a, "answered_at"))))
    if a.answered_to:
        parts.append(said(_("to {who}"), who=initials(g.picture.shop, a.answered_to)))
    remark = typed(g.picture.said(a.id, "remarks"))
    message = typed(g.picture.said(a.id, "message"))
    return joined(
        [
            joined(parts, ", "),
            said(_("remark: “{words}”"), words=remark) if remark else (),
            said(_("message: “{words}”"), words=message) if message else (),
            (_("a proof is kept"),) if a.evidence_id else (),
            (newer_counts(g.picture, a.id),) if a.id in sections_overtaken(g.picture) else (),
        ],
        "; ",
    )


def price(g: Gathered, amount: Decimal, a: Agreement | OtherWork) -> Figure:
    """A price in the shop's currency."""
    digits = max(0, -int(amount.as_tuple().exponent))
    shown = f"{format_number(float(amount), digits)}{NBSP}{setting(g.picture.shop, 'currency')}"
    return Figure(shown, float(amount), recorded(a, "price"))


def mishap_blocks(g: Gathered) -> tuple[Block, ...]:
    """What went wrong on the workshop's watch: what, where, when, who was told, what was agreed."""
    title = Heading((_("Mishaps"),))
    if not g.picture.mishaps:
        return (title, Para((_("No mishap is recorded."),)))
    columns = (
        Column(_("Where"), 0.15), Column(_("What, as typed"), 0.30), Column(_("When, entered by"), 0.22),
        Column(_("Who was told, what was agreed"), 0.33),
    )  # fmt: skip
    return (title, Grid(columns, (Rows((), tuple(_mishap(g, m) for m in g.picture.mishaps)),)))


def _mishap(g: Gathered, m: Mishap) -> tuple[Text, ...]:
    at = moment(m.stated_at or m.entered_at, recorded(m, "stated_at" if m.stated_at else "entered_at"))
    agreed = [a for a in g.picture.agreements if a.mishap_id == m.id]
    return (
        opening(panel_name(m.panel)) if m.panel else (_("not on a panel"),),
        typed(m.words),
        said("{at}, {who}", at=at, who=initials(g.picture.shop, m.entered_by)),
        joined([told_text(m), *(said("“{q}”: {a}", q=typed(a.question), a=answer_text(g, a)) for a in agreed)], "; "),
    )


def told_text(m: Mishap) -> Text:
    """Who was told of it, how and when; or that nobody was."""
    if not m.told:
        return (_("Nobody was told yet."),)
    who = {"owner": _("The owner was told"), "bearer": _("The bearer was told")}.get(m.told, m.told)
    at = text_of(moment(m.told_at, recorded(m, "told_at"))) if m.told_at is not None else ()
    return joined([who, (channel_words(m.channel),) if m.channel else (), at], ", ")
