"""How the panel is measured, how small a change that would show, and how many places a change takes to be seen."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import read_typed
from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.findings.could_be_seen import places_to_see, smallest_seen
from detailbench.findings.measuring_mode import mode_words
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.thickness.places_needed import PlacesNeeded
from detailbench.thickness.smallest_change import SmallestChange


def change_um(text: str) -> float | None:
    """A change as typed, µm; None where nothing stands. Raises BadInput with the sentence for the field."""
    if not text.strip():
        return None
    typed = read_typed(text.strip(), expects="plain", allow_negative=True)
    if typed.value is None or not typed.accepted:
        raise BadInput(typed.sentence or typed.question or _("That is not a number."), field="change_um", given=text)
    if not typed.value > 0:
        raise BadInput(_("A change to be seen is above nought."), field="change_um", given=text)
    return typed.value


class SeenPart(QWidget):
    """Three sentences and one field; the field asks only, nothing of it is kept."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        show = desk.context.show_working
        gap = desk.context.dress.look.measure.space("thin")
        self.mode = sentence()
        self.smallest = sentence()
        self.why_smallest = WhyButton(self._smallest_working, show, _("the smallest change"))
        self.wanted = TextField(_("change to be seen, µm"), check=lambda text: change_um(text) and None)
        self.places = sentence()
        self.why_places = WhyButton(self._places_working, show, _("how many places"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(gap)
        column.addWidget(self.mode)
        column.addLayout(_row(self.smallest, self.why_smallest))
        column.addWidget(self.wanted)
        column.addLayout(_row(self.places, self.why_places))
        self.wanted.line.textChanged.connect(lambda _text: self._say_places())

    def _smallest(self) -> SmallestChange | None:
        survey, panel = self._desk.survey, self._desk.panel
        return smallest_seen(survey.picture, panel, self._desk.rounds) if survey is not None and panel else None

    def _smallest_working(self) -> Working | None:
        found = self._smallest()
        return None if found is None else found.working

    def _needed(self) -> PlacesNeeded | None:
        """Raises BadInput for a change nobody could see."""
        survey, panel = self._desk.survey, self._desk.panel
        wanted = change_um(self.wanted.text())
        if survey is None or not panel or wanted is None:
            return None
        return places_to_see(survey.picture, panel, wanted, self._desk.rounds)

    def _places_working(self) -> Working | None:
        try:
            found = self._needed()
        except BadInput:
            return None
        return None if found is None else found.working

    def redraw(self) -> None:
        survey, panel = self._desk.survey, self._desk.panel
        self.setVisible(survey is not None and bool(panel))
        if survey is None or not panel:
            return
        words = mode_words(survey.latest(panel)) or _("Before measuring, with the places proposed:")
        self.mode.setText(words)
        found = self._smallest()
        self.mode.setVisible(found is not None or survey.latest(panel).taken > 0)
        self.smallest.setText("" if found is None else found.sentence)
        self.smallest.setVisible(found is not None)
        self.why_smallest.setVisible(found is not None)
        self._say_places()

    def _say_places(self) -> None:
        found, text = None, ""
        try:
            found = self._needed()
            if found is None and change_um(self.wanted.text()) is not None:
                text = _("The gauge's repeatability is not known yet: check the gauge first.")
        except BadInput as error:
            text = str(error)
        if found is not None:
            text = found.sentence
        self.places.setText(text)
        self.places.setVisible(bool(text))
        self.why_places.setVisible(found is not None)


def _row(part: QWidget, why: WhyButton) -> QHBoxLayout:
    row = QHBoxLayout()
    row.addWidget(part, 1)
    row.addWidget(why, 0, Qt.AlignmentFlag.AlignTop)
    return row
