"""The one clock. Everything that needs the time is handed a Clock; nothing else asks the machine."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Protocol


class Clock(Protocol):
    """Gives aware times that keep the local offset."""

    def now(self) -> datetime: ...


class SystemClock:
    """The machine's clock, local offset kept."""

    def now(self) -> datetime:
        return datetime.now(UTC).astimezone()


@dataclass
class HandClock:
    """A clock set by hand, for walks, the example and tests. It stands still between settings."""

    at: datetime

    def __post_init__(self) -> None:
        self.set(self.at)

    def now(self) -> datetime:
        return self.at

    def set(self, at: datetime) -> None:
        if at.tzinfo is None:
            raise ValueError("the clock needs an offset")
        self.at = at

    def forward(self, **parts: float) -> None:
        self.at += timedelta(**parts)
