"""From the bytes of a readings file to numbered rows of cells: encoding, separator, column names, quotes."""

from __future__ import annotations

import codecs
import csv
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from detailbench.basics.errors import BadFile
from detailbench.basics.numbers import LengthUnit, read_typed
from detailbench.basics.texts import _

SEPARATORS = (";", "\t", "|", ",")
COLUMNS = ("value", "unit", "clear", "angle", "panel", "place", "time", "note")
MOST_BYTES = 64 * 2**20
_JOIN_LINES = 20  # a quoted note may run over this many lines; an open quote swallows no more

_LINE_ENDS = re.compile(r"\r\n|\n|\r")
_COLUMN = re.compile(r"(value|unit|clear|angle|panel|place|time|note)(?:[\s_,/\[(]*(um|\u00b5m|\u03bcm|mils?)[\])]?)?")
_SEPARATOR_HINT = re.compile(r"(?i)sep=.$")


@dataclass(frozen=True)
class Layout:
    """How a file is laid out. ``columns``: name → position; ``unit`` that of the header, if it names one;
    ``clear_unit`` of the clear coat's column the same; ``separator`` "" for a single column; ``first_row`` index of
    the first line that is not a heading."""

    encoding: str
    separator: str
    columns: dict[str, int]
    width: int
    unit: LengthUnit | None
    first_row: int
    clear_unit: LengthUnit | None = None


@dataclass(frozen=True)
class Row:
    """One record: the number of its first line (from 1) and its cells; ``damage`` says why it has none."""

    line: int
    cells: Sequence[str]
    damage: str = ""


def lines_of(data: bytes, name: str) -> tuple[list[str], str]:
    """The lines and the encoding found: a byte order mark, else UTF-16 by its empty bytes, else UTF-8, else
    Windows-1252. BadFile for an empty, huge or undecodable file."""
    if len(data) > MOST_BYTES:
        raise BadFile(_("“{name}” is too large to be a list of readings.").format(name=name), name=name)
    encoding = _encoding(data)
    try:
        text = data.decode(encoding, errors="replace" if encoding.startswith("utf-16") else "strict")
    except UnicodeDecodeError as problem:
        raise BadFile(
            _("“{name}” is not text: save it as CSV in UTF-8 and try again.").format(name=name), name=name
        ) from problem
    text = text.removeprefix("\ufeff")
    if not text.strip():
        raise BadFile(_("“{name}” is empty.").format(name=name), name=name)
    return _LINE_ENDS.split(text), encoding


def _encoding(data: bytes) -> str:
    if data.startswith(codecs.BOM_UTF8):
        return "utf-8-sig"
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return "utf-16"
    start = data[:4096]
    for offset, found in ((1, "utf-16-le"), (0, "utf-16-be")):
        half = start[offset::2]
        if len(half) >= 2 and half.count(0) > 0.5 * len(half):
            return found
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8"


def layout_of(lines: Sequence[str], encoding: str, name: str) -> Layout:
    """Separator and columns from the first line that holds anything. BadFile when there is no value column, or one
    column stands twice."""
    filled = (i for i, line in enumerate(lines) if line.strip() and not _SEPARATOR_HINT.match(line.strip()))
    first = next(filled, 0)
    heading = lines[first]
    for separator in SEPARATORS:
        names = [_column(cell) for cell in heading.split(separator)]
        if any(known and known[0] == "value" for known in names):
            return _with_heading(names, separator if len(names) > 1 else "", encoding, first, name, heading)
    bare = heading.strip()
    typed = read_typed(bare)
    if not any(s in heading for s in ";\t|") and (typed.value is not None or typed.question or bare[0].isdigit()):
        return Layout(encoding, "", {"value": 0}, 1, None, first)
    raise BadFile(
        _("“{name}”, line {line}: no column is named “value”. The first line names the columns: {columns}.").format(
            name=name, line=first + 1, columns=", ".join(COLUMNS)
        ),
        name=name,
        line=first + 1,
        value=shown(heading),
    )


def _with_heading(
    names: list[tuple[str, str] | None], separator: str, encoding: str, first: int, name: str, heading: str
) -> Layout:
    columns: dict[str, int] = {}
    units: dict[str, LengthUnit] = {}
    for position, known in enumerate(names):
        if known is None:
            continue
        column, named_unit = known
        if column in columns:
            raise BadFile(
                _("“{name}”: the column “{column}” stands there twice.").format(name=name, column=column),
                name=name,
                line=first + 1,
                column=column,
                value=shown(heading),
            )
        columns[column] = position
        if named_unit:
            units[column] = "mil" if named_unit.startswith("mil") else "um"
    return Layout(encoding, separator, columns, len(names), units.get("value"), first + 1, units.get("clear"))


def _column(cell: str) -> tuple[str, str] | None:
    """Column name and unit of one heading; None for a column that is not ours."""
    found = _COLUMN.fullmatch(cell.strip().strip('"').strip().casefold())
    if not found or (found[2] and found[1] not in ("value", "clear")):
        return None
    return found[1], found[2] or ""


def rows_of(lines: Sequence[str], layout: Layout) -> Iterator[Row]:
    """Records after the heading, empty ones left out. A quoted cell may run over lines; an unclosed quote costs its
    own line only."""
    at = layout.first_row
    while at < len(lines):
        line, number = lines[at], at + 1
        at += 1
        if not line.strip():
            continue
        if "\x00" in line:
            yield Row(number, (), _("The line holds empty bytes: the file is damaged here."))
            continue
        if not layout.separator:
            yield Row(number, (line.strip().strip('"'),))
            continue
        if '"' not in line:
            cells = line.split(layout.separator)
        else:
            if line.count('"') % 2:
                closing = _closing(lines, at)
                if closing is None:
                    yield Row(number, (), _("A quotation mark is not closed in this line."))
                    continue
                line = "\n".join([line, *lines[at : closing + 1]])
                at = closing + 1
            cells = next(csv.reader([line], delimiter=layout.separator))
        if any(cell.strip() for cell in cells):
            yield Row(number, cells)


def _closing(lines: Sequence[str], start: int) -> int | None:
    """Index of the line that closes a quote opened before ``start``; None where none does soon."""
    for index in range(start, min(start + _JOIN_LINES, len(lines))):
        if "\x00" in lines[index]:
            return None
        if lines[index].count('"') % 2:
            return index
    return None


def shown(text: str) -> str:
    """``text`` fit for a sentence: one line, control characters named, at most 60 characters."""
    safe = "".join(c if c.isprintable() else f"\\x{ord(c):02x}" for c in text.strip())
    return safe if len(safe) <= 60 else safe[:59] + "…"
