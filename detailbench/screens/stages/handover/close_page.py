"""Odometer out, the report closed, copied out, checked, opened, and how it left; the car is fetched."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.due import due
from detailbench.moves.arrival import SetVisit
from detailbench.moves.handover import CarLeaves
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.closing.document_faces import DocumentFaces
from detailbench.screens.stages.handover.due_words import due_title
from detailbench.screens.stages.work_parts.step_number import StepNumber

OF_ITSELF = ("report", "report_left")  # what no report can say of itself


class ClosePage(QWidget):
    """The last page of the last stage."""

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self._context, self._acts = context, acts
        self.odometer = StepNumber(_("odometer out"), step=1, may_be_empty=True)
        self.leaves = button(_("Car is fetched"), self._leaves, name=_("The car is fetched"))
        self.open = sentence()
        self.odometer.committed.connect(self._odometer)
        top = QHBoxLayout()
        top.addWidget(self.odometer, 1)
        top.addWidget(self.leaves, 0, Qt.AlignmentFlag.AlignBottom)
        # what was closed is copied out or printed next
        self.faces = DocumentFaces(context, acts, _("report"), above=(self.open,), then="copy")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addLayout(top)
        column.addWidget(self.faces, 1)
        acts.beside.changed.connect(self.redraw)

    def redraw(self) -> None:
        picture = self._context.picture
        visit = picture.visits[-1] if picture is not None and picture.visits else None
        self.odometer.setEnabled(visit is not None)
        self.leaves.setEnabled(visit is not None and visit.left_at is None)
        self.odometer.set_value(None if visit is None or visit.odometer_out is None else float(visit.odometer_out))
        if visit is not None:
            arrived = "" if visit.odometer_in is None else format_number(visit.odometer_in)
            unit = visit.odometer_unit
            title = _("odometer out, {unit}; in {arrived}") if arrived else _("odometer out, {unit}")
            self.odometer.set_title(title.format(unit=unit, arrived=arrived))
        missing = [k for k in due(picture)["handover"].what if k not in OF_ITSELF] if picture is not None else []
        still = ", ".join(due_title(k) for k in missing)
        self.open.setText(_("Still open, and the report will say so: {what}.").format(what=still) if still else "")
        self.open.setVisible(bool(still))
        self.faces.redraw()

    # acts
    def _odometer(self, value: float | None) -> None:
        picture = self._context.picture
        if picture is None:
            return
        if value is not None and not float(value).is_integer():
            self.odometer.say(_("An odometer shows a whole number, 0 or more."))
            return
        self._context.do(SetVisit(picture.job.id, {"odometer_out": None if value is None else int(value)}), self)

    def _leaves(self) -> None:
        if self._context.picture is not None:
            self._context.do(CarLeaves(self._context.picture.job.id), self)
