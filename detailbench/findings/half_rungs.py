"""A smaller section or longer working is its own half-rung: the same combination rubbed harder than at first on this
paint stands in the range between itself and the next. What was seen so is told of it, not of the combination as usual.

A trial rubbed less than the first one, cooler after heat say, stays with its combination.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from detailbench.basics.texts import _
from detailbench.findings.kit_names import parts
from detailbench.findings.kit_renewal import HALF
from detailbench.findings.removal import trial_load
from detailbench.findings.trial_story import known_range, trials_of
from detailbench.findings.trials_made import as_now
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Combination, Trial
from detailbench.trials.outcome import Option, Result
from detailbench.trials.rungs import Range, RungSeen
from detailbench.trials.technique import LONGER, PADS_CUTTING, SMALLER, usual_section_m2

HARDER = 1.25  # a quarter more rubbing than at first makes it another half-rung
MOST = 3  # half-rungs ranked at once, the newest: more would only make the search slow


@dataclass(frozen=True)
class HalfRung:
    """``key`` stands for it in a range. Section and seconds as tried, or as they would be where it is only proposed
    (``trials`` empty then); ``at_first`` those of the combination's first trial: (section m², seconds)."""

    key: str
    combination_id: str
    words: str
    section_m2: float | None
    seconds: float | None
    at_first: tuple[float | None, float | None]
    trials: tuple[str, ...] = ()


@dataclass(frozen=True)
class HalvedRange:
    """The range with its half-rungs, mildest first, and the picture as told on it: there the trials of a half-rung name
    its key as their combination."""

    range: Range
    halves: tuple[HalfRung, ...]
    picture: JobPicture

    def half(self, key: str) -> HalfRung | None:
        """The half-rung of this key, or None for a combination as usual."""
        return next((h for h in self.halves if h.key == key), None)

    def at(self, key: str) -> int:
        """Where a key stands in the range."""
        return next(i for i, seen in enumerate(self.range) if seen.rung.key == key)


def halved(picture: JobPicture, group_id: str, proposed: Option | None = None) -> HalvedRange:
    """The range of a finish group with its half-rungs. ``proposed``: what the plain rule chose, in the counting of the
    range without them; where that is to rub harder, the half-rung it would be stands in the range too."""
    plain = known_range(picture, group_id)
    halves = _tried(picture, group_id)
    new = _proposed(picture, group_id, plain, proposed)
    if new is not None and all(h.combination_id != new.combination_id for h in halves):
        halves.append(new)
    halves = halves[-MOST:]
    if not halves:
        return HalvedRange(plain, (), picture)
    told = _told_on_it(picture, halves)
    forbidden = {seen.rung.key for seen in plain if seen.forbidden}
    retired = {seen.rung.key for seen in plain if seen.retired}
    base = {h.key: h.combination_id for h in halves}
    words = {h.key: h.words for h in halves}
    seen = [
        _named(s, words, forbidden | {k for k, b in base.items() if b in forbidden})
        for s in known_range(told, group_id)
    ]
    seen = [replace(s, retired=base.get(s.rung.key, s.rung.key) in retired) for s in seen]
    there = {s.rung.key for s in seen}  # one of a combination that was retired since has no place of its own
    return HalvedRange(_finer(tuple(seen), base), tuple(h for h in halves if h.key in there), told)


def _named(seen: RungSeen, words: dict[str, str], forbidden: set[str]) -> RungSeen:
    """What may not be used as usual may not be rubbed harder with either."""
    key = seen.rung.key
    if key in words:
        seen = replace(seen, rung=replace(seen.rung, label=f"{seen.rung.label}, {words[key]}"))
    return replace(seen, forbidden=True) if key in forbidden else seen


def _finer(seen: Range, base: dict[str, str]) -> Range:
    """A polish worked longer breaks down further: where it finished clear so, the haze it left before is no sign that
    the order does not hold (common practice, no source)."""
    clear = {base[s.rung.key] for s in seen if s.rung.key in base and s.finish_clear}
    return tuple(replace(s, finish_clear=None) if s.rung.key in clear and s.finish_clear is False else s for s in seen)


def _tried(picture: JobPicture, group_id: str) -> list[HalfRung]:
    """The half-rungs that were tried, in the order of their newest trial."""
    first: dict[str, Trial] = {}
    harder: dict[str, list[Trial]] = {}
    for trial in trials_of(picture, group_id):
        if trial.on_top_of:
            continue
        began = first.setdefault(trial.combination_id, trial)
        more = _times(picture, began, trial)
        if more is not None and more >= HARDER:
            harder.setdefault(trial.combination_id, []).append(trial)
    newest = sorted(harder, key=lambda c: harder[c][-1].seq)
    return [_half(first[c], harder[c]) for c in newest]


def _half(began: Trial, harder: list[Trial]) -> HalfRung:
    last = harder[-1]
    section, at_first = _section_m2(last), _section_m2(began)
    if section is not None and at_first is not None and section < at_first:
        words = _("smaller section")
    elif last.seconds and began.seconds and last.seconds > began.seconds:
        words = _("worked longer")
    else:
        words = _("rubbed harder")
    return HalfRung(
        half_key(last.combination_id), last.combination_id, words, section, last.seconds, (at_first, began.seconds),
        tuple(t.id for t in harder),
    )  # fmt: skip


def _proposed(picture: JobPicture, group_id: str, plain: Range, option: Option | None) -> HalfRung | None:
    if option is None or option.rung is None or option.place == "on_top":
        return None
    key = plain[option.rung].rung.key
    made = [t for t in trials_of(picture, group_id) if t.combination_id == key and not t.on_top_of]
    if not made:
        return None
    began, last = made[0], made[-1]
    _machine, pad, product = parts(picture.shop, one(picture.shop.combinations, key))
    section = _section_m2(last) or usual_section_m2(pad.diameter_mm, PADS_CUTTING)
    seconds = last.seconds or product.working_time_s
    at_first = (_section_m2(began), began.seconds)
    if option.result is Result.SMALLER_SECTION:
        return HalfRung(half_key(key), key, _("smaller section"), section * SMALLER**2, seconds, at_first)
    if option.result is Result.SLOWER_ARM and seconds is not None:
        return HalfRung(half_key(key), key, _("worked longer"), section, seconds * LONGER, at_first)
    return None


def half_key(combination_id: str) -> str:
    """The key of a combination's half-rung."""
    return f"{combination_id}{HALF}"


def _section_m2(trial: Trial) -> float | None:
    if not trial.section_w_mm or not trial.section_h_mm:
        return None
    return trial.section_w_mm * trial.section_h_mm / 1e6


def _times(picture: JobPicture, began: Trial, trial: Trial) -> float | None:
    """How many times the rubbing of the first trial a place gets; None where it was not noted."""
    loads = [trial_load(picture, t)[0] for t in (began, trial)]
    if loads[0] is not None and loads[1] is not None:
        return loads[1] / loads[0]
    pressed = [(t.dial, t.force_word, t.force_n) for t in (began, trial)]
    if pressed[0] != pressed[1]:
        return None
    each = [(t.seconds, _section_m2(t)) for t in (began, trial)]
    per = [s / a for s, a in each if s and a]
    return per[1] / per[0] if len(per) == 2 else None


def _told_on_it(picture: JobPicture, halves: list[HalfRung]) -> JobPicture:
    """The same job in a shop whose range holds the half-rungs as combinations of their own."""
    at = {c.id: c for c in picture.shop.combinations}
    own = [
        replace(at[h.combination_id], id=h.key, retired=False, rung=2 * at[h.combination_id].rung + 1) for h in halves
    ]
    spread: list[Combination] = [replace(c, rung=2 * c.rung) for c in picture.shop.combinations]
    shop = replace(picture.shop, combinations=(*spread, *own))
    renamed = {id_: h for h in halves for id_ in h.trials}
    trials = []
    for trial in (as_now(picture, t) for t in picture.trials):
        half = renamed.get(trial.id)
        under = renamed.get(trial.on_top_of)
        if half is None and under is not None and under.combination_id == trial.combination_id:
            half = under  # a last pair of passes with it speaks of its own finish
            renamed[trial.id] = half
        trials.append(trial if half is None else replace(trial, combination_id=half.key))
    return replace(picture, shop=shop, trials=tuple(trials))
