"""From blocks to what flows down the pages."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any, TypeVar

from reportlab.platypus import CondPageBreak, Flowable, Indenter, KeepTogether, PageBreak, Paragraph, Spacer

from detailbench.report.content.blocks import (
    Block,
    Days,
    Facts,
    Grid,
    Heading,
    PanelSheet,
    Para,
    PhotoRow,
    PlanBeside,
    PlanPair,
    RangePicture,
    Section,
    Signings,
    ValueRows,
    Workings,
)
from detailbench.report.pages.appendix import workings
from detailbench.report.pages.beside import GAP, PlanSketch
from detailbench.report.pages.beside import WIDE as PLAN_WIDE
from detailbench.report.pages.days import days
from detailbench.report.pages.letters import BOLD, ITALIC, REGULAR, marked_up, markup
from detailbench.report.pages.look import (
    BODY,
    BOTTOM,
    GREY,
    HAIR,
    HAIRLINE,
    HEADING,
    LABEL,
    MM,
    NOTE,
    SECTION,
    SHEET,
    SHEET_NOTE,
    SHEET_TITLE,
    SIGN_BOTTOM,
    TYPED,
    Paper,
)
from detailbench.report.pages.panel_sketch import WIDE, PanelSketch
from detailbench.report.pages.photo_plates import PhotoRowDrawing
from detailbench.report.pages.plan_view import PlanPairDrawing
from detailbench.report.pages.range_picture import RangeDrawn
from detailbench.report.pages.signatures import signing_rows
from detailbench.report.pages.tables import table
from detailbench.report.pages.value_rows import ValueRowsDrawn

B = TypeVar("B")
TONES = {"plain": (BODY, REGULAR), "note": (NOTE, REGULAR), "typed": (TYPED, ITALIC)}
AT_TOP = 5 * MM  # what a spacer of the page before may have taken of this one
LEAST = 42 * MM  # a section begins only where this much of it follows its title
KEPT = 120 * MM  # a panel's sheet lower than this is never cut by a page's end


class Rule(Flowable):  # type: ignore[misc]
    """A hairline across the page, with room above; nothing where a page begins: its head has one."""

    def __init__(self, above: float = 10, below: float = 6) -> None:
        super().__init__()
        self.keepWithNext = 1
        self.above, self.below = above, below

    def wrap(self, available: float, _height: float) -> tuple[float, float]:
        self.width = available
        frame = getattr(self, "_frame", None)
        self.first = frame is not None and (bool(frame._atTop) or frame._y2 - frame._y < AT_TOP)
        return available, 0 if self.first else self.above + self.below

    def draw(self) -> None:
        if self.first:
            return
        self.canv.setStrokeColor(GREY)
        self.canv.setLineWidth(0.5)
        self.canv.line(0, self.below, self.width, self.below)


class Mark(Flowable):  # type: ignore[misc]
    """Enters a section in the file's outline."""

    def __init__(self, title: str, key: str) -> None:
        super().__init__()
        self.keepWithNext = 1
        self.title, self.key = title, key

    def wrap(self, _width: float, _height: float) -> tuple[float, float]:
        return 0, 0

    def draw(self) -> None:
        self.canv.bookmarkPage(self.key)
        self.canv.addOutlineEntry(self.title, self.key, 0, False)


def section(content: Section, page: Paper, number: int) -> list[Flowable]:
    """A section with its title; the title never stands alone at a page's foot."""
    blocks = _noted(content.blocks, page)
    title = Paragraph(marked_up(content.title, BOLD), SECTION)
    mark = Mark(content.title, f"section-{number}")
    if content.new_page:
        return [PageBreak(), mark, title, *blocks]
    need = min(heights((f for f in blocks if not isinstance(f, Indenter)), page.room), LEAST)
    return [CondPageBreak(40 + need), Rule(12), mark, title, *blocks]


def _noted(blocks: Iterable[Block], page: Paper) -> list[Flowable]:
    """The flows of these blocks; a note stays with the paragraph it is about, so that none begins a page alone."""
    out: list[Flowable] = []
    for block in blocks:
        flows = _flows(block, page)
        if isinstance(block, Para) and block.tone == "note" and out and isinstance(out[-1], Paragraph):
            out[-1].keepWithNext = 1
        out += flows
    return out


def last_section(content: Section, page: Paper, number: int) -> list[Flowable]:
    """The section signed: on the page begun where all of it fits above the two boxes, else on a page of its own."""
    blocks = [flow for block in content.blocks for flow in _flows(block, page)]
    title = Paragraph(marked_up(content.title, BOLD), SECTION)
    need = heights(blocks, page.room) + title.wrap(page.room, 10_000)[1] + 40 + SIGN_BOTTOM - BOTTOM
    return [CondPageBreak(need), Rule(12), Mark(content.title, f"section-{number}"), title, *blocks]


def _flows(block: Block, page: Paper) -> list[Flowable]:
    makers: dict[type[Any], Callable[[Any], list[Flowable]]] = {
        Para: lambda b: [para(b)],
        Heading: lambda b: [Paragraph(markup(b.text, BOLD), HEADING)],
        Facts: facts,
        Grid: lambda b: [table(b, page.room)],
        PlanPair: lambda b: [PlanPairDrawing(b), Spacer(0, 6)],
        PlanBeside: lambda b: beside(b, page),
        Days: lambda b: days(b, page),
        PanelSheet: lambda b: sheet(b, page),
        PhotoRow: lambda b: [PhotoRowDrawing(b), *(Paragraph(markup(t, ITALIC), TYPED) for t in b.below)],
        RangePicture: lambda b: [RangeDrawn(b), Spacer(0, 6)],
        ValueRows: lambda b: [ValueRowsDrawn(b), Spacer(0, 6)],
        Signings: lambda b: [Spacer(0, 8), *signing_rows(b), *(Paragraph(markup(t, ITALIC), TYPED) for t in b.below)],
        Workings: workings,
    }
    return makers[type(block)](block)


def para(block: Para) -> Paragraph:
    """A paragraph in its tone."""
    look, font = TONES[block.tone]
    return Paragraph(markup(block.text, font), look)


def facts(block: Facts, *, roomy: float = 0.0, label: float = LABEL) -> list[Flowable]:
    """Labels to the left, what stands beside them to the right; a long text runs on over the page. ``roomy``: the
    size of letters when rows stand apart with a hairline between them; ``label``: the width of the labels."""
    out: list[Flowable] = []
    for row in block.rows:
        if roomy and out:
            out.append(Thin(room=roomy - 3))
        look, font = TONES[row.tone]
        sizes = {"fontSize": roomy, "leading": roomy * 1.4, "spaceAfter": roomy - 7.2} if roomy else {"spaceAfter": 1.5}
        beside = look.clone(f"beside {row.tone}", leftIndent=label, bulletIndent=0, **sizes)
        beside.bulletFontSize, beside.bulletColor = 7.6, GREY
        for i, text in enumerate(row.texts):
            words = markup(text, font)
            out.append(Paragraph(words, beside, bulletText=row.label) if i == 0 else Paragraph(words, beside))
        out.append(Spacer(0, 3.5))
    return out


def sheet(block: PanelSheet, page: Paper) -> list[Flowable]:
    """A panel's sketch to the left, its readings to the right, kept together where that is possible."""
    room = page.room - WIDE - 4 * MM
    inner: list[Flowable] = [
        Paragraph(markup(block.title, BOLD), SHEET_TITLE),
        *(Paragraph(markup(t), SHEET_NOTE) for t in block.above),
        table(block.grid, room),
        *(Paragraph(markup(t), SHEET) for t in block.below),
    ]
    sketch = PanelSketch(block)
    high = heights(inner, room)
    missing = max(0.0, sketch.drawn_height - high)
    whole = [Thin(), sketch, Indenter(left=WIDE + 4 * MM), *inner, Spacer(0, missing), Indenter(left=-WIDE - 4 * MM)]
    if max(high, sketch.drawn_height) < KEPT:
        return [KeepTogether([*whole, Spacer(0, 8)])]
    return [CondPageBreak(sketch.drawn_height + 20 * MM), *whole, Spacer(0, 8)]


def beside(block: PlanBeside, page: Paper) -> list[Flowable]:
    """A plan view to the left, facts to its right; what is longer than the drawing goes on beneath them."""
    room, left = page.room - PLAN_WIDE - GAP, PLAN_WIDE + GAP
    sketch = PlanSketch(block)
    inner = facts(block.facts, label=22 * MM)
    missing = max(0.0, sketch.drawn_height - heights(inner, room))
    return [CondPageBreak(sketch.drawn_height), sketch, Indenter(left=left), *inner, Indenter(left=-left),
            Spacer(0, missing + 4)]  # fmt: skip


class Thin(Flowable):  # type: ignore[misc]
    """A hairline across the frame."""

    def __init__(self, room: float = 5) -> None:
        super().__init__()
        self.room = room

    def wrap(self, available: float, _height: float) -> tuple[float, float]:
        self.width = available
        return available, self.room

    def draw(self) -> None:
        self.canv.setStrokeColor(HAIR)
        self.canv.setLineWidth(HAIRLINE)
        self.canv.line(0, self.room - 1, self.width, self.room - 1)


def heights(flows: Iterable[Flowable], room: float) -> float:
    """Points these take one under the other; what is kept together counts as much as it may be at most."""
    total = 0.0
    for flow in flows:
        if isinstance(flow, KeepTogether):
            return total + KEPT
        total += float(flow.wrap(room, 10_000)[1]) + float(flow.getSpaceAfter())
    return total
