"""The supplement: what showed after the arrival record, closed, sent off, and answered by the owner."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.supplement import items
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.closing.close_part import ClosePart
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.closing.copies_part import CopiesPart
from detailbench.screens.stages.closing.deliver_part import DeliverPart
from detailbench.screens.stages.wash.items_part import ItemsPart
from detailbench.screens.stages.work_parts.pages import Faces, page_column


class SupplementPage(QWidget):
    """Four faces in the order of the day: what was found, close, copy out, how it left."""

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self._context, self._acts = context, acts
        titles = (
            ("items", _("Found")),
            ("close", _("Close")),
            ("copy", _("Copy out")),
            ("left", _("How it left")),
        )
        self.which = ChoiceRow(_("supplement"), titles, columns=4)
        self.items = ItemsPart(context)
        self.listed = sentence()
        self.none = sentence(_("Nothing is closed yet: close it first."))
        self.closing, self.copies = ClosePart(context, acts), CopiesPart(context, acts)
        self.delivery = DeliverPart(context, acts)
        self.faces = Faces()
        second, column = page_column(context.dress)
        column.addWidget(self.listed)
        column.addWidget(self.closing)
        column.addStretch(1)
        third, below = page_column(context.dress)
        below.addWidget(self.none)
        below.addWidget(self.copies, 1)
        below.addStretch(0)
        self._by_key = {"items": self.items, "close": second, "copy": third, "left": self.delivery}
        for face in self._by_key.values():
            self.faces.addWidget(face)
        self.which.set_value("items")
        self.which.chosen.connect(self.turn)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(context.dress.look.measure.space("thin"))
        whole.addWidget(self.which)
        whole.addWidget(self.faces, 1)
        self._closed: tuple[str, int] | None = None
        acts.beside.changed.connect(self.redraw)

    def turn(self, face: str) -> None:
        """Show one of the faces."""
        self.which.set_value(face)
        self.faces.setCurrentWidget(self._by_key[face])

    def redraw(self) -> None:
        """Draw every face anew; once closed, how it left is asked for next."""
        picture, documents = self._context.picture, self._acts.documents()
        waiting = sum(s.document is None for s in items(picture)) if picture is not None else 0
        self.listed.setText(
            _("Nothing was found that no closed supplement lists.")
            if not waiting
            else _("1 item is listed in no closed supplement yet.")
            if waiting == 1
            else _("{n} items are listed in no closed supplement yet.").format(n=waiting)
        )
        self.none.setVisible(not documents)
        for part in (self.items, self.closing, self.copies, self.delivery):
            part.redraw()
        now = (picture.job.id if picture is not None else "", len(documents))
        if self._closed is not None and self._closed[0] == now[0] and self._closed[1] < now[1]:
            self.turn("left")
        elif self._closed is None or self._closed[0] != now[0]:
            self.turn("items")
        self._closed = now
