"""The adviser where a judgement may be wrong: belief over every world by Bayes, planned anew after each answer.

A heuristic, and said to be one: the plan's boxes are filled with what is believed to 0.9, and what is about to be
adopted on less than that is seen again on a second place first.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.trials.adviser_prior import Belief, Box, one_step_works, two_steps_work, within
from detailbench.trials.adviser_search import Costs, Move, Stop, solve

SURE = 0.9
MOST_ANSWERS = 12
MISJUDGED = 0.1


@dataclass(frozen=True)
class Answer:
    """One judged trial on a range without forbidden rungs. ``beneath``: the rung whose hazy place it stands on (then
    only the finish speaks), None on a fresh place. ``cleared`` or ``finish_clear`` None: could not be told."""

    rung: int
    cleared: bool | None = None
    finish_clear: bool | None = None
    beneath: int | None = None


@dataclass(frozen=True)
class Doubtful:
    """``move`` None: a person decides (``sentence`` says so). ``sure``: belief that what is adopted works, or that
    nothing does."""

    move: Move | None
    sure: float | None
    sentence: str


def believe(
    prior: Belief, answers: Sequence[Answer], *, misjudged: float = MISJUDGED, finish_misjudged: float = MISJUDGED
) -> Belief:
    """The belief after these answers, each wrong with its chance. Raises BadInput for a chance outside 0 to ½."""
    for name, share in (("misjudged", misjudged), ("finish_misjudged", finish_misjudged)):
        if not 0 < share < 0.5:
            raise BadInput(_("The chance of a misjudgement lies between 0 and one half."), field=name, given=share)
    n = prior.shape[0] - 1
    c, g, r = np.ogrid[: n + 1, : n + 1, : n + 1]
    belief = prior.copy()
    for a in answers:
        if a.cleared is not None and a.beneath is None:
            belief = belief * np.where((c <= a.rung) == a.cleared, 1 - misjudged, misjudged)
        if a.finish_clear is not None:
            clear = (a.rung < g) if a.beneath is None else (r <= a.rung) & (a.rung < g)
            belief = belief * np.where(clear == a.finish_clear, 1 - finish_misjudged, finish_misjudged)
    belief /= belief.sum()
    return belief


def next_in_doubt(
    prior: Belief,
    answers: Sequence[Answer],
    *,
    costs: Costs | None = None,
    stop: Stop = "prove",
    misjudged: float = MISJUDGED,
    finish_misjudged: float = MISJUDGED,
) -> Doubtful:
    """What to do after these answers; at most twelve, then a person decides. Adopts only what was last seen to work."""
    n = prior.shape[0] - 1
    belief = believe(prior, answers, misjudged=misjudged, finish_misjudged=finish_misjudged)
    found = _adoptable(belief, answers, n)
    nothing = _nothing_works(belief)
    if found is not None and found[1] >= SURE and (stop == "thrift" or _proven(belief, found[0])):
        return Doubtful(found[0], found[1], _("Believed to work, and seen to on this paint."))
    if nothing >= SURE:
        return Doubtful(Move("none"), nothing, _("Believed that nothing in the range serves."))
    if len(answers) >= MOST_ANSWERS:
        if found is not None and found[1] >= SURE:
            text = _("Believed to work, and seen to on this paint; whether a milder one would do was not settled.")
            return Doubtful(found[0], found[1], text)
        return Doubtful(None, None, _("The answers do not settle it; a person decides."))
    move = _explore(belief, answers, costs, stop, n)
    again = any(a.rung == (move.on_top if move.kind == "refine" else move.rung) for a in answers)
    text = _("See it again on a second place.") if again else _("Next by belief; a rule of thumb.")
    return Doubtful(move, None, text)


def _adoptable(belief: Belief, answers: Sequence[Answer], n: int) -> tuple[Move, float] | None:
    """The process most believed in among those whose own latest trial went well."""
    latest: dict[tuple[int, int | None], Answer] = {(a.rung, a.beneath): a for a in answers}
    ways = []
    for (i, under), a in latest.items():
        if not a.finish_clear:
            continue
        if under is None and a.cleared:
            ways.append((Move("adopt", i), float(belief[one_step_works(n, i)].sum())))
        elif under is not None and (below := latest.get((under, None))) is not None and below.cleared:
            ways.append((Move("adopt_two", under, i), float(belief[two_steps_work(n, under, i)].sum())))
    return max(ways, key=lambda way: way[1]) if ways else None


def _proven(belief: Belief, move: Move) -> bool:
    """In *prove* a single step also needs the rung below to be believed not to clear."""
    return move.kind != "adopt" or move.rung in (None, 0) or float(belief[: move.rung].sum()) <= 1 - SURE


def _nothing_works(belief: Belief) -> float:
    n = belief.shape[0] - 1
    c, g, r = np.ogrid[: n + 1, : n + 1, : n + 1]
    return float(belief[~((c < n) & ((c < g) | (r < g)))].sum())


def _explore(belief: Belief, answers: Sequence[Answer], costs: Costs | None, stop: Stop, n: int) -> Move:
    """The exact search's move in the box believed in; what it would adopt or give up on is looked at again."""
    box = _believed(belief, answers, n)
    move = solve(within(belief, box), costs, stop).move(box)
    if move.kind == "refine" and move.rung is not None:
        return Move("refine", move.rung, move.on_top, move.run[:1])
    if move.kind == "try":
        return move
    return _again(belief, answers, n)


def _believed(belief: Belief, answers: Sequence[Answer], n: int) -> Box:
    """c and g between what is believed to SURE, held to what was tried: only a rung seen to clear is known to."""
    fresh = [a for a in answers if a.beneath is None]
    not_c = np.cumsum(belief.sum(axis=(1, 2)))  # [i]: P(c ≤ i)
    not_g = np.cumsum(belief.sum(axis=(0, 2)))  # [i]: P(g ≤ i)
    cl = max((a.rung + 1 for a in fresh if not_c[a.rung] <= 1 - SURE), default=0)
    ch = min((a.rung for a in fresh if a.cleared and not_c[a.rung] >= SURE), default=n)
    gl = max((a.rung + 1 for a in answers if not_g[a.rung] <= 1 - SURE), default=0)
    gh = min((a.rung for a in fresh if not_g[a.rung] >= SURE), default=n)
    return Box(cl, max(ch, cl), gl, max(gh, gl), 0)


def _again(belief: Belief, answers: Sequence[Answer], n: int) -> Move:
    """The trial made already whose answers are the least sure."""
    not_c, not_g = np.cumsum(belief.sum(axis=(1, 2))), np.cumsum(belief.sum(axis=(0, 2)))
    doubt: dict[Move, float] = {}
    for a in answers:
        if a.beneath is None:
            move = Move("try", a.rung)
            open_ = max(min(p, 1 - p) for p in (float(not_c[a.rung]), float(not_g[a.rung])))
        else:
            move = Move("refine", a.beneath, a.rung, (a.rung,))
            p = float(belief[two_steps_work(n, n, a.rung)].sum())
            open_ = min(p, 1 - p)
        doubt[move] = open_
    return max(doubt, key=lambda m: doubt[m]) if doubt else Move("try", (n - 1) // 2)
