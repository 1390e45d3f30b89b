"""Page one: the car's name large, a small plan view of the work beside it, then the story in short rows."""

from __future__ import annotations

from reportlab.platypus import Flowable, KeepInFrame, Paragraph

from detailbench.body.outlines import load_outline
from detailbench.report.content.blocks import Front
from detailbench.report.content.parts import plain
from detailbench.report.pages.flow import Rule, facts, heights
from detailbench.report.pages.letters import BOLD, REGULAR, draw, marked_up, markup
from detailbench.report.pages.look import BOTTOM, FRONT_CAR, FRONT_KIND, FRONT_UNDER, GREY, MM, TOP, Paper
from detailbench.report.pages.paths import Carry, fit
from detailbench.report.pages.plan_view import draw_legend, draw_plan

PLAN_WIDE, PLAN_HIGH = 48 * MM, 56 * MM


class Masthead(Flowable):  # type: ignore[misc]
    """What the document is and which car, with the small plan view to the right."""

    def __init__(self, front: Front) -> None:
        super().__init__()
        self.front = front
        self.outline = load_outline(front.style, front.length_mm)

    def wrap(self, available: float, _height: float) -> tuple[float, float]:
        self.width = available
        room = available - PLAN_WIDE - 8 * MM
        self.texts = [
            Paragraph(marked_up(self.front.kind), FRONT_KIND),
            Paragraph(markup(self.front.car, BOLD), FRONT_CAR),
            *(Paragraph(markup(t), FRONT_UNDER) for t in self.front.under),
        ]
        self.tall = [t.wrap(room, 1000)[1] + t.getSpaceAfter() for t in self.texts]
        self.height = max(sum(self.tall), PLAN_HIGH + 24)
        return self.width, self.height

    def draw(self) -> None:
        y = self.height
        for text, tall in zip(self.texts, self.tall, strict=True):
            y -= tall
            text.drawOn(self.canv, 0, y + text.getSpaceAfter())
        scale = fit(self.outline.bounds, PLAN_WIDE, PLAN_HIGH)
        car = (self.outline.bounds[2] - self.outline.bounds[0]) * scale
        left = self.width - car
        draw_plan(self.canv, self.outline, self.front.plan, Carry(self.outline.bounds, scale, left, self.height))
        floor = self.height - (self.outline.bounds[3] - self.outline.bounds[1]) * scale
        self.canv.setFillColor(GREY)
        draw(self.canv, left, floor - 9, plain(self.front.plan.title), REGULAR, 7.2)
        draw_legend(self.canv, self.front.plan_legend, left, floor - 10, car)


def front_page(front: Front, page: Paper) -> list[Flowable]:
    """Everything that stands on page one, closer and then smaller where there is much of it: never a second page."""
    room = page.height - TOP - BOTTOM
    head: list[Flowable] = [Masthead(front), Rule(8, 9)]
    rows: list[Flowable] = []
    for spacing in (9.4, 9.0, 0.0):
        rows = facts(front.rows, roomy=spacing)
        if heights([*head, *rows], page.room) <= room - 4:
            break
    return [KeepInFrame(page.room, room, [*head, *rows], mode="shrink", hAlign="LEFT", vAlign="TOP")]
