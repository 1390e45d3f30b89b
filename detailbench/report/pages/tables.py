"""Tables: a quiet head, hairlines between rows, the head repeated on every page, long cells cut into rows."""

from __future__ import annotations

from typing import Any

from reportlab.platypus import Flowable, Paragraph, Table, TableStyle

from detailbench.report.content.blocks import Column, Grid
from detailbench.report.content.parts import Figure, Part, Text, Typed, plain
from detailbench.report.pages.letters import BOLD, marked_up, markup
from detailbench.report.pages.look import CELL, CELL_RIGHT, GREY, GROUP, HAIR, HAIRLINE, HEAD, HEAD_RIGHT

LINES = 50  # a cell holds at most this many lines; what is longer goes on in a row beneath


def table(grid: Grid, room: float) -> Flowable:
    """A grid as a table ``room`` points wide."""
    rows: list[list[Any]] = [[_head(c) for c in grid.columns]]
    looks: list[tuple[Any, ...]] = [
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), 5),
        ("RIGHTPADDING", (-1, 0), (-1, -1), 0),
        ("TOPPADDING", (0, 0), (-1, -1), 1.4),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 2),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("VALIGN", (0, 0), (-1, 0), "BOTTOM"),
        ("LINEBELOW", (0, 0), (-1, 0), 0.6, GREY),
    ]
    looks += [("RIGHTPADDING", (i, 0), (i, -1), 11) for i, c in enumerate(grid.columns) if c.right]
    for group in grid.groups:
        if plain(group.title):
            at = len(rows)
            rows.append([Paragraph(markup(group.title, BOLD), GROUP), *([""] * (len(grid.columns) - 1))])
            looks += [
                ("SPAN", (0, at), (-1, at)),
                ("TOPPADDING", (0, at), (-1, at), 4),
                ("NOSPLIT", (0, at), (-1, at + 1)),
            ]
        for row in group.rows:
            rows += _cells(grid, row, room)
            looks.append(("LINEBELOW", (0, len(rows) - 1), (-1, len(rows) - 1), HAIRLINE, HAIR))
    shares = sum(c.share for c in grid.columns)
    made = Table(
        rows,
        colWidths=[room * c.share / shares for c in grid.columns],
        repeatRows=1,
        hAlign="LEFT",
        spaceBefore=2,
        spaceAfter=7,
    )
    # the library's own font would otherwise be named for cells that hold no text
    made.setStyle(TableStyle([("FONT", (0, 0), (-1, -1), CELL.fontName, CELL.fontSize, CELL.leading), *looks]))
    return made


def _cells(grid: Grid, row: tuple[Text, ...], room: float) -> list[list[Paragraph]]:
    """A row, or as many as keep every cell lower than a page: nothing typed is too long for a table."""
    shares = sum(c.share for c in grid.columns)
    cut = [pieces(t, _letters(room * c.share / shares)) for c, t in zip(grid.columns, row, strict=True)]
    deep = max(len(p) for p in cut)
    return [[_cell(c, p[i] if i < len(p) else ()) for c, p in zip(grid.columns, cut, strict=True)] for i in range(deep)]


def _letters(wide: float) -> int:
    """How many letters, wide ones even, surely fit into a cell of this width without filling a page."""
    return max(20, int((wide - 5) / CELL.fontSize) * LINES)


def pieces(text: Text, most: int) -> list[Text]:
    """A text cut into pieces of at most ``most`` letters, at blanks where there are any."""
    out: list[list[Part]] = [[]]
    room = most
    for part in text:
        words = plain((part,))
        while len(words) > room:
            if isinstance(part, Figure):
                break
            at = words.rfind(" ", 0, room) + 1 or room
            out[-1].append(Typed(words[:at]) if isinstance(part, Typed) else words[:at])
            words = words[at:]
            out.append([])
            room = most
        if len(words) > room:
            out.append([])
            room = most
        out[-1].append(part if isinstance(part, Figure) else Typed(words) if isinstance(part, Typed) else words)
        room -= len(words)
    return [tuple(p) for p in out]


def _head(column: Column) -> Paragraph:
    return Paragraph(marked_up(column.title), HEAD_RIGHT if column.right else HEAD)


def _cell(column: Column, text: Text) -> Paragraph:
    return Paragraph(markup(text), CELL_RIGHT if column.right else CELL)
