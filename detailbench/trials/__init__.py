"""Trials: kit, range and technique, load × path, the outcome table, where to start, what may be adopted."""

from detailbench.trials.adopt import TrialSeen, confirming_due, may_adopt, mildest_words
from detailbench.trials.movement import Movement
from detailbench.trials.next_step import next_step
from detailbench.trials.outcome import Advice, Cleared, Context, Finish, Option, Outcome, Result, Stopped
from detailbench.trials.rungs import Rung, RungSeen
from detailbench.trials.start import Start, where_to_start

__all__ = [
    "Advice",
    "Cleared",
    "Context",
    "Finish",
    "Movement",
    "Option",
    "Outcome",
    "Result",
    "Rung",
    "RungSeen",
    "Start",
    "Stopped",
    "TrialSeen",
    "confirming_due",
    "may_adopt",
    "mildest_words",
    "next_step",
    "where_to_start",
]
