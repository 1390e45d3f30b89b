"""What the charts are handed from a job: the findings' own figures, the panel first, and nothing loaded to know it."""

from __future__ import annotations

import subprocess
import sys

import pytest
from invented_shop import InventedShop, invented, prepared
from stage_scenes import adopted, ready_job

from detailbench.findings.changes import changes
from detailbench.findings.panels import panels_seen
from detailbench.findings.plan import work_standing
from detailbench.moves import readings, shop, surface, work
from detailbench.screens.charts.from_job import before_after, panel_scatter, time_planned_done

__all__ = ["invented", "prepared"]
MEASURED = ("wing_front_r", "wing_front_l", "tailgate", "roof")


@pytest.fixture
def job(invented: InventedShop) -> str:
    return ready_job(invented, *MEASURED)


def test_the_panel_comes_first_its_twin_second_then_the_family_in_walking_order(
    invented: InventedShop, job: str
) -> None:
    found = panel_scatter(invented.picture(job), "wing_front_r")
    assert [p.role for p in found.panels] == ["this", "twin", "family", "family"]
    assert [p.name for p in found.panels] == ["right front wing", "left front wing", "tailgate", "roof"]
    assert [p.short for p in found.panels[:3]] == ["wing R", "wing L", "tailgate"]


def test_dots_mean_and_bound_are_those_of_the_findings(invented: InventedShop, job: str) -> None:
    picture = invented.picture(job)
    seen = panels_seen(picture)["roof"]
    (shown,) = (p for p in panel_scatter(picture, "roof").panels if p.role == "this")
    assert [d.value_um for d in shown.dots] == [p.value_um for p in seen.places if p.value_um is not None]
    assert seen.figures is not None
    assert (shown.mean_um, shown.lower_bound_um) == (seen.figures.mean_um, seen.figures.lower_bound_um)


def test_the_place_that_stands_out_is_the_one_the_findings_name(invented: InventedShop) -> None:
    job = invented.job()
    invented.measured(job, "roof", (118.0, 118.5, 117.5, 71.0, 118.2, 117.9))
    shown = panel_scatter(invented.picture(job), "roof").panels[0]
    assert [(d.number, d.value_um) for d in shown.dots if d.odd] == [(4, 71.0)]


def test_a_panel_nothing_was_read_on_is_there_without_dots(invented: InventedShop, job: str) -> None:
    shown = panel_scatter(invented.picture(job), "door_rear_l").panels[0]
    assert (shown.dots, shown.mean_um, shown.lower_bound_um) == ((), None, None)


def test_no_pairs_before_anything_was_read_after_the_work(invented: InventedShop, job: str) -> None:
    assert before_after(invented.picture(job), "roof") is None


def polished(invented: InventedShop, *, gauge: str) -> str:
    """The roof worked and read again, 3 µm lower, by this gauge."""
    job = ready_job(invented, "bonnet", "roof")
    step = adopted(invented, job)[0]
    invented.bench.do(work.StartStep(job, "roof", step))
    invented.clock.forward(minutes=20)
    invented.bench.do(work.FinishStep(job, "roof"))
    invented.bench.do(surface.SetState(job, ("roof",), clean="wiped"))
    session = invented.bench.do(readings.StartSession(job, gauge, 21.0)).id
    invented.bench.do(readings.RecordCheck(job, session, invented.zero, (0.1, 0.2, 0.0, 0.1, -0.1)))
    invented.bench.do(readings.RecordCheck(job, session, invented.foil, (102.0, 102.5, 101.8, 102.2, 102.1)))
    for value in (115.2, 116.9, 114.1, 118.0, 115.8, 113.0):
        invented.clock.forward(seconds=4)
        invented.bench.do(readings.RecordReading(job, "roof", value))
    return job


def test_pairs_and_their_difference_are_those_of_the_findings(invented: InventedShop) -> None:
    job = polished(invented, gauge=invented.gauge)
    picture = invented.picture(job)
    shown, found = before_after(picture, "roof"), changes(picture)["roof"]
    assert shown is not None
    assert found.change is not None
    assert [(p.before_um, p.after_um) for p in shown.pairs] == [(p.before_um, p.after_um) for p in found.pairing.pairs]
    assert [p.number for p in shown.pairs] == [1, 2, 3, 4, 5, 6]
    assert (shown.removed_um, shown.low_um, shown.high_um) == (
        found.change.estimate_um, found.change.low_um, found.change.high_um,
    )  # fmt: skip
    assert (shown.outcome, shown.sentence) == (found.change.outcome, found.change.sentence)


def test_readings_of_another_gauge_are_shown_and_not_compared(invented: InventedShop) -> None:
    other = invented.bench.do(shop.AddToShop("gauge", {"name": "invented gauge two"})).id
    shown = before_after(invented.picture(polished(invented, gauge=other)), "roof")
    assert shown is not None
    assert shown.outcome == "not comparable"
    assert shown.removed_um is None
    assert {p.why_not for p in shown.pairs} == {"another gauge"}
    assert all(p.before_um is not None and p.after_um is not None for p in shown.pairs)


def test_minutes_planned_and_done_are_those_of_the_plan(invented: InventedShop) -> None:
    job = ready_job(invented, "bonnet", "roof")
    step = adopted(invented, job)[0]
    invented.bench.do(work.StartStep(job, "roof", step))
    invented.clock.forward(minutes=20)
    invented.bench.do(work.FinishStep(job, "roof"))
    invented.bench.do(work.StartStep(job, "bonnet", step))
    invented.clock.forward(minutes=7)
    picture, now = invented.picture(job), invented.clock.now()
    standing = work_standing(picture, now)
    shown = time_planned_done(picture, now)
    by_name = {p.name: p for p in shown.panels}
    assert (by_name["roof"].done_min, by_name["roof"].state) == (20.0, "finished")
    assert (by_name["bonnet"].done_min, by_name["bonnet"].state) == (7.0, "running")
    assert sum(p.planned_min for p in shown.panels) == pytest.approx(standing.plan.minutes)
    assert shown.left_min == standing.left.minutes_left
    assert {p.state for n, p in by_name.items() if n not in ("roof", "bonnet")} <= {"not_started"}


def test_values_are_made_without_loading_the_chart_library() -> None:
    ask = "import sys, detailbench.screens.charts.from_job; print('pyqtgraph' in sys.modules)"
    told = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True, check=True)
    assert told.stdout.strip() == "False"
