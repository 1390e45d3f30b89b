"""Gloss of the selected panel: at which angle it is compared and why, before and after; haze where it is defined."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_change, format_number
from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.findings.gloss import GlossAt, PanelGloss
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.look.parts import sentence, set_kind
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.thickness.gloss import haze_change


class GlossPart(QWidget):
    """Hidden where no gloss was read on the panel."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        show = desk.context.show_working
        self.read = sentence()
        self.angle = sentence()
        self.why_angle = WhyButton(self._angle_working, show, _("the angle"))
        self.change = sentence()
        self.why_change = WhyButton(self._change_working, show, _("the gloss before and after"))
        self.haze = sentence()
        self.why_haze = WhyButton(self._haze_working, show, _("the haze index"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(desk.context.dress.look.measure.space("thin"))
        column.addWidget(self.read)
        for part, why in (
            (self.angle, self.why_angle),
            (self.change, self.why_change),
            (self.haze, self.why_haze),
        ):
            row = QHBoxLayout()
            row.addWidget(part, 1)
            row.addWidget(why, 0, Qt.AlignmentFlag.AlignTop)
            column.addLayout(row)

    def _found(self) -> PanelGloss | None:
        survey, panel = self._desk.survey, self._desk.panel
        return survey.gloss.get(panel) if survey is not None and panel else None

    def _angle_working(self) -> Working | None:
        found = self._found()
        return found.angle.working if found is not None and found.angle is not None else None

    def _change_working(self) -> Working | None:
        found = self._found()
        return found.change.working if found is not None and found.change is not None else None

    def _haze_working(self) -> Working | None:
        found = self._found()
        newest = None if found is None else found.haze_after or found.haze_before
        return None if newest is None else newest.working

    def redraw(self) -> None:
        found = self._found()
        self.setVisible(found is not None)
        if found is None:
            return
        self.read.setText("\n".join((*_lines(found.before, _("as found")), *_lines(found.after, _("after the work")))))
        self.angle.setText(
            _("Not read at 60° before the work yet: that value decides the angle.")
            if found.angle is None
            else found.missing or _("Compared at {sentence}").format(sentence=found.angle.sentence)
        )
        set_kind(self.angle, "flagged" if found.missing else "")
        self.why_angle.setVisible(found.angle is not None)
        self._say_change(found)
        self._say_haze(found)

    def _say_change(self, found: PanelGloss) -> None:
        lines = []
        if found.change is not None:
            by = format_change(found.change.change_gu, "GU", 1)
            lines.append(_("{by}: {sentence}").format(by=by, sentence=found.change.sentence))
            if found.change.places > 1:
                lines.append(
                    _("Single places from {low} to {high} GU.").format(
                        low=format_number(found.change.least_gu, 1), high=format_number(found.change.greatest_gu, 1)
                    )
                )
            lines.append(_("No interval: how far the meter itself moved in between is not known here."))
        else:
            lines.append(_("No before and after: {why}.").format(why=found.why_none))
        self.change.setText(" ".join(lines))
        self.change.setVisible(bool(lines))
        self.why_change.setVisible(found.change is not None)

    def _say_haze(self, found: PanelGloss) -> None:
        sides = [h for h in (found.haze_before, found.haze_after) if h is not None]
        words = ""
        if found.haze_before is not None and found.haze_after is not None:
            words = haze_change(found.haze_before, found.haze_after)[1]
        elif sides:
            words = sides[0].sentence
        self.haze.setText(words)
        self.haze.setVisible(bool(words))
        self.why_haze.setVisible(bool(words))


def _lines(side: Mapping[int, GlossAt], when: str) -> list[str]:
    """One line an angle: ``60°: 84.2 GU, mean of 8 places, as found``."""
    out = []
    for angle, at in side.items():
        if at.mean_gu is None:
            continue
        text = (
            _("{angle}°: {value} GU, 1 place, {when}")
            if len(at.at) == 1
            else _("{angle}°: {value} GU, mean of {n} places, {when}")
        )
        out.append(
            text.format(
                angle=format_number(angle), value=format_number(at.mean_gu, 1), n=format_number(len(at.at)), when=when
            )
        )
    return out
