"""Readings from a file: every line either accepted or refused with its number, column, value and a reason."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, tzinfo
from functools import partial
from typing import Literal

from detailbench.basics.errors import BadFile
from detailbench.basics.numbers import (
    LengthUnit,
    PlausibleRange,
    Typed,
    format_number,
    plausibility,
    read_typed,
)
from detailbench.basics.texts import _
from detailbench.basics.units import um_from_mil
from detailbench.thickness.csv_text import Layout, Row, layout_of, lines_of, rows_of, shown
from detailbench.thickness.sent_text import STROKE, clear_unfit, read_sent

GLOSS_SIGNS = frozenset(":°")
Doubt = Literal["", "no value", "mil", "um", "low", "high"]
NO_VALUE = {"no value", "-", "--", "---", "–", "—"}
UNITS: dict[str, LengthUnit] = {"um": "um", "\u00b5m": "um", "\u03bcm": "um", "mil": "mil", "mils": "mil"}
_DAY_FIRST = re.compile(r"(\d{1,2})\.(\d{1,2})\.(\d{4})[ T]+(\d{1,2}:\d{2}(?::\d{2})?)")


@dataclass(frozen=True)
class ImportedReading:
    """One accepted line. ``value_um`` None with ``no_value``; ``panel`` None means: walk order of the selected panel.
    ``clear_um``: the clear coat in it, where the file says so. ``angle_deg`` and ``value_gu``: a gloss value instead of
    a thickness. ``doubt`` and ``flag`` mark a value kept but doubted (exactly 0, mil for µm, outside the shop's
    range)."""

    line: int
    value_um: float | None
    typed: str
    unit: LengthUnit
    panel: str | None = None
    place: str = ""
    time: datetime | None = None
    note: str = ""
    no_value: bool = False
    doubt: Doubt = ""
    flag: str = ""
    clear_um: float | None = None
    angle_deg: int | None = None
    value_gu: float | None = None


@dataclass(frozen=True)
class RefusedLine:
    """One line not taken: where, what stood there, why."""

    line: int
    column: str
    value: str
    reason: str

    @property
    def sentence(self) -> str:
        if not self.column:
            return _("Line {line}: {reason}").format(line=self.line, reason=self.reason)
        return _("Line {line}, {column} “{value}”: {reason}").format(
            line=self.line, column=self.column, value=self.value, reason=self.reason
        )


@dataclass(frozen=True)
class ReadingsFile:
    """All lines of a file, in their order, in one of the two lists; ``notes`` say what was inferred."""

    name: str
    encoding: str
    separator: str
    accepted: tuple[ImportedReading, ...]
    refused: tuple[RefusedLine, ...]
    notes: tuple[str, ...]


def read_file(
    data: bytes,
    *,
    panel_key: Callable[[str], str | None],
    name: str = "",
    unit_default: LengthUnit = "um",
    zone: tzinfo | None = None,
    plausible: PlausibleRange | None = None,
    most_lines: int | None = None,
) -> ReadingsFile:
    """Read a list of readings: columns value, unit, clear, angle, panel, place, time, note, of which only value is
    required; or one column without a heading. ``clear`` is the clear coat in the value; ``angle`` (20, 60, 85) makes
    the value a gloss value. Both may stand in the value itself, as typed: ``118 / 42``, ``60: 84.2``.

    ``panel_key`` turns a panel's words into its key, None where there is no such panel. ``zone`` is the offset of
    times written without one. A value that can be read in two ways is taken as the rest of the file writes its
    decimals, and said so; where the rest does not tell, the line is refused. Raises BadFile when nothing can be
    read as a list of readings, or, before any is read, when there are more than ``most_lines``.
    """
    lines, encoding = lines_of(data, name)
    filled = sum(1 for line in lines if line.strip())
    if most_lines is not None and filled > most_lines + 1:  # one may be the heading
        raise BadFile(
            _("“{name}” has {n} lines; one car never has more than {most} readings. Is it the right file?").format(
                name=name, n=filled, most=most_lines
            ),
            name=name,
        )
    layout = layout_of(lines, encoding, name)
    reader = _Reader(layout, panel_key, unit_default, zone, plausible or PlausibleRange())
    for row in rows_of(lines, layout):
        reader.take(row)
    found = reader.finished(name)
    cut = cut_off(lines, layout)
    return replace(found, notes=(*found.notes, cut)) if cut else found


def cut_off(lines: Sequence[str], layout: Layout) -> str:
    """A sentence where the last line has no end and fewer cells than there are columns: the file may be cut there."""
    last = lines[-1]
    if not last.strip() or not layout.separator or last.count(layout.separator) + 1 >= layout.width:
        return ""
    return _(
        "Line {line}, the last, has no end and fewer cells than the others: the file may be cut off there."
    ).format(line=len(lines))


@dataclass(frozen=True)
class _Waiting:
    """A line whose value can be read in two ways, until the whole file is known."""

    line: int
    typed: Typed
    draft: partial[ImportedReading]


class _Refusal(Exception):
    def __init__(self, column: str, value: str, reason: str) -> None:
        super().__init__(reason)
        self.column, self.value, self.reason = column, value, reason


class _Reader:
    """Takes rows one by one and keeps what the file shows about its decimal mark."""

    def __init__(
        self,
        layout: Layout,
        panel_key: Callable[[str], str | None],
        unit_default: LengthUnit,
        zone: tzinfo | None,
        plausible: PlausibleRange,
    ) -> None:
        self._layout = layout
        self._panel_key = panel_key
        self._unit_default = unit_default
        self._zone = zone
        self._plausible = plausible
        self._accepted: list[ImportedReading] = []
        self._refused: list[RefusedLine] = []
        self._waiting: list[_Waiting] = []
        self._marks: dict[str, int] = {}  # decimal marks seen beyond doubt, with the first line of each

    def take(self, row: Row) -> None:
        if row.damage:
            self._refused.append(RefusedLine(row.line, "", "", row.damage))
            return
        try:
            self._one(row)
        except _Refusal as refusal:
            self._refused.append(RefusedLine(row.line, refusal.column, shown(refusal.value), refusal.reason))

    def _one(self, row: Row) -> None:
        if any(cell.strip() for cell in row.cells[self._layout.width :]):
            reason = _("There are more cells than columns.")
            if self._layout.separator == ",":
                reason = _("There are more cells than columns. A decimal comma needs quotes, or another separator.")
            raise _Refusal("", "", reason)
        text = self._cell(row, "value")
        angle = self._cell(row, "angle")
        gloss = bool(angle) or self._cell(row, "unit").casefold() == "gu"
        unit = None if gloss else self._unit(row)
        wanted = unit or self._layout.unit
        draft = partial(
            ImportedReading,
            line=row.line,
            typed=text,
            panel=self._panel(row),
            place=self._cell(row, "place"),
            time=self._time(row),
            note=self._cell(row, "note"),
        )
        if text.casefold() in NO_VALUE or text == _("no value"):
            self._accepted.append(draft(value_um=None, unit=wanted or self._unit_default, no_value=True))
            return
        if gloss or GLOSS_SIGNS & set(text):
            self._gloss(draft, f"{angle}: {text}" if angle else text)
            return
        text, clear = self._with_clear(row, text, wanted)
        draft = partial(draft, clear_um=clear)
        typed = read_typed(text, unit_default=wanted or self._unit_default)
        if typed.sentence:
            raise _Refusal("value", text, typed.sentence)
        if wanted and typed.unit != wanted:
            raise _Refusal("value", text, _("The value names one unit, its column another."))
        if typed.asks == "decimal or thousands":
            self._waiting.append(_Waiting(row.line, typed, draft))
            return
        self._learn_mark(text, row.line)
        self._accept(draft, typed)

    def _gloss(self, draft: partial[ImportedReading], text: str) -> None:
        read = read_sent(text)
        if read.kind != "gloss":
            raise _Refusal("value", text, _("A gloss value says its angle, in a column or like 60: 84.2."))
        if not read.accepted:
            raise _Refusal("value", text, read.sentence or read.question)
        self._accepted.append(
            draft(value_um=None, unit=self._unit_default, angle_deg=read.angle_deg, value_gu=read.value_gu)
        )

    def _with_clear(self, row: Row, text: str, wanted: LengthUnit | None) -> tuple[str, float | None]:
        """The total as it stands in the cell, and the clear coat in it, µm: of its own column, or behind a stroke."""
        if STROKE in text:
            both = read_sent(text, unit_default=wanted or self._unit_default)
            if not both.accepted:
                raise _Refusal("value", text, both.sentence or both.question)
            return text.split(STROKE)[0], both.clear_um
        cell = self._cell(row, "clear")
        if not cell or cell.casefold() in NO_VALUE:
            return text, None
        beside = read_typed(text, unit_default=wanted or self._unit_default).unit  # the value's own, where it names one
        clear = read_typed(cell, unit_default=self._layout.clear_unit or ("mil" if beside == "mil" else "um"))
        if clear.value is None or clear.sentence or clear.question:
            raise _Refusal("clear", cell, clear.sentence or clear.question)
        return text, clear.value_um

    def _accept(self, draft: partial[ImportedReading], typed: Typed, choice: int = 0) -> None:
        value = typed.value if typed.value is not None else typed.choices[choice]
        unit: LengthUnit = "mil" if typed.unit == "mil" else "um"
        doubt: Doubt = ""
        flag = ""
        if value == 0:
            doubt, flag = "no value", _("0 means bare metal here. Did the gauge give no value?")
        elif found := plausibility(value, unit, self._plausible):
            doubt, flag = found.doubt, found.sentence
        value_um = value if unit == "um" else um_from_mil(value)
        clear = draft.keywords.get("clear_um")
        if unfit := clear_unfit(value_um, clear):
            line, place = draft.keywords["line"], format_number(clear or 0.0)
            self._refused.append(RefusedLine(line, "clear", place, unfit))
            return
        self._accepted.append(draft(value_um=value_um, unit=unit, doubt=doubt, flag=flag))

    def _learn_mark(self, text: str, line: int) -> None:
        kinds = [c for c in text if c in ".,"]
        if kinds and (len(set(kinds)) == 2 or kinds.count(kinds[-1]) == 1):
            self._marks.setdefault(kinds[-1], line)

    def finished(self, name: str) -> ReadingsFile:
        notes = []
        decimal = next(iter(self._marks)) if len(self._marks) == 1 else None
        for waiting in self._waiting:
            text = waiting.typed.text
            if decimal is None:
                self._refused.append(RefusedLine(waiting.line, "value", shown(text), waiting.typed.question))
            else:
                self._accept(waiting.draft, waiting.typed, 0 if decimal in text else 1)
        if decimal is not None and self._waiting:
            note = _("“{value}” was read with “{mark}” as the decimal mark, as in line {line}; lines like it: {n}.")
            example = shown(self._waiting[0].typed.text)
            notes.append(note.format(value=example, mark=decimal, line=self._marks[decimal], n=len(self._waiting)))
        return ReadingsFile(
            name=name,
            encoding=self._layout.encoding,
            separator=self._layout.separator,
            accepted=tuple(sorted(self._accepted, key=lambda r: r.line)),
            refused=tuple(sorted(self._refused, key=lambda r: r.line)),
            notes=tuple(notes),
        )

    def _cell(self, row: Row, column: str) -> str:
        position = self._layout.columns.get(column)
        return row.cells[position].strip() if position is not None and position < len(row.cells) else ""

    def _unit(self, row: Row) -> LengthUnit | None:
        text = self._cell(row, "unit")
        if not text:
            return None
        unit = UNITS.get(text.casefold())
        if unit is None:
            raise _Refusal("unit", text, _("The unit is µm or mil."))
        if self._layout.unit and unit != self._layout.unit:
            raise _Refusal("unit", text, _("The heading names another unit."))
        return unit

    def _panel(self, row: Row) -> str | None:
        text = self._cell(row, "panel")
        if not text:
            return None
        key = self._panel_key(text)
        if key is None:
            raise _Refusal("panel", text, _("There is no such panel on this car."))
        return key

    def _time(self, row: Row) -> datetime | None:
        text = self._cell(row, "time")
        if not text:
            return None
        try:
            at = _moment(text)
        except ValueError:
            raise _Refusal("time", text, _("Write date and time as 2031-05-05 18:10.")) from None
        if at.tzinfo is None:
            if self._zone is None:
                raise _Refusal("time", text, _("The time has no offset, and none was chosen for this file."))
            at = at.replace(tzinfo=self._zone)
        return at


def _moment(text: str) -> datetime:
    """ISO 8601 with a time of day, or day.month.year and a time. ValueError for anything else."""
    if found := _DAY_FIRST.fullmatch(text):
        day, month, year, clock = found.groups()
        text = f"{year}-{int(month):02d}-{int(day):02d} {clock.zfill(len('00:00') if clock.count(':') == 1 else 8)}"
    if ":" not in text:
        raise ValueError(text)
    return datetime.fromisoformat(text)


__all__ = ["BadFile", "ImportedReading", "ReadingsFile", "RefusedLine", "read_file"]
