"""Only like readings are compared; the others are kept and say why not."""

from __future__ import annotations

from dataclasses import replace

import pytest

from detailbench.basics.errors import BadInput
from detailbench.thickness.pairing import Pairing, PlaceValue, pair_places

BEFORE = PlaceValue("bonnet-1", 118.0, "wiped", "bare", "gauge-1", 20.0)
AFTER = replace(BEFORE, value_um=116.0)


def one(before: PlaceValue = BEFORE, after: PlaceValue = AFTER) -> Pairing:
    return pair_places([before], [after])


def test_like_readings_make_a_pair() -> None:
    result = one()
    assert [(p.before_um, p.after_um) for p in result.pairs] == [(118.0, 116.0)]
    assert result.not_comparable == ()
    assert result.for_print
    assert result.before_um.tolist() == [118.0]
    assert result.after_um.tolist() == [116.0]


def test_decontaminated_is_clean_enough_on_either_side() -> None:
    assert one(after=replace(AFTER, clean="decontaminated")).pairs


@pytest.mark.parametrize(
    ("before", "after", "reason"),
    [
        ({}, {"clean": "washed"}, "washed only after"),
        ({"clean": "dirty"}, {}, "dirty before"),
        ({}, {"cover": "protected"}, "protected after"),
        ({"cover": "earlier coating"}, {}, "earlier coating before"),
        ({}, {"cover": "not known"}, "cover not known after"),
        ({}, {"gauge": "gauge-2"}, "another gauge"),
        ({}, {"temperature_c": 23.5}, "20 °C before, 23.5 °C after"),
        ({"value_um": None}, {}, "no value before"),
        ({}, {"value_um": None}, "no value after"),
    ],
)
def test_unlike_readings_are_kept_with_their_reason(
    before: dict[str, object], after: dict[str, object], reason: str
) -> None:
    result = one(replace(BEFORE, **before), replace(AFTER, **after))  # type: ignore[arg-type]
    assert result.pairs == ()
    assert result.not_comparable[0].reasons == (reason,)
    assert result.not_comparable[0].sentence == f"Not comparable: {reason}."


def test_all_reasons_are_given_together() -> None:
    result = one(after=replace(AFTER, cover="protected", temperature_c=31.0))
    assert result.not_comparable[0].sentence == "Not comparable: protected after, 20 °C before, 31 °C after."


@pytest.mark.parametrize("after_c", [17.0, 23.0])
def test_three_degrees_apart_is_still_alike(after_c: float) -> None:
    assert one(after=replace(AFTER, temperature_c=after_c)).pairs


@pytest.mark.parametrize("side", ["before", "after"])
def test_a_temperature_not_recorded_keeps_the_pair_off_the_print(side: str) -> None:
    unknown = {side: replace(BEFORE if side == "before" else AFTER, temperature_c=None)}
    result = one(**unknown)
    assert result.pairs
    assert not result.for_print
    assert "Temperature not recorded" in result.remarks[0]


def test_readings_not_confirmed_stay_in_but_release_no_print() -> None:
    result = one(after=replace(AFTER, confirmed=False))
    assert result.pairs
    assert not result.for_print
    assert "not confirmed" in result.remarks[0]


def test_a_place_measured_once_only_says_so() -> None:
    other = replace(AFTER, place="bonnet-2")
    result = pair_places([BEFORE], [other])
    assert [(n.place, n.reasons) for n in result.not_comparable] == [
        ("bonnet-1", ("no reading after",)),
        ("bonnet-2", ("no reading before",)),
    ]


def test_a_place_twice_in_one_session_is_refused() -> None:
    with pytest.raises(BadInput, match="given twice") as caught:
        pair_places([BEFORE], [AFTER, AFTER])
    assert caught.value.field == "after"
