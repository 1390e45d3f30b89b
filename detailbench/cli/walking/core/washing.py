"""The wash, the white-pad rub, the supplement's items."""

from __future__ import annotations

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.steps import washing as s
from detailbench.moves.supplement import AddSupplementItem, StrikeSupplementItem
from detailbench.moves.washing import RecordRubTest, RecordWashStep


def wash(step: s.Wash, hand: Hand) -> None:
    hand.do(
        RecordWashStep(
            hand.job,
            step.kind,
            hand.panels(step.panels),
            product=step.product,
            why_not=step.not_,
            note=step.note,
            cover_off=step.cover_off,
        )
    )


def rub(step: s.Rub, hand: Hand) -> None:
    hand.do(RecordRubTest(hand.job, hand.on_panel(), step.found, step.note))


def supplement(step: s.Supplement, hand: Hand) -> None:
    hand.do(AddSupplementItem(hand.job, step.words, step.on))


def supplement_mark(_step: s.SupplementMark, hand: Hand) -> None:
    panel = hand.on_panel()
    marks = [m.id for m in hand.picture.marks if m.panel == panel]
    if not marks:
        raise Refused(_("There is no such mark on that panel."), rule="no_mark")
    hand.do(AddSupplementItem(hand.job, mark_id=marks[-1]))


def supplement_strike(_step: s.SupplementStrike, hand: Hand) -> None:
    items = hand.picture.supplement
    if not items:
        raise Refused(_("There is nothing of that kind to strike out."), rule="nothing")
    hand.do(StrikeSupplementItem(hand.job, items[-1].id))


ACTS = {
    s.Wash: wash,
    s.Rub: rub,
    s.Supplement: supplement,
    s.SupplementMark: supplement_mark,
    s.SupplementStrike: supplement_strike,
}
