"""For the shop's eyes only: how much clear coat there may be if the layers below are as a factory lays them.

It stays folded until somebody of the shop asks, for this panel alone: an owner may be looking at the same glass. It
decides nothing. Where it may not be drawn there is a sentence and no figure at all.
"""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.findings.room_left import ShopSees
from detailbench.findings.settings import setting
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.look.parts import button, sentence, set_kind
from detailbench.screens.stages.thickness.clear_bars import ClearBars
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.thickness.clear_picture import ClearPicture


class ClearPart(QWidget):
    """Hidden where nothing was measured, and where a layer gauge measured the clear coat itself."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        self._open_for = ""
        self.open_it = button(_("For the shop only: clear coat as a range…"), self._turn)
        self.bars = ClearBars(desk.context.dress)
        self.says = sentence()
        self.why = WhyButton(self._working, desk.context.show_working, _("the picture of the clear coat"))
        row = QHBoxLayout()
        row.addWidget(self.says, 1)
        row.addWidget(self.why, 0, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(desk.context.dress.look.measure.space("thin"))
        column.addWidget(self.open_it)
        column.addWidget(self.bars)
        column.addLayout(row)

    def _turn(self) -> None:
        self._open_for = "" if self._open_for == self._desk.panel else self._desk.panel
        self.redraw()

    def _sees(self) -> ShopSees | None:
        survey, panel = self._desk.survey, self._desk.panel
        if survey is None or not panel or self._open_for != panel:
            return None
        return survey.clear_pictures.get(panel)

    def _working(self) -> Working | None:
        sees = self._sees()
        return sees.found.working if sees is not None and isinstance(sees.found, ClearPicture) else None

    def redraw(self) -> None:
        survey, panel = self._desk.survey, self._desk.panel
        if self._open_for != panel:  # another panel, another asking
            self._open_for = ""
        measured = survey is not None and bool(panel) and survey.latest(panel).figures is not None
        layers = measured and survey is not None and survey.permissions[panel].room is not None
        self.setVisible(measured and not layers)
        sees = self._sees()
        found = sees.found if sees is not None else None
        drawn = found if isinstance(found, ClearPicture) and found.high_um > 0 else None
        words = _("For the shop only: clear coat as a range…") if found is None else _("Put the range away")
        self.open_it.setText(words)
        self.open_it.setAccessibleName(words)
        self.says.setVisible(found is not None)
        self.bars.setVisible(drawn is not None)
        self.why.setVisible(isinstance(found, ClearPicture))
        if survey is None or sees is None or found is None:
            self.says.setText("")
            self.bars.show_picture(None, None)
            return
        self.bars.show_picture(drawn, setting(survey.picture.shop, "reserve_um"))
        lines = [found.sentence]
        if isinstance(found, ClearPicture):
            if found.risk is not None:
                lines.append(
                    _("If so, a place picked at random has less than the reserve {n} times in a hundred.").format(
                        n=format_number(100 * found.risk, 1)
                    )
                )
            if not sees.confirmed:
                lines.append(_("The readings are not confirmed by a gauge check."))
            lines.append(_("It decides nothing, and no document shows it."))
        self.says.setText("\n".join(lines))
        set_kind(self.says, "" if sees.confirmed else "flagged")
