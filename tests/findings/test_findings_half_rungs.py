"""The same combination rubbed harder, with a smaller section or longer, is a half-rung of the range on this paint."""

from __future__ import annotations

from typing import Any

import pytest
from invented_findings import Hands

from detailbench.basics.errors import Refused
from detailbench.findings.adviser import AdviserAsked, adviser_says, ask_adviser
from detailbench.findings.half_rungs import half_key, halved
from detailbench.findings.mildest import mildest_sentence
from detailbench.findings.range_picture import range_picture
from detailbench.findings.range_shown import range_shown
from detailbench.findings.trial_story import range_combinations
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.moves.work import AdoptProcess

USUAL = {"force_word": "moderate", "section_w_mm": 500.0, "section_h_mm": 400.0, "seconds": 50.0}
SMALLER = {**USUAL, "section_w_mm": 350.0, "section_h_mm": 280.0}
LONGER = {**USUAL, "seconds": 75.0}


def tried(
    hands: Hands, rung: int, cleared: str, finish: str, technique: dict[str, Any] | None = None, panel: str = "roof"
) -> str:
    group = hands.shop.group(hands.job, panel)
    combination = range_combinations(hands.picture, group.id)[rung].id
    made = hands.do(RecordTrial(hands.job, group.id, panel, combination, technique=technique or USUAL))
    hands.do(JudgeTrial(hands.job, made, cleared, finish))
    hands.later(600)
    return combination


def asked(hands: Hands) -> AdviserAsked:
    found = ask_adviser(hands.picture, hands.shop.group(hands.job, "roof").id)
    assert found is not None
    return found


def labels(hands: Hands) -> list[str]:
    return [s.rung.label for s in halved(hands.picture, hands.shop.group(hands.job, "roof").id).range]


@pytest.mark.parametrize(("technique", "words"), [(SMALLER, "smaller section"), (LONGER, "worked longer")])
def test_a_trial_rubbed_harder_stands_between_its_combination_and_the_next(
    hands: Hands, technique: dict[str, Any], words: str
) -> None:
    plain = labels(hands)
    tried(hands, 2, "no", "clear")
    assert labels(hands) == plain
    combination = tried(hands, 2, "yes", "clear", technique)
    assert labels(hands) == [*plain[:3], f"{plain[2]}, {words}", *plain[3:]]
    group = hands.shop.group(hands.job, "roof")
    seen = {s.rung.key: (s.cleared, s.finish_clear) for s in halved(hands.picture, group.id).range}
    assert seen[combination] == (False, True)
    assert seen[half_key(combination)] == (True, True)


def test_a_trial_rubbed_less_stays_with_its_combination(hands: Hands) -> None:
    plain = labels(hands)
    tried(hands, 2, "no", "clear", SMALLER)
    tried(hands, 2, "no", "clear", USUAL)
    assert labels(hands) == plain


def test_where_nothing_was_noted_there_is_no_half_rung(hands: Hands) -> None:
    plain = labels(hands)
    tried(hands, 2, "no", "clear", {"seconds": 50.0})
    tried(hands, 2, "yes", "clear", SMALLER)
    assert labels(hands) == plain


def test_the_adviser_adopts_the_half_rung_as_the_mildest_once_its_combination_was_seen_not_to_clear(
    hands: Hands,
) -> None:
    tried(hands, 2, "no", "clear")
    tried(hands, 2, "yes", "clear", SMALLER)
    found = asked(hands)
    says = adviser_says(found)
    assert says.move is not None
    assert (says.move.kind, says.move.rung) == ("adopt", 3)
    assert says.agrees
    combination, half = found.made_of(3)
    assert half is not None
    assert half.section_m2 == pytest.approx(0.098)
    assert range_combinations(hands.picture, hands.shop.group(hands.job, "roof").id)[2].id == combination


def test_what_the_rule_proposes_to_rub_harder_is_ranked_beside_the_next_combination(hands: Hands) -> None:
    tried(hands, 2, "no", "clear")
    wiped = asked(hands)
    assert wiped.plain is not None
    assert wiped.halves == ()  # first it is wiped and looked at again
    trial = hands.picture.trials[-1]
    hands.do(JudgeTrial(hands.job, trial.id, "no", "clear"))
    found = asked(hands)
    assert found.plain is not None
    assert found.plain.result == "slower_arm"
    assert [h.trials for h in found.halves] == [()]
    assert found.plain_here is not None
    assert found.range[found.plain_here.rung or 0].rung.label.endswith(", worked longer")
    assert adviser_says(found).agrees is not None


def test_what_served_only_with_a_smaller_section_is_the_mildest_that_served(hands: Hands) -> None:
    combination = tried(hands, 2, "no", "clear")
    tried(hands, 2, "yes", "clear", SMALLER)
    group = hands.shop.group(hands.job, "roof")
    assert mildest_sentence(hands.picture, group, combination) == "the mildest that served"


def test_what_served_at_once_is_the_mildest_tried(hands: Hands) -> None:
    combination = tried(hands, 2, "yes", "clear")
    group = hands.shop.group(hands.job, "roof")
    assert mildest_sentence(hands.picture, group, combination) == "the mildest tried"


def test_a_half_rungs_smaller_sections_cost_their_minutes(hands: Hands) -> None:
    tried(hands, 2, "no", "clear")
    tried(hands, 2, "yes", "clear", SMALLER)
    (half,) = asked(hands).costs.halves
    assert half.after == 2
    assert half.added_min > 10


def test_a_longer_worked_polish_that_finished_clear_does_not_break_the_order(hands: Hands) -> None:
    tried(hands, 2, "no", "even_haze")
    tried(hands, 2, "yes", "clear", LONGER)
    says = adviser_says(asked(hands))
    assert says.how == "exact"


def test_a_half_rung_that_cleared_less_than_its_combination_stops_the_ranking(hands: Hands) -> None:
    tried(hands, 2, "yes", "clear")
    tried(hands, 2, "no", "clear", SMALLER)
    says = adviser_says(asked(hands))
    assert says.how == "order_broken"
    assert "smaller section cleared less than" in says.line


def test_what_is_forbidden_is_not_rubbed_harder_either(hands: Hands) -> None:
    tried(hands, 2, "no", "clear")
    tried(hands, 2, "yes", "clear", SMALLER)
    group = hands.shop.group(hands.job, "roof")
    combination = range_combinations(hands.picture, group.id)[2].id
    made = hands.do(RecordTrial(hands.job, group.id, "roof", combination, technique=USUAL))
    hands.do(JudgeTrial(hands.job, made, stopped="colour_on_pad"))
    found = halved(hands.picture, group.id)
    assert [s.forbidden for s in found.range if s.rung.key in (combination, half_key(combination))] == [True, True]
    assert asked(hands).costs.halves == ()


def test_a_refining_trial_with_the_same_combination_speaks_of_the_half_rung_beneath(hands: Hands) -> None:
    tried(hands, 2, "no", "clear")
    combination = tried(hands, 2, "yes", "even_haze", SMALLER)
    group = hands.shop.group(hands.job, "roof")
    under = hands.picture.trials[-1].id
    made = hands.do(RecordTrial(hands.job, group.id, "roof", combination, on_top_of=under, technique=SMALLER))
    hands.do(JudgeTrial(hands.job, made, "yes", "clear"))
    seen = {s.rung.key: s for s in halved(hands.picture, group.id).range}
    assert seen[half_key(combination)].works
    assert not seen[combination].works


def test_the_range_picture_tells_both_ways_of_a_combination_that_was_rubbed_harder(hands: Hands) -> None:
    tried(hands, 2, "no", "clear")
    group = hands.shop.group(hands.job, "roof")

    def words() -> str:
        return range_shown(hands.picture, range_picture(hands.picture, group.id))[2].words

    assert words() == "did not clear"
    tried(hands, 2, "yes", "clear", SMALLER)
    assert words() == "at first did not clear; smaller section: cleared, finished clear"


def adopt(hands: Hands, combination: str, section_m2: float, seconds: float, override: str = "") -> None:
    group = hands.shop.group(hands.job, "roof")
    step = {"combination_id": combination, "section_m2": section_m2, "polish_s": seconds}
    hands.do(AdoptProcess(hands.job, group.id, [step], override=override))


def test_what_served_with_a_smaller_section_only_is_not_adopted_rubbed_less(hands: Hands) -> None:
    combination = tried(hands, 2, "no", "clear")
    tried(hands, 2, "yes", "clear", SMALLER)
    tried(hands, 2, "yes", "clear", SMALLER, panel="bonnet")
    with pytest.raises(Refused, match="rubbed less it was not") as stopped:
        adopt(hands, combination, 0.2, 50.0)
    assert "980" in str(stopped.value)
    adopt(hands, combination, 0.098, 50.0)
    adopt(hands, combination, 0.2, 50.0, override="owner wants it lighter")
    assert [o.rule for o in hands.picture.overrides] == ["rubbed_less"]


@pytest.mark.parametrize("finish", ["even_haze", "clear"])
def test_a_cut_that_cleared_as_at_first_may_be_adopted_as_it_was(hands: Hands, finish: str) -> None:
    group = hands.shop.group(hands.job, "roof")
    for panel in ("roof", "bonnet"):
        cut = tried(hands, 4, "yes", "even_haze", panel=panel)
        top = range_combinations(hands.picture, group.id)[1].id
        under = hands.picture.trials[-1].id
        made = hands.do(RecordTrial(hands.job, group.id, panel, top, on_top_of=under, technique=USUAL))
        hands.do(JudgeTrial(hands.job, made, "yes", "clear"))
        hands.later(600)
    tried(hands, 4, "yes", finish, SMALLER)
    steps = [{"combination_id": c, "section_m2": 0.2, "polish_s": 50.0} for c in (cut, top)]
    hands.do(AdoptProcess(hands.job, group.id, steps))
    assert [s.combination_id for s in hands.picture.steps] == [cut, top]


def test_what_served_as_at_first_may_be_adopted_as_it_was(hands: Hands) -> None:
    combination = tried(hands, 2, "yes", "clear")
    tried(hands, 2, "yes", "clear", SMALLER, panel="bonnet")
    adopt(hands, combination, 0.2, 50.0)
