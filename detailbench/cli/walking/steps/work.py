"""The work, panel by panel."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import TEXT, Quantity, quantity, whole
from detailbench.cli.walking.step import Step, named, value


@dataclass(frozen=True, kw_only=True)
class StartWork(Step):
    verb = "start"
    does = "start the next step of the panel in hand; a reason sets a stop aside"
    step: int | None = named(whole(1))
    because: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class FinishWork(Step):
    verb = "finish"
    does = "the step running on the panel in hand is finished; the true time where the timer is not to be believed"
    after: Quantity | None = named(quantity("min"))


@dataclass(frozen=True, kw_only=True)
class PauseWork(Step):
    verb = "pause"
    does = "the step running on the panel in hand is paused"


@dataclass(frozen=True, kw_only=True)
class LeftRunning(Step):
    verb = "left-running"
    does = "the timer was left running: the time of this step is not known"


@dataclass(frozen=True, kw_only=True)
class Tick(Step):
    verb = "tick"
    does = "sections of the running step done, counted by hand"
    sections: int = value(whole())
