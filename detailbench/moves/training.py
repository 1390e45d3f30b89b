"""Somebody learning says what comes next, before it is shown."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.findings.training import for_training, judged_trials, newest_round
from detailbench.moves.move import SHOP, Done
from detailbench.record.things import TrainingAnswer
from detailbench.record.writing import Writer
from detailbench.trials.outcome import Result


@dataclass(frozen=True)
class AnswerTraining:
    """The next step after a trial of a finished job, as who is entering says it: one of the words of a result.
    ``anew`` begins another round; else the answer belongs to this person's newest round of that job."""

    undoable: ClassVar[bool] = True
    job_id: str
    trial_id: str
    result: str
    anew: bool = False

    def make(self, w: Writer) -> Done:
        if not w.person_id:
            raise Refused(_("Say first who is learning: choose the person who is entering."), rule="no_person")
        if self.result not in set(Result):
            raise BadInput(_("“{value}” is no result of a trial.").format(value=self.result), field="result")
        picture = w.job(self.job_id)
        if not for_training((picture,)):
            raise Refused(_("Only a job that has ended can be gone through again."), rule="not_ended")
        if all(t.id != self.trial_id for t in judged_trials(picture)):
            raise Refused(_("That trial was never judged in this job."), rule="no_such_trial")
        before = () if self.anew else newest_round(w.shop(), self.job_id, w.person_id)
        if any(a.trial_id == self.trial_id for a in before):
            raise Refused(
                _("This one is answered already: take the answer back first, or begin anew."), rule="answered"
            )
        thing = w.add(
            TrainingAnswer,
            trial_of=self.job_id,
            trial_id=self.trial_id,
            person_id=w.person_id,
            result=self.result,
            round_id=before[-1].round_id if before else "",
        )
        if not before:
            w.change(thing, round_id=thing.id)  # a round is called by its first answer
        return Done(SHOP, _("training: one answer kept"), thing.id)
