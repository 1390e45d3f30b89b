"""The supplement: what showed after the arrival record, closed, sent off, and answered by the owner."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.supplement import items
from detailbench.screens.context import Context
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.closing.document_faces import DocumentFaces
from detailbench.screens.stages.wash.items_part import ItemsPart


class SupplementPage(QWidget):
    """Four faces in the order of the day: what was found, close, copy out, how it left."""

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self._context, self._acts = context, acts
        self.items, self.listed = ItemsPart(context), sentence()
        self.faces = DocumentFaces(
            context, acts, _("supplement"), above=(self.listed,), before=(_("Found"), self.items)
        )
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.faces)
        acts.beside.changed.connect(self.redraw)

    def redraw(self) -> None:
        """Draw every face anew; once closed, how it left is asked for next."""
        picture = self._context.picture
        waiting = sum(s.document is None for s in items(picture)) if picture is not None else 0
        self.listed.setText(
            _("Nothing was found that no closed supplement lists.")
            if not waiting
            else _("1 item is listed in no closed supplement yet.")
            if waiting == 1
            else _("{n} items are listed in no closed supplement yet.").format(n=waiting)
        )
        self.items.redraw()
        self.faces.redraw()
