"""Where trials were made on a panel: a fresh place serves once, some paint stays clear between two of them, and what is
read there later is no longer of untouched paint."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from detailbench.basics.numbers import format_quantity
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition, from_edges
from detailbench.body.names import panel_name
from detailbench.body.outlines import load_outline
from detailbench.body.panels import Panel
from detailbench.findings.kit_names import parts
from detailbench.findings.walking import panel_places
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Place, Trial

CLEAR_MM = 25.0  # two to three centimetres between places; common practice, no source


@dataclass(frozen=True)
class Patch:
    """A taped patch on the drawing of a panel, mm: its middle and its sides, across and along the drawing."""

    x_mm: float
    y_mm: float
    wide_mm: float
    high_mm: float

    def gap_mm(self, other: Patch) -> float:
        """Clear paint between two patches; below zero by how far they overlap."""
        across = abs(self.x_mm - other.x_mm) - (self.wide_mm + other.wide_mm) / 2
        along = abs(self.y_mm - other.y_mm) - (self.high_mm + other.high_mm) / 2
        return max(across, along)


@dataclass(frozen=True)
class PlaceCheck:
    """``taken``: why this place may not serve as a fresh one, or empty; ``near``: a warning, or empty."""

    taken: str = ""
    near: str = ""


def patch_of(picture: JobPicture, trial: Trial) -> Patch | None:
    """Where a trial stands on its panel as drawn now; None where no place was noted."""
    if not trial.edge_a or not trial.edge_b or trial.edge_a_mm is None or trial.edge_b_mm is None:
        return None
    panel = _panels(picture).get(trial.panel)
    if panel is None:
        return None  # changed outside this program: the check names it
    at = EdgePosition(trial.edge_a, trial.edge_a_mm, trial.edge_b, trial.edge_b_mm, panel.width_mm, panel.height_mm)
    return patch_at(picture, trial.panel, at, trial.combination_id, trial.section_w_mm, trial.section_h_mm)


def patch_at(
    picture: JobPicture,
    panel: str,
    at: EdgePosition,
    combination_id: str,
    wide_mm: float | None = None,
    high_mm: float | None = None,
) -> Patch:
    """The patch of a trial at this place; a side nobody noted is taken as one pad."""
    x, y, _moved = from_edges(_panels(picture)[panel], at)
    _machine, pad, _product = parts(picture.shop, one(picture.shop.combinations, combination_id))
    return Patch(x, y, wide_mm or pad.diameter_mm, high_mm or pad.diameter_mm)


def check_place(picture: JobPicture, panel: str, patch: Patch) -> PlaceCheck:
    """Whether a fresh trial may be made on this patch: not where another fresh one was, and not too close to it."""
    near = ""
    for number, trial in enumerate(picture.trials, 1):
        if trial.panel != panel or trial.on_top_of:
            continue
        used = patch_of(picture, trial)
        if used is None:
            continue
        gap = patch.gap_mm(used)
        if gap < 0:
            text = _(
                "Trial {n} was made on this place of the {panel}: a fresh place serves once. Take another place, or "
                "refine on top of it."
            )
            return PlaceCheck(taken=text.format(n=number, panel=panel_name(panel)))
        if gap < CLEAR_MM:
            near = _("Only {gap} clear to trial {n}: 2 to 3 cm between places keep them apart.").format(
                gap=format_quantity(gap, "mm", 0), n=number
            )
    return PlaceCheck(near=near)


def places_within(picture: JobPicture, trial: Trial, inset_mm: float = 0.0) -> frozenset[str]:
    """Ids of the places to measure inside a trial's patch, ``inset_mm`` from its tape. Empty where the trial's place
    was not noted. Control places are none of a trial's."""
    patch = patch_of(picture, trial)
    if patch is None:
        return frozenset()
    # the patch may lie either way round on the drawing: the shorter side counts for both
    reach = min(patch.wide_mm, patch.high_mm) / 2 - inset_mm
    panel = _panels(picture)[trial.panel]

    def near(place: Place) -> bool:
        position = EdgePosition(
            place.edge_a, place.edge_a_mm, place.edge_b, place.edge_b_mm, place.panel_w_mm, place.panel_h_mm
        )
        x, y, _moved = from_edges(panel, position)
        return max(abs(x - patch.x_mm), abs(y - patch.y_mm)) <= reach

    return frozenset(p.id for p in panel_places(picture, trial.panel) if p.origin != "control" and near(p))


def tried_from(picture: JobPicture) -> Mapping[str, datetime]:
    """Place id → when the first trial was made over it: what is read there later is no longer as found."""
    first: dict[str, datetime] = {}
    for trial in picture.trials:
        at = trial.stated_at or trial.entered_at
        for place_id in places_within(picture, trial):
            first[place_id] = min(at, first.get(place_id, at))
    return first


def _panels(picture: JobPicture) -> Mapping[str, Panel]:
    return load_outline(picture.car.style, picture.car.length_mm).panels
