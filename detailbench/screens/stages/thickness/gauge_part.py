"""The gauge: which one, how warm the surface is, and its check on zero plate and foil."""

from __future__ import annotations

from PySide6.QtWidgets import QApplication, QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import Typed, format_number, read_typed
from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.look.parts import button, label, sentence, set_kind
from detailbench.screens.stages.thickness.correction_part import CorrectionPart
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.screens.stages.thickness.gauge_check_desk import values_line
from detailbench.screens.stages.thickness.value_entry import ValueEntry
from detailbench.thickness.gauge_check import FEWEST


def degrees(text: str) -> float | None:
    """A temperature as typed, °C; None when nothing stands there. Raises BadInput with the sentence for the field."""
    if not text.strip():
        return None
    typed = read_typed(text.strip().removesuffix("C").removesuffix("°"), expects="plain", allow_negative=True)
    if typed.value is None or not typed.accepted:
        raise BadInput(typed.sentence or typed.question, field="temperature_c", given=text)
    if not -30 <= typed.value <= 80:
        raise BadInput(_("A painted surface one can measure on lies between −30 and 80 °C."), field="temperature_c")
    return typed.value


class GaugePart(QWidget):
    """Everything before the first reading, and the closing check after the last."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        check, context = desk.check, desk.context
        m = context.dress.look.measure
        self._chosen_gauge = ""
        self._spell = False
        self.none = sentence()
        self.state = label("", "strong", wrap=True)
        self.gauges = ChoiceRow(_("gauge"), (), columns=2)
        self.temperature = TextField(_("surface temperature, °C (empty: not recorded)"), check=degrees)
        self.take = button(_("Take this gauge in hand"), self._take, role="main")
        self.spell = button(_("New spell…"), self._new_spell, name=_("Begin a new spell with the gauge"))
        self.foils = ChoiceRow(_("foil"), (), columns=2)
        self.asks = label("", "next", wrap=True)
        self.gloss = sentence()
        self.entry = ValueEntry(_("raw value"), context.dress, minus=True)
        self.zero = sentence()
        self.foil = sentence()
        self.verdict = label("", "notice", wrap=True)
        self.limits = sentence()
        self.why = WhyButton(self._working, context.show_working, _("the gauge check"))
        self.again = button(_("Check again"), check.check_again, name=_("Check the gauge again (closing check)"))
        self.more = button(_("More on foil"), self._more, name=_("More readings on the foil"))
        self.rounds = ChoiceRow(_("readings at each place"), [("1", _("one")), ("3", _("three"))], columns=2)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        for part in (
            self.none,
            self.state,
            self.gloss,
            self.gauges,
            self.temperature,
            self.take,
            self.foils,
            self.asks,
            self.entry,
        ):
            column.addWidget(part)
        for part in (self.zero, self.foil):
            column.addWidget(part)
        row = QHBoxLayout()
        row.addWidget(self.verdict, 1)
        row.addWidget(self.why)
        column.addLayout(row)
        column.addWidget(self.limits)
        buttons = QHBoxLayout()
        buttons.addWidget(self.again, 1)
        buttons.addWidget(self.more, 1)
        buttons.addWidget(self.spell, 1)
        column.addLayout(buttons)
        self.correction = CorrectionPart(desk)
        column.addWidget(self.correction)
        column.addWidget(self.rounds)
        column.addStretch(1)
        self.gauges.chosen.connect(self._choose_gauge)
        self.foils.chosen.connect(check.use_foil)
        self.entry.field.committed.connect(self._value)
        self.rounds.chosen.connect(lambda n: desk.use_rounds(int(n)))
        desk.changed.connect(self.redraw)
        self.redraw()

    def _choose_gauge(self, gauge_id: str) -> None:
        self._chosen_gauge = gauge_id
        self.redraw()

    def _new_spell(self) -> None:
        """The same gauge at another time or temperature."""
        self._spell = not self._spell
        self.redraw()
        if self._spell:
            self.temperature.line.setFocus()

    def _take(self) -> None:
        check = self._desk.check
        in_hand = check.session.gauge_id if check.session is not None else ""
        gauge_id = self._chosen_gauge or in_hand or (check.gauges[0].id if len(check.gauges) == 1 else "")
        if not gauge_id:
            self._desk.context.notice(_("Choose the gauge first."), "plain")
            self.gauges.take_focus()
            return
        try:
            temperature = degrees(self.temperature.text())
        except BadInput as error:
            self.temperature.say(str(error))
            return
        check.take_in_hand(gauge_id, temperature)
        self._chosen_gauge, self._spell = "", False
        self._desk.gloss.begin()
        self.redraw()
        if self._desk.gloss.on:  # its tile is not read here: there is no check to do
            self._desk.tab_wanted.emit("walk")
            self._desk.told()
            return
        if self.entry.isVisible():
            self.entry.setFocus()

    def _value(self, typed: Typed) -> None:
        if typed.value_um is not None:
            self._desk.check.value(typed.value_um)

    def _more(self) -> None:
        foil = self._desk.check.foil
        if foil is not None:
            self._desk.check.read_on(foil.id)
            self.entry.setFocus()

    def _working(self) -> Working | None:
        done = [r for r in self._desk.check.all_rounds if r.check is not None]
        return done[-1].check.working if done and done[-1].check is not None else None

    def redraw(self) -> None:
        focused = QApplication.focusWidget()
        typing = focused is not None and self.entry.isAncestorOf(focused)
        self._show()
        if typing and self.entry.isHidden() and self.again.isVisible():
            self.again.setFocus()  # after the last value the keys stay on the card

    def _show(self) -> None:
        check = self._desk.check
        gauges, session = check.gauges, check.session
        job = self._desk.context.picture is not None
        words = _("There is no gauge in the shop yet: enter it under Shop.")
        self.none.setText(words if job else _("No job is open: open or begin one under Jobs."))
        self.none.setVisible(not gauges or not job)
        gauges = gauges if job else ()
        self.state.setText(check.state())
        if list(self.gauges.buttons) != [g.id for g in gauges]:
            self.gauges.set_choices([(g.id, g.name) for g in gauges])
        in_hand = session.gauge_id if session is not None else ""
        meter = self._desk.gloss.gauge
        self.gloss.setVisible(meter is not None)
        if meter is not None:
            text = _("gloss meter in hand: {meter}. Check it on its own tile first; the program does not read it.")
            self.gloss.setText(text.format(meter=meter.name))
        only = gauges[0].id if len(gauges) == 1 else ""
        self.gauges.set_value(self._chosen_gauge or in_hand or only)
        choosing = session is None or (bool(self._chosen_gauge) and self._chosen_gauge != in_hand)
        self.gauges.setVisible(len(gauges) > 1 or (bool(gauges) and session is None))
        fresh = choosing or self._spell
        self.temperature.setVisible(bool(gauges) and fresh)
        self.take.setVisible(bool(gauges) and fresh)
        self.take.setText(_("Take this gauge in hand") if choosing else _("Begin a new spell with it"))
        self.take.setAccessibleName(self.take.text())
        if session is not None and not choosing and not self.temperature.line.hasFocus():
            shown = "" if session.temperature_c is None else format_number(session.temperature_c)
            self.temperature.set_text(shown)
        self._check(choosing)
        self.rounds.set_value(str(self._desk.rounds))
        self.rounds.setVisible(session is not None and not choosing)
        if choosing:
            self.correction.hide()
            return
        self.correction.redraw()
        if self.correction.is_open:  # both together do not fit the card
            for part in (self.zero, self.foil, self.limits, self.rounds):
                part.hide()

    def _check(self, choosing: bool) -> None:
        check = self._desk.check
        open_ = check.session is not None and not choosing
        if list(self.foils.buttons) != [f.id for f in check.foils]:
            self.foils.set_choices([(f.id, f.label) for f in check.foils])
        self.foils.set_value(check.foil.id if check.foil is not None else "")
        self.foils.setVisible(open_ and len(check.foils) > 1 and not check.on_foil)
        self.entry.setVisible(open_ and check.takes)
        self.asks.setVisible(open_ and check.takes)
        self.asks.setText(check.waits())
        plate = check.plate
        self.entry.pad.allow_minus(plate is not None and plate.value_um == 0)
        missing = open_ and (check.zero is None or not check.foils)
        for part, values, what in (
            (self.zero, check.on_zero, check.zero),
            (self.foil, check.on_foil, check.foil),
        ):
            part.setVisible(open_ and what is not None)
            if what is not None:
                part.setText(
                    _("{plate}, {n} of {of}: {values}").format(
                        plate=what.label,
                        n=format_number(len(values)),
                        of=format_number(max(FEWEST, len(values))),
                        values=values_line(values) or "–",
                    )
                )
        if missing:
            self.asks.setVisible(True)
            self.asks.setText(_("The check needs a zero plate and a foil: enter them under Shop."))
        self._say_verdict(open_)

    def _say_verdict(self, open_: bool) -> None:
        now = self._desk.check.round
        found = now.check if now is not None else None
        self.verdict.setVisible(open_ and found is not None)
        self.why.setVisible(open_ and found is not None)
        self.limits.setVisible(open_ and found is not None)
        self.again.setVisible(open_ and found is not None)
        self.more.setVisible(open_ and found is not None)
        self.spell.setVisible(open_ and found is not None)
        if found is None:
            return
        if found.passed:
            self.verdict.setText(_("Gauge check passed"))
        else:
            self.verdict.setText(_("The gauge check failed: readings since the last good one are not confirmed"))
        set_kind(self.verdict, "saved" if found.passed else "stop")
        self.limits.setText("\n".join(found.sentences))
        set_kind(self.limits, "" if found.passed else "stop")
