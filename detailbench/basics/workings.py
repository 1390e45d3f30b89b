"""A working: how one figure came about, so that anyone can redo it.

Inputs and results are named with their unit (``readings_um``) and hold plain JSON values, so that the
inputs printed in a document can be given back to the ``workings`` command and yield the same result.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, TypeAlias

from detailbench.basics.texts import _

Plain: TypeAlias = "bool | int | float | str | list[Plain] | dict[str, Plain] | None"
SourceKind = Literal["published", "own derivation", "common practice"]

MOST = 2**53  # beyond it not every whole number is a float
COMMON_PRACTICE = "common practice, no source"


@dataclass(frozen=True)
class Source:
    """Where a formula or default comes from. ``from_memory``: recalled, not read again when it was written; then that
    is all that is said of it, since nobody looked whether it stands there."""

    text: str
    kind: SourceKind = "published"
    from_memory: bool = False

    def kind_words(self) -> str:
        """ "from memory", else which kind of source it is."""
        if self.from_memory:
            return _("from memory")
        words = {
            "published": _("published"),
            "own derivation": _("own derivation"),
            "common practice": _("common practice, no source"),
        }
        return words[self.kind]

    def sentence(self) -> str:
        return _("{text} (from memory)").format(text=self.text) if self.from_memory else self.text


@dataclass(frozen=True)
class Working:
    """Formula, inputs, result and source of one computation.

    ``name`` is the calculation's name as the ``workings`` command knows it; ``inputs`` and ``results`` map
    names that carry their unit to plain values; ``formula`` is one line of text; ``changes_with`` says in
    words what would change the figure; ``notes`` are short sentences (limits, assumptions).
    """

    name: str
    formula: str
    inputs: Mapping[str, Plain]
    results: Mapping[str, Plain]
    source: Source
    changes_with: str = ""
    notes: tuple[str, ...] = ()

    def as_json(self) -> dict[str, Plain]:
        """The working as plain values, ready for JSON."""
        return {
            "name": self.name,
            "formula": self.formula,
            "inputs": dict(self.inputs),
            "results": dict(self.results),
            "source": self.source.sentence(),
            "source_kind": "from memory" if self.source.from_memory else self.source.kind,
            "changes_with": self.changes_with,
            "notes": list(self.notes),
        }


def is_finite(value: object) -> bool:
    """True for a real, finite number (bool excluded) that a float can hold."""
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return False
    return abs(value) <= MOST if isinstance(value, int) else math.isfinite(value)
