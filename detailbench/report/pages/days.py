"""The job's days: a ruler of hours for each, bars and strokes on it, then the lines in words."""

from __future__ import annotations

from typing import Any

from reportlab.platypus import CondPageBreak, Flowable, Paragraph, Spacer, Table, TableStyle

from detailbench.report.content.blocks import Day, DayLine, Days
from detailbench.report.pages.letters import BOLD, REGULAR, draw, markup
from detailbench.report.pages.look import CELL, GREY, HAIR, INK, MM, SHEET_TITLE, Paper

RULER = 15.0
WHEN, WHO = 29 * MM, 12 * MM


class Ruler(Flowable):  # type: ignore[misc]
    """The hours of a day, the same for every day of the job."""

    def __init__(self, day: Day, hours: tuple[int, int]) -> None:
        super().__init__()
        self.day, self.hours = day, hours
        self.keepWithNext = 1

    def wrap(self, available: float, _height: float) -> tuple[float, float]:
        self.width = available
        return available, RULER + 9

    def at(self, share: float) -> float:
        """Where a time of the day lies, held within the ruler."""
        low, high = self.hours
        return min(max((share * 24 - low) / (high - low), 0.0), 1.0) * self.width

    def draw(self) -> None:
        canvas, foot = self.canv, 9.0
        if self.day.here is not None:
            canvas.setFillColor(HAIR)
            left, right = (self.at(s) for s in self.day.here)
            canvas.rect(left, foot, max(right - left, 0.5), 3.2, stroke=0, fill=1)
        canvas.setStrokeColor(GREY)
        canvas.setLineWidth(0.4)
        canvas.line(0, foot, self.width, foot)
        for hour in range(self.hours[0], self.hours[1] + 1):
            x = self.at(hour / 24)
            canvas.setLineWidth(0.3)
            canvas.line(x, foot, x, foot - 2.2)
            if hour % 2 == 0:
                align = "left" if hour == self.hours[0] else "right" if hour == self.hours[1] else "middle"
                canvas.setFillColor(GREY)
                draw(canvas, x, foot - 8.2, f"{hour:02d}", REGULAR, 5.8, align)
        for line in self.day.lines:
            self._one(canvas, line, foot)

    def _one(self, canvas: Any, line: DayLine, foot: float) -> None:
        x = self.at(line.at)
        canvas.setStrokeColor(INK)
        canvas.setFillColor(INK)
        if line.end is not None:
            canvas.rect(x, foot + 4.6, max(self.at(line.end) - x, 1.0), 4.4, stroke=0, fill=1)
            return
        canvas.setLineWidth((0.5, 0.7, 1.4)[line.weight])
        canvas.line(x, foot, x, foot + (6.0, 9.0, 14.0)[line.weight])


def days(block: Days, page: Paper) -> list[Flowable]:
    """Every day, its ruler never parted from its first lines."""
    out: list[Flowable] = []
    for day in block.days:
        title = Paragraph(markup(day.title, BOLD), SHEET_TITLE)
        title.keepWithNext = 1
        rows = [[Paragraph(markup(t), CELL) for t in (line.when, line.who, line.what)] for line in day.lines]
        table = Table(rows, colWidths=[WHEN, WHO, page.room - WHEN - WHO], hAlign="LEFT", spaceBefore=1, spaceAfter=7)
        table.setStyle(
            TableStyle(
                [
                    ("FONT", (0, 0), (-1, -1), CELL.fontName, CELL.fontSize, CELL.leading),
                    ("LEFTPADDING", (0, 0), (-1, -1), 0),
                    ("TOPPADDING", (0, 0), (-1, -1), 0.6),
                    ("BOTTOMPADDING", (0, 0), (-1, -1), 0.8),
                    ("VALIGN", (0, 0), (-1, -1), "TOP"),
                ]
            )
        )
        out += [CondPageBreak(32 * MM), title, Ruler(day, block.hours), table, Spacer(0, 2)]
    return out
