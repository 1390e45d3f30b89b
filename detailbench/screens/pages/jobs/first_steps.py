"""The first start of an empty workshop: four steps, each of which can be left out. Nothing waits for an answer."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from detailbench.basics.errors import DetailbenchError
from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, heading, label, rule, sentence, set_kind
from detailbench.screens.stages.work_parts.pages import in_line

if TYPE_CHECKING:
    from detailbench.record.picture import ShopPicture


# what is chosen → the principle and the metals it is kept with
READS: Mapping[str, tuple[str, tuple[str, ...]]] = {
    "steel": ("magnetic_induction", ("steel",)),
    "aluminium": ("eddy_current", ("aluminium",)),
    "both": ("magnetic_induction", ("steel", "aluminium")),
    "any": ("ultrasonic", ("steel", "aluminium")),
}


def _metals() -> tuple[tuple[str, str], ...]:
    return (
        ("steel", _("steel")),
        ("aluminium", _("aluminium")),
        ("both", _("both metals")),
        ("any", _("all, by ultrasound")),
    )


class FirstSteps(QWidget):
    """``done`` when the person goes on to the jobs."""

    done = Signal()

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.name = TextField(_("your name"))
        self.initials = TextField(_("your initials"))
        self.name.line.textEdited.connect(self._suggest_initials)
        for each in (self.name, self.initials):
            each.line.returnPressed.connect(self._add_person)
        self.me = button(_("This is me"), self._add_person)
        self.workshop = TextField(_("name of the workshop, as printed"))
        self.workshop.committed.connect(lambda _text: self._name_workshop())
        self.named = button(_("Keep the name"), self._name_workshop)
        self.kit = button(_("Put the starter kit on the shelf"), self._stock)
        self.gauge = TextField(_("the gauge's name"))
        self.fixed = TextField(_("accuracy, fixed ±, µm"), check=_number)
        self.share = TextField(_("accuracy, ± % of the reading"), check=_number)
        self.reads = in_line(ChoiceRow(_("it reads on"), _metals(), columns=4))
        self.layers = in_line(ChoiceRow(_("shows the clear coat too"), (("no", _("no")), ("yes", _("yes"))), columns=2))
        self.unsaid = sentence()
        set_kind(self.unsaid, "stop")
        self.unsaid.hide()
        self.foil = TextField(_("a check foil's value, µm"), check=_number)
        self.tolerance = TextField(_("its tolerance ±, µm"), check=_number)
        self.tolerance.line.returnPressed.connect(self._add_gauge)
        self.measure = button(_("Keep gauge, zero plate and foil"), self._add_gauge)
        self.said = {key: sentence() for key in ("person", "workshop", "kit", "gauge")}
        grid = QGridLayout()
        grid.setHorizontalSpacing(m.space("broad"))
        grid.setVerticalSpacing(m.space("gap"))
        steps = (
            self._step("person", _("Who are you?"), _("Chosen at each entry, never proven; there is no password."),
                       self._row((self.name, 3), (self.initials, 1)), self.me),
            self._step("gauge", _("What do you measure with?"),
                       _("Accuracy and tolerance stand in the papers of gauge and foil."),
                       self._row((self.gauge, 1)), self.reads, self.layers, self.unsaid,
                       self._row((self.fixed, 1), (self.share, 1)),
                       self._row((self.foil, 1), (self.tolerance, 1)), self.measure),
            self._step("workshop", _("What is the workshop called?"), "", self._row((self.workshop, 1)), self.named),
            self._step("kit", _("What do you polish with?"),
                       _("An invented kit to begin with: machines, pads, polishes, lamps. Your own replaces it."),
                       self.kit),
        )  # fmt: skip
        grid.addWidget(steps[0], 0, 0)
        grid.addWidget(steps[2], 1, 0)
        grid.addWidget(steps[1], 0, 1, 2, 1)
        grid.addWidget(steps[3], 2, 0, 1, 2)
        for column in range(2):
            grid.setColumnStretch(column, 1)
        self.on = button(_("To the jobs"), self.done.emit, role="main")
        foot = QHBoxLayout()
        foot.addWidget(sentence(_("Each of these can be left out now and is found under Shop later.")), 1)
        foot.addWidget(self.on)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(m.space("small"))
        whole.addWidget(heading(_("A new workshop")))
        whole.addLayout(grid)
        whole.addStretch(1)
        whole.addWidget(rule())
        whole.addLayout(foot)

    def take_focus(self) -> None:
        self.name.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def redraw(self) -> None:
        """Say of each step what is there already."""
        from detailbench.findings.kit_names import combinations_in_use, person_name
        from detailbench.findings.settings import setting

        bench, shop = self._context.bench, self._context.shop
        if bench is None or shop is None:
            return
        people = [p for p in shop.people if not p.retired]
        named = str(setting(shop, "shop_name"))
        kit = combinations_in_use(shop)
        entering = person_name(shop, bench.person) if bench.person else ""
        for key, text in (
            ("person", _("{name} is entering.").format(name=entering) if entering and people else ""),
            ("workshop", _("It is called {name}.").format(name=named) if named else ""),
            ("kit", _("{n} combinations stand in the range.").format(n=len(kit)) if kit else ""),
            ("gauge", _measured_with(shop)),
        ):
            self.said[key].setText(text)
            self.said[key].setAccessibleName(text)
            self.said[key].setVisible(bool(text))
        self.kit.setEnabled(not kit)

    def _step(self, key: str, question: str, says: str, *parts: QWidget) -> QWidget:
        whole = QWidget()
        column = QVBoxLayout(whole)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(self._context.dress.look.measure.space("thin"))
        column.addWidget(label(question, "strong"))
        if says:
            column.addWidget(sentence(says))
        for part in parts:
            column.addWidget(
                part, 0, Qt.AlignmentFlag.AlignLeft if isinstance(part, QPushButton) else Qt.AlignmentFlag(0)
            )
        column.addWidget(self.said[key])
        column.addStretch(1)
        return whole

    def _row(self, *parts: tuple[QWidget, int]) -> QWidget:
        whole = QWidget()
        row = QHBoxLayout(whole)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(self._context.dress.look.measure.space("small"))
        for part, stretch in parts:
            row.addWidget(part, stretch)
        return whole

    def _suggest_initials(self, name: str) -> None:
        """The first letters of the name, until someone types others."""
        if not self.initials.line.isModified():
            self.initials.line.setText("".join(word[0] for word in name.split()).upper())

    def _add_person(self) -> None:
        from detailbench.moves.shop import AddToShop

        values = {"name": self.name.text().strip(), "initials": self.initials.text().strip()}
        done = self._context.do(AddToShop("person", values), initiator=self)
        bench = self._context.bench
        if done is not None and bench is not None:
            bench.person = done.id
            self._context.changed.emit(None, self)
            _empty(self.name, self.initials)
            self.workshop.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def _name_workshop(self) -> None:
        from detailbench.findings.settings import setting
        from detailbench.moves.shop import SetSetting

        name, shop = self.workshop.text().strip(), self._context.shop
        if name and shop is not None and name != setting(shop, "shop_name"):
            self._context.do(SetSetting("shop_name", name), initiator=self)

    def _stock(self) -> None:
        from detailbench.moves.starter import StockStarterKit

        if self._context.do(StockStarterKit(), initiator=self) is not None:
            self.on.setFocus(Qt.FocusReason.OtherFocusReason)  # its own button serves once

    def _add_gauge(self) -> None:
        """The gauge and, with it, what checks it: a zero plate and the foil, when one is typed. A tolerance is taken as
        the half-width of a rectangular distribution (JCGM 100:2008, 4.3.7): standard uncertainty = tolerance / √3."""
        from detailbench.moves.shop import AddToShop
        from detailbench.screens.pages.shop.asked import needed_number, number, share

        reads: tuple[tuple[TextField, Callable[[str], float | None]], ...] = (
            (self.fixed, needed_number), (self.share, share), (self.foil, number),
            (self.tolerance, needed_number if self.foil.text().strip() else number),
        )  # fmt: skip
        try:
            field = self.fixed
            values: list[float | None] = []
            for each, read in reads:
                field = each
                values.append(read(each.text()))
        except DetailbenchError as error:
            field.say(str(error))
            return
        if not self._said_what_it_reads():
            return
        fixed, per, foil, tolerance = values
        principle, metals = READS[self.reads.value]
        gauge = {"name": self.gauge.text().strip(), "accuracy_fixed_um": fixed, "accuracy_share": per}
        gauge |= {"principle": principle, "substrates": metals, "layers": self.layers.value == "yes"}
        if self._context.do(AddToShop("gauge", gauge), initiator=self) is None:
            return
        shop = self._context.shop
        if shop is not None and not any(s.value_um == 0 and not s.retired for s in shop.shims):
            self._context.do(AddToShop("shim", {"label": _("zero plate"), "value_um": 0.0}), initiator=self)
        if foil and tolerance is not None:
            name = _("foil {value}").format(value=self.foil.text().strip())
            made = {"label": name, "value_um": foil, "accuracy_um": tolerance, "u_um": tolerance / math.sqrt(3)}
            self._context.do(AddToShop("shim", made), initiator=self)
        _empty(self.gauge, self.fixed, self.share, self.foil, self.tolerance)
        for row in (self.reads, self.layers):
            row.set_value("")

    def _said_what_it_reads(self) -> bool:
        """Which panels it can read, and whether what it shows may be taken for a clear coat, hangs on it: never a
        default."""
        missing = next((row for row in (self.reads, self.layers) if not row.value), None)
        self.unsaid.setText(_("Say what the gauge reads on, and whether it shows the clear coat on its own."))
        self.unsaid.setVisible(missing is not None)
        if missing is not None:
            self._context.notice(self.unsaid.text(), "stop")
            missing.take_focus()
        return missing is None


def _measured_with(shop: ShopPicture) -> str:
    """What is on the shelf to measure with, and that a gauge without a foil cannot be checked; empty: nothing yet."""
    gauges = [g.name for g in shop.gauges if not g.retired]
    if not gauges:
        return ""
    text = _("On the shelf: {names}.").format(names=", ".join(gauges))
    if any(s.value_um > 0 and not s.retired for s in shop.shims):
        return text
    return text + " " + _("No foil yet: without one no gauge check can be finished. Enter it under Shop.")


def _number(text: str) -> float | None:
    from detailbench.screens.pages.shop.asked import number

    return number(text)


def _empty(*fields: TextField) -> None:
    """Ready for another one."""
    for field in fields:
        field.line.setModified(False)
        field.set_text("")
