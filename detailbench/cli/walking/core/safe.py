"""Kept safe: backup, an owner forgotten, a clock that was wrong."""

from __future__ import annotations

from detailbench.cli.safe import said_of
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.steps import safe as s
from detailbench.moves.clock import NoteClock
from detailbench.moves.forgetting import ForgetOwner
from detailbench.record.backing_up import back_up, make_backup_folder


def backup(step: s.BackUp, hand: Hand) -> None:
    folder = hand.out / step.folder
    make_backup_folder(folder)
    hand.said = said_of(back_up(hand.bench.folder, folder, hand.clock.now()))


def forget(_step: s.ForgetTheOwner, hand: Hand) -> None:
    hand.do(ForgetOwner(hand.job))


def note_clock(step: s.NoteTheClock, hand: Hand) -> None:
    hand.do(NoteClock(step.words))


def stay(_step: s.StayHere, hand: Hand) -> None:
    hand.said = hand.bench.accept_place().says


ACTS = {s.StayHere: stay, s.BackUp: backup, s.ForgetTheOwner: forget, s.NoteTheClock: note_clock}
