"""Which readings before and after may be compared: same place, same gauge, like state, like temperature."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.thickness.readings import Floats

CLEAN_ENOUGH = ("decontaminated", "wiped")
NEAR_C = 3.0

Clean = Literal["dirty", "washed", "decontaminated", "wiped"]
Cover = Literal["bare", "earlier coating", "protected", "not known"]


@dataclass(frozen=True)
class PlaceValue:
    """One place in one session: its value (µm; None: no value), the panel's state then, gauge, temperature (None:
    not recorded), and whether the session's gauge checks confirm it."""

    place: str
    value_um: float | None
    clean: Clean
    cover: Cover
    gauge: str
    temperature_c: float | None = None
    confirmed: bool = True


@dataclass(frozen=True)
class Pair:
    """A like pair. ``temperature_known`` False: temperature not recorded on one side; ``confirmed`` on both sides."""

    place: str
    before_um: float
    after_um: float
    temperature_known: bool
    confirmed: bool


@dataclass(frozen=True)
class NotComparable:
    """A place kept without a figure, and the reasons, fit for the screen."""

    place: str
    reasons: tuple[str, ...]

    @property
    def sentence(self) -> str:
        return _("Not comparable: {reasons}.").format(reasons=", ".join(self.reasons))


@dataclass(frozen=True)
class Pairing:
    """All places of both sessions, each in exactly one of the two lists, in the order of the first session."""

    pairs: tuple[Pair, ...]
    not_comparable: tuple[NotComparable, ...]
    remarks: tuple[str, ...]

    @property
    def before_um(self) -> Floats:
        """Shape (n,), µm."""
        return np.array([p.before_um for p in self.pairs], dtype=np.float64)

    @property
    def after_um(self) -> Floats:
        """Shape (n,), µm."""
        return np.array([p.after_um for p in self.pairs], dtype=np.float64)

    @property
    def for_print(self) -> bool:
        """False while a pair lacks a temperature or a confirmation: then the figure is for the screen only."""
        return all(p.temperature_known and p.confirmed for p in self.pairs)


def pair_places(before: Sequence[PlaceValue], after: Sequence[PlaceValue]) -> Pairing:
    """Pair two sessions by place. Raises BadInput when a place stands twice in one session."""
    first, second = _by_place(before, "before"), _by_place(after, "after")
    pairs, others = [], []
    for place in [*first, *(p for p in second if p not in first)]:
        a, b = first.get(place), second.get(place)
        reasons = _reasons(a, b)
        if a and b and a.value_um is not None and b.value_um is not None and not reasons:
            known = a.temperature_c is not None and b.temperature_c is not None
            pairs.append(Pair(place, a.value_um, b.value_um, known, a.confirmed and b.confirmed))
        else:
            others.append(NotComparable(place, tuple(reasons)))
    return Pairing(tuple(pairs), tuple(others), _remarks(pairs))


def _by_place(values: Sequence[PlaceValue], side: str) -> dict[str, PlaceValue]:
    out: dict[str, PlaceValue] = {}
    for value in values:
        if value.place in out:
            raise BadInput(_("The place “{place}” is given twice.").format(place=value.place), field=side)
        out[value.place] = value
    return out


def _reasons(a: PlaceValue | None, b: PlaceValue | None) -> list[str]:
    if a is None or b is None:
        return [_("no reading before") if a is None else _("no reading after")]
    out = []
    if a.value_um is None:
        out.append(_("no value before"))
    if b.value_um is None:
        out.append(_("no value after"))
    for side, when in ((a, _("before")), (b, _("after"))):
        if side.clean not in CLEAN_ENOUGH:
            words = {"dirty": _("dirty {when}"), "washed": _("washed only {when}")}
            out.append(words[side.clean].format(when=when))
        if side.cover != "bare":
            covers = {
                "earlier coating": _("earlier coating {when}"),
                "protected": _("protected {when}"),
                "not known": _("cover not known {when}"),
            }
            out.append(covers[side.cover].format(when=when))
    if a.gauge != b.gauge:
        out.append(_("another gauge"))
    if a.temperature_c is not None and b.temperature_c is not None and abs(a.temperature_c - b.temperature_c) > NEAR_C:
        out.append(
            _("{before} °C before, {after} °C after").format(
                before=format_number(a.temperature_c), after=format_number(b.temperature_c)
            )
        )
    return out


def _remarks(pairs: Sequence[Pair]) -> tuple[str, ...]:
    out = []
    if any(not p.temperature_known for p in pairs):
        out.append(_("Temperature not recorded: the figure is for the screen only."))
    if any(not p.confirmed for p in pairs):
        out.append(_("Some readings are not confirmed by a gauge check: the figure is for the screen only."))
    return tuple(out)
