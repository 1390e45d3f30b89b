from __future__ import annotations

import copy
import math
from typing import Any

import pytest

from detailbench.basics import shelf
from detailbench.basics.errors import BadFile, BadInput
from detailbench.trials import Cleared, Finish, Movement, Outcome, RungSeen, Stopped, TrialSeen
from detailbench.trials.adopt import confirming_due, may_adopt, mildest_words
from detailbench.trials.kit import read_kit, starter_kit
from detailbench.trials.rungs import changes
from detailbench.trials.start import where_to_start
from detailbench.trials.technique import (
    arm_speed,
    force_label,
    force_n,
    must_stop,
    seconds_for,
    too_warm_to_start,
    usual_section_m2,
)

KIT = starter_kit()
RANGE = KIT.fresh_range()
CLEAR = Outcome(Cleared.YES, Finish.CLEAR)
HAZE = Outcome(Cleared.YES, Finish.EVEN_HAZE)
FAILED = Outcome(Cleared.NO, Finish.CLEAR)


def seen(*states: dict[str, bool]) -> tuple[RungSeen, ...]:
    return tuple(RungSeen(RANGE[i].rung, **state) for i, state in enumerate(states))


# where to start


def test_ordinary_paint_starts_in_the_middle_and_like_paint_where_it_served_before() -> None:
    assert where_to_start(RANGE).rung == 4
    assert where_to_start(RANGE, served_before=2).rung == 2
    assert "served on like paint" in where_to_start(RANGE, served_before=2).sentence


@pytest.mark.parametrize("thickness", ["thin", "unreadable", "irreplaceable"])
def test_thin_unreadable_and_irreplaceable_paint_starts_at_the_mild_end(thickness: str) -> None:
    assert where_to_start(RANGE, thickness=thickness, served_before=5).rung == 0


def test_a_refinish_of_unknown_cure_starts_mildest_and_an_uncured_one_not_at_all() -> None:
    assert where_to_start(RANGE, cure="unknown", served_before=5).rung == 0
    not_yet = where_to_start(RANGE, cure="not_cured")
    assert not_yet.rung is None
    assert "painter's own finish" in not_yet.sentence
    assert where_to_start(RANGE, cure="cured").rung == 4


def test_a_barred_combination_is_never_where_to_start() -> None:
    barred = seen({}, {"forbidden": True}, {})
    assert where_to_start(barred).rung == 0
    assert where_to_start(seen({"forbidden": True}, {}), thickness="thin").rung == 1
    assert where_to_start(seen({"forbidden": True})).rung is None
    assert where_to_start(()).rung is None


def test_an_unknown_word_or_rung_is_refused() -> None:
    for wrong in ({"thickness": "fat"}, {"cure": "maybe"}, {"served_before": 9}):
        with pytest.raises(BadInput):
            where_to_start(RANGE, **wrong)  # type: ignore[arg-type]


# what may be adopted


def test_a_single_step_must_have_cleared_and_finished_clear() -> None:
    assert may_adopt([TrialSeen("a", CLEAR)], ["a"]) is None
    assert "not seen to clear" in (may_adopt([], ["a"]) or "")
    assert "not clear" in (may_adopt([TrialSeen("a", HAZE)], ["a"]) or "")
    assert "last seen not to clear" in (may_adopt([TrialSeen("a", FAILED)], ["a"]) or "")
    assert may_adopt([TrialSeen("a", CLEAR)], []) is not None


def test_the_sentence_calls_a_step_by_its_name_where_one_is_given() -> None:
    missing = may_adopt([TrialSeen("c1", HAZE)], ["c1", "c2"], {"c1": "wool and cutting", "c2": "soft and finishing"})
    assert missing == "soft and finishing: not seen on top of wool and cutting on this paint yet."


def test_two_steps_must_have_been_seen_one_on_top_of_the_other() -> None:
    cut, on_top = TrialSeen("cut", HAZE), TrialSeen("fine", CLEAR, beneath=("cut",))
    assert may_adopt([cut, on_top], ["cut", "fine"]) is None
    assert "not seen on top" in (may_adopt([cut, TrialSeen("fine", CLEAR)], ["cut", "fine"]) or "")
    assert "not seen on top" in (may_adopt([cut, on_top], ["cut", "fine", "last"]) or "")
    last = TrialSeen("last", CLEAR, beneath=("cut", "fine"))
    assert may_adopt([cut, on_top, last], ["cut", "fine", "last"]) is None
    hazy = TrialSeen("fine", HAZE, beneath=("cut",))
    assert "even haze" in (may_adopt([cut, hazy], ["cut", "fine"]) or "")


def test_the_latest_trial_that_says_something_decides() -> None:
    assert may_adopt([TrialSeen("a", FAILED), TrialSeen("a", CLEAR)], ["a"]) is None
    assert may_adopt([TrialSeen("a", CLEAR), TrialSeen("a", FAILED)], ["a"]) is not None
    smear = TrialSeen("a", Outcome(Cleared.NO, Finish.SMEAR))
    cant_tell = TrialSeen("a", Outcome(Cleared.CANT_TELL, Finish.CLEAR))
    assert may_adopt([TrialSeen("a", CLEAR), smear, cant_tell], ["a"]) is None
    assert may_adopt([cant_tell], ["a"]) is not None


def test_what_is_left_at_depth_three_does_not_stand_against_adopting() -> None:
    deep = TrialSeen("a", Outcome(Cleared.NO, Finish.CLEAR, only_deep_left=True))
    assert may_adopt([deep], ["a"]) is None


def test_a_stop_for_heat_or_colour_since_stands_against_adopting_and_an_edge_does_not() -> None:
    for stopped in (Stopped.HEAT, Stopped.COLOUR_ON_PAD):
        later = TrialSeen("a", Outcome(stopped=stopped))
        assert "stopped since" in (may_adopt([TrialSeen("a", CLEAR), later], ["a"]) or "")
        assert may_adopt([later, TrialSeen("a", CLEAR)], ["a"]) is None
    edge = TrialSeen("a", Outcome(stopped=Stopped.EDGE))
    assert may_adopt([TrialSeen("a", CLEAR), edge], ["a"]) is None
    on_top = TrialSeen("fine", CLEAR, beneath=("a",))
    hot = TrialSeen("fine", Outcome(stopped=Stopped.HEAT), beneath=("a",))
    assert "stopped since" in (may_adopt([TrialSeen("a", HAZE), on_top, hot], ["a", "fine"]) or "")


def test_a_confirming_trial_on_a_second_panel_is_asked_for() -> None:
    one = TrialSeen("a", CLEAR, panel="bonnet")
    assert confirming_due([one], ["a"]) is not None
    assert confirming_due([one, TrialSeen("a", CLEAR, panel="bonnet")], ["a"]) is not None
    assert confirming_due([one, TrialSeen("a", CLEAR, panel="roof")], ["a"]) is None
    assert confirming_due([], ["a"]) is None
    both = [
        t
        for panel in ("bonnet", "roof")
        for t in (TrialSeen("a", HAZE, panel=panel), TrialSeen("b", CLEAR, beneath=("a",), panel=panel))
    ]
    assert confirming_due(both, ["a", "b"]) is None
    assert confirming_due(both[:3], ["a", "b"]) is not None


def test_the_mildest_that_served_only_where_the_next_milder_was_seen_not_to() -> None:
    works = {"cleared": True, "finish_clear": True}
    assert mildest_words(seen({"cleared": False}, works), 1) == "the mildest that served"
    assert mildest_words(seen({"cleared": True, "finish_clear": False}, works), 1) == "the mildest that served"
    assert mildest_words(seen({}, works), 1) == "the mildest tried"
    assert mildest_words(seen(works), 0) == "the mildest tried"
    assert mildest_words(seen({"cleared": False}, {}, works), 2) == "the mildest tried that served"
    assert mildest_words(seen({"cleared": False}, {"forbidden": True}, works), 2) == "the mildest tried that served"
    assert mildest_words(seen(works, {"cleared": False}, works), 2) is None


# technique


def test_force_words_follow_the_shops_settings_and_a_weighed_force_wins() -> None:
    assert force_n("light") < force_n("moderate") < force_n("firm")
    assert force_n("firm", settings={"firm": 55.0}) == 55
    assert force_n("firm", weighed_n=33.0) == 33
    assert force_n("moderate", machine_weight_n=26.0) == force_n("moderate")
    assert force_n("moderate", machine_weight_n=26.0, upright=True) == force_n("moderate") - 26
    assert force_n("light", machine_weight_n=26.0, upright=True) == 0
    for wrong in (force_n, force_label):
        with pytest.raises(BadInput, match="light, moderate or firm"):
            wrong("hard")
    assert len({force_label(w) for w in ("light", "moderate", "firm")}) == 3


def test_arm_speed_counts_lines_half_a_pad_apart_both_ways() -> None:
    # 300 × 150 mm of path under a 100 mm pad: 3 lines of 300 mm along, 6 lines of 150 mm across
    found = arm_speed(patch_a_mm=400, patch_b_mm=250, pad_mm=100, passes_along=2, passes_across=1, seconds=27)
    assert found.path_m == pytest.approx(2 * 3 * 0.3 + 6 * 0.15)
    assert found.speed_m_s == pytest.approx(0.1)


def test_seconds_and_arm_speed_are_each_others_inverse() -> None:
    shape: dict[str, Any] = {
        "patch_a_mm": 500,
        "patch_b_mm": 420,
        "pad_mm": 140,
        "passes_along": 2,
        "passes_across": 2,
    }
    seconds = seconds_for(**shape, arm_m_s=0.08)
    assert arm_speed(**shape, seconds=seconds).speed_m_s == pytest.approx(0.08)
    for wrong in ({"pad_mm": 420}, {"passes_along": 0, "passes_across": 0}, {"passes_along": -1}):
        with pytest.raises(BadInput):
            arm_speed(**{**shape, **wrong}, seconds=40)
    with pytest.raises(BadInput):
        arm_speed(**shape, seconds=0)
    with pytest.raises(BadInput):
        seconds_for(**shape, arm_m_s=0)


def test_a_cutting_section_is_six_pad_areas_unless_the_shop_says_otherwise() -> None:
    pad_m2 = math.pi * 0.07**2
    assert usual_section_m2(140) == pytest.approx(6 * pad_m2)
    assert usual_section_m2(140, 9) == pytest.approx(9 * pad_m2)


def test_a_trial_starts_neither_warm_nor_in_the_sun_and_stops_when_hot() -> None:
    assert too_warm_to_start(30.0) is None
    assert too_warm_to_start(None) is None
    assert "31" in (too_warm_to_start(31.0) or "")
    assert "sun" in (too_warm_to_start(20.0, in_sun=True) or "")
    assert must_stop(50.0, "metal")
    assert not must_stop(49.9, "metal")
    assert must_stop(45.0, "plastic")
    with pytest.raises(BadInput):
        must_stop(40, "glass")


# kit


def test_the_starter_range_goes_one_part_at_a_time() -> None:
    for low, high in zip(KIT.rungs, KIT.rungs[1:], strict=False):
        assert len(changes(low, high)) == 1


def test_the_starter_kit_holds_every_movement_and_carries_no_number_or_colour_as_strength() -> None:
    assert {m.movement for m in KIT.machines} == set(Movement)
    colours = {"red", "orange", "yellow", "green", "blue", "white", "black", "grey", "purple", "pink", "maroon"}
    for thing in (*KIT.machines, *KIT.pads, *KIT.compounds, *KIT.towels):
        assert not any(c.isdigit() for c in thing.name + thing.key)
        assert not colours & set(thing.name.split())
    assert all(lamp.kind in "PFLS" and 2000 < lamp.colour_k < 8000 for lamp in KIT.lamps)


def fresh() -> dict[str, Any]:
    return copy.deepcopy(shelf.data("kit.json"))


@pytest.mark.parametrize(
    ("part", "index", "column", "value", "sentence"),
    [
        ("range", 0, "pad", "brick", "no such pad"),
        ("range", 0, "machine", "spoon", "no such machine"),
        ("range", 0, "compound", "sand", "no such compound"),
        ("machines", 0, "movement", "up and down", "no such movement"),
        ("machines", 1, "dials", [["low", 5000], ["high", 1000]], "must rise"),
        ("towels", 1, "key", "low_pile", "stands twice"),
        ("range", 1, "key", "soft_finishing", "stands twice"),
    ],
)
def test_a_faulty_kit_is_refused_with_its_part(
    part: str, index: int, column: str, value: object, sentence: str
) -> None:
    data = fresh()
    data[part][index][column] = value
    with pytest.raises(BadFile, match=sentence) as caught:
        read_kit(data)
    assert caught.value.column == part


@pytest.mark.parametrize("part", ["machines", "pads", "compounds", "range", "lamps", "towels"])
def test_a_kit_with_a_part_or_a_field_missing_is_refused(part: str) -> None:
    data = fresh()
    del data[part][0]["key"]
    with pytest.raises(BadFile, match="“key” is missing"):
        read_kit(data)
    with pytest.raises(BadFile, match="list of entries"):
        read_kit({**fresh(), part: []})
