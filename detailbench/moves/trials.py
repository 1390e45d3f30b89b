"""Trials: record one, judge it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition
from detailbench.body.names import panel_name
from detailbench.findings.gates import no_abrasive
from detailbench.findings.limits import reminder, unread_stops
from detailbench.findings.standing import standing_stops
from detailbench.findings.trial_story import advice_for
from detailbench.moves.move import Done
from detailbench.moves.overriding import stopped_unless_overridden
from detailbench.moves.panels import lamp_of_the_shop, on_panel, real_number
from detailbench.record.picture import one
from detailbench.record.things import Combination, Trial, TrialOutcome
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer
from detailbench.trials.outcome import Cleared, Finish, Outcome, Stopped

SPOTS = choices("trial", "spot")
TECHNIQUE = (
    "dial", "force_n", "force_word", "section_w_mm", "section_h_mm", "passes", "seconds", "surface_before_c",
    "surface_after_c", "lamp_id", "note",
)  # fmt: skip
NUMBERS = ("force_n", "section_w_mm", "section_h_mm", "passes", "seconds")


def _technique(values: Mapping[str, Any]) -> dict[str, Any]:
    for name, value in values.items():
        if name not in TECHNIQUE:
            raise BadInput(_("A technique has no field “{name}”.").format(name=name), field=name)
        if name in NUMBERS and value is not None:
            real_number(value, name)
            if value > 0:
                continue
            raise BadInput(_("That must be more than nothing, or left empty."), field=name, given=value)
    return dict(values)


@dataclass(frozen=True)
class RecordTrial:
    """A trial on a small place: which finish group, panel, combination and technique. ``on_top_of``: the trial whose
    hazy place it refines; it then speaks about finish only."""

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
        )
        habit = stopped_unless_overridden(w, self.job_id, stops, self.panel, self.override)
        lamp_of_the_shop(picture, self.technique.get("lamp_id", ""))
        if self.at is not None:
            on_panel(picture, self.panel, self.at)
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
            **_technique(self.technique),
        )
        note = " ".join(filter(None, (reminder(picture), habit)))
        return Done(self.job_id, _("trial on {panel}").format(panel=panel_name(self.panel)), trial.id, note)


@dataclass(frozen=True)
class CorrectTrial:
    """New technique values for a trial (temperatures measured later, say)."""

    undoable: ClassVar[bool] = True
    job_id: str
    trial_id: str
    technique: Mapping[str, Any]

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        trial = one(picture.trials, self.trial_id)
        lamp_of_the_shop(picture, self.technique.get("lamp_id", ""))
        w.change(trial, **_technique(self.technique))
        return Done(self.job_id, _("trial corrected"), trial.id)


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
    """What was seen after the wipe: ``cleared`` and ``finish``, or ``stopped``. What to do next is kept with it."""

    undoable: ClassVar[bool] = True
    job_id: str
    trial_id: str
    cleared: str = ""
    finish: str = ""
    stopped: str = ""
    only_deep_left: bool = False
    note: str = ""

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
        picture = w.job(self.job_id)
        trial = one(picture.trials, self.trial_id)
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
        )
        says = _("trial judged: {result}").format(result=advice.chosen.result.label)
        return Done(self.job_id, says, thing.id, advice.chosen.sentence)
