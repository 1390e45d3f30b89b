"""What may be worked with a total-only gauge. More paint is never more permission, and no clear coat is a figure."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.errors import BadInput
from detailbench.thickness.layer_room import ClearLimits, LayerRoom, Removal, layer_room
from detailbench.thickness.permission import (
    Compared,
    Measured,
    OwnerLimits,
    PaintSystem,
    PanelTells,
    Permission,
    ShopTotals,
    what_may_come_off,
)

SHOP = ShopTotals(careful_below_um=100.0, leave_below_um=85.0)
GOOD = PanelTells("bonnet", "measured", "clear over colour", "like", lowest_um=118.0)
NOTHING = OwnerLimits()
ORDER = ("may be worked", "careful", "held back")


def ruled(shop: ShopTotals = SHOP, owner: OwnerLimits = NOTHING, **tells: object) -> Permission:
    return what_may_come_off(replace(GOOD, **tells), shop, owner)  # type: ignore[arg-type]


def test_a_panel_like_its_family_above_the_shops_totals_may_be_worked() -> None:
    result = ruled()
    assert (result.ruling, result.reasons, result.abrasive) == ("may be worked", (), True)


@pytest.mark.parametrize(
    ("lowest", "ruling"), [(100.0, "may be worked"), (99.9, "careful"), (85.0, "careful"), (84.9, "held back")]
)
def test_the_shops_totals_decide_by_the_lowest_place(lowest: float, ruling: str) -> None:
    result = ruled(lowest_um=lowest)
    assert result.ruling == ruling
    assert result.may_override is (ruling == "held back")


def test_totals_not_typed_clear_nothing() -> None:
    result = ruled(shop=ShopTotals())
    assert result.ruling == "careful"
    assert "has not typed" in result.reasons[0].sentence


@pytest.mark.parametrize("system", ["matt or satin", "filmed", "wrapped", "bare"])
def test_matt_filmed_and_wrapped_get_nothing_abrasive(system: PaintSystem) -> None:
    result = ruled(paint_system=system)
    assert not result.abrasive
    assert result.ruling == "held back"


@pytest.mark.parametrize("system", ["single-stage", "tinted clear", "unknown"])
def test_other_systems_are_careful_and_their_clear_coat_is_unknown(system: PaintSystem) -> None:
    result = ruled(paint_system=system)
    assert (result.ruling, result.abrasive) == ("careful", True)
    assert result.clear_coat == "Clear coat unknown."


def test_plastic_is_neither_held_back_nor_given_a_figure() -> None:
    result = ruled(measured="cannot be read", lowest_um=None, compared="not compared")
    assert result.ruling == "careful"
    assert "by trial and watch the temperature" in result.reasons[0].sentence
    assert not any(re.search(r"\d", r.sentence) for r in result.reasons)


@pytest.mark.parametrize(("measured", "part"), [("not measured", "Not measured"), ("no value", "should be metal")])
def test_what_was_not_measured_is_said_as_not_measured(measured: Measured, part: str) -> None:
    result = ruled(measured=measured, lowest_um=None, compared="not compared")
    assert result.ruling == "careful"
    assert part in result.reasons[0].sentence
    assert result.clear_coat == "Clear coat unknown."


@pytest.mark.parametrize("compared", ["thicker", "thinner", "look again", "two groups"])
def test_a_panel_that_differs_is_careful_either_way(compared: Compared) -> None:
    result = ruled(compared=compared)
    assert result.ruling == "careful"
    assert result.clear_coat == "Clear coat unknown."


def test_a_stated_repair_makes_careful() -> None:
    result = ruled(stated_repair=True)
    assert result.ruling == "careful"
    assert result.clear_coat == "Clear coat unknown."


@pytest.mark.parametrize("tell", [{"low_extra_place": True}, {"unconfirmed": True}])
def test_a_low_place_by_hand_and_unconfirmed_readings_hold_back_until_overridden(tell: dict[str, bool]) -> None:
    result = ruled(**tell)
    assert result.ruling == "held back"
    assert result.may_override


def test_the_owners_bar_has_no_override() -> None:
    result = ruled(owner=OwnerLimits(barred=True))
    assert result.ruling == "held back"
    assert not result.may_override
    assert result.reasons[0].lifted_by == "agreement"


def test_a_bar_is_not_lifted_by_overriding_another_reason() -> None:
    assert not ruled(owner=OwnerLimits(barred=True), lowest_um=50.0).may_override


@pytest.mark.parametrize(
    ("removed", "planned", "ruling"),
    [
        (1.0, 1.0, "may be worked"),
        (1.0, 2.0, "may be worked"),
        (1.0, 2.1, "held back"),
        (3.0, 0.0, "held back"),
        (None, 2.0, "careful"),
        (None, 3.1, "held back"),
    ],
)
def test_what_came_off_and_is_planned_counts_against_the_owners_most(
    removed: float | None, planned: float, ruling: str
) -> None:
    result = ruled(owner=OwnerLimits(most_um=3.0), removed_um=removed, planned_um=planned)
    assert result.ruling == ruling
    assert not result.may_override


def test_nothing_measured_as_removed_counts_as_nothing_and_is_said() -> None:
    result = ruled(owner=OwnerLimits(most_um=3.0), removed_um=None, planned_um=3.1)
    assert result.reasons[0].sentence == "Taken off and planned: 3.1\u00a0µm; the owner allows 3.0\u00a0µm."
    assert ruled(owner=OwnerLimits(most_um=0.5), removed_um=None).ruling == "careful"


tells = st.builds(
    PanelTells,
    key=st.just("p"),
    measured=st.just("measured"),
    paint_system=st.sampled_from(get_args(PaintSystem)),
    compared=st.sampled_from(get_args(Compared)),
    lowest_um=st.floats(100, 2000),
    low_extra_place=st.booleans(),
    stated_repair=st.booleans(),
    unconfirmed=st.booleans(),
)


@given(tells, st.floats(1, 2000))
def test_more_paint_above_the_shops_totals_changes_nothing(panel: PanelTells, more: float) -> None:
    thicker = replace(panel, lowest_um=(panel.lowest_um or 0) + more)
    assert what_may_come_off(panel, SHOP, NOTHING) == what_may_come_off(thicker, SHOP, NOTHING)


@given(tells)
def test_being_thicker_than_the_rest_never_permits_more(panel: PanelTells) -> None:
    like = what_may_come_off(replace(panel, compared="like"), SHOP, NOTHING)
    thicker = what_may_come_off(replace(panel, compared="thicker"), SHOP, NOTHING)
    assert ORDER.index(thicker.ruling) >= ORDER.index(like.ruling)
    assert thicker.abrasive <= like.abrasive


@given(tells)
def test_the_clear_coat_is_never_a_figure(panel: PanelTells) -> None:
    assert not re.search(r"\d", what_may_come_off(panel, SHOP, NOTHING).clear_coat)


@pytest.mark.parametrize(
    ("planned", "ruling"), [(0.0, "may be worked"), (15.0, "may be worked"), (15.1, "held back"), (40.0, "held back")]
)
def test_what_the_plan_still_takes_counts_against_leave_below(planned: float, ruling: str) -> None:
    result = ruled(lowest_um=100.0, planned_um=planned)
    assert result.ruling == ruling
    if ruling == "held back":
        assert "planned: then under the shop's “leave below” total of 85\u00a0µm" in result.reasons[0].sentence
        assert result.may_override


CLEAR = [41.0, 38.5, 42.0, 39.0, 40.5, 37.5, 40.0, 41.5]
MUCH, NONE_LEFT = layer_room(CLEAR, ClearLimits(20.0)), layer_room(CLEAR, ClearLimits(30.0), Removal(8.0, 0.8))


def layered(room: LayerRoom, **tells: object) -> Permission:
    return what_may_come_off(replace(GOOD, **tells), SHOP, NOTHING, room)  # type: ignore[arg-type]


def test_a_layer_gauge_names_its_figure_and_the_room() -> None:
    result = layered(MUCH)
    assert result.clear_coat == "Clear coat by layer gauge: 40.0\u00a0µm on average of 8 places."
    assert result.room is MUCH
    assert result.working.results["room_um"] == MUCH.room_um
    assert result.ruling == "may be worked"


def test_no_room_by_a_layer_gauge_holds_back_until_overridden() -> None:
    result = layered(NONE_LEFT)
    assert (result.ruling, result.may_override) == ("held back", True)
    assert "Chance of less than the reserve of 30\u00a0µm" in result.reasons[0].sentence


@pytest.mark.parametrize("system", ["single-stage", "matt or satin", "filmed", "wrapped", "bare", "unknown"])
@pytest.mark.parametrize("room", [MUCH, NONE_LEFT])
def test_where_there_is_no_clear_coat_or_none_is_known_a_layer_figure_says_nothing(
    system: PaintSystem, room: LayerRoom
) -> None:
    result = layered(room, paint_system=system)
    assert result == ruled(paint_system=system)
    assert (result.room, result.clear_coat) == (None, "Clear coat unknown.")
    assert "room_um" not in result.working.results


OTHERS = ShopTotals(), SHOP
tells_of_any = st.builds(
    PanelTells,
    key=st.just("p"),
    measured=st.sampled_from(get_args(Measured)),
    paint_system=st.sampled_from(get_args(PaintSystem)),
    compared=st.sampled_from(get_args(Compared)),
    lowest_um=st.floats(40, 2000),
    low_extra_place=st.booleans(),
    stated_repair=st.booleans(),
    unconfirmed=st.booleans(),
    planned_um=st.floats(0, 10),
)


@given(tells_of_any, st.sampled_from(OTHERS), st.sampled_from([MUCH, NONE_LEFT]))
def test_a_layer_figure_only_adds_reasons_and_takes_none_away(
    panel: PanelTells, shop: ShopTotals, room: LayerRoom
) -> None:
    without, with_it = what_may_come_off(panel, shop, NOTHING), what_may_come_off(panel, shop, NOTHING, room)
    assert set(without.reasons) <= set(with_it.reasons)
    assert ORDER.index(with_it.ruling) >= ORDER.index(without.ruling)
    assert with_it.abrasive is without.abrasive


@given(tells_of_any, st.floats(0, 2000), st.floats(0, 1))
def test_a_thicker_total_adds_nothing_to_the_room_a_layer_gauge_found(
    panel: PanelTells, more: float, share: float
) -> None:
    thicker = replace(panel, lowest_um=(panel.lowest_um or 0) + more)
    for room in (MUCH, layer_room(CLEAR, ClearLimits(20.0, largest_share=0.01 + 0.98 * share))):
        found = what_may_come_off(thicker, SHOP, NOTHING, room).room
        assert found in (None, room)
        assert found == what_may_come_off(panel, SHOP, NOTHING, room).room


def test_totals_that_contradict_each_other_are_refused() -> None:
    with pytest.raises(BadInput, match="cannot lie above"):
        ShopTotals(careful_below_um=80.0, leave_below_um=90.0)
    with pytest.raises(BadInput, match="above nought"):
        ShopTotals(careful_below_um=0.0)


def test_a_measured_panel_needs_its_lowest_place() -> None:
    with pytest.raises(BadInput, match="lowest place"):
        ruled(lowest_um=None)
