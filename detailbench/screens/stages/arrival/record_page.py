"""The arrival record: what it still lacks, closed, copied out, and how it left the shop the same day."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.due import due
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.arrival.words import due_title
from detailbench.screens.stages.closing.close_part import ClosePart
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.closing.copies_part import CopiesPart
from detailbench.screens.stages.closing.deliver_part import DeliverPart
from detailbench.screens.stages.work_parts.pages import Faces, in_line, page_column
from detailbench.screens.stages.work_parts.when import when_words


class RecordPage(QWidget):
    """Three faces in the order of the day: close, copy out, how it left."""

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self._context, self._acts = context, acts
        faces = (("close", _("Close")), ("copy", _("Copy out")), ("left", _("How it left")))
        self.which = in_line(ChoiceRow(_("record"), faces, columns=3))
        self.missing, self.signed, self.closed = sentence(), sentence(), sentence()
        self.closing, self.copies = ClosePart(context, acts), CopiesPart(context, acts)
        self.delivery = DeliverPart(context, acts)
        self.faces = Faces()
        first, column = page_column(context.dress)
        for part in (self.missing, self.signed, self.closed, self.closing):
            column.addWidget(part)
        column.addStretch(1)
        second, below = page_column(context.dress)
        self.none = sentence(_("Nothing is closed yet: close it first."))
        below.addWidget(self.none)
        below.addWidget(self.copies, 1)
        below.addStretch(0)
        self._by_key = {"close": first, "copy": second, "left": self.delivery}
        for face in self._by_key.values():
            self.faces.addWidget(face)
        self.which.set_value("close")
        self.which.chosen.connect(self.turn)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(context.dress.look.measure.space("small"))
        whole.addWidget(self.which)
        whole.addWidget(self.faces, 1)
        self._closed: tuple[str, int] | None = None
        acts.beside.changed.connect(self.redraw)

    def turn(self, face: str) -> None:
        """Show one of the faces."""
        self.which.set_value(face)
        self.faces.setCurrentWidget(self._by_key[face])

    def redraw(self) -> None:
        picture = self._context.picture
        documents = self._acts.documents()
        missing = [k for k in due(picture)["arrival"].what if k != "record"] if picture is not None else []
        still = ", ".join(due_title(k) for k in missing)
        self.missing.setText(
            _("Still open, and the record will say so: {what}.").format(what=still)
            if still
            else _("Everything the record asks for is entered.")
        )
        self.signed.setText("" if picture is None else self._signed(picture))
        self.closed.setVisible(bool(documents))
        if documents:
            at = when_words(documents[0].entered_at)
            self.closed.setText(_("Closed {at}. A new one names the one it replaces; both stay.").format(at=at))
        self.signed.setVisible(bool(self.signed.text()))
        self.none.setVisible(not documents)
        for part in (self.closing, self.copies, self.delivery):
            part.redraw()
        now = (picture.job.id if picture is not None else "", len(documents))
        if self._closed is not None and self._closed[0] == now[0] and self._closed[1] < now[1]:
            self.turn("left")  # it leaves the shop the same day: that is asked for next
        elif self._closed is None or self._closed[0] != now[0]:
            self.turn("close")
        self._closed = now

    @staticmethod
    def _signed(picture: JobPicture) -> str:
        signed = {s.role for s in picture.signatures if s.moment == "arrival"}
        if signed & {"owner", "bearer"}:
            return ""
        return _("Neither owner nor bearer has signed or answered yet.")
