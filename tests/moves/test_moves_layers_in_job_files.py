"""A job's file carries clear coat, gloss and places apart; one made up by hand is refused, naming the place."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from invented_findings import Hands, hands
from invented_shop import INVENTED_NOW, invented, prepared

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadFile
from detailbench.body.edges import EdgePosition
from detailbench.findings.gloss import panel_gloss
from detailbench.findings.layers import side_layers
from detailbench.findings.panels import panel_seen
from detailbench.findings.reference_places import references
from detailbench.findings.walking import panel_places
from detailbench.moves.bench import Bench
from detailbench.moves.gloss import RecordGloss
from detailbench.moves.job_exchange import ImportJob, write_job
from detailbench.moves.readings import AddPlace, RecordReading
from detailbench.moves.shop import AddToShop

__all__ = ["hands", "invented", "prepared"]

Body = dict[str, Any]


@pytest.fixture
def body(hands: Hands, tmp_path: Path) -> Body:
    """A roof with five layered values, two of gloss, and a shut."""
    hands.session(hands.do(AddToShop("gauge", {"name": "layers", "principle": "ultrasonic", "layers": True})))
    for value in (42.0, 41.0, 43.0, 40.0, 44.0):
        hands.later()
        hands.do(RecordReading(hands.job, "roof", 118.0, clear_um=value))
    p = panel_places(hands.picture, "roof")[0]
    at = EdgePosition(p.edge_a, 5.0, p.edge_b, p.edge_b_mm, p.panel_w_mm, p.panel_h_mm)
    shut = hands.do(AddPlace(hands.job, "roof", at, surface="shut"))
    hands.do(RecordReading(hands.job, "roof", 90.0, place_id=shut, clear_um=30.0))
    hands.session(hands.do(AddToShop("gauge", {"name": "g", "principle": "gloss", "angles_deg": (20, 60)})))
    hands.do(RecordGloss(hands.job, "roof", 60, 84.0))
    hands.do(RecordGloss(hands.job, "roof", 20, 61.0))
    write_job(hands.shop.bench.store, hands.job, tmp_path / "job.json")
    return json.loads((tmp_path / "job.json").read_bytes())  # type: ignore[no-any-return]


@pytest.fixture
def theirs(tmp_path: Path) -> Iterator[Bench]:
    bench = Bench(tmp_path / "theirs", HandClock(INVENTED_NOW))
    yield bench
    bench.close()


def taken_in(bench: Bench, body: Body) -> str:
    return bench.do(ImportJob(json.dumps(body).encode(), "job.json", None)).scope


def test_another_workshop_sees_the_same_clear_coat_gloss_and_shut(body: Body, hands: Hands, theirs: Bench) -> None:
    there = theirs.job(taken_in(theirs, body))
    layers = side_layers(there, panel_seen(there, "roof"))
    assert layers is not None
    assert layers == side_layers(hands.picture, panel_seen(hands.picture, "roof"))
    assert layers.mean_um == 42.0
    seen = panel_gloss(there, "roof")
    assert seen is not None
    assert {angle: at.mean_gu for angle, at in seen.before.items()} == {60: 84.0, 20: 61.0}
    assert seen.haze_before is not None
    assert seen.haze_before.haze_gu == 23.0
    assert [(r.surface, r.places[0].value_um, r.places[0].clear_um) for r in references(there)] == [
        ("shut", 90.0, 30.0)
    ]


@pytest.mark.parametrize(
    ("table", "field", "value"),
    [
        ("reading", "clear_um", 4000.0),
        ("reading", "clear_um", -1.0),
        ("reading", "clear_um", 0.0),
        ("gloss_reading", "angle_deg", 45),
        ("gloss_reading", "value_gu", -0.1),
        ("gloss_reading", "value_gu", 1e6),
        ("gauge", "angles_deg", [45]),
        ("place", "surface", "inside"),
        ("gauge", "principle", "sound"),
    ],
)
def test_what_no_move_writes_is_refused_naming_the_field(
    body: Body, theirs: Bench, table: str, field: str, value: Any
) -> None:
    body["things"][table][-1][field] = value
    with pytest.raises(BadFile, match=field):
        taken_in(theirs, body)
    assert theirs.shop().jobs == ()


def test_a_clear_coat_from_a_gauge_that_resolves_no_layers_is_refused(body: Body, theirs: Bench) -> None:
    for gauge in (g for g in body["things"]["gauge"] if g["layers"]):
        gauge["layers"] = False
    with pytest.raises(BadFile, match="resolves no layers"):
        taken_in(theirs, body)
