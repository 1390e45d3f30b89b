"""In print: a place that was not noted or lay at the edge, and a timer that was left, stand with their test section."""

from __future__ import annotations

from typing import Any

from invented_findings import Hands
from invented_findings import hands as hands
from reading_reports import said_in
from whole_job import frozen

from detailbench.body.edges import EdgePosition
from detailbench.findings.panels import outline_of
from detailbench.findings.trial_story import range_combinations
from detailbench.moves.trials import CorrectTrial, RecordTrial


def tried(hands: Hands, from_edge_mm: float | None = None, **more: Any) -> None:
    group, drawn = hands.shop.group(hands.job, "roof"), outline_of(hands.picture).panels["roof"]
    front, left = (next(name for name, way in drawn.edges.items() if way == w) for w in ("up", "left"))
    at = None
    if from_edge_mm is not None:
        at = EdgePosition(front, from_edge_mm, left, drawn.width_mm / 2, drawn.width_mm, drawn.height_mm)
    combination = range_combinations(hands.picture, group.id)[3].id
    technique = {"section_w_mm": 350.0, "section_h_mm": 260.0}
    hands.do(RecordTrial(hands.job, group.id, "roof", combination, at=at, technique=technique, **more))


def printed(hands: Hands) -> str:
    content = frozen(hands.shop, hands.job).content()
    return said_in(next(s for s in content.sections if s.title == "Test sections"))


def test_places_that_were_not_noted_cannot_be_told_apart(hands: Hands) -> None:
    tried(hands)
    assert "not noted" not in printed(hands)
    tried(hands)
    assert "Its place was not noted: it cannot be told from that of test section 1." in printed(hands)
    tried(hands, 1000.0)
    assert "The place of test section 2 was not noted: this one cannot be told from it." in printed(hands)


def test_a_place_at_the_edge_and_one_over_it_are_told(hands: Hands) -> None:
    tried(hands, 10.0)
    assert "As noted, it reached over the panel's edge." in printed(hands)
    tried(hands, 1000.0)
    assert printed(hands).count("panel's edge") == 1


def test_a_trial_whose_timer_was_left_says_so_and_prints_no_planned_seconds(hands: Hands) -> None:
    tried(hands, 1000.0, timed=True)
    assert "left running, time unknown" in printed(hands)
    hands.do(CorrectTrial(hands.job, hands.picture.trials[0].id, {"seconds": 47.0}))
    assert "left running" not in printed(hands)
    assert "47 s" in printed(hands).replace("\N{NO-BREAK SPACE}", " ")
