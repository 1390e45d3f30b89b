"""The odd place of a panel: read it again, or decide about it with a reason."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.texts import _
from detailbench.findings.panels import PanelSeen, PlaceSeen
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, sentence, set_kind
from detailbench.screens.stages.thickness.desk import ThicknessDesk


def two_words(text: str) -> None:
    if text and len(text.split()) < 2:
        raise BadInput(_("Give the reason in at least two words; it is printed."), field="reason", given=text)


def odd_of(seen: PanelSeen | None) -> PlaceSeen | None:
    """The place Grubbs' test finds odd; its index counts places with a value that are not chosen or set aside."""
    if seen is None or seen.figures is None or seen.figures.odd is None or not seen.figures.odd.is_odd:
        return None
    own = [p for p in seen.places if p.place.origin != "chosen" and p.figure is not None and not p.set_aside]
    return own[seen.figures.odd.index]


class OddPlacePart(QWidget):
    """Hidden while no place stands out and none was decided about."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        self._seen: PanelSeen | None = None
        self._place: PlaceSeen | None = None
        gap = desk.context.dress.look.measure.space("thin")
        self.says = sentence()
        set_kind(self.says, "flagged")
        self.reason = TextField(_("reason (printed)"), check=two_words)
        self.again = button(_("Read it again"), self._again)
        self.aside = button(_("Set aside"), lambda: self._decide("set_aside"))
        self.keep = button(_("Keep it"), lambda: self._decide("kept"))
        self.decided = sentence()
        row = QHBoxLayout()
        row.setSpacing(gap)
        for part in (self.again, self.aside, self.keep):
            row.addWidget(part, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(gap)
        column.addWidget(self.says)
        column.addWidget(self.reason)
        column.addLayout(row)
        column.addWidget(self.decided)

    def show_panel(self, seen: PanelSeen | None) -> None:
        before = self._place
        self._seen, place = seen, odd_of(seen)
        picture = self._desk.context.picture
        decisions = (
            []
            if picture is None or seen is None
            else [
                d
                for d in picture.place_decisions
                if d.moment == seen.moment and any(p.place.id == d.place_id for p in seen.places)
            ]
        )
        kept = {d.place_id for d in decisions if d.decision == "kept"}
        if place is not None and place.place.id in kept:
            place = None
        self._place = place
        if before is None or place is None or before.place.id != place.place.id:
            self.reason.set_text("")
        for part in (self.says, self.reason, self.again, self.aside, self.keep):
            part.setVisible(place is not None)
        if place is not None and place.value_um is not None:
            self.says.setText(
                _("Place {n} stands out: {value}. Read it again, or decide with a reason.").format(
                    n=format_number(place.place.number), value=format_thickness(place.value_um, digits=1)
                )
            )
        numbers = {p.place.id: p.place.number for p in seen.places} if seen is not None else {}
        lines = []
        for d in decisions:
            words = _("place {n} set aside: {why}") if d.decision == "set_aside" else _("place {n} kept: {why}")
            lines.append(words.format(n=format_number(numbers[d.place_id]), why=d.reason))
        self.decided.setText("\n".join(lines))
        self.decided.setVisible(bool(lines))
        self.setVisible(place is not None or bool(lines))

    def _again(self) -> None:
        if self._place is not None:
            self._desk.choose_place(self._place.place.number)
            self._desk.tab_wanted.emit("walk")

    def _decide(self, decision: str) -> None:
        place, seen = self._place, self._seen
        if place is None or seen is None:
            return
        reason = self.reason.text().strip()
        if len(reason.split()) < 2:
            self.reason.say(_("Give the reason in at least two words; it is printed."))
            self.reason.line.setFocus()
            return
        if self._desk.decide(place.place.id, seen.moment, decision, reason):
            self.reason.line.clear()
