"""Letters on paper: our embedded fonts, which of them can show what, and the one way from text to markup.

Nothing typed reaches the paragraph parser except through ``markup``, and nothing is drawn in a font of the reader's.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from functools import cache
from typing import Any
from xml.sax.saxutils import escape

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from detailbench.basics.numbers import NBSP
from detailbench.basics.shelf import resource
from detailbench.basics.texts import _
from detailbench.report.content.parts import Figure, Text, Typed, Worked

REGULAR, BOLD, ITALIC, MONO = "Text", "Text-Bold", "Text-Italic", "Figures-Mono"
WIDER, WIDER_BOLD = "Wider", "Wider-Bold"
FILES = {
    REGULAR: "Lato-Regular.ttf",
    BOLD: "Lato-Bold.ttf",
    ITALIC: "Lato-Italic.ttf",
    WIDER: "DejaVuSans.ttf",
    WIDER_BOLD: "DejaVuSans-Bold.ttf",
    MONO: "DejaVuSansMono.ttf",
}
FALLBACK = {REGULAR: WIDER, ITALIC: WIDER, BOLD: WIDER_BOLD, MONO: WIDER}
REF_COLOUR = "#6a747c"

_CLAUSE_END = re.compile(r"[.;](?=\s|$)")

# written from right to left, or joined letter to letter: set one by one they would read wrongly
_NOT_SET = frozenset({"R", "AL", "AN", "RLE", "RLO", "RLI", "LRE", "LRO", "LRI", "PDF", "PDI", "FSI", "BN"})


@dataclass(frozen=True)
class Run:
    """Letters that stand in one font."""

    font: str
    letters: str


@cache
def register() -> None:
    """Make the fonts known to the library, once."""
    for name, file in FILES.items():
        pdfmetrics.registerFont(TTFont(name, str(resource("fonts", file))))
    for family, bold, italic in ((REGULAR, BOLD, ITALIC), (WIDER, WIDER_BOLD, WIDER), (MONO, MONO, MONO)):
        pdfmetrics.registerFontFamily(family, normal=family, bold=bold, italic=italic, boldItalic=bold)


@cache
def _glyphs(font: str) -> frozenset[int]:
    register()
    face: Any = pdfmetrics.getFont(font).face
    return frozenset(code for code, glyph in face.charToGlyph.items() if glyph)


@cache
def font_for(letter: str, font: str) -> str | None:
    """The font that shows a letter: the one asked for, the wider one behind it, or None."""
    if letter in ("\n", " ", NBSP):
        return font
    if unicodedata.bidirectional(letter) in _NOT_SET or unicodedata.category(letter) in ("Cc", "Cs", "Co", "Cn"):
        return None
    for each in (font, FALLBACK.get(font, font)):
        if ord(letter) in _glyphs(each):
            return each
    return None


def runs(words: str, font: str = REGULAR) -> list[Run]:
    """Words cut into runs of one font; letters no font can show are replaced by a remark that counts them."""
    out: list[Run] = []
    lost = 0
    words = unicodedata.normalize("NFC", words).replace("\r\n", "\n").replace("\r", "\n").replace("\t", " ")
    for letter in words:
        found = font_for(letter, font)
        if found is None:
            lost += 1
            continue
        if lost and letter == " ":
            continue  # words of lost letters make one remark
        if lost:
            _append(out, font, _lost(lost) + ("" if letter == "\n" else " "))
            lost = 0
        _append(out, found, letter)
    if lost:
        _append(out, font, _lost(lost))
    return out


def _append(out: list[Run], font: str, letters: str) -> None:
    if out and out[-1].font == font:
        out[-1] = Run(font, out[-1].letters + letters)
    else:
        out.append(Run(font, letters))


def _lost(count: int) -> str:
    if count == 1:
        return _("[1 letter that cannot be shown]")
    return _("[{n} letters that cannot be shown]").format(n=count)


def marked_up(words: str, font: str = REGULAR) -> str:
    """Words as paragraph markup: every sign escaped, every letter in a font that has it."""
    out = []
    for run in runs(words, font):
        safe = escape(run.letters, {'"': "&quot;", "'": "&#39;"}).replace("\n", "<br/>")
        out.append(safe if run.font == font else f'<font name="{run.font}">{safe}</font>')
    return "".join(out)


def markup(text: Text, font: str = REGULAR) -> str:
    """A text as paragraph markup. Figures of one working share one reference, at the end of their clause."""
    out: list[str] = []
    waiting = ""
    for i, part in enumerate(text):
        if isinstance(part, Figure):
            out.append(marked_up(part.shown, font))
            ref = part.trace.ref if isinstance(part.trace, Worked) else ""
            if ref and _next_ref(text[i + 1 :]) not in ("", ref):
                out.append(reference(ref))
            else:
                waiting = ref or waiting
            continue
        words = part.text if isinstance(part, Typed) else part
        end = _CLAUSE_END.search(words) if waiting and isinstance(part, str) else None
        if end is not None:
            out += [marked_up(words[: end.start()], font), reference(waiting), marked_up(words[end.start() :], font)]
            waiting = ""
        else:
            out.append(marked_up(words, font))
    if waiting:
        out.append(reference(waiting))
    return "".join(out)


def _next_ref(rest: Text) -> str:
    """The reference of the next figure of the same clause; "none" for a figure that needs none."""
    for part in rest:
        if isinstance(part, Figure):
            return part.trace.ref if isinstance(part.trace, Worked) else "none"
        if isinstance(part, str) and _CLAUSE_END.search(part):
            return ""
    return ""


def reference(ref: str) -> str:
    """A small grey reference that leads to the working in the appendix."""
    return f'{NBSP}<a href="#{ref}"><font size="5.8" color="{REF_COLOUR}">{ref}</font></a>'


def width(words: str, font: str, size: float) -> float:
    """Width in points of words as ``draw`` sets them."""
    return sum(float(pdfmetrics.stringWidth(r.letters, r.font, size)) for r in runs(words, font))


def fitted(words: str, font: str, size: float, room: float) -> str:
    """The words, cut with an ellipsis where they would not fit into ``room`` points."""
    if width(words, font, size) <= room:
        return words
    while words and width(words.rstrip() + "…", font, size) > room:
        words = words[:-1]
    return words.rstrip() + "…"


def draw(canvas: Any, x: float, y: float, words: str, font: str, size: float, align: str = "left") -> None:
    """Words straight onto the canvas; ``align`` left, middle or right of x."""
    if align != "left":
        x -= width(words, font, size) * (0.5 if align == "middle" else 1.0)
    for run in runs(words.replace("\n", " "), font):
        canvas.setFont(run.font, size)
        canvas.drawString(x, y, run.letters)
        x += float(pdfmetrics.stringWidth(run.letters, run.font, size))
