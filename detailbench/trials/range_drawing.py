"""The range as a picture: where everything lies and what is written there. Screen and print draw the same boxes.

Lengths are in the caller's unit (dots, points); y runs down from the top of each row. Signs are told apart by shape
and hatch, and each is said in words too: it reads in grey.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _

Sign = Literal["works", "hazy", "trails", "failed", "unknown", "forbidden", "hidden", "stopped", "waits"]
BoxKind = Literal["number", "sign", "name", "words", "trial", "column", "thread", "step", "next"]
# in heights of a line
NAME_LEAST = 14.0  # narrower, names and columns do not fit side by side
PITCH = (1.5, 3.2)  # of the columns
MOST_MARKS = 4  # in the narrow picture; earlier trials stand in the words


@dataclass(frozen=True)
class Fell:
    """A trial where it fell. ``order``: its place among the trials shown, from 0; ``number``: its number in the group;
    ``cut_row``: the row whose place it refines, None on a fresh place."""

    order: int
    number: int
    sign: Sign
    cut_row: int | None = None


@dataclass(frozen=True)
class RungShown:
    """One combination. ``words``: what is known of it; ``step``: which step of the adopted process it is, 0 none;
    ``served``: on how many like paints before; ``next``: what the plain rule says to do next."""

    key: str
    number: int
    name: str
    sign: Sign
    words: str
    fell: tuple[Fell, ...] = ()
    step: int = 0
    served: int = 0
    next: bool = False


@dataclass(frozen=True)
class Box:
    """Something drawn. ``words``: what is written in it, or what it means to the ear."""

    kind: BoxKind
    x: float
    y: float
    wide: float
    high: float
    words: str = ""
    sign: Sign | None = None
    on_top: bool = False


@dataclass(frozen=True)
class Row:
    """One combination's boxes; ``says``: all of it in words."""

    key: str
    boxes: tuple[Box, ...]
    says: str


@dataclass(frozen=True)
class RangeDrawing:
    """Rows from mild to strong, each ``row_high``; ``signs``: those that occur, with their words, for the key."""

    rows: tuple[Row, ...]
    wide: float
    row_high: float
    signs: tuple[tuple[Sign, str], ...]
    in_columns: bool

    @property
    def high(self) -> float:
        return self.row_high * len(self.rows)


@dataclass(frozen=True)
class Mark:
    """A stroke of a sign in a square of side 1. disc: x, y the centre and r; box: x, y its corner and r its side;
    line: from x, y to x2, y2; text: centred. ``fill``: solid, a hatch, or empty."""

    kind: Literal["disc", "box", "line", "text"]
    x: float = 0.5
    y: float = 0.5
    r: float = 0.4
    x2: float = 0.0
    y2: float = 0.0
    fill: Hatch | Literal["solid"] = ""
    text: str = ""


def sign_marks(sign: Sign) -> tuple[Mark, ...]:
    """How a sign is drawn."""
    ring = Mark("disc")
    return {
        "works": (Mark("disc", fill="solid"),),
        "hazy": (Mark("disc", fill="rising"),),
        "trails": (Mark("disc", fill="level"),),
        "failed": (ring, Mark("line", 0.22, 0.22, x2=0.78, y2=0.78)),
        "unknown": (Mark("disc", r=0.1),),
        "forbidden": (
            Mark("box", 0.1, 0.1, 0.8),
            Mark("line", 0.1, 0.1, x2=0.9, y2=0.9),
            Mark("line", 0.9, 0.1, x2=0.1, y2=0.9),
        ),
        "hidden": (ring, Mark("text", text="?")),
        "stopped": (Mark("box", 0.1, 0.1, 0.8), Mark("line", 0.25, 0.5, x2=0.75, y2=0.5)),
        "waits": (ring, Mark("disc", r=0.1, fill="solid")),
    }[sign]


def sign_words(sign: Sign, on_top: bool = False) -> str:
    """What a sign means; a trial on top speaks of the finish only."""
    if on_top and sign in ("works", "hazy", "trails"):
        return {"works": _("finished clear"), "hazy": _("left even haze"), "trails": _("left trails")}[sign]
    return {
        "works": _("cleared, finished clear"),
        "hazy": _("cleared, left even haze"),
        "trails": _("cleared, left trails"),
        "failed": _("did not clear"),
        "unknown": _("nothing known on a fresh place"),
        "forbidden": _("not to be used here"),
        "hidden": _("could not be told"),
        "stopped": _("stopped"),
        "waits": _("waits for its outcome"),
    }[sign]


def range_drawing(
    rungs: Sequence[RungShown], wide: float, line_high: float, width_of: Callable[[str], float], row_least: float = 0.0
) -> RangeDrawing:
    """The picture at this width. ``line_high``: height of a line of text; ``width_of``: width of words in it;
    ``row_least``: least height of a row. Where there is room each trial has a column of its own, from left to right
    as made, with a thread from a cut to what was tried on top of it; else the trials stand at the end of the row."""
    columns = 1 + max((f.order for r in rungs for f in r.fell), default=-1)
    free = wide - _left(line_high) - NAME_LEAST * line_high
    in_columns = free >= max(columns, 3) * PITCH[0] * line_high
    pitch = min(free / columns, PITCH[1] * line_high) if in_columns and columns else 0.0
    longest = max((width_of(text) for r in rungs for text in (r.name, _told(r))), default=0.0)
    row_high = max(2.35 * line_high, row_least)
    # the columns begin where the longest words end, or where the last column still fits
    grid = min(_left(line_high) + longest + 1.5 * line_high, wide - columns * pitch)
    at = _At(wide, line_high, row_high, width_of, pitch, columns, grid)
    rows = []
    for i, rung in enumerate(rungs):
        boxes = _in_columns(at, rungs, i) if in_columns else _in_a_line(at, rung)
        rows.append(Row(rung.key, tuple(boxes), says(rung)))
    signs = dict.fromkeys([r.sign for r in rungs] + [f.sign for r in rungs for f in r.fell])
    return RangeDrawing(tuple(rows), wide, row_high, tuple((s, sign_words(s)) for s in signs), in_columns)


def says(rung: RungShown) -> str:
    """All that a row shows, in words: name above, the rest below."""
    told = [rung.words]
    fresh = [f for f in rung.fell if f.cut_row is None]
    on_top = [f for f in rung.fell if f.cut_row is not None]
    if fresh:
        numbers = ", ".join(str(f.number) for f in fresh)
        told.append((_("trials {n}") if len(fresh) > 1 else _("trial {n}")).format(n=numbers))
    if on_top:
        numbers = ", ".join(str(f.number) for f in on_top)
        told.append((_("trials {n} on top") if len(on_top) > 1 else _("trial {n} on top")).format(n=numbers))
    told += _notes(rung)
    return f"{rung.number}  {rung.name}\n{'; '.join(told)}"


def _notes(rung: RungShown) -> list[str]:
    told = []
    if rung.step:
        told.append(_("adopted, step {n}").format(n=rung.step))
    if rung.next:
        told.append(_("next by the rule"))
    if rung.served:
        told.append(_("served on like paint {n} ×").format(n=rung.served))
    return told


@dataclass(frozen=True)
class _At:
    wide: float
    line: float
    row: float
    width_of: Callable[[str], float]
    pitch: float
    columns: int
    grid: float

    @property
    def top(self) -> float:
        """y of the first of two lines."""
        return (self.row - 2 * self.line) / 2


def _left(line: float) -> float:
    """Width of the step's bar, the number and the sign before the name."""
    return 3.7 * line


def _head(at: _At, rung: RungShown) -> list[Box]:
    boxes = []
    if rung.step:
        boxes.append(Box("step", 0.0, 0.0, 0.3 * at.line, at.row, str(rung.step)))
    if rung.next:
        boxes.append(Box("next", 0.35 * at.line, at.row / 2 - 0.35 * at.line, 0.5 * at.line, 0.7 * at.line))
    boxes.append(Box("number", 0.85 * at.line, at.row / 2 - at.line / 2, 1.2 * at.line, at.line, str(rung.number)))
    size = 1.35 * at.line
    boxes.append(Box("sign", 2.1 * at.line, (at.row - size) / 2, size, size, sign_words(rung.sign), rung.sign))
    return boxes


def _in_a_line(at: _At, rung: RungShown) -> list[Box]:
    """Name above; below it what is known, and the newest trials at the end of the line."""
    boxes = _head(at, rung)
    left, top = _left(at.line), at.top
    boxes.append(Box("name", left, top, at.wide - left, at.line, rung.name))
    size, right = 0.95 * at.line, at.wide
    for fell in reversed(rung.fell[-MOST_MARKS:]):
        number = str(fell.number)
        right -= at.width_of(number) + size + 0.5 * at.line
        boxes.append(Box("trial", right, top + at.line, size, size, _fell(fell), fell.sign, fell.cut_row is not None))
        boxes.append(Box("number", right + size, top + at.line, at.width_of(number) + 0.2 * at.line, at.line, number))
    told = _told(rung)
    boxes.append(Box("words", left, top + at.line, right - left - 0.3 * at.line, at.line, told))
    return boxes


def _in_columns(at: _At, rungs: Sequence[RungShown], i: int) -> list[Box]:
    """Name and what is known at the left, then one column a trial."""
    rung = rungs[i]
    boxes = _head(at, rung)
    left, top = _left(at.line), at.top
    grid = at.grid
    room = grid - left - 0.5 * at.line
    boxes.append(Box("name", left, top, room, at.line, rung.name))
    boxes.append(Box("words", left, top + at.line, room, at.line, _told(rung)))
    boxes += [Box("column", grid + (c + 0.5) * at.pitch, 0.0, 0.0, at.row) for c in range(at.columns)]
    size = 1.2 * at.line
    # a thread runs from the cut's row to the row of what was tried on top, through those between
    for j, other in enumerate(rungs):
        for fell in other.fell:
            low, high = sorted((j, j if fell.cut_row is None else fell.cut_row))
            if low < high and low <= i <= high:
                x = grid + (fell.order + 0.5) * at.pitch
                clear = (at.row + size + 0.85 * at.line) / 2 if j == low else at.row / 2  # below the number
                y0, y1 = (clear if i == low else 0.0), ((at.row - size) / 2 if i == high else at.row)
                boxes.append(Box("thread", x, y0, 0.0, max(y1 - y0, 0.0)))
    for fell in rung.fell:
        x = grid + (fell.order + 0.5) * at.pitch - size / 2
        y = (at.row - size - 0.85 * at.line) / 2
        boxes.append(Box("trial", x, y, size, size, _fell(fell), fell.sign, fell.cut_row is not None))
        boxes.append(
            Box("number", x - 0.1 * at.line, y + size + 0.12 * at.line, 1.4 * at.line, 0.8 * at.line, str(fell.number))
        )
    return boxes


def _fell(fell: Fell) -> str:
    on_top = fell.cut_row is not None
    text = _("trial {n} on top: {what}") if on_top else _("trial {n}: {what}")
    return text.format(n=fell.number, what=sign_words(fell.sign, on_top))


def _told(rung: RungShown) -> str:
    """The line under the name: what was adopted or comes next first, it is the likelier to be looked for."""
    return "; ".join([*_notes(rung), rung.words])
