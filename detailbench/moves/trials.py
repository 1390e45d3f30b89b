"""Trials: record one, judge it, count in its frame."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any, ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition
from detailbench.body.names import panel_name
from detailbench.findings.counting import counted_words
from detailbench.findings.cure import cure_stops, cure_words
from detailbench.findings.gates import no_abrasive
from detailbench.findings.limits import reminder, unread_stops
from detailbench.findings.processes import group_of
from detailbench.findings.standing import standing_stops
from detailbench.findings.technique_bounds import MOST_NOTE, technique_unfit, text_too_long
from detailbench.findings.trial_bans import colour_stops, heat_reminder
from detailbench.findings.trial_order import first_trial_stops, worst_too_early
from detailbench.findings.trial_places import check_place, no_place_words, patch_at
from detailbench.findings.trial_story import advice_for, outcome_of, trials_of
from detailbench.findings.trial_timers import LEFT, STARTED, end_unknown, say_the_time
from detailbench.moves.move import Done
from detailbench.moves.overriding import stopped_unless_overridden
from detailbench.moves.panels import a_temperature, lamp_of_the_shop, on_panel, real_number
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Combination, Hold, Trial, TrialOutcome
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer
from detailbench.trials.outcome import Cleared, Finish, Outcome, Stopped

SPOTS = choices("trial", "spot")
TECHNIQUE = (
    "dial", "force_n", "force_word", "section_w_mm", "section_h_mm", "passes", "seconds", "surface_before_c",
    "surface_after_c", "lamp_id", "note", "pad_condition", "primed", "batch",
)  # fmt: skip
NUMBERS = ("force_n", "section_w_mm", "section_h_mm", "passes", "seconds")
MOST_MARKS = 10_000
PADS = choices("trial", "pad_condition")
PRIMED = choices("trial", "primed")
TIMERS = choices("trial", "timer")


def _technique(
    values: Mapping[str, Any], picture: JobPicture, panel: str, combination: Combination, kept: Mapping[str, Any]
) -> dict[str, Any]:
    """What is entered, each value one that can be; ``kept``: what the trial holds already, which is not asked again."""
    for name, value in values.items():
        if name not in TECHNIQUE:
            raise BadInput(_("A technique has no field “{name}”.").format(name=name), field=name)
        if name.endswith("_c") and value is not None:
            a_temperature(value, name)
        if name in NUMBERS and value is not None:
            real_number(value, name)
            if value > 0:
                continue
            raise BadInput(_("That must be more than nothing, or left empty."), field=name, given=value)
    if values.get("pad_condition", "") not in ("", *PADS):
        raise BadInput(
            _("The pad is fresh, cleaned or loaded."), field="pad_condition", given=values.get("pad_condition")
        )
    if values.get("primed", "") not in ("", *PRIMED):
        raise BadInput(_("The pad was primed: yes or no."), field="primed", given=values.get("primed"))
    unfit = technique_unfit(picture, panel, combination, {**kept, **values})
    if unfit is not None and unfit[0] in values:
        raise BadInput(unfit[1], field=unfit[0], given=str(values[unfit[0]])[:60])
    return dict(values)


@dataclass(frozen=True)
class RecordTrial:
    """A trial on a small place: which finish group, panel, combination and technique. ``on_top_of``: the trial whose
    hazy place it refines; it then speaks about finish only. A fresh place serves once. ``technique``: dial, force_n,
    force_word, section_w_mm, section_h_mm, passes, seconds, surface_before_c, surface_after_c, lamp_id, note,
    pad_condition (fresh, cleaned, loaded), primed (yes, no), batch (that of the shelf where it is left out). ``timed``:
    a timer leads; its seconds are a plan till the passes are over, so none are kept yet."""

    undoable: ClassVar[bool] = True
    job_id: str
    group_id: str
    panel: str
    combination_id: str
    spot: str = "typical"
    on_top_of: str = ""
    at: EdgePosition | None = None
    technique: Mapping[str, Any] = field(default_factory=dict)
    override: str = ""
    timed: bool = False

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        group = one(picture.groups, self.group_id)
        if self.panel not in group.panels:
            raise BadInput(
                _("That panel is not in the finish group “{group}”.").format(group=_(group.name)), field="panel"
            )
        if self.spot not in SPOTS:
            raise BadInput(_("The place is typical, worst or confirming."), field="spot", given=self.spot)
        combination = w.get(Combination, self.combination_id)
        if self.on_top_of:
            under = one(picture.trials, self.on_top_of)
            if under.panel != self.panel:
                raise Refused(_("A refining trial stands on the place it refines, on the same panel."), rule="on_top")
        stops = (
            *unread_stops(picture, w.person_id, w.now.date()),
            *standing_stops(picture),
            *no_abrasive(picture, self.panel),
            *cure_stops(picture, self.panel, w.now.date()),
            *first_trial_stops(picture, group, combination.id, w.now.date()),
            *colour_stops(picture, group.id, combination.id),
        )
        habit = stopped_unless_overridden(w, self.job_id, stops, self.panel, self.override)
        lamp_of_the_shop(picture, self.technique.get("lamp_id", ""))
        technique = _technique(self.technique, picture, self.panel, combination, {})
        if self.timed:
            technique |= {"seconds": None, "timer": STARTED}
        near = self._fresh_place(picture, technique)
        if not technique.get("batch"):
            technique["batch"] = one(picture.shop.products, combination.product_id).batch
        place = {} if self.at is None else {
            "edge_a": self.at.edge_a, "edge_a_mm": self.at.a_mm, "edge_b": self.at.edge_b, "edge_b_mm": self.at.b_mm,
        }  # fmt: skip
        trial = w.add(
            Trial,
            job_id=self.job_id,
            group_id=group.id,
            panel=self.panel,
            combination_id=combination.id,
            spot=self.spot,
            on_top_of=self.on_top_of,
            **place,
            **technique,
        )
        worst = worst_too_early(picture, group, self.spot)
        cure = cure_words(picture, group, w.now.date())
        # not read again: that would read the shop's other jobs with it
        heat = heat_reminder(replace(picture, trials=(*picture.trials, trial)), group.id, trial)
        note = " ".join(filter(None, (reminder(picture), near, heat, worst, cure, habit)))
        return Done(self.job_id, _("trial on {panel}").format(panel=panel_name(self.panel)), trial.id, note)

    def _fresh_place(self, picture: JobPicture, technique: Mapping[str, Any]) -> str:
        """Raise Refused where a fresh trial was made on this place before; what speaks against it, where anything
        does: another too near, an edge, a place nobody can tell from one before."""
        if self.at is None:
            return "" if self.on_top_of else no_place_words(picture, self.panel)
        on_panel(picture, self.panel, self.at)
        if self.on_top_of:
            return ""
        sides = technique.get("section_w_mm"), technique.get("section_h_mm")
        patch = patch_at(picture, self.panel, self.at, self.combination_id, *sides)
        found = check_place(picture, self.panel, patch, self.spot)
        if found.taken:
            raise Refused(found.taken, rule="place_used")
        return found.near


@dataclass(frozen=True)
class CorrectTrial:
    """New technique values for a trial (temperatures measured later, say). ``timer``: started, left_running or
    empty, as its timer stands; seconds somebody knows end it."""

    undoable: ClassVar[bool] = True
    job_id: str
    trial_id: str
    technique: Mapping[str, Any]

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        trial = one(picture.trials, self.trial_id)
        lamp_of_the_shop(picture, self.technique.get("lamp_id", ""))
        technique = dict(self.technique)
        timer = technique.pop("timer", "" if technique.get("seconds") else trial.timer)
        if timer not in ("", *TIMERS):
            raise BadInput(_("A timer was started or left running."), field="timer", given=timer)
        combination = one(picture.shop.combinations, trial.combination_id)
        kept = {name: getattr(trial, name) for name in ("section_w_mm", "section_h_mm")}
        before = trial.timer
        w.change(trial, timer=timer, **_technique(technique, picture, trial.panel, combination, kept))
        return Done(self.job_id, self._says(before, timer), trial.id)

    def _says(self, before: str, timer: str) -> str:
        """What the timer, or a hand that knows its time, has entered; else that it was corrected."""
        seconds = self.technique.get("seconds")
        if before == STARTED and timer == "" and seconds:
            return _("the passes took {n} s").format(n=format_number(seconds))
        if timer != before and timer == STARTED:
            return _("timer started")
        if timer != before and timer == LEFT:
            return _("timer left running, time unknown")
        return _("trial corrected")


@dataclass(frozen=True)
class StrikeTrial:
    """Take a trial out; the journal keeps it."""

    undoable: ClassVar[bool] = True
    job_id: str
    trial_id: str

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        trial = one(picture.trials, self.trial_id)
        if any(t.on_top_of == trial.id for t in picture.trials):
            raise Refused(_("Another trial stands on top of this one; strike that one out first."), rule="on_top")
        if any(trial.id in p.trial_ids for p in picture.processes):
            raise Refused(_("A process rests on this trial; adopt another process first."), rule="adopted")
        for outcome in picture.outcomes:
            if outcome.trial_id == trial.id:
                w.withdraw(outcome)
        w.withdraw(trial)
        return Done(self.job_id, _("trial struck out"), trial.id)


@dataclass(frozen=True)
class JudgeTrial:
    """What was seen after the wipe: ``cleared`` and ``finish``, or ``stopped``. What to do next is kept with it.
    ``lamp_id``: judged under; ``second_lamp_id``: looked at under another one too; marks counted in the frame before
    and after support the person's word and never take its place."""

    undoable: ClassVar[bool] = True
    job_id: str
    trial_id: str
    cleared: str = ""
    finish: str = ""
    stopped: str = ""
    only_deep_left: bool = False
    note: str = ""
    lamp_id: str = ""
    second_lamp_id: str = ""
    counted_before: int | None = None
    counted_left: int | None = None

    def make(self, w: Writer) -> Done:
        for name, value, known in (
            ("cleared", self.cleared, Cleared), ("finish", self.finish, Finish), ("stopped", self.stopped, Stopped),
        ):  # fmt: skip
            if value and value not in set(known):
                raise BadInput(_("“{value}” is not an outcome.").format(value=value), field=name, given=value)
        outcome = Outcome(
            Cleared(self.cleared) if self.cleared else None,
            Finish(self.finish) if self.finish else None,
            Stopped(self.stopped) if self.stopped else None,
            self.only_deep_left,
        )
        if isinstance(self.note, str) and len(self.note) > MOST_NOTE:
            raise BadInput(text_too_long(len(self.note)), field="note")
        picture = w.job(self.job_id)
        trial = one(picture.trials, self.trial_id)
        for lamp in (self.lamp_id, self.second_lamp_id):
            lamp_of_the_shop(picture, lamp)
        if self.second_lamp_id and self.second_lamp_id == (self.lamp_id or trial.lamp_id):
            raise BadInput(_("The second lamp is another one than the first."), field="second_lamp_id")
        if not self.stopped and end_unknown(trial):
            raise Refused(say_the_time(), rule="left_running")
        counted = a_count(self.counted_before, self.counted_left)
        advice = advice_for(picture, trial, outcome)
        thing = w.add(
            TrialOutcome,
            job_id=self.job_id,
            trial_id=trial.id,
            cleared=self.cleared,
            finish=self.finish,
            stopped=self.stopped,
            only_deep_left=self.only_deep_left,
            next_result=str(advice.chosen.result),
            note=self.note,
            lamp_id=self.lamp_id,
            second_lamp_id=self.second_lamp_id,
            counted_before=self.counted_before,
            counted_left=self.counted_left,
        )
        held = self._hold(w, picture, trial) if outcome.stopped is Stopped.COLOUR_ON_PAD else ""
        says = _("trial judged: {result}").format(result=advice.chosen.result.label)
        return Done(self.job_id, says, thing.id, " ".join(filter(None, (advice.chosen.sentence, held, counted))))

    def _hold(self, w: Writer, picture: JobPicture, trial: Trial) -> str:
        """Colour on the pad holds the panel at once, not when somebody comes to it; a person releases it."""
        if any(h.panel == trial.panel and not h.lifted for h in picture.holds):
            return ""
        group = group_of(picture, trial.panel)
        numbers = [t.id for t in trials_of(picture, trial.group_id if group is None else group.id)]
        number = numbers.index(trial.id) + 1 if trial.id in numbers else len(numbers)
        reason = _("colour on the pad in trial {n}").format(n=number)
        w.add(Hold, job_id=self.job_id, panel=trial.panel, reason=reason)
        return _("It is held back now; release it where the owner was asked.")


@dataclass(frozen=True)
class CountMarks:
    """Marks counted in the frame before and after, noted with the newest outcome of a trial; both empty: no count."""

    undoable: ClassVar[bool] = True
    job_id: str
    trial_id: str
    counted_before: int | None
    counted_left: int | None

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        outcome = outcome_of(picture, one(picture.trials, self.trial_id).id)
        if outcome is None:
            raise Refused(_("Say first what was seen; a count only supports it."), rule="not_judged")
        says = a_count(self.counted_before, self.counted_left)
        w.change(outcome, counted_before=self.counted_before, counted_left=self.counted_left)
        return Done(self.job_id, _("marks counted in the frame"), outcome.id, says)


def a_count(before: int | None, left: int | None) -> str:
    """What the count says, or empty where nobody counted. Raises BadInput for half a count or an impossible one."""
    if before is None and left is None:
        return ""
    if before is None or left is None:
        raise BadInput(
            _("A count needs both: marks before and marks left in the same frame."),
            field="counted_before" if before is None else "counted_left",
        )
    for name, value in (("counted_before", before), ("counted_left", left)):
        real_number(value, name)
        if value != int(value):
            raise BadInput(_("Marks are counted in whole numbers."), field=name, given=value)
        if value > MOST_MARKS:
            text = _("Nobody counts more than {most} marks in one frame.")
            raise BadInput(text.format(most=format_number(MOST_MARKS)), field=name, given=value)
    return counted_words(before, left)
