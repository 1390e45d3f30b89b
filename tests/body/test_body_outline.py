"""The outline as everyone else sees it: one drawing from which path, polygon, area, edges and hit test come."""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
import pytest

from detailbench.basics.errors import BadFile, BadInput
from detailbench.basics.shelf import resource
from detailbench.body.edges import to_edges
from detailbench.body.outlines import load_outline, outline_from, styles
from detailbench.body.panels import PANEL_KEYS, twin_key
from detailbench.body.paths import flatten, path_text, read_path, signed_area
from detailbench.body.where import on_panel, panel_at


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of the estate, to be damaged."""
    file = tmp_path / "estate.svg"
    file.write_text(resource("outlines", "estate.svg").read_text("utf-8"), "utf-8")
    return file


def test_every_style_has_every_panel() -> None:
    assert styles()
    for style in styles():
        assert set(load_outline(style).panels) == set(PANEL_KEYS)


def test_the_folder_of_drawings_is_looked_through_once(monkeypatch: pytest.MonkeyPatch) -> None:
    load_outline("estate")
    monkeypatch.delattr(Path, "glob")
    assert "estate" in styles()
    assert load_outline("estate").panels


def test_an_outline_is_read_once() -> None:
    assert load_outline("estate") is load_outline("estate")


def test_an_unknown_style_is_refused_with_the_styles_there_are() -> None:
    with pytest.raises(BadInput, match="estate"):
        load_outline("hovercraft")


def test_twins_swap_their_ending_and_single_parts_have_none() -> None:
    panels = load_outline("estate").panels
    for key, panel in panels.items():
        if panel.twin:
            assert panels[panel.twin].twin == key
            assert {key[-1], panel.twin[-1]} == {"l", "r"}
    assert [k for k in panels if twin_key(k) is None] == [
        "bumper_front", "bonnet", "roof", "tailgate", "bumper_rear", "fuel_flap"
    ]  # fmt: skip


def test_left_is_the_drivers_left() -> None:
    panels = load_outline("estate").panels
    assert all((p.bounds[2] < 0) == k.endswith("_l") for k, p in panels.items() if p.twin)


def test_the_polygon_stays_within_half_a_millimetre_of_the_path() -> None:
    import shapely

    for panel in load_outline("estate").panels.values():
        fine = flatten(panel.path, 0.001)[0]
        off = shapely.distance(shapely.LinearRing(panel.polygon), shapely.points(fine)).max()
        assert off <= 0.5, panel.key


def test_area_is_the_drawn_area_times_the_curvature_factor() -> None:
    for panel in load_outline("estate").panels.values():
        drawn_mm2 = abs(signed_area(panel.polygon)) - sum(abs(signed_area(h)) for h in panel.holes)
        assert panel.area_m2 == pytest.approx(drawn_mm2 * panel.curvature / 1e6)
        assert 0 < panel.area_share < 0.3


def test_moving_one_point_in_the_drawing_changes_area_edges_hit_test_and_path_together(copy: Path) -> None:
    before = outline_from(copy).panels["door_front_r"]
    text = copy.read_text("utf-8")
    start = re.search(r'id="door_front_r".*?\bd="M([\d.]+),([\d.]+) C', text, re.S)
    assert start
    x, y = float(start[1]), float(start[2])
    moved = text[: start.start(2)] + f"{y - 60:.1f}" + text[start.end(2) :]  # the point itself …
    end = moved.rfind(f"{x:g},{y:g}", 0, moved.index('id="door_rear_r"'))  # … and where the ring comes back to it
    copy.write_text(moved[:end] + moved[end:].replace(f"{x:g},{y:g}", f"{x:g},{y - 60:g}", 1), "utf-8")

    outline = outline_from(copy)
    after = outline.panels["door_front_r"]
    assert after.area_m2 > before.area_m2
    assert path_text(after.path) != path_text(before.path)
    assert after.path[0].points[0] == (x, y - 60)
    assert not np.array_equal(after.polygon, before.polygon)
    middle = (1500.0, 700.0)
    assert to_edges(after, *middle).panel_h_mm > to_edges(before, *middle).panel_h_mm
    assert to_edges(after, *middle).a_mm > to_edges(before, *middle).a_mm
    assert "door_front_r" in panel_at(outline, x, y - 30)
    assert "door_front_r" not in panel_at(load_outline("estate"), x, y - 30)


def test_a_stated_length_stretches_along_the_car_only_and_keeps_wheels_round() -> None:
    drawn, longer = load_outline("estate"), load_outline("estate", 4900)
    factor = 4900 / drawn.length_mm
    assert longer.length_mm == 4900
    for key in ("bonnet", "roof", "door_front_l", "sill_r"):
        assert longer.panels[key].width_mm == pytest.approx(drawn.panels[key].width_mm)
        assert longer.panels[key].height_mm == pytest.approx(drawn.panels[key].height_mm * factor)
    assert longer.panels["bumper_front"].height_mm == pytest.approx(drawn.panels["bumper_front"].height_mm)
    for a, b in zip(drawn.context, longer.context, strict=True):
        if a.kind == "tyre" and a.name.startswith("tyre_"):
            size_a, size_b = (np.ptp(flatten(c.path)[0], axis=0) for c in (a, b))
            assert size_b == pytest.approx(size_a)
            assert np.mean(flatten(b.path)[0][:, 1]) == pytest.approx(np.mean(flatten(a.path)[0][:, 1]) * factor, abs=1)


def test_a_length_far_from_the_drawing_is_refused() -> None:
    with pytest.raises(BadInput, match="stretched"):
        load_outline("estate", 3000)


@pytest.mark.parametrize("length_mm", [None, 4550.0, 5000.0])
def test_the_bumper_side_in_the_flank_is_the_end_of_the_bumper(length_mm: float | None) -> None:
    """The wheel arch is the same cut on both drawings, so its points carried over lie on the bumper's own edge."""
    import shapely

    outline = load_outline("estate", length_mm)
    for shape, polygon in outline.continuation_shapes:
        assert shape.panel
        bumper = outline.panels[shape.panel]
        arch_y = 0.0 if shape.panel == "bumper_front" else outline.wheelbase_mm
        ring = np.array(polygon.exterior.coords)
        near = ring[np.argsort(np.abs(ring[:, 1] - arch_y))[:12]]
        carried = np.array([on_panel(outline, bumper.key, x, y) for x, y in near])
        assert shapely.distance(bumper.shape.boundary, shapely.points(carried)).max() < 14
        middle = polygon.representative_point()
        assert panel_at(outline, middle.x, middle.y)[0] == bumper.key
        assert bumper.shape.contains(shapely.Point(on_panel(outline, bumper.key, middle.x, middle.y)))


def test_handles_belong_to_the_small_panels() -> None:
    panels = load_outline("estate").panels
    assert {k for k, p in panels.items() if p.handle} >= {
        "sill_l", "pillar_a_r", "pillar_b_l", "pillar_c_r", "pillar_d_l", "roof_rail_r", "mirror_cap_l", "fuel_flap"
    }  # fmt: skip
    for panel in panels.values():
        assert panel.handle or min(panel.width_mm, panel.height_mm) >= 300, panel.key


@pytest.mark.parametrize("length_mm", [3800, 4750, 5700])
def test_handles_stay_apart_from_each_other_and_off_the_panels_at_any_length(length_mm: float) -> None:
    from shapely.geometry import box

    panels = load_outline("estate", length_mm).panels
    boxes = {k: box(*p.handle.bounds) for k, p in panels.items() if p.handle}
    for key, square in boxes.items():
        assert not [k for k, other in boxes.items() if k != key and other.intersects(square)], key
        assert not [k for k, p in panels.items() if p.shape.intersects(square)], key


def test_words_stand_inside_their_panel() -> None:
    from shapely.geometry import Point

    for panel in load_outline("estate").panels.values():
        assert panel.shape.contains(Point(panel.label)), panel.key


def test_holes_stay_open_under_both_fill_rules() -> None:
    panels = load_outline("estate").panels
    assert [k for k, p in panels.items() if p.holes] == ["bumper_front", "tailgate", "quarter_rear_r"]
    for panel in panels.values():
        assert all(signed_area(h) * signed_area(panel.polygon) < 0 for h in panel.holes)


@pytest.mark.parametrize(
    ("find", "put", "says"),
    [
        ("<svg ", "<svg <", "not a readable SVG"),
        ('<path id="roof"', '<path transform="scale(2)" id="roof"', "roof.*move the points themselves"),
        ('<g id="handles">', '<g id="grips">', "handles.*missing"),
        ('data-lie="horizontal"', 'data-lie="sideways"', "bonnet.*data-lie is “sideways”"),
        ('data-gap-mm="12"', 'data-gap-mm="wide"', "svg.*data-gap-mm"),
        ('<path id="roof"', '<path id="rooof"', "rooof.*is not the key of a panel"),
        ('<path id="tailgate"', '<path id="roof"', "roof.*stands twice"),
        ("front:up rear:down left:left", "front:up rear:up left:left", "bonnet.*one edge for each side"),
        ("front:up rear:down left:left", "nose:up rear:down left:left", "bonnet.*nose:up"),
        ('class="glass" id="windscreen"', 'class="mirror" id="windscreen"', "windscreen.*class is “mirror”"),
    ],
)
def test_a_drawing_that_cannot_be_read_names_file_and_element(copy: Path, find: str, put: str, says: str) -> None:
    text = copy.read_text("utf-8")
    assert find in text
    copy.write_text(text.replace(find, put, 1), "utf-8")
    with pytest.raises(BadFile, match=f"(?s)estate.svg.*{says}"):
        outline_from(copy)


def test_a_missing_file_is_said_in_one_sentence(tmp_path: Path) -> None:
    with pytest.raises(BadFile, match=r"nothing\.svg"):
        outline_from(tmp_path / "nothing.svg")


@pytest.mark.parametrize("d", ["", "M 0,0 L nonsense", "hello", "M 0,0 L 1e999,0 Z"])
def test_what_is_no_path_is_refused(d: str) -> None:
    with pytest.raises(ValueError, match="not path data"):
        read_path(d)


def test_relative_quadratic_and_arc_steps_become_absolute_lines_and_cubics() -> None:
    path = read_path("m 10,10 h 20 q 10,0 10,10 a 10,10 0 0 1 -10,10 z")
    assert {s.kind for s in path} == {"M", "L", "C", "Z"}
    ring = flatten(path, 0.01)[0]
    # own arithmetic: the quarter circle round (30, 20) ends at x 40 and y 30
    assert ring[:, 0].max() == pytest.approx(40, abs=0.02)
    assert ring[:, 1].max() == pytest.approx(30, abs=0.02)
