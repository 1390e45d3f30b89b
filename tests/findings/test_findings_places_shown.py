"""The places of a panel as a picture shows them; where each value stands in the panel's working."""

from __future__ import annotations

from dataclasses import replace

from invented_shop import InventedShop

from detailbench.findings.panels import panel_seen
from detailbench.findings.places_shown import places_in_mean, places_shown
from detailbench.record.picture import JobPicture

VALUES = (118.0, 119.0, 117.0, 118.0, 120.0, 117.5, 118.5, 190.0)


def of_origin(invented: InventedShop, *origins: str) -> JobPicture:
    """A bonnet read at eight places, of which the first ones are of these origins."""
    job = invented.job()
    invented.measured(job, values=VALUES)
    picture = invented.bench.job(job)
    own = sorted((p for p in picture.places if p.panel == "bonnet"), key=lambda p: p.number)
    new = {p.id: origin for p, origin in zip(own, origins, strict=False)}
    places = tuple(replace(p, origin=new.get(p.id, p.origin)) for p in picture.places)
    return replace(picture, places=places)


def test_every_value_stands_in_the_working_where_it_is_said_to(invented: InventedShop) -> None:
    seen = panel_seen(of_origin(invented, "chosen", "proposed", "control"), "bonnet")
    assert seen.figures is not None
    told = places_shown(seen)
    assert [p.value_um for p in told] == list(VALUES)
    for place in told:
        name, _slash, index = place.at.partition("/")
        assert seen.figures.working.inputs[name][int(index)] == place.value_um  # type: ignore[index, call-overload]
    assert [p.standing for p in told][:3] == ["beside the mean", "in the mean", "beside the mean"]


def test_the_place_that_stands_out_is_the_high_one_though_a_control_place_comes_before_it(
    invented: InventedShop,
) -> None:
    told = places_shown(panel_seen(of_origin(invented, "control"), "bonnet"))
    assert [p.value_um for p in told if p.odd] == [190.0]


def test_where_only_chosen_places_were_read_they_make_the_mean(invented: InventedShop) -> None:
    seen = panel_seen(of_origin(invented, *(["chosen"] * 8)), "bonnet")
    assert len(places_in_mean(seen)) == 8
    assert {p.standing for p in places_shown(seen)} == {"in the mean"}
