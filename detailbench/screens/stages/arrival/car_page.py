"""The car: what it is, its colour and its number."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.outlines import style_name, styles
from detailbench.body.vin import check_vin, vin_working
from detailbench.moves.arrival import DescribeCar
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.look.parts import sentence, set_kind
from detailbench.screens.pages.jobs.known import cars_with_vin, known_words
from detailbench.screens.stages.arrival.like_paint_part import LikePaintPart
from detailbench.screens.stages.work_parts.kept_fields import KeptFields, some_number, whole_number
from detailbench.screens.stages.work_parts.pages import in_line


class CarPage(QWidget):
    """Description, colour, year, length, VIN with its finding as it is typed."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        fields = self._fields = KeptFields(context, self)
        m = context.dress.look.measure
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(fields.text(_("car, in words"), lambda p: p.car.described, _car("described")))
        column.addLayout(
            _row(
                fields.text(_("colour"), lambda p: p.car.colour, _car("colour")),
                fields.text(_("paint code"), lambda p: p.car.paint_code, _car("paint_code")),
                fields.text(
                    _("year"), lambda p: str(p.car.year or ""), _number("year", whole_number), check=whole_number
                ),
            )
        )
        shades = [("dark", _("dark")), ("mid", _("mid")), ("light", _("light"))]
        column.addWidget(
            in_line(fields.choice(_("lightness of the colour"), shades, lambda p: p.car.lightness, _car("lightness")))
        )
        drawn = [(key, style_name(key)) for key in styles()]
        column.addWidget(
            in_line(fields.choice(_("body style"), drawn, lambda p: p.car.style, _car("style"), columns=2))
        )
        self.vin = fields.text(_("VIN"), lambda p: p.car.vin, _car("vin"))
        self.vin.line.textEdited.connect(self._vin_typed)
        self.finding = sentence()
        self.why = WhyButton(
            lambda: vin_working(self.vin.text()) if self.vin.text().strip() else None, context.show_working, _("VIN")
        )
        said = QHBoxLayout()
        said.addWidget(self.finding, 1)
        said.addWidget(self.why)
        column.addWidget(self.vin)
        column.addLayout(said)
        self.absent = fields.text(_("no VIN, because"), lambda p: p.car.vin_absent, _car("vin_absent"))
        length = fields.text(_("length, mm, if known"), _length, _number("length_mm", some_number), check=some_number)
        column.addLayout(_row(length, self.absent))
        self.like = LikePaintPart(context)
        column.addWidget(self.like)
        column.addStretch(1)

    def redraw(self) -> None:
        self._fields.redraw()
        self._vin_typed()
        self.like.redraw()

    def _vin_typed(self) -> None:
        """What can be said about the number as it stands in the field."""
        text = self.vin.text().strip()
        warning = check_vin(text).warning or ""
        known = self._known_from_before(text)
        parts = (warning or _("The form and the check digit agree."), known) if text else ()
        self.finding.setText(" ".join(part for part in parts if part))
        self.finding.setAccessibleName(self.finding.text())
        set_kind(self.finding, "flagged" if warning or known else "")
        for part in (self.finding, self.why):
            part.setVisible(bool(text))
        self.absent.setVisible(not text or bool(self.absent.text()))

    def _known_from_before(self, vin: str) -> str:
        """That another car of this number was here; an empty text where none was."""
        picture = self._context.picture
        if picture is None:
            return ""
        others = [car for car in cars_with_vin(picture.shop, vin) if car.id != picture.car.id]
        if not others:
            return ""
        return _("{known} To continue that car, begin the job under Jobs.").format(
            known=known_words(picture.shop, others[0])
        )


def _row(*parts: QWidget) -> QHBoxLayout:
    row = QHBoxLayout()
    for part in parts:
        row.addWidget(part, 1)
    return row


def _car(name: str) -> Callable[[str, str], Any]:
    return lambda job, text: DescribeCar(job, {name: text})


def _number(name: str, read: Callable[[str], float | None]) -> Callable[[str, str], Any]:
    return lambda job, text: DescribeCar(job, {name: read(text)})


def _length(picture: JobPicture) -> str:
    return "" if picture.car.length_mm is None else format_number(picture.car.length_mm)
