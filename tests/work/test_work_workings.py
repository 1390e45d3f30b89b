from __future__ import annotations

import json
from typing import Any

import pytest

from detailbench.basics.calculations import json_schema
from detailbench.basics.errors import BadInput
from detailbench.work.calculations import CALCULATIONS

BY_NAME = {c.name: c for c in CALCULATIONS}
STEP = {"panel": "bonnet", "step": "cut", "minutes": 20.0, "minutes_low": 18.0, "minutes_high": 22.0}
EXAMPLES: dict[str, list[dict[str, Any]]] = {
    "sections": [
        {"panel_m2": 1.1, "section_m2": 0.1},
        {"panel_m2": 1.1, "section_m2": 0.1, "overlap": 0.2, "panel_share": 0.1},
    ],
    "minutes": [
        {"sections": 12, "spread_s": 20, "polish_s": 60, "wipe_s": 30},
        {
            "sections": 12,
            "sections_low": 11,
            "sections_high": 14,
            "spread_s": 20,
            "polish_s": 60,
            "wipe_s": 30,
            "pad_care_every": 4,
            "pad_care_s": 60,
            "setup_s": 300,
        },
    ],
    "work_plan": [{"steps": [STEP, {**STEP, "panel": "roof"}]}, {"steps": []}],
    "work_left": [
        {
            "steps": [
                {"panel": "roof", "step": "cut", "planned_min": 20, "state": "finished"},
                {"panel": "roof", "step": "fine", "planned_min": 10, "state": "running", "elapsed_min": 4},
                {
                    "panel": "bonnet",
                    "step": "cut",
                    "planned_min": 16,
                    "state": "paused",
                    "sections": 8,
                    "sections_done": 3,
                },
            ]
        },
        {"steps": []},
    ],
    "dew_point": [
        {"air_c": 20, "humidity_percent": 50},
        {"air_c": 20, "humidity_percent": 50, "surface_c": 12},
    ],
    "price": [
        {"lines": []},
        {
            "lines": [{"says": "work", "amount": "640.00"}, {"amount": "45.50", "quantity": "2"}],
            "discount_percent": "5",
            "tax_percent": "19",
        },
    ],
    "vibration": [
        {"uses": [{"machine": "orbital", "minutes": 90, "declared_m_s2": 3.5, "k_m_s2": 1.5}, {"minutes": 5}]}
    ],
    "learning": [{"ratios": []}, {"ratios": [1.1, 0.95, 1.2, 1.05]}],
    "noise": [{"uses": [{"what": "polisher", "minutes": 90, "level_db": 82}, {"minutes": 5}]}],
}


def test_every_calculation_of_the_room_has_an_example() -> None:
    assert set(EXAMPLES) == set(BY_NAME)


@pytest.mark.parametrize(("name", "given"), [(n, g) for n, gs in EXAMPLES.items() for g in gs])
def test_the_printed_inputs_give_the_same_results(name: str, given: dict[str, Any]) -> None:
    working = BY_NAME[name].run(given)
    assert working.name == name
    again = BY_NAME[name].run(json.loads(json.dumps(dict(working.inputs))))
    assert again.results == working.results
    json.dumps(working.as_json())
    assert json_schema(BY_NAME[name])["title"] == name


def test_a_price_line_that_is_no_amount_is_named_by_its_place() -> None:
    with pytest.raises(BadInput) as caught:
        BY_NAME["price"].run({"lines": [{"amount": "1.00"}, {"amount": "1,00"}]})
    assert caught.value.field == "lines[1].amount"


@pytest.mark.parametrize(
    ("name", "short", "full"),
    [
        ("sections", {"panel_m2": 1, "section_m2": 0.3}, {"overlap": 0.0, "panel_share": 0.0}),
        (
            "minutes",
            {"sections": 3, "spread_s": 1, "polish_s": 1, "wipe_s": 1, "pad_care_every": 2},
            {"pad_care_s": 0.0, "setup_s": 0.0},
        ),
        (
            "price",
            {"lines": [{"amount": "9.999"}]},
            {"discount_percent": "0", "discount": "0", "tax_percent": "0", "tax_included": False, "decimals": 2},
        ),
    ],
)
def test_what_is_left_out_is_nought(name: str, short: dict[str, Any], full: dict[str, Any]) -> None:
    assert BY_NAME[name].run(short).results == BY_NAME[name].run({**short, **full}).results


def test_a_step_without_progress_counts_as_not_begun_and_no_minutes_of_use_as_none() -> None:
    row = {"panel": "roof", "step": "cut", "planned_min": 20, "state": "running"}
    assert BY_NAME["work_left"].run({"steps": [row]}).results["left"] == 1.0
    assert BY_NAME["vibration"].run({"uses": [{"minutes": 0, "declared_m_s2": 4, "k_m_s2": 0}]}).results["points"] == 0
    assert BY_NAME["noise"].run({"uses": [{"minutes": 0, "level_db": 0}]}).results["level_db"] is None


def test_a_currency_has_no_more_than_four_decimals() -> None:
    assert BY_NAME["price"].run({"lines": [], "decimals": 4}).results["net"] == "0.0000"
    with pytest.raises(BadInput, match="4 or less"):
        BY_NAME["price"].run({"lines": [], "decimals": 5})
