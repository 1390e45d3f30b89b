"""A gauge's own line: where it is plugged in, how it writes, and a line of it tried at once."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import DetailbenchError
from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.texts import _
from detailbench.findings.gauge_lines import line_of
from detailbench.moves.gauge_lines import SetGaugeLine
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.gauges.port_reader import ports_here
from detailbench.screens.look.parts import button, caption, heading, sentence, set_kind
from detailbench.screens.pages.shop.asked import Asked, needed_number, show_number, whole
from detailbench.screens.pages.shop.thing_form import ThingForm, scrolled
from detailbench.thickness.gauge_line import GaugeLine, LineForm, LineRead, read_line

FORM = ("divider", "value_part", "unit_part", "clear_part", "angle_part", "unit", "decimal", "begins", "nothing")


def _part(text: str) -> int:
    return whole(text) or 0


def _show_part(value: int) -> str:
    return str(value) if value else ""


def _words(text: str) -> tuple[str, ...]:
    return tuple(part for part in text.split() if part)


def asked() -> tuple[Asked, ...]:
    """The fields of a line, in the order of the form."""
    return (
        Asked("port", _("port")),
        Asked("speed", _("speed"), lambda text: int(needed_number(text)), show_number),
        Asked("framing", _("bits, parity, stop bits"), lambda text: text.strip().upper()),
        Asked("value_part", _("the value is part (empty: the only number)"), _part, _show_part),
        Asked("unit_part", _("the unit is part (empty: behind the value)"), _part, _show_part),
        Asked("clear_part", _("the clear coat is part (layer gauge only)"), _part, _show_part),
        Asked("angle_part", _("the angle is part (gloss meter only)"), _part, _show_part),
        Asked("begins", _("only lines that begin with"), str.strip),
        Asked("nothing", _("written for no value"), _words, " ".join),
        Asked("divider", _("parts are divided by"), choices=(
            ("blank", _("blanks")), ("tab", _("tab")), ("semicolon", ";"), ("comma", ","), ("bar", "|"),
        ), columns=5),
        Asked("unit", _("unit where the line has none"), choices=(("um", "µm"), ("mil", "mil"), ("gu", "GU"))),
        Asked("decimal", _("decimal mark"), choices=((".", _("dot")), (",", _("comma")))),
    )  # fmt: skip


def _read_words(read: LineRead) -> str:
    """The value of a line with what came beside it."""
    if read.unit == "gu" or read.value_um is None:
        value = format_number(read.value or 0.0)
        return _("{value} GU at {angle}°").format(value=value, angle=format_number(read.angle_deg or 0))
    total = format_thickness(read.value_um, read.unit)
    if read.clear_um is None:
        return total
    return _("{total}, clear coat {clear}").format(total=total, clear=format_thickness(read.clear_um, read.unit))


class LinePart(QWidget):
    """One gauge at a time; nothing is kept before the button is pressed."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.gauge = ChoiceRow(_("gauge"), (), columns=3)
        self.gauge.chosen.connect(lambda _key: self._show())
        self.seen = sentence()
        self.form = ThingForm(context, asked(), {}, columns=3)
        self.form.entered.connect(self.keep)
        self.tried = TextField(_("try it: a line as the gauge writes it"))
        self.tried.line.textEdited.connect(lambda _text: self.try_line())
        self.reads = sentence()
        self.keep_it = button(_("Keep this line"), self.keep, role="main")
        self.none = button(_("No line for this gauge"), self.take_away)
        acts = QHBoxLayout()
        acts.addWidget(self.keep_it)
        acts.addWidget(self.none)
        acts.addStretch(1)
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        for part in (self.gauge, self.seen, self.form, self.tried, self.reads):
            column.addWidget(part)
        whole_part = QVBoxLayout(self)
        whole_part.setContentsMargins(0, 0, 0, 0)
        whole_part.setSpacing(m.space("thin"))
        whole_part.addWidget(heading(_("Gauges on a line")))
        whole_part.addWidget(
            caption(_("For a gauge that sends its values over a serial port. One that types them needs nothing here."))
        )
        whole_part.addWidget(scrolled(inside), 1)
        whole_part.addLayout(acts)
        self.redraw()

    def redraw(self) -> None:
        """Show the gauges there are; what is being typed stays."""
        shop = self._context.shop
        gauges = [(g.id, g.name) for g in shop.gauges if not g.retired] if shop is not None else []
        keys = [key for key, _name in gauges]
        if keys != getattr(self, "_keys", None):
            had = self.gauge.value
            self._keys = keys
            self.gauge.set_choices(gauges)
            self.gauge.set_value(had if had in keys else next(iter(keys), ""))
            self._show()
        for part in (self.form, self.tried, self.keep_it, self.none):
            part.setEnabled(bool(gauges))
        ports = ports_here()
        said = _("Ports of this computer: {ports}").format(ports=", ".join(ports)) if ports else ""
        said = said or _("This computer shows no serial port now; plug the gauge in, or type the port's name.")
        self.seen.setText(said if gauges else _("Enter the gauge under Gauges first."))

    def _show(self) -> None:
        shop = self._context.shop
        if shop is None:
            return
        try:
            kept = line_of(shop, self.gauge.value)
        except DetailbenchError as error:
            self._context.notice(str(error), "stop")
            kept = None
        form = kept.form if kept is not None else LineForm()
        values: dict[str, Any] = {name: getattr(form, name) for name in FORM}
        values |= {
            "port": kept.port if kept is not None else "",
            "speed": kept.speed if kept is not None else 9600,
            "framing": kept.framing if kept is not None else "8N1",
        }
        self.form.fill(values)
        self.try_line()

    def _line(self) -> GaugeLine | None:
        """What stands in the form; a sentence at its field where it cannot be."""
        values = self.form.values()
        if values is None:
            return None
        try:
            form = LineForm(**{name: values[name] for name in FORM})
            return GaugeLine(values["port"], values["speed"], values["framing"], form)
        except DetailbenchError as error:
            field = self.form.fields.get(getattr(error, "field", ""))
            if field is not None:
                field.say(str(error))
            else:
                self._context.notice(str(error), "stop")
            return None

    def keep(self) -> None:
        line = self._line()
        if line is not None:
            self._context.do(SetGaugeLine(self.gauge.value, line), initiator=self)

    def take_away(self) -> None:
        if self._context.do(SetGaugeLine(self.gauge.value, None), initiator=self) is not None:
            self._show()

    def try_line(self) -> None:
        """What the form makes of the line typed; nothing is entered."""
        text = self.tried.text()
        words = kind = ""
        if text.strip():
            line = self._form_only()
            read = read_line(text, line)
            if read.value is not None:
                words = _("read as {value}").format(value=_read_words(read))
            elif read.no_value:
                words = _("read as no value")
            elif read.beside:
                words = _("passed over: it carries no value")
            else:
                words, kind = read.sentence, "flagged"
        self.reads.setText(words)
        self.reads.setVisible(bool(words))
        set_kind(self.reads, kind)

    def _form_only(self) -> LineForm:
        values = self.form.values()
        try:
            return LineForm() if values is None else LineForm(**{name: values[name] for name in FORM})
        except DetailbenchError as error:
            self._context.notice(str(error), "stop")
            return LineForm()
