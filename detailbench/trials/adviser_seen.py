"""What trials on this paint leave possible, and the adviser's decision for it; where the order is broken, none."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from detailbench.basics.texts import _
from detailbench.trials.adviser_prior import Box, two_steps_work, within
from detailbench.trials.adviser_search import Move, Plan, solve
from detailbench.trials.movement import Movement
from detailbench.trials.rungs import RungSeen, refine


def box_of(seen: Sequence[RungSeen]) -> Box:
    """The worlds left after what was seen on a range without forbidden rungs; refining above the strongest rung known
    to finish clear says less than a box and is left out."""
    n = len(seen)
    cl = max((i + 1 for i, s in enumerate(seen) if s.cleared is False), default=0)
    ch = min((i for i, s in enumerate(seen) if s.cleared is True), default=n)
    gl = max((i + 1 for i, s in enumerate(seen) if s.finish_clear is True or s.refined is True), default=0)
    gh = min((i for i, s in enumerate(seen) if s.finish_clear is False), default=n)
    rl = max((j + 1 for j, s in enumerate(seen) if s.refined is False and j < gl), default=0)
    return Box(cl, ch, gl, gh, rl)


def order_broken(seen: Sequence[RungSeen]) -> str | None:
    """The sentence that says which trials contradict the range's order, or None."""
    box = box_of(seen)
    if box.cl > box.ch:
        text = _("The order does not hold on this paint: {x} cleared less than {y}.")
        return text.format(x=seen[box.cl - 1].rung.label, y=seen[box.ch].rung.label)
    if box.gl > box.gh:
        text = _("The order does not hold on this paint: {x} finished less clear than {y}.")
        return text.format(x=seen[box.gh].rung.label, y=seen[box.gl - 1].rung.label)
    took_off = min((j for j, s in enumerate(seen) if s.refined is True), default=box.rl)
    if box.rl > took_off:
        text = _("The order does not hold on this paint: on top, {x} left haze where {y} took it off.")
        return text.format(x=seen[box.rl - 1].rung.label, y=seen[took_off].rung.label)
    return None


def decide(seen: Sequence[RungSeen], plan: Plan) -> tuple[Move, Plan, Box]:
    """As ``_decide``; what the order lets one conclude but nobody saw is tried, not adopted. A cut that left trails is
    never tried again for its finish: a free orbital finish on top is."""
    move, used, box = _decide(seen, plan)
    move = _after_trails(seen, move)
    if move.kind == "adopt" and move.rung is not None and not seen[move.rung].works:
        move = Move("try", move.rung)
    if move.kind == "adopt_two" and move.rung is not None and move.on_top is not None:
        noted = seen[move.on_top].refined_on
        if noted is not None and seen[move.rung].rung.key not in noted:
            move = Move("refine", move.rung, move.on_top, (move.on_top,))
    return move, used, box


def _after_trails(seen: Sequence[RungSeen], move: Move) -> Move:
    """Trails are of the movement: where the move comes back to a cut that left them, free orbital goes on top."""
    cut = move.rung
    if cut is None or not (seen[cut].trails and seen[cut].cleared) or move.kind == "adopt_two":
        return move
    finished = [j for j, s in enumerate(seen) if s.refined is True and not s.forbidden]
    if finished and move.kind != "refine":
        return Move("adopt_two", cut, finished[0])
    free = tuple(j for j in move.run if seen[j].rung.movement is Movement.FREE_ORBITAL)
    if not free:
        found = refine(tuple(seen), cut, free_orbital=True)
        if found is None:
            return Move("none")
        free = (found,)
    return Move("refine", cut, free[0], free)


def _decide(seen: Sequence[RungSeen], plan: Plan) -> tuple[Move, Plan, Box]:
    """(decision, the plan it came from, the box) for a range without forbidden rungs whose order holds.

    The plan's own, as long as it was followed; where a person refined elsewhere, worked out anew from what is left.
    """
    box = box_of(seen)
    failed = [j for j, s in enumerate(seen) if s.refined is False and j >= box.gl]
    worked = [j for j, s in enumerate(seen) if s.refined is True]
    if worked and box.ch < plan.n and not box.ch < box.gl:
        return Move("adopt_two", box.ch, worked[0]), plan, box
    if not failed:
        return plan.move(box), plan, box
    move = plan.move(box)
    if move.kind == "refine" and set(move.run[: len(failed)]) == set(failed):
        return _rest(move, failed), plan, box
    belief = within(plan.belief, box)
    for j in failed:
        belief = np.where(two_steps_work(plan.n, plan.n, j), 0.0, belief)
    if not belief.sum() > 0:
        return Move("none"), plan, box
    anew = solve(belief / belief.sum(), plan.costs, plan.stop)
    return _rest(anew.move(box), failed), anew, box


def _rest(move: Move, failed: Sequence[int]) -> Move:
    if move.kind != "refine":
        return move
    left = tuple(j for j in move.run if j not in failed)
    return Move("refine", move.rung, left[0], left) if left else Move("none")
