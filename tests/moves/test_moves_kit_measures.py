"""Measures of the kit: unmeasured is empty, nought is no measure, and what no such thing has is a slip of the hand."""

from __future__ import annotations

from typing import Any

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput
from detailbench.moves.shop import AddToShop, ChangeInShop

NAMES = {"sanding_disc": {"grade": "P2000"}}


@pytest.mark.parametrize(
    ("table", "field"),
    [
        ("pad", "diameter_mm"),
        ("machine", "orbit_mm"),
        ("machine", "plate_mm"),
        ("machine", "own_rpm"),
        ("machine", "vibration_m_s2"),
        ("machine", "vibration_k_m_s2"),
        ("machine", "weight_n"),
        ("machine", "noise_db"),
        ("product", "working_time_s"),
        ("lamp", "distance_cm"),
        ("lamp", "colour_temperature_k"),
        ("sanding_disc", "diameter_mm"),
    ],
)
@pytest.mark.parametrize(("value", "words"), [(0, "0 is no|never 0"), (10**9, "between|up to"), (-1, "below zero")])
def test_nought_and_what_cannot_be_is_refused_at_its_field(
    invented: InventedShop, table: str, field: str, value: float, words: str
) -> None:
    values = {"name": "x", **NAMES.get(table, {}), field: value}
    with pytest.raises(BadInput, match=words) as refused:
        invented.bench.do(AddToShop(table, values))
    assert refused.value.field == field


def test_what_is_left_empty_is_kept_as_not_measured(invented: InventedShop) -> None:
    made = invented.bench.do(AddToShop("machine", {"name": "x", "vibration_m_s2": 4.1, "noise_db": None})).id
    machine = next(m for m in invented.bench.shop().machines if m.id == made)
    assert (machine.vibration_m_s2, machine.vibration_k_m_s2, machine.noise_db) == (4.1, None, None)


@pytest.mark.parametrize(
    ("dials", "words"),
    [
        ((("low", 0.0),), "above 0"),
        ((("low", -3.0),), "above 0"),
        ((("low", 1e9),), "above 0"),
        ((("low", 4000.0), ("high", 2500.0)), "rise"),
        ((("low", 4000.0), ("high", 4000.0)), "rise"),
        ((("1", 4000.0), ("1", 5000.0)), "once"),
        (((" ", 4000.0),), "once"),
        ((("low", float("nan")),), "positions with their numbers"),
        (("low", "high"), "positions with their numbers"),
    ],
)
def test_a_dial_rises_from_above_nothing(invented: InventedShop, dials: Any, words: str) -> None:
    with pytest.raises(BadInput, match=words) as refused:
        invented.bench.do(AddToShop("machine", {"name": "x", "dials": dials}))
    assert refused.value.field == "dials"


def test_a_measure_is_not_made_nought_by_changing_it(invented: InventedShop) -> None:
    pad = invented.bench.shop().pads[0]
    with pytest.raises(BadInput, match="measure it"):
        invented.bench.do(ChangeInShop("pad", pad.id, {"diameter_mm": 0}))
    with pytest.raises(BadInput, match="longer than a name"):
        invented.bench.do(ChangeInShop("pad", pad.id, {"name": "x" * 1_000_000}))
    assert next(p for p in invented.bench.shop().pads if p.id == pad.id) == pad
