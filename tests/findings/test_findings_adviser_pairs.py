"""Two steps are called seen to work only where the second one was seen on top of that very first one."""

from __future__ import annotations

import json

from invented_findings import Hands
from test_findings_adviser import says

from detailbench.findings.trial_story import range_combinations
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.trials.calculations import CALCULATIONS


def tried(hands: Hands, rung: int, cleared: str, finish: str, on_top_of: str = "") -> str:
    group = hands.shop.group(hands.job, "roof")
    combination = range_combinations(hands.picture, group.id)[rung].id
    made = hands.do(RecordTrial(hands.job, group.id, "roof", combination, on_top_of=on_top_of))
    hands.do(JudgeTrial(hands.job, made, cleared, finish))
    return made


def test_a_refine_seen_on_another_cut_is_tried_on_this_one_before_both_are_adopted(hands: Hands) -> None:
    strong = tried(hands, 4, "yes", "even_haze")
    tried(hands, 1, "yes", "clear", strong)
    found = says(hands)
    assert found.move is not None
    assert found.move[:3] == ("adopt_two", 4, 1)
    milder = tried(hands, 3, "yes", "even_haze")
    found = says(hands)
    assert found.move is not None
    assert found.move[:3] == ("refine", 3, 1)
    assert "was seen to work" not in found.line
    working = json.loads(json.dumps(found.workings[0].as_json()))
    redo = next(c for c in CALCULATIONS if c.name == "adviser")
    assert redo.run(working["inputs"]).as_json()["results"] == working["results"]
    tried(hands, 1, "yes", "clear", milder)
    found = says(hands)
    assert found.move is not None
    assert found.move[:3] == ("adopt_two", 3, 1)
