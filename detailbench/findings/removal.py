"""This shop's own measured trials: load × path of a trial and what came off in the middle of its patch."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime

from detailbench.basics.texts import _
from detailbench.findings.brought_in import brought_in
from detailbench.findings.changes import PanelChange, Side, compared
from detailbench.findings.kit_names import parts
from detailbench.findings.kit_renewal import same_combinations
from detailbench.findings.panels import PanelSeen, outline_of, panel_seen
from detailbench.findings.processes import group_of
from detailbench.findings.technique import setup_of, technique_figures
from detailbench.findings.told_once import told_of_kit
from detailbench.findings.trial_places import places_within
from detailbench.findings.trials_made import stack_beneath
from detailbench.record.picture import JobPicture, one
from detailbench.record.thing import Thing
from detailbench.record.things import Trial
from detailbench.trials.load import LoadPath
from detailbench.trials.removal import MeasuredTrial


@dataclass(frozen=True)
class TrialRemoval:
    """What a trial took off. ``measured`` None where it cannot be said, with ``why_none``."""

    trial: Trial
    load_path_j_m2: float | None
    change: PanelChange | None
    measured: MeasuredTrial | None
    why_none: str


def measured_trials(
    pictures: Iterable[JobPicture], combination_id: str, until: datetime | None = None
) -> tuple[MeasuredTrial, ...]:
    """Every trial of a combination this shop measured in these jobs, for ``removal``; trials of one car's group share a
    paint, and what came with a job taken in is another workshop's. ``until``: only those made by then."""
    out = []
    for picture in pictures:
        same = same_combinations(picture.shop, combination_id)
        found = (
            _measured(picture, t)
            for t in picture.trials
            if t.combination_id in same and (until is None or when(t) <= until) and not brought_in(picture, t)
        )
        out += [each for each in found if each is not None]
    return tuple(out)


@told_of_kit
def _found_so_far(_picture: JobPicture) -> dict[str, MeasuredTrial | None]:
    """Trial → what it took off, filled as it is asked: every other job is asked again after each entry anywhere."""
    return {}


def _measured(picture: JobPicture, trial: Trial) -> MeasuredTrial | None:
    kept = _found_so_far(picture)
    if trial.id not in kept:
        kept[trial.id] = trial_removal(picture, trial).measured
    return kept[trial.id]


def trial_removal(picture: JobPicture, trial: Trial) -> TrialRemoval:
    """Like readings before and after in the part of the patch that gets the whole load."""
    load, why = trial_load(picture, trial)
    if load is None:
        return TrialRemoval(trial, None, None, None, why)
    change = _change(picture, trial)
    if change is None:
        return TrialRemoval(trial, load, None, None, _("not measured"))
    if change.change is None or change.change.u_um is None:
        return TrialRemoval(trial, load, change, None, change.why_none or _("not measured"))
    if not change.for_print:
        # not confirmed, or without temperatures: for the screen, not for a figure other cars are planned by
        return TrialRemoval(trial, load, change, None, _("Measured, but not confirmed: it does not count here."))
    found = MeasuredTrial(change.change.estimate_um, change.change.u_um, load, paint_of(picture, trial))
    return TrialRemoval(trial, load, change, found, "")


def paint_of(picture: JobPicture, trial: Trial) -> str:
    """A word for the paint of a trial: the car and the finish group its panel is in now. A trial goes with its panel
    when that is found to carry another paint."""
    group = group_of(picture, trial.panel)
    return paint_word(picture, trial.group_id if group is None else group.id)


def paint_word(picture: JobPicture, group_id: str) -> str:
    """A word for the paint of a finish group, never the same for two cars or two groups."""
    return f"{picture.car.id} {group_id}"


def trial_load(picture: JobPicture, trial: Trial) -> tuple[float | None, str]:
    """(load × path of a trial in J/m², "") or (None, what is missing)."""
    found, why = trial_load_path(picture, trial)
    if found is None:
        return None, why
    if found.load_path_j_m2 is None:
        return None, _("Hand-led: not computed.")
    return found.load_path_j_m2, ""


def trial_load_path(picture: JobPicture, trial: Trial) -> tuple[LoadPath | None, str]:
    """The load × path of a trial with its working, or (None, what is missing)."""
    if trial.panel not in outline_of(picture).panels:
        return None, _("This car has no panel “{panel}”.").format(panel=trial.panel)
    found = technique_figures(picture, setup_of(trial))
    return found.load, "" if found.load is not None else found.no_load


def places_in_patch(picture: JobPicture, trial: Trial) -> frozenset[str]:
    """Ids of the places at least a pad's diameter inside the patch: there every point gets the whole load. Empty
    where the trial's place was not noted."""
    _machine, pad, _product = parts(picture.shop, one(picture.shop.combinations, trial.combination_id))
    return places_within(picture, trial, pad.diameter_mm)


def _change(picture: JobPicture, trial: Trial) -> PanelChange | None:
    """Between the readings since the last trial made here before it (else all) and those until the next one."""
    inside = places_in_patch(picture, trial)
    if not inside:
        return None
    since = max((when(t) for t in picture.trials if _comes_over(picture, trial, t)), default=None)
    until = min((when(t) for t in picture.trials if _comes_over(picture, t, trial)), default=None)
    before = _side(picture, trial, inside, since, when(trial))
    after = _side(picture, trial, inside, when(trial), until)
    if not (before.seen.taken and after.seen.taken):
        return None
    return compared(before, after, outline_of(picture).panels[trial.panel].substrate)


def _comes_over(picture: JobPicture, later: Trial, trial: Trial) -> bool:
    """Made later on this patch: on top of it, or where its own middle overlaps."""
    if later.panel != trial.panel or later.seq <= trial.seq:
        return False
    under = {t.id for t in stack_beneath(picture, later)}
    return trial.id in under or bool(places_in_patch(picture, later) & places_in_patch(picture, trial))


def when(thing: Thing) -> datetime:
    return thing.stated_at or thing.entered_at


def _side(
    picture: JobPicture, trial: Trial, inside: frozenset[str], since: datetime | None, until: datetime | None
) -> Side:
    """The panel as those readings show it. Readings after a finished step of the panel are not of the trial."""
    kept = tuple(
        r
        for r in picture.readings
        if r.place_id in inside and (since is None or when(r) > since) and (until is None or when(r) <= until)
    )
    part = replace(picture, readings=kept)
    seen = panel_seen(part, trial.panel, "as_found")
    places = tuple(
        # a change of a whole panel is told from proposed places; a patch is told from all inside it
        replace(p, place=replace(p.place, origin="proposed"))
        for p in seen.places
        if p.place.id in inside
    )
    return Side(part, PanelSeen(seen.key, seen.moment, places, seen.figures))
