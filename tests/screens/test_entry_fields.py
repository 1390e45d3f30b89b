"""Fields: what is typed stays, doubt is asked at the place, nothing is modal."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import Typed, plausibility
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.number_field import NumberField
from detailbench.screens.entry.text_field import NoteField, TextField

Show = Callable[[QWidget], QWidget]


@pytest.fixture
def show(qtbot: QtBot) -> Show:
    kept: list[QWidget] = []

    def put(widget: QWidget) -> QWidget:
        box = QWidget()
        kept.append(box)
        column = QVBoxLayout(box)
        column.addWidget(widget)
        column.addWidget(QLineEdit())
        qtbot.addWidget(box)
        with qtbot.waitExposed(box):
            box.show()
        box.activateWindow()
        qtbot.waitUntil(box.isActiveWindow)
        return box

    return put


def enter(field: NumberField, text: str) -> None:
    field.line.setFocus()
    field.line.clear()
    for sign in text:
        if sign.isascii():
            QTest.keyClicks(field.line, sign)
        else:  # the test library knows no keys for these
            press = QKeyEvent(QEvent.Type.KeyPress, 0, Qt.KeyboardModifier.NoModifier, sign)
            QApplication.sendEvent(field.line, press)
    QTest.keyClick(field.line, Qt.Key.Key_Return)


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [("118", 118.0, "um"), ("118.5", 118.5, "um"), ("118,5", 118.5, "um"), ("4.62 mil", 4.62, "mil")],
)
def test_a_certain_value_is_entered_with_its_unit(show: Show, qtbot: QtBot, text: str, value: float, unit: str) -> None:
    field = NumberField("reading")
    show(field)
    with qtbot.waitSignal(field.committed) as entered:
        enter(field, text)
    assert entered.args is not None
    assert (entered.args[0].value, entered.args[0].unit) == (value, unit)
    assert field.line.text() == ""


def test_while_typing_the_field_shows_large_how_it_is_read(show: Show) -> None:
    field = NumberField("reading")
    show(field)
    field.line.setFocus()
    QTest.keyClicks(field.line, "118,5")
    assert field.reading.text() == "118.5\u00a0µm"
    QTest.keyClicks(field.line, "O")
    assert field.reading.text() == "–"


@pytest.mark.parametrize("text", ["118O", "-3", "∞", "12 34", "1.2.3,4"])
def test_what_cannot_be_read_stays_with_a_sentence(show: Show, qtbot: QtBot, text: str) -> None:
    field = NumberField("reading")
    show(field)
    with qtbot.assertNotEmitted(field.committed):
        enter(field, text)
    assert field.line.text() == text
    assert field.says.isVisible()
    assert field.says.text() == field.typed().sentence != ""
    assert field.line.accessibleDescription() == field.says.text()


@pytest.mark.parametrize(("answer", "value"), [(0, 1.234), (1, 1234.0)])
def test_a_doubtful_mark_is_asked_in_the_field_and_answered_by_one_key(
    show: Show, qtbot: QtBot, answer: int, value: float
) -> None:
    field = NumberField("reading")
    show(field)
    enter(field, "1.234")
    assert field.line.text() == "1.234"
    assert field.answers.isVisible()
    for _step in range(answer):
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Right)
    with qtbot.waitSignal(field.committed) as entered:
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    assert entered.args is not None
    assert entered.args[0].value == value
    assert field.line.hasFocus()


def test_nought_is_asked_and_one_more_enter_makes_it_no_value(show: Show, qtbot: QtBot) -> None:
    field = NumberField("reading")
    show(field)
    enter(field, "0")
    assert field.answers.isVisible()
    with qtbot.waitSignal(field.no_value_said), qtbot.assertNotEmitted(field.committed):
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    assert field.line.text() == ""


def test_a_value_out_of_the_usual_range_is_flagged_and_entered_without_a_question(show: Show, qtbot: QtBot) -> None:
    def flag(typed: Typed) -> str:
        odd = plausibility(typed.value, "um") if typed.value is not None else None
        return odd.sentence if odd else ""

    field = NumberField("reading", flag=flag)
    show(field)
    field.line.setFocus()
    QTest.keyClicks(field.line, "4.6")
    assert field.says.text() == "Did the gauge switch to mil?"
    with qtbot.waitSignal(field.committed):
        QTest.keyClick(field.line, Qt.Key.Key_Return)


def test_a_kept_value_shown_anew_never_overwrites_what_is_being_typed(show: Show) -> None:
    field = NumberField("minutes", expects="plain", unit="min", clears=False)
    show(field)
    field.set_value(35)
    assert field.line.text() == "35"
    assert field.reading.text() == "35\u00a0min"
    field.line.setFocus()
    field.line.selectAll()
    QTest.keyClicks(field.line, "4")
    field.set_value(50)
    assert field.line.text() == "4"


def test_text_is_entered_on_leaving_the_field_and_once_however_often_enter_is_struck(show: Show, qtbot: QtBot) -> None:
    field = TextField("keys")
    got: list[str] = []
    field.committed.connect(got.append)
    show(field)
    field.line.setFocus()
    QTest.keyClicks(field.line, "third hook")
    QTest.keyClick(field.line, Qt.Key.Key_Tab)
    field.line.setFocus()
    QTest.keyClick(field.line, Qt.Key.Key_Return)
    QTest.keyClick(field.line, Qt.Key.Key_Return)
    assert got == ["third hook"]


def test_text_that_will_not_do_stays_with_the_sentence_of_the_error(show: Show, qtbot: QtBot) -> None:
    def check(text: str) -> None:
        raise BadInput("A year has four figures.", field="year")

    field = TextField("year", check=check)
    show(field)
    field.line.setFocus()
    QTest.keyClicks(field.line, "61")
    with qtbot.assertNotEmitted(field.committed):
        QTest.keyClick(field.line, Qt.Key.Key_Return)
    assert field.text() == "61"
    assert field.says.text() == "A year has four figures."


def test_a_note_keeps_its_lines_and_tab_leaves_it(show: Show, qtbot: QtBot) -> None:
    field = NoteField("note")
    show(field)
    field.edit.setFocus()
    QTest.keyClicks(field.edit, "one")
    QTest.keyClick(field.edit, Qt.Key.Key_Return)
    QTest.keyClicks(field.edit, "<b>two</b>")
    with qtbot.waitSignal(field.committed) as entered:
        QTest.keyClick(field.edit, Qt.Key.Key_Tab)
    assert entered.args == ["one\n<b>two</b>"]


def test_passing_over_a_choice_changes_nothing_and_enter_picks(show: Show, qtbot: QtBot) -> None:
    row = ChoiceRow("surface", (("a", "dirty"), ("b", "washed"), ("c", "wiped"), ("d", "bare")), columns=2)
    show(row)
    row.set_value("a")
    row.take_focus()
    with qtbot.assertNotEmitted(row.chosen):
        QTest.keyClick(row.buttons["a"], Qt.Key.Key_Down)
    assert row.buttons["c"].hasFocus()
    assert row.value == "a"
    with qtbot.waitSignal(row.chosen) as picked:
        QTest.keyClick(row.buttons["c"], Qt.Key.Key_Return)
    assert picked.args == ["c"]
    assert [k for k, b in row.buttons.items() if b.isChecked()] == ["c"]


def test_a_chosen_choice_pressed_again_stays_chosen(show: Show, qtbot: QtBot) -> None:
    row = ChoiceRow("surface", (("a", "dirty"), ("b", "washed")))
    show(row)
    QTest.mouseClick(row.buttons["b"], Qt.MouseButton.LeftButton)
    QTest.mouseClick(row.buttons["b"], Qt.MouseButton.LeftButton)
    assert row.buttons["b"].isChecked()
    assert row.value == "b"
