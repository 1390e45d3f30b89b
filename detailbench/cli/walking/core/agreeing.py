"""What is put to the owner and answered, the owner's limits read, and what went wrong."""

from __future__ import annotations

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.expecting import same
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.steps import agreeing as a
from detailbench.findings.agreements import open_agreements, price_agreed
from detailbench.findings.limits import limits_in_force
from detailbench.moves.agreeing import AcknowledgeLimits, AnswerOwner, AskOwner
from detailbench.moves.mishaps import CorrectMishapTime, RecordMishap, TellMishap
from detailbench.record.things import Mishap


def ask(step: a.Ask, hand: Hand) -> None:
    panels = hand.panels(step.on)
    if step.about == "test_section" and not panels and hand.panel:
        panels = (hand.panel,)
    limit = ""
    if step.about == "limit" and step.kind:
        found = [m for m in limits_in_force(hand.picture) if m.kind == step.kind]
        if not found:
            raise Refused(_("No such limit of the owner's is in force."), rule="no_limit")
        limit = found[-1].id
    hand.do(AskOwner(hand.job, step.about, step.question, step.price, panels, limit_id=limit, level=step.level))


def answer(step: a.Answer, hand: Hand) -> None:
    waiting = open_agreements(hand.picture)
    if not waiting:
        raise Refused(_("No question to the owner is open."), rule="no_question")
    hand.do(
        AnswerOwner(
            hand.job, waiting[-1].id, step.answer, step.by, remark=step.remark, message=step.message, at=step.at
        )
    )


def acknowledge(_step: a.Acknowledge, hand: Hand) -> None:
    hand.do(AcknowledgeLimits(hand.job))


def mishap(step: a.NoteMishap, hand: Hand) -> None:
    hand.do(RecordMishap(hand.job, step.words, step.on, step.at))


def newest_mishap(hand: Hand) -> Mishap:
    """The mishap entered last. Raises Refused when there is none."""
    if not hand.picture.mishaps:
        raise Refused(_("No mishap was entered yet."), rule="no_mishap")
    return hand.picture.mishaps[-1]


def mishap_time(step: a.CorrectMishapTime, hand: Hand) -> None:
    hand.do(CorrectMishapTime(hand.job, newest_mishap(hand).id, step.at))


def told(step: a.Told, hand: Hand) -> None:
    hand.do(TellMishap(hand.job, newest_mishap(hand).id, step.whom, step.by))


def open_questions(step: a.ExpectOpenQuestions, hand: Hand) -> None:
    same(len(open_agreements(hand.picture)), step.count)


def limits(step: a.ExpectLimits, hand: Hand) -> None:
    same(len(limits_in_force(hand.picture)), step.count)


def agreed_price(step: a.ExpectAgreedPrice, hand: Hand) -> None:
    same(price_agreed(hand.picture), step.price)


ACTS = {
    a.Ask: ask,
    a.Answer: answer,
    a.Acknowledge: acknowledge,
    a.NoteMishap: mishap,
    a.CorrectMishapTime: mishap_time,
    a.Told: told,
    a.ExpectOpenQuestions: open_questions,
    a.ExpectLimits: limits,
    a.ExpectAgreedPrice: agreed_price,
}
