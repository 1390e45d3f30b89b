"""The last page: what the owner said, with remarks as typed, and how each person signed."""

from __future__ import annotations

import json

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.body.paths import Point
from detailbench.findings.agreements import ApprovedSection
from detailbench.findings.level_met import levels_met, met_words, unsaid_which
from detailbench.record.picture import JobPicture
from detailbench.record.things import Acceptance, Signature
from detailbench.report.content.blocks import Block, Fact, Facts, Para, Signing, Signings
from detailbench.report.content.figures import day, moment, moment_with_offset, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parties import deleted
from detailbench.report.content.parts import Text, clipped, joined, said, typed
from detailbench.report.content.standing import standing
from detailbench.report.content.wording import group_name, opening, panels_counted, panels_listed, person_words

MOST_NAME, MOST_STATEMENT = 60, 400
MOST_PANELS = 3


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
        rows.append(Fact(_("Statement"), (_statement(g, found),)))
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
    """The work held against each test section the owner agreed to; nothing where none was agreed."""
    each = levels_met(g.picture, found)
    texts: list[Text] = [
        said("{where}: {level}: {met}.", where=_where(s), level=typed(s.level), met=met_words(met))
        if len(each) > 1
        else said("{level}: {met}.", level=typed(s.level), met=met_words(met))
        for s, met in each
    ]
    if unsaid_which(g.picture, found):
        texts.append((_not_which(found),))
    return [Fact(_("Agreed level"), tuple(texts))] if texts else []


def _where(section: ApprovedSection) -> Text:
    panel = panel_name(section.trial.panel)
    return opening(panel) if section.group is None else joined([group_name(section.group), panel], ", ")


def _not_which(found: Acceptance) -> str:
    """The owner's word on the level, where it is not kept of which section it was."""
    if found.level_met == "yes":
        return _("The owner found the work as agreed; of which test section was not said.")
    return _("The owner found the work not as agreed; of which test section was not said.")


def not_as_agreed(g: Gathered, found: Acceptance) -> Text:
    """For page one: the panels whose approved test section the work does not meet; nothing where there is none."""
    panels = list(dict.fromkeys(s.trial.panel for s, met in levels_met(g.picture, found) if met == "no"))
    if panels:
        named = panels_listed(panels) if len(panels) <= MOST_PANELS else panels_counted(panels)
        return said(_("Not as agreed: {panels}."), panels=named)
    if found.level_met == "no" and unsaid_which(g.picture, found):
        return (_("Not as agreed; of which test section was not said."),)
    return ()


def signed_answer(picture: JobPicture, found: Acceptance) -> Text:
    """What the line to be signed says of the work: the answer, then the word on every approved test section."""
    parts: list[Text] = [(answer_words(found),)]
    if found.met_ids or found.not_met_ids:  # an answer from before named none in what was signed
        words = _("Test section on the {panel}, “{level}”: {met}")
        parts += [
            said(words, panel=panel_name(s.trial.panel), level=typed(s.level), met=met_words(met))
            for s, met in levels_met(picture, found)
        ]
    return joined(parts, ". ")


def _may_be_signed(g: Gathered) -> bool:
    """The owner's statement stands where the owner or a bearer signed it, or still may sign it on paper."""
    theirs = [s for s in g.picture.signatures if s.moment == "handover" and s.role in ("owner", "bearer")]
    return not theirs or any(s.way == "drawn" for s in theirs)


def _statement(g: Gathered, found: Acceptance) -> Text:
    light = typed(found.light) or (_("light that was not noted"),)
    return standing(
        "handover",
        day=day(found.entered_at, recorded(found, "entered_at")),
        light=light,
        answer=signed_answer(g.picture, found),
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
