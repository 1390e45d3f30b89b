"""A gauge that reads off, and a line through two points that would put it right: offered, decided by a person only."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.findings.corrections import Points, correction_of, offered
from detailbench.findings.kit_names import initials
from detailbench.moves.gauge_correction import CorrectGauge, TakeCorrectionBack
from detailbench.record.things import GaugeCorrection
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.look.parts import button, sentence, set_kind
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.screens.stages.thickness.odd_place import two_words


class CorrectionPart(QWidget):
    """Hidden while there is nothing to offer and nothing in force."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        self._points: Points | None = None
        self.is_open = False
        self.open_it = button(_("Correct by two points…"), self._turn)
        self.says = sentence()
        self.why = WhyButton(self._working, desk.context.show_working, _("the correction"))
        self.reason = TextField(_("reason for the correction (printed)"), check=two_words)
        self.correct = button(_("Correct the readings of this spell"), self._correct)
        self.back = button(_("Take the correction back"), self._back)
        row = QHBoxLayout()
        row.addWidget(self.says, 1)
        row.addWidget(self.why, 0, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(desk.context.dress.look.measure.space("thin"))
        column.addWidget(self.open_it)
        column.addLayout(row)
        for part in (self.reason, self.correct, self.back):
            column.addWidget(part)

    def _turn(self) -> None:
        """Open the offer, which takes the room of the check's values; or put it away again."""
        self.is_open = not self.is_open
        self._desk.changed.emit()
        if self.is_open and self.reason.isVisible():
            self.reason.line.setFocus()

    def _kept(self) -> GaugeCorrection | None:
        picture, session = self._desk.context.picture, self._desk.check.session
        return None if picture is None or session is None else correction_of(picture, session)

    def _working(self) -> Working | None:
        return self._points.proof.working if self._points is not None else None

    def _correct(self) -> None:
        points, job = self._points, self._desk.context.job_id
        if points is None or job is None:
            return
        move = CorrectGauge(job, points.session.id, points.shim.id, points.second.id, self.reason.text())
        if self._desk.context.do(move, self, at=self.reason.say) is not None:
            self.reason.set_text("")
            self.is_open = False
            self._desk.told()

    def _back(self) -> None:
        kept, job = self._kept(), self._desk.context.job_id
        if kept is not None and job is not None:
            self._desk.context.do(TakeCorrectionBack(job, kept.id), self)
            self._desk.told()

    def redraw(self) -> None:
        """Only while it can be seen: the offer is worked out anew from every foil reading."""
        picture, kept = self._desk.context.picture, self._kept()
        self._points = offered(picture) if picture is not None and kept is None else None
        can = self._points is not None and self._points.proof.passed
        self.setVisible(kept is not None or self._points is not None)
        self.open_it.setVisible(self._points is not None)
        if self._points is None:
            self.is_open = False
        can = can and self.is_open
        self.says.setVisible(kept is not None or self.is_open)
        self.why.setVisible(self.is_open)
        self.reason.setVisible(can)
        self.correct.setVisible(can)
        self.back.setVisible(kept is not None)
        if kept is not None and picture is not None:
            who = initials(picture.shop, kept.entered_by)
            text = _("Readings of this spell are corrected by decision of {who}: {why}").format(
                who=who, why=kept.reason
            )
            self.says.setText(text)
        elif self._points is not None:
            points = self._points
            text = _(
                "A line through {zero} and {shim} could correct the readings of this spell. {proof} A failed check "
                "stays failed."
            )
            self.says.setText(text.format(zero=points.zero.label, shim=points.shim.label, proof=points.proof.sentence))
        set_kind(self.says, "flagged" if kept is not None else "")
