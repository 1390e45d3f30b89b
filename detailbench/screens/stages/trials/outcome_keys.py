"""The letters that enter an outcome. Letters only: a figure could be taken for a gauge's value."""

from __future__ import annotations

from collections.abc import Mapping

from detailbench.trials.outcome import Cleared, Finish, Stopped

CLEARED: Mapping[Cleared, str] = {Cleared.YES: "y", Cleared.CANT_TELL: "x", Cleared.NO: "n"}
FINISHES: Mapping[Finish, str] = {
    Finish.CLEAR: "c",
    Finish.EVEN_HAZE: "h",
    Finish.TRAILS: "t",
    Finish.PAD_MARKS: "p",
    Finish.TOWEL_MARKS: "w",
    Finish.SMEAR: "s",
}
STOPS: Mapping[Stopped, str] = {Stopped.HEAT: "o", Stopped.COLOUR_ON_PAD: "l", Stopped.EDGE: "e", Stopped.PAD: "d"}


def key_choices(keys: Mapping[Cleared, str] | Mapping[Finish, str] | Mapping[Stopped, str]) -> list[tuple[str, str]]:
    """Choices for a row, each with its letter."""
    return [(str(each), f"{each.label}  {letter.upper()}") for each, letter in keys.items()]
