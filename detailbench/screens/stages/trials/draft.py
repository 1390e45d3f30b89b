"""What the next trial will be: combination, place and technique, before it is recorded."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.body.edges import EdgePosition
from detailbench.findings.first_trial import first_trial
from detailbench.findings.half_rungs import HalfRung
from detailbench.findings.kit_names import parts
from detailbench.findings.panels import outline_of
from detailbench.findings.technique import Setup
from detailbench.findings.technique_bounds import LEAST_SIDE_MM, largest_section_mm
from detailbench.findings.trial_story import known_range, outcome_of, range_combinations, trials_of
from detailbench.record.picture import JobPicture, ShopPicture, one
from detailbench.record.things import Combination, FinishGroup, Trial
from detailbench.trials.outcome import Option, Result
from detailbench.trials.technique import FORCE_N, LONGER, PADS_CUTTING, PADS_FINISHING, SMALLER, usual_section_m2

PASSES = 4
SECONDS = 60.0
PAIR = 2
SIDES = 4 / 3  # a section is laid out a little longer than it is high
WORDS = tuple(FORCE_N)


@dataclass(frozen=True)
class Draft:
    """Technique fields as in Trial. ``force_n`` only where it was weighed. ``prime``: the timer begins with priming,
    for a fresh or cleaned pad. ``pad_condition``, ``primed``, ``batch``: only what somebody said."""

    combination_id: str
    panel: str
    spot: str = "typical"
    on_top_of: str = ""
    at: EdgePosition | None = None
    dial: str = ""
    force_word: str = "moderate"
    force_n: float | None = None
    section_w_mm: float | None = None
    section_h_mm: float | None = None
    passes: int | None = PASSES
    seconds: float | None = SECONDS
    surface_before_c: float | None = None
    prime: bool = True
    pad_condition: str = ""
    primed: str = ""
    batch: str = ""
    lamp_id: str = ""

    def setup(self) -> Setup:
        """What its figures are worked out from."""
        values: dict[str, Any] = {name: getattr(self, name, None) for name in Setup.__dataclass_fields__}
        return Setup(**values)

    def technique(self) -> dict[str, Any]:
        """The fields a trial keeps, those left empty left out."""
        names = (
            "dial", "force_word", "force_n", "section_w_mm", "section_h_mm", "passes", "seconds", "surface_before_c",
            "pad_condition", "primed", "batch", "lamp_id",
        )  # fmt: skip
        return {name: value for name in names if (value := getattr(self, name)) not in (None, "")}


def fresh_draft(
    picture: JobPicture,
    group: FinishGroup,
    panel: str,
    earlier: Iterable[JobPicture] = (),
    day: date | None = None,
) -> Draft | None:
    """The first trial to make here: where the range says to start. None where the range has nothing to try. Where no
    trial is proposed the sheet stands at the mildest: a person may still set that aside by name. ``earlier``: jobs with
    trials; ``day``: today."""
    try:
        start = first_trial(picture, group, panel, earlier, day=day)
    except BadInput:
        return None
    mildest = next((i for i, seen in enumerate(known_range(picture, group.id)) if seen.usable), None)
    rung = mildest if start.rung is None else start.rung
    if rung is None:
        return None
    first = range_combinations(picture, group.id)[rung].id
    return within_panel(picture, with_combination(picture.shop, Draft("", panel, lamp_id=lamp_in_use(picture)), first))


def why_nothing(picture: JobPicture, group: FinishGroup, panel: str, day: date) -> str:
    """The sentence that says why no trial is proposed here; empty where one is."""
    try:
        start = first_trial(picture, group, panel, day=day)
    except BadInput as error:
        return str(error)
    return start.sentence if start.rung is None else ""


def with_combination(shop: ShopPicture, draft: Draft, combination_id: str) -> Draft:
    """The same place with another combination; dial, section and seconds as usual for its machine, pad and compound."""
    if draft.combination_id == combination_id:
        return draft
    machine, pad, product = parts(shop, one(shop.combinations, combination_id))
    dials = [position for position, _per_min in machine.dials]
    wide, high = usual_section_mm(pad.diameter_mm, finishing=product.kind == "finishing")
    return replace(
        draft,
        combination_id=combination_id,
        dial=draft.dial if draft.dial in dials else (dials[len(dials) // 2] if dials else ""),
        section_w_mm=draft.section_w_mm if draft.on_top_of and draft.section_w_mm else wide,
        section_h_mm=draft.section_h_mm if draft.on_top_of and draft.section_h_mm else high,
        seconds=product.working_time_s or SECONDS,
        prime=True,
        pad_condition="",
        primed="",
        batch=product.batch,
    )


def combined(picture: JobPicture, draft: Draft, combination_id: str) -> Draft:
    """``with_combination``, no larger than the panel."""
    return within_panel(picture, with_combination(picture.shop, draft, combination_id))


def moved_to(picture: JobPicture, draft: Draft, panel: str) -> Draft:
    """The same for another panel, its place not chosen yet."""
    return within_panel(picture, replace(draft, panel=panel, at=None))


def within_panel(picture: JobPicture, draft: Draft) -> Draft:
    """The same with a section no larger than the panel it is for, in whole centimetres: a usual one does not fit on a
    mirror."""
    wide, high = draft.section_w_mm, draft.section_h_mm
    if wide is None or high is None or draft.panel not in outline_of(picture).panels:
        return draft
    long, short = largest_section_mm(picture, draft.panel)
    if max(wide, high) <= long and min(wide, high) <= short:
        return draft
    sides = [max(10.0 * (most // 10), LEAST_SIDE_MM) for most in (min(long, max(wide, high)), min(short, wide, high))]
    if wide < high:
        sides.reverse()
    return replace(draft, section_w_mm=sides[0], section_h_mm=sides[1])


def usual_section_mm(pad_mm: float, *, finishing: bool = False) -> tuple[float, float]:
    """A usual section's sides in whole centimetres: six pad areas, nine for finishing."""
    area_mm2 = usual_section_m2(pad_mm, PADS_FINISHING[0] if finishing else PADS_CUTTING) * 1e6
    high = math.sqrt(area_mm2 / SIDES)
    return round(high * SIDES, -1), round(high, -1)


def draft_of(trial: Trial) -> Draft:
    """A trial's own values, to be tried again."""
    return Draft(
        combination_id=trial.combination_id,
        panel=trial.panel,
        spot=trial.spot,
        on_top_of=trial.on_top_of,
        dial=trial.dial,
        force_word=trial.force_word or "moderate",
        force_n=trial.force_n,
        section_w_mm=trial.section_w_mm,
        section_h_mm=trial.section_h_mm,
        passes=trial.passes,
        seconds=trial.seconds,
        batch=trial.batch,
        lamp_id=trial.lamp_id,
    )


def draft_from(picture: JobPicture, trial: Trial, option: Option, range_: tuple[Combination, ...]) -> Draft:
    """What an option after ``trial`` sets up: its combination, fresh or on top, its one change of technique."""
    draft = replace(draft_of(trial), prime=False)
    if option.place == "on_top":
        # a second refining trial speaks of the cut beneath, not of the first one
        draft = replace(draft, on_top_of=trial.on_top_of or trial.id, at=place_of(picture, trial))
    else:
        draft = replace(draft, on_top_of="", at=None)
    if option.rung is not None:
        draft = with_combination(picture.shop, draft, range_[option.rung].id)
    if option.result is Result.COOLER:
        return _cooler(picture.shop, draft)
    kept = outcome_of(picture, trial.id)
    if option.result is Result.CLEAN_PAD and draft.on_top_of and kept is not None and kept.finish == "even_haze":
        draft = _last_pair(draft)
    return within_panel(picture, replace(draft, **_changed(draft, option.result)))


def draft_on_top(
    picture: JobPicture, group_id: str, cut_id: str, refine_id: str, only: frozenset[str] | None = None
) -> Draft | None:
    """A refining trial on the newest place a cut was seen to clear; None where it was seen nowhere. ``only``: ids of
    the trials that count as that cut, where it is a half-rung."""
    for trial in reversed(trials_of(picture, group_id)):
        kept = outcome_of(picture, trial.id)
        if only is not None and trial.id not in only:
            continue
        if trial.combination_id == cut_id and not trial.on_top_of and kept is not None and kept.cleared == "yes":
            draft = replace(draft_of(trial), prime=False, on_top_of=trial.id, at=place_of(picture, trial))
            return with_combination(picture.shop, draft, refine_id)
    return None


def rubbed_harder(picture: JobPicture, group_id: str, half: HalfRung) -> dict[str, Any]:
    """The section and seconds of a half-rung: as it was tried last, else the usual change to the last trial of its
    combination."""
    made = [t for t in trials_of(picture, group_id) if t.combination_id == half.combination_id and not t.on_top_of]
    if half.trials:
        last = one(picture.trials, half.trials[-1])
        own = ("dial", "force_word", "force_n", "section_w_mm", "section_h_mm", "passes", "seconds")
        return {name: value for name in own if (value := getattr(last, name)) not in (None, "")}
    draft = draft_of(made[-1])
    smaller = (
        half.section_m2 is not None and half.section_m2 < (draft.section_w_mm or 0) * (draft.section_h_mm or 0) / 1e6
    )
    result = Result.SMALLER_SECTION if smaller else Result.SLOWER_ARM
    return {"dial": draft.dial, "force_word": draft.force_word, **_changed(draft, result)}


def _changed(draft: Draft, result: Result) -> dict[str, Any]:
    if result is Result.SLOWER_ARM and draft.seconds:
        return {"seconds": round(draft.seconds * LONGER)}
    if result is Result.SMALLER_SECTION and draft.section_w_mm and draft.section_h_mm:
        return {
            "section_w_mm": round(draft.section_w_mm * SMALLER, -1),
            "section_h_mm": round(draft.section_h_mm * SMALLER, -1),
        }
    if result in (Result.CLEAN_PAD, Result.OTHER_PAD):
        return {"prime": True}
    return {}


def _last_pair(draft: Draft) -> Draft:
    """The last pair of light passes a hazy finish is given, each as long as before."""
    each_s = draft.seconds / draft.passes if draft.seconds and draft.passes else None
    seconds = round(each_s * PAIR) if each_s else draft.seconds
    return replace(draft, force_n=None, force_word=WORDS[0], passes=PAIR, seconds=seconds)


def _cooler(shop: ShopPicture, draft: Draft) -> Draft:
    """One thing that warms less: the next lighter force; where it is the lightest, or was weighed, the dial below."""
    if draft.force_n is None and draft.force_word in WORDS[1:]:
        return replace(draft, force_word=WORDS[WORDS.index(draft.force_word) - 1])
    machine, _pad, _product = parts(shop, one(shop.combinations, draft.combination_id))
    slower = sorted(machine.dials, key=lambda dial: dial[1])
    names = [position for position, _per_min in slower]
    at = names.index(draft.dial) if draft.dial in names else 0
    return replace(draft, dial=names[at - 1]) if at > 0 else draft


def lamp_in_use(picture: JobPicture) -> str:
    """The lamp this job was last looked at with, or empty."""
    used = [(mark.seq, mark.lamp_id) for mark in picture.marks]
    used += [(look.seq, look.lamp_id) for look in picture.panel_looks]
    used += [(check.seq, check.lamp_id) for check in picture.mark_checks]
    used += [(trial.seq, trial.lamp_id) for trial in picture.trials]
    lamps = {lamp.id for lamp in picture.shop.lamps if not lamp.retired}
    used = [each for each in used if each[1] in lamps]
    return max(used)[1] if used else ""


def place_of(picture: JobPicture, trial: Trial) -> EdgePosition | None:
    """Where a trial stands on its panel as drawn now; None where no place was noted."""
    from detailbench.findings.panels import outline_of

    if not trial.edge_a or not trial.edge_b or trial.edge_a_mm is None or trial.edge_b_mm is None:
        return None
    panel = outline_of(picture).panels[trial.panel]
    return EdgePosition(trial.edge_a, trial.edge_a_mm, trial.edge_b, trial.edge_b_mm, panel.width_mm, panel.height_mm)
