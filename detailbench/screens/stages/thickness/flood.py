"""Tells a gauge that sends old values all at once from a hand that measures. No Qt here: times in, decisions out."""

from __future__ import annotations

from dataclasses import dataclass, field

APART_MS = 500.0  # no hand moves a gauge to another place, waits for it and triggers as fast as this
MANY = 4


@dataclass
class FloodWatch:
    """Ask ``comes`` for each value, then tell it with ``landed`` which reading it became."""

    _last_ms: float = -1e12
    _run: int = 0
    _landed: list[str] = field(default_factory=list)

    def comes(self, at_ms: float) -> bool:
        """True for the fourth and every further value of a run, each under 0.5 s after the one before."""
        if at_ms - self._last_ms >= APART_MS:
            self._run, self._landed = 0, []
        self._last_ms = at_ms
        self._run += 1
        return self._run >= MANY

    @property
    def run(self) -> int:
        """How many came in this run so far."""
        return self._run

    def landed(self, reading_id: str) -> None:
        """The value of this moment became this reading."""
        self._landed.append(reading_id)

    def take_landed(self) -> tuple[str, ...]:
        """Readings the run's values became before it was known to be one."""
        out, self._landed = tuple(self._landed), []
        return out
