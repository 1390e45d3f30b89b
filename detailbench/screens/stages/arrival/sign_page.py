"""Remarks, and the signatures on arrival."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.stages.arrival.statement import arrival_remarks, arrival_statement, first_to_sign
from detailbench.screens.stages.signing.remarks_part import RemarksPart
from detailbench.screens.stages.signing.sign_page import signer
from detailbench.screens.stages.signing.sign_part import Signed, SignPart
from detailbench.screens.stages.work_parts.pages import Faces, in_line


class ArrivalSignPage(QWidget):
    """Two faces: the remarks, which stand above what is signed, and the signatures."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        faces = (("remarks", _("Remarks")), ("sign", _("Signatures")))
        self.which = in_line(ChoiceRow(_("on arrival"), faces, columns=2))
        self.faces = Faces()
        self.remarks = RemarksPart(context, "arrival")
        signed = Signed(
            "arrival",
            lambda picture, role: arrival_statement(picture, role, context.clock.now()),
            arrival_remarks,
            first=first_to_sign,
        )
        self.sign = SignPart(context, signed, signer(context, lambda: self, "arrival"))
        self.faces.addWidget(self.remarks)
        self.faces.addWidget(self.sign)
        self.which.set_value("remarks")
        self.which.chosen.connect(self.turn)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        column.addWidget(self.which)
        column.addWidget(self.faces, 1)

    def turn(self, face: str) -> None:
        """Show the remarks or the signatures."""
        self.which.set_value(face)
        self.faces.setCurrentWidget(self.sign if face == "sign" else self.remarks)
        self.redraw()

    def redraw(self) -> None:
        self.remarks.redraw()
        self.sign.redraw()
