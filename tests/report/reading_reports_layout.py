"""Where the letters of a PDF stand."""

from __future__ import annotations

import pypdfium2

MM = 72 / 25.4


def outside_margins(pdf: bytes, margin_mm: float = 12.0) -> list[str]:
    """Letters nearer to an edge of their page than ``margin_mm``."""
    out = []
    with pypdfium2.PdfDocument(pdf) as document:
        for number, page in enumerate(document, 1):
            wide, high = page.get_size()
            text = page.get_textpage()
            for i in range(text.count_chars()):
                letter = text.get_text_range(i, 1)
                left, low, right, top = text.get_charbox(i)
                edge = margin_mm * MM
                if letter.strip() and (left < edge or right > wide - edge or low < edge or top > high - edge):
                    out.append(f"page {number}: {letter!r} at {left:.0f}, {low:.0f}")
            text.close()
            page.close()
    return out
