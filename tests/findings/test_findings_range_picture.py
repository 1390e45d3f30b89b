"""The range as a picture: where the trials fell, what is known, like paint before, what it takes off."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from invented_findings import Hands
from test_findings_outcome_table import judged

from detailbench.findings import range_picture as module
from detailbench.findings.range_picture import RangePicture, known_words, range_picture
from detailbench.moves.work import AdoptProcess
from detailbench.trials.calculations import CALCULATIONS
from detailbench.trials.removal import MeasuredTrial

MEASURED = (MeasuredTrial(2.1, 0.4, 1000.0, "a"), MeasuredTrial(1.4, 0.5, 1000.0, "b"))


def shown(hands: Hands, *earlier: Hands, panel: str = "roof") -> RangePicture:
    return range_picture(hands.picture, hands.shop.group(hands.job, panel).id, [e.picture for e in earlier])


def test_every_rung_says_what_is_known_of_it_on_this_paint(hands: Hands) -> None:
    judged(hands, 2, "no", "clear")
    judged(hands, 3, "yes", "clear")
    judged(hands, 4, "yes", "even_haze")
    judged(hands, 1, "yes", "clear", on=hands.picture.trials[-1].id)
    judged(hands, 5, "yes", "smear")
    judged(hands, 6, "stopped", "heat")
    judged(hands, 8, "yes", "trails")
    rungs = shown(hands).rungs
    known = [r.known for r in rungs]
    assert known == [
        "never_tried", "refines", "not_cleared", "serves", "hazy", "unknown", "forbidden", "never_tried", "trails",
    ]  # fmt: skip
    assert len({known_words(word) for word in known}) == 8
    on_top = rungs[1].trials[0]
    assert (on_top.number, on_top.on_top_of, on_top.outcome is not None) == (4, 4, True)
    assert [r.index for r in rungs] == list(range(9))


def test_a_trial_that_waits_has_fallen_but_is_not_judged(hands: Hands) -> None:
    judged(hands, 2, "no", "clear")
    waiting = replace(hands.picture, outcomes=())
    found = range_picture(waiting, hands.shop.group(hands.job, "roof").id).rungs[2]
    assert (found.known, found.trials[0].outcome) == ("unknown", None)


def test_the_adopted_steps_are_marked_and_sanding_is_none_of_them(hands: Hands) -> None:
    hands.adopted("roof", rung=3, means="sanding")
    assert [r.steps for r in shown(hands).rungs][2:5] == [(), (2,), ()]


def test_what_earlier_jobs_saw_stands_beside_with_how_like_their_paint_is(hands: Hands) -> None:
    other = Hands(hands.shop, hands.shop.job())
    judged(other, 4, "yes", "even_haze")
    step = other.adopted("roof", rung=2)
    (seen,) = shown(hands, other, hands).rungs[4].before
    assert (seen.known, seen.step, seen.likeness, seen.job_number) == ("hazy", 0, "other", other.picture.job.number)
    assert [s.step for s in shown(hands, other).rungs[2].before] == [step.number]
    assert all(not r.before for r in shown(hands).rungs)


def test_what_comes_off_is_a_list_until_there_are_five_and_never_a_constant(
    hands: Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert {r.taken_line for r in shown(hands).rungs} == {"not measured"}
    combination = shown(hands).rungs[3].combination_id
    measured: dict[str, Any] = {combination: MEASURED}
    monkeypatch.setattr(module, "measured_trials", lambda _pictures, key: measured.get(key, ()))
    few = shown(hands).rungs[3]
    assert "1.40, 2.10; median 1.75" in few.taken_line
    assert few.taken.low_rate is None
    measured[combination] = tuple(MeasuredTrial(2.0, 0.4, 1000.0, str(i)) for i in range(5))
    assert "90\u00a0%" in shown(hands).rungs[3].taken_line


def test_where_order_and_readings_disagree_both_neighbours_say_so(
    hands: Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    keys = [r.combination_id for r in shown(hands).rungs]
    much = tuple(MeasuredTrial(6.0, 0.2, 1000.0, str(i)) for i in range(4))
    little = tuple(MeasuredTrial(1.0, 0.2, 1000.0, str(i)) for i in range(4))
    measured = {keys[2]: much, keys[5]: little}
    monkeypatch.setattr(module, "measured_trials", lambda _pictures, key: measured.get(key, ()))
    found = shown(hands)
    assert [i for i, r in enumerate(found.rungs) if r.disagrees] == [2, 5]
    assert "disagree here" in found.rungs[2].disagrees
    (neighbours,) = found.order
    calculation = next(c for c in CALCULATIONS if c.name == "range_order")
    assert calculation.run(neighbours.working.inputs).results == neighbours.working.results


def test_a_process_on_another_paint_is_not_this_paints(hands: Hands) -> None:
    combination = hands.tried("bumper_front", 2)
    group = hands.shop.group(hands.job, "bumper_front")
    others = [p for p in group.panels if p != "bumper_front"]
    if others:
        hands.tried(others[0], 2)
    hands.do(AdoptProcess(hands.job, group.id, [{"combination_id": combination}]))
    assert all(not r.steps for r in shown(hands).rungs)
