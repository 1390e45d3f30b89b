"""What stops an act: every way of taking paint off, and nobody sets a rule aside without a name and a reason."""

from __future__ import annotations

import pytest
from invented_findings import Hands
from invented_shop import FOIL_UM

from detailbench.basics.errors import BadInput, RecordTrouble, Refused
from detailbench.moves.reading_mending import NotAValue, ReadAsMil
from detailbench.moves.readings import StrikeReading
from detailbench.moves.surface import HoldPanel, MakeGroup, SetPaintSystem
from detailbench.moves.trials import RecordTrial
from detailbench.moves.work import AdoptProcess, StartStep

MEANS = ("machine", "hand", "sanding")


def stopped(hands: Hands, panel: str, step_id: str) -> str:
    """The rule that stops a start."""
    with pytest.raises(Refused) as caught:
        hands.do(StartStep(hands.job, panel, step_id))
    return caught.value.rule


@pytest.mark.parametrize("means", MEANS)
@pytest.mark.parametrize("paint", ["matt", "filmed", "wrapped", "bare"])
def test_paint_that_takes_no_abrasive_stops_every_means(hands: Hands, means: str, paint: str) -> None:
    step = hands.adopted("roof", means=means)
    hands.do(SetPaintSystem(hands.job, hands.shop.group(hands.job, "roof").id, paint))
    assert stopped(hands, "roof", step.id) == "thickness"


@pytest.mark.parametrize("means", MEANS)
def test_below_leave_below_stops_every_means(hands: Hands, means: str) -> None:
    hands.leave_below(90.0)
    step = hands.adopted("roof", means=means)
    hands.survey({"roof": (89.9,) * 5})
    assert stopped(hands, "roof", step.id) == "thickness"


@pytest.mark.parametrize("means", MEANS)
def test_a_failed_gauge_check_stops_every_means(hands: Hands, means: str) -> None:
    step = hands.adopted("roof", means=means)
    hands.checked_session(tuple(v + 4 for v in FOIL_UM))
    assert stopped(hands, "roof", step.id) == "gauge_check"


def test_a_failed_gauge_check_stops_a_trial_too(hands: Hands) -> None:
    combination = hands.tried("roof")
    hands.checked_session(tuple(v + 4 for v in FOIL_UM))
    move = RecordTrial(hands.job, hands.shop.group(hands.job, "roof").id, "roof", combination)
    with pytest.raises(Refused, match="last gauge check failed"):
        hands.do(move)


def test_a_means_nobody_knows_is_refused(hands: Hands) -> None:
    combination = hands.tried("roof")
    group = hands.shop.group(hands.job, "roof").id
    with pytest.raises(BadInput, match="by machine, by hand or by sanding"):
        hands.do(AdoptProcess(hands.job, group, [{"combination_id": combination, "means": "magic"}]))


def test_without_a_process_nothing_starts(hands: Hands) -> None:
    step = hands.adopted("roof")
    assert stopped(hands, "bumper_front", step.id) == "no_process"


def test_a_panel_found_to_carry_another_paint_inherits_no_process(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(MakeGroup(hands.job, "refinished door", ("door_front_r",)))
    assert stopped(hands, "door_front_r", step.id) == "no_process"
    hands.polish("tailgate", step)


def test_a_process_tried_only_on_a_panel_of_another_paint_stops(hands: Hands) -> None:
    step = hands.adopted("roof")
    tried = tuple(dict.fromkeys(t.panel for t in hands.picture.trials))
    hands.do(MakeGroup(hands.job, "refinished", tried))
    assert stopped(hands, "tailgate", step.id) == "not_seen_to_work"
    hands.tried("tailgate")
    hands.confirmed("tailgate")
    hands.do(
        AdoptProcess(hands.job, hands.shop.group(hands.job, "tailgate").id, [{"combination_id": step.combination_id}])
    )
    hands.polish("tailgate", hands.picture.steps[-1])


def test_what_was_tried_on_another_paint_since_is_not_adopted(hands: Hands) -> None:
    combination = hands.tried("door_front_r")
    hands.do(MakeGroup(hands.job, "refinished door", ("door_front_r",)))
    rest = hands.shop.group(hands.job, "roof").id
    with pytest.raises(Refused, match="not seen to clear on this paint"):
        hands.do(AdoptProcess(hands.job, rest, [{"combination_id": combination}]))
    door = hands.shop.group(hands.job, "door_front_r").id
    hands.do(AdoptProcess(hands.job, door, [{"combination_id": combination}]))


@pytest.mark.parametrize("reason", ["", "x", ". .", "  ok  ", "- owner"])
def test_a_reason_is_two_words(hands: Hands, reason: str) -> None:
    step = hands.adopted("roof")
    hands.do(HoldPanel(hands.job, "roof", "waits for the owner"))
    with pytest.raises(Refused):
        hands.do(StartStep(hands.job, "roof", step.id, override=reason))
    assert (hands.picture.runs, hands.picture.overrides) == ((), ())


@pytest.mark.parametrize(("person", "family"), [("", Refused), ("nobody-known-here", RecordTrouble)])
def test_a_rule_is_set_aside_by_somebody(hands: Hands, person: str, family: type[Exception]) -> None:
    step = hands.adopted("roof")
    hands.do(HoldPanel(hands.job, "roof", "waits for the owner"))
    hands.shop.bench.person = person
    with pytest.raises(family):
        hands.do(StartStep(hands.job, "roof", step.id, override="owner agreed by telephone"))
    assert hands.picture.runs == ()


def test_every_rule_that_stood_is_noted_and_goes_with_the_start_when_that_is_taken_back(hands: Hands) -> None:
    hands.leave_below(90.0)
    step = hands.adopted("roof")
    hands.survey({"roof": (80.0,) * 5})
    hands.do(HoldPanel(hands.job, "roof", "waits for the owner"))
    hands.do(StartStep(hands.job, "roof", step.id, override="owner agreed by telephone"))
    assert [o.rule for o in hands.picture.overrides] == ["held", "thickness"]
    hands.shop.bench.undo(hands.job)
    assert (hands.picture.overrides, hands.picture.runs) == ((), ())
    assert stopped(hands, "roof", step.id) == "held"
    hands.shop.bench.redo(hands.job)
    assert len(hands.picture.overrides) == 2


@pytest.mark.parametrize("take_out", [StrikeReading, NotAValue])
def test_a_low_reading_is_taken_out_only_with_a_reason_under_a_name(
    hands: Hands, take_out: type[StrikeReading]
) -> None:
    hands.leave_below(90.0)
    hands.checked_session()
    hands.read("roof", 80.0, 90.0)
    low, other = hands.picture.readings
    hands.do(take_out(hands.job, other.id))
    with pytest.raises(Refused, match="only with a reason") as caught:
        hands.do(take_out(hands.job, low.id))
    assert (caught.value.rule, caught.value.may_override) == ("low_reading", True)
    hands.do(take_out(hands.job, low.id, override="gauge was tilted"))
    kept = hands.picture.overrides[0]
    assert (kept.rule, kept.panel, kept.reason, kept.entered_by) == (
        "low_reading", "roof", "gauge was tilted", hands.shop.person,
    )  # fmt: skip


def test_a_thickness_in_um_is_not_read_as_mil(hands: Hands) -> None:
    hands.checked_session()
    hands.read("roof", 80.0)
    with pytest.raises(Refused, match="as it stands"):
        hands.do(ReadAsMil(hands.job, hands.picture.readings[0].id))
