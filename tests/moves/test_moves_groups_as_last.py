"""The finish groups of the last job: taken over by a person's word alone, what was painted since apart."""

from __future__ import annotations

import pytest
from invented_findings import Hands
from invented_shop import InventedShop

from detailbench.basics.errors import Refused
from detailbench.findings.last_groups import groups_offered
from detailbench.moves import arrival, surface
from detailbench.moves.finish_groups import SetGroupPaint
from detailbench.moves.groups_as_last import TakeOverGroups
from detailbench.record.picture import JobPicture

Told = dict[str, tuple[frozenset[str], str, str]]


@pytest.fixture
def hands(invented: InventedShop) -> Hands:
    return Hands(invented, invented.job())


@pytest.fixture
def back(hands: Hands) -> Hands:
    """The car again: last time it had a refinished door of its own and paint systems said."""
    hands.do(surface.MakeGroup(hands.job, "refinished door", ("door_front_l",), "single_stage"))
    door = hands.shop.group(hands.job, "door_front_l")
    hands.do(SetGroupPaint(hands.job, door.id, {"refinished": "yes", "cure_word": "baked"}))
    hands.do(surface.SetPaintSystem(hands.job, hands.shop.group(hands.job).id, "clear_over_colour"))
    hands.shop.clock.forward(days=365)
    return Hands(hands.shop, hands.do(arrival.NewJob(kind="inspection", car_id=hands.picture.car.id)))


def groups(picture: JobPicture) -> Told:
    return {g.name: (frozenset(g.panels), g.paint_system, g.refinished) for g in picture.groups}


def test_a_new_job_of_the_car_takes_over_nothing_by_itself_and_is_offered_what_stood(back: Hands) -> None:
    assert {system for _panels, system, _re in groups(back.picture).values()} == {"unknown"}
    found = groups_offered(back.picture)
    assert found is not None
    assert [g.name for g in found.groups] == [g.name for g in back.picture.last.groups]  # type: ignore[union-attr]


def test_with_nothing_painted_since_the_groups_are_those_of_then_and_are_offered_no_more(back: Hands) -> None:
    before = groups(back.picture)
    back.do(TakeOverGroups(back.job))
    assert groups(back.picture) == groups(back.picture.last)  # type: ignore[arg-type]
    assert groups_offered(back.picture) is None
    panels = [p for g in back.picture.groups for p in g.panels]
    assert len(panels) == len(set(panels))
    back.shop.bench.undo(back.job)
    assert groups(back.picture) == before


def test_a_panel_painted_since_stands_apart_with_its_paint_unknown(back: Hands) -> None:
    back.do(TakeOverGroups(back.job, ("door_front_l", "bonnet")))
    now = groups(back.picture)
    apart = next(name for name in now if name.startswith("painted since 20"))
    assert now[apart] == (frozenset({"door_front_l", "bonnet"}), "unknown", "yes")
    assert "refinished door" not in now  # its only panel was painted again
    assert now["body"][1] == "clear_over_colour"
    assert "bonnet" not in now["body"][0]


def test_where_there_is_nothing_to_take_over_it_is_refused_in_words(hands: Hands, back: Hands) -> None:
    with pytest.raises(Refused, match="no finish groups of a last job"):
        hands.do(TakeOverGroups(hands.job))
    back.do(TakeOverGroups(back.job))
    with pytest.raises(Refused, match="no finish groups of a last job"):
        back.do(TakeOverGroups(back.job))


def test_panels_already_put_into_a_group_here_move_and_none_is_lost(back: Hands) -> None:
    all_panels = {p for g in back.picture.groups for p in g.panels}
    back.do(surface.MakeGroup(back.job, "made here", ("door_front_l", "roof")))
    back.do(TakeOverGroups(back.job))
    assert {p for g in back.picture.groups for p in g.panels} == all_panels
    assert "made here" not in groups(back.picture)
