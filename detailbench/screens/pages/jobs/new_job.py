"""A new job in one form: nothing in it is required, everything can follow in Arrival."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button, caption, heading, sentence, set_kind
from detailbench.screens.stages.work_parts.pages import in_line

if TYPE_CHECKING:
    from detailbench.record.things import Car

FIELDS = ("owner", "plate", "described", "colour", "vin")


class NewJobForm(QWidget):
    """``begun`` gives the id of the job made. Enter goes from field to field and, in the last, begins the job."""

    begun = Signal(str)

    def __init__(self, context: Context) -> None:
        super().__init__()
        from detailbench.body.outlines import style_name, styles

        self._context = context
        self._continued: Car | None = None
        m = context.dress.look.measure
        titles = {
            "owner": _("owner's name"),
            "plate": _("plate"),
            "described": _("car, in words"),
            "colour": _("colour"),
            "vin": _("VIN"),
        }
        self.lines = {name: QLineEdit() for name in FIELDS}
        grid = QGridLayout()
        grid.setHorizontalSpacing(m.space("small"))
        grid.setVerticalSpacing(m.space("hair"))
        for i, name in enumerate(FIELDS):
            row, at = divmod(i, 2)
            wide = 2 if name == "vin" else 1
            self.lines[name].setAccessibleName(_("new job: {field}").format(field=titles[name]))
            grid.addWidget(caption(titles[name]), 2 * row, at, 1, wide)
            grid.addWidget(self.lines[name], 2 * row + 1, at, 1, wide)
        self.lines["vin"].textEdited.connect(lambda _text: self._vin_typed())
        self.found = sentence()
        self.go_on = button(_("Continue this car"), self._continue)
        self.body_style = in_line(ChoiceRow(_("body style"), [(s, style_name(s)) for s in styles()], columns=2))
        self.body_style.set_value("estate")
        self.kind = in_line(
            ChoiceRow(
                _("kind of job"), [("correction", _("correction")), ("inspection", _("inspection only"))], columns=2
            )
        )
        self.kind.set_value("correction")
        self.begin = button(_("Begin this job"), self.make, role="main")
        self.clear_it = button(_("Empty the form"), self.clear, role="quiet")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addWidget(heading(_("New job")))
        column.addLayout(grid)
        column.addWidget(self.found)
        column.addWidget(self.go_on, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.body_style)
        column.addWidget(self.kind)
        row_ = QHBoxLayout()
        row_.addWidget(self.begin)
        row_.addWidget(self.clear_it)
        row_.addStretch(1)
        column.addLayout(row_)
        column.addWidget(sentence(_("Nothing here is required; what is missing can follow in Arrival.")))
        column.addStretch(1)
        self._vin_typed()

    def take_focus(self) -> None:
        self.lines["owner"].setFocus(Qt.FocusReason.OtherFocusReason)

    def clear(self) -> None:
        """Empty it for the next car."""
        self._continued = None
        for line in self.lines.values():
            line.clear()
            line.setEnabled(True)
        self.body_style.setEnabled(True)
        self.body_style.set_value("estate")
        self.kind.set_value("correction")
        self._vin_typed()

    def for_car(self, car: Car) -> None:
        """A new job for a car that is known: what is known of it is shown, the owner is as last time."""
        from detailbench.screens.pages.jobs.known import known_words, owner_name

        shop = self._context.shop
        assert shop is not None
        self._continued = car
        known = {
            "described": car.described,
            "colour": car.colour,
            "vin": car.vin,
            "plate": shop.said(car.id, "plate"),
        }
        for name, text in known.items():
            self.lines[name].setText(text)
        for name in ("described", "colour", "vin"):
            self.lines[name].setEnabled(False)
        last = max((j for j in shop.jobs if j.car_id == car.id), key=lambda j: j.seq)
        if not self.lines["owner"].text().strip():
            self.lines["owner"].setText(owner_name(shop, last))
        self.body_style.set_value(car.style)
        self.body_style.setEnabled(False)
        self._say(_("{known} This job continues that car.").format(known=known_words(shop, car)))
        self.go_on.hide()
        self.begin.setFocus(Qt.FocusReason.OtherFocusReason)

    def make(self) -> None:
        """Begin the job with what stands in the form; when it is refused, what was typed stays."""
        from detailbench.findings.parties import last_owner
        from detailbench.moves.arrival import NewJob

        typed = {name: line.text().strip() for name, line in self.lines.items()}
        owner = {"name": typed["owner"]} if typed["owner"] else {}
        values: dict[str, Any] = {"kind": self.kind.value, "plate": typed["plate"], "owner": owner}
        if self._continued is not None:
            shop = self._context.shop
            assert shop is not None
            car_id = self._continued.id
            last = last_owner(shop, car_id)
            values["owner_as_last"] = last is not None and last.said.get("name", "") == typed["owner"]
            same = typed["plate"] == shop.said(car_id, "plate")
            move = NewJob(**values | {"car_id": car_id, "plate": "" if same else typed["plate"]})
        else:
            car = {name: typed[name] for name in ("described", "colour", "vin") if typed[name]}
            move = NewJob(style=self.body_style.value, car=car, **values)
        done = self._context.do(move, initiator=self)
        if done is not None:
            self.clear()
            self.begun.emit(done.id)

    def _continue(self) -> None:
        from detailbench.screens.pages.jobs.known import cars_with_vin

        shop = self._context.shop
        cars = cars_with_vin(shop, self.lines["vin"].text()) if shop is not None else ()
        if cars:
            self.for_car(cars[0])

    def _vin_typed(self) -> None:
        """What can be said of the number as it stands; a number known from before offers its car."""
        text = self.lines["vin"].text().strip()
        shop = self._context.shop
        self.go_on.hide()
        if not text or shop is None:
            self._say("")
            return
        from detailbench.body.vin import check_vin
        from detailbench.screens.pages.jobs.known import cars_with_vin, known_words

        cars = cars_with_vin(shop, text)
        if cars:
            self._say(_("{known} Continue this car?").format(known=known_words(shop, cars[0])), "flagged")
            self.go_on.show()
            return
        warning = check_vin(text).warning
        self._say(warning or _("The form and the check digit agree."), "flagged" if warning else "")

    def _say(self, text: str, kind: str = "") -> None:
        self.found.setText(text)
        self.found.setAccessibleName(text)
        self.found.setVisible(bool(text))
        set_kind(self.found, kind)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        lines = [line for line in self.lines.values() if line.isEnabled()]
        here = next((i for i, line in enumerate(lines) if line.hasFocus()), None)
        if here is None or event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)
        elif here + 1 < len(lines):
            lines[here + 1].setFocus(Qt.FocusReason.TabFocusReason)
        else:
            self.make()
