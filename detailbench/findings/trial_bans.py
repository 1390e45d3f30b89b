"""What stands against a combination on this paint: a stop for heat until it has run without one, colour on the pad
until a person set that aside for a trial and it ran."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from detailbench.basics.texts import _
from detailbench.findings.kit_names import combination_name
from detailbench.findings.kit_renewal import stands_for
from detailbench.findings.processes import group_of, is_finished, panel_steps
from detailbench.findings.stop import Stop
from detailbench.findings.technique import material_of, setup_of, technique_figures
from detailbench.findings.trials_made import outcome_of, trials_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import Trial
from detailbench.trials.outcome import Stopped

COLOUR = str(Stopped.COLOUR_ON_PAD)
HEAT = str(Stopped.HEAT)
RUBBING = "force_by_speed_n_m_s"  # what heats, per pad: force × pad speed


@dataclass(frozen=True)
class Ban:
    """``trial`` was stopped for ``why``: heat or colour_on_pad. ``lifted_by``: the trial of the same combination that
    says otherwise since, None while the stop stands."""

    trial: Trial
    why: str
    lifted_by: Trial | None = None

    @property
    def stands(self) -> bool:
        return self.lifted_by is None


def bans_of(picture: JobPicture, trials: Iterable[Trial], ran: str = "") -> tuple[Ban, ...]:
    """The stops among these trials of one paint, in the order made, each with the first later trial that lifts it.
    ``ran``: id of a trial taken as judged and not stopped, whatever outcome of it is kept.

    A later trial that was judged and not stopped lifts a stop for heat, for the technique it was made with; one on
    metal says nothing about plastic, which lets the heat go more slowly. Colour is lifted by a trial for which a person
    set it aside by name."""
    bans: list[Ban] = []
    for trial in trials:
        kept = outcome_of(picture, trial.id)
        stopped = "" if trial.id == ran else None if kept is None else kept.stopped
        if stopped in (HEAT, COLOUR):
            bans.append(Ban(trial, stopped))
        elif stopped == "":
            bans = [replace(b, lifted_by=trial) if b.stands and _lifts(picture, b, trial) else b for b in bans]
    return tuple(bans)


def standing_bans(picture: JobPicture, group_id: str, combination_id: str) -> tuple[Ban, ...]:
    """The stops of a combination on the paint of a finish group that nothing lifted."""
    key, found = stands_for(picture.shop, combination_id), bans_of(picture, trials_of(picture, group_id))
    return tuple(b for b in found if b.stands and b.trial.combination_id == key)


def lifted_bans(picture: JobPicture, group_id: str, combination_id: str) -> tuple[Ban, ...]:
    """The stops for heat of a combination that a later trial lifted, where none stands."""
    key, found = stands_for(picture.shop, combination_id), bans_of(picture, trials_of(picture, group_id))
    own = [b for b in found if b.trial.combination_id == key]
    return () if any(b.stands for b in own) else tuple(b for b in own if b.why == HEAT)


def _lifts(picture: JobPicture, ban: Ban, after: Trial) -> bool:
    if after.combination_id != ban.trial.combination_id:
        return False
    if ban.why == COLOUR:
        return _set_aside(picture, after)
    return material_of(picture, ban.trial.panel) == "metal" or material_of(picture, after.panel) == "plastic"


def _set_aside(picture: JobPicture, trial: Trial) -> bool:
    """A person set the colour aside for this very trial: the reason is entered with it, right before it."""
    own = [o.seq for o in picture.overrides if (o.rule, o.panel) == (COLOUR, trial.panel) and o.seq < trial.seq]
    return bool(own) and not any(max(own) < t.seq < trial.seq for t in picture.trials)


def before_a_stop(picture: JobPicture, trials: Iterable[Trial]) -> frozenset[str]:
    """Ids of the trials whose combination was stopped later: what they showed was seen before that was known."""
    trials = tuple(trials)
    newest = {b.trial.combination_id: b.trial.seq for b in bans_of(picture, trials)}
    return frozenset(t.id for t in trials if t.seq < newest.get(t.combination_id, 0))


def stops_that_count(picture: JobPicture, trials: Iterable[Trial], combination_ids: Iterable[str]) -> tuple[int, ...]:
    """The numbers of the trials, among these of one paint, whose stop takes away what was seen of these combinations
    before: the newest stop of each that ran before it."""
    trials, asked = tuple(trials), set(combination_ids)
    over = {t.combination_id for t in trials if t.id in before_a_stop(picture, trials)}
    newest = {b.trial.combination_id: b.trial.id for b in bans_of(picture, trials)}
    return tuple(n for n, t in enumerate(trials, 1) if t.id in newest.values() and t.combination_id in over & asked)


def cooler(picture: JobPicture, stopped: Trial, after: Trial) -> bool | None:
    """Whether a trial rubs cooler than the one that was stopped: less force × pad speed, fewer seconds on each place,
    or a panel that had cooled, and none of them more. None where nothing noted of both can be held together."""
    was, now = (_warms(picture, t) for t in (stopped, after))
    both = was.keys() & now.keys()
    if RUBBING in both:
        both -= {"force_n", "pad_speed_m_s"}  # less force at more speed is one rubbing, more or less of it
    pairs = [(was[k], now[k]) for k in both]
    if not pairs:
        return None
    return any(b < a for a, b in pairs) and not any(b > a for a, b in pairs)


def _warms(picture: JobPicture, trial: Trial) -> dict[str, float]:
    """What warms a panel, as far as it was noted."""
    found = technique_figures(picture, setup_of(trial))
    out: dict[str, float] = {}
    if found.force_n is not None:
        out["force_n"] = found.force_n
    if found.speed is not None:
        out["pad_speed_m_s"] = found.speed.speed_m_s
    if found.force_n is not None and found.speed is not None:
        out[RUBBING] = found.force_n * found.speed.speed_m_s
    if trial.seconds and trial.section_w_mm and trial.section_h_mm:
        out["s_per_mm2"] = trial.seconds / (trial.section_w_mm * trial.section_h_mm)
    if trial.surface_before_c is not None:
        out["start_c"] = trial.surface_before_c
    return out


def colour_stops(picture: JobPicture, group_id: str, combination_id: str) -> tuple[Stop, ...]:
    """What stands against another trial of a combination that took colour: a person sets it aside with a reason."""
    if not any(b.why == COLOUR for b in standing_bans(picture, group_id, combination_id)):
        return ()
    text = _("{name} took colour on this paint: not to be used again before the owner was asked.")
    return (Stop(COLOUR, text.format(name=combination_name(picture.shop, combination_id))),)


def heat_reminder(picture: JobPicture, group_id: str, trial: Trial) -> str:
    """Said where a combination stopped for heat is tried again and nothing noted is cooler; empty otherwise."""
    hot = [
        b for b in standing_bans(picture, group_id, trial.combination_id) if b.why == HEAT and b.trial.seq < trial.seq
    ]
    if not hot or cooler(picture, hot[-1].trial, trial):
        return ""
    numbers = [t.id for t in trials_of(picture, group_id)]
    text = _("Stopped for heat in trial {n}: only cooler, with a smaller pad speed, less force, or after a pause.")
    return text.format(n=numbers.index(hot[-1].trial.id) + 1)


def ban_sentence(picture: JobPicture, group_id: str, combination_id: str) -> str:
    """Why a combination may not be used on this paint as it stands; empty where nothing stands against it."""
    found = standing_bans(picture, group_id, combination_id)
    if not found:
        return ""
    name = combination_name(picture.shop, combination_id)
    if any(b.why == COLOUR for b in found):
        return _("{name} took colour on this paint and nobody has set that aside for a trial since.").format(name=name)
    return _("{name} was stopped for heat on this paint and has not run without since.").format(name=name)


def ban_start_stops(picture: JobPicture, panel: str, combination_id: str) -> tuple[Stop, ...]:
    """What stands against polishing a panel with a combination that was stopped on its paint."""
    group = group_of(picture, panel)
    said = "" if group is None else ban_sentence(picture, group.id, combination_id)
    return (Stop("stopped_here", said),) if said else ()


def stopped_panels(picture: JobPicture) -> Mapping[str, str]:
    """Panel → why a step that is still to be done there cannot start: its combination was stopped on this paint."""
    out: dict[str, str] = {}
    for group in picture.groups:
        for step in panel_steps(picture, group.panels[0]) if group.panels else ():
            said = ban_sentence(picture, group.id, step.combination_id) if step.means == "machine" else ""
            for panel in group.panels if said else ():
                if group_of(picture, panel) == group and not is_finished(picture, panel, step.id):
                    out.setdefault(panel, said)
    return out
