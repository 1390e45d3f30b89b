"""What is put to the owner: the sheet every stage can open, worked by keys alone and by mouse alone."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from day_window import click, click_line, field, keys, lines, press, press_button, scrolls, texts
from invented_limits import PutLimit
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from detailbench.basics.clock import HandClock
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.bench import Bench
from detailbench.moves.mishaps import RecordMishap
from detailbench.screens.asking import AskAbout
from detailbench.screens.window import Window

CTRL = Qt.KeyboardModifier.ControlModifier
ASKED = "Put to the owner"
QUESTION = "what the owner is asked, as it is printed"


def tab_to(name: str) -> None:
    """Tab until what is called so has the keys."""
    for _turn in range(120):
        now = QApplication.focusWidget()
        if now is not None and now.accessibleName() == name:
            return
        press(Qt.Key.Key_Tab)
    raise AssertionError(name)


def focused() -> str:
    now = QApplication.focusWidget()
    return "" if now is None else now.accessibleName()


def open_by_keys(window: Window) -> None:
    QTest.keyClick(window, Qt.Key.Key_O, CTRL)


def open_by_mouse(window: Window) -> None:
    click(window.owner.owner_button)


def test_asked_and_answered_by_keys_alone(window: Window, bench: Bench, job_id: str) -> None:
    open_by_keys(window)
    tab_to("Ask")
    press(Qt.Key.Key_Return)
    tab_to("about: extra work")
    press(Qt.Key.Key_Space)
    tab_to("price, EUR")
    keys("120,5")
    tab_to(QUESTION)
    keys("the tailgate too?")
    press(Qt.Key.Key_Return)
    kept = bench.job(job_id).agreements[0]
    assert (kept.about, kept.question, str(kept.price), kept.answer) == (
        "extra_work", "the tailgate too?", "120.5", "open",
    )  # fmt: skip
    assert focused() == "answer: yes"
    tab_to("answer: yes, with a remark")
    press(Qt.Key.Key_Space)
    tab_to("how: by telephone")
    press(Qt.Key.Key_Space)
    tab_to("owner's remark, printed as typed")
    keys("before Friday")
    press(Qt.Key.Key_Return)
    kept = bench.job(job_id).agreements[0]
    assert (kept.answer, kept.channel, bench.job(job_id).said(kept.id, "remarks")) == (
        "yes_with_remark", "telephone", "before Friday",
    )  # fmt: skip
    press(Qt.Key.Key_Escape)
    assert not window.owner.agreements.isVisible()  # type: ignore[union-attr]


def test_asked_and_answered_by_mouse_alone(window: Window, bench: Bench, job_id: str) -> None:
    open_by_mouse(window)
    press_button(window, "Ask")
    press_button(window, "about: something else")
    click(field(window, QUESTION))
    keys("may we keep the car until Monday?")
    press_button(window, "Put it to the owner")
    press_button(window, "answer: no")
    press_button(window, "how: by message")
    click(field(window, "text of the message"))
    keys("no, Friday")
    press_button(window, "Enter the answer")
    kept = bench.job(job_id).agreements[0]
    assert (kept.answer, kept.channel, bench.job(job_id).said(kept.id, "message")) == ("no", "message", "no, Friday")
    assert "no, by message" in lines(window, ASKED)[0]


@pytest.mark.parametrize("opened", [open_by_keys, open_by_mouse])
def test_it_lies_over_pages_too_and_the_rest_stays_alive(
    window: Window, job_id: str, opened: Callable[[Window], None]
) -> None:
    opened(window)
    assert window.owner.agreements is not None
    assert not window.owner.agreements.isModal()
    window.context.select_panel("bonnet")
    assert window.owner.agreements.isVisible()
    opened(window)
    assert not window.owner.agreements.isVisible()


def test_nothing_opens_while_no_job_is(window: Window) -> None:
    window.open_job(None)
    open_by_keys(window)
    QTest.keyClick(window, Qt.Key.Key_F4)
    assert (window.owner.agreements, window.owner.mishaps) == (None, None)
    assert not window.owner.mishap_button.isEnabled()


def test_half_an_answer_is_said_in_the_sheet_and_the_typing_stays(window: Window, bench: Bench, job_id: str) -> None:
    bench.do(AskOwner(job_id, "other", "keep it until Monday?"))
    open_by_mouse(window)
    press_button(window, "Enter the answer")
    assert "Choose the answer first." in texts(window)
    press_button(window, "answer: yes")
    press_button(window, "how: by telephone")
    click(field(window, "answered at"))
    keys("yesterday")
    press_button(window, "Enter the answer")
    assert "18:10 for today" in texts(window)
    assert field(window, "answered at").text() == "yesterday"
    assert bench.job(job_id).agreements[0].answer == "open"


def test_an_answer_given_earlier_today_is_kept_with_its_time(
    window: Window, bench: Bench, job_id: str, clock: HandClock
) -> None:
    bench.do(AskOwner(job_id, "other", "keep it until Monday?"))
    open_by_mouse(window)
    press_button(window, "answer: yes")
    press_button(window, "how: by telephone")
    click(field(window, "answered at"))
    keys("00:05")
    press_button(window, "Enter the answer")
    at = bench.job(job_id).agreements[0].answered_at
    assert at == clock.now().replace(hour=0, minute=5, second=0, microsecond=0)


@pytest.mark.parametrize("typed", ["two hundred", "1,234", "12 EUR"])
def test_a_price_that_cannot_be_read_stays_with_a_sentence(
    window: Window, bench: Bench, job_id: str, typed: str
) -> None:
    open_by_mouse(window)
    press_button(window, "Ask")
    click(field(window, "price, EUR"))
    keys(typed)
    click(field(window, QUESTION))
    keys("more?")
    press_button(window, "Put it to the owner")
    assert bench.job(job_id).agreements == ()
    assert field(window, "price, EUR").text() == typed
    assert field(window, "price, EUR").accessibleDescription() != ""


def test_an_answered_question_asked_again_replaces_it(window: Window, bench: Bench, job_id: str) -> None:
    first = bench.do(AskOwner(job_id, "extra_work", "the tailgate?")).id
    bench.do(AnswerOwner(job_id, first, "no", "telephone"))
    open_by_mouse(window)
    click_line(window, ASKED, "the tailgate?")
    press_button(window, "Ask again: a new question replaces this one")
    assert field(window, QUESTION).text() == "the tailgate?"
    press_button(window, "Put it to the owner")
    assert [a.replaces for a in bench.job(job_id).agreements] == ["", first]


def test_the_panel_in_hand_or_its_finish_group_is_asked_about(window: Window, bench: Bench, job_id: str) -> None:
    window.context.select_panel("roof")
    open_by_mouse(window)
    press_button(window, "Ask")
    press_button(window, "about: sanding")
    press_button(window, "for: this panel")
    click(field(window, QUESTION))
    keys("level the run here?")
    press_button(window, "Put it to the owner")
    assert bench.job(job_id).agreements[0].panels == ("roof",)


def test_a_limit_is_lifted_from_its_own_line(window: Window, bench: Bench, job_id: str) -> None:
    bench.do(PutLimit(job_id, "no_sanding"))
    bench.do(PutLimit(job_id, "bar_panel", ("roof",)))
    open_by_mouse(window)
    press_button(window, "Limits")
    click_line(window, "Limits of this job", "roof")
    press_button(window, "Ask about the chosen one")
    click(field(window, QUESTION))
    keys("may the roof be polished after all?")
    press_button(window, "Put it to the owner")
    press_button(window, "answer: yes")
    press_button(window, "how: by telephone")
    press_button(window, "Enter the answer")
    assert [bool(m.lifted_by) for m in bench.job(job_id).limits] == [False, True]
    press_button(window, "Limits")
    assert ["lifted" in line for line in lines(window, "Limits of this job")] == [False, True]


@pytest.mark.parametrize("look", ["bay", "desk"])
@pytest.mark.parametrize("page", ["Asked", "Ask", "Limits"])
def test_it_has_room_for_everything_and_each_thing_has_a_name(
    make_window: Callable[..., Window], bench: Bench, job_id: str, look: str, page: str
) -> None:
    bench.do(PutLimit(job_id, "other", words="no radio, a child sleeps next door after seven in the evening"))
    for n in range(6):
        bench.do(AskOwner(job_id, "extra_work", f"a longer question about the {n + 1}th thing that came to light?"))
    window = make_window(look=look)
    open_by_mouse(window)
    press_button(window, page)
    sheet = window.owner.agreements
    assert sheet is not None
    assert scrolls(window) == []
    assert window.centre.rect().contains(sheet.geometry())
    for part in sheet.findChildren(QWidget):
        if part.isVisible() and part.focusPolicy() & Qt.FocusPolicy.TabFocus:
            assert part.accessibleName(), part
            low = part.mapTo(sheet, part.rect().bottomRight())
            assert sheet.rect().contains(low), part.accessibleName()


def test_another_job_begins_with_empty_fields(window: Window, bench: Bench, job_id: str) -> None:
    open_by_mouse(window)
    press_button(window, "Ask")
    click(field(window, QUESTION))
    keys("somebody else's business?")
    window.open_job(None)
    window.open_job(job_id)
    assert window.owner.agreements is not None
    assert not window.owner.agreements.isVisible()
    open_by_mouse(window)
    press_button(window, "Ask")
    assert field(window, QUESTION).text() == ""


def test_nobody_chosen_leads_to_the_choice_and_back_with_what_was_typed(
    window: Window, bench: Bench, job_id: str
) -> None:
    bench.do(AskOwner(job_id, "other", "keep it until Monday?"))
    bench.person = ""
    open_by_mouse(window)
    press_button(window, "answer: yes, with a remark")
    press_button(window, "how: by telephone")
    click(field(window, "owner's remark, printed as typed"))
    keys("only until noon")
    press(Qt.Key.Key_Return)
    assert window.centre.person.isVisible()
    press(Qt.Key.Key_Return)  # the first of the list has the keys
    assert bench.person
    assert (focused(), field(window, "owner's remark, printed as typed").text()) == (
        "owner's remark, printed as typed", "only until noon",
    )  # fmt: skip
    press(Qt.Key.Key_Return)
    assert bench.job(job_id).agreements[0].answer == "yes_with_remark"


def test_the_button_says_how_many_questions_wait(window: Window, bench: Bench, job_id: str) -> None:
    button = window.owner.owner_button
    assert (button.text(), button.accessibleDescription()) == ("Owner", "")
    first = bench.do(AskOwner(job_id, "other", "keep it until Monday?")).id
    bench.do(AskOwner(job_id, "other", "and the wheels?"))
    assert (button.text(), button.accessibleDescription()) == ("Owner 2", "2 questions open")
    bench.do(AnswerOwner(job_id, first, "no", "telephone"))
    assert (button.text(), button.accessibleDescription()) == ("Owner 1", "1 question open")


def test_a_question_begun_elsewhere_does_not_take_over_what_was_typed_for_another(
    window: Window, bench: Bench, job_id: str
) -> None:
    mishap = bench.do(RecordMishap(job_id, "a rub mark")).id
    open_by_mouse(window)
    press_button(window, "Ask")
    click(field(window, QUESTION))
    keys("the tailgate too?")
    window.context.owner_wanted.emit(AskAbout("ask", "mishap", mishap_id=mishap))
    assert field(window, QUESTION).text() == ""


def test_a_proof_goes_with_the_answer(window: Window, bench: Bench, job_id: str, tmp_path: Path) -> None:
    bench.do(AskOwner(job_id, "other", "keep it until Monday?"))
    file = tmp_path / "message.png"
    image = QImage(8, 8, QImage.Format.Format_RGB32)
    image.fill(0)
    assert image.save(str(file))
    open_by_mouse(window)
    sheet = window.owner.agreements
    assert sheet is not None
    sheet.asked.choose_files = lambda _over, _title, _filters, _many, chosen: chosen([file])
    press_button(window, "answer: yes")
    press_button(window, "how: by telephone")
    press_button(window, "Add a proof of the answer")
    assert "message.png goes with the answer" in texts(window)
    press_button(window, "Enter the answer")
    kept = bench.job(job_id).agreements[0]
    assert bench.evidence_bytes(bench.job(job_id).evidence_of(kept.evidence_id).sha256) == file.read_bytes()
    assert "a proof is kept" in lines(window, ASKED)[0]


def test_a_list_names_who_took_the_answer(window: Window, bench: Bench, job_id: str) -> None:
    first = bench.do(AskOwner(job_id, "extra_work", "the tailgate?")).id
    bench.do(AnswerOwner(job_id, first, "yes", "present"))
    open_by_mouse(window)
    assert lines(window, ASKED)[0].endswith("AB")


def test_how_an_answer_came_is_not_chosen_for_anyone(window: Window, bench: Bench, job_id: str) -> None:
    bench.do(AskOwner(job_id, "other", "keep it until Monday?"))
    bench.do(AskOwner(job_id, "other", "and the wheels?"))
    open_by_mouse(window)
    press_button(window, "answer: no")
    press_button(window, "Enter the answer")
    assert "Say how it was answered" in texts(window)
    press_button(window, "how: present")
    press_button(window, "Enter the answer")
    assert [a.answer for a in bench.job(job_id).agreements].count("no") == 1
    assert window.owner.agreements is not None
    assert window.owner.agreements.asked.channel.value == ""
