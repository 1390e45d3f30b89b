"""Where trials were made on a panel: a fresh place serves once, some paint stays clear between two of them, and what is
read there later is no longer of untouched paint."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from detailbench.basics.numbers import format_quantity
from detailbench.basics.texts import _
from detailbench.basics.workings import COMMON_PRACTICE
from detailbench.body.edges import EdgePosition, from_edges
from detailbench.body.names import panel_name
from detailbench.body.outlines import load_outline
from detailbench.body.panels import Panel
from detailbench.body.section_room import clear_of_edges_mm, has_room, over_edge_mm
from detailbench.findings.kit_names import parts
from detailbench.findings.processes import group_of
from detailbench.findings.trials_made import trials_of
from detailbench.findings.walking import panel_places
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Place, Trial

CLEAR_MM = 25.0  # two to three centimetres between places; common practice, no source
EDGE_MM = 100.0  # a typical place keeps ten centimetres from edges, openings and body lines; common practice, no source
OVER_MM = 5.0  # what a tape on the curved metal and the drawing differ by: less hangs over nothing


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
    """``taken``: why this place may not serve as a fresh one, or empty; ``near``: what speaks against it, or empty."""

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


def check_place(picture: JobPicture, panel: str, patch: Patch, spot: str = "typical") -> PlaceCheck:
    """Whether a fresh trial may be made on this patch: not where another fresh one was, not too close to it, not over
    the panel's edge; a place that is not the worst one keeps its distance from edges where the panel has room."""
    near, lost = "", ""
    for number, trial in _fresh_on(picture, panel):
        used = patch_of(picture, trial)
        if used is None:
            lost = _other_lost(number)
            continue
        gap = patch.gap_mm(used)
        if gap < 0:
            text = _(
                "Trial {n} was made on this place of the {panel}: a fresh place serves once. Take another place, or "
                "refine on top of it."
            )
            return PlaceCheck(taken=text.format(n=number, panel=panel_name(panel)))
        if gap < CLEAR_MM:
            near = _("Only {gap} clear to trial {n}: 20 to 30 mm between places keep them apart.").format(
                gap=format_quantity(gap, "mm", 0), n=number
            )
    return PlaceCheck(near=" ".join(filter(None, (near, lost, edge_words(picture, panel, patch, spot)))))


def edge_trouble(picture: JobPicture, panel: str, patch: Patch, spot: str) -> str:
    """What speaks against a section so close to the panel's edge: *over* it; *too_large* to lie on the panel at all;
    *near* one (or a body line) on a place that is to speak for the panel and has room to keep away; else empty."""
    drawn, sides = _panels(picture)[panel], (patch.wide_mm, patch.high_mm)
    if over_edge_mm(drawn, patch.x_mm, patch.y_mm, *sides) > OVER_MM:
        return "over" if has_room(drawn, *sides) else "too_large"
    clear = clear_of_edges_mm(drawn, patch.x_mm, patch.y_mm, *sides)
    return "near" if spot != "worst" and clear < EDGE_MM and has_room(drawn, *sides, EDGE_MM) else ""


def edge_words(picture: JobPicture, panel: str, patch: Patch, spot: str) -> str:
    """The same in a sentence; empty where nothing speaks against it."""
    trouble = edge_trouble(picture, panel, patch, spot)
    if not trouble:
        return ""
    drawn, where = _panels(picture)[panel], (patch.x_mm, patch.y_mm, patch.wide_mm, patch.high_mm)
    words = {
        "too_large": _(
            "A section of this size lies nowhere on the {panel} whole: take a smaller one, and keep off its edges."
        ),
        "over": _(
            "The section hangs {mm} over the edge of the {panel}: paint goes through at an edge first. Move it in or "
            "make it smaller."
        ),
        "near": _(
            "Only {mm} to an edge, opening or body line of the {panel}: a place that is to speak for the panel keeps "
            "100 mm from them, and there is room for it ({source})."
        ),
    }
    mm = over_edge_mm(drawn, *where) if trouble == "over" else clear_of_edges_mm(drawn, *where)
    return words[trouble].format(mm=format_quantity(mm, "mm", 0), panel=panel_name(panel), source=_(COMMON_PRACTICE))


def lost_to(picture: JobPicture, trial: Trial) -> Trial | None:
    """The fresh trial before this one on its panel that it cannot be told from, as the place of one of them was not
    noted; None where the record tells them apart."""
    before = [] if trial.on_top_of else [t for _n, t in _fresh_on(picture, trial.panel) if t.seq < trial.seq]
    return next((t for t in reversed(before) if not trial.edge_a or not t.edge_a), None)


def place_lost(picture: JobPicture, trial: Trial) -> str:
    """The same in a sentence, or empty."""
    other = lost_to(picture, trial)
    if other is None:
        return ""
    number = next(n for n, t in _fresh_on(picture, trial.panel) if t.id == other.id)
    return _lost(number) if not trial.edge_a else _other_lost(number)


def no_place_words(picture: JobPicture, panel: str, *, to_be_made: bool = False) -> str:
    """The same of a fresh trial on this panel with no place noted, just made or still ``to_be_made``."""
    before = _fresh_on(picture, panel)
    if not before:
        return ""
    if to_be_made:
        return _("Then it cannot be told from trial {n} before it.").format(n=before[-1][0])
    return _lost(before[-1][0])


def _lost(before: int) -> str:
    return _("The place was not noted: it cannot be told from that of trial {n} before it.").format(n=before)


def _other_lost(number: int) -> str:
    return _("The place of trial {n} was not noted: this one cannot be told from it.").format(n=number)


def _fresh_on(picture: JobPicture, panel: str) -> list[tuple[int, Trial]]:
    """The trials on fresh places of a panel with their numbers in its finish group, in the order made."""
    group = group_of(picture, panel)
    trials = picture.trials if group is None else trials_of(picture, group.id)
    return [(n, t) for n, t in enumerate(trials, 1) if t.panel == panel and not t.on_top_of]


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
