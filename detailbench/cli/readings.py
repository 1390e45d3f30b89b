"""Readings from a file into a job."""

from __future__ import annotations

from argparse import Namespace
from functools import cache

from detailbench.basics.clock import SystemClock
from detailbench.basics.errors import BadFile, BadInput, RecordTrouble
from detailbench.basics.numbers import LengthUnit, PlausibleRange
from detailbench.basics.texts import _
from detailbench.body.names import type_ahead
from detailbench.cli import TROUBLE
from detailbench.cli.records import job_named
from detailbench.cli.words import workshop_of
from detailbench.findings.settings import plausible_range_um
from detailbench.moves.bench import Bench
from detailbench.moves.readings_file import MOST_LINES, ImportedReading, ImportReadings, as_line
from detailbench.record.store import DATABASE
from detailbench.thickness.csv_import import ReadingsFile, read_file


def panel_named(words: str) -> str | None:
    """The one panel these words name, by key or by name; None when there is none or more than one."""
    found = type_ahead(words)
    exact = [key for key in found if key == words.strip()]
    if exact:
        return exact[0]
    return found[0] if len(found) == 1 else None


def take_in(words: Namespace) -> int:
    """Take the accepted lines as one move; say every refused line. Exit code 1 when a line was refused."""
    folder = workshop_of(words)
    if not (folder / DATABASE).is_file():
        raise RecordTrouble(_("There is no workshop in {folder}.").format(folder=folder))
    try:
        content = words.file.read_bytes()
    except OSError as error:
        raise BadFile(_("{name} cannot be read ({why}).").format(name=words.file, why=error.strerror)) from error
    bench = Bench(folder, SystemClock(), read_only=words.look_only)
    try:
        job = job_named(bench.shop(), words.job)
        read = read_readings(bench, content, words.file.name, words.unit)
        lines = lines_of(read, words.panel)
        for refused in read.refused:
            print(refused.sentence)
        for note in read.notes:
            print(note)
        if not words.look_only and lines:
            bench.do(ImportReadings(job.id, lines, words.file.name))
        said = (
            _("{n} readings can be taken, {r} lines refused.")
            if words.look_only
            else _("{n} readings taken, {r} refused.")
        )
        print(said.format(n=len(lines), r=len(read.refused)))
    finally:
        bench.close()
    return TROUBLE if read.refused else 0


def read_readings(bench: Bench, content: bytes, name: str, unit: LengthUnit) -> ReadingsFile:
    """A readings file as this shop reads it: its usual range, its time zone."""
    low, high = plausible_range_um(bench.shop())
    return read_file(
        content,
        panel_key=cache(panel_named),  # a file says the same few names again and again
        name=name,
        unit_default=unit,
        zone=bench.clock.now().tzinfo,
        plausible=PlausibleRange(low, high),
        most_lines=MOST_LINES,
    )


def lines_of(read: ReadingsFile, panel_words: str | None) -> tuple[ImportedReading, ...]:
    """The accepted lines as a move takes them. Raises BadInput for a line that names no panel where none is given."""
    default = None
    if panel_words:
        default = panel_named(panel_words)
        if default is None:
            raise BadInput(_("“{words}” does not name one panel.").format(words=panel_words), field="panel")
    lines = []
    for line in read.accepted:
        panel = line.panel or default
        if panel is None:
            raise BadInput(_("Line {n} names no panel; say which with --panel.").format(n=line.line), field="panel")
        lines.append(as_line(line, panel))
    return tuple(lines)
