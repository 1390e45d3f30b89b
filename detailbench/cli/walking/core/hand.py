"""What the player has in hand while it plays: the bench, the time, the job, the panel, the last things made."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path

from detailbench.basics.clock import HandClock, SystemClock
from detailbench.basics.errors import DetailbenchError, Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.kinds import ALL
from detailbench.findings.panels import outline_of
from detailbench.moves.bench import Bench, Changes
from detailbench.moves.move import Move
from detailbench.record.picture import JobPicture


class Unmet(DetailbenchError):
    """Something the script expects is not so."""


@dataclass
class WalkClock:
    """The machine's time until the script sets one; from then on time passes only as the script says."""

    by_hand: HandClock | None = None

    def now(self) -> datetime:
        return SystemClock().now() if self.by_hand is None else self.by_hand.now()

    def set(self, at: datetime) -> None:
        self.by_hand = HandClock(at)

    def forward(self, by: timedelta) -> None:
        """Raises Refused while the time is the machine's own."""
        if self.by_hand is None:
            raise Refused(_("Set the clock first; real time cannot be moved on."), rule="clock")
        self.by_hand.at += by


@dataclass
class Hand:
    """``beside``: the folder files are read from; ``out``: where printed files go; ``said``: what the last act said;
    ``place``: a place chosen for the next reading."""

    folder: Path
    beside: Path
    out: Path
    passphrase: str | None = None
    clock: WalkClock = field(default_factory=WalkClock)
    person: str = ""
    job_id: str = ""
    panel: str = ""
    place: str = ""
    said: str = ""
    _bench: Bench | None = None

    @property
    def bench(self) -> Bench:
        """The open bench. Raises Refused after ``close`` or ``kill``."""
        if self._bench is None:
            raise Refused(_("The workshop is closed; write “reopen” first."), rule="closed")
        return self._bench

    def open(self) -> None:
        if self._bench is not None:
            raise Refused(_("The workshop is open already."), rule="open")
        bench = Bench(self.folder, self.clock, person=self.person)
        if bench.read_only is not None:
            bench.close()
            raise Refused(bench.read_only, rule="read_only")
        self._bench = bench

    def close(self) -> None:
        if self._bench is not None:
            self._bench.close()
            self._bench = None

    def drop(self) -> None:
        """The files are let go as the system does for a program that was ended; nothing else is done."""
        self.bench.store.close()
        self._bench = None

    def do(self, move: Move) -> Changes:
        changes = self.bench.do(move)
        self.said = f"{changes.says}. {changes.note}" if changes.note else changes.says
        return changes

    @property
    def job(self) -> str:
        """The job in hand. Raises Refused when there is none."""
        if not self.job_id:
            raise Refused(_("There is no job in hand; begin one or open one."), rule="no_job")
        return self.job_id

    @property
    def picture(self) -> JobPicture:
        return self.bench.job(self.job)

    def on_panel(self, panel: str = "") -> str:
        """The panel named, else the one in hand. Raises Refused when there is neither."""
        found = panel or self.panel
        if not found:
            raise Refused(_("There is no panel in hand; write “panel” first."), rule="no_panel")
        return found

    def panels(self, keys: tuple[str, ...]) -> tuple[str, ...]:
        """The panels named; *all* are those of the car."""
        return tuple(outline_of(self.picture).panels) if keys == (ALL,) else keys
