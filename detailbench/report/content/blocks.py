"""The blocks a document consists of, as plain values; lengths in mm on the drawing of the car."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Literal, TypeAlias

from detailbench.basics.ramp import Hatch
from detailbench.body.paths import Point
from detailbench.report.content.parts import Figure, Text
from detailbench.report.content.refs import NumberedWorking
from detailbench.trials.range_drawing import RungShown

Tone = Literal["plain", "note", "typed"]
ValueSign = Literal["dot", "open", "cross", "mean", "interval", "band", "point", "hollow"]


@dataclass(frozen=True)
class Para:
    """One paragraph."""

    text: Text
    tone: Tone = "plain"


@dataclass(frozen=True)
class Heading:
    """A heading inside a section."""

    text: Text


@dataclass(frozen=True)
class Fact:
    """A label of ours and what stands beside it, paragraph by paragraph."""

    label: str
    texts: tuple[Text, ...]
    tone: Tone = "plain"


@dataclass(frozen=True)
class Facts:
    rows: tuple[Fact, ...]


@dataclass(frozen=True)
class Column:
    """``share`` of the width; numbers stand to the right."""

    title: str
    share: float
    right: bool = False


@dataclass(frozen=True)
class Rows:
    """Rows of a table under an own heading (empty: none)."""

    title: Text
    rows: tuple[tuple[Text, ...], ...]


@dataclass(frozen=True)
class Grid:
    """A table; its head is repeated on every page."""

    columns: tuple[Column, ...]
    groups: tuple[Rows, ...]


@dataclass(frozen=True)
class Fill:
    """How a panel is filled: ``share`` on the ramp (None: not coloured), a hatch, the number printed on it, and a
    second one under it."""

    share: float | None = None
    hatch: Hatch = ""
    text: Text = ()
    beside: Text = ()


@dataclass(frozen=True)
class Drawn:
    """A mark as what it is: dot, line or patch, at its true place; ``zone``: no abrasive there. ``weight`` 0…1."""

    kind: Literal["dot", "line", "patch", "zone"]
    points: tuple[Point, ...]
    weight: float = 0.6


@dataclass(frozen=True)
class PlanView:
    """The car unfolded: what fills its panels and what is drawn on them; ``places`` are dots where it was measured."""

    title: Text
    fills: Mapping[str, Fill] = field(default_factory=dict)
    marks: tuple[Drawn, ...] = ()
    places: tuple[Point, ...] = ()
    missing: Text = ()


@dataclass(frozen=True)
class Legend:
    """``low`` and ``high`` label the ends of the ramp (both empty: no ramp); ``shapes`` pairs a kind of mark, or
    ``place``, with its words."""

    low: Text = ()
    high: Text = ()
    hatches: tuple[tuple[Hatch, str], ...] = ()
    shapes: tuple[tuple[str, str], ...] = ()
    note: Text = ()


@dataclass(frozen=True)
class PlanPair:
    """Two plan views side by side on the same drawing."""

    style: str
    length_mm: float | None
    before: PlanView
    after: PlanView
    legend: Legend


@dataclass(frozen=True)
class PlanBeside:
    """One plan view with what is said about it to its right."""

    style: str
    length_mm: float | None
    view: PlanView
    legend: Legend
    facts: Facts


@dataclass(frozen=True)
class DayLine:
    """One line of a day: when (``at``, as a share of the day from midnight, and in words), who, what. ``end``: of
    something that took time; ``weight`` 0…2: a tick, an act of the job, the car itself coming or going."""

    at: float
    when: Text
    who: Text
    what: Text
    end: float | None = None
    weight: int = 0


@dataclass(frozen=True)
class Day:
    """A day of the job. ``here``: from and to when the car was here, as shares of the day."""

    title: Text
    here: tuple[float, float] | None
    lines: tuple[DayLine, ...]


@dataclass(frozen=True)
class Days:
    """The job's days; ``hours``: the first and last hour the ruler shows."""

    hours: tuple[int, int]
    days: tuple[Day, ...]


@dataclass(frozen=True)
class PlaceDot:
    """A place on a panel's own drawing, with its number."""

    number: str
    at: Point
    chosen: bool = False


@dataclass(frozen=True)
class PanelSheet:
    """One panel with its places drawn and its readings beside them."""

    panel: str
    style: str
    length_mm: float | None
    title: Text
    dots: tuple[PlaceDot, ...]
    above: tuple[Text, ...]
    grid: Grid
    below: tuple[Text, ...]


@dataclass(frozen=True)
class PhotoPlate:
    """One photograph. ``jpeg`` None: it cannot be shown, the caption says why."""

    jpeg: bytes | None
    width_px: int
    height_px: int
    caption: tuple[Text, ...]


@dataclass(frozen=True)
class PhotoRow:
    """Before and after side by side, or two that stand alone. ``below``: captions too long to stand beneath one."""

    left: PhotoPlate
    right: PhotoPlate | None = None
    below: tuple[Text, ...] = ()


@dataclass(frozen=True)
class RangePicture:
    """The shop's combinations from mild to strong with the trials where they fell; drawn as on the screen."""

    rungs: tuple[RungShown, ...]
    title: Text


@dataclass(frozen=True)
class ValueMark:
    """Something drawn at values along the axis, each traced as if it were written: ``dot``, ``open`` dot and ``cross``
    at one; ``mean`` (a tick), ``point`` and ``hollow`` point at one; ``interval`` from one to another; ``band``
    about the first, as far as the second to either side."""

    kind: ValueSign
    at: tuple[Figure, ...]


@dataclass(frozen=True)
class ValueRow:
    """A panel's row; ``joins``: it belongs to the row above. ``beside``: its figures in writing."""

    name: Text
    marks: tuple[ValueMark, ...]
    beside: Text
    joins: bool = False


@dataclass(frozen=True)
class ValueRows:
    """Rows above one axis of thickness. ``axis`` says what lies along it, ``head`` what stands beside the rows, ``key``
    what the signs mean. ``room_um``: the axis goes on at least so far beyond the values; ``far_um``: what lies farther
    than this from the middle of all becomes an arrow at the rim (None: nothing does); ``zero``: the line of no
    change."""

    rows: tuple[ValueRow, ...]
    axis: Text
    head: Text
    key: tuple[tuple[ValueSign, str], ...]
    room_um: float
    far_um: float | None = None
    zero: bool = False


@dataclass(frozen=True)
class Signing:
    """One answer: drawn strokes (lists of points, 0…1 both ways, y down), or the words for how else it was given."""

    role: str
    name: Text
    way: Text
    strokes: tuple[tuple[Point, ...], ...] = ()
    statement: Text = ()


@dataclass(frozen=True)
class Signings:
    """``below``: names and statements too long to stand beneath a signature."""

    answers: tuple[Signing, ...]
    below: tuple[Text, ...] = ()


@dataclass(frozen=True)
class Workings:
    """The appendix of workings."""

    numbered: tuple[NumberedWorking, ...]


Block: TypeAlias = (
    Para
    | Heading
    | Facts
    | Grid
    | PlanPair
    | PlanBeside
    | Days
    | PanelSheet
    | PhotoRow
    | RangePicture
    | ValueRows
    | Signings
    | Workings
)


@dataclass(frozen=True)
class Section:
    """``new_page``: begins on a fresh page."""

    title: str
    blocks: tuple[Block, ...]
    new_page: bool = False


@dataclass(frozen=True)
class Front:
    """Page one: what the car is, then the whole story in short rows; ``plan`` a small plan view of the work."""

    kind: str
    car: Text
    under: tuple[Text, ...]
    rows: Facts
    style: str
    length_mm: float | None
    plan: PlanView
    plan_legend: Legend


@dataclass(frozen=True)
class Header:
    """What stands at the top of every page."""

    shop: Text
    kind: str
    job: str
    car: Text


@dataclass(frozen=True)
class DocumentContent:
    """A whole document, ready to be set. ``signing`` is the last page; ``seal_words`` and ``owner_words`` stand in the
    boxes left for the seal and for the owner's own electronic signature."""

    title: str
    language: str
    program: str
    printed_at: datetime
    header: Header
    front: Front
    sections: tuple[Section, ...]
    appendix: Section | None
    signing: Section
    seal_words: Text
    owner_words: Text
