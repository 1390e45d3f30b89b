"""What is said of a fresh place: not noted, at the edge, over it; and nothing where nothing speaks against it."""

from __future__ import annotations

from typing import Any

import pytest
from invented_findings import Hands
from invented_findings import hands as hands

from detailbench.body.edges import EdgePosition, to_edges
from detailbench.findings.panels import outline_of
from detailbench.findings.trial_places import place_lost
from detailbench.findings.trial_story import range_combinations
from detailbench.moves.trials import RecordTrial

SECTION = {"section_w_mm": 350.0, "section_h_mm": 260.0}


def at(hands: Hands, panel: str, dx: float = 0.0, dy: float = 0.0) -> EdgePosition:
    """A place so far from where the panel's words stand, which is well inside."""
    drawn = outline_of(hands.picture).panels[panel]
    return to_edges(drawn, drawn.label[0] + dx, drawn.label[1] + dy)


def corner(hands: Hands, panel: str, mm: float) -> EdgePosition:
    drawn = outline_of(hands.picture).panels[panel]
    front, left = (next(name for name, way in drawn.edges.items() if way == w) for w in ("up", "left"))
    return EdgePosition(front, mm, left, drawn.width_mm / 2, drawn.width_mm, drawn.height_mm)


def said(hands: Hands, panel: str = "roof", **more: Any) -> str:
    """What the program says to a trial on this panel."""
    group = hands.shop.group(hands.job, panel)
    combination = range_combinations(hands.picture, group.id)[3].id
    technique = more.pop("technique", SECTION)
    move = RecordTrial(hands.job, group.id, panel, combination, technique=technique, **more)
    return hands.shop.bench.do(move).note.replace("\N{NO-BREAK SPACE}", " ")


def test_two_fresh_trials_with_no_place_noted_cannot_be_told_apart_and_it_is_said(hands: Hands) -> None:
    assert said(hands) == ""
    assert said(hands) == "The place was not noted: it cannot be told from that of trial 1 before it."
    first, second = hands.picture.trials
    assert place_lost(hands.picture, first) == ""
    assert "trial 1 before it" in place_lost(hands.picture, second)


def test_a_noted_place_after_one_that_was_not_is_told_too(hands: Hands) -> None:
    said(hands)
    assert said(hands, at=at(hands, "roof")) == ("The place of trial 1 was not noted: this one cannot be told from it.")


def test_another_panel_and_a_trial_on_top_need_no_place(hands: Hands) -> None:
    said(hands)
    assert said(hands, on_top_of=hands.picture.trials[0].id) == ""
    assert said(hands, "bonnet") == ""


@pytest.mark.parametrize(("mm", "words"), [(10.0, "hangs"), (200.0, "to an edge, opening or body line")])
def test_a_typical_place_at_the_edge_is_warned_of(hands: Hands, mm: float, words: str) -> None:
    note = said(hands, at=corner(hands, "roof", mm))
    assert words in note
    assert "keeps 100 mm from them, and there is room for it (common practice, no source)" in note or words == "hangs"
    assert "cm" not in note


def test_the_worst_place_may_lie_near_an_edge_but_hangs_over_it_as_any_other(hands: Hands) -> None:
    assert "to an edge" not in said(hands, at=corner(hands, "roof", 200.0), spot="worst")
    assert "hangs" in said(hands, "bonnet", at=corner(hands, "bonnet", 10.0), spot="worst")


def test_well_inside_nothing_is_said(hands: Hands) -> None:
    assert said(hands, at=at(hands, "roof")) == ""


def test_a_small_panel_with_no_room_for_ten_centimetres_is_worked_without_a_word(hands: Hands) -> None:
    small = {"section_w_mm": 60.0, "section_h_mm": 60.0}
    assert said(hands, "door_rear_r", at=at(hands, "door_rear_r")) == ""
    assert said(hands, "mirror_cap_l", at=at(hands, "mirror_cap_l"), technique=small) == ""
    assert "lies nowhere on the" in said(hands, "pillar_a_l", at=at(hands, "pillar_a_l"))
