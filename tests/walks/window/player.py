"""Plays a script's steps on the screen, and says line and sentence where it cannot go on."""

from __future__ import annotations

from collections.abc import Sequence

from detailbench.cli.walking.step import Step
from detailbench.cli.walking.steps.workshop import WasRefused
from window.act import Act
from window.acts import (
    agreeing,
    arrival,
    dialling,
    expecting,
    handover,
    kit,
    layers,
    marks,
    papers,
    photos,
    safe,
    sending,
    shop,
    standing,
    surface,
    thickness,
    trials,
    washing,
    work,
    workshop,
)
from window.stuck import Stuck, Unusable
from window.walk import SHORT_MS, Walk

GROUPS = (
    workshop,
    shop,
    kit,
    arrival,
    surface,
    washing,
    marks,
    photos,
    thickness,
    layers,
    trials,
    dialling,
    work,
    papers,
    handover,
    standing,
    agreeing,
    safe,
    sending,
    expecting,
)


def acts_of(kind: str) -> dict[type[Step], type[Act]]:
    """What this kind of hand can do, by step."""
    found: dict[type[Step], type[Act]] = {}
    for group in GROUPS:
        for cls in vars(group).values():
            if isinstance(cls, type) and issubclass(cls, Act) and cls is not Act and cls.hand in ("", kind):
                found[cls.step] = cls
    return found


def play(steps: Sequence[Step], walk: Walk) -> None:
    """Play every step. Raises Stuck naming the line, with a picture of the window beside the workshop."""
    acts = acts_of(walk.kind)
    for said, after in zip(steps, (*steps[1:], None), strict=True):
        where = f"{said.name}:{said.line} ({said.verb}, by {walk.kind})"
        if type(said) not in acts:
            raise Stuck(f"{where}: no hand knows how to do this on the screen")
        walk.until_rest = isinstance(after, WasRefused)
        walk.patience_ms = SHORT_MS if walk.until_rest else walk.longest_ms
        try:
            acts[type(said)].play(said, walk)
            walk.check_words()
        except Unusable as trouble:
            if not isinstance(after, WasRefused):
                raise _told(where, trouble, said, walk) from trouble
        except (Stuck, RuntimeError, AssertionError) as trouble:
            raise _told(where, trouble, said, walk) from trouble
    walk.check_witness()


def _told(where: str, trouble: Exception, said: Step, walk: Walk) -> Stuck:
    picture = walk.beside / f"stuck_{walk.kind}_{said.line}.png"
    walk.photograph(picture)
    return Stuck(f"{where}: {trouble}. The window then: {picture}")
