"""Places and changes panel by panel as vectors: every sign at its value, nothing for what was not measured."""

from __future__ import annotations

import io
from collections.abc import Callable, Iterator
from dataclasses import replace

import pytest
from invented_shop import InventedShop
from reading_reports import said_in
from reportlab.pdfgen.canvas import Canvas
from whole_job import Whole

from detailbench.basics.numbers import show_thickness_in
from detailbench.body.names import panel_name
from detailbench.moves import readings
from detailbench.record.picture import JobPicture
from detailbench.report import DocumentContent, document_pdf
from detailbench.report.content.blocks import ValueMark, ValueRow, ValueRows
from detailbench.report.content.parts import Figure, Worked, plain
from detailbench.report.content.wording import opening
from detailbench.report.pages.letters import REGULAR, register, width
from detailbench.report.pages.look import PAPER, paper
from detailbench.report.pages.value_rows import NAME, SIZE, ValueRowsDrawn, name_lines

ReportOf = Callable[[str], DocumentContent]
NEAR_PT = 0.5
W = Worked("W1", ("mean_um",))


@pytest.fixture
def in_mil() -> Iterator[None]:
    show_thickness_in("mil")
    yield
    show_thickness_in("um")


class Watched(Canvas):  # type: ignore[misc]
    """A canvas that tells which circles (filled or not), words, lines and boxes were drawn, in points."""

    def __init__(self) -> None:
        super().__init__(io.BytesIO())
        self.circles: list[tuple[float, float, bool]] = []
        self.words: list[tuple[float, str]] = []
        self.lines: list[tuple[float, float, float, float]] = []
        self.boxes: list[tuple[float, float]] = []

    def circle(self, x_cen: float, y_cen: float, r: float, stroke: int = 1, fill: int = 0) -> None:
        self.circles.append((x_cen, y_cen, self._fillColorObj.rgb() != PAPER.rgb()))
        super().circle(x_cen, y_cen, r, stroke=stroke, fill=fill)

    def drawString(self, x: float, y: float, text: str, *args: object, **kwargs: object) -> None:
        self.words.append((x + width(text, REGULAR, 6.8) / 2, text))
        super().drawString(x, y, text, *args, **kwargs)

    def line(self, x1: float, y1: float, x2: float, y2: float) -> None:
        self.lines.append((x1, y1, x2, y2))
        super().line(x1, y1, x2, y2)

    def rect(self, x: float, y: float, wide: float, high: float, *args: object, **kwargs: object) -> None:
        self.boxes.append((x, x + wide))
        super().rect(x, y, wide, high, *args, **kwargs)


def drawn(block: ValueRows, size: str = "A4") -> Watched:
    register()
    flowable, canvas = ValueRowsDrawn(block), Watched()
    flowable.wrap(paper(size).room, 10_000)
    flowable.canv = canvas
    flowable.draw()
    return canvas


def ruler(canvas: Watched, per_um: float = 1.0) -> Callable[[float], float]:
    """Where a value lies by the numbers printed under the axis: the outermost two of them."""
    marks = {w: x for x, w in canvas.words if w.replace(".", "", 1).isdigit()}
    low, high = min(marks, key=float), max(marks, key=float)
    each = (marks[high] - marks[low]) / (float(high) - float(low))
    return lambda um: marks[low] + each * (um * per_um - float(low))


def pictures(content: DocumentContent) -> dict[str, ValueRows]:
    """What is drawn, by the heading above it."""
    blocks = next(s for s in content.sections if s.title == "Thickness").blocks
    return {
        plain(blocks[i - 1].text): b  # type: ignore[union-attr]
        for i, b in enumerate(blocks)
        if isinstance(b, ValueRows)
    }


def places(content: DocumentContent) -> ValueRows:
    return pictures(content)["Places, panel by panel"]


def names(block: ValueRows) -> list[str]:
    return [plain(row.name) for row in block.rows]


def row_of(block: ValueRows, key: str) -> ValueRow:
    return next(r for r in block.rows if r.name == opening(panel_name(key)))


def values(row: ValueRow, *kinds: str) -> list[float]:
    return [float(f.value) for m in row.marks if m.kind in kinds for f in m.at]


def read_on(picture: JobPicture, panel: str, work: str = "as_found") -> list[float]:
    own = {p.id for p in picture.places if p.panel == panel}
    return [r.value_um for r in picture.readings if r.place_id in own and r.work == work and r.value_um is not None]


@pytest.mark.parametrize("size", ["A4", "Letter"])
def test_every_place_lies_at_its_value_under_the_numbers_of_the_axis(content: DocumentContent, size: str) -> None:
    block = places(content)
    canvas = drawn(block, size)
    x = ruler(canvas)
    told = [v for row in block.rows for v in values(row, "dot", "open")]
    assert len(canvas.circles) == len(told) + 1  # and the one of the key
    for value, (at, _y, _filled) in zip(told, canvas.circles, strict=False):
        assert at == pytest.approx(x(value), abs=NEAR_PT)


def test_the_door_of_241_is_there_as_its_total_and_no_clear_coat_is(whole: Whole, content: DocumentContent) -> None:
    row = row_of(places(content), "door_front_l")
    assert sorted(values(row, "dot")) == sorted(read_on(whole.picture, "door_front_l"))
    assert values(row, "mean") == pytest.approx([241.0], abs=1.0)
    assert "clear" not in said_in(places(content)).lower()
    layered = tuple(replace(r, clear_um=42.0) if r.value_um else r for r in whole.picture.readings)
    assert 42.0 not in values(row_of(places(whole.content(replace(whole.picture, readings=layered))), "bonnet"), "dot")


def test_mean_interval_and_family_are_those_the_readings_print(content: DocumentContent) -> None:
    block = places(content)
    canvas = drawn(block)
    x = ruler(canvas)
    row = row_of(block, "roof")
    (mean,), (low, high), (middle, scatter) = (values(row, k) for k in ("mean", "interval", "band"))
    assert any(x1 == x2 == pytest.approx(x(mean), abs=NEAR_PT) for x1, _y, x2, _y2 in canvas.lines)
    assert any(
        (x1, x2) == (pytest.approx(x(low), abs=NEAR_PT), pytest.approx(x(high), abs=NEAR_PT))
        for x1, _y, x2, _y2 in canvas.lines
    )
    band = pytest.approx(x(middle - scatter), abs=NEAR_PT), pytest.approx(x(middle + scatter), abs=NEAR_PT)
    assert band in canvas.boxes
    assert all(f.shown in said_in(content) for m in row.marks if m.kind in ("mean", "interval") for f in m.at)


def test_what_was_not_measured_or_gave_no_value_has_no_row_and_twins_stand_together(content: DocumentContent) -> None:
    told = names(places(content))
    assert "Rear bumper" not in told  # read, but no value
    assert "Front bumper" not in told
    assert told.index("Right front door") == told.index("Left front door") + 1
    twins = [plain(r.name) for r in places(content).rows if r.joins]
    assert "Right front door" in twins
    assert "Roof" not in twins
    assert [values(row_of(places(content), k), "band") for k in ("bonnet",)] == [[]]  # one panel of its metal


def test_a_place_a_person_chose_is_open_and_enters_no_mean(whole: Whole) -> None:
    roof = [p for p in whole.picture.places if p.panel == "roof"]
    places_ = tuple(replace(p, origin="chosen") if p.id == roof[0].id else p for p in whole.picture.places)
    block = places(whole.content(replace(whole.picture, places=places_)))
    row = row_of(block, "roof")
    assert len(values(row, "open")) == 1
    assert [c[2] for c in drawn(block).circles].count(False) == 2  # the place, and the one of the key
    assert len(values(row, "dot")) == len(roof) - 1
    assert sum(values(row, "dot")) / (len(roof) - 1) == pytest.approx(values(row, "mean")[0])


def test_of_a_car_in_two_groups_no_paint_is_called_its_own(whole: Whole) -> None:
    more = ("wing_front_l", "door_rear_l", "quarter_rear_l", "sill_l", "roof", "tailgate", "fuel_flap")
    own = {p.id for p in whole.picture.places if p.panel in more}
    thick = tuple(
        replace(r, value_um=r.value_um + 90.0) if r.value_um is not None and r.place_id in own else r
        for r in whole.picture.readings
    )
    block = places(whole.content(replace(whole.picture, readings=thick)))
    assert len(block.rows) > 10
    assert [m for row in block.rows for m in row.marks if m.kind == "band"] == []
    assert "band" not in dict(block.key)


def test_a_change_not_told_from_zero_is_a_hollow_point_and_says_less_than(whole: Whole) -> None:
    before = {p.id: r for r in whole.picture.readings if r.work == "as_found" for p in whole.picture.places
              if p.id == r.place_id and p.panel == "roof"}  # fmt: skip
    after = tuple(
        replace(r, value_um=before[r.place_id].value_um) if r.work == "polished" and r.place_id in before else r
        for r in whole.picture.readings
    )
    block = pictures(whole.content(replace(whole.picture, readings=after)))["What came off"]
    row = row_of(block, "roof")
    assert values(row, "point") == []
    assert len(values(row, "hollow")) == 1
    assert plain(row.beside).startswith("less than ")
    assert "hollow" in dict(block.key)
    assert drawn(block).circles[block.rows.index(row)][2] is False


def test_what_came_off_is_a_point_with_its_interval_from_zero(content: DocumentContent) -> None:
    block = pictures(content)["What came off"]
    assert set(names(block)) == {
        "Bonnet", "Left front wing", "Right front wing", "Right front door", "Roof"
    }  # fmt: skip
    canvas = drawn(block)
    x = ruler(canvas)
    for row, (at, y, _filled) in zip(block.rows, canvas.circles, strict=False):
        (point,), (low, high) = values(row, "point", "hollow"), values(row, "interval")
        assert at == pytest.approx(x(point), abs=NEAR_PT)
        ends = next((a, b) for a, y1, b, y2 in canvas.lines if y1 == y2 == y)
        assert ends == (pytest.approx(x(low), abs=NEAR_PT), pytest.approx(x(high), abs=NEAR_PT))
    tallest = max((line for line in canvas.lines if line[0] == line[2]), key=lambda line: abs(line[1] - line[3]))
    assert tallest[0] == pytest.approx(x(0.0), abs=NEAR_PT)  # through the axis; the other marks end on it


def test_what_is_not_comparable_or_not_printed_is_not_drawn(whole: Whole) -> None:
    covered = tuple(replace(r, cover="protected") if r.work == "polished" else r for r in whole.picture.readings)
    cold = tuple(replace(s, temperature_c=None) for s in whole.picture.sessions)
    for picture in (replace(whole.picture, readings=covered), replace(whole.picture, sessions=cold)):
        assert list(pictures(whole.content(picture))) == ["Places, panel by panel"]


def test_a_car_with_one_panel_read_before_only_has_its_places_and_no_change(
    invented: InventedShop, report_of: ReportOf
) -> None:
    job = invented.job()
    invented.measured(job, values=(118.0, 119.0, 117.0, 118.0, 120.0))
    content = report_of(job)
    assert list(pictures(content)) == ["Places, panel by panel"]
    (row,) = places(content).rows
    assert values(row, "dot") == [118.0, 119.0, 117.0, 118.0, 120.0]
    assert values(row, "band") == []
    x = ruler(canvas := drawn(places(content)))
    assert [c[0] for c in canvas.circles[:5]] == [pytest.approx(x(v), abs=NEAR_PT) for v in values(row, "dot")]
    assert document_pdf(content).pages > 1


def test_a_single_reading_is_a_dot_without_an_interval(invented: InventedShop, report_of: ReportOf) -> None:
    job = invented.job()
    invented.measured(job, values=(118.0,))
    (row,) = places(report_of(job)).rows
    assert [m.kind for m in row.marks] == ["dot", "mean"]
    assert plain(row.beside) == "118.0"


def test_a_place_set_aside_is_a_cross_at_its_value(invented: InventedShop, report_of: ReportOf) -> None:
    job = invented.job()
    invented.measured(job, values=(118.0, 119.0, 117.0, 118.0, 190.0))
    place = invented.bench.job(job).readings[-1].place_id
    invented.bench.do(readings.DecidePlace(job, place, "as_found", "set_aside", "a sticker's edge"))
    content = report_of(job)
    (row,) = places(content).rows
    assert (values(row, "cross"), values(row, "dot")) == ([190.0], [118.0, 119.0, 117.0, 118.0])
    canvas = drawn(places(content))
    at = ruler(canvas)(190.0)
    assert any(
        (x1 + x2) / 2 == pytest.approx(at, abs=NEAR_PT) and x1 < x2 and y1 < y2 for x1, y1, x2, y2 in canvas.lines
    )


def test_a_car_of_which_nothing_gave_a_value_has_no_picture(invented: InventedShop, report_of: ReportOf) -> None:
    job = invented.job()
    invented.measured(job, values=())
    invented.bench.do(readings.RecordReading(job, "bonnet", no_value="nothing"))
    assert pictures(report_of(job)) == {}


def test_in_mil_the_axis_is_in_mil_and_the_places_lie_right(in_mil: None, whole: Whole) -> None:
    block = places(whole.content())
    assert plain(block.axis).endswith("mil")
    canvas = drawn(block)
    x = ruler(canvas, per_um=1 / 25.4)
    told = [v for row in block.rows for v in values(row, "dot", "open")]
    for value, (at, _y, _filled) in zip(told, canvas.circles, strict=False):
        assert at == pytest.approx(x(value), abs=NEAR_PT)
    assert "µm" not in said_in(block)


def mark(kind: str, *values_um: float) -> ValueMark:
    return ValueMark(kind, tuple(Figure(f"{v:.0f}", v, W) for v in values_um))  # type: ignore[arg-type]


def rows_of(*rows: ValueRow) -> ValueRows:
    return ValueRows(rows, ("axis",), ("head",), (), 4.0, 200.0)


def test_filler_far_beyond_the_rest_becomes_an_arrow_and_does_not_press_the_others_together() -> None:
    plain_row = ValueRow(("Bonnet",), (mark("dot", 100.0), mark("dot", 104.0), mark("dot", 120.0)), ("mean",))
    filled = ValueRow(("Left front wing",), (mark("dot", 900.0),), ("mean",))
    canvas = drawn(rows_of(plain_row, filled))
    x = ruler(canvas)
    assert len(canvas.circles) == 3
    assert x(120.0) - x(100.0) > 100
    assert "beyond the axis" in [w for _x, w in canvas.words]


def test_a_long_name_takes_a_second_line_and_is_cut_only_there() -> None:
    register()
    long = "the left rear quarter with a name that no language should have for it"
    lines = name_lines(long)
    assert len(lines) == 2
    assert lines[1].endswith("…")
    assert long.startswith(lines[0])
    assert all(width(line, REGULAR, SIZE) <= NAME for line in lines)
    assert name_lines("Bonnet") == ("Bonnet",)
    assert all(width(line, REGULAR, SIZE) <= NAME for line in name_lines("x" * 200))
    one = ValueRowsDrawn(rows_of(ValueRow(("Bonnet",), (mark("dot", 100.0),), ("100",))))
    two = ValueRowsDrawn(rows_of(ValueRow((long,), (mark("dot", 100.0),), ("100",))))
    assert two.wrap(400, 1000)[1] > one.wrap(400, 1000)[1]
