"""Trials whose timer was started and whose end nobody saw: a window closed, the program ended, nobody came back.

What a timer plans is kept as done only when its passes are over. So a trial it left says so after a restart as well,
whatever ended the program.
"""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.record.things import Trial

STARTED, LEFT = "started", "left_running"


def end_unknown(trial: Trial) -> bool:
    """Its timer was started, its passes were not seen to end, and nobody has said yet how long they took."""
    return trial.timer == STARTED


def time_words(trial: Trial) -> str:
    """That it was left running; empty where its time is known, or simply was not noted."""
    return _("left running, time unknown") if trial.timer in (STARTED, LEFT) else ""


def say_the_time() -> str:
    """What is to be done before such a trial can be judged."""
    return _(
        "Its timer was left running, time unknown: say how long the passes took, or that nobody knows, or strike the "
        "trial out."
    )
