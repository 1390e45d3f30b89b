"""A rule or an owner's limit stops an act: what the window does with it, by keys and by mouse."""

from __future__ import annotations

import pytest
from day_window import click, field, keys, press, press_button, texts
from invented_limits import PutLimit
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from detailbench.findings.trial_story import range_combinations
from detailbench.moves.agreeing import AcknowledgeLimits
from detailbench.moves.bench import Bench
from detailbench.moves.starter import StockStarterKit
from detailbench.moves.surface import HoldPanel
from detailbench.moves.trials import RecordTrial
from detailbench.screens.window import Window

REASON = "reason, in at least two words"
SET_ASIDE = "Set the rule aside"
READ = "I have read them"
WORDS = "no radio after seven"


@pytest.fixture
def trial(bench: Bench, job_id: str) -> RecordTrial:
    """A trial on the roof, as a card would ask for it."""
    bench.do(StockStarterKit())
    picture = bench.job(job_id)
    group = next(g for g in picture.groups if "roof" in g.panels)
    return RecordTrial(job_id, group.id, "roof", range_combinations(picture, group.id)[0].id)


def focused() -> str:
    now = QApplication.focusWidget()
    return "" if now is None else now.accessibleName()


@pytest.mark.parametrize("reason", ["x", ". .", "- owner", "ok"])
def test_a_reason_needs_words_and_the_typing_stays(
    window: Window, bench: Bench, job_id: str, trial: RecordTrial, reason: str
) -> None:
    bench.do(HoldPanel(job_id, "roof", "waits for the owner"))
    window.context.do(trial)
    keys(reason)
    press(Qt.Key.Key_Return)
    assert "A reason needs at least two words" in texts(window)
    assert field(window, REASON).text() == reason
    assert (bench.job(job_id).trials, bench.job(job_id).overrides) == ((), ())


def test_a_rule_is_set_aside_with_words_and_a_name(
    window: Window, bench: Bench, job_id: str, trial: RecordTrial
) -> None:
    bench.do(HoldPanel(job_id, "roof", "waits for the owner"))
    window.context.do(trial)
    keys("owner agreed by telephone")
    press_button(window, SET_ASIDE)
    kept = bench.job(job_id).overrides[0]
    assert (kept.rule, kept.reason, kept.entered_by) == ("held", "owner agreed by telephone", bench.person)
    assert not window.override.isVisible()


def test_with_nobody_chosen_it_leads_to_the_choice_and_comes_back_with_what_was_typed(
    window: Window, bench: Bench, job_id: str, trial: RecordTrial
) -> None:
    bench.do(HoldPanel(job_id, "roof", "waits for the owner"))
    bench.person = ""
    window.context.do(trial)
    keys("owner agreed by telephone")
    press(Qt.Key.Key_Return)
    assert window.centre.person.isVisible()
    assert "Choose who you are first" in texts(window)
    press(Qt.Key.Key_Return)
    assert (focused(), field(window, REASON).text()) == (REASON, "owner agreed by telephone")
    assert bench.job(job_id).trials == ()
    press(Qt.Key.Key_Return)
    assert [o.entered_by for o in bench.job(job_id).overrides] == [bench.person]
    assert len(bench.job(job_id).trials) == 1


def test_the_fifth_time_for_one_reason_the_window_asks_whether_the_rule_still_fits(
    window: Window, bench: Bench, job_id: str, trial: RecordTrial
) -> None:
    bench.do(HoldPanel(job_id, "roof", "waits for the owner"))
    said = []
    for _time in range(5):
        window.context.do(trial)
        keys("owner agreed by telephone")
        press(Qt.Key.Key_Return)
        said.append("this rule stops you every time" in window.notices.text)
    assert said == [False] * 4 + [True]
    assert window.notices.kind == "flagged"


def test_who_rather_asks_the_owner_has_the_sheet_of_the_rule_out_of_the_way(
    window: Window, bench: Bench, job_id: str, trial: RecordTrial
) -> None:
    bench.do(HoldPanel(job_id, "roof", "waits for the owner"))
    window.context.do(trial)
    assert window.override.isVisible()
    click(window.owner.owner_button)
    assert not window.override.isVisible()
    assert window.owner.agreements is not None
    assert window.owner.agreements.isVisible()


def test_an_owners_limit_is_not_set_aside(window: Window, bench: Bench, job_id: str, trial: RecordTrial) -> None:
    bench.do(PutLimit(job_id, "bar_panel", ("roof",)))
    window.context.do(trial)
    assert not window.override.isVisible()
    assert "The owner does not want this panel touched" in window.notices.text


def test_another_limit_is_shown_and_read_with_one_key(
    window: Window, bench: Bench, job_id: str, trial: RecordTrial
) -> None:
    bench.do(PutLimit(job_id, "other", words=WORDS))
    window.context.do(trial)
    assert WORDS in window.notices.text
    assert focused() == READ
    press(Qt.Key.Key_Space)
    assert [s.entered_by for s in bench.job(job_id).limits_seen] == [bench.person]
    assert not window.owner.agreements.isVisible()  # type: ignore[union-attr]
    assert bench.job(job_id).trials == ()  # reading is not starting
    window.context.do(trial)
    assert len(bench.job(job_id).trials) == 1
    assert WORDS in window.notices.text


def test_another_limit_is_read_by_mouse_under_a_name(
    window: Window, bench: Bench, job_id: str, trial: RecordTrial
) -> None:
    bench.do(PutLimit(job_id, "other", words=WORDS))
    bench.person = ""
    window.context.do(trial)
    press_button(window, READ)
    assert window.centre.person.isVisible()
    press_button(window, "Who is entering: Ana Berg")
    press_button(window, READ)
    assert [s.entered_by for s in bench.job(job_id).limits_seen] == [bench.person]


def test_what_was_read_today_is_not_asked_again(window: Window, bench: Bench, job_id: str, trial: RecordTrial) -> None:
    bench.do(PutLimit(job_id, "other", words=WORDS))
    bench.do(AcknowledgeLimits(job_id))
    window.context.do(trial)
    assert window.owner.agreements is None
