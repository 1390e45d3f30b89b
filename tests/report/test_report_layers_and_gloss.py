"""Layers, gloss, shuts and the first panel in print: every figure traced and redone, nothing said of what was not
measured."""

from __future__ import annotations

import json
import math
import re
from dataclasses import replace
from pathlib import Path

import pytest
from reading_reports import figures, pdf_text, said_in, traced_value, workings
from week_job import Week, played

from detailbench.record.things import Override, OwnerLimit
from detailbench.report import document_pdf
from detailbench.report.content.parts import Worked
from detailbench.thickness.calculations import CALCULATIONS

WALK = Path(__file__).parents[1] / "walks" / "layers_and_gloss.walk"
BY_NAME = {c.name: c for c in CALCULATIONS}
TO_THE_SAFE_SIDE = ("lower_bound_um", "less_than_um", "low_um", "room_um", "risk", "risk_after")


@pytest.fixture(scope="module")
def day(tmp_path_factory: pytest.TempPathFactory) -> Week:
    return played(tmp_path_factory.mktemp("layers"), str(WALK))


def same(one: object, other: object) -> bool:
    if isinstance(one, int | float) and isinstance(other, int | float):
        return math.isclose(one, other, rel_tol=1e-9, abs_tol=1e-9)
    return one == other


def test_every_figure_is_what_its_trace_leads_to_and_is_printed_as_its_value_rounded(day: Week) -> None:
    content = day.content()
    appendix, found = workings(content), figures(content)
    assert [f for f in found if not same(f.value, traced_value(f, day.picture, appendix, day.now, day.past))] == []
    for figure in found:
        if isinstance(figure.value, str):
            continue
        shown = re.search(r"\d+(?:\.(\d+))?", figure.shown)
        assert shown is not None
        safe = isinstance(figure.trace, Worked) and figure.trace.at[0] in TO_THE_SAFE_SIDE
        step = (1.0 if safe else 0.5) * 10.0 ** -len(shown[1] or "")
        assert abs(abs(figure.value) - float(shown[0])) <= step + 1e-9, figure


def test_every_working_of_thickness_and_gloss_is_redone_with_the_same_results(day: Week) -> None:
    names = set()
    for working in workings(day.content()).values():
        if working.name not in BY_NAME:
            continue
        names.add(working.name)
        told = json.loads(json.dumps(working.as_json()))
        again = BY_NAME[working.name].run({k: v for k, v in told["inputs"].items() if v not in (None, [])})
        assert json.loads(json.dumps(again.as_json()))["results"] == told["results"], working.name
    assert {"room_left", "gloss_panel", "haze_index", "first_panel", "panel", "change"} <= names


@pytest.mark.parametrize(
    "line",
    [
        "Clear coat was measured by a gauge that resolves layers on bonnet and left front wing.",
        "Measured by a survey (one reading or more at five places or more): 2 panels.",
        "Survey: 1 or more readings at each of 8 places.",
        "118 / 42",
        "Clear coat before, by layer gauge: 8 places, mean 42.0 µm, lowest 40.5.",
        "Clear coat after, by layer gauge: 8 places, mean 32.0 µm, lowest 30.5.",
        "No room left above the reserve of 30 µm.",
        "Room left: 8.1 µm.",
        "Bonnet, shut",
        "what they read says nothing about the outer panels",
        "61.1 GU before, 80.2 GU after at 20°, means of 2 places.",
        "Haze index before: 22.9 GU. Haze index after: 9.8 GU.",
        "Bonnet: Hold and plan again. From the readings after the work the chance of going below the reserve is 5.3 %",
        "gloss meter; measures at 20°, 60°, 85°",
        "A gloss meter's own tile is not read here",
        "4 gloss values in gauge session C",
    ],
)
def test_what_was_measured_is_said(day: Week, line: str) -> None:
    assert line in said_in(day.content())


def test_it_is_in_the_pdf(day: Week) -> None:
    text = " ".join(pdf_text(document_pdf(day.content()).pdf).split())
    assert "61.1 GU before, 80.2 GU after at 20°" in text
    assert "118 / 42" in text


def test_without_a_layer_gauge_the_report_says_that_clear_coat_was_not_measured(day: Week) -> None:
    plain = replace(day.picture, readings=tuple(replace(r, clear_um=None) for r in day.picture.readings))
    text = said_in(day.content(picture=plain))
    assert "Clear coat was not measured: no figure for it is printed or used." in text
    assert "by layer gauge" not in text
    assert "Room left" not in text


def test_an_angle_the_meter_lacks_is_said_with_the_change_at_the_angle_it_has(day: Week) -> None:
    shop = day.picture.shop
    meters = tuple(replace(g, angles_deg=(60,)) if g.principle == "gloss" else g for g in shop.gauges)
    content = day.content(picture=replace(day.picture, shop=replace(shop, gauges=meters)))
    said = "The rule asks for 20° here, and the gloss meter has no such angle: kept at the angle it has."
    assert said in said_in(content)
    assert said not in said_in(day.content())
    shown = {f.shown for f in figures(content) if isinstance(f.trace, Worked) and f.trace.at[0] == "angle_deg"}
    assert "20" in shown  # traced to the rule's own working


def test_the_first_panel_set_aside_names_who_let_it_go_on(day: Week) -> None:
    step = day.picture.steps[-1]
    one = day.picture.runs[-1]
    override = {"rule": "first_panel", "panel": "wing_front_l", "reason": "owner agreed by telephone"}

    kept = Override(id="x", entered_at=day.now, entered_by=one.entered_by, seq=10**9, job_id=step.job_id, **override)
    text = said_in(day.content(picture=replace(day.picture, overrides=(kept,))))
    assert "Gone on all the same by decision of AE" in text
    assert "first panel not as foreseen" in text


def test_what_the_steps_still_take_is_traced_where_it_holds_a_panel_back(day: Week) -> None:
    """A limit of the owner's of 4 µm on a bonnet that lost 10."""

    run = day.picture.runs[-1]
    limit = OwnerLimit(
        id="x", entered_at=day.now, entered_by=run.entered_by, seq=10**9, job_id=run.job_id, kind="most_off",
        panels=("bonnet", "wing_front_l"), most_off_um=4.0,
    )  # fmt: skip
    picture = replace(day.picture, runs=(), limits=(limit,))
    content = day.content(picture=picture)
    assert "Taken off and planned: 10.0 µm; the owner allows 4.0 µm." in said_in(content)
    found = [f for f in figures(content) if isinstance(f.trace, Worked) and f.trace.at == ("taken_and_planned_um",)]
    assert [f.shown for f in found] == ["10.0\u00a0µm"]
    appendix = workings(content)
    assert [f for f in found if not same(f.value, traced_value(f, picture, appendix, day.now, day.past))] == []
