"""The plan view on paper: the car's own outline as vectors, panels filled, marks at their true place."""

from __future__ import annotations

from typing import Any

from reportlab.lib.colors import Color, HexColor
from reportlab.platypus import Flowable

from detailbench.basics.ramp import ink_on
from detailbench.body.edges import inside
from detailbench.body.outlines import load_outline
from detailbench.body.panels import ContextShape, Outline, Panel
from detailbench.body.paths import Point
from detailbench.report.content.blocks import Drawn, Fill, Legend, PlanPair, PlanView
from detailbench.report.content.parts import plain
from detailbench.report.pages.letters import BOLD, REGULAR, draw, fitted, width
from detailbench.report.pages.look import GREY, HAIR, INK, MM, PAPER, paper_rgb
from detailbench.report.pages.paths import Carry, box_of, fit, hatch, path_on, polygon_on

BARE = HexColor("#fbfcfc")
LINE = HexColor("#707b84")
FAINT = HexColor("#c9d0d5")
CONTEXT = {
    "glass": "#e9eef1", "lamp": "#f1f4f5", "light": "#ffffff", "tyre": "#d3d9dd", "rim": "#eef1f3", "arch": "#c4ccd1",
    "grille": "#d3d9dd", "trim": "#d3d9dd", "handle": "#e4e9ec", "plate": "#ffffff",
}  # fmt: skip
NUMBER = 6.2
GAP = 6 * MM


class PlanPairDrawing(Flowable):  # type: ignore[misc]
    """Two plan views side by side with one legend beneath."""

    def __init__(self, pair: PlanPair) -> None:
        super().__init__()
        self.pair = pair
        self.outline = load_outline(pair.style, pair.length_mm)

    def wrap(self, available: float, _height: float) -> tuple[float, float]:
        self.width = available
        each = (available - GAP) / 2
        self.scale = fit(self.outline.bounds, each, 150 * MM)
        bounds = self.outline.bounds
        self.drawn = (bounds[3] - bounds[1]) * self.scale
        self.legend = legend_height(self.pair.legend, available)
        self.height = 13 + self.drawn + 8 + self.legend
        return self.width, self.height

    def draw(self) -> None:
        each = (self.width - GAP) / 2
        for i, view in enumerate((self.pair.before, self.pair.after)):
            left = i * (each + GAP)
            self.canv.setFillColor(INK)
            draw(self.canv, left, self.height - 9, plain(view.title), BOLD, 8.4)
            car = (self.outline.bounds[2] - self.outline.bounds[0]) * self.scale
            carry = Carry(self.outline.bounds, self.scale, left + (each - car) / 2, self.height - 13)
            draw_plan(self.canv, self.outline, view, carry)
            if view.missing:
                _missing(self.canv, plain(view.missing), left + each / 2, self.height - 13 - self.drawn * 0.52, each)
        draw_legend(self.canv, self.pair.legend, 0, self.legend, self.width)


def draw_plan(canvas: Any, outline: Outline, view: PlanView, carry: Carry) -> None:
    """One plan view: what lies beneath, panels, what lies above, then marks, places and numbers."""
    canvas.saveState()
    canvas.setLineJoin(1)
    canvas.setLineCap(1)
    for shape in outline.context:
        if not shape.above:
            _context(canvas, shape, view, carry)
    for key, panel in outline.panels.items():
        _panel(canvas, panel, view.fills.get(key, Fill()), carry)
    for shape in outline.context:
        if shape.above:
            _context(canvas, shape, view, carry)
    for mark in view.marks:
        draw_mark(canvas, mark, carry)
    canvas.setFillColor(INK)
    for place in view.places:
        x, y = carry.to(place)
        canvas.setFillColor(PAPER)
        canvas.circle(x, y, 0.95, stroke=0, fill=1)
        canvas.setFillColor(INK)
        canvas.circle(x, y, 0.6, stroke=0, fill=1)
    busy = busy_points(view, carry)
    for key, panel in outline.panels.items():
        _number(canvas, panel, view.fills.get(key, Fill()), carry, busy)
    canvas.restoreState()


def _context(canvas: Any, shape: ContextShape, view: PlanView, carry: Carry) -> None:
    path = path_on(canvas, shape.path, carry)
    canvas.setStrokeColor(FAINT)
    canvas.setLineWidth(0.3)
    if shape.kind == "continuation" and shape.panel:
        fill = view.fills.get(shape.panel, Fill())
        canvas.setFillColor(_paler(fill))
        canvas.setDash(1.2, 0.9)
        canvas.drawPath(path, stroke=1, fill=1)
        canvas.setDash()
    elif shape.closed:
        canvas.setFillColor(HexColor(CONTEXT.get(shape.kind, "#f1f4f5")))
        canvas.drawPath(path, stroke=1, fill=1, fillMode=0)
    else:
        canvas.drawPath(path, stroke=1, fill=0)


def _colour(fill: Fill) -> Color:
    return BARE if fill.share is None else Color(*paper_rgb(fill.share))


def _paler(fill: Fill) -> Color:
    if fill.share is None:
        return PAPER
    r, g, b = paper_rgb(fill.share)
    return Color(*(1 - (1 - v) * 0.45 for v in (r, g, b)))


def _ink(fill: Fill) -> Color:
    if fill.share is None:
        return INK
    r, g, b = (round(v * 255) for v in paper_rgb(fill.share))
    return Color(*(v / 255 for v in ink_on((r, g, b))))


def _panel(canvas: Any, panel: Panel, fill: Fill, carry: Carry) -> None:
    canvas.setFillColor(_colour(fill))
    canvas.setStrokeColor(LINE)
    canvas.setLineWidth(0.45)
    canvas.drawPath(path_on(canvas, panel.path, carry), stroke=1, fill=1, fillMode=0)
    if fill.hatch:
        hatch(canvas, path_on(canvas, panel.path, carry), box_of(panel.bounds, carry), fill.hatch, _hatch_ink(fill))


def _hatch_ink(fill: Fill) -> Color:
    return GREY if fill.share is None else _ink(fill)


def busy_points(view: PlanView, carry: Carry) -> list[Point]:
    """Points on the page where a number would cover something: marks (lines all along) and places."""
    out = [carry.to(p) for p in view.places]
    for mark in view.marks:
        corners = [carry.to(p) for p in mark.points]
        if mark.kind == "line":
            (x0, y0), (x1, y1) = corners[0], corners[-1]
            out += [(x0 + (x1 - x0) * i / 12, y0 + (y1 - y0) * i / 12) for i in range(13)]
        elif mark.kind in ("patch", "zone"):
            out.append((sum(x for x, _y in corners) / len(corners), sum(y for _x, y in corners) / len(corners)))
        else:
            out += corners
    return out


def clear_spot(panel: Panel, carry: Carry, wide: float, busy: list[Point]) -> Point:
    """Where the number stands: the panel's own label place, or the nearest spot on it that covers nothing."""
    from_label = [(0.0, 0.0)] + [(dx * 9.0, dy * 9.0) for r in (1, 2, 3) for dx, dy in _round(r)]
    for dx, dy in from_label:
        x, y = panel.label[0] + dx / carry.scale, panel.label[1] + dy / carry.scale
        if (dx or dy) and not _on_panel(panel, x, y, (wide / 2 + 1) / carry.scale):
            continue
        at = carry.to((x, y))
        if all(abs(at[0] - bx) > wide / 2 + 1.6 or abs(at[1] - by) > 5.2 for bx, by in busy):
            return at
    return carry.to(panel.label)


def _round(ring: int) -> list[tuple[int, int]]:
    """Steps at this distance, straight ones first."""
    steps = [(x, y) for x in range(-ring, ring + 1) for y in range(-ring, ring + 1) if max(abs(x), abs(y)) == ring]
    return sorted(steps, key=lambda s: (abs(s[0]) + abs(s[1]), s))


def _on_panel(panel: Panel, x: float, y: float, half: float) -> bool:
    corners = [(x - half, y), (x + half, y), (x, y - half), (x, y + half)]
    return all(inside(panel, *c) == c for c in corners)


def plate_of(fill: Fill) -> tuple[Color, Color]:
    """What a number stands on, and its ink: the panel's own fill; over a hatch plain paper, to be read in grey too."""
    return (PAPER, INK) if fill.hatch else (_colour(fill), _ink(fill))


def _number(canvas: Any, panel: Panel, fill: Fill, carry: Carry, busy: list[Point]) -> None:
    words, under = plain(fill.text), plain(fill.beside)
    if not words:
        return
    rows = [words, under] if under and panel.handle is None else [f"{words} {under}".strip()]
    wide = max(width(row, BOLD, NUMBER) for row in rows) + 2.4
    if panel.handle is not None:
        canvas.setStrokeColor(FAINT)
        canvas.setLineWidth(0.35)
        canvas.drawPath(path_on(canvas, panel.handle.leader, carry), stroke=1, fill=0)
        x, y = carry.to((panel.handle.x, panel.handle.y))
    else:
        x, y = clear_spot(panel, carry, wide, busy)
    high = 7.8 * len(rows)
    ground, ink = plate_of(fill)
    canvas.setFillColor(ground)
    if panel.handle is not None:
        canvas.setStrokeColor(LINE)
        canvas.rect(x - wide / 2 - 0.6, y - 4.4, wide + 1.2, 8.8, stroke=1, fill=1)
    elif fill.hatch:
        canvas.rect(x - wide / 2, y + 3.9 - high, wide, high, stroke=0, fill=1)
    canvas.setFillColor(ink)
    for i, row in enumerate(rows):
        draw(canvas, x, y - NUMBER * 0.36 - 7.2 * i, row, BOLD, NUMBER, "middle")


def draw_mark(canvas: Any, mark: Drawn, carry: Carry) -> None:
    """A mark as what it is, dark with a thin light rim so that it stands out of any fill."""
    canvas.setStrokeColor(PAPER)
    if mark.kind == "dot":
        x, y = carry.to(mark.points[0])
        canvas.setFillColor(PAPER)
        canvas.circle(x, y, 1.7, stroke=0, fill=1)
        canvas.setFillColor(INK)
        canvas.circle(x, y, 0.85 + 0.45 * mark.weight, stroke=0, fill=1)
    elif mark.kind == "line":
        (x0, y0), (x1, y1) = carry.to(mark.points[0]), carry.to(mark.points[-1])
        canvas.setLineWidth(2.0)
        canvas.line(x0, y0, x1, y1)
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.55 + 0.6 * mark.weight)
        canvas.line(x0, y0, x1, y1)
    else:
        path = polygon_on(canvas, mark.points, carry)
        canvas.setFillColor(PAPER)
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.5)
        if mark.kind == "zone":
            canvas.drawPath(path, stroke=1, fill=1)
            xs, ys = zip(*(carry.to(p) for p in mark.points), strict=True)
            again = polygon_on(canvas, mark.points, carry)
            hatch(canvas, again, (min(xs), min(ys), max(xs), max(ys)), "falling", INK)
        else:
            canvas.setFillColor(INK)
            canvas.setStrokeColor(PAPER)
            canvas.drawPath(path, stroke=1, fill=1)


def _missing(canvas: Any, words: str, x: float, y: float, room: float) -> None:
    words = fitted(words, REGULAR, 8, room - 12)
    wide = width(words, REGULAR, 8) + 12
    canvas.setFillColor(PAPER)
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.4)
    canvas.rect(x - wide / 2, y - 8, wide, 17, stroke=1, fill=1)
    canvas.setFillColor(GREY)
    draw(canvas, x, y - 2.4, words, REGULAR, 8, "middle")


def _entries(legend: Legend) -> list[tuple[str, str, str]]:
    out = [("hatch", key, words) for key, words in legend.hatches]
    return out + [("shape", key, words) for key, words in legend.shapes]


def _note_lines(legend: Legend, room: float) -> list[str]:
    lines: list[str] = []
    for word in plain(legend.note).split():
        if lines and width(f"{lines[-1]} {word}", REGULAR, 7.2) <= room:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def _lines(legend: Legend, room: float) -> list[list[tuple[str, str, str, float]]]:
    """The entries line by line, each with where it begins; the ramp stands first on the first line."""
    x = _ramp_width(legend)
    lines: list[list[tuple[str, str, str, float]]] = [[]]
    for kind, key, words in _entries(legend):
        wide = 16 + width(words, REGULAR, 7.2)
        if x > 0 and x + wide > room:
            lines.append([])
            x = 0
        lines[-1].append((kind, key, words, x))
        x += wide + 12
    return lines if lines != [[]] or legend.low else []


def legend_height(legend: Legend, room: float) -> float:
    """Points the legend takes."""
    return 12.0 * len(_lines(legend, room)) + 9.6 * len(_note_lines(legend, room)) + (3 if legend.note else 0)


def draw_legend(canvas: Any, legend: Legend, left: float, top: float, room: float) -> None:
    """Ramp with its ends, hatches, shapes, then the note."""
    y = top - 8
    if plain(legend.low) or plain(legend.high):
        _ramp(canvas, legend, left, y)
    for line in _lines(legend, room):
        for kind, key, words, x in line:
            _sample(canvas, kind, key, left + x, y)
            canvas.setFillColor(GREY)
            draw(canvas, left + x + 16, y, words, REGULAR, 7.2)
        y -= 12
    canvas.setFillColor(GREY)
    for words in _note_lines(legend, room):
        draw(canvas, left, y, words, REGULAR, 7.2)
        y -= 9.6


STEPS, STEP = 24, 2.4


def _ramp_width(legend: Legend) -> float:
    low, high = plain(legend.low), plain(legend.high)
    if not (low or high):
        return 0.0
    return width(low, REGULAR, 7.2) + 4 + STEPS * STEP + 4 + width(high, REGULAR, 7.2) + 14


def _ramp(canvas: Any, legend: Legend, x: float, y: float) -> None:
    canvas.setFillColor(GREY)
    low, high = plain(legend.low), plain(legend.high)
    draw(canvas, x, y, low, REGULAR, 7.2)
    x += width(low, REGULAR, 7.2) + 4
    for i in range(STEPS):
        canvas.setFillColor(Color(*paper_rgb(i / (STEPS - 1))))
        canvas.rect(x + i * STEP, y - 1, STEP + 0.1, 7, stroke=0, fill=1)
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.3)
    canvas.rect(x, y - 1, STEPS * STEP, 7, stroke=1, fill=0)
    canvas.setFillColor(GREY)
    draw(canvas, x + STEPS * STEP + 4, y, high, REGULAR, 7.2)


def _sample(canvas: Any, kind: str, key: str, x: float, y: float) -> None:
    page = Carry((0, 0, 12, 7), 1.0, x, y + 6)
    if kind == "hatch":
        corners = ((0.0, 0.0), (12.0, 0.0), (12.0, 7.0), (0.0, 7.0))
        canvas.setStrokeColor(LINE)
        canvas.setFillColor(BARE)
        canvas.setLineWidth(0.35)
        canvas.drawPath(polygon_on(canvas, corners, page), stroke=1, fill=1)
        box = (x, y - 1, x + 12, y + 6)
        hatch(canvas, polygon_on(canvas, corners, page), box, key, GREY)  # type: ignore[arg-type]
    elif key == "place":
        canvas.setFillColor(INK)
        canvas.circle(x + 6, y + 2.5, 0.9, stroke=0, fill=1)
    elif key == "dot":
        draw_mark(canvas, Drawn("dot", ((6.0, 3.5),)), page)
    elif key == "line":
        draw_mark(canvas, Drawn("line", ((1.0, 5.0), (11.0, 2.0))), page)
    else:
        square = ((3.0, 0.5), (9.0, 0.5), (9.0, 6.5), (3.0, 6.5))
        draw_mark(canvas, Drawn("zone" if key == "zone" else "patch", square), page)
