"""One class for each verb of a walk, or one for each hand where the act differs."""

from __future__ import annotations

from typing import Any, ClassVar

from detailbench.cli.walking.step import Step
from window.walk import Walk


class Act:
    """``step``: what it plays; ``hand``: the only kind of hand it is for, or empty for both."""

    step: ClassVar[type[Step]]
    hand: ClassVar[str] = ""

    @staticmethod
    def play(said: Any, walk: Walk) -> None:
        """Do what the line says, on the screen."""
        raise AssertionError("an act says what it does")
