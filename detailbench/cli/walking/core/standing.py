"""How the job goes on, and what is done at its end."""

from __future__ import annotations

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.expecting import close_to, holds
from detailbench.cli.walking.core.hand import Hand, Unmet
from detailbench.cli.walking.core.shop import lamp_id
from detailbench.cli.walking.kinds import amount
from detailbench.cli.walking.steps import standing as s
from detailbench.findings.since_last import since_last
from detailbench.moves.looking_again import RecordSecondLook
from detailbench.moves.other_work import RecordOtherWork
from detailbench.moves.turning import CarReturns, TurnJob
from detailbench.moves.work import CorrectMinutes


def turn(step: s.TakeTurn, hand: Hand) -> None:
    hand.do(TurnJob(hand.job, step.turn, step.reason))


def returns(step: s.Returns, hand: Hand) -> None:
    shows = amount(step.odometer)
    hand.do(CarReturns(hand.job, None if shows is None else int(shows)))


def look_second(step: s.LookSecond, hand: Hand) -> None:
    hand.do(
        RecordSecondLook(hand.job, hand.panels(step.on), step.found, words=step.words, lamp_id=lamp_id(hand, step.lamp))
    )


def other_work(step: s.NoteOtherWork, hand: Hand) -> None:
    hand.do(RecordOtherWork(hand.job, step.words, amount(step.minutes), step.price))


def true_time(step: s.TrueTime, hand: Hand) -> None:
    panel = hand.on_panel()
    over = [r for r in hand.picture.runs if r.panel == panel and r.finished_at is not None]
    if not over:
        raise Refused(_("No go at that panel is over yet."), rule="no_run")
    hand.do(CorrectMinutes(hand.job, over[-1].id, step.minutes.value))


def expect_since_last(step: s.ExpectSinceLast, hand: Hand) -> None:
    found = since_last(hand.picture).get(hand.on_panel())
    if found is None or not found.distinguishable:
        raise Unmet(_("there is no figure: {why}").format(why=found.sentence if found else _("not measured again")))
    close_to(found.change_um, step.change)


def expect_no_since_last(step: s.ExpectNoSinceLast, hand: Hand) -> None:
    found = since_last(hand.picture).get(hand.on_panel())
    if found is not None and found.distinguishable:
        raise Unmet(found.sentence)
    holds(step.part, "" if found is None else found.sentence)


ACTS = {
    s.TakeTurn: turn,
    s.Returns: returns,
    s.LookSecond: look_second,
    s.NoteOtherWork: other_work,
    s.TrueTime: true_time,
    s.ExpectSinceLast: expect_since_last,
    s.ExpectNoSinceLast: expect_no_since_last,
}
