"""Tables: a quiet head, hairlines between rows, the head repeated on every page, long cells split across pages."""

from __future__ import annotations

from typing import Any

from reportlab.platypus import Flowable, Paragraph, Table, TableStyle

from detailbench.report.content.blocks import Column, Grid
from detailbench.report.content.parts import Text, plain
from detailbench.report.pages.letters import BOLD, marked_up, markup
from detailbench.report.pages.look import CELL, CELL_RIGHT, GREY, GROUP, HAIR, HAIRLINE, HEAD, HEAD_RIGHT


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
            rows.append([_cell(c, text) for c, text in zip(grid.columns, row, strict=True)])
            looks.append(("LINEBELOW", (0, len(rows) - 1), (-1, len(rows) - 1), HAIRLINE, HAIR))
    shares = sum(c.share for c in grid.columns)
    made = Table(
        rows,
        colWidths=[room * c.share / shares for c in grid.columns],
        repeatRows=1,
        hAlign="LEFT",
        splitInRow=1,
        spaceBefore=2,
        spaceAfter=7,
    )
    # the library's own font would otherwise be named for cells that hold no text
    made.setStyle(TableStyle([("FONT", (0, 0), (-1, -1), CELL.fontName, CELL.fontSize, CELL.leading), *looks]))
    return made


def _head(column: Column) -> Paragraph:
    return Paragraph(marked_up(column.title), HEAD_RIGHT if column.right else HEAD)


def _cell(column: Column, text: Text) -> Paragraph:
    return Paragraph(markup(text), CELL_RIGHT if column.right else CELL)
