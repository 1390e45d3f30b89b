"""Kept safe: backup, an owner forgotten, a clock that was wrong."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import TEXT
from detailbench.cli.walking.step import Step, value


@dataclass(frozen=True, kw_only=True)
class BackUp(Step):
    verb = "backup to"
    does = "back the workshop up into this folder, made if it is not there"
    folder: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class ForgetTheOwner(Step):
    verb = "forget owner"
    does = "delete the personal data of the car in hand, for good"


@dataclass(frozen=True, kw_only=True)
class StayHere(Step):
    verb = "stay here"
    does = "work where the workshop lies, although things can get lost there"


@dataclass(frozen=True, kw_only=True)
class NoteTheClock(Step):
    verb = "note clock"
    does = "say what is wrong with the computer's clock"
    words: str = value(TEXT)
