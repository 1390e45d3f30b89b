"""The wash step by step, and what each step makes of a panel's state; the white-pad rub."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

import pytest
from invented_findings import Hands, hands

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.due import due
from detailbench.findings.panels import outline_of
from detailbench.findings.states import State, state_of
from detailbench.moves.handover import RecordProtection
from detailbench.moves.move import Done
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetPaintSystem, SetState
from detailbench.moves.washing import RecordRubTest, RecordWashStep
from detailbench.record.things import OwnerLimit
from detailbench.record.writing import Writer

__all__ = ["hands"]


@dataclass(frozen=True)
class NoSolvent:
    """The owner wants no solvent on these panels."""

    undoable: ClassVar[bool] = True
    job_id: str
    panels: tuple[str, ...]

    def make(self, w: Writer) -> Done:
        limit = w.add(OwnerLimit, job_id=self.job_id, kind="no_solvent", panels=self.panels)
        return Done(self.job_id, "limit", limit.id)


def wash(hands: Hands, kind: str, *panels: str, why_not: str = "", cover_off: bool = False) -> str:
    """A step done (or left out), a moment after the one before; the sentence that comes with it."""
    hands.later()
    move = RecordWashStep(hands.job, kind, panels or ("bonnet",), why_not=why_not, cover_off=cover_off)
    return hands.shop.bench.do(move).note


def state(hands: Hands, panel: str = "bonnet") -> State:
    return state_of(hands.picture, panel)


# who and when
def test_a_step_carries_who_when_panels_and_product(hands: Hands) -> None:
    hands.do(RecordWashStep(hands.job, "contact_wash", ("bonnet", "roof"), product=" invented shampoo ", note="cold"))
    step = hands.picture.wash_steps[-1]
    assert (step.panels, step.product, step.note) == (("bonnet", "roof"), "invented shampoo", "cold")
    assert (step.entered_by, step.entered_at) == (hands.shop.person, hands.shop.clock.now())


def test_a_second_person_washes_under_their_own_name(hands: Hands) -> None:
    wash(hands, "pre_rinse")
    hands.shop.bench.person = hands.do(AddToShop("person", {"name": "Ben Invented", "initials": "BE"}))
    wash(hands, "rinse")
    assert [s.entered_by for s in hands.picture.wash_steps] == [hands.shop.person, hands.shop.bench.person]


# state
@pytest.mark.parametrize("kind", ["pre_rinse", "iron", "tar", "clay", "rinse", "dry"])
def test_these_steps_alone_leave_a_dirty_panel_dirty(hands: Hands, kind: str) -> None:
    wash(hands, kind)
    assert state(hands) == State()


def test_a_contact_wash_makes_washed(hands: Hands) -> None:
    wash(hands, "contact_wash")
    assert state(hands) == State("washed", "as_found", "not_known")
    assert state(hands, "roof") == State()


def test_a_contact_wash_takes_nothing_back_from_a_cleaner_panel(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("bonnet",), clean="wiped"))
    wash(hands, "contact_wash", "bonnet", "roof")
    assert (state(hands).clean, state(hands, "roof").clean) == ("wiped", "washed")


def test_iron_tar_and_clay_done_or_left_out_with_a_reason_make_decontaminated(hands: Hands) -> None:
    for kind, why_not in (("contact_wash", ""), ("iron", ""), ("clay", "no bonded dirt felt")):
        wash(hands, kind, why_not=why_not)
        assert state(hands).clean == "washed"
    wash(hands, "tar")
    assert state(hands) == State("decontaminated", "as_found", "not_known")


def test_decontamination_before_the_contact_wash_counts_once_it_is_washed(hands: Hands) -> None:
    for kind in ("iron", "tar", "clay"):
        wash(hands, kind)
    assert state(hands).clean == "dirty"
    wash(hands, "contact_wash")
    assert state(hands).clean == "decontaminated"


def test_a_panel_said_to_be_dirty_again_starts_anew(hands: Hands) -> None:
    for kind in ("contact_wash", "iron", "tar", "clay"):
        wash(hands, kind)
    hands.do(SetState(hands.job, ("bonnet",), clean="dirty"))
    wash(hands, "contact_wash")
    assert state(hands).clean == "washed"


def test_a_panel_left_out_of_one_step_is_not_decontaminated_with_the_others(hands: Hands) -> None:
    for kind in ("contact_wash", "iron", "clay"):
        wash(hands, kind, "bonnet", "roof")
    wash(hands, "tar", "roof")
    assert (state(hands).clean, state(hands, "roof").clean) == ("washed", "decontaminated")
    assert "bonnet" in due(hands.picture)["wash"].what
    assert "roof" not in due(hands.picture)["wash"].what


def test_a_panel_wipe_makes_wiped_and_bare_and_undo_takes_step_and_state_back(hands: Hands) -> None:
    wash(hands, "contact_wash")
    wash(hands, "panel_wipe")
    assert state(hands) == State("wiped", "as_found", "bare")
    hands.shop.bench.undo(hands.job)
    assert state(hands) == State("washed", "as_found", "not_known")
    assert [s.kind for s in hands.picture.wash_steps] == ["contact_wash"]
    hands.shop.bench.redo(hands.job)
    assert state(hands) == State("wiped", "as_found", "bare")


def test_a_wipe_without_decontamination_says_on_whose_word_it_is_bare(hands: Hands) -> None:
    wash(hands, "contact_wash", "bonnet", "roof")
    for kind in ("iron", "tar", "clay"):
        wash(hands, kind, "roof")
    assert wash(hands, "panel_wipe", "bonnet", "roof") == (
        "Decontamination is not noted on bonnet: bare stands by your word."
    )


def test_a_wipe_of_a_panel_nobody_washed_says_so(hands: Hands) -> None:
    assert wash(hands, "panel_wipe") == "No wash is noted on bonnet: bare stands by your word."


def test_a_wipe_after_the_machine_makes_wiped_polished_bare(hands: Hands) -> None:
    step = hands.adopted("bonnet")
    wash(hands, "contact_wash")
    wash(hands, "panel_wipe")
    hands.polish("bonnet", step)
    assert state(hands) == State("decontaminated", "polished", "bare")
    assert wash(hands, "panel_wipe") == ""
    assert state(hands) == State("wiped", "polished", "bare")


def test_a_step_left_out_changes_no_state_by_itself(hands: Hands) -> None:
    for kind in ("contact_wash", "panel_wipe"):
        wash(hands, kind, why_not="left for tomorrow")
    assert state(hands) == State()


# what lies on the paint
@pytest.mark.parametrize("cover", ["earlier_coating", "protected"])
def test_a_panel_wipe_takes_no_coating_off_and_says_so(hands: Hands, cover: str) -> None:
    hands.do(SetState(hands.job, ("bonnet",), clean="decontaminated", cover=cover))
    hands.do(SetState(hands.job, ("roof",), clean="decontaminated"))
    said = wash(hands, "panel_wipe", "bonnet", "roof")
    assert said == "A panel wipe takes no coating off: bonnet stays covered, not bare."
    assert state(hands) == State("wiped", "as_found", cover)
    assert state(hands, "roof") == State("wiped", "as_found", "bare")


def test_a_coating_taken_off_before_is_said_by_name(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("bonnet",), clean="decontaminated", cover="earlier_coating"))
    assert wash(hands, "panel_wipe", cover_off=True) == ""
    assert state(hands) == State("wiped", "as_found", "bare")


def test_a_coating_polished_since_is_gone_at_the_wipe(hands: Hands) -> None:
    step = hands.adopted("bonnet")
    hands.do(SetState(hands.job, ("bonnet",), clean="decontaminated", cover="earlier_coating"))
    hands.polish("bonnet", step)
    assert wash(hands, "panel_wipe") == ""
    assert state(hands) == State("wiped", "polished", "bare")


def test_what_was_put_on_after_the_polishing_stays_at_the_wipe(hands: Hands) -> None:
    step = hands.adopted("bonnet")
    hands.polish("bonnet", step)
    wash(hands, "panel_wipe")
    hands.do(RecordProtection(hands.job, ("bonnet",), "invented sealant"))
    assert "stays covered" in wash(hands, "panel_wipe")
    assert state(hands) == State("wiped", "polished", "protected")


# refusals
@pytest.mark.parametrize(
    ("values", "field"),
    [
        ({"kind": "polish"}, "kind"),
        ({"panels": ()}, "panels"),
        ({"panels": ("bonnet", "wheel")}, "panel"),
        ({"why_not": "lazy"}, "why_not"),
        ({"why_not": " . , "}, "why_not"),
        ({"cover_off": True}, "cover_off"),
    ],
)
def test_what_is_no_step_is_refused_and_nothing_is_kept(hands: Hands, values: dict[str, object], field: str) -> None:
    with pytest.raises(BadInput) as caught:
        hands.do(RecordWashStep(**{"job_id": hands.job, "kind": "clay", "panels": ("bonnet",), **values}))  # type: ignore[arg-type]
    assert caught.value.field == field
    assert hands.picture.wash_steps == ()


def test_the_same_step_twice_within_a_second_is_once(hands: Hands) -> None:
    move = RecordWashStep(hands.job, "contact_wash", ("bonnet",))
    first = hands.do(move)
    assert hands.do(move) == first
    hands.later(1.0)
    hands.do(move)
    assert len(hands.picture.wash_steps) == 2


@pytest.mark.parametrize("kind", ["tar", "panel_wipe"])
def test_the_owners_no_to_solvents_stops_what_usually_is_one(hands: Hands, kind: str) -> None:
    hands.do(NoSolvent(hands.job, ("roof",)))
    wash(hands, kind, "bonnet")
    with pytest.raises(Refused, match="no solvent on roof") as caught:
        wash(hands, kind, "bonnet", "roof")
    assert caught.value.rule == "no_solvent"
    assert not caught.value.may_override
    wash(hands, kind, "roof", why_not="owner wants none")
    wash(hands, "iron", "roof")
    assert state(hands, "roof") == State()


# the white-pad rub
def test_colour_on_the_pad_proposes_and_sets_nothing(hands: Hands) -> None:
    done = hands.shop.bench.do(RecordRubTest(hands.job, "wing_front_r", "colour", "hidden edge"))
    assert "no clear coat there, or one that is worn through" in done.note
    assert "common practice, no source" in done.note
    assert "is yours to set" in done.note
    assert hands.shop.group(hands.job, "wing_front_r").paint_system == "unknown"
    rub = hands.picture.rub_tests[-1]
    assert (rub.panel, rub.found, rub.note) == ("wing_front_r", "colour", "hidden edge")


def test_where_the_paint_is_set_to_match_nothing_more_is_asked(hands: Hands) -> None:
    hands.do(SetPaintSystem(hands.job, hands.shop.group(hands.job, "roof").id, "single_stage"))
    assert "is yours to set" not in hands.shop.bench.do(RecordRubTest(hands.job, "roof", "colour")).note


@pytest.mark.parametrize(("panel", "found"), [("roof", "red"), ("wheel", "colour")])
def test_a_rub_of_nothing_is_refused(hands: Hands, panel: str, found: str) -> None:
    with pytest.raises(BadInput):
        hands.do(RecordRubTest(hands.job, panel, found))
    assert hands.picture.rub_tests == ()


# words
def test_one_panel_is_said_in_the_singular(hands: Hands) -> None:
    done = hands.shop.bench.do(SetState(hands.job, ("bonnet",), clean="washed"))
    assert done.says == "state of 1 panel noted"
    assert hands.shop.bench.do(SetState(hands.job, ("bonnet", "roof"), clean="washed")).says == (
        "state of 2 panels noted"
    )


def test_the_journal_says_the_step_and_where(hands: Hands) -> None:
    hands.later()
    whole = tuple(outline_of(hands.picture).panels)
    said = [
        hands.shop.bench.do(RecordWashStep(hands.job, "dry", whole)).says,
        hands.shop.bench.do(RecordWashStep(hands.job, "clay", ("roof",), why_not="no dirt felt")).says,
    ]
    assert said == ["dry: whole car", "clay left out: roof"]
