"""The adviser's line where judgements contradict each other: the next step by belief, a rule of thumb."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working
from detailbench.trials.adviser import (
    AdviserLine,
    agrees_with,
    comes_first,
    costs_of,
    costs_printed,
    in_range,
    move_sentence,
    prior_of,
)
from detailbench.trials.adviser_doubt import MISJUDGED, Answer, Doubtful, next_in_doubt
from detailbench.trials.adviser_prior import MOST_RUNGS, Box
from detailbench.trials.adviser_search import Costs, Stop
from detailbench.trials.outcome import Option
from detailbench.trials.rungs import Range

SOURCE = Source(
    "Bayes' rule over everything the range could be; the plan in the box believed in: own rule of thumb",
    kind="own derivation",
)
SEEN = {"": None, "yes": True, "no": False}


def doubt_line(
    range_: Range,
    answers: Sequence[Answer],
    *,
    costs: Costs | None = None,
    stop: Stop = "prove",
    before: Sequence[tuple[Box, str]] = (),
    misjudged: float = MISJUDGED,
    finish_misjudged: float = MISJUDGED,
    plain: Option | None = None,
) -> AdviserLine:
    """The line for these answers, counted on the rungs of the range that may be used. BadInput for a longer range."""
    at = [i for i, seen in enumerate(range_) if seen.usable]
    costs = costs or Costs()
    n = len(at) - len(costs.halves)
    found, working = _worked(n, answers, costs, stop, before, misjudged, finish_misjudged)
    said = _("Judgements contradict each other here.")
    if found.move is None:
        return AdviserLine(None, None, None, None, None, f"{said} {found.sentence}", working)
    here = in_range(found.move, at)
    trial = {"try": costs.trial, "refine": costs.refine}.get(here.kind)
    agrees = None if plain is None else agrees_with(plain, here, halves=bool(costs.halves))
    parts = [said, move_sentence(here, range_, trial, None, agrees, later=comes_first(plain, agrees)), found.sentence]
    if found.sure is not None:
        # a belief is never all there is: above 99 it would be rounded to a certainty
        text = _("Believed to more than 99\u00a0%.") if found.sure > 0.99 else _("Believed to {share}\u00a0%.")
        parts.append(text.format(share=format_number(100 * found.sure, 0)))
    return AdviserLine(here, None, trial, None, agrees, " ".join(parts), working)


def adviser_in_doubt_working(values: Mapping[str, Any]) -> Working:
    """The working from plain values, as printed."""
    costs = costs_of(values)
    before = tuple((Box(*(int(b[k]) for k in Box._fields)), b["likeness"]) for b in values["before"])
    n = int(values["rungs"])
    most = n + len(costs.halves)
    answers = []
    for row in values["answers"]:
        beneath = None if row["beneath"] is None else int(row["beneath"])
        if not (0 <= row["rung"] < most and (beneath is None or 0 <= beneath < most)):
            raise BadInput(_("The combination tried is not in this range."), field="answers", given=row["rung"])
        answers.append(Answer(int(row["rung"]), SEEN[row["cleared"]], SEEN[row["finish_clear"]], beneath))
    stop, wrong, finish = values["stop"], values["misjudged_share"], values["finish_misjudged_share"]
    return _worked(n, answers, costs, stop, before, wrong, finish)[1]


def _worked(
    n: int,
    answers: Sequence[Answer],
    costs: Costs,
    stop: Stop,
    before: Sequence[tuple[Box, str]],
    misjudged: float,
    finish_misjudged: float,
) -> tuple[Doubtful, Working]:
    if not 1 <= n <= MOST_RUNGS:
        raise BadInput(
            _("The adviser works on a range of 1 to {most} combinations.").format(most=MOST_RUNGS),
            field="rungs",
            given=n,
        )
    found = next_in_doubt(
        prior_of(n, costs, before),
        answers,
        costs=costs,
        stop=stop,
        misjudged=misjudged,
        finish_misjudged=finish_misjudged,
    )
    words = {None: "", True: "yes", False: "no"}
    move = found.move
    working = Working(
        name="adviser_in_doubt",
        formula="P(world | answers) ∝ prior × Π(1 − ε or ε); the exact plan in the box believed to 0.9",
        inputs={
            "rungs": n,
            "answers": [
                {
                    "rung": a.rung,
                    "cleared": words[a.cleared],
                    "finish_clear": words[a.finish_clear],
                    "beneath": a.beneath,
                }
                for a in answers
            ],
            "stop": stop,
            "misjudged_share": misjudged,
            "finish_misjudged_share": finish_misjudged,
            **costs_printed(costs),
            "before": [{**dict(box._asdict()), "likeness": word} for box, word in before],
        },
        results={
            "move": None if move is None else move.kind,
            "rung": None if move is None else move.rung,
            "on_top": None if move is None else move.on_top,
            "sure": found.sure,
        },
        source=SOURCE,
        changes_with=_("more answers, how often a judgement is wrong, like paint before"),
        notes=(_("A rule of thumb, not an optimum."),),
    )
    return found, working
