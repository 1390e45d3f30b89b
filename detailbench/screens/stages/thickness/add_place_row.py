"""Where the map was pointed at, a place can be added: on the panel's outer skin, in its shut or on its underside."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.look.parts import button, tip
from detailbench.screens.stages.thickness.desk import ThicknessDesk


class AddPlaceRow(QWidget):
    """Hidden until somebody pointed at the chosen panel. A reference place is where the outline was pointed at: the
    part of the shut or the underside that lies there."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        self.here = button(_("Add a place here"), desk.add_place)
        self.shut = button(_("… in the shut"), lambda: desk.add_place("shut"))
        self.under = button(_("… underneath"), lambda: desk.add_place("underside"))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(desk.context.dress.look.measure.space("thin"))
        row.addWidget(self.here, 2)
        row.addWidget(self.shut, 1)
        row.addWidget(self.under, 1)

    def redraw(self) -> None:
        pointed = self._desk.pointed
        self.setVisible(pointed is not None and pointed.panel == self._desk.panel)
        if pointed is None:
            return
        where = pointed.at.phrase()  # its distances do not fit on the buttons
        thin = _("Thinner by build: compared with its like only, never with the panel.")
        for part, words, more in (
            (self.here, _("Add a place here: {where}"), ""),
            (self.shut, _("Add a place in the shut here: {where}"), thin),
            (self.under, _("Add a place on the underside here: {where}"), thin),
        ):
            whole = words.format(where=where)
            part.setAccessibleName(whole)
            part.setToolTip(tip(f"{whole}\n{more}".strip()))
