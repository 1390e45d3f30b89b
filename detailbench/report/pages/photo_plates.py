"""Photographs two in a row, as the JPEG bytes they are, each with its caption."""

from __future__ import annotations

import io
from typing import Any

from reportlab.lib.utils import ImageReader
from reportlab.platypus import Flowable, Paragraph

from detailbench.basics.texts import _
from detailbench.report.content.blocks import PhotoPlate, PhotoRow
from detailbench.report.pages.letters import REGULAR, draw, markup
from detailbench.report.pages.look import CAPTION, GREY, HAIR, INK, MM, PALE

GAP = 6 * MM
HIGHEST = 62 * MM


class PhotoRowDrawing(Flowable):  # type: ignore[misc]
    """One row: one or two photographs at the same width, captions beneath."""

    def __init__(self, row: PhotoRow) -> None:
        super().__init__()
        self.plates = [p for p in (row.left, row.right) if p is not None]

    def wrap(self, available: float, _height: float) -> tuple[float, float]:
        self.width = available
        self.each = (available - GAP) / 2
        self.sizes = [_size(p, self.each) for p in self.plates]
        self.captions = [[Paragraph(markup(t), CAPTION) for t in p.caption] for p in self.plates]
        texts = [sum(c.wrap(self.each, 1000)[1] for c in captions) for captions in self.captions]
        self.picture = max(high for _wide, high in self.sizes)
        self.height = self.picture + 4 + max(texts) + 10
        return self.width, self.height

    def draw(self) -> None:
        for i, plate in enumerate(self.plates):
            left = i * (self.each + GAP)
            wide, high = self.sizes[i]
            _picture(self.canv, plate, left, self.height - high, wide, high)
            y = self.height - self.picture - 4
            for j, caption in enumerate(self.captions[i]):
                if j == 0:
                    caption.style = CAPTION.clone("caption first", textColor=INK)
                y -= caption.wrap(self.each, 1000)[1]
                caption.drawOn(self.canv, left, y)


def _size(plate: PhotoPlate, each: float) -> tuple[float, float]:
    if plate.jpeg is None:
        return each, 22 * MM
    scale = min(each / plate.width_px, HIGHEST / plate.height_px)
    return plate.width_px * scale, plate.height_px * scale


def _picture(canvas: Any, plate: PhotoPlate, x: float, y: float, wide: float, high: float) -> None:
    if plate.jpeg is None:
        canvas.setFillColor(PALE)
        canvas.setStrokeColor(HAIR)
        canvas.setLineWidth(0.4)
        canvas.rect(x, y, wide, high, stroke=1, fill=1)
        canvas.setFillColor(GREY)
        draw(canvas, x + wide / 2, y + high / 2 - 3, _("not shown"), REGULAR, 8, "middle")
        return
    # the reader hands a JPEG through as it is
    canvas.drawImage(ImageReader(io.BytesIO(plate.jpeg)), x, y, wide, high)
