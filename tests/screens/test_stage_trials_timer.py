"""The trial's timer: phases by themselves, repeats ignored, left running after its plan."""

from __future__ import annotations

from datetime import datetime, timedelta, timezone

import pytest
from invented_shop import InventedShop, invented, prepared
from pytestqt.qtbot import QtBot
from stage_scenes import ready_job, shown_window

from detailbench.findings.settings import DEFAULTS
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.stages.trials.timer import LEFT_AFTER_S, SHOP_SETS, TrialTimer, seconds_words

__all__ = ["invented", "prepared"]

NINE = datetime(2031, 3, 10, 9, 0, tzinfo=timezone(timedelta(hours=1)))


AS_SHIPPED = {key: float(DEFAULTS[f"{key}_s"].value) for key in SHOP_SETS}


def begun(passes_s: float, prime: bool, turns: int = 0, **lengths_s: float) -> TrialTimer:
    """A timer as the shop's settings come, but for ``lengths_s``."""
    return TrialTimer.begin("t", NINE, passes_s=passes_s, prime=prime, lengths_s=AS_SHIPPED | lengths_s, turns=turns)


def after(seconds: float) -> datetime:
    return NINE + timedelta(seconds=seconds)


def phases(timer: TrialTimer) -> list[str]:
    """The phase at each second of the plan, repeats left out."""
    seen: list[str] = []
    for second in range(int(timer.plan_s) + 1):
        key = timer.at(after(second)).phase.key
        if not seen or seen[-1] != key:
            seen.append(key)
    return seen


def test_the_phases_follow_one_another_by_themselves() -> None:
    timer = begun(passes_s=60, prime=True)
    assert phases(timer) == [
        "count_in", "prime", "spread", "passes", "wipe", "wait", "panel_wipe", "second_lamp", "over",
    ]  # fmt: skip


def test_a_pad_already_primed_is_not_primed_again() -> None:
    assert "prime" not in phases(begun(passes_s=60, prime=False))


def test_the_shop_says_how_long_a_phase_takes_and_leaves_one_out() -> None:
    timer = begun(passes_s=60, prime=True, wait=200, second_lamp=0)
    assert [p.key for p in timer.phases][-3:] == ["wipe", "wait", "panel_wipe"]
    assert timer.plan_s == begun(passes_s=60, prime=True).plan_s + 80 - 30


def test_the_count_in_takes_ten_seconds() -> None:
    timer = begun(passes_s=60, prime=False)
    assert timer.at(after(9.9)).phase.key == "count_in"
    assert timer.at(after(10)).phase.key == "spread"


def test_seconds_left_and_what_follows_are_told() -> None:
    standing = begun(passes_s=60, prime=True).at(after(15))
    assert standing.left_s == pytest.approx(15)
    assert standing.following is not None
    assert standing.following.key == "spread"


def test_it_is_left_running_sixty_seconds_after_its_plan_and_not_before() -> None:
    timer = begun(passes_s=60, prime=True)
    assert not timer.at(after(timer.plan_s + LEFT_AFTER_S - 0.1)).left_running
    assert timer.at(after(timer.plan_s + LEFT_AFTER_S)).left_running
    assert LEFT_AFTER_S == 60


def test_a_press_within_a_second_is_the_same_press() -> None:
    timer = begun(passes_s=60, prime=False)
    assert timer.is_repeat(after(0.9))
    assert not timer.is_repeat(after(1.0))


def test_each_pass_is_told_as_its_share_of_the_seconds() -> None:
    timer = begun(passes_s=60, prime=False, turns=4)  # passes begin 30 s in
    told = [timer.words(timer.at(after(s))) for s in (29, 30, 44.9, 45, 75, 89.9, 90)]
    assert told == ["spread", "pass 1 of 4", "pass 1 of 4", "pass 2 of 4", "pass 4 of 4", "pass 4 of 4", "wipe"]


def test_after_the_wipe_two_minutes_are_waited_before_the_panel_wipe_and_the_second_lamp() -> None:
    timer = begun(passes_s=60, prime=False)  # the wipe ends 120 s in
    assert [timer.at(after(s)).phase.key for s in (120, 239.9, 240, 270, 299.9, 300)] == [
        "wait", "wait", "panel_wipe", "second_lamp", "second_lamp", "over",
    ]  # fmt: skip


def test_passes_made_are_counted_only_within_their_phase() -> None:
    timer = begun(passes_s=60, prime=False)  # passes begin 30 s in
    assert timer.passes_done_s(after(20)) == 0
    assert timer.passes_done_s(after(45)) == pytest.approx(15)
    assert timer.passes_done_s(after(500)) == pytest.approx(60)


def test_a_clock_set_back_counts_as_no_time_at_all() -> None:
    assert begun(passes_s=60, prime=True).at(after(-3600)).left_s == pytest.approx(10)


def test_nought_is_shown_only_when_nothing_is_left() -> None:
    assert seconds_words(0.2) == "0:01"
    assert seconds_words(0) == "0:00"
    assert seconds_words(65) == "1:05"


def test_every_phase_and_every_pass_is_told_once_so_that_it_is_heard_and_flashes(
    qtbot: QtBot, invented: InventedShop
) -> None:
    job = ready_job(invented, "bonnet")
    stage = TrialsStage()
    window = shown_window(qtbot, invented, job, stage)
    window.context.select_panel("bonnet")
    told: list[str] = []
    window.context.noticed.connect(lambda sentence, kind: told.append(sentence) if kind == "timer" else None)
    assert stage.hand is not None
    stage.hand.start_or_stop()
    assert window.notices.accessibleDescription() == "timer: get ready"
    assert (window.notices.kind, window.flash.kind) == ("next", "next")
    for _second in range(310):
        invented.clock.forward(seconds=1)
        stage.hand.tick()
    assert told == [
        "get ready", "prime the pad", "spread", "pass 1 of 4", "pass 2 of 4", "pass 3 of 4", "pass 4 of 4",
        "wipe", "wait", "panel wipe, look", "second lamp", "over: what do you see?",
    ]  # fmt: skip
