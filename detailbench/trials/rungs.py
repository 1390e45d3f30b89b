"""The range: combinations from mild to strong, and what trials on this paint have shown of each."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from detailbench.trials.movement import Movement


@dataclass(frozen=True)
class Rung:
    """One combination of the range. ``pad`` and ``compound`` are kit keys; ``pad_material``: foam, wool, fibre …"""

    key: str
    label: str
    machine: str
    movement: Movement
    pad: str
    pad_material: str
    compound: str


@dataclass(frozen=True)
class RungSeen:
    """A rung and what is known of it on this paint, at the shop's usual technique.

    ``cleared``, ``finish_clear``: seen on a fresh place; ``refined``: seen on top of a cut (True: finished clear), and
    ``refined_on`` the keys of the cuts it finished clear on. None: not seen, or not noted. ``trails``: it left trails,
    which are of its movement and say nothing about its strength (the finish stays not seen). ``forbidden``: stopped
    there, and nothing says otherwise since. ``hot``: stopped for heat once; what is known is of a go after that.
    ``retired``: the shop uses it no more; what was seen stays known, and nothing new is tried with it.
    """

    rung: Rung
    cleared: bool | None = None
    finish_clear: bool | None = None
    refined: bool | None = None
    forbidden: bool = False
    trails: bool = False
    refined_on: tuple[str, ...] | None = None
    hot: bool = False
    retired: bool = False

    @property
    def usable(self) -> bool:
        """Neither forbidden here nor retired by the shop."""
        return not self.forbidden and not self.retired

    @property
    def works(self) -> bool:
        return self.cleared is True and self.finish_clear is True

    @property
    def worth_trying(self) -> bool:
        """Usable, and on a fresh place not known to fail or to clear with a poor finish."""
        return self.usable and (self.cleared is None or self.works)

    @property
    def may_refine(self) -> bool:
        """Usable, and on top of a cut not seen to leave haze or trails."""
        return self.usable and self.refined is not False and not self.trails


Range = tuple[RungSeen, ...]


def changes(a: Rung, b: Rung) -> tuple[str, ...]:
    """What differs between two combinations: movement (machine and movement count as one), pad, compound."""
    found = []
    if a.machine != b.machine or a.movement is not b.movement:
        found.append("movement")
    if a.pad != b.pad:
        found.append("pad")
    if a.compound != b.compound:
        found.append("compound")
    return tuple(found)


def _first(range_: Range, at: int, indices: list[int], fits: Callable[[tuple[str, ...]], bool]) -> int | None:
    for i in indices:
        if fits(changes(range_[at].rung, range_[i].rung)):
            return i
    return None


def _one_change_first(range_: Range, at: int, indices: list[int]) -> int | None:
    one = _first(range_, at, indices, lambda c: len(c) == 1)
    return one if one is not None else (indices[0] if indices else None)


def stronger(range_: Range, at: int, order: tuple[str, ...] = ("compound", "pad")) -> int | None:
    """The nearest stronger rung worth trying that differs in the compound or the pad only, in the shop's order."""
    above = [i for i in range(at + 1, len(range_)) if range_[i].worth_trying]
    for part in order:
        found = _first(range_, at, above, (part,).__eq__)
        if found is not None:
            return found
    return None


def other_movement(range_: Range, at: int) -> int | None:
    """The nearest stronger rung worth trying that differs in the movement only."""
    above = [i for i in range(at + 1, len(range_)) if range_[i].worth_trying]
    return _first(range_, at, above, lambda c: c == ("movement",))


def nearest_stronger(range_: Range, at: int) -> int | None:
    """The nearest stronger rung worth trying, whatever differs."""
    return next((i for i in range(at + 1, len(range_)) if range_[i].worth_trying), None)


def milder(range_: Range, at: int) -> int | None:
    """A milder rung worth trying: above the strongest that is known to fail, one change if there is one."""
    below = []
    for i in range(at - 1, -1, -1):
        if range_[i].cleared is False:
            break
        if range_[i].worth_trying:
            below.append(i)
    return _one_change_first(range_, at, below)


def other_pad(range_: Range, at: int) -> int | None:
    """A rung worth trying with the same machine and compound on another pad material; the milder side first."""
    here = range_[at].rung
    order = [*range(at - 1, -1, -1), *range(at + 1, len(range_))]
    fit = [i for i in order if range_[i].worth_trying and range_[i].rung.pad_material != here.pad_material]
    return _first(range_, at, fit, lambda c: c == ("pad",))


def refine(range_: Range, cut: int, *, free_orbital: bool = False, without: int | None = None) -> int | None:
    """A milder rung to refine on top of ``cut``; None where none is left.

    The strongest already seen to finish clear, else the middle of those not yet tried on top. After trails only a
    free orbital one. ``without``: the rung just tried on top.
    """
    fit = [
        i
        for i in range(cut)
        if i != without
        and range_[i].may_refine
        and (not free_orbital or range_[i].rung.movement is Movement.FREE_ORBITAL)
    ]
    if free_orbital and not fit:
        # no milder one moves freely: a free orbital one higher up still takes trails away
        fit = [
            i
            for i in range(cut + 1, len(range_))
            if i != without and range_[i].may_refine and range_[i].rung.movement is Movement.FREE_ORBITAL
        ][:1]
    for i in reversed(fit):
        if range_[i].refined or range_[i].finish_clear:
            return i
    return fit[(len(fit) - 1) // 2] if fit else None


def refine_below(range_: Range, at: int) -> int | None:
    """The next milder rung to refine with, after ``at`` left haze on top; one change if there is one."""
    below = [i for i in range(at - 1, -1, -1) if range_[i].may_refine]
    return _one_change_first(range_, at, below)


def refine_above(range_: Range, at: int, cut: int) -> int | None:
    """The next stronger rung to refine with below the cut; one change if there is one."""
    above = [i for i in range(at + 1, cut) if range_[i].may_refine]
    return _one_change_first(range_, at, above)


def known_cut(range_: Range, above: int) -> int | None:
    """The mildest usable rung above ``above`` that was seen to clear without finishing clear: with haze or trails."""
    for i in range(above + 1, len(range_)):
        seen = range_[i]
        if seen.cleared is True and (seen.finish_clear is False or seen.trails) and seen.usable:
            return i
    return None
