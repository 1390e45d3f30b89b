from __future__ import annotations

import pytest

from detailbench.basics.errors import BadInput
from detailbench.marks import Intent, cannot_be_target, first_intent, kind, kinds, makes_no_abrasive_zone
from detailbench.marks.severity import Scale, depth_words, severity_words, size_class

TOUCHED = [k for k in kinds() if k.first_intent in ("target", "reduce", "by_depth")]


@pytest.mark.parametrize("one", TOUCHED, ids=lambda k: k.key)
def test_depth_two_proposes_reduce_and_deeper_proposes_leave(one: object) -> None:
    assert first_intent(one, 2) is Intent.REDUCE  # type: ignore[arg-type]
    assert [first_intent(one, d) for d in (3, 4, 5)] == [Intent.LEAVE] * 3  # type: ignore[arg-type]


def test_where_only_the_depth_tells_nothing_is_proposed_without_it() -> None:
    assert first_intent(kind("scratch_single")) is None
    assert first_intent(kind("scratch_single"), 0) is Intent.TARGET
    assert first_intent(kind("scratch_single"), 1) is Intent.TARGET


def test_a_kind_to_be_reduced_stays_so_when_shallow() -> None:
    assert first_intent(kind("snow_ice"), 0) is Intent.REDUCE
    assert first_intent(kind("swirl"), 0) is Intent.TARGET


@pytest.mark.parametrize("key", ["orange_peel", "clear_failure", "dent", "iron"])
def test_depth_never_turns_what_polishing_does_not_touch_into_a_target(key: str) -> None:
    wanted = Intent(kind(key).first_intent)
    assert {first_intent(kind(key), d) for d in (None, 0, 1, 2, 3, 4, 5)} == {wanted}


@pytest.mark.parametrize("depth", [-1, 6])
def test_a_depth_outside_the_scale_is_refused(depth: int) -> None:
    with pytest.raises(BadInput, match="0 to 5"):
        first_intent(kind("swirl"), depth)


@pytest.mark.parametrize("key", [k.key for k in kinds() if k.first_intent == "clean_first" and k.surface == "paint"])
def test_what_is_cleaned_first_becomes_a_target_only_once_decontaminated(key: str) -> None:
    for clean in ("dirty", "washed"):
        assert "cleaned off first" in (cannot_be_target(kind(key), clean) or "")
    for clean in ("decontaminated", "wiped"):
        assert cannot_be_target(kind(key), clean) is None


@pytest.mark.parametrize("clean", ["dirty", "washed", "decontaminated", "wiped"])
def test_a_hold_kind_and_another_surface_are_never_targets(clean: str) -> None:
    for one in kinds():
        if one.first_intent == "hold":
            assert "no abrasive" in (cannot_be_target(one, clean) or "")
        elif one.surface != "paint":
            assert "not paint" in (cannot_be_target(one, clean) or "")


def test_swirl_may_be_a_target_in_any_state() -> None:
    assert cannot_be_target(kind("swirl"), "dirty") is None


def test_hold_makes_a_no_abrasive_zone_whatever_else_was_chosen() -> None:
    assert makes_no_abrasive_zone(kind("blisters"))
    assert makes_no_abrasive_zone(kind("blisters"), "leave")
    assert makes_no_abrasive_zone(kind("swirl"), "hold")
    assert not makes_no_abrasive_zone(kind("swirl"), "target")
    assert not makes_no_abrasive_zone(kind("swirl"))


def test_there_are_six_intents_each_with_its_words() -> None:
    assert len({i.label for i in Intent}) == len({i.says for i in Intent}) == 6
    assert Intent.CLEAN_FIRST.label == "clean first"


def test_every_digit_has_its_own_words() -> None:
    for scale in Scale:
        assert len({severity_words(d, scale) for d in range(6)}) == 6
    assert len({depth_words(d) for d in range(6)}) == 6


@pytest.mark.parametrize("digit", [-1, 6, True, 2.0])
def test_a_digit_off_the_scale_is_refused(digit: object) -> None:
    with pytest.raises(BadInput):
        severity_words(digit)  # type: ignore[arg-type]
    with pytest.raises(BadInput):
        depth_words(digit)  # type: ignore[arg-type]


@pytest.mark.parametrize("size", [0.0, -1.0, float("nan")])
def test_a_size_seen_by_eye_is_above_zero(size: float) -> None:
    with pytest.raises(BadInput, match="above 0 mm"):
        size_class(size)
