"""Protection with its climate: product, panels, air, humidity, surface, cure."""

from __future__ import annotations

from datetime import datetime, timedelta

from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_quantity
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.due import due
from detailbench.findings.kit_names import with_initials
from detailbench.findings.limits import barred, barred_words, panel_list
from detailbench.moves.handover import RecordProtection
from detailbench.record.picture import JobPicture
from detailbench.record.things import Protection
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, sentence, set_kind, tip
from detailbench.screens.stages.handover.panels_meant import panels_meant, polished
from detailbench.screens.stages.work_parts.figure_line import FigureLine
from detailbench.screens.stages.work_parts.pages import in_line
from detailbench.screens.stages.work_parts.step_number import StepNumber
from detailbench.screens.stages.work_parts.when import when_words
from detailbench.work.climate import LEAST_MARGIN_C, DewPoint, dew_point

MOST_SHOWN = 3
NUMBERS = ("air_c", "humidity_percent", "surface_c", "cure_h")


class ProtectPage(QWidget):
    """What was not measured stays empty and is said as not measured."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.mind = sentence()
        self.panels = in_line(
            ChoiceRow(_("on"), (("polished", _("polished")), ("panel", _("this panel")), ("car", _("whole car"))))
        )
        self.kind = in_line(
            ChoiceRow(_("kind"), (("coating", _("coating")), ("sealant", _("sealant")), ("wax", _("wax"))))
        )
        self.product, self.batch = TextField(_("product")), TextField(_("batch"))
        self.numbers = {
            "air_c": StepNumber(_("air"), "°C", step=1, may_be_empty=True, negative=True),
            "humidity_percent": StepNumber(_("humidity"), "%", step=1, least=1, may_be_empty=True),
            "surface_c": StepNumber(_("surface"), "°C", step=1, may_be_empty=True, negative=True),
            "cure_h": StepNumber(_("cure, as the sheet says"), "h", step=1, may_be_empty=True),
        }
        self.dew = FigureLine(_("dew point"), context)
        self.enter = button(_("Enter the protection"), self._enter, role="main")
        self.panels.chosen.connect(lambda _key: self.redraw())
        self.kind.set_value("sealant")
        self.panels.set_value("polished")
        words, grid = QHBoxLayout(), QGridLayout()
        words.addWidget(self.product, 2)
        words.addWidget(self.batch, 1)
        grid.setSpacing(m.space("thin"))
        for i, name in enumerate(NUMBERS):
            grid.addWidget(self.numbers[name], i // 2, i % 2)
            self.numbers[name].committed.connect(lambda _value: self._show_dew())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.mind)
        column.addWidget(self.panels)
        column.addWidget(self.kind)
        column.addLayout(words)
        column.addLayout(grid)
        column.addWidget(self.dew)
        column.addStretch(1)
        column.addWidget(self.enter)

    def redraw(self) -> None:
        picture = self._context.picture
        self.enter.setEnabled(picture is not None)
        if picture is None:
            return
        if not polished(picture) and self.panels.value == "polished":
            self.panels.set_value("car")
        left_out = self._left_out(picture)
        self.mind.setText("\n".join(filter(None, (left_out, self._mind(picture, in_short=bool(left_out))))))
        open_ = due(picture)["handover"].what
        set_kind(self.mind, "flagged" if "after_readings" in open_ and polished(picture) else "")
        self._show_dew()

    def _left_out(self, picture: JobPicture) -> str:
        """Which of the panels meant the owner wants untouched; empty where none is. His words are the tip of it: the
        card has no room for them."""
        panels = panels_meant(picture, self.panels.value, self._context.selected_panel)
        against = barred(picture, panels)
        self.mind.setToolTip(tip(barred_words(picture, panels)))
        text = _("Not on {panels}: the owner wants it untouched.")
        return text.format(panels=panel_list(against, most=1)) if against else ""

    def _mind(self, picture: JobPicture, *, in_short: bool) -> str:
        first = ""
        if "after_readings" in due(picture)["handover"].what and polished(picture):
            first = _("Readings after the work come first: once protected, nothing can be compared any more.")
            first = _("Readings after the work come first.") if in_short else first
        if picture.protections:
            now = self._context.clock.now()
            lines = [protection_words(picture, p, now) for p in reversed(picture.protections)]
            most = 1 if in_short else 2 if first else MOST_SHOWN
            more = len(lines) - most
            lines = lines[:most] + ([_("and {n} more").format(n=more)] if more > 0 else [])
            return "\n".join([first, *lines] if first else lines)
        return first or _("The product's own data sheet comes first. What is not measured stays empty.")

    def climate(self) -> DewPoint | None:
        """The dew point of what stands in the fields; None where air or humidity is missing or out of range."""
        air, humidity = self.numbers["air_c"].value, self.numbers["humidity_percent"].value
        if air is None or humidity is None:
            return None
        try:
            return dew_point(air_c=air, humidity_percent=humidity, surface_c=self.numbers["surface_c"].value)
        except BadInput:
            return None

    def _show_dew(self) -> None:
        found = self.climate()
        if found is None:
            self.dew.show_value(_("needs air (0 to 60 °C) and humidity"))
            return
        told = format_quantity(found.dew_point_c, "°C", 1)
        if found.margin_c is not None:
            margin = format_quantity(found.margin_c, "°C", 1)
            told = _("{dew}, surface {margin} above it").format(dew=told, margin=margin)
            if found.margin_c < 0:
                told = _("{dew}: the surface is below it and wet").format(
                    dew=format_quantity(found.dew_point_c, "°C", 1)
                )
            elif found.warns:
                least = format_quantity(LEAST_MARGIN_C, "°C", 0)
                told = _("{told}: less than {least}, moisture may settle").format(told=told, least=least)
        self.dew.show_value(told, found.working)

    def _enter(self) -> None:
        picture = self._context.picture
        if picture is None:
            return
        values = {name: self.numbers[name].value for name in NUMBERS}
        panels = panels_meant(picture, self.panels.value, self._context.selected_panel)
        if self.panels.value != "panel":
            panels = tuple(p for p in panels if p not in barred(picture, panels))
        if not self.product.text().strip():
            self.product.say(_("Name what was put on."))
            return
        self.product.say("")
        done = self._context.do(
            RecordProtection(
                picture.job.id, panels, self.product.text(), self.kind.value, self.batch.text().strip(), **values
            ),
            self,
        )
        if done is not None:
            self.product.line.clear()
            self.batch.line.clear()
            where = panel_name(panels[0]) if len(panels) == 1 else _("{n} panels").format(n=len(panels))
            self._context.notice(_("Protection entered on {where}.").format(where=where), "saved")


def protection_words(picture: JobPicture, put_on: Protection, now: datetime) -> str:
    """ "invented sealant, sealant, bonnet, 2031-05-08 15:10; cures until 2031-05-09 03:10" """
    where = panel_name(put_on.panels[0]) if len(put_on.panels) == 1 else _("{n} panels").format(n=len(put_on.panels))
    kinds = {"coating": _("coating"), "sealant": _("sealant"), "wax": _("wax")}
    at = put_on.stated_at or put_on.entered_at
    words = f"{put_on.product}, {kinds[put_on.kind]}, {where}, {when_words(at)}"
    if put_on.cure_h is not None:
        until = at + timedelta(hours=put_on.cure_h)
        cure = _("{put_on}; cures until {until}") if now < until else _("{put_on}; cured since {until}")
        words = cure.format(put_on=words, until=when_words(until))
    return with_initials(picture.shop, words, put_on)
