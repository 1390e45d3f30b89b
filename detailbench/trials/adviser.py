"""The adviser: beside the plain rule, what the exact search would do next on this range and why.

It proposes no forbidden combination, and adopts nothing that was not seen to work on this paint.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working
from detailbench.trials.adviser_prior import MOST_RUNGS, Belief, Box, like_paint_prior, with_halves
from detailbench.trials.adviser_search import Costs, Half, Move, Plan, Stop, solve
from detailbench.trials.adviser_seen import decide, order_broken
from detailbench.trials.movement import Movement
from detailbench.trials.outcome import Advice, Option, Result
from detailbench.trials.rungs import Range, Rung, RungSeen

R = Result
RUBS_HARDER = frozenset({R.SMALLER_SECTION, R.SLOWER_ARM})  # a half-rung, where the range has it
ON_THE_RANGE = frozenset({R.STRONGER, R.MILDER, R.OTHER_PAD, R.OTHER_MOVEMENT, R.TWO_STEPS, R.KEEP, R.LOWER_LEVEL})
SOURCE = Source(
    "expected cost by dynamic programming, Bellman 1957; worlds, prior and costs: own derivation", from_memory=True
)
COSTS = ("trial", "refine", "one_step", "second_step", "per_rung", "per_rung_second", "nothing")
WORTH_SAYING_MIN = 0.5  # less would be told as nought minutes


@dataclass(frozen=True)
class AdviserLine:
    """``move``: in the range's own counting, None where ranking stops. ``expected_min``: trials and work from here on.

    ``trial_min``: what the next trial costs; ``saves_min``: what one more trial is expected to save before its own
    minutes, only where something already works. ``agrees``: with the plain rule, None where that stays off the range
    (wipe, pad, lamp: those come first). ``sentence``: all there is to show.
    """

    move: Move | None
    expected_min: float | None
    trial_min: float | None
    saves_min: float | None
    agrees: bool | None
    sentence: str
    working: Working | None


def plan_for(
    range_: Range,
    *,
    costs: Costs | None = None,
    stop: Stop = "prove",
    before: Sequence[tuple[Box, str]] = (),
    clear_coat_known: bool = False,
) -> Plan | None:
    """The plan of a finish group, to be solved once; None where no rung is allowed or the range is too long.

    ``before``: like paint in this shop, as (box, likeness), counted without half-rungs; those of the range stand in it
    where ``costs`` says. Where the clear coat is not known only *prove* is offered:
    BadInput for *thrift*.
    """
    if stop == "thrift" and not clear_coat_known:
        raise BadInput(_("Where the clear coat is not known, only proving the mildest is offered."), field="stop")
    costs = costs or Costs()
    n = len(_allowed(range_)) - len(costs.halves)
    if not 1 <= n <= MOST_RUNGS:
        return None
    return solve(prior_of(n, costs, before), costs, stop, before)


def prior_of(n: int, costs: Costs, before: Sequence[tuple[Box, str]]) -> Belief:
    """What is believed of n rungs that may be used, and of the half-rungs between them."""
    return with_halves(like_paint_prior(n, before), [half.after for half in costs.halves])


def advise(range_: Range, plan: Plan, plain: Option | None = None) -> AdviserLine:
    """The adviser's line for what was seen so far. ``plain``: what the plain rule chose. Raises BadInput where the plan
    is of another range (a rung was forbidden since: solve anew)."""
    at = _allowed(range_)
    seen = _with_retired(range_, at)
    if len(seen) != plan.n:
        raise BadInput(_("The range changed; the adviser has to be worked out again."), field="plan")
    broken = order_broken(seen)
    if broken is not None:
        return AdviserLine(None, None, None, None, None, broken_line(broken), None)
    move, used, box = decide(seen, plan)
    expected = used.expected_min(box) if used.mass(box) > 0 and move.kind != "adopt_two" else None
    trial = {"try": plan.costs.trial, "refine": plan.costs.refine}.get(move.kind)
    saves = _saves(used, box)
    here = in_range(move, at)
    agrees = None if plain is None else agrees_with(plain, here, halves=bool(plan.costs.halves))
    working = _working(seen, plan, move, expected, saves)
    sentence = move_sentence(here, range_, trial, saves, agrees, later=comes_first(plain, agrees))
    return AdviserLine(here, expected, trial, saves, agrees, sentence, working)


def broken_line(sentence: str) -> str:
    """What the adviser says where the order does not hold; ``sentence`` as of ``order_broken``."""
    return f"{sentence} {_('Ranking stops here.')}"


def adviser_working(values: Mapping[str, Any]) -> Working:
    """The working from plain values, as ``_working`` prints them. Raises BadInput where the order is broken."""
    words = {"": None, "yes": True, "no": False}
    range_ = tuple(
        RungSeen(
            Rung(str(i), str(i), "", Movement(row["movement"]), "", "", ""),
            cleared=words[row["cleared"]],
            finish_clear=words[row["finish_clear"]],
            refined=words[row["refined"]],
            trails=row["trails"] == "yes",
            refined_on=None if row["refined_on"] is None else tuple(str(int(k)) for k in row["refined_on"]),
        )
        for i, row in enumerate(values["rungs"])
    )
    costs = costs_of(values)
    before = tuple((Box(*(int(b[k]) for k in Box._fields)), b["likeness"]) for b in values["before"])
    plan = plan_for(range_, costs=costs, stop=values["stop"], before=before, clear_coat_known=True)
    if plan is None:
        raise BadInput(
            _("The adviser works on a range of 1 to {most} combinations.").format(most=MOST_RUNGS), field="rungs"
        )
    line = advise(range_, plan)
    if line.working is None:
        raise BadInput(line.sentence, field="rungs")
    return line.working


def costs_of(values: Mapping[str, Any]) -> Costs:
    """The costs as a working prints them."""
    halves = tuple(Half(int(h["after"]), h["added_min"]) for h in values["rubbed_harder"])
    return Costs(**{k[:-4]: x for k, x in values.items() if k.endswith("_min")}, halves=halves)


def costs_printed(costs: Costs) -> dict[str, Plain]:
    """The costs as inputs of a working; half-rungs only where there are any."""
    halves: list[Plain] = [dict(half._asdict()) for half in costs.halves]
    return {
        **{f"{name}_min": getattr(costs, name) for name in COSTS},
        **({"rubbed_harder": halves} if halves else {}),
    }


def chosen(advice: Advice | None) -> Option | None:
    """What the plain rule chose, for ``advise``."""
    return None if advice is None else advice.chosen


def _allowed(range_: Range) -> list[int]:
    return [i for i, seen in enumerate(range_) if seen.usable]


def _with_retired(range_: Range, at: Sequence[int]) -> list[RungSeen]:
    """The rungs that may be used; what a retired one between them did not clear the next milder does not clear either,
    where it left haze the next stronger does."""
    seen = {i: range_[i] for i in at}
    for i, old in enumerate(range_):
        below, above = max((j for j in at if j < i), default=None), min((j for j in at if j > i), default=None)
        if not old.retired or old.forbidden:
            continue
        if below is not None and old.cleared is False and seen[below].cleared is None:
            seen[below] = replace(seen[below], cleared=False)
        if above is not None and old.finish_clear is False and seen[above].finish_clear is None:
            seen[above] = replace(seen[above], finish_clear=False)
    return [seen[i] for i in at]


def _saves(plan: Plan, box: Box) -> float | None:
    if not (box.ch < box.gl and box.cl < box.ch and plan.mass(box) > 0):
        return None
    after = plan.after_one_more(box)
    return None if after is None else plan.costs.one(box.ch) - after


def in_range(move: Move, at: Sequence[int]) -> Move:
    """A move counted on the rungs that may be used, in the counting of the whole range; ``at``: where each stands."""

    def one(i: int | None) -> int | None:
        return None if i is None else at[i]

    return Move(move.kind, one(move.rung), one(move.on_top), tuple(at[j] for j in move.run))


def agrees_with(plain: Option, move: Move, *, halves: bool = False) -> bool | None:
    """Whether the plain rule says the same; None where what it says stays off the range. ``halves``: what it says is
    counted on a range with half-rungs, so that rubbing harder is on it."""
    if plain.result not in (ON_THE_RANGE | RUBS_HARDER if halves else ON_THE_RANGE):
        return None
    if plain.result is R.LOWER_LEVEL:
        return move.kind == "none"
    if plain.result is R.KEEP:
        return plain.rung == (move.rung if move.kind == "adopt" else move.on_top if move.kind == "adopt_two" else None)
    if plain.place == "on_top":
        return move.kind == "refine" and move.on_top == plain.rung
    return move.kind == "try" and move.rung == plain.rung


def comes_first(plain: Option | None, agrees: bool | None) -> bool:
    """What the plain rule says stays off the range and may change what was seen: a wipe, a clean pad, another lamp."""
    return plain is not None and agrees is None


def move_sentence(
    move: Move, range_: Range, trial: float | None, saves: float | None, agrees: bool | None, *, later: bool = False
) -> str:
    """What the adviser would do, in words; ``later``: only where it stays so once the plain rule's line is done."""
    if agrees:
        return _("The adviser agrees.")
    names = {
        "lead": _("Adviser, if it stays so after that:") if later else _("Adviser:"),
        "rung": "" if move.rung is None else range_[move.rung].rung.label,
        "on_top": "" if move.on_top is None else range_[move.on_top].rung.label,
    }
    texts = {
        "try": _("{lead} try {rung} on a fresh place."),
        "refine": _("{lead} refine with {on_top} on top of {rung}."),
        "adopt": _("{lead} {rung} was seen to work here; adopt it."),
        "adopt_two": _("{lead} {rung}, then {on_top} on top, was seen to work here; adopt both."),
        "none": _("{lead} nothing left in the range can serve; agree a lower level."),
    }
    said = [texts[move.kind].format(**names)]
    if trial is not None:
        said.append(_("It costs about {minutes} minutes.").format(minutes=format_number(trial, 0)))
    if saves is not None:
        if saves < WORTH_SAYING_MIN:
            said.append(_("One more trial saves no work; it is made to be sure of the mildest."))
        elif (minutes := format_number(saves, 0)) == "1":
            said.append(_("One more trial is expected to save a minute of work."))
        else:
            said.append(_("One more trial is expected to save {minutes} minutes of work.").format(minutes=minutes))
    return " ".join(said)


def _working(seen: Sequence[RungSeen], plan: Plan, move: Move, expected: float | None, saves: float | None) -> Working:
    words = {None: "", True: "yes", False: "no"}
    keys = [s.rung.key for s in seen]
    rungs: list[Plain] = [
        {
            "cleared": words[s.cleared],
            "finish_clear": words[s.finish_clear],
            "refined": words[s.refined],
            "trails": "yes" if s.trails else "",
            "movement": s.rung.movement.value,
            **({} if s.refined_on is None else {"refined_on": [i for i, k in enumerate(keys) if k in s.refined_on]}),
        }
        for s in seen
    ]
    return Working(
        name="adviser",
        formula="fewest expected minutes over all worlds left: trials + refining + the car's steps",
        inputs={
            "rungs": rungs,
            "stop": plan.stop,
            **costs_printed(plan.costs),
            "before": [{**dict(box._asdict()), "likeness": word} for box, word in plan.before],
        },
        results={
            "move": move.kind,
            "rung": move.rung,
            "on_top": move.on_top,
            "expected_min": expected,
            "saves_min": saves,
        },
        source=SOURCE,
        changes_with=_("what is seen on this paint, minutes per trial and per step, like paint before"),
        notes=(_("Holds for answers that are right and a range that is in order."),),
    )
