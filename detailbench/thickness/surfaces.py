"""Shuts and undersides as reference places: thinner by build, so compared with each other only, never a baseline."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.basics.workings import is_finite
from detailbench.thickness.odd_findings import Lie, PanelMean, Surface


@dataclass(frozen=True)
class SurfacePlace:
    """One place mean on a panel, µm, and whether it lies on its outer skin, in a shut or on its underside."""

    panel: str
    mean_um: float
    surface: Surface = "outside"


@dataclass(frozen=True)
class DrawnPanel:
    """What the outline says of a panel."""

    key: str
    substrate: str = "steel"
    lie: Lie = "upright"
    twin: str = ""


def reference_key(panel: str, surface: Surface) -> str:
    """How a panel's shut or underside is named among the panels compared; the panel's own key for its outer skin."""
    return panel if surface == "outside" else f"{panel}:{surface}"


def split_by_surface(places: Sequence[SurfacePlace], drawn: Sequence[DrawnPanel]) -> tuple[PanelMean, ...]:
    """One mean a panel and surface, ready to be compared: outer skins in the order drawn, then shuts, then undersides.
    The twin of a shut is the twin's shut. No place of a shut or an underside enters its panel's own mean.
    Raises BadInput for a panel that is not drawn, or a value that is no real number."""
    known = {p.key for p in drawn}
    for place in places:
        if place.panel not in known:
            raise BadInput(_("There is no panel “{key}” here.").format(key=place.panel), field="places")
        if not is_finite(place.mean_um):
            raise BadInput(_("The mean of “{key}” is not a real number.").format(key=place.panel), field="places")
    out = []
    for surface in _SURFACES:
        for panel in drawn:
            values = [p.mean_um for p in places if p.panel == panel.key and p.surface == surface]
            if values:
                out.append(
                    PanelMean(
                        key=reference_key(panel.key, surface),
                        mean_um=sum(values) / len(values),
                        substrate=panel.substrate,
                        lie=panel.lie,
                        surface=surface,
                        twin=reference_key(panel.twin, surface) if panel.twin else "",
                    )
                )
    return tuple(out)


_SURFACES: tuple[Surface, ...] = ("outside", "shut", "underside")
