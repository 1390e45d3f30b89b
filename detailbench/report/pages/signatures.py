"""Signatures as they were drawn, or in words how else the person answered; and the boxes left on the last page."""

from __future__ import annotations

from typing import Any

from reportlab.platypus import Flowable, Paragraph

from detailbench.basics.texts import _
from detailbench.report.content.blocks import Signing, Signings
from detailbench.report.content.parts import Text, joined, plain
from detailbench.report.pages.letters import BOLD, markup
from detailbench.report.pages.look import CAPTION, GREY, HAIR, INK, LEFT, MM, style

GAP = 8 * MM
PAD_HIGH = 25 * MM
ROLE = style("role", fontName=BOLD, fontSize=8.4, leading=11)
BOX_HIGH = 32 * MM
BOX_WIDE = 80 * MM

SEAL_BOX = (LEFT, 25 * MM, LEFT + BOX_WIDE, 25 * MM + BOX_HIGH)
OWNER_BOX = (LEFT + BOX_WIDE + 10 * MM, 25 * MM, LEFT + 2 * BOX_WIDE + 10 * MM, 25 * MM + BOX_HIGH)
"""left, low, right, high in points on the last page: room for a visible seal and for the owner's own signature.
The words printed in the boxes stand along their upper edge; they fit A4 and Letter."""


class SigningRow(Flowable):  # type: ignore[misc]
    """Up to two answers side by side."""

    def __init__(self, answers: tuple[Signing, ...]) -> None:
        super().__init__()
        self.answers = answers

    def wrap(self, available: float, _height: float) -> tuple[float, float]:
        self.width = available
        self.each = (available - GAP) / 2
        self.texts = [_texts(a) for a in self.answers]
        self.below = max(sum(t.wrap(self.each, 1000)[1] for t in texts[1:]) for texts in self.texts)
        self.above = max(texts[0].wrap(self.each, 1000)[1] for texts in self.texts)
        self.height = self.above + PAD_HIGH + 4 + self.below + 10
        return self.width, self.height

    def draw(self) -> None:
        for i, answer in enumerate(self.answers):
            left = i * (self.each + GAP)
            top = self.height
            self.texts[i][0].drawOn(self.canv, left, top - self.above)
            floor = top - self.above - PAD_HIGH
            _strokes(self.canv, answer, left, floor, self.each)
            y = floor - 4
            for text in self.texts[i][1:]:
                y -= text.wrap(self.each, 1000)[1]
                text.drawOn(self.canv, left, y)


def _texts(answer: Signing) -> list[Paragraph]:
    title: Text = joined([answer.role, answer.name], ": ")
    texts = [Paragraph(markup(title, BOLD), ROLE), Paragraph(markup(answer.way), CAPTION)]
    if plain(answer.statement):
        texts.append(Paragraph(markup(answer.statement), CAPTION))
    return texts


def _strokes(canvas: Any, answer: Signing, left: float, floor: float, wide: float) -> None:
    canvas.saveState()
    canvas.setStrokeColor(GREY)
    canvas.setLineWidth(0.5)
    canvas.line(left, floor, left + wide, floor)
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(1.0)
    canvas.setLineCap(1)
    canvas.setLineJoin(1)
    high = PAD_HIGH - 4 * MM
    across = min(wide, high * 3)
    for stroke in answer.strokes:
        path = canvas.beginPath()
        for i, (x, y) in enumerate(stroke):
            (path.lineTo if i else path.moveTo)(left + x * across, floor + 1 * MM + (1 - y) * high)
        canvas.drawPath(path, stroke=1, fill=0)
    canvas.restoreState()


def signing_rows(block: Signings) -> list[SigningRow]:
    """The answers, two in a row."""
    return [SigningRow(block.answers[i : i + 2]) for i in range(0, len(block.answers), 2)]


def draw_boxes(canvas: Any, seal: Text, owner: Text) -> None:
    """The two boxes of the last page; a box without words is left out."""
    for box, words in ((SEAL_BOX, seal), (OWNER_BOX, owner)):
        if not plain(words):
            continue
        left, low, right, high = box
        canvas.setStrokeColor(HAIR)
        canvas.setLineWidth(0.5)
        canvas.rect(left, low, right - left, high - low, stroke=1, fill=0)
        text = Paragraph(markup(words), CAPTION)
        _wide, tall = text.wrap(right - left - 8, high - low)
        text.drawOn(canvas, left + 4, high - 4 - tall)


def boxes_title() -> str:
    """What the boxes are, for the outline."""
    return _("Electronic seal and signature")
