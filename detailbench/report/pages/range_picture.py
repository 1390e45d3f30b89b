"""The range as a picture on paper: the same boxes as on the screen, as vectors in grey."""

from __future__ import annotations

from typing import Any

from reportlab.lib.colors import Color
from reportlab.platypus import Flowable

from detailbench.basics.texts import _
from detailbench.report.content.blocks import RangePicture
from detailbench.report.content.parts import plain
from detailbench.report.pages.letters import BOLD, REGULAR, draw, fitted, width
from detailbench.report.pages.look import GREY, HAIR, HAIRLINE, INK, PALE, PAPER
from detailbench.report.pages.paths import hatch
from detailbench.trials.range_drawing import Box, Mark, Sign, range_drawing, sign_marks

SIZE = 7.6
LINE = 9.6
TITLE = 14.0
KEY_GAP = 10.0
CLOSER = 0.45  # of a panel's hatch: a sign is small


class RangeDrawn(Flowable):  # type: ignore[misc]
    """Title, one row a combination with a hairline between them, and a key to the signs that occur."""

    def __init__(self, block: RangePicture) -> None:
        super().__init__()
        self.block = block

    def wrap(self, available: float, _height: float) -> tuple[float, float]:
        self.width = available
        self.drawing = range_drawing(self.block.rungs, available, LINE, lambda words: width(words, REGULAR, SIZE))
        on_top = any(box.on_top for row in self.drawing.rows for box in row.boxes)
        self.key = _key(self.drawing.signs, available, on_top=on_top)
        self.height = TITLE + self.drawing.high + 4 + LINE * 1.3 * len(self.key)
        return self.width, self.height

    def draw(self) -> None:
        canvas = self.canv
        canvas.saveState()
        canvas.setFillColor(INK)
        title = fitted(plain(self.block.title), BOLD, SIZE, self.width)
        draw(canvas, 0, self.height - SIZE, title, BOLD, SIZE)
        top = self.height - TITLE
        for row in self.drawing.rows:
            canvas.setStrokeColor(HAIR)
            canvas.setLineWidth(HAIRLINE)
            canvas.line(0, top, self.width, top)
            for box in row.boxes:
                _box(canvas, box, top)
            top -= self.drawing.row_high
        canvas.setStrokeColor(HAIR)
        canvas.setLineWidth(HAIRLINE)
        canvas.line(0, top, self.width, top)
        top -= 4
        for line in self.key:
            for x, sign, words in line:
                if sign is None:
                    _bar(canvas, x, top - LINE * 0.6, LINE)
                else:
                    _sign(canvas, sign, x, top - LINE, LINE, on_top=False)
                canvas.setFillColor(GREY)
                draw(canvas, x + LINE * 1.3, top - LINE + 2, words, REGULAR, SIZE)
            top -= LINE * 1.3
        canvas.restoreState()


def _key(
    signs: tuple[tuple[Sign, str], ...], room: float, *, on_top: bool
) -> list[list[tuple[float, Sign | None, str]]]:
    """The signs with their words, as many in a line as fit; None: the bar under a trial on top of another."""
    lines: list[list[tuple[float, Sign | None, str]]] = []
    x = room
    told: list[tuple[Sign | None, str]] = [*signs]
    if on_top:
        told.append((None, _("on top of an earlier trial")))
    for sign, words in told:
        need = LINE * 1.3 + width(words, REGULAR, SIZE)
        if not lines or x + need > room:
            lines.append([])
            x = 0.0
        lines[-1].append((x, sign, words))
        x += need + KEY_GAP
    return lines


def _box(canvas: Any, box: Box, top: float) -> None:
    """One box of a row whose upper edge is at ``top``."""
    low = top - box.y - box.high
    if box.kind in ("column", "thread"):
        canvas.setStrokeColor(HAIR if box.kind == "column" else GREY)
        canvas.setLineWidth(HAIRLINE if box.kind == "column" else 1.1)
        canvas.line(box.x, low, box.x, low + box.high)
    elif box.kind == "step":
        canvas.setFillColor(INK)
        canvas.rect(box.x, low, box.wide, box.high, stroke=0, fill=1)
    elif box.kind in ("sign", "trial"):
        if box.sign is not None:
            _sign(canvas, box.sign, box.x, low, box.wide, on_top=box.on_top)
    elif box.kind == "number":
        canvas.setFillColor(INK)
        draw(canvas, box.x + box.wide / 2, low + (box.high - SIZE) / 2 + 1.4, box.words, REGULAR, SIZE, "middle")
    elif box.kind in ("name", "words"):
        canvas.setFillColor(INK if box.kind == "name" else GREY)
        draw(canvas, box.x, low + 2.2, fitted(box.words, REGULAR, SIZE, box.wide), REGULAR, SIZE)


def _sign(canvas: Any, sign: Sign, x: float, low: float, side: float, *, on_top: bool) -> None:
    """A sign in a square; one on top of another place has a line under it."""
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.8)
    for mark in sign_marks(sign):
        _mark(canvas, mark, x, low, side)
    if on_top:
        _bar(canvas, x, low + side * 0.01, side)


def _bar(canvas: Any, x: float, y: float, side: float) -> None:
    """The line under a sign that says it stands on a cut."""
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(1.2)
    canvas.line(x + side * 0.05, y, x + side * 0.95, y)


def _mark(canvas: Any, mark: Mark, x: float, low: float, side: float) -> None:
    middle = x + mark.x * side, low + (1 - mark.y) * side
    if mark.kind == "line":
        canvas.line(*middle, x + mark.x2 * side, low + (1 - mark.y2) * side)
    elif mark.kind == "text":
        canvas.setFillColor(INK)
        draw(canvas, middle[0], middle[1] - side * 0.28, mark.text, BOLD, side * 0.75, "middle")
    else:
        reach = mark.r * side
        path = canvas.beginPath()
        if mark.kind == "disc":
            path.circle(*middle, reach)
            box = (middle[0] - reach, middle[1] - reach, middle[0] + reach, middle[1] + reach)
        else:
            box = (middle[0], middle[1] - reach, middle[0] + reach, middle[1])
            path.rect(box[0], box[1], reach, reach)
        ground: Color = INK if mark.fill == "solid" else PAPER if mark.fill == "" else PALE
        canvas.setFillColor(ground)
        canvas.drawPath(path, stroke=1, fill=1)
        if mark.fill and mark.fill != "solid":
            hatch(canvas, path, box, mark.fill, INK, closer=CLOSER)
