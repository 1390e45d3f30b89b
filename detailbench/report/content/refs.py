"""Numbers the workings of a document in the order they are first called upon."""

from __future__ import annotations

import json
from dataclasses import dataclass

from detailbench.basics.workings import Working


@dataclass(frozen=True)
class NumberedWorking:
    """A working with the short name it is printed under, like ``W7``."""

    ref: str
    working: Working


class Refs:
    """Gives each working its reference; the same calculation on the same inputs keeps the one it has."""

    def __init__(self) -> None:
        self._numbered: dict[tuple[str, str], NumberedWorking] = {}

    def of(self, working: Working) -> str:
        """The reference of a working, given now if it has none."""
        key = (working.name, json.dumps(working.as_json()["inputs"], sort_keys=True))
        if key not in self._numbered:
            self._numbered[key] = NumberedWorking(f"W{len(self._numbered) + 1}", working)
        return self._numbered[key].ref

    def all(self) -> tuple[NumberedWorking, ...]:
        """Every working called upon, in order."""
        return tuple(self._numbered.values())
