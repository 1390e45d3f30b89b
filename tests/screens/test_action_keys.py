"""Which key means which act."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent

from detailbench.screens.actions import same_key
from detailbench.screens.frame.input_door import INPUT
from detailbench.screens.frame.wipe_lock import TOUCHES


@pytest.mark.parametrize(
    ("shortcut", "pressed", "text"),
    [("4", "4", "4"), ("/", "Shift+7", "/"), ("/", "Ctrl+Alt+7", "/"), ("n", "N", "n"), ("Ctrl+4", "Ctrl+4", "4")],
)
def test_a_sign_is_known_by_what_it_writes_on_any_layout(shortcut: str, pressed: str, text: str) -> None:
    assert same_key(shortcut, pressed, text)


@pytest.mark.parametrize("pressed", ["Ctrl+4", "Meta+4", "Alt+4"])
def test_a_figure_held_with_ctrl_is_not_the_figure_though_it_writes_it(pressed: str) -> None:
    assert not same_key("4", pressed, "4")


def test_what_a_filter_of_the_window_waits_for_passes_its_one_door() -> None:
    assert set(TOUCHES) <= INPUT
    assert {QEvent.Type.KeyPress, QEvent.Type.KeyRelease, QEvent.Type.Wheel} <= INPUT
