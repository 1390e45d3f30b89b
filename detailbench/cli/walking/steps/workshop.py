"""Time, people, the workshop itself, taking back, and what an act was refused for."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from detailbench.cli.walking.kinds import MOMENT, PANEL, TEXT, Quantity, quantity, word
from detailbench.cli.walking.step import Step, flag, value

STAGES = ("arrival", "wash", "marks", "thickness", "trials", "work", "handover")


@dataclass(frozen=True, kw_only=True)
class SetClock(Step):
    verb = "clock"
    does = "it is this time from here on"
    at: datetime = value(MOMENT)


@dataclass(frozen=True, kw_only=True)
class Forward(Step):
    verb = "forward"
    does = "time passes"
    by: Quantity = value(quantity("s", "min", "h", "d"))


@dataclass(frozen=True, kw_only=True)
class EnterAs(Step):
    verb = "as"
    does = "who enters things from here on"
    person: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class GoToStage(Step):
    verb = "stage"
    does = "turn to a stage of the job"
    stage: str = value(word(*STAGES))


@dataclass(frozen=True, kw_only=True)
class ChoosePanel(Step):
    verb = "panel"
    does = "take a panel in hand"
    panel: str = value(PANEL)


@dataclass(frozen=True, kw_only=True)
class Undo(Step):
    verb = "undo"
    does = "take back the last act of the job (or of the shop)"
    shop: bool = flag()


@dataclass(frozen=True, kw_only=True)
class Redo(Step):
    verb = "redo"
    does = "do again what was last taken back"
    shop: bool = flag()


@dataclass(frozen=True, kw_only=True)
class Close(Step):
    verb = "close"
    does = "close the workshop as a person would"


@dataclass(frozen=True, kw_only=True)
class Reopen(Step):
    verb = "reopen"
    does = "open the workshop again"


@dataclass(frozen=True, kw_only=True)
class Kill(Step):
    verb = "kill"
    does = "the program ends here without being asked"


@dataclass(frozen=True, kw_only=True)
class WasRefused(Step):
    verb = "refused"
    does = "the act before was refused, with this in its sentence"
    part: str = value(TEXT)
