"""How the job goes on: paused and taken up again, fetched early, stopped, unfinished, refused; the car comes back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.standing import ENDS, standing_of, turn_words
from detailbench.moves.move import Done
from detailbench.moves.reasons import says_why
from detailbench.record.picture import JobPicture
from detailbench.record.things import JobTurn, StateNote, Visit
from detailbench.record.writing import Writer

TURNS = ("paused", "resumed", *ENDS)


def pause_running(w: Writer, picture: JobPicture) -> str:
    """Pause every step that runs; says which, or nothing."""
    running = [r for r in picture.runs if r.finished_at is None]
    for run in running:
        w.change(run, finished_at=w.now, ended="paused")
    panels = ", ".join(dict.fromkeys(panel_name(r.panel) for r in running))
    return _("What ran is paused: {panels}.").format(panels=panels) if running else ""


@dataclass(frozen=True)
class TurnJob:
    """The job takes a turn: paused, resumed, fetched_early, stopped_after_trial, unfinished or refused; all but a
    resume with a reason, which is printed. A step that runs is paused with it. ``fetched_early`` is also the car
    leaving. After an end only the car's return goes on; while the car is still here, a resume does."""

    undoable: ClassVar[bool] = True
    job_id: str
    turn: str
    reason: str = ""

    def make(self, w: Writer) -> Done:
        if self.turn not in TURNS:
            raise BadInput(_("“{turn}” is no turn a job can take.").format(turn=self.turn), field="turn")
        picture = w.job(self.job_id)
        self._may_turn(picture)
        reason = self.reason.strip()
        if self.turn != "resumed" and not says_why(reason):
            raise BadInput(_("Give the reason in at least two words; it is printed."), field="reason")
        note = pause_running(w, picture) if self.turn != "resumed" else ""
        thing = w.add(JobTurn, job_id=self.job_id, turn=self.turn, reason=reason)
        if self.turn == "fetched_early" and picture.visits[-1].left_at is None:
            w.change(picture.visits[-1], left_at=w.now)
        return Done(self.job_id, _("the job: {turn}").format(turn=turn_words(self.turn)), thing.id, note)

    def _may_turn(self, picture: JobPicture) -> None:
        standing = standing_of(picture)
        here = picture.visits[-1].left_at is None
        if self.turn == "resumed":
            if standing != "paused" and not (standing in ENDS and here):
                why = _("Only a paused job is taken up again.")
                if not here:
                    why = _("The car is not here: note its return first.")
                raise Refused(why, rule="not_paused")
        elif standing in ENDS:
            raise Refused(
                _("The job has ended ({turn}); only the car's return goes on.").format(turn=turn_words(standing)),
                rule="ended",
            )
        elif standing == "handed_over":
            raise Refused(_("The car was handed over; only its return goes on."), rule="ended")
        elif self.turn == "paused" and standing == "paused":
            raise Refused(_("The job is paused already."), rule="paused")


@dataclass(frozen=True)
class CarReturns:
    """The car comes back within the same job: another visit. What was clean is as it came off the road again, so that
    nothing is compared that was not wiped."""

    undoable: ClassVar[bool] = True
    job_id: str
    odometer_in: int | None = None

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        last = picture.visits[-1]
        if last.left_at is None:
            raise Refused(_("The car is still here."), rule="still_here")
        if self.odometer_in is not None and self.odometer_in < 0:
            raise BadInput(_("An odometer shows a whole number, 0 or more."), field="odometer_in")
        visit = w.add(
            Visit,
            job_id=self.job_id,
            arrived_at=w.now,
            odometer_in=self.odometer_in,
            odometer_unit=last.odometer_unit,
        )
        panels = tuple(dict.fromkeys(panel for note in picture.state_notes for panel in note.panels))
        if panels:
            w.add(StateNote, job_id=self.job_id, panels=panels, clean="dirty", how=_("came back off the road"))
        return Done(self.job_id, _("the car is back"), visit.id)
