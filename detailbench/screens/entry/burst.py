"""Tells a gauge's burst from a person's typing. No Qt here: keys and times in, decisions out.

A burst is two or more of the signs a reading is made of, each within 30 ms of the one before, ended by Enter or Tab as
quickly; or anything after the gauge's own prefix up to Enter or Tab. Whatever turns out not to be one is let go in
the order it came. Figures at the end of a word sent as fast, such as a VIN from a scanner, belong to that word.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Generic, TypeVar

T = TypeVar("T")

GAP_MS = 30.0
GAP_AFTER_PREFIX_MS = 250.0  # a gauge that announces itself may type as slowly as it likes
SIGNS = frozenset("0123456789.,- uUµμmMiIlLsSgG/:°")
WITHIN = frozenset(" /:°")  # a stroke before the clear coat, an angle before gloss: never the first sign
ENDS = frozenset("\r\n\t")
FEWEST = 2
MOST_FOREIGN = 2  # letters a gauge may send right before a figure; a word with more of them is no gauge's


@dataclass(frozen=True)
class Decision(Generic[T]):
    """What to do now. ``let_go``: held keys to hand on, in order, before anything else. ``keep``: this key is held or
    used up and must not reach a widget. ``reading``: a burst just ended."""

    let_go: tuple[T, ...] = ()
    keep: bool = False
    reading: str | None = None


@dataclass
class BurstReader(Generic[T]):
    """Feed it every key; ask it to ``expire`` once ``wait_ms`` has gone by without one. T is the held event."""

    prefix: str = ""
    _text: str = ""
    _held: list[T] = field(default_factory=list)
    _last_ms: float = 0.0
    _foreign: int = 0  # letters no reading has, in the word that is coming in
    _word_ms: float = 0.0

    @property
    def holding(self) -> bool:
        return bool(self._held)

    @property
    def wait_ms(self) -> float:
        """How long after the last key the held ones are let go."""
        return GAP_AFTER_PREFIX_MS if self._prefixed else GAP_MS

    @property
    def _prefixed(self) -> bool:
        return bool(self.prefix) and self._text.startswith(self.prefix)

    def press(self, sign: str, key: T, at_ms: float) -> Decision[T]:
        """One key with the sign it writes (empty for keys that write nothing)."""
        gone = self.expire() if self._held and at_ms - self._last_ms >= self.wait_ms else ()
        self._follow_word(sign, at_ms)
        if sign in ENDS and sign:
            return self._end(gone)
        if sign and self._foreign <= MOST_FOREIGN and self._belongs(sign):
            self._text += sign
            self._held.append(key)
            self._last_ms = at_ms
            return Decision(gone, keep=True)
        return Decision(gone + self.expire())

    def release(self, key: T) -> bool:
        """A key let up while keys are held waits with them; False when nothing is held."""
        if not self._held:
            return False
        self._held.append(key)
        return True

    def expire(self) -> tuple[T, ...]:
        """Nothing more came in time: hand back what was held."""
        held, self._held, self._text = tuple(self._held), [], ""
        return held

    def _follow_word(self, sign: str, at_ms: float) -> None:
        """Count the foreign letters of an unbroken word, each sign as close to the last as in a burst."""
        if at_ms - self._word_ms >= GAP_MS or not sign.isalnum() or self._prefixed:
            self._foreign = 0
        self._word_ms = at_ms
        if sign.isalnum() and sign not in SIGNS:
            self._foreign += 1

    def _belongs(self, sign: str) -> bool:
        if self.prefix and (self._prefixed or self.prefix.startswith(self._text + sign)):
            return True
        return sign in SIGNS and set(self._text) <= SIGNS and (sign not in WITHIN or bool(self._text))

    def _end(self, gone: tuple[T, ...]) -> Decision[T]:
        text = self._text
        if self._prefixed and len(text) > len(self.prefix):
            reading = text[len(self.prefix) :]
        elif len(text) >= FEWEST and set(text) <= SIGNS and any(c.isdigit() for c in text):
            reading = text
        else:
            return Decision(gone + self.expire())
        self.expire()
        return Decision(gone, keep=True, reading=reading.strip())
