"""The small building blocks every card is made of. Style comes from the stylesheet by their ``role``."""

from __future__ import annotations

import html
from collections.abc import Callable
from typing import TypeVar

from PySide6 import QtGui
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QSizePolicy, QWidget

W = TypeVar("W", bound=QWidget)


def label(text: str, role: str = "", wrap: bool = False) -> QLabel:
    """A text. Never read as markup: what people type is shown as typed."""
    made = QLabel(text)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setWordWrap(wrap)
    if role:
        made.setProperty("role", role)
    return made


def tip(text: str) -> str:
    """A text for a tool tip, which would read as markup whatever looks like it: shown as typed all the same."""
    if not QtGui.Qt.mightBeRichText(text):
        return text
    return f'<span style="white-space: pre-wrap">{html.escape(text)}</span>'


def caption(text: str) -> QLabel:
    """A small soft label above or before something."""
    return label(text, "caption")


def heading(text: str) -> QLabel:
    """The card's or a group's name."""
    return label(text, "heading")


def figure(text: str) -> QLabel:
    """A large figure."""
    return label(text, "figure")


def sentence(text: str = "") -> QLabel:
    """Running words that wrap; ``set_kind`` turns it into a warning or a stop."""
    return label(text, "sentence", wrap=True)


def button(text: str, press: Callable[[], object], role: str = "", name: str = "") -> QPushButton:
    """A button. ``role`` main for the one thing to do here; ``name`` says more to the ear than the text does."""
    made = QPushButton(text.replace("&", "&&"))
    made.setAutoDefault(False)
    if role:
        made.setProperty("role", role)
    made.setAccessibleName(name or text)
    made.clicked.connect(lambda: press())
    return made


def gives_way(widget: W, least_px: int) -> W:
    """Let a list or a chart take what room is left, down to ``least_px``: it scrolls in itself, not the card."""
    widget.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
    widget.setMinimumHeight(least_px)
    return widget


def never_squeezed(words: QLabel) -> None:
    """As high as its words need at the width it has: where room is short the card scrolls, nothing lies over them."""
    words.setMinimumHeight(max(words.heightForWidth(words.width()), 0))


def rule(upright: bool = False) -> QFrame:
    """A hairline."""
    made = QFrame()
    made.setProperty("role", "rule")
    if upright:
        made.setFixedWidth(1)
    else:
        made.setFixedHeight(1)
    return made


def set_kind(widget: QWidget, kind: str) -> None:
    """Change a widget's ``kind`` and have the style follow."""
    if widget.property("kind") != kind:
        widget.setProperty("kind", kind)
        restyle(widget)


def restyle(widget: QWidget) -> None:
    """Look again at the style rules after a property changed."""
    widget.style().unpolish(widget)
    widget.style().polish(widget)


def area(widget: QWidget, name: str) -> QWidget:
    """Give a plain widget a background by name (surface, well, raised, sheet)."""
    widget.setProperty("area", name)
    widget.setAttribute(Qt.WidgetAttribute.WA_StyledBackground, True)
    return widget
