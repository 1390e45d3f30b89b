"""What a trial may and may not be: fresh places once, refinish and cure, counts, feel, the second panel, sanding."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest
from invented_findings import Hands
from invented_findings import hands as hands

from detailbench.basics.errors import BadInput, Refused
from detailbench.body.edges import EdgePosition
from detailbench.findings.counting import count_of
from detailbench.findings.cure import cure_of
from detailbench.findings.first_trial import start_for
from detailbench.findings.paint_feel import feel_of, feel_words
from detailbench.findings.panels import outline_of
from detailbench.findings.processes import panel_steps
from detailbench.findings.trial_story import lightness_of, outcome_of, range_combinations
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.finish_groups import NotePaintFeel, SetGroupPaint
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import HoldPanel, MakeGroup
from detailbench.moves.trials import CountMarks, JudgeTrial, RecordTrial
from detailbench.moves.work import AdoptProcess, StartStep


def at(hands: Hands, right: float, panel: str = "roof") -> EdgePosition:
    """A place so many mm from the left edge of the panel's middle line."""
    drawn = outline_of(hands.picture).panels[panel]
    front, left = (next(name for name, way in drawn.edges.items() if way == w) for w in ("up", "left"))
    return EdgePosition(front, drawn.height_mm / 2, left, right, drawn.width_mm, drawn.height_mm)


def trial(hands: Hands, rung: int = 3, panel: str = "roof", **more: Any) -> RecordTrial:
    group = hands.shop.group(hands.job, panel)
    technique = {"section_w_mm": 300.0, "section_h_mm": 250.0, **more.pop("technique", {})}
    combination = range_combinations(hands.picture, group.id)[rung].id
    return RecordTrial(hands.job, group.id, panel, combination, technique=technique, **more)


def refusal(hands: Hands, move: Any) -> Refused:
    with pytest.raises(Refused) as caught:
        hands.do(move)
    return caught.value


# fresh places
def test_a_fresh_place_serves_once_and_the_same_place_on_top_goes(hands: Hands) -> None:
    first = hands.do(trial(hands, at=at(hands, 300)))
    assert refusal(hands, trial(hands, 4, at=at(hands, 590))).rule == "place_used"
    hands.do(trial(hands, 1, at=at(hands, 300), on_top_of=first))
    hands.do(trial(hands, 4, at=at(hands, 640)))
    # another panel is another place
    hands.do(trial(hands, 4, "tailgate"))


def test_too_little_clear_paint_between_two_places_is_warned_of(hands: Hands) -> None:
    hands.do(trial(hands, at=at(hands, 300)))
    near = hands.shop.bench.do(trial(hands, 4, at=at(hands, 610)))
    assert "10 mm clear to trial 1: 20 to 30 mm between places" in near.note.replace("\N{NO-BREAK SPACE}", " ")
    clear = hands.shop.bench.do(trial(hands, 5, at=at(hands, 936)))
    assert "clear to trial" not in clear.note


def test_the_worst_place_is_warned_of_until_something_serves(hands: Hands) -> None:
    assert "comes second" in hands.shop.bench.do(trial(hands, spot="worst")).note
    hands.tried("roof")
    assert "comes second" not in hands.shop.bench.do(trial(hands, spot="worst")).note


# technique fields
@pytest.mark.parametrize("field", ["pad_condition", "primed"])
def test_pad_and_priming_are_said_in_known_words(hands: Hands, field: str) -> None:
    with pytest.raises(BadInput) as caught:
        hands.do(trial(hands, technique={field: "perhaps"}))
    assert caught.value.field == field


def test_a_trial_keeps_the_batch_on_the_shelf_unless_another_is_named(hands: Hands) -> None:
    shop = hands.picture.shop
    product = hands.do(AddToShop("product", {"name": "invented polish", "kind": "medium", "batch": "B 7"}))
    combination = hands.do(
        AddToShop(
            "combination",
            {"machine_id": shop.machines[0].id, "pad_id": shop.pads[0].id, "product_id": product, "rung": 9},
        )
    )
    group = hands.shop.group(hands.job, "roof")
    hands.do(RecordTrial(hands.job, group.id, "roof", combination))
    hands.do(RecordTrial(hands.job, group.id, "roof", combination, technique={"batch": "B 8"}))
    assert [t.batch for t in hands.picture.trials] == ["B 7", "B 8"]


# refinish and cure
def today(hands: Hands):  # type: ignore[no-untyped-def]
    return hands.shop.clock.now().date()


def refinished(hands: Hands, **values: Any) -> str:
    group = hands.shop.group(hands.job, "roof").id
    hands.do(SetGroupPaint(hands.job, group, {"refinished": "yes", **values}))
    return cure_of(hands.picture, hands.shop.group(hands.job, "roof"), today(hands))


def test_under_the_stated_time_nothing_abrasive_is_started(hands: Hands) -> None:
    assert refinished(hands, refinished_on=today(hands) - timedelta(days=10), cure_days=30.0) == "not_cured"
    found = refusal(hands, trial(hands, 0))
    assert (found.rule, found.may_override) == ("cure", True)
    group = hands.shop.group(hands.job, "roof")
    assert start_for(hands.picture, group, "roof", day=today(hands)).rung is None
    assert refinished(hands, cure_days=9.0) == "cured"
    hands.do(trial(hands, 4))


def test_a_process_adopted_before_does_not_start_on_a_refinish_under_the_stated_time(hands: Hands) -> None:
    step = hands.adopted("roof")
    refinished(hands, refinished_on=today(hands), cure_days=30.0)
    assert refusal(hands, StartStep(hands.job, "roof", step.id)).rule == "cure"


def test_where_the_cure_is_unknown_the_first_trial_is_the_mildest(hands: Hands) -> None:
    assert refinished(hands, cure_word="baked, he thinks") == "unknown"
    assert refusal(hands, trial(hands, 2)).rule == "cure_unknown"
    assert start_for(hands.picture, hands.shop.group(hands.job, "roof"), "roof", day=today(hands)).rung == 0
    hands.do(trial(hands, 0))
    hands.do(trial(hands, 2))


def test_a_refinish_of_long_ago_holds_nothing_up(hands: Hands) -> None:
    assert refinished(hands, refinished_on=today(hands) - timedelta(days=400)) == "cured"
    assert refinished(hands, refinished_on=today(hands) - timedelta(days=40)) == "unknown"


@pytest.mark.parametrize(
    ("values", "field"),
    [
        ({"lightness": "grey"}, "lightness"),
        ({"refinished": "perhaps"}, "refinished"),
        ({"cure_days": -1.0}, "cure_days"),
        ({"cure_days": float("nan")}, "cure_days"),
        ({"colour": "red"}, "colour"),
        ({}, "values"),
    ],
)
def test_what_is_said_of_a_paint_must_make_sense(hands: Hands, values: dict[str, Any], field: str) -> None:
    with pytest.raises(BadInput) as caught:
        hands.do(SetGroupPaint(hands.job, hands.shop.group(hands.job, "roof").id, values))
    assert caught.value.field == field


def test_a_refinish_that_has_not_come_yet_is_refused(hands: Hands) -> None:
    with pytest.raises(BadInput, match="not come yet"):
        refinished(hands, refinished_on=today(hands) + timedelta(days=1))


def test_the_groups_own_lightness_goes_before_the_cars(hands: Hands) -> None:
    assert lightness_of(hands.picture, hands.shop.group(hands.job, "roof")) == "dark"
    hands.do(SetGroupPaint(hands.job, hands.shop.group(hands.job, "roof").id, {"lightness": "light"}))
    assert lightness_of(hands.picture, hands.shop.group(hands.job, "roof")) == "light"


# judging
def test_a_count_supports_and_an_interval_stands_only_from_twenty_marks_on(hands: Hands) -> None:
    made = hands.do(trial(hands))
    done = hands.shop.bench.do(JudgeTrial(hands.job, made, "no", "clear", counted_before=24, counted_left=3))
    assert "21 of 24" in done.note
    found = count_of(outcome_of(hands.picture, made))
    assert found is not None
    assert found.low == pytest.approx(0.690, abs=0.001)
    # the person's word stands, whatever the count says
    assert hands.picture.outcomes[-1].cleared == "no"
    few = hands.shop.bench.do(CountMarks(hands.job, made, 19, 0))
    assert "no share is stated" in few.note
    assert hands.picture.outcomes[-1].counted_before == 19


@pytest.mark.parametrize(("before", "left"), [(24, None), (None, 3), (3, 4), (0, 0), (24, -1), (24, 2.5)])
def test_an_impossible_count_is_refused(hands: Hands, before: Any, left: Any) -> None:
    made = hands.do(trial(hands))
    with pytest.raises(BadInput):
        hands.do(JudgeTrial(hands.job, made, "yes", "clear", counted_before=before, counted_left=left))
    assert hands.picture.outcomes == ()


def test_nothing_is_counted_before_it_was_judged(hands: Hands) -> None:
    assert refusal(hands, CountMarks(hands.job, hands.do(trial(hands)), 24, 3)).rule == "not_judged"


def test_the_second_lamp_is_another_one(hands: Hands) -> None:
    lamps = [lamp.id for lamp in hands.picture.shop.lamps]
    made = hands.do(trial(hands))
    with pytest.raises(BadInput, match="another one"):
        hands.do(JudgeTrial(hands.job, made, "yes", "clear", lamp_id=lamps[0], second_lamp_id=lamps[0]))
    hands.do(JudgeTrial(hands.job, made, "yes", "clear", lamp_id=lamps[0], second_lamp_id=lamps[1]))
    assert (hands.picture.outcomes[-1].lamp_id, hands.picture.outcomes[-1].second_lamp_id) == (lamps[0], lamps[1])


# paint feel
def test_how_the_paint_feels_is_kept_by_panel_and_each_part_until_said_anew(hands: Hands) -> None:
    hands.do(NotePaintFeel(hands.job, ("roof",), "soft", "yes"))
    hands.do(NotePaintFeel(hands.job, ("roof", "tailgate"), sticky="no"))
    found = feel_of(hands.picture, hands.shop.group(hands.job, "roof"))
    assert (found.feel, found.sticky) == ("soft", "no")
    assert feel_words(found) == "soft, not sticky"
    hands.do(MakeGroup(hands.job, "refinished door", ("door_front_r",)))
    assert not feel_of(hands.picture, hands.shop.group(hands.job, "door_front_r")).known


@pytest.mark.parametrize(
    ("panels", "feel", "sticky"),
    [
        (("roof",), "", ""),
        ((), "soft", ""),
        (("roof",), "odd", ""),
        (("roof",), "soft", "?"),
        (("roof", "nose"), "soft", ""),
    ],
)
def test_a_feel_that_says_nothing_or_of_nothing_is_refused(
    hands: Hands, panels: tuple[str, ...], feel: str, sticky: str
) -> None:
    with pytest.raises(BadInput):
        hands.do(NotePaintFeel(hands.job, panels, feel, sticky))


def test_panels_of_two_paints_are_noted_one_by_one(hands: Hands) -> None:
    with pytest.raises(BadInput, match="each finish group"):
        hands.do(NotePaintFeel(hands.job, ("roof", "bumper_front"), "soft"))


# adopting
def test_a_process_is_seen_on_a_second_panel_before_it_is_adopted(hands: Hands) -> None:
    combination = hands.tried("roof")
    group = hands.shop.group(hands.job, "roof").id
    steps = [{"combination_id": combination}]
    found = refusal(hands, AdoptProcess(hands.job, group, steps))
    assert (found.rule, found.may_override) == ("not_confirmed", True)
    hands.do(AdoptProcess(hands.job, group, steps, override="owner waits outside"))
    assert [o.rule for o in hands.picture.overrides] == ["not_confirmed"]
    hands.tried("tailgate")
    hands.do(AdoptProcess(hands.job, group, steps))
    assert len(hands.picture.overrides) == 1


def test_a_group_of_one_panel_has_no_second_one(hands: Hands) -> None:
    hands.do(MakeGroup(hands.job, "roof alone", ("roof",)))
    combination = hands.tried("roof")
    hands.do(AdoptProcess(hands.job, hands.shop.group(hands.job, "roof").id, [{"combination_id": combination}]))


def test_where_every_other_panel_is_held_back_there_is_no_second_one(hands: Hands) -> None:
    hands.do(MakeGroup(hands.job, "two", ("roof", "tailgate")))
    combination = hands.tried("roof")
    adopt = AdoptProcess(hands.job, hands.shop.group(hands.job, "roof").id, [{"combination_id": combination}])
    assert refusal(hands, adopt).rule == "not_confirmed"
    hands.do(HoldPanel(hands.job, "tailgate", "waits for the painter"))
    hands.do(adopt)


# a process never spreads by itself
def test_a_panel_that_reads_unlike_the_rest_takes_no_process_it_was_not_tried_with(hands: Hands) -> None:
    step = hands.adopted("roof")
    doors = ("door_front_l", "door_front_r", "door_rear_l", "door_rear_r", "quarter_rear_l", "quarter_rear_r")
    hands.survey({**{p: (110.0, 112.0, 111.0, 109.0, 110.0) for p in doors[:-1]}, doors[-1]: (240.0,) * 5})
    hands.do(StartStep(hands.job, doors[0], step.id))
    found = refusal(hands, StartStep(hands.job, doors[-1], step.id))
    assert (found.rule, found.may_override) == ("odd_not_tried", True)


def test_a_plastic_panel_takes_no_process_tried_on_metal_only(hands: Hands) -> None:
    hands.do(MakeGroup(hands.job, "front", ("bonnet", "roof", "bumper_front")))
    step = hands.adopted("bonnet")
    assert refusal(hands, StartStep(hands.job, "bumper_front", step.id)).rule == "material_not_tried"


# sanding
def agreed(hands: Hands) -> None:
    asked = hands.do(AskOwner(hands.job, "sanding", "may the roof be sanded?", panels=("roof",)))
    hands.do(AnswerOwner(hands.job, asked, "yes", "present"))


def sanding(hands: Hands, combination: str, **more: Any) -> AdoptProcess:
    steps = [{"means": "sanding", **more}, {"combination_id": combination}]
    return AdoptProcess(hands.job, hands.shop.group(hands.job, "roof").id, steps)


def test_sanding_only_where_the_owner_agreed_with_readings_before_and_after(hands: Hands) -> None:
    combination = hands.tried("roof")
    hands.confirmed("roof")
    disc = hands.do(AddToShop("sanding_disc", {"name": "invented disc", "grade": "P3000"}))
    found = refusal(hands, sanding(hands, combination, disc_id=disc))
    assert (found.rule, found.may_override) == ("sanding_not_agreed", False)
    agreed(hands)
    hands.do(sanding(hands, combination, disc_id=disc))
    first, second = panel_steps(hands.picture, "roof")
    assert (first.means, first.disc_id, first.combination_id) == ("sanding", disc, combination)
    assert refusal(hands, StartStep(hands.job, "roof", first.id)).rule == "sanding_not_read"
    # one panel agreed to is not another
    assert refusal(hands, StartStep(hands.job, "tailgate", first.id, "only a little")).rule == "sanding_not_agreed"
    hands.survey({"roof": (118.0,) * 5})
    hands.polish("roof", first)
    assert refusal(hands, StartStep(hands.job, "roof", second.id)).rule == "sanding_not_read"
    hands.survey({"roof": (116.0,) * 5})
    hands.do(StartStep(hands.job, "roof", second.id))


def test_sanding_is_followed_by_what_takes_its_marks_away(hands: Hands) -> None:
    combination = hands.tried("roof")
    agreed(hands)
    group = hands.shop.group(hands.job, "roof").id
    with pytest.raises(BadInput, match="takes its marks away"):
        hands.do(AdoptProcess(hands.job, group, [{"combination_id": combination}, {"means": "sanding"}]))
    with pytest.raises(BadInput, match="belongs to a sanding step"):
        hands.do(AdoptProcess(hands.job, group, [{"combination_id": combination, "disc_id": "x"}]))
