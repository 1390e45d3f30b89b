"""The sheet that says which rule stops an act."""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from detailbench.basics.errors import Refused
from detailbench.screens.frame.override_sheet import OverrideSheet
from detailbench.screens.look.dress import Dress

LONG = "Readings not confirmed by a gauge check: they release nothing. "


@pytest.mark.parametrize("lines", [1, 4])
def test_it_has_room_for_its_field_however_long_the_rule_is_and_after_a_short_reason(qtbot: QtBot, lines: int) -> None:
    over = QWidget()
    qtbot.addWidget(over)
    over.resize(900, 700)
    dress = Dress("bay", 96.0, 1.0)
    dress.wear(over)
    sheet = OverrideSheet(over, dress, lambda _move: None)
    with qtbot.waitExposed(over):
        over.show()
    sheet.setGeometry(0, 0, 450, sheet.height_for(450))
    sheet.ask(object(), Refused(LONG * lines, rule="invented", may_override=True))
    qtbot.waitUntil(lambda: sheet.height() >= sheet.height_for(450))
    sheet.reason.line.setText("x")
    sheet.set_aside()
    qtbot.waitUntil(lambda: sheet.reason.says.isVisible() and sheet.height() >= sheet.height_for(450))
