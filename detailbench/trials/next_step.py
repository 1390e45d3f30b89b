"""What to do after one trial: the outcome table, carried out on the shop's range."""

from __future__ import annotations

from dataclasses import replace

from detailbench.trials import rungs, sentences
from detailbench.trials.outcome import Advice, Cleared, Context, Option, Outcome, Result, Stopped
from detailbench.trials.table import Row, row_for

R = Result
# these use the combination just tried once more
RERUN = frozenset({R.KEEP, R.SLOWER_ARM, R.SMALLER_SECTION, R.CLEAN_PAD, R.COOLER, R.FRESH_PLACE})
LOOK_ONLY = frozenset({R.WIPE, R.SECOND_LAMP, R.COUNT, R.OTHER_TOWEL})
TECHNIQUE = frozenset({R.SLOWER_ARM, R.SMALLER_SECTION, R.COOLER})


def next_step(outcome: Outcome, context: Context) -> Advice:
    """The advice for one outcome: one change at a time, never a combination that is forbidden or not in the range."""
    deep = outcome.only_deep_left and outcome.cleared is Cleared.NO
    if deep:
        outcome = replace(outcome, cleared=Cleared.YES)
    row = row_for(outcome, context)
    found = [option for result in row.chain if (option := _option(result, row, context)) is not None]
    last = _last(row, context)
    chosen, rest = (found[0], [*found[1:], last]) if found else (last, [])
    rest = [_as_another_way(o) for o in rest if o.result is not chosen.result]
    if chosen.result is R.KEEP:
        rest += _beside_keep(context)
    extra = [sentences.deep_left()] if deep and not _hides(row) else []
    mishap = _mishap(outcome, context)
    if outcome.stopped is Stopped.COLOUR_ON_PAD:
        extra.append(sentences.through_the_clear(mishap))
    if context.colour == "light" and _judges_finish(row):
        extra.append(sentences.light_paint())
    if extra:
        chosen = replace(chosen, sentence=" ".join([chosen.sentence, *extra]))
    return Advice(
        chosen=chosen,
        next_options=tuple(rest),
        teaches=row.about != "nothing",
        about=row.about,
        forbids=bool(row.forbids),
        forbids_what=row.forbids,
        starts_two_steps=_two_steps(row, chosen, context),
        flags_order=row.flags_order,
        mishap=mishap,
        row=row.key,
    )


def _as_another_way(option: Option) -> Option:
    """A lower level beside other ways is a choice, not the end of the range."""
    if option.result is R.LOWER_LEVEL:
        return replace(option, sentence=sentences.lower_level_instead())
    return option


def _hides(row: Row) -> bool:
    return row.key in ("pad or dust marks", "towel marks", "smear")


def _judges_finish(row: Row) -> bool:
    return row.key in ("cleared, clear", "on top, clear", "can't tell")


def _mishap(outcome: Outcome, context: Context) -> bool | None:
    if outcome.stopped is not Stopped.COLOUR_ON_PAD:
        return False
    return {"clear_over_colour": True, "single_stage": False}.get(context.paint_system)


def _two_steps(row: Row, chosen: Option, context: Context) -> bool:
    if chosen.result is R.TWO_STEPS:
        return True
    if not row.two_steps or chosen.result is R.LOWER_LEVEL:
        return False
    return context.on_top_of is not None or chosen.then is not None


def _may_rerun(context: Context, result: Result | None = None) -> bool:
    """The combination just tried may be used again: not forbidden, or used in a cooler way since. One the shop retired
    since may only be kept for what it was seen to do."""
    if context.tried.retired:
        return result is R.KEEP
    return not context.tried.forbidden or R.COOLER in context.already


def _last(row: Row, context: Context) -> Option:
    """What the row ends in; where that would use a forbidden combination again, a milder one or a lower level."""
    if row.last in RERUN and not _may_rerun(context, row.last):
        other = _milder(row, context)
        option = other or _say(R.LOWER_LEVEL, row, context, None, (), "none")
        return replace(option, sentence=f"{sentences.not_this_one(context.tried.retired)} {option.sentence}")
    return _same(row.last, row, context)


def _option(result: Result, row: Row, context: Context) -> Option | None:
    """``result`` carried out here, or None where it cannot be, or was done already."""
    if result in RERUN | LOOK_ONLY:
        if result in context.already or (result in RERUN and not _may_rerun(context, result)):
            return None
        if result is R.SLOWER_ARM and not context.time_left:
            return None
        if result in (R.SLOWER_ARM, R.SMALLER_SECTION) and R.COOLER in context.already:
            return None  # both put more heat into one place
        return _same(result, row, context)
    if context.on_top_of is not None and False in row.cut:
        # the cut beneath did not clear: another cut is sought, and what refined clear on it refines again
        cut = context.on_top_of if context.cut is None else context.cut
        found = _option(result, row, replace(context, at=cut, on_top_of=None, cut=None))
        then = context.at if context.tried.usable else None
        return None if found is None else replace(found, then=then)
    finders = {
        R.STRONGER: _stronger,
        R.MILDER: _milder,
        R.OTHER_PAD: _other_pad,
        R.OTHER_MOVEMENT: _other_movement,
        R.TWO_STEPS: _two_step_option,
    }
    return finders[result](row, context)


def _same(result: Result, row: Row, context: Context) -> Option:
    """An option that stays with the combination just tried, or polishes nothing."""
    if result in LOOK_ONLY:
        part = {R.WIPE: "wipe", R.OTHER_TOWEL: "towel"}.get(result, "lamp")
        return _say(result, row, context, None, (part,), "same")
    if result in (R.LOWER_LEVEL, R.ON_HOLD):
        return _say(result, row, context, None, (), "none")
    if result is R.KEEP:
        return _say(result, row, context, context.at, (), "none")
    on_top = context.on_top_of is not None or (result is R.CLEAN_PAD and row.key == "cleared, even haze")
    change = "technique" if result in TECHNIQUE else "place" if result is R.FRESH_PLACE else "pad care"
    return _say(result, row, context, context.at, (change,), "on_top" if on_top else "fresh")


def _say(
    result: Result,
    row: Row,
    context: Context,
    rung: int | None,
    changes: tuple[str, ...],
    place: str,
    then: int | None = None,
    minutes: float | None = None,
) -> Option:
    def named(index: int | None) -> rungs.Rung | None:
        return None if index is None else context.range[index].rung

    text = sentences.sentence(result, row=row.key, place=place, rung=named(rung), then=named(then))
    parts = tuple(c for c in changes if c in ("movement", "pad", "compound"))
    if len(parts) > 1:
        text = f"{text} {sentences.several_changes(parts)}"
    return Option(result, text, rung, changes, place, minutes, then)


def _to(
    result: Result, row: Row, context: Context, rung: int | None, place: str = "fresh", then: int | None = None
) -> Option | None:
    if rung is None:
        return None
    differs = rungs.changes(context.tried.rung, context.range[rung].rung)
    return _say(result, row, context, rung, differs, place, then)


def _stronger(row: Row, context: Context) -> Option | None:
    seen, at = context.range, context.at
    if context.on_top_of is not None:
        return _to(R.STRONGER, row, context, rungs.refine_above(seen, at, context.on_top_of), "on_top")
    if context.mild_end:  # one rung at a time, whatever differs
        found = rungs.nearest_stronger(seen, at)
        return _to(R.STRONGER, row, context, found, then=_finisher(row, context, found))
    found = rungs.stronger(seen, at, context.order)
    if found is None and rungs.other_movement(seen, at) is None:
        found = rungs.nearest_stronger(seen, at)
    return _to(R.STRONGER, row, context, found, then=_finisher(row, context, found))


def _milder(row: Row, context: Context) -> Option | None:
    if context.on_top_of is not None:
        below = rungs.refine_below(context.range, context.at)
        return _to(R.MILDER, row, context, below, "on_top")
    return _to(R.MILDER, row, context, rungs.milder(context.range, context.at))


def _other_pad(row: Row, context: Context) -> Option | None:
    if context.on_top_of is not None:
        return None
    return _to(R.OTHER_PAD, row, context, rungs.other_pad(context.range, context.at))


def _other_movement(row: Row, context: Context) -> Option | None:
    if context.on_top_of is not None:
        found = rungs.refine(context.range, context.on_top_of, free_orbital=True, without=context.at)
        return _to(R.OTHER_MOVEMENT, row, context, found, "on_top")
    found = rungs.other_movement(context.range, context.at)
    return _to(R.OTHER_MOVEMENT, row, context, found, then=_finisher(row, context, found))


def _finisher(row: Row, context: Context, cut: int | None) -> int | None:
    """The free orbital combination that finishes on top where the trails are of the movement."""
    if cut is None or not row.two_steps:
        return None
    return rungs.refine(context.range, cut, free_orbital=True)


def _two_step_option(row: Row, context: Context) -> Option | None:
    seen, at = context.range, context.at
    if Cleared.YES in row.cleared:
        if not _may_rerun(context):
            return None
        on_top = rungs.refine(seen, at, free_orbital=row.driven is True)
        return None if on_top is None else _say(R.TWO_STEPS, row, context, on_top, ("step",), "on_top")
    cut = rungs.known_cut(seen, above=at)
    if cut is None and row.flags_order:
        cut = rungs.stronger(seen, at, context.order)
        cut = cut if cut is not None else rungs.other_movement(seen, at)
        cut = cut if cut is not None else rungs.nearest_stronger(seen, at)
    if cut is None:
        return None
    then = rungs.refine(seen, cut, free_orbital=row.driven is True)
    return None if then is None else _to(R.TWO_STEPS, row, context, cut, then=then)


def _beside_keep(context: Context) -> list[Option]:
    """What may be offered beside keep: one milder trial where the clear coat is thin or unknown, a second lamp."""
    found: list[Option] = []
    if context.on_top_of is None and context.clear_coat != "known":
        below = rungs.milder(context.range, context.at)
        if below is not None:
            rung = context.range[below].rung
            text = sentences.one_milder(rung.label, context.trial_minutes, thin=context.clear_coat == "thin")
            differs = rungs.changes(context.tried.rung, rung)
            found.append(Option(R.MILDER, text, below, differs, "fresh", context.trial_minutes))
    if context.colour == "light" and R.SECOND_LAMP not in context.already:
        found.append(Option(R.SECOND_LAMP, sentences.light_paint(), None, ("lamp",), "same"))
    return found
