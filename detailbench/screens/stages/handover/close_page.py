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
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.closing.close_part import ClosePart
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.closing.copies_part import CopiesPart
from detailbench.screens.stages.closing.deliver_part import DeliverPart
from detailbench.screens.stages.handover.due_words import due_title
from detailbench.screens.stages.work_parts.pages import Faces, in_line, page_column
from detailbench.screens.stages.work_parts.step_number import StepNumber


class ClosePage(QWidget):
    """The last page of the last stage."""

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self._context, self._acts = context, acts
        self.odometer = StepNumber(_("odometer out"), step=1, may_be_empty=True)
        self.leaves = button(_("Car is fetched"), self._leaves, name=_("The car is fetched"))
        self.open = sentence()
        self.closing = ClosePart(context, acts)
        self.copies = CopiesPart(context, acts)
        self.odometer.committed.connect(self._odometer)
        top = QHBoxLayout()
        top.addWidget(self.odometer, 1)
        top.addWidget(self.leaves, 0, Qt.AlignmentFlag.AlignBottom)
        faces = (("close", _("Close")), ("copy", _("Copy out")), ("left", _("How it left")))
        self.which = in_line(ChoiceRow(_("report"), faces, columns=3))
        self.delivery = DeliverPart(context, acts)
        self.none = sentence(_("Nothing is closed yet: close it first."))
        self.faces = Faces()
        first, above = page_column(context.dress)
        for part in (self.open, self.closing):
            above.addWidget(part)
        above.addStretch(1)
        second, below = page_column(context.dress)
        below.addWidget(self.none)
        below.addWidget(self.copies, 1)
        below.addStretch(0)
        self._by_key = {"close": first, "copy": second, "left": self.delivery}
        for face in self._by_key.values():
            self.faces.addWidget(face)
        self.which.set_value("close")
        self.which.chosen.connect(self.turn)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addLayout(top)
        column.addWidget(self.which)
        column.addWidget(self.faces, 1)
        self._closed: tuple[str, int] | None = None
        acts.beside.changed.connect(self.redraw)

    def turn(self, face: str) -> None:
        """Show one of the faces."""
        self.which.set_value(face)
        self.faces.setCurrentWidget(self._by_key[face])

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
        missing = [k for k in due(picture)["handover"].what if k != "report"] if picture is not None else []
        still = ", ".join(due_title(k) for k in missing)
        self.open.setText(_("Still open, and the report will say so: {what}.").format(what=still) if still else "")
        self.open.setVisible(bool(still))
        documents = self._acts.documents()
        self.none.setVisible(not documents)
        for part in (self.closing, self.copies, self.delivery):
            part.redraw()
        now = (picture.job.id if picture is not None else "", len(documents))
        if self._closed is None or self._closed[0] != now[0]:
            self.turn("close")
        elif self._closed[1] < now[1]:
            self.turn("copy")  # what was closed is copied out or printed next
        self._closed = now

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
