"""An invented car of 118 µm with one door of 241 µm: no clear-coat figure for that door, anywhere in this room."""

from __future__ import annotations

import json
import re

import pytest

from detailbench.thickness.clear_picture import ClearPicture, NoPicture, clear_picture
from detailbench.thickness.finish_groups import proposed_groups
from detailbench.thickness.layer_room import ClearLimits
from detailbench.thickness.likeness import likeness
from detailbench.thickness.odd_findings import PanelMean
from detailbench.thickness.odd_panels import odd_panels
from detailbench.thickness.permission import OwnerLimits, PanelTells, ShopTotals, what_may_come_off

DOOR, TWIN = "door_front_l", "door_front_r"
CAR = {
    "bonnet": 118.0, "roof": 115.0, "tailgate": 121.0, "wing_front_l": 112.0, "wing_front_r": 116.0,
    DOOR: 241.0, TWIN: 119.0, "door_rear_l": 116.0, "door_rear_r": 120.0,
}  # fmt: skip
TWINS = {DOOR: TWIN, TWIN: DOOR, "wing_front_l": "wing_front_r", "wing_front_r": "wing_front_l",
         "door_rear_l": "door_rear_r", "door_rear_r": "door_rear_l"}  # fmt: skip
MEANS = [PanelMean(k, m, twin=TWINS.get(k, "")) for k, m in CAR.items()]
FOUND = odd_panels(MEANS)
SHOP = ShopTotals(100.0, 85.0)


def places(key: str) -> list[float]:
    return [CAR[key] + d for d in (-3.0, 2.0, 0.0, 3.0, -2.0)]


def tells(key: str) -> PanelTells:
    finding = FOUND.of(key)
    compared = finding.side if finding.verdict == "differs" and finding.side else "like"
    return PanelTells(key, "measured", "clear over colour", compared, lowest_um=min(places(key)))


def picture(key: str) -> ClearPicture | NoPicture:
    panel = next(p for p in MEANS if p.key == key)
    return clear_picture(places(key), tells(key), likeness(panel, FOUND), limits=ClearLimits(20.0))


@pytest.mark.parametrize("key", [DOOR, TWIN])
def test_neither_the_door_nor_its_twin_has_a_picture_of_a_clear_coat(key: str) -> None:
    found = picture(key)
    assert isinstance(found, NoPicture)
    assert not re.search(r"\d", found.sentence)


def test_the_plain_panels_of_that_car_have_one() -> None:
    assert isinstance(picture("roof"), ClearPicture)
    assert isinstance(picture("wing_front_l"), ClearPicture)


def test_the_doors_ruling_names_no_figure_of_a_clear_coat_and_is_careful() -> None:
    ruling = what_may_come_off(tells(DOOR), SHOP, OwnerLimits())
    assert (ruling.ruling, ruling.clear_coat, ruling.room) == ("careful", "Clear coat unknown.", None)
    assert ruling.reasons[0].sentence == "Thicker than the rest: more paint is not more permission."
    printed = json.dumps(ruling.working.as_json(), ensure_ascii=False)
    for made_up in (241 - 69, 238 - 69, 241 - 118, 238 - 115):  # the total less undercoats, or less the rest
        assert str(made_up) not in printed


def test_the_door_is_no_freer_than_the_same_door_at_the_cars_own_thickness() -> None:
    order = ("may be worked", "careful", "held back")
    thin = what_may_come_off(PanelTells(DOOR, "measured", "clear over colour", "like", 118.0), SHOP, OwnerLimits())
    assert order.index(what_may_come_off(tells(DOOR), SHOP, OwnerLimits()).ruling) > order.index(thin.ruling)


def test_it_is_named_beside_its_twin_first_and_proposed_as_a_finish_group_of_its_own() -> None:
    assert FOUND.of(DOOR).sentence.startswith("Thicker than its twin by 122\u00a0µm. Thicker than the rest by 12")
    groups = proposed_groups(FOUND).groups
    assert (DOOR,) in [g.keys for g in groups]
    assert all("µm" not in g.sentence for g in groups)
