"""Walks are played in a folder of their own, with a passphrase for the invented shop's key."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.player import play
from detailbench.cli.walking.grammar import read_walk

PASSPHRASE = "an invented passphrase"


@pytest.fixture(scope="session")
def qapp_cls() -> object:
    """Dialogs are the window system's own nowhere: what stands in one of theirs nobody here could see."""
    from PySide6.QtCore import QCoreApplication, Qt  # the walks played through moves alone need no Qt

    from detailbench.screens.app import application

    QCoreApplication.setAttribute(Qt.ApplicationAttribute.AA_DontUseNativeDialogs)
    return lambda argv: application(argv)


@pytest.fixture
def beside(tmp_path: Path) -> Path:
    """A folder with the files the scripts speak of, as they lie beside the scripts."""
    for file in Path(__file__).parent.iterdir():
        if file.suffix in (".csv", ".txt", ".jpg"):
            shutil.copy(file, tmp_path)
    return tmp_path


@pytest.fixture
def hand(beside: Path, tmp_path: Path) -> Hand:
    """An empty hand on a new workshop."""
    return Hand(tmp_path / "workshop", tmp_path, tmp_path, PASSPHRASE)


@pytest.fixture
def walked(hand: Hand) -> Callable[[str], Hand]:
    """Play a script given as text; returns the hand after it."""

    def act(text: str) -> Hand:
        play(read_walk(text, "here.walk"), hand)
        return hand

    return act
