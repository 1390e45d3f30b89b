"""Where the map was pointed at, a place can be added: on the panel's outer skin, in its shut or on its underside."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QWidget

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
        self.control = button(_("… not polished"), lambda: desk.add_place(origin="control"))
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(desk.context.dress.look.measure.space("thin"))
        for i, part in enumerate((self.here, self.control, self.shut, self.under)):
            grid.addWidget(part, i // 2, i % 2)

    def redraw(self) -> None:
        pointed = self._desk.pointed
        self.setVisible(pointed is not None and pointed.panel == self._desk.panel)
        if pointed is None:
            return
        where = pointed.at.phrase()  # its distances do not fit on the buttons
        thin = _("Often thinner by build: compared with its like only, never with the panel.")
        for part, words, more in (
            (self.here, _("Add a place here: {where}"), ""),
            (
                self.control,
                _("Add a place kept from the polishing here: {where}"),
                _("Read before and after, it shows how far the gauge itself moved."),
            ),
            (self.shut, _("Add a place in the shut here: {where}"), thin),
            (self.under, _("Add a place on the underside here: {where}"), thin),
        ):
            whole = words.format(where=where)
            part.setAccessibleName(whole)
            part.setToolTip(tip(f"{whole}\n{more}".strip()))
