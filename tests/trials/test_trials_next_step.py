from __future__ import annotations

import itertools

import pytest

from detailbench.basics.errors import BadInput
from detailbench.trials import (
    Advice,
    Cleared,
    Context,
    Finish,
    Movement,
    Outcome,
    Result,
    Rung,
    RungSeen,
    Stopped,
    next_step,
)
from detailbench.trials.kit import starter_kit
from detailbench.trials.table import ROWS, row_for

RANGE = starter_kit().fresh_range()
AT = {seen.rung.key: i for i, seen in enumerate(RANGE)}
OUTCOMES = [Outcome(c, f) for c in Cleared for f in Finish] + [Outcome(stopped=s) for s in Stopped]
LOOKED = frozenset({Result.WIPE, Result.SECOND_LAMP})
EVERYTHING = frozenset(Result)


def known(**seen: dict[str, bool]) -> tuple[RungSeen, ...]:
    return tuple(RungSeen(r.rung, **seen.get(r.rung.key, {})) for r in RANGE)


def ask(cleared: str, finish: str, at: str, already: frozenset[Result] = frozenset(), **more: object) -> Advice:
    range_ = more.pop("range_", RANGE)
    return next_step(
        Outcome(Cleared(cleared), Finish(finish)),
        Context(range_, AT[at], already=already, **more),  # type: ignore[arg-type]
    )


# what each row says


def test_cleared_and_clear_is_kept() -> None:
    advice = ask("yes", "clear", "medium_medium", clear_coat="known")
    assert advice.result is Result.KEEP
    assert advice.next_options == ()
    assert (advice.teaches, advice.about) == (True, "both")


@pytest.mark.parametrize("clear_coat", ["thin", "unknown"])
def test_where_the_clear_coat_is_thin_or_unknown_one_milder_trial_is_offered_with_its_minutes(clear_coat: str) -> None:
    advice = ask("yes", "clear", "medium_medium", clear_coat=clear_coat, trial_minutes=9.0)
    assert [(o.result, o.rung, o.minutes) for o in advice.next_options] == [
        (Result.MILDER, AT["medium_finishing"], 9.0)
    ]
    assert "about 9 minutes" in advice.next_options[0].sentence


def test_no_milder_trial_is_offered_where_the_milder_one_is_known_to_fail() -> None:
    advice = ask("yes", "clear", "medium_medium", range_=known(medium_finishing={"cleared": False}))
    assert advice.next_options == ()


def test_haze_after_clearing_first_gets_a_clean_pad_on_top_then_a_milder_one_then_two_steps() -> None:
    advice = ask("yes", "even_haze", "firm_cutting")
    assert (advice.result, advice.chosen.place) == (Result.CLEAN_PAD, "on_top")
    second = ask("yes", "even_haze", "firm_cutting", frozenset({Result.CLEAN_PAD}))
    assert (second.result, second.rung) == (Result.MILDER, AT["firm_medium"])
    assert not second.starts_two_steps
    third = ask(
        "yes",
        "even_haze",
        "firm_cutting",
        frozenset({Result.CLEAN_PAD}),
        range_=known(firm_medium={"cleared": False, "finish_clear": True}),
    )
    assert (third.result, third.rung, third.chosen.place) == (Result.TWO_STEPS, AT["firm_medium"], "on_top")
    assert third.starts_two_steps
    assert third.teaches


@pytest.mark.parametrize("at", ["forced_fibre_cutting", "rotary_wool_cutting"])
def test_trails_after_clearing_keep_the_cut_and_finish_with_free_orbital_movement(at: str) -> None:
    advice = ask("yes", "trails", at)
    assert advice.result is Result.TWO_STEPS
    assert advice.rung is not None
    assert RANGE[advice.rung].rung.movement is Movement.FREE_ORBITAL
    assert advice.chosen.place == "on_top"
    assert (advice.about, advice.starts_two_steps) == ("cleared", True)


def test_a_lower_level_beside_other_ways_is_a_choice_and_says_not_that_nothing_is_left() -> None:
    advice = ask("yes", "even_haze", "firm_cutting")
    said = {o.result: o.sentence for o in advice.next_options}
    assert len(said) > 1
    assert said[Result.LOWER_LEVEL] == "Or stop here: agree a lower level with the owner."


def test_trails_without_a_free_orbital_in_the_range_lead_to_the_owner() -> None:
    driven = tuple(s for s in RANGE if s.rung.movement is not Movement.FREE_ORBITAL)
    advice = next_step(Outcome(Cleared.YES, Finish.TRAILS), Context(driven, 1))
    assert advice.result is Result.LOWER_LEVEL
    assert "free orbital" in advice.sentence
    assert not advice.starts_two_steps


def test_not_cleared_and_clear_goes_from_the_wipe_through_technique_to_one_changed_part() -> None:
    done: list[Result] = []
    walk = []
    for _ in range(4):
        advice = ask("no", "clear", "medium_finishing", frozenset(done))
        walk.append(advice.result)
        done.append(advice.result)
        assert advice.teaches
        assert "smeared" not in advice.sentence
    assert walk == [Result.WIPE, Result.SLOWER_ARM, Result.SMALLER_SECTION, Result.STRONGER]


def test_the_shops_order_says_whether_compound_or_pad_comes_first() -> None:
    done = frozenset({Result.WIPE, Result.SLOWER_ARM, Result.SMALLER_SECTION})
    compound = ask("no", "clear", "medium_finishing", done, order=("compound", "pad"))
    assert compound.chosen.changes == ("compound",)
    pads = tuple(
        RungSeen(r)
        for r in (
            RANGE[AT["medium_finishing"]].rung,
            RANGE[AT["medium_medium"]].rung,
            Rung(
                "firm_finishing", "firm, finishing", "orbital", Movement.FREE_ORBITAL, "foam_firm", "foam", "finishing"
            ),
        )
    )
    for order, wanted in ((("pad", "compound"), 2), (("compound", "pad"), 1)):
        advice = next_step(
            Outcome(Cleared.NO, Finish.CLEAR),
            Context(pads, 0, already=done, order=order),
        )
        assert advice.rung == wanted
        assert advice.chosen.changes == (order[0],)


def test_when_nothing_stronger_is_left_a_lower_level_is_agreed() -> None:
    done = frozenset({Result.WIPE, Result.SLOWER_ARM, Result.SMALLER_SECTION})
    assert ask("no", "clear", "rotary_wool_cutting", done).result is Result.LOWER_LEVEL


def test_a_slower_arm_is_not_offered_beyond_the_working_time() -> None:
    advice = ask("no", "clear", "firm_medium", frozenset({Result.WIPE}), time_left=False)
    assert advice.result is Result.SMALLER_SECTION


def test_after_a_cooler_technique_nothing_that_heats_one_place_more_is_offered() -> None:
    advice = ask("no", "clear", "firm_medium", frozenset({Result.WIPE, Result.COOLER}))
    assert advice.result is Result.STRONGER
    assert not {o.result for o in advice.next_options} & {Result.SLOWER_ARM, Result.SMALLER_SECTION}


def test_not_cleared_with_trails_goes_stronger_for_the_cut_and_finishes_free() -> None:
    advice = ask("no", "trails", "forced_fibre_cutting")
    assert advice.result is Result.STRONGER
    assert advice.chosen.then is not None
    assert RANGE[advice.chosen.then].rung.movement is Movement.FREE_ORBITAL
    assert (advice.about, advice.starts_two_steps) == ("cleared", True)


@pytest.mark.parametrize("feel", [None, "soft", "sticky", "medium"])
def test_haze_without_clearing_tries_the_same_compound_on_another_pad_material(feel: str | None) -> None:
    advice = ask("no", "even_haze", "firm_cutting", feel=feel)
    assert (advice.result, advice.rung) == (Result.OTHER_PAD, AT["fibre_cutting"])
    assert advice.flags_order
    assert advice.teaches


def test_haze_without_clearing_on_hard_paint_means_two_steps() -> None:
    advice = ask("no", "even_haze", "firm_medium", feel="hard")
    assert advice.result is Result.TWO_STEPS
    assert advice.rung == AT["firm_cutting"]
    assert advice.chosen.then is not None
    assert advice.chosen.then < AT["firm_cutting"]
    assert advice.starts_two_steps
    assert advice.flags_order


def test_a_stronger_one_already_known_to_clear_with_haze_leads_to_two_steps() -> None:
    done = frozenset({Result.WIPE, Result.SLOWER_ARM, Result.SMALLER_SECTION})
    seen = {k.rung.key: {"cleared": True, "finish_clear": False} for k in RANGE[AT["firm_cutting"] :]}
    advice = ask("no", "clear", "firm_medium", done, range_=known(**seen))
    assert (advice.result, advice.rung) == (Result.TWO_STEPS, AT["firm_cutting"])


@pytest.mark.parametrize("finish", ["clear", "even_haze"])
def test_cant_tell_looks_again_and_teaches_nothing(finish: str) -> None:
    assert ask("cant_tell", finish, "firm_medium").result is Result.SECOND_LAMP
    assert ask("cant_tell", finish, "firm_medium", frozenset({Result.SECOND_LAMP})).result is Result.WIPE
    last = ask("cant_tell", finish, "firm_medium", LOOKED)
    assert last.result is Result.COUNT
    assert not last.teaches


@pytest.mark.parametrize("cleared", list(Cleared))
@pytest.mark.parametrize(
    ("finish", "result", "place", "words"),
    [
        (Finish.PAD_MARKS, Result.CLEAN_PAD, "fresh", "Old sanding marks look alike"),
        (Finish.TOWEL_MARKS, Result.OTHER_TOWEL, "same", "more lubricant"),
        (Finish.SMEAR, Result.WIPE, "same", "Still smeared"),
    ],
)
def test_a_finish_that_hides_the_marks_teaches_nothing(
    cleared: Cleared, finish: Finish, result: Result, place: str, words: str
) -> None:
    advice = next_step(Outcome(cleared, finish), Context(RANGE, 4))
    assert (advice.result, advice.chosen.place, advice.teaches) == (result, place, False)
    assert advice.rung in (None, 4)
    assert words in advice.sentence


def test_heat_asks_for_cooler_then_for_milder() -> None:
    advice = next_step(Outcome(stopped=Stopped.HEAT), Context(RANGE, 4))
    assert (advice.result, advice.rung) == (Result.COOLER, 4)
    assert (advice.forbids, advice.forbids_what) == (True, "technique")
    again = next_step(Outcome(stopped=Stopped.HEAT), Context(RANGE, 4, already=frozenset({Result.COOLER})))
    assert (again.result, again.rung) == (Result.MILDER, 3)


@pytest.mark.parametrize(
    ("paint", "mishap"),
    [("clear_over_colour", True), ("single_stage", False), ("tinted_clear", None), ("unknown", None)],
)
def test_colour_on_the_pad_puts_the_panel_on_hold(paint: str, mishap: bool | None) -> None:
    advice = next_step(Outcome(stopped=Stopped.COLOUR_ON_PAD), Context(RANGE, 4, paint_system=paint))
    assert advice.result is Result.ON_HOLD
    assert advice.next_options == ()
    assert (advice.forbids, advice.forbids_what, advice.mishap) == (True, "panel", mishap)


@pytest.mark.parametrize(("stopped", "result"), [(Stopped.EDGE, Result.FRESH_PLACE), (Stopped.PAD, Result.CLEAN_PAD)])
def test_an_edge_or_a_pad_means_the_same_combination_again(stopped: Stopped, result: Result) -> None:
    advice = next_step(Outcome(stopped=stopped), Context(RANGE, 4))
    assert (advice.result, advice.rung, advice.teaches, advice.forbids) == (result, 4, False, False)
    assert "sanding" not in advice.sentence


def test_depth_three_and_up_never_counts_as_not_cleared() -> None:
    advice = next_step(Outcome(Cleared.NO, Finish.CLEAR, only_deep_left=True), Context(RANGE, 4, clear_coat="known"))
    assert advice.result is Result.KEEP
    assert "depth 3" in advice.sentence


def test_on_light_paint_a_second_lamp_or_gloss_is_suggested() -> None:
    light = ask("yes", "clear", "firm_medium", colour="light", clear_coat="known")
    assert "light paint" in light.sentence
    assert [o.result for o in light.next_options] == [Result.SECOND_LAMP]
    assert "light paint" not in ask("yes", "clear", "firm_medium", colour="dark").sentence


@pytest.mark.parametrize("cleared", list(Cleared))
@pytest.mark.parametrize("finish", [Finish.CLEAR, Finish.EVEN_HAZE])
def test_a_trial_on_top_speaks_about_the_finish_only(cleared: Cleared, finish: Finish) -> None:
    context = Context(RANGE, 1, on_top_of=5, cut_cleared=True)
    advice = next_step(Outcome(cleared, finish), context)
    assert advice.about == "finish"
    assert advice.starts_two_steps
    wanted = Result.KEEP if finish is Finish.CLEAR else Result.CLEAN_PAD
    assert advice.result is wanted


def test_refining_goes_down_first_and_then_up_but_stays_below_the_cut() -> None:
    done = frozenset({Result.CLEAN_PAD})
    haze = Outcome(Cleared.YES, Finish.EVEN_HAZE)
    assert next_step(haze, Context(RANGE, 2, on_top_of=4, already=done)).rung == 1
    seen = known(soft_finishing={"refined": False}, medium_finishing={"refined": False})
    up = next_step(haze, Context(seen, 2, on_top_of=4, already=done))
    assert (up.result, up.rung) == (Result.STRONGER, 3)
    none = known(**{k: {"refined": False} for k in ("soft_finishing", "medium_finishing", "firm_medium")})
    assert next_step(haze, Context(none, 2, on_top_of=4, already=done)).result is Result.LOWER_LEVEL


def test_both_steps_are_kept_only_where_the_cut_beneath_cleared() -> None:
    clear = Outcome(Cleared.YES, Finish.CLEAR)
    failed = next_step(clear, Context(RANGE, 1, on_top_of=4, cut_cleared=False))
    assert (failed.result, failed.chosen.place, failed.chosen.then) == (Result.STRONGER, "fresh", 1)
    assert (failed.rung or 0) > 4
    assert "the cut beneath did not clear" in failed.sentence
    unknown = next_step(clear, Context(RANGE, 1, on_top_of=4))
    assert unknown.result is Result.SECOND_LAMP
    assert "Whether the cut beneath cleared is not known" in unknown.sentence
    assert failed.about == unknown.about == "finish"
    # of three steps the lowest is the cut
    deep = next_step(clear, Context(RANGE, 1, on_top_of=2, cut=5, cut_cleared=False))
    assert (deep.rung or 0) > 5
    # where nothing stronger is left the level is agreed
    last = Context(RANGE, 1, on_top_of=len(RANGE) - 1, cut_cleared=False)
    assert next_step(clear, last).result is Result.LOWER_LEVEL


def test_trails_on_top_call_for_a_free_orbital_one() -> None:
    advice = next_step(Outcome(Cleared.YES, Finish.TRAILS), Context(RANGE, 6, on_top_of=8))
    assert advice.result is Result.OTHER_MOVEMENT
    assert advice.rung is not None
    assert RANGE[advice.rung].rung.movement is Movement.FREE_ORBITAL


def test_a_forbidden_combination_is_not_kept() -> None:
    barred = known(firm_medium={"forbidden": True})
    advice = ask("yes", "clear", "firm_medium", range_=barred)
    assert (advice.result, advice.rung) == (Result.MILDER, AT["medium_medium"])
    assert "not to be used here" in advice.sentence


def test_every_row_of_the_table_speaks_for_some_outcome() -> None:
    spoken = set()
    for outcome in OUTCOMES:
        for at in (4, 8):
            for cut in (None, 8):
                for feel, known in itertools.product((None, "hard"), (True, False, None)):
                    context = Context(RANGE, at, on_top_of=cut, feel=feel, cut_cleared=known)
                    spoken.add(row_for(outcome, context).key)
    assert spoken == {row.key for row in ROWS}


def test_an_outcome_is_a_finding_or_a_stop_never_both_or_neither() -> None:
    with pytest.raises(BadInput, match="both"):
        Outcome(Cleared.YES)
    with pytest.raises(BadInput, match="both"):
        Outcome(None, Finish.CLEAR)
    with pytest.raises(BadInput, match="stopped"):
        Outcome(Cleared.YES, Finish.CLEAR, Stopped.HEAT)


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("at", 9),
        ("at", -1),
        ("on_top_of", 9),
        ("clear_coat", "lots"),
        ("colour", "red"),
        ("feel", "odd"),
        ("paint_system", "?"),
    ],
)
def test_a_context_that_makes_no_sense_is_refused(field: str, value: object) -> None:
    with pytest.raises(BadInput):
        Context(RANGE, **{"at": 0, field: value})  # type: ignore[arg-type]


def test_every_result_and_finding_has_its_words() -> None:
    for words in (Result, Cleared, Finish, Stopped, Movement):
        labels = [w.label for w in words]
        assert len(labels) == len(set(labels))
