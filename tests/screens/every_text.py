"""Reads everything a window shows or says: labels, buttons, fields, lines, names for the ear, and what is painted."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QPainter
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QComboBox,
    QGraphicsSimpleTextItem,
    QGraphicsTextItem,
    QGraphicsView,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QTextEdit,
    QWidget,
)

from detailbench.screens.entry.tabs import Tabs
from detailbench.screens.pages.shop.kinds import kinds
from detailbench.screens.pages.shop.shop_view import ShopView
from detailbench.screens.stages.work_parts.pages import Pages


class Painted:
    """Every text our own painting puts on the glass."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.texts: set[str] = set()
        draw = QPainter.drawText

        def noted(painter: QPainter, *parts: object) -> object:
            self.texts |= {p for p in parts if isinstance(p, str)}
            return draw(painter, *parts)

        monkeypatch.setattr(QPainter, "drawText", noted)


class Reader:
    """Collects texts with the first place each was met at."""

    def __init__(self, window: QWidget, painted: Painted) -> None:
        self.window = window
        self.painted = painted
        self.met: dict[str, str] = {}

    def look(self, where: str) -> None:
        """Read the window as it stands."""
        QApplication.processEvents()
        self.painted.texts.clear()
        self.window.grab()
        self.read(self.window, where)
        for text in self.painted.texts:
            self.met.setdefault(text, f"{where}: painted")
        for text in spoken(self.window):
            self.met.setdefault(text, f"{where}: for the ear")

    def read(self, root: QWidget, where: str, but: Container[str] = ()) -> None:
        """The widgets of a part of the window, without looking at what is painted; ``but``: texts left out."""
        for widget in [root, *root.findChildren(QWidget)]:
            if widget is self.window or widget.isVisible():
                for text in of_widget(widget):
                    if text not in but:
                        self.met.setdefault(text, f"{where}: {type(widget).__name__}")

    def faults(self, words_of: Callable[[str], list[str]]) -> dict[str, str]:
        """Texts with untranslated words: text → where and which words."""
        found = {}
        for text, where in self.met.items():
            words = words_of(text)
            if words:
                found[text] = f"{where}: {' '.join(dict.fromkeys(words))}"
        return found


def of_widget(widget: QWidget) -> Iterator[str]:
    """What one widget shows and says."""
    yield widget.accessibleName()
    yield widget.accessibleDescription()
    yield widget.toolTip()
    if isinstance(widget, QLabel | QAbstractButton):
        yield widget.text()
    elif isinstance(widget, QLineEdit):
        yield widget.text()
        yield widget.placeholderText()
    elif isinstance(widget, QPlainTextEdit | QTextEdit):
        yield widget.toPlainText()
        yield widget.placeholderText()
    elif isinstance(widget, QComboBox):
        yield from (widget.itemText(i) for i in range(widget.count()))
    elif isinstance(widget, QGraphicsView) and widget.scene() is not None:
        items = widget.scene().items()
        yield from (i.toPlainText() for i in items if isinstance(i, QGraphicsTextItem))
        yield from (i.text() for i in items if isinstance(i, QGraphicsSimpleTextItem))
    elif isinstance(widget, QAbstractItemView) and widget.model() is not None:
        model = widget.model()
        for index in (model.index(row, 0) for row in range(model.rowCount())):
            yield str(index.data() or "")
            yield str(index.data(Qt.ItemDataRole.AccessibleTextRole) or "")


def spoken(window: QWidget) -> Iterator[str]:
    """What the parts of the map say, which are no widgets."""
    for widget in window.findChildren(QWidget):
        if not widget.isVisible() or not hasattr(widget, "items_by_key"):
            continue
        voice = QAccessible.queryAccessibleInterface(widget)
        for i in range(voice.childCount()):
            child = voice.child(i)
            if child is not None:
                yield child.text(QAccessible.Text.Name)
                yield child.text(QAccessible.Text.Description)


def parts_of(card: QWidget) -> Iterator[str]:
    """Turns to every part of a card or page, one after the other, and says its key."""
    QApplication.processEvents()
    turned = False
    for tabs in [t for t in card.findChildren(Tabs) if t.isVisible()]:
        for key in tabs.buttons:
            turned = True
            tabs.open_tab(key)
            yield key
    for pages in [p for p in card.findChildren(Pages) if p.isVisible()]:
        for key in list(pages._names):
            turned = True
            pages.turn(key)
            yield key
    if isinstance(card, ShopView):
        for key in (*(k.table for k in kinds()), "range", "settings", "screen"):
            turned = True
            card.turn(key)
            yield key
    if not turned:
        yield ""
