"""The shop's picture of a clear coat from a job, proposed finish groups, and the smallest change that could be seen."""

from __future__ import annotations

import re
from dataclasses import fields, is_dataclass
from typing import Any

from invented_findings import Hands

from detailbench.basics.workings import Working
from detailbench.findings.could_be_seen import places_to_see, smallest_seen
from detailbench.findings.panels import odd
from detailbench.findings.permissions import permissions
from detailbench.findings.proposed_groups import group_proposals
from detailbench.findings.room_left import clear_pictures
from detailbench.moves.intake import AddRepair
from detailbench.moves.surface import SetPaintSystem
from detailbench.thickness.clear_picture import ClearPicture, NoPicture

# an invented car of about 118 µm with one door of 241 µm
DOOR, TWIN = "door_front_l", "door_front_r"
ABOUT = {"roof": 118.0, "tailgate": 120.0, "bonnet": 116.0, "wing_front_l": 117.0, "wing_front_r": 119.0,
         DOOR: 241.0, TWIN: 119.0, "door_rear_l": 116.0, "door_rear_r": 118.0}  # fmt: skip


def places(about: float) -> tuple[float, ...]:
    return tuple(about + d for d in (-3.0, 2.0, 0.0, 3.0, -2.0))


def car(hands: Hands, paint: str = "clear_over_colour") -> Hands:
    for group in hands.picture.groups:
        hands.do(SetPaintSystem(hands.job, group.id, paint))
    hands.survey({key: places(about) for key, about in ABOUT.items()})
    return hands


def said(thing: Any) -> list[str]:
    """Every text in a result; workings only by their figures' names."""
    if isinstance(thing, str):
        return [thing]
    if isinstance(thing, Working):
        return [*thing.inputs, *thing.results]
    if is_dataclass(thing):
        return [s for f in fields(thing) for s in said(getattr(thing, f.name))]
    return [s for x in thing for s in said(x)] if isinstance(thing, tuple | list) else []


def test_a_thick_door_has_no_clear_coat_figure_anywhere(hands: Hands) -> None:
    """241 µm on a car of 118: neither in its ruling, nor in what it is compared with, nor as a picture for the shop."""
    picture = car(hands).picture
    shown = clear_pictures(picture)[DOOR].found
    assert isinstance(shown, NoPicture)
    ruling = permissions(picture)[DOOR]
    assert (ruling.clear_coat, ruling.room) == ("Clear coat unknown.", None)
    found = odd(picture)
    assert found is not None
    texts = [*said(shown), *said(ruling), *said(found.of(DOOR))]
    about_clear = [t for t in texts if re.search(r"clear|room|layer", t, re.IGNORECASE)]
    assert about_clear
    assert not [t for t in about_clear if re.search(r"\d", t)]
    assert not {"room_um", "low_um", "risk"} & set(ruling.working.results)


def test_its_twin_does_not_read_like_its_twin_and_has_none_either(hands: Hands) -> None:
    shown = clear_pictures(car(hands).picture)[TWIN].found
    assert shown == NoPicture("Clear coat unknown. Its twin does not read like the rest.")


def test_a_plain_panel_has_a_range_that_says_what_it_assumes(hands: Hands) -> None:
    seen = clear_pictures(car(hands).picture)["roof"]
    assert isinstance(seen.found, ClearPicture)
    assert seen.confirmed
    assert seen.found.mean_um == 118.0 - 69.0
    assert "assumes factory layers" in seen.found.sentence
    assert seen.found.working.inputs["u_cal_um"] > 0  # type: ignore[operator]


def test_neither_rulings_nor_their_reasons_change_with_the_shops_picture(hands: Hands) -> None:
    """The range is nowhere in what decides: no ruling mentions what was assumed."""
    picture = car(hands).picture
    roof = permissions(picture)["roof"]
    assert roof.clear_coat == "Clear coat not measured: this gauge reads the total only."
    assert not any("assumes" in t for t in said(roof))


def test_a_stated_repair_takes_the_range_away_from_its_panel_only(hands: Hands) -> None:
    car(hands).do(AddRepair(hands.job, "stone chips filled in", "roof"))
    found = clear_pictures(hands.picture)
    assert found["roof"].found == NoPicture("Clear coat unknown. A repair was stated here.")
    assert isinstance(found["tailgate"].found, ClearPicture)


def test_a_filmed_car_has_none(hands: Hands) -> None:
    assert {type(s.found) for s in clear_pictures(car(hands, "filmed").picture).values()} == {NoPicture}


def test_readings_after_the_work_replace_those_before(hands: Hands) -> None:
    car(hands)
    step = hands.adopted("roof")
    hands.do_anyway("roof", step)
    hands.survey({"roof": places(115.0)})
    found = clear_pictures(hands.picture)["roof"].found
    assert isinstance(found, ClearPicture)
    assert found.mean_um == 115.0 - 69.0


def test_readings_not_confirmed_are_said_so_beside_the_range(hands: Hands) -> None:
    car(hands)
    hands.checked_session()
    hands.read("roof", 118.0, place=1)
    assert not clear_pictures(hands.picture)["roof"].confirmed


def test_the_thick_door_is_proposed_as_a_finish_group_of_its_own_and_nothing_is_set(hands: Hands) -> None:
    before = car(hands).picture.groups
    proposal = group_proposals(hands.picture)
    assert proposal is not None
    assert (DOOR,) in [g.keys for g in proposal.groups]
    assert "roof" in proposal.groups[0].keys
    assert hands.picture.groups == before


def test_before_anything_was_measured_nothing_is_proposed_and_nothing_could_be_seen(hands: Hands) -> None:
    assert group_proposals(hands.picture) is None
    assert smallest_seen(hands.picture, "roof") is None
    assert places_to_see(hands.picture, "roof", 2.0) is None


def test_the_smallest_change_takes_places_and_foil_readings_as_they_are(hands: Hands) -> None:
    car(hands)
    found, needed = smallest_seen(hands.picture, "roof"), places_to_see(hands.picture, "roof", 2.0)
    assert found is not None
    assert needed is not None
    assert found.working.inputs["places"] == 5
    assert found.working.inputs["shim_readings"] == 10  # five before, five after
    assert found.working.inputs["repeatability_um"] == needed.working.inputs["repeatability_um"]
    assert found.smallest_um > found.floor_um
