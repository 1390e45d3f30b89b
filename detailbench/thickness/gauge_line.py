"""What a gauge writes on a line of its own: bytes to lines, a line to a value.

The form of a line is described in plain words, not by a pattern: what divides it, which part is the value, which the
unit, which mark is the decimal mark. A line is looked at once from left to right and is never longer than ``LONGEST``,
so no form and no line can make the reader run away. What does not fit is handed on with a sentence, never mended.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from typing import Literal

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.basics.units import um_from_mil
from detailbench.thickness.sent_text import clear_unfit

LineUnit = Literal["um", "mil", "gu"]

LONGEST = 200  # signs of a line; a gauge's are a tenth of that
STALE_MS = 1000.0  # the rest of a line comes within a few ms; what comes after this may be the rest of another
DIVIDERS = {"blank": "", "tab": "\t", "semicolon": ";", "comma": ",", "bar": "|"}
MARKS = (".", ",")
MOST_PARTS = 20
UNITS: dict[str, LineUnit] = {"um": "um", "µm": "um", "μm": "um", "mil": "mil", "mils": "mil", "gu": "gu"}
STRANGE_UNITS = frozenset(("mm", "cm", "nm", "m", "in", "inch", "thou"))
_FRAME = "\x02\x03"  # start and end of text: some devices put a line between them
_NUMBER = re.compile(r"([+-]?)([0-9]{1,15})(?:([.,])([0-9]{1,15}))?([^0-9.,\s]*)")  # no two parts can match the same


@dataclass(frozen=True)
class LineForm:
    """How one gauge writes a line. Parts are counted from 1; ``value_part`` 0: the only number in the line;
    ``unit_part`` 0: the unit stands behind the value, or the line does not say (then ``unit``). ``begins``: only lines
    beginning so carry a value. ``nothing``: what the gauge writes instead of a value when it has none. ``clear_part``:
    where a gauge that resolves layers writes the clear coat, ``angle_part`` where a gloss meter writes its angle (then
    ``unit`` is gu); 0: nowhere."""

    divider: str = "blank"
    value_part: int = 0
    unit_part: int = 0
    unit: LineUnit = "um"
    decimal: str = "."
    begins: str = ""
    nothing: tuple[str, ...] = ()
    clear_part: int = 0
    angle_part: int = 0

    def __post_init__(self) -> None:
        if self.divider not in DIVIDERS:
            raise BadInput(_("“{word}” is not a way to divide a line.").format(word=self.divider), field="divider")
        for name in ("value_part", "unit_part", "clear_part", "angle_part"):
            part = getattr(self, name)
            if isinstance(part, bool) or not isinstance(part, int) or not 0 <= part <= MOST_PARTS:
                raise BadInput(_("Parts of a line are counted from 1 to {n}.").format(n=MOST_PARTS), field=name)
        if self.value_part and self.value_part == self.unit_part:
            raise BadInput(_("Value and unit cannot be the same part."), field="unit_part")
        if self.unit not in ("um", "mil", "gu"):
            raise BadInput(_("Thickness comes in um or mil, gloss in gu."), field="unit")
        self._parts_beside()
        if self.decimal not in MARKS:
            raise BadInput(_("The decimal mark is a dot or a comma."), field="decimal")
        if self.divider == "comma" and self.decimal == ",":
            raise BadInput(_("A comma cannot both divide the line and be the decimal mark."), field="decimal")

    def _parts_beside(self) -> None:
        """Clear coat and angle stand in parts of their own beside a value whose part is said."""
        for name in ("clear_part", "angle_part"):
            part = getattr(self, name)
            if part and not self.value_part:
                raise BadInput(_("Say as well which part is the value."), field="value_part")
            if part and part in (self.value_part, self.unit_part):
                raise BadInput(_("Every part of a line is one thing only."), field=name)
        if self.unit == "gu" and not self.angle_part:
            raise BadInput(_("Say which part of the line is the angle."), field="angle_part")
        if self.angle_part and self.unit != "gu":
            raise BadInput(_("Only gloss has an angle; its unit is gu."), field="unit")
        if self.clear_part and self.unit == "gu":
            raise BadInput(_("A gloss meter resolves no layers."), field="clear_part")


@dataclass(frozen=True)
class LineRead:
    """One line as it was understood. ``value`` in ``unit`` as sent, None where there is none; then ``no_value`` says
    that the gauge had none, ``beside`` that the line is not one that carries values, ``sentence`` why it cannot be
    taken. A value below zero is given as it is: on the zero plate it is one. ``clear``: the clear coat in it, in the
    same unit; ``angle_deg`` of a gloss value, which is in gu."""

    text: str
    value: float | None = None
    unit: LineUnit = "um"
    no_value: bool = False
    beside: bool = False
    sentence: str = ""
    clear: float | None = None
    angle_deg: int | None = None

    @property
    def value_um(self) -> float | None:
        """The value in µm."""
        if self.value is None or self.unit != "mil":
            return self.value
        return um_from_mil(self.value)

    @property
    def clear_um(self) -> float | None:
        """The clear coat in µm."""
        return um_from_mil(self.clear) if self.clear is not None and self.unit == "mil" else self.clear


def read_line(text: str, form: LineForm) -> LineRead:
    """One whole line, without its end. Never raises for what was sent."""
    line = text.strip(_FRAME + " \t")
    if len(line) > LONGEST:
        return LineRead(line[:LONGEST], sentence=_("The line is longer than any a gauge writes."))
    if any(not sign.isprintable() and sign != "\t" for sign in line):
        return LineRead(_plain(line), sentence=_("There are characters in it that no gauge writes: a disturbed line."))
    if not line or (form.begins and not line.startswith(form.begins)):
        return LineRead(line, beside=True)
    body = line[len(form.begins) :] if form.begins else line
    parts = _parts(body, form)
    if any(part in form.nothing for part in (*parts, body.strip())):
        return LineRead(line, no_value=True)
    found = _value_part(parts, form)
    if isinstance(found, str):
        if not any(sign.isdigit() for sign in body):
            return LineRead(line, beside=True)
        return LineRead(line, sentence=found)
    return _value(line, parts, found, form)


def _parts(body: str, form: LineForm) -> list[str]:
    divider = DIVIDERS[form.divider]
    return [part.strip() for part in (body.split(divider) if divider else body.split())]


def _value_part(parts: list[str], form: LineForm) -> int | str:
    """Index of the part with the value, or the sentence why there is none."""
    if form.value_part:
        if len(parts) < form.value_part:
            return _(
                "The line has {n} parts; the value should be part {part}. Perhaps a piece of it is missing."
            ).format(n=len(parts), part=form.value_part)
        return form.value_part - 1
    numbers = [i for i, part in enumerate(parts) if _NUMBER.fullmatch(part)]
    if len(numbers) == 1:
        return numbers[0]
    if numbers:
        return _("There are {n} numbers in the line; say in the shop which part is the value.").format(n=len(numbers))
    return _("There is no number in the line.")


def _value(line: str, parts: list[str], at: int, form: LineForm) -> LineRead:
    found = _NUMBER.fullmatch(parts[at])
    if found is None:
        return LineRead(line, sentence=_("“{part}” is not a number.").format(part=parts[at]))
    sign, whole, mark, decimals, behind = found.groups()
    if mark and mark != form.decimal:
        return LineRead(
            line, sentence=_("“{mark}” is not this gauge's decimal mark; see its line in the shop.").format(mark=mark)
        )
    said = behind or _unit_beside(parts, at, form)
    if said and said.lower() not in UNITS:
        return LineRead(line, sentence=_("“{unit}” is no unit known here: µm or mil.").format(unit=said))
    value = float(f"{whole}.{decimals or '0'}") * (-1 if sign == "-" else 1) + 0.0
    unit: LineUnit = UNITS[said.lower()] if said else form.unit
    if (unit == "gu") != (form.unit == "gu"):
        return LineRead(line, sentence=_("“{unit}” is no unit known here: µm or mil.").format(unit=said))
    if form.angle_part:
        return _gloss(line, parts, value, form)
    if form.clear_part:
        return _layered(line, parts, value, unit, form)
    return LineRead(line, value, unit)


def _gloss(line: str, parts: list[str], value: float, form: LineForm) -> LineRead:
    """The angle in its own part: 20, 60 or 85, with or without its sign."""
    angle = parts[form.angle_part - 1].rstrip("°:") if len(parts) >= form.angle_part else ""
    if angle not in ("20", "60", "85"):
        return LineRead(line, sentence=_("Gloss is read at 20°, 60° or 85°; the line does not say which."))
    if value < 0:
        return LineRead(line, sentence=_("Gloss is nought or more, in GU."))
    return LineRead(line, value, "gu", angle_deg=int(angle))


def _layered(line: str, parts: list[str], value: float, unit: LineUnit, form: LineForm) -> LineRead:
    """The clear coat in its own part, in the value's unit; where the gauge found none, the total alone counts."""
    text = parts[form.clear_part - 1] if len(parts) >= form.clear_part else ""
    if not text or text in form.nothing:
        return LineRead(line, value, unit)
    clear = _value(line, parts, form.clear_part - 1, replace(form, clear_part=0, unit=unit))
    if clear.value is None:
        return LineRead(line, sentence=clear.sentence)
    if clear.unit != unit:
        return LineRead(line, sentence=_("Total and clear coat stand in two units."))
    unfit = clear_unfit(value, clear.value)
    return LineRead(line, sentence=unfit) if unfit else LineRead(line, value, unit, clear=clear.value)


def _unit_beside(parts: list[str], at: int, form: LineForm) -> str:
    """The unit where it is a part of its own; any other word beside the value is no unit."""
    if form.unit_part:
        return parts[form.unit_part - 1] if len(parts) >= form.unit_part else "?"
    following = parts[at + 1] if len(parts) > at + 1 else ""
    return following if following.lower() in UNITS or following.lower() in STRANGE_UNITS else ""


def _plain(text: str) -> str:
    return "".join(sign if sign.isprintable() else "·" for sign in text)


@dataclass(frozen=True)
class CutLine:
    """One line as it came; ``sentence``: why it is not to be read as it stands."""

    text: str
    sentence: str = ""


@dataclass
class LineCutter:
    """Cuts what comes over the wire into lines, however it was broken up on the way."""

    _bytes: bytearray = field(default_factory=bytearray)
    _last_ms: float = 0.0
    _broken: bool = False
    _too_long: bool = False

    @property
    def half(self) -> str:
        """What came of a line that has not ended yet."""
        return _plain(_decoded(bytes(self._bytes)))

    def feed(self, data: bytes, at_ms: float) -> tuple[CutLine, ...]:
        """The lines that ended with these bytes; ``at_ms`` of any clock that only goes forward."""
        if not data:
            return ()
        if self._bytes and at_ms - self._last_ms > STALE_MS:
            self._broken = True
        self._last_ms = at_ms
        out = []
        for byte in data:
            if byte in b"\r\n":
                out += self._ended()
            elif len(self._bytes) < LONGEST:
                self._bytes.append(byte)
            else:
                self._too_long = True
        return tuple(out)

    def cut_off(self) -> tuple[CutLine, ...]:
        """The wire is gone: half a line that was coming is handed on as one."""
        if not self._bytes:
            return ()
        self._broken = True
        return tuple(self._ended())

    def _ended(self) -> list[CutLine]:
        text, broken, too_long = _decoded(bytes(self._bytes)), self._broken, self._too_long
        self._bytes.clear()
        self._broken = self._too_long = False
        if not text.strip():
            return []
        if too_long:
            return [CutLine(_plain(text), _("The line is longer than any a gauge writes."))]
        if broken:
            return [CutLine(_plain(text), _("The line came in pieces or broke off; measure again."))]
        return [CutLine(text)]


def _decoded(data: bytes) -> str:
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        return data.decode("latin-1")


@dataclass(frozen=True)
class GaugeLine:
    """Where a gauge is plugged in and how it writes. ``framing``: data bits, parity (N, E, O), stop bits."""

    port: str
    speed: int = 9600
    framing: str = "8N1"
    form: LineForm = LineForm()

    def __post_init__(self) -> None:
        if not self.port.strip():
            raise BadInput(_("Name the port the gauge is plugged in at."), field="port")
        if isinstance(self.speed, bool) or not isinstance(self.speed, int) or not 50 <= self.speed <= 4_000_000:
            raise BadInput(_("The speed of a line is a whole number like 9600."), field="speed", given=self.speed)
        if not re.fullmatch(r"[5-8][NEO][12]", self.framing):
            raise BadInput(_("Bits, parity and stop bits are written like 8N1."), field="framing", given=self.framing)
