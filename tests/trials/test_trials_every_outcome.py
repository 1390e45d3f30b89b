from __future__ import annotations

import itertools
from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from detailbench.trials import Cleared, Context, Finish, Movement, Outcome, Result, Rung, RungSeen, Stopped, next_step
from detailbench.trials.kit import starter_kit
from detailbench.trials.rungs import changes

RANGE = starter_kit().fresh_range()
AT = {seen.rung.key: i for i, seen in enumerate(RANGE)}
OUTCOMES = [Outcome(c, f) for c in Cleared for f in Finish] + [Outcome(stopped=s) for s in Stopped]
LOOKED = frozenset({Result.WIPE, Result.SECOND_LAMP})
EVERYTHING = frozenset(Result)


def small_ranges() -> Iterator[tuple[RungSeen, ...]]:
    """Ranges of one to three rungs with every movement pattern, and every knowledge of every rung."""
    states = (
        {},
        {"cleared": True, "finish_clear": True},
        {"cleared": True, "finish_clear": False},
        {"cleared": False, "finish_clear": True, "refined": False},
        {"forbidden": True},
    )
    pads = (("foam_soft", "foam", "medium"), ("fibre", "fibre", "medium"), ("fibre", "fibre", "cutting"))
    for movements in ((Movement.FREE_ORBITAL,), (Movement.FREE_ORBITAL,) * 3, (Movement.HAND,) * 2):
        yield from _seen(movements, pads, states)
    yield from _seen((Movement.FREE_ORBITAL, Movement.FORCED_ORBITAL, Movement.ROTARY), pads, states)
    yield from _seen((Movement.ROTARY, Movement.ROTARY), pads, states)


def _seen(movements, pads, states) -> Iterator[tuple[RungSeen, ...]]:  # type: ignore[no-untyped-def]
    rungs = [Rung(f"r{i}", f"rung {i}", m.value, m, *pads[i]) for i, m in enumerate(movements)]
    for chosen in itertools.product(states, repeat=len(rungs)):
        yield tuple(RungSeen(r, **s) for r, s in zip(rungs, chosen, strict=True))


def check(outcome: Outcome, context: Context) -> None:
    """What must hold whatever comes out of a trial."""
    advice = next_step(outcome, context)
    for option in (advice.chosen, *advice.next_options):
        assert option.sentence.strip()
        assert "{" not in option.sentence
        for rung in (option.rung, option.then):
            if rung is not None:
                assert 0 <= rung < len(context.range)
                cooled = rung == context.at and Result.COOLER in context.already
                assert cooled or not context.range[rung].forbidden
        if outcome.stopped is Stopped.HEAT:
            assert option.result not in (Result.STRONGER, Result.TWO_STEPS, Result.SLOWER_ARM, Result.SMALLER_SECTION)
        if option.rung is not None and option.rung != context.at and option.result is not Result.TWO_STEPS:
            # on top of a cut that did not clear, what changes is the cut
            base = context.on_top_of if advice.row == "on top, clear, the cut did not clear" else context.at
            assert option.changes == changes(context.range[base].rung, context.range[option.rung].rung)
            if len(option.changes) > 1:
                assert "at once" in option.sentence or "milder trial" in option.sentence
        elif option.result is not Result.TWO_STEPS:
            assert len(option.changes) <= 1
        if option.result is Result.TWO_STEPS and option.place == "fresh":
            assert option.then is not None
    results = [o.result for o in (advice.chosen, *advice.next_options)]
    assert len(results) == len(set(results))
    assert advice.teaches == (advice.about != "nothing")
    assert advice.forbids == (outcome.stopped in (Stopped.HEAT, Stopped.COLOUR_ON_PAD))
    if outcome.stopped is not None or outcome.cleared is Cleared.CANT_TELL:
        assert advice.about in ("nothing", "finish")


@pytest.mark.parametrize(
    "already", [frozenset(), LOOKED | {Result.CLEAN_PAD}, EVERYTHING], ids=["first", "some", "all"]
)
def test_every_outcome_on_every_small_range_gets_an_answer(already: frozenset[Result]) -> None:
    for range_ in small_ranges():
        for at in range(len(range_)):
            for outcome in OUTCOMES:
                check(outcome, Context(range_, at, already=already))


def test_every_outcome_on_top_of_every_cut_gets_an_answer() -> None:
    for already in (frozenset(), EVERYTHING):
        for at, cut in itertools.product(range(len(RANGE)), repeat=2):
            for outcome, cleared in itertools.product(OUTCOMES, (True, False, None)):
                check(outcome, Context(RANGE, at, on_top_of=cut, already=already, cut_cleared=cleared))


@settings(max_examples=300, deadline=None)
@given(
    st.sampled_from(OUTCOMES),
    st.lists(
        st.builds(
            dict,
            cleared=st.sampled_from([None, True, False]),
            finish_clear=st.sampled_from([None, True, False]),
            refined=st.sampled_from([None, True, False]),
            forbidden=st.booleans(),
        ),
        min_size=9,
        max_size=9,
    ),
    st.integers(0, 8),
    st.none() | st.integers(0, 8),
    st.frozensets(st.sampled_from(list(Result))),
    st.sampled_from(["known", "thin", "unknown"]),
    st.sampled_from(["dark", "mid", "light"]),
    st.sampled_from([None, "soft", "medium", "hard", "sticky"]),
    st.booleans(),
)
def test_any_outcome_in_any_context_of_the_starter_range_gets_an_answer(  # type: ignore[no-untyped-def]
    outcome, seen, at, cut, already, coat, colour, feel, time_left
) -> None:
    range_ = tuple(RungSeen(r.rung, **s) for r, s in zip(RANGE, seen, strict=True))
    context = Context(
        range_, at, on_top_of=cut, already=already, clear_coat=coat, colour=colour, feel=feel, time_left=time_left
    )
    check(outcome, context)


def test_in_the_starter_range_the_next_stronger_always_differs_in_one_part_only() -> None:
    for at in range(len(RANGE)):
        for feel in (None, "hard"):
            for outcome in OUTCOMES:
                advice = next_step(outcome, Context(RANGE, at, feel=feel, already=LOOKED | {Result.CLEAN_PAD}))
                for option in (advice.chosen, *advice.next_options):
                    assert len(option.changes) <= 1


def test_where_no_combination_differs_in_one_part_the_sentence_says_so() -> None:
    two = (RANGE[0], RANGE[AT["firm_cutting"]])
    done = frozenset({Result.WIPE, Result.SLOWER_ARM, Result.SMALLER_SECTION})
    advice = next_step(Outcome(Cleared.NO, Finish.CLEAR), Context(two, 0, already=done))
    assert advice.chosen.changes == ("pad", "compound")
    assert "It changes pad and compound at once" in advice.sentence
