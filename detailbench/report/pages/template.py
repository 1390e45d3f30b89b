"""A paper template to measure by: one page a car with every panel's places as numbered dots, then their two distances.

It holds nothing of the owner and no reading: it is taken to the car with the gauge, and thrown away after.
"""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from reportlab.pdfgen.canvas import Canvas

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition, from_edges, to_edges
from detailbench.body.names import panel_name
from detailbench.body.outlines import load_outline
from detailbench.body.panels import Outline
from detailbench.body.places import places_count, propose_places, walk_sort
from detailbench.findings.panels import READABLE
from detailbench.findings.walking import panel_places, panels_in_order
from detailbench.record.picture import JobPicture
from detailbench.report.content.wording import short_edge
from detailbench.report.pages.letters import BOLD, REGULAR, draw, register, width
from detailbench.report.pages.look import BOTTOM, GREY, HAIR, INK, LEFT, MM, PAPER, RIGHT, Paper, paper
from detailbench.report.pages.paths import Carry, fit, path_on

HEAD = 24 * MM
LINE = 8.6
COLUMNS = 3
GAP = 5 * MM


@dataclass(frozen=True)
class TemplatePlace:
    """Where to put the probe: the panel, the place's number on it, and its two distances."""

    panel: str
    number: int
    at: EdgePosition


def template_places(picture: JobPicture, order: Sequence[str] = ()) -> tuple[TemplatePlace, ...]:
    """Every place of every panel a gauge can read, in walking order: those the job has, else those proposed.
    ``order``: the panels in the order of the walk; the shop's own where it is empty."""
    outline = load_outline(picture.car.style, picture.car.length_mm)
    out = []
    for key in order or panels_in_order(picture):
        panel = outline.panels[key]
        if panel.substrate not in READABLE:
            continue
        kept = panel_places(picture, key)
        places = [
            (
                p.number,
                EdgePosition(p.edge_a, p.edge_a_mm, p.edge_b, p.edge_b_mm, p.panel_w_mm, p.panel_h_mm),
            )
            for p in kept
        ]
        if not places:
            points = walk_sort(propose_places(panel, places_count(panel)))
            places = [(n, to_edges(panel, x, y)) for n, (x, y) in enumerate(points, 1)]
        out += [TemplatePlace(key, n, at) for n, at in places]
    return tuple(out)


def template_pdf(picture: JobPicture, *, page_size: str = "A4", order: Sequence[str] = ()) -> bytes:
    """The template of a job's car: the drawing with its dots, then a list to write on. The same car gives the same
    bytes. Raises BadInput for a paper there is none of, or a car with no panel a gauge can read."""
    places = template_places(picture, order)
    if not places:
        raise BadInput(_("No panel of this car can be read by a gauge: there is nothing to measure by."))
    page = paper(page_size)
    register()
    outline = load_outline(picture.car.style, picture.car.length_mm)
    buffer = io.BytesIO()
    canvas = Canvas(buffer, pagesize=(page.width, page.height), invariant=1)
    canvas.setTitle(_("Template to measure by"))
    _drawn(canvas, page, outline, places, picture)
    _listed(canvas, page, places, picture)
    canvas.save()
    return buffer.getvalue()


def _head(canvas: Any, page: Paper, picture: JobPicture) -> None:
    canvas.setFillColor(INK)
    y = page.height - 15 * MM
    draw(canvas, LEFT, y, _("Template to measure by"), BOLD, 11)
    canvas.setFillColor(GREY)
    draw(canvas, page.width - RIGHT, y, _("job {number}").format(number=picture.job.number), REGULAR, 8, "right")
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.4)
    canvas.line(LEFT, y - 5, page.width - RIGHT, y - 5)


def _drawn(canvas: Any, page: Paper, outline: Outline, places: Sequence[TemplatePlace], picture: JobPicture) -> None:
    """The whole car, as large as the page allows."""
    _head(canvas, page, picture)
    room, high = page.room, page.height - HEAD - BOTTOM - 12
    scale = fit(outline.bounds, room, high)
    wide = (outline.bounds[2] - outline.bounds[0]) * scale
    carry = Carry(outline.bounds, scale, LEFT + (room - wide) / 2, page.height - HEAD)
    canvas.setLineJoin(1)
    canvas.setFillColor(PAPER)
    canvas.setStrokeColor(GREY)
    canvas.setLineWidth(0.45)
    for panel in outline.panels.values():
        canvas.drawPath(path_on(canvas, panel.path, carry), stroke=1, fill=1, fillMode=0)
    canvas.setFillColor(INK)
    for place in places:
        x, y, _moved = from_edges(outline.panels[place.panel], place.at)
        px, py = carry.to((x, y))
        canvas.circle(px, py, 0.9, stroke=0, fill=1)
        draw(canvas, px + 1.7, py + 0.9, format_number(place.number, 0), REGULAR, 5.2)
    canvas.setFillColor(GREY)
    says = _(
        "Every dot is a place. The next page has its two distances, in mm straight from the edge named; where drawing "
        "and distance disagree, the distance counts."
    )
    draw(canvas, LEFT, BOTTOM - 2, says, REGULAR, 7)
    canvas.showPage()


def _listed(canvas: Any, page: Paper, places: Sequence[TemplatePlace], picture: JobPicture) -> None:
    """Panel by panel, in walking order, a line a place with room to write a value."""
    by_panel: dict[str, list[TemplatePlace]] = {}
    for place in places:
        by_panel.setdefault(place.panel, []).append(place)
    column_wide = (page.room - GAP * (COLUMNS - 1)) / COLUMNS
    top, column, y = page.height - HEAD, 0, page.height - HEAD
    _head(canvas, page, picture)
    for key, own in by_panel.items():
        if y - LINE * (len(own) + 2) < BOTTOM and y < top:
            column, y = column + 1, top
        if column == COLUMNS:
            canvas.showPage()
            _head(canvas, page, picture)
            column, y = 0, top
        left = LEFT + column * (column_wide + GAP)
        canvas.setFillColor(INK)
        draw(canvas, left, y - LINE, panel_name(key), BOLD, 7.6)
        y -= LINE * 1.3
        for place in own:
            y -= LINE
            _line(canvas, place, left, y, column_wide)
        y -= LINE * 0.7
    canvas.showPage()


def _line(canvas: Any, place: TemplatePlace, left: float, y: float, wide: float) -> None:
    canvas.setFillColor(INK)
    draw(canvas, left + 8, y, format_number(place.number, 0), REGULAR, 6.6, "right")
    at = place.at
    words = _("{a} mm {edge_a}, {b} mm {edge_b}").format(
        a=format_number(at.a_mm, 0),
        edge_a=short_edge(at.edge_a),
        b=format_number(at.b_mm, 0),
        edge_b=short_edge(at.edge_b),
    )
    draw(canvas, left + 12, y, words, REGULAR, 6.6)
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.4)
    canvas.line(left + 16 + width(words, REGULAR, 6.6), y - 1, left + wide, y - 1)
