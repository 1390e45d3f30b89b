"""One plan view with what is said about it to its right."""

from __future__ import annotations

from reportlab.platypus import Flowable

from detailbench.body.outlines import load_outline
from detailbench.report.content.blocks import PlanBeside
from detailbench.report.content.parts import plain
from detailbench.report.pages.letters import REGULAR, draw
from detailbench.report.pages.look import GREY, MM
from detailbench.report.pages.paths import Carry, fit
from detailbench.report.pages.plan_view import draw_legend, draw_plan, legend_height

WIDE, HIGH = 62 * MM, 105 * MM
GAP = 7 * MM


class PlanSketch(Flowable):  # type: ignore[misc]
    """Takes no room itself: what is said stands to its right, and is kept as high as the drawing."""

    def __init__(self, block: PlanBeside) -> None:
        super().__init__()
        self.block = block
        self.outline = load_outline(block.style, block.length_mm)
        self.scale = fit(self.outline.bounds, WIDE, HIGH)
        self.drawn = (self.outline.bounds[3] - self.outline.bounds[1]) * self.scale

    def wrap(self, _width: float, _height: float) -> tuple[float, float]:
        return 0, 0

    @property
    def drawn_height(self) -> float:
        """Points down from the top that the drawing takes, with its title and legend."""
        return float(self.drawn + 14 + legend_height(self.block.legend, WIDE))

    def draw(self) -> None:
        draw_plan(self.canv, self.outline, self.block.view, Carry(self.outline.bounds, self.scale, 0, 0))
        self.canv.setFillColor(GREY)
        draw(self.canv, 0, -self.drawn - 9, plain(self.block.view.title), REGULAR, 7.2)
        draw_legend(self.canv, self.block.legend, 0, -self.drawn - 12, WIDE)
