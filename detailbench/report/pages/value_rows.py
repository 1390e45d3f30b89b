"""Panels in rows above one axis of thickness, as vectors in grey: places with their mean, or changes with intervals."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from statistics import median
from typing import Any

from reportlab.lib.colors import HexColor
from reportlab.platypus import Flowable

from detailbench.basics.even_marks import thickness_ticks
from detailbench.basics.texts import _
from detailbench.report.content.blocks import ValueMark, ValueRow, ValueRows
from detailbench.report.content.parts import Figure, Text, Worked, plain
from detailbench.report.pages.letters import REGULAR, draw, fitted, width
from detailbench.report.pages.look import GREY, HAIR, HAIRLINE, INK, PAPER

SIZE, SMALL = 7.6, 6.8
REF = 5.8
LINE = 9.6
ROW = 15.0
HEAD = 11.0
AXIS = 24.0
NAME = 96.0  # points for a panel's name, which runs on into a second line
GAP = 8.0
BESIDE_SHARE = 0.36  # of the width, at most, for the figures in writing
BAND = HexColor("#e4e8eb")
DOT, POINT, CROSS = 1.5, 2.1, 1.6
RAISED = 3.0  # places above the middle of their row, mean and interval below it
SPREAD = 1.1  # neighbours step aside by turns, so that two like values show as two
BEYOND_UM = 40.0  # an interval's end farther out than this from all values runs off the axis


@dataclass(frozen=True)
class Scale:
    """From µm to points across the page."""

    low_um: float
    high_um: float
    left: float
    wide: float

    def x(self, value_um: float) -> float:
        return self.left + self.wide * (value_um - self.low_um) / (self.high_um - self.low_um)

    def holds(self, value_um: float) -> bool:
        return self.low_um <= value_um <= self.high_um

    def clipped(self, value_um: float) -> float:
        return min(max(value_um, self.low_um), self.high_um)


def scale_of(block: ValueRows, left: float, wide: float) -> Scale:
    """The axis: all values but those far off, intervals as far as they are near, the zero line where there is one."""
    values = [_um(f) for m in _marks(block) if m.kind not in ("band", "interval") for f in m.at]
    middle = median(values)
    near = [v for v in values if block.far_um is None or abs(v - middle) <= block.far_um] or [middle]
    near += [0.0] if block.zero else []
    low, high = min(near), max(near)
    ends = [_um(f) for m in _marks(block) if m.kind == "interval" for f in m.at]
    ends += [v for m in _marks(block) if m.kind == "band" for v in _about(m)]
    inside = [v for v in ends if low - BEYOND_UM <= v <= high + BEYOND_UM]
    low, high = min([low, *inside]), max([high, *inside])
    room = max(block.room_um, 0.04 * (high - low))
    return Scale(low - room, high + room, left, wide)


def _marks(block: ValueRows) -> Iterator[ValueMark]:
    return (m for row in block.rows for m in row.marks)


def _um(figure: Figure) -> float:
    return float(figure.value)


def _about(mark: ValueMark) -> tuple[float, float]:
    middle, reach = (_um(f) for f in mark.at)
    return middle - reach, middle + reach


def name_lines(name: str) -> tuple[str, ...]:
    """A panel's name in one line or two; the second is cut where it is still too long."""
    lines = [""]
    for word in name.split():
        longer = f"{lines[-1]} {word}".strip()
        if width(longer, REGULAR, SIZE) <= NAME or not lines[-1] or len(lines) == 2:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(fitted(line, REGULAR, SIZE, NAME) for line in lines)


def _refs(text: Text) -> str:
    refs = (p.trace.ref for p in text if isinstance(p, Figure) and isinstance(p.trace, Worked))
    return " ".join(dict.fromkeys(refs))


class ValueRowsDrawn(Flowable):  # type: ignore[misc]
    """Names to the left, figures in writing to the right, between them the axis all rows share; a key beneath."""

    def __init__(self, block: ValueRows) -> None:
        super().__init__()
        self.block = block

    def wrap(self, available: float, _height: float) -> tuple[float, float]:
        self.width = available
        beside = max(
            width(plain(r.beside), REGULAR, SMALL) + 4 + width(_refs(r.beside), REGULAR, REF) for r in self.block.rows
        )
        self.beside = min(max(beside, width(plain(self.block.head), REGULAR, SMALL)), BESIDE_SHARE * available)
        self.scale = scale_of(self.block, NAME + GAP, available - NAME - self.beside - 2 * GAP)
        self.names = [name_lines(plain(r.name)) for r in self.block.rows]
        self.tall = [max(ROW, LINE * len(n) + 3) for n in self.names]
        words: list[tuple[str, str]] = [*self.block.key]
        if any(not self.scale.holds(_um(f)) for m in _marks(self.block) if m.kind != "band" for f in m.at):
            words.append(("beyond", _("beyond the axis")))
        self.key = _key_lines(words, available)
        self.height = HEAD + sum(self.tall) + AXIS + LINE * 1.25 * len(self.key) + 2
        return self.width, self.height

    def draw(self) -> None:
        canvas = self.canv
        canvas.saveState()
        top = self.height
        canvas.setFillColor(GREY)
        room = fitted(plain(self.block.head), REGULAR, SMALL, self.width - NAME - GAP)
        draw(canvas, self.width, top - SMALL, room, REGULAR, SMALL, "right")
        foot = top - HEAD - sum(self.tall)
        self._bands(top - HEAD)
        self._axis(top - HEAD, foot)
        top -= HEAD
        for i, row in enumerate(self.block.rows):
            if not row.joins:
                canvas.setStrokeColor(HAIR)
                canvas.setLineWidth(HAIRLINE)
                canvas.line(0, top, self.width, top)
            self._row(row, self.names[i], top, self.tall[i])
            top -= self.tall[i]
        top -= AXIS
        for line in self.key:
            for x, kind, words in line:
                _key_sign(canvas, kind, x, top - LINE / 2)
                canvas.setFillColor(GREY)
                draw(canvas, x + LINE * 1.6, top - LINE / 2 - SMALL * 0.35, words, REGULAR, SMALL)
            top -= LINE * 1.25
        canvas.restoreState()

    def _bands(self, top: float) -> None:
        canvas = self.canv
        for row, tall in zip(self.block.rows, self.tall, strict=True):
            for mark in row.marks:
                if mark.kind == "band":
                    low, high = (self.scale.x(self.scale.clipped(v)) for v in _about(mark))
                    canvas.setFillColor(BAND)
                    canvas.rect(low, top - tall, high - low, tall, stroke=0, fill=1)
            top -= tall

    def _axis(self, top: float, foot: float) -> None:
        canvas, scale = self.canv, self.scale
        canvas.setLineWidth(HAIRLINE)
        canvas.setStrokeColor(HAIR)
        for um, words in thickness_ticks(scale.low_um, scale.high_um):
            x = scale.x(um)
            canvas.setDash(0.6, 1.6)
            canvas.line(x, foot, x, top)
            canvas.setDash()
            canvas.line(x, foot, x, foot - 2.5)
            canvas.setFillColor(GREY)
            draw(canvas, x, foot - 10, words, REGULAR, SMALL, "middle")
        if self.block.zero:
            canvas.setStrokeColor(INK)
            canvas.setLineWidth(0.8)
            canvas.line(scale.x(0.0), foot - 2.5, scale.x(0.0), top)
        canvas.setStrokeColor(GREY)
        canvas.setLineWidth(0.5)
        canvas.line(scale.left, foot, scale.left + scale.wide, foot)
        canvas.setFillColor(GREY)
        axis = fitted(plain(self.block.axis), REGULAR, SMALL, self.width - scale.left)
        draw(canvas, scale.left, foot - 19, axis, REGULAR, SMALL)

    def _row(self, row: ValueRow, names: tuple[str, ...], top: float, tall: float) -> None:
        canvas, middle = self.canv, top - tall / 2
        canvas.setFillColor(INK)
        for i, line in enumerate(names):
            draw(canvas, 0, middle + LINE * (len(names) - 1) / 2 - LINE * i - SIZE * 0.35, line, REGULAR, SIZE)
        refs = _refs(row.beside)
        wide = width(refs, REGULAR, REF)
        canvas.setFillColor(GREY)
        draw(canvas, self.width, middle - SMALL * 0.35, refs, REGULAR, REF, "right")
        canvas.setFillColor(INK)
        words = fitted(plain(row.beside), REGULAR, SMALL, self.beside - wide - 4)
        draw(canvas, self.width - wide - 4, middle - SMALL * 0.35, words, REGULAR, SMALL, "right")
        places = any(m.kind in ("dot", "open", "cross") for m in row.marks)
        under = middle - RAISED if places else middle
        for i, mark in enumerate(row.marks):
            if mark.kind in ("dot", "open", "cross"):
                self._at(mark, middle + RAISED + (SPREAD if i % 2 else -SPREAD))
            elif mark.kind == "interval":
                self._interval(mark, under)
            elif mark.kind != "band":
                self._at(mark, under)

    def _at(self, mark: ValueMark, y: float) -> None:
        value = _um(mark.at[0])
        if self.scale.holds(value):
            sign(self.canv, mark.kind, self.scale.x(value), y)
        else:
            up = value > self.scale.high_um
            _arrow(self.canv, self.scale.x(self.scale.clipped(value)), y, 1 if up else -1)

    def _interval(self, mark: ValueMark, y: float) -> None:
        low, high = (_um(f) for f in mark.at)
        if low > self.scale.high_um or high < self.scale.low_um:
            return
        canvas = self.canv
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.7)
        ends = [self.scale.x(self.scale.clipped(v)) for v in (low, high)]
        canvas.line(ends[0], y, ends[1], y)
        for value, x, way in ((low, ends[0], -1), (high, ends[1], 1)):
            if self.scale.holds(value):
                canvas.line(x, y - 1.8, x, y + 1.8)
            else:
                _arrow(canvas, x, y, way)


def sign(canvas: Any, kind: str, x: float, y: float) -> None:
    """One sign with its middle at x, y."""
    canvas.setStrokeColor(INK)
    canvas.setFillColor(INK)
    canvas.setLineWidth(0.7)
    if kind in ("dot", "open"):
        canvas.setFillColor(PAPER if kind == "open" else INK)
        canvas.circle(x, y, DOT, stroke=1 if kind == "open" else 0, fill=1)
    elif kind in ("point", "hollow"):
        canvas.setFillColor(PAPER if kind == "hollow" else INK)
        canvas.circle(x, y, POINT, stroke=1, fill=1)
    elif kind == "cross":
        canvas.line(x - CROSS, y - CROSS, x + CROSS, y + CROSS)
        canvas.line(x - CROSS, y + CROSS, x + CROSS, y - CROSS)
    elif kind == "mean":
        canvas.setLineWidth(1.4)
        canvas.line(x, y - 2.8, x, y + 2.8)


def _arrow(canvas: Any, x: float, y: float, way: int) -> None:
    """A small head at the rim; ``way`` 1 points to the thicker side."""
    canvas.setFillColor(INK)
    path = canvas.beginPath()
    path.moveTo(x, y)
    path.lineTo(x - 3.2 * way, y + 1.8)
    path.lineTo(x - 3.2 * way, y - 1.8)
    path.close()
    canvas.drawPath(path, stroke=0, fill=1)


def _key_sign(canvas: Any, kind: str, x: float, y: float) -> None:
    middle = x + LINE * 0.6
    if kind == "band":
        canvas.setFillColor(BAND)
        canvas.rect(x, y - 3.4, LINE * 1.2, 6.8, stroke=0, fill=1)
    elif kind == "beyond":
        _arrow(canvas, middle + 1.6, y, 1)
    elif kind == "interval":
        canvas.setStrokeColor(INK)
        canvas.setLineWidth(0.7)
        canvas.line(x, y, x + LINE * 1.2, y)
        for end in (x, x + LINE * 1.2):
            canvas.line(end, y - 1.8, end, y + 1.8)
    else:
        sign(canvas, kind, middle, y)


def _key_lines(words: list[tuple[str, str]], room: float) -> list[list[tuple[float, str, str]]]:
    """The signs with their words, as many in a line as fit."""
    lines: list[list[tuple[float, str, str]]] = []
    x = room
    for kind, text in words:
        need = LINE * 1.6 + width(text, REGULAR, SMALL)
        if not lines or x + need > room:
            lines.append([])
            x = 0.0
        lines[-1].append((x, kind, fitted(text, REGULAR, SMALL, room - LINE * 1.6)))
        x += need + 10.0
    return lines
