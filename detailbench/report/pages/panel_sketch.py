"""One panel drawn alone, with its places as numbered dots and its edges named."""

from __future__ import annotations

from typing import Any

from reportlab.platypus import Flowable

from detailbench.body.outlines import load_outline
from detailbench.report.content.blocks import PanelSheet
from detailbench.report.content.wording import short_edge
from detailbench.report.pages.letters import REGULAR, draw
from detailbench.report.pages.look import GREY, HAIR, INK, MM, PALE, PAPER
from detailbench.report.pages.paths import Carry, fit, path_on

WIDE, HIGH = 34 * MM, 37 * MM
SIZE = 5.6
ROOM_X, ROOM_Y = 25 * MM, 29 * MM


def number_spot(x: float, y: float, middle_x: float, middle_y: float) -> tuple[bool, tuple[float, float]]:
    """Where a dot's number stands: on its inner side, so that the panel's edge does not run through it. Whether the
    number ends there (else it begins), and the foot of its letters; points."""
    right = x > middle_x
    return right, (x - 1.9 if right else x + 1.9, y - 0.6 - SIZE * 0.7 if y > middle_y else y + 0.8)


class PanelSketch(Flowable):  # type: ignore[misc]
    """Takes no room itself: the sheet's text stands to its right, and the sheet is kept as high as the drawing."""

    def __init__(self, sheet: PanelSheet) -> None:
        super().__init__()
        self.sheet = sheet
        outline = load_outline(sheet.style, sheet.length_mm)
        self.panel = outline.panels[sheet.panel]
        self.scale = fit(self.panel.bounds, ROOM_X, ROOM_Y)

    def wrap(self, _width: float, _height: float) -> tuple[float, float]:
        return 0, 0

    @property
    def drawn_height(self) -> float:
        """Points down from the top that the drawing takes, edge names included."""
        return float((self.panel.bounds[3] - self.panel.bounds[1]) * self.scale) + 28

    def draw(self) -> None:
        canvas = self.canv
        wide = (self.panel.bounds[2] - self.panel.bounds[0]) * self.scale
        carry = Carry(self.panel.bounds, self.scale, (WIDE - wide) / 2, -17)
        canvas.saveState()
        canvas.setLineJoin(1)
        canvas.setFillColor(PALE)
        canvas.setStrokeColor(GREY)
        canvas.setLineWidth(0.5)
        canvas.drawPath(path_on(canvas, self.panel.path, carry), stroke=1, fill=1, fillMode=0)
        canvas.setStrokeColor(HAIR)
        canvas.setLineWidth(0.3)
        canvas.saveState()
        canvas.clipPath(path_on(canvas, self.panel.path, carry), stroke=0, fill=0, fillMode=0)
        for stroke in self.panel.keep_off:
            path = canvas.beginPath()
            for i, (x, y) in enumerate(stroke):
                (path.lineTo if i else path.moveTo)(*carry.to((float(x), float(y))))
            canvas.drawPath(path, stroke=1, fill=0)
        canvas.restoreState()
        self._edges(canvas, carry)
        self._dots(canvas, carry)
        canvas.restoreState()

    def _edges(self, canvas: Any, carry: Carry) -> None:
        canvas.setFillColor(GREY)
        middle_x, middle_y = carry.x + carry.width / 2, carry.y - carry.height / 2
        for edge, side in self.panel.edges.items():
            words = short_edge(edge)
            if side == "up":
                draw(canvas, middle_x, carry.y + 6.5, words, REGULAR, 5.4, "middle")
            elif side == "down":
                draw(canvas, middle_x, carry.y - carry.height - 9, words, REGULAR, 5.4, "middle")
            else:
                canvas.saveState()
                canvas.translate(carry.x - 4 if side == "left" else carry.x + carry.width + 11, middle_y)
                canvas.rotate(90)
                draw(canvas, 0, 0, words, REGULAR, 5.4, "middle")
                canvas.restoreState()

    def _dots(self, canvas: Any, carry: Carry) -> None:
        for dot in self.sheet.dots:
            x, y = carry.to(dot.at)
            canvas.setStrokeColor(INK)
            canvas.setLineWidth(0.5)
            canvas.setFillColor(PAPER if dot.chosen else INK)
            canvas.circle(x, y, 0.95, stroke=1 if dot.chosen else 0, fill=1)
            canvas.setFillColor(INK)
            right, at = number_spot(x, y, carry.x + carry.width / 2, carry.y - carry.height / 2)
            draw(canvas, *at, dot.number, REGULAR, SIZE, "right" if right else "left")
