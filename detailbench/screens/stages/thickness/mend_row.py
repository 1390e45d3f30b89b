"""What can be put right at the place chosen in the list."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.body.panels import twin_key
from detailbench.record.things import GlossReading, Reading
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.screens.stages.thickness.walk import WalkPlace


class MendRow(QWidget):
    """Strike out, shift from here, no value, mil, the other side of the car."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        self._reading: Reading | None = None
        self._gloss: GlossReading | None = None
        self.strike = button(_("Strike out"), lambda: self._do("strike"), name=_("Strike out the reading"))
        self.shift = button(
            _("Shift from here"), lambda: self._do("shift"), name=_("Move this and all after it one place back")
        )
        self.none = button(_("No value"), lambda: self._do("none"), name=_("It was no value"))
        self.mil = button(_("It was mil"), lambda: self._do("mil"))
        self.sides = button(_("Other side"), self._ask_sides, name=_("These readings belong to the twin panel"))
        self.which = ChoiceRow(_("move to the other side of the car"), (), columns=2)
        self.which.chosen.connect(self._move_sides)
        self.which.hide()
        row = QHBoxLayout()
        row.setSpacing(desk.context.dress.look.measure.space("thin"))
        for part in (self.strike, self.shift, self.none, self.mil, self.sides):
            row.addWidget(part, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(desk.context.dress.look.measure.space("thin"))
        column.addLayout(row)
        column.addWidget(self.which)

    def show_place(self, place: WalkPlace | None) -> None:
        """What may be done about the last reading of this place; about the last gloss value while that is measured."""
        self._gloss = None
        if self._desk.gloss.on:
            values = self._desk.gloss.values(place.id) if place is not None and place.id else ()
            self._gloss = values[-1] if values else None
            place = None
        self._reading = reading = place.last if place is not None else None
        zero = reading is not None and reading.value_um is not None and "zero" in reading.flags
        mil = reading is not None and "unit" in reading.flags
        self.strike.setVisible(reading is not None or self._gloss is not None)
        walked = place is not None and place.origin != "chosen" and not place.reference
        self.shift.setVisible(reading is not None and walked)
        self.none.setVisible(zero)
        self.mil.setVisible(mil)
        may = reading is not None and bool(twin_key(self._desk.panel)) and self._desk.panel in self._side()
        self.sides.setVisible(may and not zero and not mil)
        if not may:
            self.which.hide()

    def _side(self) -> tuple[str, ...]:
        """Panels of the selected one's side of the car that have readings."""
        desk = self._desk
        end = desk.panel[-2:]
        keys = [k for k in desk.context.outline.panels if k.endswith(end)] if twin_key(desk.panel) else []
        return tuple(k for k in keys if any(p.readings for p in desk.places(k)))

    def _ask_sides(self) -> None:
        panel, side = self._desk.panel, self._side()
        choices = [(panel, panel_name(panel))]
        if len(side) > 1:
            choices.append(("side", _("{n} panels of this side").format(n=format_number(len(side)))))
        self.which.set_choices(choices)
        self.which.set_value("")
        self.which.setVisible(self.which.isHidden())
        if self.which.isVisible():
            self.which.take_focus()

    def _move_sides(self, key: str) -> None:
        panels = self._side() if key == "side" else (key,)
        self.which.hide()
        self._desk.change_sides(panels)

    def _do(self, what: str) -> None:
        reading = self._reading
        if self._gloss is not None and what == "strike":
            self._desk.strike_gloss(self._gloss.id)
        if reading is None:
            return
        acts = {
            "strike": self._desk.strike,
            "shift": self._desk.shift_back,
            "none": self._desk.make_no_value,
            "mil": self._desk.as_mil,
        }
        acts[what](reading.id)
