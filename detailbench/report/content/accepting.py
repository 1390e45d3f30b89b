"""The last page: what the owner said, with remarks as typed, and how each person signed."""

from __future__ import annotations

import json

from detailbench.basics.texts import _
from detailbench.body.paths import Point
from detailbench.findings.agreements import approved_section
from detailbench.record.things import Acceptance, Signature
from detailbench.report.content.blocks import Block, Fact, Facts, Para, Signing, Signings
from detailbench.report.content.figures import day, moment, moment_with_offset, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parties import deleted
from detailbench.report.content.parts import Text, clipped, said, typed
from detailbench.report.content.standing import standing
from detailbench.report.content.wording import person_words

MOST_NAME, MOST_STATEMENT = 60, 400


def acceptance_of(g: Gathered) -> Acceptance | None:
    """The newest acceptance counts."""
    return g.picture.acceptances[-1] if g.picture.acceptances else None


def answer_words(acceptance: Acceptance) -> str:
    """ "Accepted with the remarks above" """
    return {
        "accepted": _("Accepted"),
        "with_remarks": _("Accepted with the remarks above"),
        "not_accepted": _("Not accepted"),
    }[acceptance.answer]


def accepting_blocks(g: Gathered) -> tuple[Block, ...]:
    """Statement, answer, remarks, signatures."""
    found = acceptance_of(g)
    if found is None:
        return (
            Para((_("Not accepted yet: no answer of the owner was entered."),)),
            Para(standing("handover_open")),
            signings(g, "handover"),
        )
    remarks = typed(g.picture.said(found.id, "remarks"))
    rows = [
        Fact(_("Remarks"), (remarks or (_("none"),),), "typed"),
        Fact(
            _("Answer"),
            (
                said(
                    "{answer}, {at}.",
                    answer=answer_words(found),
                    at=moment_with_offset(found.entered_at, recorded(found, "entered_at")),
                ),
            ),
        ),
    ]
    rows += _level(g, found)
    if _may_be_signed(g):
        rows.append(Fact(_("Statement"), (_statement(found),)))
    earlier = g.picture.acceptances[:-1]
    if earlier:
        words = _("An earlier answer was entered {at}: {answer}.")
        rows.append(
            Fact(
                _("Before that"),
                tuple(
                    said(words, at=moment(a.entered_at, recorded(a, "entered_at")), answer=answer_words(a).lower())
                    for a in earlier
                ),
            )
        )
    return (Facts(tuple(rows)), signings(g, "handover"))


def _level(g: Gathered, found: Acceptance) -> list[Fact]:
    """The work held against the test section the owner agreed to; nothing where none was agreed."""
    agreed = approved_section(g.picture)
    if agreed is None:
        return []
    met = {
        "yes": _("as agreed"),
        "no": _("not as agreed"),
        "": _("nobody said whether the work is as agreed"),
    }[found.level_met]
    return [Fact(_("Agreed level"), (said("{level}: {met}.", level=typed(agreed.level), met=met),))]


def _may_be_signed(g: Gathered) -> bool:
    """The owner's statement stands where the owner or a bearer signed it, or still may sign it on paper."""
    theirs = [s for s in g.picture.signatures if s.moment == "handover" and s.role in ("owner", "bearer")]
    return not theirs or any(s.way == "drawn" for s in theirs)


def _statement(found: Acceptance) -> Text:
    light = typed(found.light) or (_("light that was not noted"),)
    return standing(
        "handover",
        day=day(found.entered_at, recorded(found, "entered_at")),
        light=light,
        answer=answer_words(found),
    )


def signings(g: Gathered, at: str) -> Signings:
    """How each person signed at a moment: arrival, supplement or handover."""
    long = []
    for signature in (s for s in g.picture.signatures if s.moment == at):
        name = g.picture.said(signature.id, "name")
        long += [typed(name)] if len(name) > MOST_NAME else []
        long += [typed(signature.statement)] if len(signature.statement) > MOST_STATEMENT else []
    return Signings(_answers(g, at), tuple(long))


def _answers(g: Gathered, at: str) -> tuple[Signing, ...]:
    here = [s for s in g.picture.signatures if s.moment == at]
    newest: dict[str, Signature] = {s.role: s for s in here}
    out = [_signing(g, newest[role]) for role in ("owner", "bearer", "workshop") if role in newest]
    roles = {"owner": _("Owner"), "workshop": _("Workshop")}
    if "bearer" in newest:
        roles.pop("owner") if "owner" not in newest else None
    out += [Signing(words, (), (_("not signed"),)) for role, words in roles.items() if role not in newest]
    return tuple(out)


def _signing(g: Gathered, signature: Signature) -> Signing:
    roles = {"owner": _("Owner"), "bearer": _("Bearer"), "workshop": _("Workshop")}
    ways = {
        "drawn": _("drawn on the workshop's screen {at}"),
        "telephone": _("answered by telephone {at}"),
        "message": _("answered by message {at}"),
        "declined": _("declined to sign {at}"),
        "absent": _("was absent {at}"),
    }
    at = moment_with_offset(signature.entered_at, recorded(signature, "entered_at"))
    way = said(
        _("{way}, noted by {who}"),
        way=said(ways[signature.way], at=at),
        who=person_words(g.picture.shop, signature.entered_by),
    )
    return Signing(
        roles[signature.role],
        clipped(g.picture.said(signature.id, "name"), MOST_NAME)[0] or _no_name(g, signature),
        way,
        strokes_of(g.picture.said(signature.id, "strokes")),
        clipped(signature.statement, MOST_STATEMENT)[0],
    )


def _no_name(g: Gathered, signature: Signature) -> Text:
    return () if signature.role == "workshop" else deleted(g)


def strokes_of(text: str) -> tuple[tuple[Point, ...], ...]:
    """The strokes of a drawn signature, points held within 0…1."""
    if not text:
        return ()
    return tuple(
        tuple((min(max(float(x), 0.0), 1.0), min(max(float(y), 0.0), 1.0)) for x, y in stroke)
        for stroke in json.loads(text)
    )
