"""What a move names must be there: panels of this car, places on them, lamps of the shop."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.basics.workings import is_finite
from detailbench.body.edges import SAME_MM, EdgePosition, from_edges
from detailbench.body.names import panel_name
from detailbench.findings.panels import outline_of
from detailbench.record.picture import JobPicture, one

MOST_MM = 100_000.0
COLDEST_C, HOTTEST_C = -60.0, 200.0


def on_this_car(picture: JobPicture, panels: Iterable[str], *, or_none: bool = False) -> None:
    """Raise BadInput for the first panel this car's outline does not have. ``or_none``: an empty name is no panel."""
    known = outline_of(picture).panels
    for panel in panels:
        if panel not in known and not (or_none and panel == ""):
            raise BadInput(_("This car has no panel “{panel}”.").format(panel=panel), field="panel", given=panel)


def on_panel(picture: JobPicture, panel: str, at: EdgePosition, end_mm: tuple[float, float] | None = None) -> None:
    """Raise BadInput unless the place (and the far end of a line) lies within the panel's box, measured from two of
    its edges that meet."""
    drawn = outline_of(picture).panels[panel]
    for name in ("a_mm", "b_mm", "panel_w_mm", "panel_h_mm"):
        real_number(getattr(at, name), name)
    if not all(1 <= size <= MOST_MM for size in (at.panel_w_mm, at.panel_h_mm)):
        raise BadInput(_("A panel has a size."), field="panel_w_mm", given=at.panel_w_mm)
    if end_mm is not None and len(end_mm) != 2:
        raise BadInput(_("The far end of a line is two distances."), field="end_mm")
    from_edges(drawn, replace(at, a_mm=0.0, b_mm=0.0))  # do these edges meet?
    upright = drawn.edges[at.edge_a] in ("up", "down")
    across, along = (at.panel_h_mm, at.panel_w_mm) if upright else (at.panel_w_mm, at.panel_h_mm)
    for a_mm, b_mm in ((at.a_mm, at.b_mm), *([] if end_mm is None else [end_mm])):
        for value, most in ((a_mm, across), (b_mm, along)):
            real_number(value, "at")
            if not -SAME_MM <= value <= most + SAME_MM:
                raise BadInput(
                    _("That place lies outside the {panel}.").format(panel=panel_name(panel)), field="at", given=value
                )


def real_number(value: object, name: str) -> None:
    """Raise BadInput unless this is a finite number."""
    if not is_finite(value):
        raise BadInput(_("That is not a number."), field=name, given=str(value))


def a_temperature(value: object, name: str) -> None:
    """Raise BadInput unless a car's surface can have this temperature, °C."""
    real_number(value, name)
    if isinstance(value, int | float) and not COLDEST_C <= value <= HOTTEST_C:
        raise BadInput(_("No surface of a car in a bay is that cold or warm."), field=name, given=value)


def lamp_of_the_shop(picture: JobPicture, lamp_id: str) -> None:
    """Raise RecordTrouble for a lamp the shop does not have. Empty: no lamp noted."""
    if lamp_id:
        one(picture.shop.lamps, lamp_id)
