"""The pieces a document's text is made of: our words, typed words, and figures that know where they come from."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from string import Formatter
from typing import TypeAlias


@dataclass(frozen=True)
class Recorded:
    """From the record: ``field`` of the thing(s) ``ids`` in ``table``; with several ids their sum; ``times``:
    multiplied. ``minutes spent`` of step_run and ``days later`` are computed from two times of the same row; in the
    table ``setting`` the ids are keys."""

    table: str
    ids: tuple[str, ...]
    field: str
    times: float = 1.0


@dataclass(frozen=True)
class Worked:
    """From the working printed as ``ref``: the value at ``at`` in its results (else its inputs), names and list keys
    joined by "/"; the mean where there are several. ``per``: divided by the value there; ``times``: multiplied."""

    ref: str
    at: tuple[str, ...]
    per: str = ""
    times: float = 1.0


@dataclass(frozen=True)
class Counted:
    """How many of these there are: ids of things, or keys of panels."""

    of: tuple[str, ...]


Trace: TypeAlias = Recorded | Worked | Counted


@dataclass(frozen=True)
class Figure:
    """A number (or time) as printed, the unrounded value behind it, and where that comes from."""

    shown: str
    value: float | int | str
    trace: Trace


@dataclass(frozen=True)
class Typed:
    """What a person typed, printed as typed."""

    text: str


Part: TypeAlias = str | Figure | Typed
Text: TypeAlias = tuple[Part, ...]
Sayable: TypeAlias = Part | Text


def text_of(said_: Sayable) -> Text:
    """A part alone, or a text, as a text."""
    return said_ if isinstance(said_, tuple) else (said_,)


def said(template: str, **parts: Sayable) -> Text:
    """Our words with parts in the places of the ``str.format`` fields of ``template``."""
    out: list[Part] = []
    for words, name, _spec, _how in Formatter().parse(template):
        if words:
            out.append(words)
        if name is not None:
            out.extend(text_of(parts[name]))
    return tuple(out)


def joined(texts: Iterable[Sayable], between: str = " ") -> Text:
    """Texts one after the other; empty ones left out."""
    out: list[Part] = []
    for each in texts:
        text = text_of(each)
        if not plain(text):
            continue
        if out:
            out.append(between)
        out.extend(text)
    return tuple(out)


def traced(sentence: str, figures: Sequence[Figure]) -> Text:
    """A finished sentence of the program with its figures found in it, in the order they stand."""
    out: list[Part] = []
    rest = sentence
    for figure in figures:
        found = re.search(rf"(?<![\d.,]){re.escape(figure.shown)}(?!\d)", rest)
        if found is None:
            continue
        out += [rest[: found.start()], figure]
        rest = rest[found.end() :]
    return tuple(p for p in (*out, rest) if p != "")


def typed(words: str) -> Text:
    """Typed words as a text; nothing where nothing was typed."""
    return (Typed(words),) if words.strip() else ()


def clipped(words: str, most: int) -> tuple[Text, bool]:
    """The beginning of typed words, cut at a space, and whether anything was cut off."""
    flat = " ".join(words.split())
    if len(flat) <= most:
        return typed(flat), False
    head = flat[: most - 1]
    at = head.rfind(" ")
    return (Typed(head[: at if at > most // 2 else None]), "…"), True


def plain(text: Sayable) -> str:
    """The text as one string, for searching and for the outline."""
    return "".join(p.shown if isinstance(p, Figure) else p.text if isinstance(p, Typed) else p for p in text_of(text))
