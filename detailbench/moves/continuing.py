"""A known car comes in again: the places measured last time are its places again, so that like meets like."""

from __future__ import annotations

from detailbench.basics.errors import BadInput
from detailbench.body.edges import EdgePosition, from_edges
from detailbench.body.outlines import load_outline
from detailbench.body.panels import Panel
from detailbench.record.picture import JobPicture
from detailbench.record.things import Place
from detailbench.record.writing import Writer


def take_over_places(w: Writer, picture: JobPicture) -> int:
    """Every place of the panels that were measured in the last job of this car, at the same distances; where the
    drawing has another size since, moved in proportion. ``same_as`` names the place of then. Returns how many."""
    last = picture.last
    if last is None:
        return 0
    drawn = load_outline(picture.car.style, picture.car.length_mm).panels
    read = {r.place_id for r in last.readings}
    measured = {p.panel for p in last.places if p.id in read}
    count = 0
    for place in last.places:
        if place.panel not in measured or place.panel not in drawn:
            continue
        at = _now(drawn[place.panel], place)
        if at is not None:
            w.add(
                Place,
                job_id=picture.job.id,
                panel=place.panel,
                number=place.number,
                edge_a=at.edge_a,
                edge_a_mm=at.a_mm,
                edge_b=at.edge_b,
                edge_b_mm=at.b_mm,
                panel_w_mm=at.panel_w_mm,
                panel_h_mm=at.panel_h_mm,
                origin=place.origin,
                same_as=place.id,
                surface=place.surface,
            )
            count += 1
    return count


def _now(panel: Panel, place: Place) -> EdgePosition | None:
    """The place on the panel as it is drawn now, from the same edges; None where the panel has no such edges."""
    then = EdgePosition(
        place.edge_a, place.edge_a_mm, place.edge_b, place.edge_b_mm, place.panel_w_mm, place.panel_h_mm
    )
    try:
        x, y, moved = from_edges(panel, then)
    except BadInput:
        return None
    if not moved:
        return then
    x0, y0, x1, y1 = panel.bounds
    from_side = {"up": y - y0, "down": y1 - y, "left": x - x0, "right": x1 - x}
    return EdgePosition(
        place.edge_a,
        from_side[panel.edges[place.edge_a]],
        place.edge_b,
        from_side[panel.edges[place.edge_b]],
        panel.width_mm,
        panel.height_mm,
    )
