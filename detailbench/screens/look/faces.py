"""The embedded typeface: the same letters on every machine, and the same as in print."""

from __future__ import annotations

from PySide6.QtGui import QFont, QFontDatabase

from detailbench.basics.shelf import resource

FAMILY = "DejaVu Sans Condensed"
FALLBACK = "DejaVu Sans"
FILES = ("DejaVuSansCondensed.ttf", "DejaVuSansCondensed-Bold.ttf", "DejaVuSans.ttf", "DejaVuSans-Bold.ttf")


def load_faces() -> None:
    """Make the embedded faces known to the application; a face already known is left alone."""
    for name in FILES:
        path = resource("fonts", name)
        if path.is_file():
            QFontDatabase.addApplicationFont(str(path))


def face(pixels: int, bold: bool = False) -> QFont:
    """The interface face at a size in pixels."""
    font = QFont()
    font.setFamilies([FAMILY, FALLBACK])
    font.setPixelSize(max(pixels, 1))
    font.setBold(bold)
    return font
