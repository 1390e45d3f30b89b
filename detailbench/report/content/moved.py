"""Places that moved in proportion because the drawing of the car was changed after they were entered."""

from __future__ import annotations

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition, from_edges
from detailbench.report.content.gathered import Gathered


def moved_words(g: Gathered, panel: str, at: EdgePosition) -> str:
    """ "moved: the panel was drawn in another size then", or nothing."""
    if panel not in g.outline.panels:
        return ""
    try:
        _x, _y, moved = from_edges(g.outline.panels[panel], at)
    except BadInput:
        return ""
    return _("moved: the panel was drawn in another size then") if moved else ""
