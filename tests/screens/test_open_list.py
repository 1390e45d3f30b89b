"""The list of lines that every page uses."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from detailbench.screens.look.dress import Dress
from detailbench.screens.stages.work_parts.open_list import Line, OpenList


def test_tab_through_a_list_chooses_nothing_and_an_arrow_chooses_its_first_line(qtbot: QtBot) -> None:
    whole = QWidget()
    qtbot.addWidget(whole)
    before, made = QLineEdit(), OpenList(Dress("bay", 96.0, 1.0), "lines")
    column = QVBoxLayout(whole)
    column.addWidget(before)
    column.addWidget(made)
    made.set_lines([Line("a", "first"), Line("b", "second")])
    chosen: list[str] = []
    made.chosen.connect(chosen.append)
    with qtbot.waitExposed(whole):
        whole.show()
    whole.activateWindow()
    before.setFocus()
    qtbot.waitUntil(before.hasFocus)
    QTest.keyClick(before, Qt.Key.Key_Tab)
    qtbot.waitUntil(made.hasFocus)
    assert (made.key, chosen) == ("", [])
    QTest.keyClick(made, Qt.Key.Key_Down)
    assert (made.key, chosen) == ("a", ["a"])
