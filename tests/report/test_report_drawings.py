"""The drawings: one outline for all, more is darker, numbers step aside for marks, hatches tell apart in grey."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from reading_reports import pdf_text
from whole_job import Whole

from detailbench.basics.colours import luminance
from detailbench.body.outlines import load_outline
from detailbench.report import DocumentContent, document_pdf
from detailbench.report.content.blocks import Drawn, Fill, Legend, PlanPair, PlanView
from detailbench.report.content.parts import plain
from detailbench.report.pages.letters import register
from detailbench.report.pages.look import paper_rgb
from detailbench.report.pages.panel_sketch import SIZE, number_spot
from detailbench.report.pages.paths import Carry, fit
from detailbench.report.pages.plan_view import busy_points, clear_spot, legend_height, plate_of

OUTLINE = load_outline("estate", None)
CARRY = Carry(OUTLINE.bounds, fit(OUTLINE.bounds, 230, 420), 0.0, 420.0)


def plans(content: DocumentContent) -> list[PlanPair]:
    return [b for s in content.sections for b in s.blocks if isinstance(b, PlanPair)]


def test_more_is_darker_all_the_way_and_reads_the_same_in_grey() -> None:
    light = [luminance(tuple(round(v * 255) for v in paper_rgb(i / 20))) for i in range(21)]  # type: ignore[arg-type]
    assert light == sorted(light, reverse=True)
    assert len(set(light)) == 21


def test_severity_is_printed_on_every_panel_that_was_looked_at_and_on_no_other(
    whole: Whole, content: DocumentContent
) -> None:
    view = plans(content)[0].before
    looked = {m.panel for m in whole.picture.marks} | {x.panel for x in whole.picture.panel_looks}
    assert {k for k, f in view.fills.items() if f.text} == looked
    assert plain(view.fills["bonnet"].text) == "4"
    assert plain(plans(content)[0].after.fills["bonnet"].text) == "3"
    assert view.fills["roof"].share == pytest.approx(3 / 5)
    assert view.fills["sill_l"].share is None


def test_a_line_is_drawn_from_end_to_end_at_its_true_length(whole: Whole, content: DocumentContent) -> None:
    line = next(m for m in plans(content)[0].before.marks if m.kind == "line")
    mark = next(m for m in whole.picture.marks if m.shape == "line")
    assert mark.edge_a_mm is not None
    assert mark.edge_b_mm is not None
    assert mark.end_a_mm is not None
    assert mark.end_b_mm is not None
    drawn = math.dist(*line.points)
    assert drawn == pytest.approx(math.hypot(mark.end_a_mm - mark.edge_a_mm, mark.end_b_mm - mark.edge_b_mm), abs=0.6)


def test_a_mark_no_longer_seen_is_not_drawn_after_the_work(content: DocumentContent) -> None:
    pair = plans(content)[0]
    assert sum(m.kind == "dot" for m in pair.before.marks) == 3
    assert sum(m.kind == "patch" for m in pair.before.marks) == 2
    assert sum(m.kind == "patch" for m in pair.after.marks) == 1


def test_a_hold_kind_makes_a_hatched_zone_before_and_after(content: DocumentContent) -> None:
    pair = plans(content)[0]
    for view in (pair.before, pair.after):
        assert sum(m.kind == "zone" for m in view.marks) == 1
        assert view.fills["quarter_rear_l"].hatch == "falling"


def test_every_place_measured_is_a_dot_on_the_map(whole: Whole, content: DocumentContent) -> None:
    pair = plans(content)[1]
    read = {r.place_id for r in whole.picture.readings if r.work == "as_found"}
    again = {r.place_id for r in whole.picture.readings if r.work == "polished"}
    assert len(pair.before.places) == len(read)
    assert len(pair.after.places) == len(again)


def test_a_panel_unlike_its_twin_is_hatched_with_the_difference_under_its_mean(content: DocumentContent) -> None:
    before = plans(content)[1].before
    door = before.fills["door_front_l"]
    by = float(plain(door.beside))
    assert (door.hatch, door.share) == ("rising", 1.0)
    assert plain(door.beside).startswith("+")
    assert by == pytest.approx(float(plain(door.text)) - float(plain(before.fills["door_front_r"].text)), abs=1)
    assert (before.fills["door_front_r"].hatch, before.fills["door_front_r"].beside) == ("", ())
    assert ("rising", "thicker than its twin") in plans(content)[1].legend.hatches


def test_a_number_steps_aside_for_a_mark_and_stays_on_its_panel() -> None:
    from shapely.geometry import Point

    panel = OUTLINE.panels["bonnet"]
    x, y = panel.label
    view = PlanView(("t",), marks=(Drawn("dot", ((x, y),)), Drawn("line", ((x - 300, y - 40), (x + 300, y + 40)))))
    busy = busy_points(view, CARRY)
    spot = clear_spot(panel, CARRY, 8.0, busy)
    assert spot != CARRY.to(panel.label)
    assert all(abs(spot[0] - bx) > 5.6 or abs(spot[1] - by) > 5.2 for bx, by in busy)
    back = ((spot[0] - CARRY.x) / CARRY.scale + CARRY.bounds[0], (CARRY.y - spot[1]) / CARRY.scale + CARRY.bounds[1])
    assert panel.shape.contains(Point(back))
    assert clear_spot(panel, CARRY, 8.0, []) == CARRY.to(panel.label)


def test_a_legend_takes_as_many_lines_as_its_words_need() -> None:
    register()
    shapes = (("dot", "mark at one place"), ("line", "mark with a length"), ("patch", "mark with an area"))
    one = legend_height(Legend(shapes=shapes), 480)
    assert legend_height(Legend(shapes=shapes), 150) == 3 * one


def test_a_mark_whose_edges_the_drawing_does_not_have_is_listed_and_says_so(whole: Whole) -> None:
    marks = tuple(replace(m, edge_a="upper", edge_b="lower") if m.shape == "line" else m for m in whole.picture.marks)
    content = whole.content(replace(whole.picture, marks=marks))
    assert not [m for m in plans(content)[0].before.marks if m.kind == "line"]
    assert "(not on this drawing)" in pdf_text(document_pdf(content).pdf)


def test_a_number_over_a_hatch_stands_on_plain_paper() -> None:
    ground, ink = plate_of(Fill(0.6, "falling", ("3",)))
    assert luminance(tuple(round(v * 255) for v in ground.rgb())) > 0.95
    assert luminance(tuple(round(v * 255) for v in ink.rgb())) < 0.05
    assert plate_of(Fill(0.6, "", ("3",)))[0].rgb() == pytest.approx(paper_rgb(0.6))


def test_the_number_of_a_place_stands_on_the_inner_side_of_its_dot() -> None:
    for x, y in ((2.0, 2.0), (58.0, 2.0), (2.0, 78.0), (58.0, 78.0)):
        right, (at_x, foot) = number_spot(x, y, 30.0, 40.0)
        assert right == (x > 30)
        assert 2.0 < at_x < 58.0
        assert foot + SIZE * 0.7 < y if y > 40 else foot > y
