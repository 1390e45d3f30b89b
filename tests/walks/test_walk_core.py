"""The acceptance walks, played through moves alone."""

from __future__ import annotations

from pathlib import Path

import pytest

from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.player import play
from detailbench.cli.walking.grammar import read_walk_file

SCRIPTS = sorted(Path(__file__).parent.glob("*.walk"))


def test_the_acceptance_walks_are_there() -> None:
    assert {p.stem for p in SCRIPTS} >= {"small_first", "one_step", "two_steps_refinished_door_thin_wing"}


@pytest.mark.parametrize("script", SCRIPTS, ids=[p.stem for p in SCRIPTS])
def test_a_walk_goes_as_its_script_says(script: Path, hand: Hand) -> None:
    play(read_walk_file(script), hand)
