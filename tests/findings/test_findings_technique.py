"""What the technique of a trial comes to, and what one change would do."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from invented_findings import Hands

from detailbench.findings.kit_names import parts
from detailbench.findings.removal import trial_load
from detailbench.findings.technique import (
    Setup,
    TechniqueFigures,
    setup_of,
    technique_figures,
    working_time_words,
)
from detailbench.findings.trial_story import range_combinations
from detailbench.moves.shop import SetSetting
from detailbench.moves.trials import RecordTrial
from detailbench.record.picture import one
from detailbench.trials.calculations import CALCULATIONS
from detailbench.trials.load import load_path
from detailbench.trials.movement import Movement, pad_speed


def setup(hands: Hands, rung: int = 3, panel: str = "roof", **changed: Any) -> Setup:
    combination = range_combinations(hands.picture, hands.shop.group(hands.job, panel).id)[rung]
    machine, _pad, _product = parts(hands.picture.shop, combination)
    given = {
        "dial": machine.dials[-1][0],
        "force_word": "moderate",
        "section_w_mm": 450.0,
        "section_h_mm": 400.0,
        "passes": 4,
        "seconds": 50.0,
    }
    return Setup(combination.id, panel, **{**given, **changed})


def figures(hands: Hands, **changed: Any) -> TechniqueFigures:
    return technique_figures(hands.picture, setup(hands, **changed))


def test_the_figures_are_those_of_the_formulas(hands: Hands) -> None:
    found = figures(hands)
    combination = one(hands.picture.shop.combinations, setup(hands).combination_id)
    machine, pad, product = parts(hands.picture.shop, combination)
    speed = pad_speed(Movement.FREE_ORBITAL, orbit_mm=machine.orbit_mm, orbits_per_min=machine.dials[-1][1])
    assert found.speed is not None
    assert found.speed.speed_m_s == speed.speed_m_s
    load = load_path(
        force_n=40.0,
        pad_speed_m_s=speed.speed_m_s,
        seconds=50.0,
        patch_a_mm=450.0,
        patch_b_mm=400.0,
        pad_mm=pad.diameter_mm,
        working_time_s=product.working_time_s,
    )
    assert found.load_path_j_m2 == load.load_path_j_m2
    assert {w.name for w in found.workings} == {"pad_speed", "load_path", "arm_speed"}
    for working in found.workings:
        calculation = next(c for c in CALCULATIONS if c.name == working.name)
        assert calculation.run(working.inputs).results == working.results


def test_times_your_usual_only_where_the_shop_has_one(hands: Hands) -> None:
    assert figures(hands).times is None
    assert "not set yet" in figures(hands).no_times
    hands.do(SetSetting("usual_load_path_j_m2", (figures(hands).load_path_j_m2 or 0.0) / 2))
    assert figures(hands).times == pytest.approx(2.0)


def test_the_shops_own_force_and_the_machines_weight_on_an_upright_panel(hands: Hands) -> None:
    assert figures(hands).force_n == 40
    assert figures(hands).weight_note == ""
    hands.do(SetSetting("force_moderate_n", 36.0))
    assert figures(hands).force_n == 36
    combination = one(hands.picture.shop.combinations, setup(hands).combination_id)
    weight = parts(hands.picture.shop, combination)[0].weight_n
    assert weight
    door = figures(hands, panel="door_front_l")
    assert door.force_n == 36 - weight
    assert "does not press" in door.weight_note
    weighed = figures(hands, panel="door_front_l", force_n=25.0)
    assert (weighed.force_n, weighed.weight_note) == (25.0, "")


def test_a_small_patch_is_led_by_hand_and_gets_no_figure(hands: Hands) -> None:
    found = figures(hands, section_w_mm=150.0, section_h_mm=150.0)
    assert (found.hand_led, found.load_path_j_m2, found.times, found.changes) == (True, None, None, ())
    assert "Hand-led" in found.no_load


def test_seconds_within_and_beyond_the_working_time(hands: Hands) -> None:
    within, beyond = figures(hands, seconds=50.0), figures(hands, seconds=75.0)
    assert (within.left_s, within.beyond_s) == (10.0, 0.0)
    assert (beyond.left_s, beyond.beyond_s) == (0.0, 15.0)
    assert "10 s left" in working_time_words(within)
    assert "15 s beyond" in working_time_words(beyond)
    hands_free = replace(within, working_time_s=None)
    assert working_time_words(hands_free) == "Working time: not stated."


def test_what_one_change_would_do(hands: Hands) -> None:
    found = {c.way: c for c in figures(hands, seconds=25.0).changes}
    assert found["slower_arm"].times_now == pytest.approx(2.0)
    assert found["more_force"].times_now == pytest.approx(1.25)
    assert found["smaller_section"].times_now == pytest.approx(2.0)
    assert figures(hands, seconds=50.0).changes[1].beyond_s == pytest.approx(40.0)


@pytest.mark.parametrize(("panel", "limit"), [("roof", 50.0), ("bumper_front", 45.0)])
def test_temperatures_are_held_against_what_the_panel_is_made_of(hands: Hands, panel: str, limit: float) -> None:
    found = figures(hands, panel=panel, surface_before_c=31.0, surface_after_c=limit)
    assert found.limit_c == limit
    assert found.warmth.reached is True
    assert "let it cool below 30" in found.too_warm.replace("\N{NO-BREAK SPACE}", " ")
    assert figures(hands, panel=panel, surface_before_c=30.0).too_warm == ""
    hands.do(SetSetting("start_below_c", 35.0))
    assert figures(hands, panel=panel, surface_before_c=31.0).too_warm == ""


def test_the_sun_is_no_place_to_start(hands: Hands) -> None:
    assert "in the sun" in technique_figures(hands.picture, setup(hands), in_sun=True).too_warm


def test_what_is_missing_is_said_and_nothing_else_falls_over(hands: Hands) -> None:
    bare = technique_figures(hands.picture, Setup(setup(hands).combination_id))
    assert (bare.speed, bare.load, bare.arm, bare.force_n) == (None, None, None, None)
    assert bare.no_speed
    assert bare.no_load
    assert bare.no_arm


def test_a_trial_made_has_the_figures_it_was_set_up_with(hands: Hands) -> None:
    wanted = setup(hands)
    technique = {k: v for k, v in vars(wanted).items() if k not in ("combination_id", "panel") and v not in (None, "")}
    group = hands.shop.group(hands.job, "roof").id
    hands.do(RecordTrial(hands.job, group, "roof", wanted.combination_id, technique=technique))
    trial = hands.picture.trials[-1]
    assert setup_of(trial) == wanted
    assert trial_load(hands.picture, trial) == (figures(hands).load_path_j_m2, "")
