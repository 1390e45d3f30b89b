"""What has changed since this car was here last: the places of then read again, like with like only."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from detailbench.basics.numbers import (
    format_number,
    format_thickness,
    format_thickness_change,
    format_thickness_interval,
)
from detailbench.basics.texts import _
from detailbench.findings.changes import PanelChange, Side, compared
from detailbench.findings.panels import PanelSeen, before_and_after, outline_of
from detailbench.findings.states import states
from detailbench.record.picture import JobPicture

CONFIDENCE_PERCENT = 95


@dataclass(frozen=True)
class SinceLast:
    """One panel then and now. ``change_um`` is now less then (thinner: below zero) with its interval, None where there
    is no like pair or no way to state the uncertainty; ``compared`` holds pairs, reasons and the working, in which
    "removed" is then less now. ``sentence`` says it whole."""

    key: str
    compared: PanelChange | None
    change_um: float | None
    low_um: float | None
    high_um: float | None
    sentence: str
    for_print: bool

    @property
    def distinguishable(self) -> bool:
        """Whether the interval leaves nought out."""
        found = None if self.compared is None else self.compared.change
        return found is not None and found.outcome in ("removed", "thicker")


def since_last(picture: JobPicture) -> Mapping[str, SinceLast]:
    """Every panel read now at a place that was there last time; empty where the car was not here before. Then: the
    newest readings of the last job, after the work where it was polished; now: those before any work of this job."""
    last = picture.last
    if last is None:
        return {}
    same = {p.id: p.same_as for p in picture.places if p.same_as}
    as_found, after = before_and_after(last)
    worked = {panel for panel, state in states(last).items() if state.work == "polished"}
    drawn = outline_of(picture).panels
    out = {}
    for key, seen in before_and_after(picture)[0].items():
        if not any(p.readings and p.place.id in same for p in seen.places):
            continue
        then = (after if key in worked else as_found).get(key)
        if then is None or not then.taken:
            out[key] = _without(key, last.job.number, key in worked)
            continue
        found = compared(Side(last, then), Side(picture, _repeated(seen, same), same), drawn[key].substrate)
        out[key] = _told(found)
    return out


def _repeated(seen: PanelSeen, same: Mapping[str, str]) -> PanelSeen:
    """Only the places that repeat one of then, and were read: one added since says nothing here."""
    places = tuple(p for p in seen.places if p.place.id in same and p.readings)
    return PanelSeen(seen.key, seen.moment, places, seen.figures)


def _without(key: str, number: str, polished: bool) -> SinceLast:
    why = (
        _("not comparable: not read in job {number}")
        if not polished
        else _("not comparable: polished in job {number} and not read after it")
    )
    return SinceLast(key, None, None, None, None, why.format(number=number), False)


def _told(found: PanelChange) -> SinceLast:
    change = found.change
    if change is None:
        why = found.why_none
        sentence = why[:1].lower() + why[1:].rstrip(".") if why else _("not comparable: no like pair")
        return SinceLast(found.key, found, None, None, None, sentence, False)
    low = None if change.high_um is None else -change.high_um
    high = None if change.low_um is None else -change.low_um
    now = -change.estimate_um
    if low is None or high is None:
        sentence = change.sentence
    elif low <= 0 <= high:
        bound = math.ceil(10 * max(abs(low), abs(high))) / 10  # rounded up, so that "less than" stays true
        most = format_thickness(bound, digits=1)
        sentence = _("not distinguishable from zero (less than {most} either way)").format(most=most)
    else:
        sentence = _("{now} since then ({interval}, {confidence}\u00a0%)").format(
            now=format_thickness_change(now, digits=1),
            interval=format_thickness_interval(low, high, digits=1, with_unit=False),
            confidence=format_number(CONFIDENCE_PERCENT, 0),
        )
    if len(found.pairing.not_comparable):
        sentence += "; " + _("{n} places not comparable").format(n=len(found.pairing.not_comparable))
    return SinceLast(found.key, found, now, low, high, sentence, found.for_print)
