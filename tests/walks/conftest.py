"""Walks are played in a folder of their own, with a passphrase for the invented shop's key."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.player import play
from detailbench.cli.walking.grammar import read_walk

PASSPHRASE = "an invented passphrase"


@pytest.fixture
def hand(tmp_path: Path) -> Hand:
    """An empty hand on a new workshop."""
    return Hand(tmp_path / "workshop", tmp_path, tmp_path, PASSPHRASE)


@pytest.fixture
def walked(hand: Hand) -> Callable[[str], Hand]:
    """Play a script given as text; returns the hand after it."""

    def act(text: str) -> Hand:
        play(read_walk(text, "here.walk"), hand)
        return hand

    return act
