"""Every row of the outcome table, from an entered outcome to what it says to do next and what it teaches the range."""

from __future__ import annotations

import pytest
from invented_findings import Hands

from detailbench.findings.trial_story import known_range, range_combinations, told
from detailbench.moves.finish_groups import NotePaintFeel
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.trials.outcome import Advice, Result

R = Result
ROTARY = 8
NOTHING = (None, None, None, False, False)  # cleared, finish clear, refined, trails, forbidden


def judged(hands: Hands, rung: int, *seen: str, on: str = "", panel: str = "roof") -> Advice:
    """A trial of this rung, judged; ``seen``: cleared and finish, or stopped and why."""
    group = hands.shop.group(hands.job, panel)
    combination = range_combinations(hands.picture, group.id)[rung].id
    made = hands.do(RecordTrial(hands.job, group.id, panel, combination, on_top_of=on))
    look(hands, made, *seen)
    return advice(hands)


def look(hands: Hands, trial: str, *seen: str) -> None:
    if seen[0] == "stopped":
        hands.do(JudgeTrial(hands.job, trial, stopped=seen[1]))
    else:
        hands.do(JudgeTrial(hands.job, trial, *seen))


def advice(hands: Hands, panel: str = "roof") -> Advice:
    found = told(hands.picture, hands.shop.group(hands.job, panel).id)[-1].advice
    assert found is not None
    return found


def learnt(hands: Hands, rung: int) -> tuple[object, ...]:
    seen = known_range(hands.picture, hands.shop.group(hands.job, "roof").id)[rung]
    return seen.cleared, seen.finish_clear, seen.refined, seen.trails, seen.forbidden


@pytest.mark.parametrize(
    ("rung", "seen", "result", "knows"),
    [
        (4, ("yes", "clear"), R.KEEP, (True, True, None, False, False)),
        (4, ("yes", "even_haze"), R.CLEAN_PAD, (True, False, None, False, False)),
        (ROTARY, ("yes", "trails"), R.TWO_STEPS, (True, None, None, True, False)),
        (4, ("no", "clear"), R.WIPE, (False, True, None, False, False)),
        (6, ("no", "trails"), R.STRONGER, (False, None, None, True, False)),
        (4, ("no", "even_haze"), R.OTHER_PAD, (False, False, None, False, False)),
        (4, ("cant_tell", "clear"), R.SECOND_LAMP, NOTHING),
        (4, ("cant_tell", "even_haze"), R.SECOND_LAMP, NOTHING),
        (4, ("yes", "pad_marks"), R.CLEAN_PAD, NOTHING),
        (4, ("no", "pad_marks"), R.CLEAN_PAD, NOTHING),
        (4, ("no", "towel_marks"), R.OTHER_TOWEL, NOTHING),
        (4, ("yes", "smear"), R.WIPE, NOTHING),
        (4, ("stopped", "heat"), R.COOLER, (None, None, None, False, True)),
        (4, ("stopped", "edge"), R.FRESH_PLACE, NOTHING),
        (4, ("stopped", "pad"), R.CLEAN_PAD, NOTHING),
        (4, ("stopped", "colour_on_pad"), R.ON_HOLD, (None, None, None, False, True)),
    ],
    ids=lambda v: "-".join(v) if isinstance(v, tuple) and v and isinstance(v[0], str) else None,
)
def test_a_row_says_what_to_do_and_teaches_what_it_may(
    hands: Hands, rung: int, seen: tuple[str, ...], result: Result, knows: tuple[object, ...]
) -> None:
    found = judged(hands, rung, *seen)
    assert found.result is result
    assert learnt(hands, rung) == knows
    # one change at a time: nothing, or one part of the combination or of the technique
    assert len(found.chosen.changes) <= 1


def test_heat_never_asks_for_more(hands: Hands) -> None:
    found = judged(hands, 4, "stopped", "heat")
    said = {found.result, *(o.result for o in found.next_options)}
    assert not said & {R.STRONGER, R.SLOWER_ARM, R.SMALLER_SECTION}


def test_hard_paint_with_haze_that_did_not_clear_needs_two_steps_and_doubts_the_order(hands: Hands) -> None:
    hands.do(NotePaintFeel(hands.job, ("roof",), "hard"))
    found = judged(hands, 3, "no", "even_haze")
    assert (found.result, found.flags_order) == (R.TWO_STEPS, True)


def test_haze_gets_a_clean_pad_on_top_and_only_then_the_next_milder(hands: Hands) -> None:
    assert judged(hands, 4, "yes", "even_haze").chosen.place == "on_top"
    first = hands.picture.trials[-1].id
    second = judged(hands, 4, "yes", "even_haze", on=first)
    assert (second.result, second.rung) == (R.MILDER, 3)
    assert learnt(hands, 4) == (True, False, None, False, False)
    judged(hands, 3, "no", "clear")
    again = judged(hands, 4, "yes", "even_haze")
    assert (again.result, again.starts_two_steps) == (R.TWO_STEPS, True)


def test_a_haze_that_a_clean_pad_takes_off_was_the_pads(hands: Hands) -> None:
    judged(hands, 4, "yes", "even_haze")
    found = judged(hands, 4, "yes", "clear", on=hands.picture.trials[-1].id)
    assert (found.result, found.starts_two_steps) == (R.KEEP, False)
    assert learnt(hands, 4) == (True, True, None, False, False)


def test_not_cleared_goes_from_the_wipe_to_technique_to_one_changed_part(hands: Hands) -> None:
    assert judged(hands, 2, "no", "clear").result is R.WIPE
    look(hands, hands.picture.trials[-1].id, "no", "clear")
    assert advice(hands).result is R.SLOWER_ARM
    assert judged(hands, 2, "no", "clear").result is R.SMALLER_SECTION
    last = judged(hands, 2, "no", "clear")
    assert (last.result, len(last.chosen.changes)) == (R.STRONGER, 1)


def test_cant_tell_goes_to_another_lamp_to_the_wipe_and_to_counting(hands: Hands) -> None:
    assert judged(hands, 4, "cant_tell", "clear").result is R.SECOND_LAMP
    trial = hands.picture.trials[-1].id
    results = []
    for _look in range(2):
        look(hands, trial, "cant_tell", "clear")
        results.append(advice(hands).result)
    assert results == [R.WIPE, R.COUNT]


def test_deep_marks_left_never_count_as_not_cleared(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    combination = range_combinations(hands.picture, group.id)[4].id
    made = hands.do(RecordTrial(hands.job, group.id, "roof", combination))
    hands.do(JudgeTrial(hands.job, made, "no", "clear", only_deep_left=True))
    assert learnt(hands, 4) == (True, True, None, False, False)
    assert advice(hands).result is R.KEEP
