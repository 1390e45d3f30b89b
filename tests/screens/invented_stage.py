"""Two invented stages for the frame's tests."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from detailbench.basics.workings import Source, Working
from detailbench.screens.actions import Action
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.number_field import NumberField
from detailbench.screens.entry.text_field import NoteField, TextField
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.map.colouring import Colouring, Drawing, DrawnMark, DrawnPlace, PanelFill
from detailbench.screens.stages.stage import ColouringChoice, FarFacts, Stage


def press(key: Qt.Key, modifiers: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
    """Strike a key in whatever has the focus."""
    focused = QApplication.focusWidget()
    assert focused is not None
    QTest.keyClick(focused, key, modifiers)


def invented_working() -> Working:
    return Working(
        "mean_um",
        "mean = sum / count",
        {"readings_um": [118.0, 121.0]},
        {"mean_um": 119.5},
        Source("schoolbook arithmetic", kind="common practice"),
        changes_with="another reading",
    )


class InventedCard(QWidget):
    """One of each kind of field."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        self.number = NumberField("reading")
        self.note = NoteField("note")
        self.text = TextField("where the keys hang")
        self.choice = ChoiceRow("surface", (("dirty", "dirty"), ("washed", "washed"), ("wiped", "wiped")))
        self.why = WhyButton(invented_working, context.show_working)
        for part in (self.why, self.number, self.note, self.text, self.choice):
            column.addWidget(part)


class InventedStage(Stage):
    """Counts two of five, colours the bonnet, has one place and one mark; the key ``k`` is written down."""

    key = "invented"
    title = "Invented"

    def __init__(self) -> None:
        self.card: InventedCard | None = None
        self.pressed: list[str] = []

    def make_card(self, context: Context) -> QWidget:
        self.card = InventedCard(context)
        return self.card

    def counts(self, picture: Any) -> tuple[float, int]:
        return 2, 5

    def what_next(self, context: Context) -> str:
        return "bonnet, place 3 of 8"

    def colourings(self) -> tuple[ColouringChoice, ...]:
        return (ColouringChoice("readings", "readings", _coloured), ColouringChoice("plain", "nothing", _plain))

    def drawing(self, context: Context) -> Drawing:
        x, y = context.outline.panels["bonnet"].label
        return Drawing(
            marks=(DrawnMark("bonnet", "line", ((x - 100, y), (x + 100, y + 50))),),
            places=(DrawnPlace("bonnet", 3, x + 200, y),),
        )

    def far(self, context: Context) -> FarFacts:
        return FarFacts("bonnet, place 3", "118.5 µm", "place 4", "5 left")

    def actions(self, context: Context) -> tuple[Action, ...]:
        return (
            Action("k", "note it", "k", lambda: self.pressed.append("k")),
            Action("finish", "start / finish", "F9", lambda: self.pressed.append("F9")),
        )


class SecondStage(Stage):
    """Nothing but a name."""

    key = "second"
    title = "Second"

    def make_card(self, context: Context) -> QWidget:
        return QWidget()

    def counts(self, picture: Any) -> tuple[float, int]:
        return 4, 4


def _coloured(context: Context) -> Colouring:
    fills = {
        "bonnet": PanelFill(0.5, "", "118", "mean 118 µm"),
        "fuel_flap": PanelFill(0.2, "", "104", "mean 104 µm"),
        "roof": PanelFill(None, "rising", "", "no value"),
    }
    return Colouring("readings", "readings", fills, "90 µm", "150 µm", (("rising", "no value"),))


def _plain(context: Context) -> Colouring:
    return Colouring("plain", "nothing")
