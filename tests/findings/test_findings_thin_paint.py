"""Thin paint: by its total for any gauge, by its clear coat where a layer gauge measured it; what follows from it."""

from __future__ import annotations

import pytest
from invented_findings import Hands
from test_findings_layers import CLEAR, known_paint, layer_gauge, survey
from test_findings_outcome_table import judged
from test_findings_removal import AFTER, BEFORE, measured

from detailbench.findings.adviser import ask_adviser
from detailbench.findings.first_trial import start_for
from detailbench.findings.thin_paint import clear_coat_of, clear_coat_words, one_go_um, thin_panels
from detailbench.moves.finish_groups import SetGroupPaint
from detailbench.moves.readings import RecordReading
from detailbench.moves.shop import SetSetting
from detailbench.moves.surface import MakeGroup, SetPaintSystem, SetState
from detailbench.moves.trials import JudgeTrial
from detailbench.trials.outcome import Result

TOOK = sum(b - a for b, a in zip(BEFORE, AFTER, strict=True)) / 5


def coat(hands: Hands, panel: str = "bonnet") -> str:
    return clear_coat_of(hands.picture, hands.shop.group(hands.job, panel))


def room(hands: Hands, um: float, panel: str = "bonnet") -> None:
    """A reserve that leaves so much of what was read on the bonnet."""
    hands.do(SetSetting("reserve_um", 1.0))
    found = hands.ruling(panel).room
    assert found is not None
    hands.do(SetSetting("reserve_um", found.decides_um - um))


def layered(hands: Hands, panel: str = "bonnet") -> None:
    known_paint(hands)
    survey(hands, layer_gauge(hands), CLEAR, panel=panel)


def served(hands: Hands) -> None:
    """A measured trial on the roof that cleared and finished clear."""
    found = measured(hands)
    hands.do(JudgeTrial(hands.job, found.trial.id, "yes", "clear"))


# what one go takes off
def test_nothing_measured_is_no_figure(hands: Hands) -> None:
    hands.tried("roof")
    assert one_go_um(hands.picture, hands.shop.group(hands.job, "roof")) is None


def test_what_served_and_was_measured_is_what_one_go_takes(hands: Hands) -> None:
    served(hands)
    assert one_go_um(hands.picture, hands.shop.group(hands.job, "roof")) == pytest.approx(TOOK)


def test_where_nothing_measured_served_the_most_that_was_seen_to_come_off_counts(hands: Hands) -> None:
    found = measured(hands)
    hands.do(JudgeTrial(hands.job, found.trial.id, "no", "clear"))
    assert one_go_um(hands.picture, hands.shop.group(hands.job, "roof")) == pytest.approx(TOOK)


# the clear coat
def test_a_total_says_nothing_of_the_clear_coat(hands: Hands) -> None:
    known_paint(hands)
    hands.survey({"bonnet": (70, 71, 69, 70, 72)})
    hands.do(SetSetting("careful_below_um", 90.0))
    assert coat(hands) == "unknown"


def test_room_for_two_goes_is_known_and_less_is_thin(hands: Hands) -> None:
    served(hands)
    layered(hands)
    room(hands, 2 * TOOK + 0.1)
    assert coat(hands) == "known"
    room(hands, 2 * TOOK - 0.1)
    assert coat(hands) == "thin"
    assert "one go takes about" in thin_panels(hands.picture, ("bonnet",))["bonnet"]


def test_what_the_plan_is_to_take_is_not_taken_away_twice(hands: Hands) -> None:
    served(hands)
    hands.confirmed("roof", 2)
    layered(hands)
    room(hands, 2 * TOOK + 0.1)
    hands.adopted("roof", 2)
    assert coat(hands) == "known"


def test_without_anything_measured_only_no_room_is_thin(hands: Hands) -> None:
    layered(hands)
    room(hands, 0.1)
    assert coat(hands) == "known"
    room(hands, -0.1)
    assert coat(hands) == "thin"
    assert "no room left" in thin_panels(hands.picture, ("bonnet",))["bonnet"]


def test_without_a_reserve_of_the_shop_no_clear_coat_is_called_thin(hands: Hands) -> None:
    served(hands)
    layered(hands)
    assert coat(hands) == "known"


def test_one_thin_panel_makes_its_whole_group_thin_as_the_process_goes_to_all(hands: Hands) -> None:
    layered(hands)
    assert coat(hands) == "known"
    hands.do(SetSetting("careful_below_um", 90.0))
    hands.survey({"roof": (88, 91, 92, 90, 93)})
    assert coat(hands) == "thin"
    assert "careful below" in thin_panels(hands.picture, ("roof", "bonnet"))["roof"]


def test_the_card_tells_of_the_first_thin_panels_and_counts_the_rest(hands: Hands) -> None:
    layered(hands)
    panels = ("roof", "door_front_l", "door_front_r", "door_rear_l")
    hands.survey({panel: (88, 91, 92, 90, 93) for panel in panels})

    def told() -> tuple[str, str]:
        return clear_coat_words(hands.picture, hands.shop.group(hands.job, "bonnet"))

    assert told() == ("known", "Clear coat: known.")
    hands.do(SetSetting("careful_below_um", 90.0))
    found, words = told()
    assert (found, words.count("lowest place")) == ("thin", 2)
    assert words.startswith("Clear coat: known; the paint is thin. The ")
    assert words.endswith("So are 2 more panels.")


def test_under_five_places_the_lowest_counts_as_it_was_read(hands: Hands) -> None:
    known_paint(hands)
    survey(hands, layer_gauge(hands), (33.0, 31.0), panel="bonnet")
    hands.do(SetSetting("reserve_um", 30.9))
    assert coat(hands) == "known"
    hands.do(SetSetting("reserve_um", 31.0))
    assert coat(hands) == "thin"


def test_the_largest_share_the_shop_allows_counts_as_room_too(hands: Hands) -> None:
    layered(hands)
    room(hands, 5.0)
    hands.do(SetSetting("largest_share", 0.05))  # 2 µm of 40
    assert coat(hands) == "known"
    served(hands)
    assert coat(hands) == "thin"


def test_what_no_check_confirms_makes_no_clear_coat_known_but_a_low_one_is_reckoned_with(hands: Hands) -> None:
    known_paint(hands)
    hands.do(SetState(hands.job, ("bonnet",), clean="wiped"))
    hands.checked_session(gauge=layer_gauge(hands))
    for value in CLEAR:
        hands.later()
        hands.do(RecordReading(hands.job, "bonnet", 118.0, clear_um=value))
    hands.do(SetSetting("reserve_um", 45.0))
    assert coat(hands) == "unknown"
    assert "bonnet" in thin_panels(hands.picture, ("bonnet",))


@pytest.mark.parametrize("paint", ["single_stage", "matt", "unknown"])
def test_paint_without_a_clear_coat_of_its_own_is_unknown_not_thin(hands: Hands, paint: str) -> None:
    layered(hands)
    room(hands, -1.0)
    for group in hands.picture.groups:
        hands.do(SetPaintSystem(hands.job, group.id, paint))
    assert coat(hands) == "unknown"
    assert thin_panels(hands.picture, ("bonnet",)) == {}


# what follows from it
def test_beside_keep_a_thin_clear_coat_offers_one_milder_trial_with_its_minutes(hands: Hands) -> None:
    layered(hands)
    room(hands, 1.0)
    kept = judged(hands, 4, "yes", "clear")
    assert [o.result for o in kept.next_options] == []
    room(hands, -1.0)
    kept = judged(hands, 4, "yes", "clear")
    assert kept.result is Result.KEEP
    offer = kept.next_options[0]
    assert (offer.result, offer.minutes) == (Result.MILDER, 8.0)
    assert offer.sentence.startswith("The paint is thin here. One milder trial, ")


def test_where_the_clear_coat_is_thin_the_adviser_only_proves(hands: Hands) -> None:
    hands.do(SetSetting("adviser_stop", "thrift"))
    layered(hands)
    room(hands, 1.0)

    def stop() -> str:
        found = ask_adviser(hands.picture, hands.shop.group(hands.job, "bonnet").id)
        assert found is not None
        return found.stop

    assert stop() == "thrift"
    room(hands, -1.0)
    assert stop() == "prove"


def test_trials_on_a_thin_clear_coat_start_at_the_mild_end_unless_the_shop_turned_that_off(hands: Hands) -> None:
    served(hands)
    layered(hands)
    room(hands, 2 * TOOK - 0.1)
    group = hands.shop.group(hands.job, "bonnet")
    found = start_for(hands.picture, group, "bonnet")
    assert (found.rung, found.from_mild_end) == (0, True)
    assert "thin paint" in found.sentence
    hands.do(SetSetting("mild_start_thin", 0.0))
    assert start_for(hands.picture, group, "bonnet").rung != 0


# paint that cannot be replaced
def test_trials_on_paint_that_cannot_be_replaced_start_at_the_mild_end(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    assert start_for(hands.picture, group, "roof").rung != 0
    hands.do(SetGroupPaint(hands.job, group.id, {"irreplaceable": "yes"}))
    group = hands.shop.group(hands.job, "roof")
    for panel in ("roof", ""):
        found = start_for(hands.picture, group, panel)
        assert (found.rung, found.from_mild_end) == (0, True)
        assert "cannot be replaced" in found.sentence
    hands.do(SetSetting("mild_start_irreplaceable", 0.0))
    assert start_for(hands.picture, group, "roof").rung != 0


def test_said_to_be_replaceable_is_as_nothing_said(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    usual = start_for(hands.picture, group, "roof")
    hands.do(SetGroupPaint(hands.job, group.id, {"irreplaceable": "no"}))
    assert start_for(hands.picture, hands.shop.group(hands.job, "roof"), "roof") == usual


def test_a_panel_taken_out_of_irreplaceable_paint_is_asked_about_again(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    assert hands.shop.bench.do(MakeGroup(hands.job, "a door", ("door_front_l",))).note == ""
    hands.do(SetGroupPaint(hands.job, group.id, {"irreplaceable": "yes"}))
    told = hands.shop.bench.do(MakeGroup(hands.job, "another door", ("door_rear_l",))).note
    assert told == "Say of it too whether its paint can be replaced: that of its panels could not."
    assert hands.shop.group(hands.job, "door_rear_l").irreplaceable == ""
