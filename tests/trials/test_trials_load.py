from __future__ import annotations

import json
import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.calculations import json_schema
from detailbench.basics.errors import BadInput
from detailbench.trials.calculations import CALCULATIONS
from detailbench.trials.load import HAND_LED_PADS, disc_in_rectangle, load_path, load_path_panel, times_usual
from detailbench.trials.movement import Movement, pad_speed

BY_NAME = {c.name: c for c in CALCULATIONS}
SECTION: dict[str, Any] = {
    "force_n": 40.0,
    "pad_speed_m_s": 3.0,
    "seconds": 50.0,
    "patch_a_mm": 500.0,
    "patch_b_mm": 420.0,
    "pad_mm": 140.0,
}


def load(**changed: float) -> float:
    value = load_path(**{**SECTION, **changed}).load_path_j_m2
    assert value is not None
    return value


def test_the_section_is_the_taped_patch_less_one_pad_each_way() -> None:
    found = load_path(**SECTION)
    assert found.section_m2 == pytest.approx(0.36 * 0.28)
    assert found.load_path_j_m2 == pytest.approx(40 * 3 * 50 / (0.36 * 0.28))


@pytest.mark.parametrize("side", [100.0, 140.0, HAND_LED_PADS * 140])
def test_a_patch_hardly_longer_than_the_pad_is_hand_led_and_not_computed(side: float) -> None:
    found = load_path(**{**SECTION, "patch_b_mm": side})
    assert found.load_path_j_m2 is None
    assert found.section_m2 is None
    assert any("Hand-led" in note for note in found.working.notes)


def test_a_path_within_the_pad_counts_the_whole_pad_all_the_time() -> None:
    # 40 × 40 mm of path under a 140 mm pad: its middle is never out from under it
    small = load(patch_a_mm=180, patch_b_mm=180)
    assert small == pytest.approx(40 * 3 * 50 / (math.pi * 0.07**2))


def test_the_figure_does_not_jump_where_the_path_outgrows_the_pad() -> None:
    sizes = [279.99, 280.0, 280.01]
    values = [load(patch_a_mm=s, patch_b_mm=s) for s in sizes]
    assert values[0] == pytest.approx(values[2], rel=1e-3)
    assert values[0] > values[1] > values[2]


def test_time_beyond_the_working_time_is_spent_and_does_not_count() -> None:
    found = load_path(**SECTION, working_time_s=30.0)
    assert found.spent_s == 20
    assert found.load_path_j_m2 == pytest.approx(load(seconds=30.0))
    assert any("spent" in note for note in found.working.notes)
    assert load_path(**SECTION, working_time_s=50.0).spent_s == 0
    assert any("0.5 s beyond" in note for note in load_path(**SECTION, working_time_s=49.5).working.notes)
    assert not any("spent" in note for note in load_path(**SECTION, working_time_s=50.0).working.notes)


def test_a_panels_mean_carries_how_well_its_area_is_known() -> None:
    found = load_path_panel(force_n=40, pad_speed_m_s=3, seconds=1200, panel_m2=1.2, panel_share=0.1)
    assert found.load_path_j_m2 == pytest.approx(120_000)
    assert found.low_j_m2 == pytest.approx(120_000 / 1.1)
    assert found.high_j_m2 == pytest.approx(120_000 / 0.9)


def test_times_usual_is_unknown_where_either_is() -> None:
    assert times_usual(60_000, 40_000) == 1.5
    assert times_usual(None, 40_000) is None
    assert times_usual(60_000, None) is None
    with pytest.raises(BadInput):
        times_usual(60_000, 0)


@pytest.mark.parametrize("name", sorted(SECTION))
@pytest.mark.parametrize("value", [0.0, -1.0, float("nan"), float("inf")])
def test_what_is_not_above_zero_is_refused_by_name(name: str, value: float) -> None:
    with pytest.raises(BadInput) as caught:
        load_path(**{**SECTION, name: value})
    assert caught.value.field == name


@pytest.mark.parametrize("share", [-0.1, 1.0])
def test_an_area_share_of_one_or_more_is_refused(share: float) -> None:
    with pytest.raises(BadInput, match="below 1"):
        load_path_panel(force_n=1, pad_speed_m_s=1, seconds=1, panel_m2=1, panel_share=share)


@given(st.floats(0.01, 1), st.floats(0.01, 1), st.floats(0.01, 1))
def test_a_disc_and_a_rectangle_share_no_more_than_the_smaller(radius: float, a: float, b: float) -> None:
    shared = disc_in_rectangle(radius, a, b)
    assert shared <= min(math.pi * radius**2, 4 * a * b) * (1 + 1e-9)
    assert shared == pytest.approx(disc_in_rectangle(radius, b, a), rel=1e-9)
    assert shared > 0


@pytest.mark.parametrize(
    ("movement", "given_"),
    [
        (Movement.FREE_ORBITAL, {"orbit_mm": 15.0, "orbits_per_min": 4200.0}),
        (
            Movement.FORCED_ORBITAL,
            {"orbit_mm": 8.0, "orbits_per_min": 4200.0, "turns_per_min": 400.0, "pad_mm": 140.0},
        ),
        (Movement.ROTARY, {"turns_per_min": 900.0, "pad_mm": 140.0}),
        (Movement.HAND, {"stroke_m_s": 0.4}),
    ],
)
def test_each_movement_asks_for_what_it_needs(movement: Movement, given_: dict[str, float]) -> None:
    found = pad_speed(movement, **given_)
    assert found.speed_m_s > 0
    for name in given_:
        with pytest.raises(BadInput) as caught:
            pad_speed(movement, **{k: v for k, v in given_.items() if k != name})
        assert caught.value.field == name
        assert "_" not in str(caught.value)  # in a person's words
        for bad in (-1.0, float("nan")):
            with pytest.raises(BadInput):
                pad_speed(movement, **{**given_, name: bad})


@given(st.floats(1, 25), st.floats(500, 6000), st.floats(1, 3000), st.floats(30, 200))
def test_forced_rotation_lies_between_its_bounds(orbit_mm: float, orbits: float, turns: float, pad_mm: float) -> None:
    v = pad_speed(
        Movement.FORCED_ORBITAL, orbit_mm=orbit_mm, orbits_per_min=orbits, turns_per_min=turns, pad_mm=pad_mm
    ).speed_m_s
    p = pad_speed(Movement.FREE_ORBITAL, orbit_mm=orbit_mm, orbits_per_min=orbits).speed_m_s
    turning = pad_speed(Movement.ROTARY, turns_per_min=turns, pad_mm=pad_mm).speed_m_s
    assert max(p, turning) <= v * (1 + 1e-9)
    assert v <= math.sqrt(p**2 + (1.5 * turning) ** 2 / 2) * (1 + 1e-9)


def test_without_turning_or_without_orbit_forced_rotation_is_the_simpler_movement() -> None:
    still = pad_speed(Movement.FORCED_ORBITAL, orbit_mm=8, orbits_per_min=4000, turns_per_min=0, pad_mm=140)
    assert still.speed_m_s == pad_speed(Movement.FREE_ORBITAL, orbit_mm=8, orbits_per_min=4000).speed_m_s
    round_ = pad_speed(Movement.FORCED_ORBITAL, orbit_mm=0, orbits_per_min=4000, turns_per_min=900, pad_mm=140)
    assert round_.speed_m_s == pad_speed(Movement.ROTARY, turns_per_min=900, pad_mm=140).speed_m_s


EXAMPLES: dict[str, list[dict[str, Any]]] = {
    "load_path": [SECTION, {**SECTION, "working_time_s": 30.0}, {**SECTION, "patch_a_mm": 150.0}],
    "load_path_panel": [
        {"force_n": 40, "pad_speed_m_s": 3, "seconds": 900, "panel_m2": 1.1},
        {"force_n": 40, "pad_speed_m_s": 3, "seconds": 900, "panel_m2": 1.1, "panel_share": 0.08},
    ],
    "pad_speed": [
        {"movement": "free_orbit", "orbit_mm": 15, "orbits_per_min": 4200},
        {"movement": "forced", "orbit_mm": 8, "orbits_per_min": 4000, "turns_per_min": 480, "pad_mm": 150},
        {"movement": "rotary", "turns_per_min": 900, "pad_mm": 140},
        {"movement": "hand", "stroke_m_s": 0.4},
    ],
    "arm_speed": [
        {
            "patch_a_mm": 500,
            "patch_b_mm": 420,
            "pad_mm": 140,
            "passes_along": 2,
            "passes_across": 2,
            "seconds": 50,
        }
    ],
    "removal": [
        {"trials": []},
        {"trials": [{"removed_um": 1.9, "u_um": 0.4, "load_path_j_m2": 48_000}], "load_path_j_m2": 60_000},
        {
            "trials": [{"removed_um": 1.0 + k, "u_um": 0.5, "load_path_j_m2": 5e4, "paint": f"p{k}"} for k in range(5)],
            "this_paint": "p2",
        },
    ],
    "adviser": [
        {"rungs": [{}, {}, {}]},
        {
            "rungs": [{"cleared": "no", "finish_clear": "yes"}, {}, {"cleared": "yes", "finish_clear": "yes"}],
            "stop": "thrift",
            "trial_min": 10,
            "before": [{"cl": 1, "ch": 1, "gl": 2, "gh": 3, "rl": 0, "likeness": "other"}],
        },
        {"rungs": [{}, {"cleared": "no"}, {"cleared": "yes", "trails": "yes", "movement": "rotary"}]},
    ],
    "adviser_in_doubt": [
        {"rungs": 3, "answers": []},
        {
            "rungs": 4,
            "answers": [
                {"rung": 2, "cleared": "yes", "finish_clear": "no"},
                {"rung": 2, "cleared": "no", "finish_clear": "no"},
                {"rung": 1, "finish_clear": "yes", "beneath": 2},
            ],
            "finish_misjudged_share": 0.2,
        },
    ],
    "range_order": [
        {
            "milder": [{"removed_um": 2.0, "u_um": 0.4, "load_path_j_m2": 5e4}],
            "stronger": [{"removed_um": 1.0, "u_um": 0.4, "load_path_j_m2": 5e4}],
        }
    ],
    "sanding_grade": [{"grade": "P2000"}],
}


def test_every_calculation_of_the_room_has_an_example() -> None:
    assert set(EXAMPLES) == set(BY_NAME)


@pytest.mark.parametrize(("name", "given_"), [(n, g) for n, gs in EXAMPLES.items() for g in gs])
def test_the_printed_inputs_give_the_same_results(name: str, given_: dict[str, Any]) -> None:
    working = BY_NAME[name].run(given_)
    assert working.name == name
    again = BY_NAME[name].run(json.loads(json.dumps(dict(working.inputs))))
    assert again.results == working.results
    assert json_schema(BY_NAME[name])["title"] == name
