"""Nothing is proposed where no trial may be made, a stop holds at once, and the mild end is left one rung at a time."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest
from invented_findings import Hands

from detailbench.basics.errors import Refused
from detailbench.findings.adviser import AdviserSays, adviser_says, ask_adviser
from detailbench.findings.trial_story import range_combinations
from detailbench.moves import trials
from detailbench.moves.finish_groups import SetGroupPaint
from detailbench.moves.limits import AddLimit
from detailbench.moves.shop import Retire
from detailbench.moves.surface import HoldPanel, ReleasePanel, SetPaintSystem
from detailbench.moves.turning import TurnJob


def tried(
    hands: Hands, rung: int, cleared: str = "", finish: str = "", *, stopped: str = "", panel: str = "roof", **more: Any
) -> str:
    """What was said when it was judged."""
    group = hands.shop.group(hands.job, panel)
    combination = range_combinations(hands.picture, group.id)[rung].id
    hands.later(600)
    made = hands.do(trials.RecordTrial(hands.job, group.id, panel, combination, technique=more))
    return hands.shop.bench.do(trials.JudgeTrial(hands.job, made, cleared, finish, stopped)).note


def says(hands: Hands, panel: str = "roof", day: date | None = None) -> AdviserSays:
    asked = ask_adviser(hands.picture, hands.shop.group(hands.job, panel or "roof").id, panel=panel, day=day)
    assert asked is not None
    return adviser_says(asked)


@pytest.mark.parametrize("system", ["matt", "filmed", "wrapped", "bare"])
def test_on_paint_that_takes_no_abrasive_no_trial_is_proposed_and_it_says_why(hands: Hands, system: str) -> None:
    assert "Start with" in says(hands).plain
    hands.do(SetPaintSystem(hands.job, hands.shop.group(hands.job, "roof").id, system))
    told = says(hands)
    assert told.move is None
    assert told.plain.startswith("No trial here. ")
    assert told.line == told.plain


def test_nor_on_a_panel_that_is_held_back_until_it_is_released(hands: Hands) -> None:
    hands.do(HoldPanel(hands.job, "roof", "owner wants it left"))
    assert says(hands).plain == "No trial here. Held back: owner wants it left."
    assert "Start with" in says(hands, "bonnet").plain
    hands.do(ReleasePanel(hands.job, "roof"))
    assert "Start with" in says(hands).plain


def test_nor_while_the_job_is_paused_or_the_car_is_gone(hands: Hands) -> None:
    tried(hands, 2, "no", "clear")
    assert says(hands).move is not None
    hands.do(TurnJob(hands.job, "paused", "owner asks his partner"))
    told = says(hands)
    assert told.move is None
    assert told.plain.startswith("No trial here. The job is paused (owner asks his partner).")
    hands.do(TurnJob(hands.job, "resumed"))
    assert says(hands).move is not None
    hands.do(TurnJob(hands.job, "fetched_early", "owner needed the car"))
    assert says(hands).plain == "No trial here. The car is not here: note its return first."
    assert says(hands).move is None


def test_nor_where_the_owner_barred_every_panel_of_the_group(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    hands.do(AddLimit(hands.job, "bar_panel", group.panels))
    told = says(hands, "")
    assert told.move is None
    assert told.plain.startswith("No trial on these panels. ")


def test_nor_after_the_first_trial_when_the_refinish_is_found_not_to_have_cured(hands: Hands) -> None:
    tried(hands, 4, "no", "clear")
    paint = {"refinished": "yes", "refinished_on": date(2031, 3, 5), "cure_days": 30.0}
    hands.do(SetGroupPaint(hands.job, hands.shop.group(hands.job, "roof").id, paint))
    told = says(hands, day=date(2031, 3, 10))
    assert told.move is None
    assert "nothing but the painter's own finish" in told.plain
    assert says(hands, day=date(2031, 5, 10)).move is not None


@pytest.mark.parametrize("panel", ["bumper_front", "roof"])
def test_from_the_mild_end_up_each_next_trial_is_one_rung_stronger_and_nothing_is_ranked(
    hands: Hands, panel: str
) -> None:
    if panel == "roof":
        hands.do(SetGroupPaint(hands.job, hands.shop.group(hands.job, panel).id, {"refinished": "yes"}))
    group = hands.shop.group(hands.job, panel)
    for rung in (0, 1):
        for _go in range(5):  # wiped, slower, with a smaller section: until the next rung is due
            tried(hands, rung, "no", "clear", panel=panel)
            asked = ask_adviser(hands.picture, group.id, panel=panel)
            assert asked is not None
            assert asked.plain is not None
            if asked.plain.result == "stronger":
                break
        assert asked.plain.rung == rung + 1
        assert says(hands, panel).line == "Here the trials go from the mild end up: nothing is ranked."


def test_colour_on_the_pad_holds_the_panel_at_once_until_a_person_releases_it(hands: Hands) -> None:
    note = tried(hands, 4, stopped="colour_on_pad")
    assert "It is held back now" in note
    assert [(h.panel, h.reason) for h in hands.picture.holds] == [("roof", "colour on the pad in trial 1")]
    with pytest.raises(Refused, match="Held back: colour on the pad in trial 1"):
        tried(hands, 2, "yes", "clear")
    hands.shop.bench.undo(hands.job)
    assert hands.picture.holds == ()


def test_a_panel_that_is_held_already_is_not_held_twice(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    made = hands.do(trials.RecordTrial(hands.job, group.id, "roof", range_combinations(hands.picture, group.id)[4].id))
    hands.do(HoldPanel(hands.job, "roof", "seen by the owner"))
    hands.do(trials.JudgeTrial(hands.job, made, stopped="colour_on_pad"))
    assert len(hands.picture.holds) == 1


@pytest.mark.parametrize(
    ("system", "words"),
    [
        ("clear_over_colour", "it is through. Note it as a mishap"),
        ("single_stage", "Single-stage paint gives colour to the pad"),
        ("unknown", "find out what the paint is"),
    ],
)
def test_whether_colour_on_the_pad_is_a_mishap_is_said_by_what_the_paint_is(
    hands: Hands, system: str, words: str
) -> None:
    hands.do(SetPaintSystem(hands.job, hands.shop.group(hands.job, "roof").id, system))
    assert words in tried(hands, 4, stopped="colour_on_pad")


def test_a_trial_that_ended_too_hot_is_not_simply_kept(hands: Hands) -> None:
    cool = tried(hands, 4, "yes", "clear", surface_before_c=25.0, surface_after_c=40.0)
    assert "cooler" not in cool
    hot = tried(hands, 4, "yes", "clear", surface_before_c=25.0, surface_after_c=70.0)
    assert "It ended at 70\u00a0°C, the stop is 50\u00a0°C: use it cooler" in hot
    assert "use it cooler" in says(hands).plain


def test_the_adviser_does_not_give_up_while_a_clean_pad_is_still_to_be_tried(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    for combination in range_combinations(hands.picture, group.id)[1:]:
        hands.do(Retire("combination", combination.id))
    tried(hands, 0, "yes", "even_haze")
    told = says(hands)
    assert told.agrees is None
    assert told.line.startswith("Adviser, if it stays so after that: nothing left in the range can serve")
