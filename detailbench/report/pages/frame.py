"""Every page's head and foot, and the numbering "page n of m", which needs the whole document first."""

from __future__ import annotations

from typing import Any

from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.report.content.blocks import DocumentContent, Header
from detailbench.report.content.parts import joined, plain
from detailbench.report.pages.letters import REGULAR, draw, fitted, width
from detailbench.report.pages.look import BOTTOM, GREY, HAIR, LEFT, MM, RIGHT, SIGN_BOTTOM, TOP, Paper
from detailbench.report.pages.signatures import draw_boxes

SIZE = 7.4


class NumberedCanvas(Canvas):  # type: ignore[misc]
    """Keeps the pages back until their number is known, then heads each; the last carries the two boxes."""

    def __init__(self, *args: Any, content: DocumentContent, paper: Paper, **options: Any) -> None:
        super().__init__(*args, **options)
        self._of, self._paper = content, paper
        self._kept: list[dict[str, Any]] = []

    def showPage(self) -> None:
        self._kept.append(dict(self.__dict__))
        self._startPage()

    def save(self) -> None:
        kept = self._kept
        for i, page in enumerate(kept, 1):
            self.__dict__.update(page)
            draw_head(self, self._of.header, self._paper, i, len(kept))
            if i == len(kept):
                draw_boxes(self, self._of.seal_words, self._of.owner_words)
            super().showPage()
        super().save()


def draw_head(canvas: Any, header: Header, page: Paper, number: int, of: int) -> None:
    """Shop and kind to the left, job, car and page to the right, a hairline beneath."""
    y = page.height - 15 * MM
    canvas.setFillColor(GREY)
    numbering = _("page {n} of {m}").format(n=format_number(number, 0), m=format_number(of, 0))
    right = page.width - RIGHT
    draw(canvas, right, y, numbering, REGULAR, SIZE, "right")
    mine = plain(joined([header.shop, header.kind], " · "))
    other = plain(joined([header.job, header.car], " · "))
    room = page.room - width(numbering, REGULAR, SIZE) - 14
    mine = fitted(mine, REGULAR, SIZE, room * 0.5)
    other = fitted(other, REGULAR, SIZE, room * 0.5)
    draw(canvas, LEFT, y, mine, REGULAR, SIZE)
    draw(canvas, right - width(numbering, REGULAR, SIZE) - 14, y, other, REGULAR, SIZE, "right")
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.4)
    canvas.line(LEFT, y - 5, right, y - 5)


def templates(page: Paper) -> list[PageTemplate]:
    """The page as it always is, and the last one, which keeps its foot free."""
    return [_template("plain", page, BOTTOM), _template("signing", page, SIGN_BOTTOM)]


def _template(name: str, page: Paper, bottom: float) -> PageTemplate:
    frame = Frame(
        LEFT,
        bottom,
        page.room,
        page.height - TOP - bottom,
        leftPadding=0,
        rightPadding=0,
        topPadding=0,
        bottomPadding=0,
    )
    return PageTemplate(name, [frame], pagesize=(page.width, page.height))


def document(buffer: Any, content: DocumentContent, page: Paper) -> BaseDocTemplate:
    """The document the story is poured into."""
    return BaseDocTemplate(
        buffer,
        pagesize=(page.width, page.height),
        pageTemplates=templates(page),
        title=content.title,
        author="",
        invariant=1,
        initialFontName=REGULAR,
        pageCompression=1,
    )
