"""A person decides that a gauge's readings count corrected by two points, or takes that back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.findings.corrections import points_of
from detailbench.moves.move import Done
from detailbench.moves.reasons import says_why
from detailbench.record.picture import one
from detailbench.record.things import GaugeCorrection, Person
from detailbench.record.writing import Writer
from detailbench.thickness.two_point import correction_stands


@dataclass(frozen=True)
class CorrectGauge:
    """Readings of this session count as corrected through zero plate and ``shim_id``, proved on ``proof_id``; with
    name and reason, printed. Raw values stay, and no gauge check passes by it."""

    undoable: ClassVar[bool] = True
    job_id: str
    session_id: str
    shim_id: str
    proof_id: str
    reason: str

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        session = one(picture.sessions, self.session_id)
        if not w.person_id:
            raise Refused(_("Choose who you are first: a correction is printed with a name."), rule="no_person")
        w.get(Person, w.person_id)
        if not says_why(self.reason):
            raise BadInput(_("Give the reason in at least two words; it is printed."), field="reason")
        points = points_of(picture, session, self.shim_id, self.proof_id)
        stands = correction_stands(points.proof, self.reason)
        if not stands.in_force:
            raise Refused(" ".join((points.proof.sentence, stands.sentence)), rule="two_point")
        thing = w.add(
            GaugeCorrection,
            job_id=self.job_id,
            session_id=session.id,
            zero_id=points.zero.id,
            shim_id=points.shim.id,
            proof_id=points.second.id,
            reason=self.reason.strip(),
            round_no=points.round_no,
            proof_round=points.proof_round,
        )
        note = _("A failed gauge check stays failed: the correction confirms no reading.")
        return Done(self.job_id, _("gauge readings corrected by two points"), thing.id, note)


@dataclass(frozen=True)
class TakeCorrectionBack:
    """The readings count as read again; the journal keeps the correction."""

    undoable: ClassVar[bool] = True
    job_id: str
    correction_id: str

    def make(self, w: Writer) -> Done:
        kept = one(w.job(self.job_id).corrections, self.correction_id)
        w.withdraw(kept)
        return Done(self.job_id, _("correction of the gauge taken back"), kept.id)
