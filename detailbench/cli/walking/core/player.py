"""Plays a script: act after act, stopping at the first that cannot be done or is not as expected."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from detailbench.basics.errors import BadFile, DetailbenchError
from detailbench.basics.texts import _
from detailbench.cli.walking.core import (
    agreeing,
    arrival,
    expecting,
    handover,
    kit,
    layers,
    measuring,
    papers,
    safe,
    sending,
    shop,
    standing,
    surface,
    trying,
    washing,
    working,
    workshop,
)
from detailbench.cli.walking.core.hand import Hand, Unmet
from detailbench.cli.walking.step import Step
from detailbench.cli.walking.steps.workshop import WasRefused

ACTS: Mapping[type[Step], Callable[[Any, Hand], None]] = {
    cls: act
    for group in (
        workshop,
        shop,
        kit,
        arrival,
        surface,
        washing,
        measuring,
        layers,
        sending,
        working,
        trying,
        handover,
        standing,
        papers,
        agreeing,
        expecting,
        safe,
    )
    for cls, act in group.ACTS.items()
}


def play(steps: Sequence[Step], hand: Hand) -> None:
    """Open the workshop, carry out every step, close it. Raises BadFile naming script and line for the first act
    that is refused without the script saying so, or that is not as expected."""
    hand.open()
    try:
        refusal: str | None = None
        for i, step in enumerate(steps):
            if isinstance(step, WasRefused):
                _was_refused(step, refusal)
                continue
            after = steps[i + 1] if i + 1 < len(steps) else None
            refusal = _act(step, hand, may_be_refused=isinstance(after, WasRefused))
    finally:
        hand.close()


def _act(step: Step, hand: Hand, *, may_be_refused: bool) -> str | None:
    """The sentence an act was refused with, None when it was done."""
    try:
        ACTS[type(step)](step, hand)
    except Unmet as error:
        raise _stopped(step, str(error)) from error
    except DetailbenchError as error:
        if not may_be_refused:
            raise _stopped(step, str(error)) from error
        return str(error)
    return None


def _was_refused(step: WasRefused, refusal: str | None) -> None:
    if refusal is None:
        raise _stopped(step, _("the act before was not refused"))
    if step.part not in refusal:
        raise _stopped(step, _("“{part}” is not in: {sentence}").format(part=step.part, sentence=refusal))


def _stopped(step: Step, why: str) -> BadFile:
    sentence = _("{name}, line {line}, {verb}: {why}").format(name=step.name, line=step.line, verb=step.verb, why=why)
    return BadFile(sentence, name=step.name, line=step.line)
