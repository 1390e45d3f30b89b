"""The arrival record: what it still lacks, closed, copied out, and how it left the shop the same day."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.due import due
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.arrival.words import due_title
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.closing.document_faces import DocumentFaces
from detailbench.screens.stages.work_parts.when import when_words


class RecordPage(QWidget):
    """Three faces in the order of the day: close, copy out, how it left."""

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self._context, self._acts = context, acts
        self.missing, self.signed, self.closed = sentence(), sentence(), sentence()
        # it leaves the shop the same day: how is asked for once it is closed
        self.faces = DocumentFaces(context, acts, _("record"), above=(self.missing, self.signed, self.closed))
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.faces)
        acts.beside.changed.connect(self.redraw)

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
        self.faces.redraw()

    @staticmethod
    def _signed(picture: JobPicture) -> str:
        signed = {s.role for s in picture.signatures if s.moment == "arrival"}
        if signed & {"owner", "bearer"}:
            return ""
        return _("Neither owner nor bearer has signed or answered yet.")
