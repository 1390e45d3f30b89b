"""Reading a report back: every piece of text in a content, every figure, and the text of a PDF."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass
from decimal import Decimal
from typing import Any

import pypdfium2

from detailbench.basics.workings import Working
from detailbench.findings.plan import run_minutes
from detailbench.findings.settings import setting
from detailbench.record.past import PutRight
from detailbench.record.picture import JobPicture
from detailbench.report import DocumentContent
from detailbench.report.content.parts import Counted, Figure, Recorded, Text, Typed, Worked, plain
from detailbench.report.content.photographs import days_late
from detailbench.report.content.refs import NumberedWorking


def texts(thing: Any) -> Iterator[Text]:
    """Every text of a content, wherever it stands."""
    if isinstance(thing, tuple) and thing and all(isinstance(p, str | Figure | Typed) for p in thing):
        yield thing
    elif isinstance(thing, NumberedWorking):
        return
    elif is_dataclass(thing) and not isinstance(thing, type):
        for field in fields(thing):
            yield from texts(getattr(thing, field.name))
    elif isinstance(thing, tuple | list):
        for each in thing:
            yield from texts(each)
    elif isinstance(thing, Mapping):
        for each in thing.values():
            yield from texts(each)


def figures(content: DocumentContent) -> list[Figure]:
    """Every figure printed."""
    return [p for text in texts(content) for p in text if isinstance(p, Figure)]


def said_in(content: Any) -> str:
    """All the text of a content (or a part of one) as one string."""
    return "\n".join(plain(t) for t in texts(content)).replace("\u00a0", " ")


def workings(content: DocumentContent) -> dict[str, Working]:
    """The appendix by reference."""
    found: dict[str, Working] = {}
    if content.appendix is None:
        return found
    for block in content.appendix.blocks:
        for numbered in getattr(block, "numbered", ()):
            found[numbered.ref] = numbered.working
    return found


def in_working(working: Working, at: str) -> Any:
    """The value at a path of a working's results, else of its inputs."""
    for whole in (working.results, working.inputs):
        try:
            return _at(whole, at.split("/"))
        except (KeyError, IndexError, ValueError, StopIteration):
            continue
    raise AssertionError(f"{working.name} has no {at}")


def _at(value: Any, path: list[str]) -> Any:
    if not path:
        return value
    if isinstance(value, list):
        if path[0].isdigit():
            return _at(value[int(path[0])], path[1:])
        return _at(next(v for v in value if v["key"] == path[0]), path[1:])
    return _at(value[path[0]], path[1:])


def traced_value(
    figure: Figure, picture: JobPicture, appendix: Mapping[str, Working], now: Any, past: Sequence[PutRight] = ()
) -> Any:
    """What a figure's trace leads to; ``past``: the entries put right that the content was made with."""
    trace = figure.trace
    if isinstance(trace, Counted):
        return len(set(trace.of))
    if isinstance(trace, Worked):
        values = [in_working(appendix[trace.ref], at) for at in trace.at]
        value = values[0] if len(values) == 1 else sum(values) / len(values)
        if trace.per:
            value = value / in_working(appendix[trace.ref], trace.per)
        return value * trace.times
    if trace.table == "journal":
        return _journalled(trace, past)
    return _recorded(trace, picture, now, past)


def _journalled(trace: Recorded, past: Sequence[PutRight]) -> Any:
    """A time of the journal, or what a row held (``was:``, ``now:``, ``row:`` and the field)."""
    n, *of = trace.ids
    found = [c for c in past if str(c.n) == n and (not of or [c.table, c.id] == of)]
    if trace.field == "at":
        return found[0].at.isoformat()
    which, name = trace.field.split(":")
    if which == "row":
        return found[0].row[name]
    return getattr(next(c for c in found if c.field == name), which)


def _recorded(trace: Recorded, picture: JobPicture, now: Any, past: Sequence[PutRight] = ()) -> Any:
    if trace.table == "setting":
        return setting(picture.shop, trace.ids[0])
    if trace.table == "shop":
        return getattr(picture.shop, trace.field)
    if not _there(picture, trace.table, trace.ids[0]):  # struck out: the journal still has its row
        return next(c.row[trace.field] for c in past if c.id == trace.ids[0])
    things = [_thing(picture, trace.table, i) for i in trace.ids]
    if trace.field.startswith("span "):
        first, last = (getattr(things[0], name) for name in trace.field.split()[1:])
        return str(last - first)
    if trace.field == "minutes spent":
        return sum(run_minutes(t, now) or 0.0 for t in things)
    if trace.field == "days later":
        if trace.table == "evidence":
            photo = next(p for p in picture.photos if p.evidence_id == things[0].id)
            return days_late(things[0].taken_at, photo.entered_at)
        return days_late(things[0].stated_at, things[0].entered_at)
    value = getattr(things[0], trace.field)
    if isinstance(value, Decimal):
        return float(value)
    if isinstance(value, int | float) and not isinstance(value, bool):
        return sum(getattr(t, trace.field) for t in things) * trace.times
    return value.isoformat() if hasattr(value, "isoformat") else value


def _there(picture: JobPicture, table: str, id_: str) -> bool:
    return any(t.table == table and t.id == id_ for t in _pool(picture))


def _thing(picture: JobPicture, table: str, id_: str) -> Any:
    return next(t for t in _pool(picture) if t.table == table and t.id == id_)


def _pool(picture: JobPicture) -> list[Any]:
    pools: list[Any] = [picture.job, picture.car]
    for source in (picture, picture.shop, picture.last):
        if source is None:
            continue
        for values in vars(source).values():
            if isinstance(values, tuple):
                pools += list(values)
    return pools


def pdf_text(pdf: bytes) -> str:
    """The text of a PDF as a reader gets it, one blank between words."""
    return " ".join(" ".join(pdf_pages(pdf)).split())


def pdf_pages(pdf: bytes) -> list[str]:
    """The text of every page."""
    with pypdfium2.PdfDocument(pdf) as document:
        out = []
        for page in document:
            page_text = page.get_textpage()
            out.append(page_text.get_text_range())
            page_text.close()
            page.close()
        return out


def numbers_in(words: str) -> list[str]:
    """Runs of digits with their decimal mark."""
    return re.findall(r"\d+(?:\.\d+)?", words)
