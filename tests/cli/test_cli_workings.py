"""``workings``: every figure redone from its printed inputs, and bad inputs named by field."""

from __future__ import annotations

import io
import json
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from detailbench.cli import run
from detailbench.cli.calculations import calculations

ZERO, FOIL = [1.2, 1.2, 1.2, 1.1, 1.3], [104.4, 104.3, 104.5, 104.4, 104.4]
BEFORE, AFTER = [118.0, 120.0, 116.0, 119.0, 121.0], [116.0, 118.0, 114.5, 117.0, 118.5]

# every name the work promises, with inputs made up for it
INPUTS: dict[str, dict[str, Any]] = {
    "gauge_check": {"zero_um": ZERO, "shim_um": FOIL, "certified_um": 102, "shim_accuracy_um": 0.5, "fixed_um": 1,
                    "share": 0.01},
    "two_point": {"reading_um": 120.0, "zero_um": ZERO, "shim_um": FOIL, "certified_um": 102, "certified_u_um": 0.5},
    "place": {"readings_um": [118.0, 119.5, 117.0], "repeatability_um": 1.1, "repeatability_dof": 12},
    "panel": {"place_means_um": [118.0, 120.0, 116.0, 119.0, 121.0, 117.0, 122.0, 118.0]},
    "odd_panels": {"panels": [{"key": key, "mean_um": mean, "substrate": "steel"} for key, mean in (
        ("bonnet", 102.0), ("roof", 105.0), ("tailgate", 99.0), ("wing_front_l", 101.0), ("door_front_l", 185.0))]},
    "change": {"before_um": BEFORE, "after_um": AFTER, "shim_before_um": FOIL, "shim_after_um": FOIL},
    "places_needed": {"change_um": 2.0, "repeatability_um": 1.0, "readings_per_place": 3},
    "load_path": {"force_n": 30, "pad_speed_m_s": 3.1416, "seconds": 40, "patch_a_mm": 400, "patch_b_mm": 444.4,
                  "pad_mm": 150},
    "pad_speed": {"movement": "forced", "orbit_mm": 8, "orbits_per_min": 4000, "turns_per_min": 480, "pad_mm": 150},
    "sections": {"panel_m2": 1.8, "section_m2": 0.1, "overlap": 0.2, "panel_share": 0.05},
    "minutes": {"sections": 22, "spread_s": 20, "polish_s": 60, "wipe_s": 30, "pad_care_every": 4, "pad_care_s": 60},
    "dew_point": {"air_c": 20, "humidity_percent": 50, "surface_c": 18},
    "vin": {"number": "1M8GDM9AXKP042788"},
    "share_cleared": {"marks_before": 40, "marks_left": 6, "agreed_share": 0.8},
    "gloss_angle": {"gloss_60_gu": 84.0},
    "haze_index": {"gloss_60_gu": 84.0, "gloss_20_gu": 71.5},
    "price": {"lines": [{"amount": "480.00"}, {"amount": "59.90"}], "discount_percent": "5", "tax_percent": "20"},
}  # fmt: skip


@pytest.fixture
def shell(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Any:
    """Run the command with this text on standard input: (exit code, what it printed)."""

    def act(text: str, *argv: str) -> tuple[int, str]:
        monkeypatch.setattr("sys.stdin", io.StringIO(text))
        code = run(["workings", *argv])
        return code, capsys.readouterr().out

    return act


def test_every_promised_calculation_is_offered() -> None:
    assert set(INPUTS) <= set(calculations())


def test_the_list_names_every_calculation(shell: Any) -> None:
    code, said = shell("")
    assert code == 0
    assert [line.split()[0] for line in said.splitlines()] == list(calculations())


@pytest.mark.parametrize("name", INPUTS)
def test_the_printed_inputs_give_the_printed_results_again(shell: Any, name: str) -> None:
    code, said = shell(json.dumps(INPUTS[name]), name)
    assert code == 0, said
    first = json.loads(said)
    code, said = shell(json.dumps(first["inputs"]), name)
    assert (code, json.loads(said)) == (0, first)
    assert first["results"]
    assert first["formula"]
    assert first["source"]


@pytest.mark.parametrize("name", INPUTS)
def test_the_schema_is_sound_and_takes_the_inputs(shell: Any, name: str) -> None:
    code, said = shell("", "--schema", name)
    schema = json.loads(said)
    Draft202012Validator.check_schema(schema)
    Draft202012Validator(schema).validate(INPUTS[name])
    assert (code, schema["title"]) == (0, name)


@pytest.mark.parametrize("name", [n for n, i in INPUTS.items() if calculations()[n].fields])
def test_a_field_that_is_not_there_is_named_in_one_object_with_exit_code_2(shell: Any, name: str) -> None:
    code, said = shell(json.dumps({**INPUTS[name], "mood": 1}), name)
    assert code == 2
    assert json.loads(said)["field"] == "mood"


@pytest.mark.parametrize(
    ("text", "name", "field", "told"),
    [
        ('{"humidity_percent": 50}', "dew_point", "air_c", "missing"),
        ('{"air_c": "warm", "humidity_percent": 50}', "dew_point", "air_c", "must be a number"),
        ('{"air_c": 20, "humidity_percent": 0}', "dew_point", "humidity_percent", ""),
        ('{"air_c": NaN, "humidity_percent": 50}', "dew_point", "", "not a number"),
        ('{"air_c": 1e999, "humidity_percent": 50}', "dew_point", "air_c", "not a real number"),
        ("[1, 2]", "dew_point", "", "one JSON object"),
        ("warm", "dew_point", "", "not JSON"),
        ("{}", "happiness", "name", "no calculation"),
        ('{"place_means_um": [118, null]}', "panel", "place_means_um[1]", "must be a number"),
        ('{"panels": [{"key": 5}]}', "odd_panels", "panels[0].key", "must be text"),
    ],
)
def test_a_bad_input_is_one_object_that_names_the_field(
    shell: Any, text: str, name: str, field: str, told: str
) -> None:
    code, said = shell(text, name)
    assert code == 2
    error = json.loads(said)
    assert error["field"] == field
    assert told in error["error"]


FAR_OUT = (1e308, -1e308, 1e-300, 10**400, [1e308] * 6, [1e-300] * 6, "1e400", "9" * 5000)


@pytest.mark.parametrize("name", sorted(INPUTS))
@pytest.mark.parametrize("value", FAR_OUT, ids=[str(n) for n in range(len(FAR_OUT))])
def test_inputs_beyond_all_measure_give_real_numbers_or_one_sentence(shell: Any, name: str, value: Any) -> None:
    def no_constant(word: str) -> float:
        raise AssertionError(word)

    for field in INPUTS[name]:
        code, said = shell(json.dumps({**INPUTS[name], field: value}), name)
        answer = json.loads(said, parse_constant=no_constant)
        assert (code, "error" in answer) in ((0, False), (2, True)), (field, answer)


def test_a_text_nested_without_end_is_refused_in_a_sentence(shell: Any) -> None:
    code, said = shell("[" * 200_000, "dew_point")
    assert (code, json.loads(said)["error"]) == (2, "The inputs are nested too deeply to be read.")
