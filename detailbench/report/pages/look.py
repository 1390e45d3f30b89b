"""The look of a page: measures, sizes, colours, paragraph styles. Everything in points unless it says mm."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from reportlab.lib.colors import HexColor
from reportlab.lib.enums import TA_RIGHT
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.styles import ParagraphStyle

from detailbench.basics.errors import BadInput
from detailbench.basics.ramp import ramp_rgb
from detailbench.basics.texts import _
from detailbench.report.pages.letters import BOLD, ITALIC, MONO, REGULAR

MM = 72 / 25.4
SIZES = {"A4": A4, "Letter": LETTER}

LEFT, RIGHT, TOP, BOTTOM = 21 * MM, 19 * MM, 24 * MM, 19 * MM
LABEL = 31 * MM  # width of the label column
SIGN_BOTTOM = 66 * MM  # the last page keeps this free for the two boxes

INK = HexColor("#15191d")
GREY = HexColor("#59636b")
HAIR = HexColor("#bcc4ca")
PALE = HexColor("#f3f5f6")
PAPER = HexColor("#ffffff")

HAIRLINE = 0.4


@dataclass(frozen=True)
class Paper:
    """A page size in points."""

    width: float
    height: float

    @property
    def room(self) -> float:
        """Width between the margins."""
        return self.width - LEFT - RIGHT


def paper(size: str) -> Paper:
    """The page of that name. Raises BadInput."""
    if size not in SIZES:
        raise BadInput(
            _("There is no page size “{size}”; there is: {known}.").format(size=size, known=", ".join(SIZES))
        )
    return Paper(*SIZES[size])


def paper_rgb(share: float) -> tuple[float, float, float]:
    """The ramp on white paper: more is darker, and the palest end still stands off the page."""
    r, g, b = ramp_rgb(1.0 - share, (0.12, 0.97))
    return r / 255, g / 255, b / 255


def style(name: str, **changes: Any) -> ParagraphStyle:
    """A paragraph style of ours; nothing is left to the library's own fonts."""
    base: dict[str, Any] = {
        "fontName": REGULAR,
        "bulletFontName": REGULAR,
        "fontSize": 9,
        "leading": 12.6,
        "textColor": INK,
        "splitLongWords": 1,
        "allowWidows": 0,
        "allowOrphans": 0,
        "linkUnderline": 0,
    }
    return ParagraphStyle(name, **{**base, **changes})


BODY = style("body", spaceAfter=4)
NOTE = style("note", fontSize=7.6, leading=10.4, textColor=GREY, spaceAfter=4)
TYPED = style("typed", fontName=ITALIC, spaceAfter=4)
SECTION = style("section", fontName=BOLD, fontSize=13, leading=16, spaceAfter=5, keepWithNext=1)
HEADING = style("heading", fontName=BOLD, fontSize=9, leading=12.6, spaceBefore=7, spaceAfter=3, keepWithNext=1)
CELL = style("cell", fontSize=7.5, leading=9.6)
CELL_RIGHT = style("cell right", fontSize=7.5, leading=9.6, alignment=TA_RIGHT)
HEAD = style("head", fontSize=6.8, leading=8.6, textColor=GREY)
HEAD_RIGHT = style("head right", fontSize=6.8, leading=8.6, textColor=GREY, alignment=TA_RIGHT)
GROUP = style("group", fontName=BOLD, fontSize=7.6, leading=10)
SHEET = style("sheet", fontSize=7.7, leading=10.2, spaceAfter=1.2)
SHEET_NOTE = style("sheet note", fontSize=7.2, leading=9.6, textColor=GREY, spaceAfter=1)
SHEET_TITLE = style("sheet title", fontName=BOLD, fontSize=9, leading=12, spaceAfter=1)
CAPTION = style("caption", fontSize=7.2, leading=9.6, textColor=GREY)
WORKING = style("working", fontSize=7.2, leading=9.8, spaceAfter=1)
FIGURES = style(
    "figures", fontName=MONO, bulletFontName=BOLD, bulletFontSize=6.6, fontSize=5.7, leading=7.6, leftIndent=9 * MM,
    spaceBefore=2,
)  # fmt: skip
FRONT_KIND = style("front kind", fontSize=9.5, leading=12, textColor=GREY, spaceAfter=3)
FRONT_CAR = style("front car", fontName=BOLD, fontSize=21, leading=25, spaceAfter=4)
FRONT_UNDER = style("front under", fontSize=9, leading=12.8)
