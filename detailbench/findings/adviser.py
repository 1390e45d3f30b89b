"""The adviser on one finish group: the plain rule's line, and under it what the exact search would do and why.

``ask_adviser`` gathers plain values from the pictures; ``adviser_says`` works on them alone, so that it may run in a
worker, and equal values give the equal answer: a caller keeps it by them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from typing import cast

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.findings.adviser_costs import adviser_costs
from detailbench.findings.brought_in import with_their_kit
from detailbench.findings.first_trial import first_trial, today_or_arrival
from detailbench.findings.half_rungs import HalfRung, HalvedRange, half_key, halved
from detailbench.findings.judgements import answers_of, contradicting
from detailbench.findings.like_paint import like_paint
from detailbench.findings.mild_end import from_mild_end
from detailbench.findings.settings import setting
from detailbench.findings.thin_paint import clear_coat_of
from detailbench.findings.trial_stops import no_trial_here
from detailbench.findings.trial_story import known_range, lightness_of, told, trials_of
from detailbench.record.picture import JobPicture, one
from detailbench.trials.adviser import RUBS_HARDER, AdviserLine, advise, broken_line, plan_for
from detailbench.trials.adviser_doubt import Answer
from detailbench.trials.adviser_doubt_line import doubt_line
from detailbench.trials.adviser_prior import MOST_RUNGS, Box
from detailbench.trials.adviser_search import Costs, Move, Stop
from detailbench.trials.adviser_seen import order_broken
from detailbench.trials.outcome import Option, Result
from detailbench.trials.rungs import Range


@dataclass(frozen=True)
class AdviserAsked:
    """All the adviser needs. ``answers``: the judged trials on the rungs that may be used, where they contradict each
    other; empty where the exact search applies. ``plain``: what the plain rule chose; ``waits``: its line where the
    adviser has nothing to rank yet. ``range`` holds the ``halves``: half-rungs tried, and the one the plain rule
    proposes; ``plain_here`` is its choice counted on that range, None where that stays off it. Shares, not percent."""

    range: Range
    answers: tuple[Answer, ...]
    costs: Costs
    stop: Stop
    before: tuple[tuple[Box, str], ...]
    clear_coat_known: bool
    misjudged: float
    finish_misjudged: float
    plain: Option | None
    plain_line: str
    waits: str = ""
    halves: tuple[HalfRung, ...] = ()
    plain_here: Option | None = None

    def made_of(self, rung: int) -> tuple[str, HalfRung | None]:
        """(id of the combination at a place of the range, the half-rung it is there or None)."""
        key = self.range[rung].rung.key
        half = next((h for h in self.halves if h.key == key), None)
        return (key, None) if half is None else (half.combination_id, half)


@dataclass(frozen=True)
class AdviserSays:
    """``plain``: the plain rule's line. ``line``: the adviser's under it, "The adviser agrees." where both say the
    same. ``how``: exact, in_doubt, order_broken or nothing (then ``line`` says why). ``trial_min``: what one more
    trial costs; ``saves_min``: what it is expected to save before its own minutes, None where nothing works yet.
    ``move``: in the range asked about, half-rungs counted; None where nothing is ranked."""

    plain: str
    line: str
    how: str
    agrees: bool | None
    move: Move | None
    trial_min: float | None
    saves_min: float | None
    expected_min: float | None
    workings: tuple[Working, ...]


def ask_adviser(
    picture: JobPicture, group_id: str, earlier: Iterable[JobPicture] = (), *, panel: str = "", day: date | None = None
) -> AdviserAsked | None:
    """The question for a finish group; None where the shop has no combinations. ``earlier``: jobs with trials, of
    which the finished ones count; ``panel``: where the next trial is to be; ``day``: today, for a refinish."""
    group = one(picture.groups, group_id)
    range_ = known_range(picture, group_id)
    if not range_:
        return None
    shop = picture.shop
    finished = tuple(p for p in earlier if p.visits and p.visits[-1].left_at is not None)
    # thin is treated as unknown: thrift saves minutes by not asking whether less is enough, and here paint is short
    known = clear_coat_of(picture, group) == "known"
    stop = cast(Stop, setting(shop, "adviser_stop") if known else "prove")
    plain, line, waits = _plain(picture, group_id, panel, finished, day)
    here = halved(picture, group_id, plain)
    return AdviserAsked(
        range=here.range,
        answers=answers_of(here.picture, group_id) if contradicting(here.picture, group_id) else (),
        costs=adviser_costs(picture, group, here),
        stop=stop,
        before=like_paint(picture, group_id, finished),
        clear_coat_known=known,
        misjudged=float(setting(shop, "misjudged_percent")) / 100,
        finish_misjudged=float(setting(shop, f"finish_misjudged_{lightness_of(picture, group)}_percent")) / 100,
        plain=plain,
        plain_line=line,
        waits=waits,
        halves=here.halves,
        plain_here=_on_range(picture, group_id, here, plain),
    )


def _on_range(picture: JobPicture, group_id: str, here: HalvedRange, plain: Option | None) -> Option | None:
    """The plain rule's choice counted on the range with its half-rungs; None where another half-rung of the same
    combination stands there already, so that this one is not ranked."""
    if plain is None or plain.rung is None or not here.halves:
        return plain
    key = known_range(picture, group_id)[plain.rung].rung.key
    if plain.place != "on_top" and plain.result in RUBS_HARDER:
        half = next((h for h in here.halves if h.combination_id == key and not h.trials), None)
        return None if half is None else replace(plain, rung=here.at(half.key))
    if plain.result is Result.KEEP:
        # the newest trial of it is what the plain rule would keep
        made = [t for t in trials_of(here.picture, group_id) if t.combination_id in (key, half_key(key))]
        key = made[-1].combination_id if made else key
    return replace(plain, rung=here.at(key))


def adviser_says(asked: AdviserAsked) -> AdviserSays:
    """Solve and say; no picture is looked at. Takes up to a second on a range of twelve."""
    seen = [s for s in asked.range if not s.forbidden]
    if asked.waits:
        return _nothing(asked, asked.waits)
    broken = None if asked.answers else order_broken(seen)
    if broken is not None:
        line = broken_line(broken)
        again = _("One of the two may be misjudged: see both again before the range is changed.")
        return replace(_nothing(asked, f"{line} {again}"), how="order_broken")
    usable = sum(s.usable for s in asked.range) - len(asked.costs.halves)
    if usable > MOST_RUNGS:
        text = _("{n} combinations may be used here and the adviser ranks {most}: retire under Shop what is not used.")
        return _nothing(asked, text.format(n=format_number(usable), most=format_number(MOST_RUNGS)))
    if asked.answers:
        return _said(
            asked,
            "in_doubt",
            doubt_line(
                asked.range,
                asked.answers,
                costs=asked.costs,
                stop=asked.stop,
                before=asked.before,
                misjudged=asked.misjudged,
                finish_misjudged=asked.finish_misjudged,
                plain=asked.plain_here,
            ),
        )
    plan = plan_for(
        asked.range,
        costs=asked.costs,
        stop=asked.stop,
        before=asked.before,
        clear_coat_known=asked.clear_coat_known,
    )
    if plan is None:
        return _nothing(asked, _("No combination of the range may be used here."))
    return _said(asked, "exact", advise(asked.range, plan, asked.plain_here))


def _said(asked: AdviserAsked, how: str, line: AdviserLine) -> AdviserSays:
    workings = () if line.working is None else (line.working,)
    return AdviserSays(
        asked.plain_line,
        line.sentence,
        how,
        line.agrees,
        line.move,
        line.trial_min,
        line.saves_min,
        line.expected_min,
        workings,
    )


def _nothing(asked: AdviserAsked, line: str) -> AdviserSays:
    return AdviserSays(asked.plain_line, line, "nothing", None, None, None, None, None, ())


def _plain(
    picture: JobPicture, group_id: str, panel: str, earlier: tuple[JobPicture, ...], day: date | None
) -> tuple[Option | None, str, str]:
    """(what the plain rule chose, its line, why the adviser waits or empty)."""
    stories = told(picture, group_id)
    if stories and stories[-1].advice is None:
        text = _("Trial {n} waits for its outcome.").format(n=len(stories))
        return None, text, text
    group, today = one(picture.groups, group_id), today_or_arrival(picture, day)
    last = stories[-1].trial if stories else None
    if last is not None and stories[-1].advice is not None:
        at = panel if panel in group.panels else last.panel
        stopped = no_trial_here(picture, group, at, today)
        if stopped:
            return None, stopped, stopped
        chosen = stories[-1].advice.chosen
        theirs = with_their_kit(picture, group_id)
        if theirs and theirs[-1] == last.id:
            text = _("The last trial was made by another workshop with its own kit: begin from the mild end of yours.")
            return None, text, f"{text} {_nobody_knows()}"
        if theirs:
            return chosen, chosen.sentence, _nobody_knows()
        return chosen, chosen.sentence, _nothing_ranked() if from_mild_end(picture, group, at, today) else ""
    try:
        start = first_trial(picture, group, panel, earlier, day=day)
    except BadInput as error:
        return None, str(error), str(error)
    if start.rung is None or start.from_mild_end:
        return None, start.sentence, start.sentence if start.rung is None else _nothing_ranked()
    return Option(Result.STRONGER, start.sentence, start.rung, place="fresh"), start.sentence, ""


def _nobody_knows() -> str:
    return _("Where another workshop's combinations stand in your range nobody knows: nothing is ranked.")


def _nothing_ranked() -> str:
    return _("Here the trials go from the mild end up: nothing is ranked.")
