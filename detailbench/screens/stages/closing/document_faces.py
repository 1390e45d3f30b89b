"""The faces of a document in the order of the day: what stands before it, close, copy out, how it left."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.closing.close_part import ClosePart
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.closing.copies_part import CopiesPart
from detailbench.screens.stages.closing.deliver_part import DeliverPart
from detailbench.screens.stages.work_parts.pages import Faces, in_line, page_column


class DocumentFaces(QWidget):
    """``above``: sentences over the close button; ``before``: a face of its own before it, with its name; ``then``: the
    face shown once the document is closed (copy or left)."""

    def __init__(
        self,
        context: Context,
        acts: ClosingActs,
        title: str,
        *,
        above: Sequence[QWidget] = (),
        before: tuple[str, QWidget] | None = None,
        then: str = "left",
    ) -> None:
        super().__init__()
        self._context, self._acts, self._then = context, acts, then
        names = [("close", _("Close")), ("copy", _("Copy out")), ("left", _("How it left"))]
        self.closing, self.copies = ClosePart(context, acts), CopiesPart(context, acts)
        self.delivery = DeliverPart(context, acts)
        self.none = sentence(_("Nothing is closed yet: close it first."))
        close, column = page_column(context.dress)
        for part in (*above, self.closing):
            column.addWidget(part)
        column.addStretch(1)
        copy, below = page_column(context.dress)
        below.addWidget(self.none)
        below.addWidget(self.copies, 1)
        below.addStretch(0)
        self._by_key: dict[str, QWidget] = {"close": close, "copy": copy, "left": self.delivery}
        if before is not None:
            names.insert(0, ("before", before[0]))
            self._by_key = {"before": before[1], **self._by_key}
        row = ChoiceRow(title, names, columns=len(names))
        self.which = row if before is not None else in_line(row)  # four names take the whole width
        self.faces = Faces()
        for face in self._by_key.values():
            self.faces.addWidget(face)
        self._first = names[0][0]
        self.turn(self._first)
        self.which.chosen.connect(self.turn)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(context.dress.look.measure.space("thin"))
        whole.addWidget(self.which)
        whole.addWidget(self.faces, 1)
        self._closed: tuple[str, int] | None = None

    def turn(self, face: str) -> None:
        """Show one of the faces."""
        self.which.set_value(face)
        self.faces.setCurrentWidget(self._by_key[face])

    def redraw(self) -> None:
        """Draw every face anew; another job begins at the first one, a document just closed leads on."""
        picture, documents = self._context.picture, self._acts.documents()
        self.none.setVisible(not documents)
        for part in (self.closing, self.copies, self.delivery):
            part.redraw()
        now = (picture.job.id if picture is not None else "", len(documents))
        if self._closed is None or self._closed[0] != now[0]:
            self.turn(self._first)
        elif self._closed[1] < now[1]:
            self.turn(self._then)
        self._closed = now
