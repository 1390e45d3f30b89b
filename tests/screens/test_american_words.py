"""In America the window speaks of hoods, fenders and rockers."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from every_text import spoken
from PySide6.QtWidgets import QApplication

from detailbench.basics.texts import SOURCE, speak
from detailbench.screens.window import Window


@pytest.fixture
def america() -> Iterator[None]:
    speak("en_US")
    yield
    speak(SOURCE)


def test_the_map_names_the_panels_in_american_words(america: None, make_window: Callable[..., Window]) -> None:
    said = set(spoken(make_window()))
    assert {"hood", "left front fender", "right rocker panel", "liftgate"} <= said
    assert not {"bonnet", "left front wing", "right sill", "tailgate"} & said


def test_the_card_names_the_chosen_panel_in_american_words(america: None, make_window: Callable[..., Window]) -> None:
    window = make_window()
    window.context.select_panel("wing_front_r")
    QApplication.processEvents()
    assert window.centre.card.title.text() == "Right front fender"


@pytest.mark.parametrize(
    ("typed", "guess"),
    [("hood", "hood"), ("l fr fe", "left front fender"), ("bonnet", "hood"), ("roc r", "right rocker")],
)
def test_a_panel_is_found_by_its_american_and_its_british_name(
    america: None, make_window: Callable[..., Window], typed: str, guess: str
) -> None:
    window = make_window()
    window.find_panel()
    window.centre.finder.line.setText(typed)
    assert window.centre.finder.guess.text().startswith(guess)
