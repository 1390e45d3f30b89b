"""What the owner does not want binds in the wash and at the end too; a word alone does not go round it."""

from __future__ import annotations

import pytest
from invented_findings import Hands, hands
from invented_limits import PutLimit

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.states import State, state_of
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.handover import RecordProtection
from detailbench.moves.surface import SetState
from detailbench.moves.washing import RecordWashStep

__all__ = ["hands"]


def agreed(hands: Hands, limit: str) -> None:
    asked = hands.do(AskOwner(hands.job, "limit", "may it be after all?", limit_id=limit))
    hands.do(AnswerOwner(hands.job, asked, "yes", "telephone"))


# wiped by a person's word, where no solvent may be used
def test_wiped_by_word_under_no_solvent_asks_how(hands: Hands) -> None:
    hands.do(PutLimit(hands.job, "no_solvent", ("roof",)))
    with pytest.raises(BadInput, match=r"roof: no solvent.*two words") as found:
        hands.do(SetState(hands.job, ("bonnet", "roof"), clean="wiped"))
    assert found.value.field == "how"
    with pytest.raises(BadInput, match="two words"):
        hands.do(SetState(hands.job, ("roof",), clean="wiped", how="wiped"))
    assert state_of(hands.picture, "roof") == State()
    hands.do(SetState(hands.job, ("roof",), clean="wiped", how="distilled water, clean towel"))
    assert state_of(hands.picture, "roof").clean == "wiped"
    assert hands.picture.state_notes[-1].how == "distilled water, clean towel"


def test_elsewhere_and_for_any_other_word_nothing_is_asked(hands: Hands) -> None:
    hands.do(PutLimit(hands.job, "no_solvent", ("roof",)))
    hands.do(SetState(hands.job, ("bonnet",), clean="wiped"))
    hands.do(SetState(hands.job, ("roof",), clean="decontaminated"))
    hands.do(SetState(hands.job, ("roof",), cover="bare"))
    assert state_of(hands.picture, "roof").clean == "decontaminated"


def test_once_the_owner_agreed_nothing_is_asked(hands: Hands) -> None:
    agreed(hands, hands.do(PutLimit(hands.job, "no_solvent", ("roof",))))
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    assert state_of(hands.picture, "roof").clean == "wiped"


# a panel not to be touched
def test_a_barred_panel_is_not_clayed(hands: Hands) -> None:
    limit = hands.do(PutLimit(hands.job, "bar_panel", ("mirror_cap_l",), words="painted by hand"))
    with pytest.raises(Refused, match=r"left mirror cap.*not to be touched.*painted by hand") as found:
        hands.do(RecordWashStep(hands.job, "clay", ("bonnet", "mirror_cap_l")))
    assert (found.value.rule, found.value.may_override) == ("owner_limit", False)
    assert "agreement" in str(found.value)
    assert hands.picture.wash_steps == ()
    hands.do(RecordWashStep(hands.job, "clay", ("mirror_cap_l",), why_not="owner wants none"))
    agreed(hands, limit)
    hands.later()
    hands.do(RecordWashStep(hands.job, "clay", ("mirror_cap_l",)))


@pytest.mark.parametrize("kind", ["pre_rinse", "contact_wash", "iron", "tar", "rinse", "dry", "panel_wipe"])
def test_a_barred_panel_is_washed_with_the_car(hands: Hands, kind: str) -> None:
    hands.do(PutLimit(hands.job, "bar_panel", ("roof",)))
    hands.do(RecordWashStep(hands.job, kind, ("bonnet", "roof")))
    assert hands.picture.wash_steps[-1].panels == ("bonnet", "roof")


def test_nothing_is_put_on_a_barred_panel(hands: Hands) -> None:
    limit = hands.do(PutLimit(hands.job, "bar_panel", ("roof",)))
    with pytest.raises(Refused, match="roof: not to be touched") as found:
        hands.do(RecordProtection(hands.job, ("bonnet", "roof"), "invented wax", "wax"))
    assert (found.value.rule, found.value.may_override) == ("owner_limit", False)
    assert hands.picture.protections == ()
    hands.do(RecordProtection(hands.job, ("bonnet",), "invented wax", "wax"))
    agreed(hands, limit)
    hands.do(RecordProtection(hands.job, ("roof",), "invented wax", "wax"))
    assert len(hands.picture.protections) == 2


def test_nor_by_word_alone(hands: Hands) -> None:
    hands.do(PutLimit(hands.job, "bar_panel", ("roof",)))
    with pytest.raises(BadInput, match="roof: not to be touched") as found:
        hands.do(SetState(hands.job, ("roof",), cover="protected"))
    assert found.value.field == "how"
    hands.do(SetState(hands.job, ("roof",), cover="protected", how="owner's own wax"))
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
