"""What an adopted process rests on may go: a corrected outcome, a later trial, colour on the pad. It is told and
stops."""

from __future__ import annotations

import pytest
from invented_findings import Hands

from detailbench.basics.errors import Refused
from detailbench.findings.adopted_now import no_longer_seen, panel_words
from detailbench.findings.mildest import milder_served, mildest_sentence
from detailbench.findings.processes import process_of
from detailbench.findings.trial_story import panels_serving, range_combinations, told
from detailbench.moves.shop import AddToShop
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.moves.work import AdoptProcess, FinishStep, StartStep
from detailbench.record.things import Process
from detailbench.trials.outcome import Result


def key(hands: Hands, rung: int) -> str:
    return range_combinations(hands.picture, hands.shop.group(hands.job, "roof").id)[rung].id


def trial(hands: Hands, rung: int, *seen: str, panel: str = "roof", on: str = "") -> str:
    """A judged trial; ``seen``: cleared and finish."""
    group = hands.shop.group(hands.job, panel)
    made = hands.do(RecordTrial(hands.job, group.id, panel, key(hands, rung), on_top_of=on))
    hands.do(JudgeTrial(hands.job, made, *seen))
    return made


def adopted(hands: Hands) -> Process:
    found = process_of(hands.picture, hands.shop.group(hands.job, "roof").id)
    assert found is not None
    return found


def refusal(hands: Hands, panel: str = "bonnet") -> Refused:
    with pytest.raises(Refused) as found:
        hands.do(StartStep(hands.job, panel, hands.picture.steps[-1].id))
    return found.value


def judge_all(hands: Hands, *seen: str) -> None:
    for each in hands.picture.trials:
        hands.do(JudgeTrial(hands.job, each.id, *seen))


@pytest.mark.parametrize(
    ("seen", "because"),
    [
        (("no", "clear"), "last seen not to clear on this paint"),
        (("yes", "even_haze"), "last seen to finish with even haze, not clear"),
        (("cant_tell", "clear"), "not seen to clear on this paint yet"),
    ],
)
def test_corrected_outcomes_take_the_mildest_back_and_stop_the_next_panel(
    hands: Hands, seen: tuple[str, str], because: str
) -> None:
    step = hands.adopted("roof")
    assert no_longer_seen(hands.picture, adopted(hands)) == ""
    hands.polish("roof", step)
    judge_all(hands, *seen)
    assert mildest_sentence(hands.picture, hands.shop.group(hands.job, "roof"), step.combination_id) is None
    said = panel_words(hands.picture, "bonnet")
    assert said.startswith("The trials no longer speak for the adopted process. ")
    assert because in said
    found = refusal(hands)
    assert (found.rule, found.may_override) == ("no_longer_seen", True)
    assert because in str(found)
    hands.do(StartStep(hands.job, "bonnet", step.id, override="owner wants it all the same"))
    assert hands.picture.overrides[-1].rule == "no_longer_seen"


def test_a_later_trial_that_says_otherwise_counts_and_one_that_says_yes_again_lifts_it(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.tried("bonnet", 3, "no", "clear")
    assert "last seen not to clear" in str(refusal(hands, "tailgate"))
    hands.tried("bonnet", 3, "yes", "clear")
    hands.polish("tailgate", step)


def test_a_trial_rubbed_less_says_nothing_against_a_process_rubbed_harder(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    usual = {"section_w_mm": 400.0, "section_h_mm": 400.0, "seconds": 40.0}
    smaller = usual | {"section_w_mm": 280.0, "section_h_mm": 280.0}

    def run(panel: str, technique: dict[str, float], cleared: str) -> None:
        made = hands.do(RecordTrial(hands.job, group.id, panel, key(hands, 3), technique=technique))
        hands.do(JudgeTrial(hands.job, made, cleared, "clear"))

    run("roof", usual, "no")
    run("roof", smaller, "yes")
    run("tailgate", smaller, "yes")
    harder = {"combination_id": key(hands, 3), "section_m2": 0.28 * 0.28, "polish_s": 40.0}
    hands.do(AdoptProcess(hands.job, group.id, [harder]))
    run("bonnet", usual, "no")
    assert no_longer_seen(hands.picture, adopted(hands)) == ""
    run("bonnet", smaller, "no")
    assert "last seen not to clear" in no_longer_seen(hands.picture, adopted(hands))
    run("bonnet", smaller, "yes")
    larger = harder | {"section_m2": 0.4 * 0.4}
    hands.do(AdoptProcess(hands.job, group.id, [larger], override="owner wants it lighter"))
    run("bonnet", usual, "no")
    # as large as it was seen not to clear, the smaller section says nothing for it
    assert "last seen not to clear" in no_longer_seen(hands.picture, adopted(hands))


def test_what_was_begun_on_a_panel_may_be_finished_there(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(StartStep(hands.job, "tailgate", step.id))
    hands.later(300)
    hands.do(FinishStep(hands.job, "tailgate", ended="paused"))
    judge_all(hands, "no", "clear")
    hands.later(300)
    hands.do(StartStep(hands.job, "tailgate", step.id))
    hands.later(300)
    hands.do(FinishStep(hands.job, "tailgate"))
    assert refusal(hands).rule == "no_longer_seen"


def test_colour_on_the_pad_is_told_once_and_stops_a_step_by_hand_too(hands: Hands) -> None:
    hands.adopted("roof", means="hand")
    made = hands.do(RecordTrial(hands.job, hands.shop.group(hands.job, "roof").id, "roof", key(hands, 3)))
    hands.do(JudgeTrial(hands.job, made, stopped="colour_on_pad"))
    assert "stopped since (colour on pad)" in panel_words(hands.picture, "tailgate")
    found = refusal(hands, "tailgate")
    assert found.rule == "stopped_here"
    assert str(found).count("colour") == 1


def test_the_cut_is_not_the_mildest_where_a_milder_one_was_seen_to_clear_too(hands: Hands) -> None:
    trial(hands, 3, "yes", "even_haze")
    for panel in ("roof", "tailgate"):
        under = trial(hands, 4, "yes", "even_haze", panel=panel)
        trial(hands, 1, "yes", "clear", panel=panel, on=under)
    group = hands.shop.group(hands.job, "roof")
    assert mildest_sentence(hands.picture, group, key(hands, 4)) is None
    assert mildest_sentence(hands.picture, group, key(hands, 4), cut=True) is None
    assert milder_served(hands.picture, group, key(hands, 4), cut=True)
    # hazy by itself, it does not serve in one step
    assert not milder_served(hands.picture, group, key(hands, 4), cut=False)
    trial(hands, 3, "no", "clear")
    assert mildest_sentence(hands.picture, group, key(hands, 4), cut=True) == "the mildest that served"


def test_each_panel_counts_by_its_newest_word(hands: Hands) -> None:
    trial(hands, 4, "yes", "clear", panel="tailgate")
    trial(hands, 4, "no", "clear", panel="tailgate")
    trial(hands, 4, "yes", "clear")
    group = hands.shop.group(hands.job, "roof")
    steps = [{"combination_id": key(hands, 4)}]
    assert panels_serving(hands.picture, group, [key(hands, 4)]) == {"roof"}
    with pytest.raises(Refused, match="One confirming trial"):
        hands.do(AdoptProcess(hands.job, group.id, steps))
    trial(hands, 4, "yes", "clear", panel="tailgate")
    hands.do(AdoptProcess(hands.job, group.id, steps))


def test_the_cut_must_have_cleared_on_the_second_panel_too(hands: Hands) -> None:
    for panel, cleared in (("tailgate", "no"), ("roof", "yes")):
        under = trial(hands, 4, cleared, "even_haze", panel=panel)
        trial(hands, 1, "yes", "clear", panel=panel, on=under)
    group = hands.shop.group(hands.job, "roof")
    assert panels_serving(hands.picture, group, [key(hands, 4), key(hands, 1)]) == {"roof"}


def test_by_hand_is_not_seen_to_work_by_trials_by_machine(hands: Hands) -> None:
    combination = hands.tried("roof")
    hands.confirmed("roof")
    group = hands.shop.group(hands.job, "roof")
    adopt = AdoptProcess(hands.job, group.id, [{"combination_id": combination, "means": "hand"}])
    with pytest.raises(Refused, match="tried by machine only, not seen to work by hand") as found:
        hands.do(adopt)
    assert (found.value.rule, found.value.may_override) == ("other_means", True)
    hands.do(AdoptProcess(hands.job, group.id, adopt.steps, override="only the edges, gently"))
    assert hands.picture.overrides[-1].rule == "other_means"


def test_by_machine_is_not_seen_to_work_by_trials_by_hand(hands: Hands) -> None:
    shop = hands.picture.shop
    by_hand = next(m.id for m in shop.machines if m.movement == "hand")
    parts = {"machine_id": by_hand, "pad_id": shop.pads[0].id, "product_id": shop.products[0].id, "rung": 0}
    combination = hands.do(AddToShop("combination", parts))
    group = hands.shop.group(hands.job, "roof")
    for panel in ("roof", "tailgate"):
        made = hands.do(RecordTrial(hands.job, group.id, panel, combination))
        hands.do(JudgeTrial(hands.job, made, "yes", "clear"))
    with pytest.raises(Refused, match="tried by hand only, not seen to work by machine"):
        hands.do(AdoptProcess(hands.job, group.id, [{"combination_id": combination, "means": "machine"}]))
    hands.do(AdoptProcess(hands.job, group.id, [{"combination_id": combination}]))
    assert hands.picture.steps[-1].means == "hand"


@pytest.mark.parametrize(
    ("cut", "result"), [("yes", Result.KEEP), ("no", Result.STRONGER), ("cant_tell", Result.SECOND_LAMP)]
)
def test_both_steps_are_kept_only_where_the_cut_beneath_cleared(hands: Hands, cut: str, result: Result) -> None:
    under = trial(hands, 4, cut, "even_haze")
    trial(hands, 1, "yes", "clear", on=under)
    advice = told(hands.picture, hands.shop.group(hands.job, "roof").id)[-1].advice
    assert advice is not None
    assert advice.result is result
    assert hands.picture.outcomes[-1].next_result == str(result)


def test_what_serves_rubbed_harder_is_adopted_so_whatever_a_trial_rubbed_less_says_since(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    usual = {"section_w_mm": 400.0, "section_h_mm": 400.0, "seconds": 40.0}
    smaller = usual | {"section_w_mm": 280.0, "section_h_mm": 280.0}

    def run(panel: str, technique: dict[str, float], cleared: str) -> None:
        made = hands.do(RecordTrial(hands.job, group.id, panel, key(hands, 3), technique=technique))
        hands.do(JudgeTrial(hands.job, made, cleared, "clear"))

    run("roof", usual, "no")
    run("roof", smaller, "yes")
    run("bonnet", usual, "no")
    as_usual = {"combination_id": key(hands, 3), "section_m2": 0.4 * 0.4, "polish_s": 40.0}
    harder = as_usual | {"section_m2": 0.28 * 0.28}
    with pytest.raises(Refused, match="last seen not to clear"):
        hands.do(AdoptProcess(hands.job, group.id, [as_usual], override="owner wants it lighter"))
    with pytest.raises(Refused, match="second panel"):
        hands.do(AdoptProcess(hands.job, group.id, [harder]))
    run("bonnet", smaller, "yes")
    run("tailgate", usual, "no")
    hands.do(AdoptProcess(hands.job, group.id, [harder]))
    made = [t.id for t in hands.picture.trials if t.section_w_mm == 280.0]
    assert list(adopted(hands).trial_ids) == made
    assert no_longer_seen(hands.picture, adopted(hands)) == ""


def test_what_served_rubbed_harder_is_not_adopted_after_its_combination_was_stopped_for_heat(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    usual = {"section_w_mm": 400.0, "section_h_mm": 400.0, "seconds": 40.0}
    smaller = usual | {"section_w_mm": 280.0, "section_h_mm": 280.0}
    for technique, seen in ((usual, ("no", "clear")), (smaller, ("yes", "clear")), (usual, ("", "", "heat"))):
        made = hands.do(RecordTrial(hands.job, group.id, "roof", key(hands, 3), technique=technique))
        hands.do(JudgeTrial(hands.job, made, *seen))
    harder = {"combination_id": key(hands, 3), "section_m2": 0.28 * 0.28, "polish_s": 40.0}
    with pytest.raises(Refused, match="stopped since"):
        hands.do(AdoptProcess(hands.job, group.id, [harder], override="one trial is enough"))


def test_what_was_stopped_for_heat_rubbed_so_is_not_adopted_so_because_it_ran_rubbed_less_since(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    usual = {"section_w_mm": 400.0, "section_h_mm": 400.0, "seconds": 40.0}
    smaller = usual | {"section_w_mm": 280.0, "section_h_mm": 280.0}

    def run(panel: str, technique: dict[str, float], *seen: str) -> None:
        made = hands.do(RecordTrial(hands.job, group.id, panel, key(hands, 3), technique=technique))
        hands.do(JudgeTrial(hands.job, made, *seen))

    run("roof", smaller, "", "", "heat")
    run("roof", usual, "yes", "clear")
    run("bonnet", usual, "yes", "clear")
    harder = {"combination_id": key(hands, 3), "section_m2": 0.28 * 0.28, "polish_s": 40.0}
    with pytest.raises(Refused, match="stopped for heat with a section of") as found:
        hands.do(AdoptProcess(hands.job, group.id, [harder]))
    assert (found.value.rule, found.value.may_override) == ("hot_before", True)
    hands.do(AdoptProcess(hands.job, group.id, [harder | {"section_m2": 0.16}]))
    run("tailgate", smaller, "yes", "clear")
    hands.do(AdoptProcess(hands.job, group.id, [harder]))
