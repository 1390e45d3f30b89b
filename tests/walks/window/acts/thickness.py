"""The gauge, its checks, and readings, in the Thickness stage."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.cli.walking.kinds import Quantity
from detailbench.cli.walking.steps import measuring as said_
from window.act import Act
from window.acts.marks import shares
from window.walk import Walk

CARD = "Card"
PLACES = "Places of this panel"
NO_VALUE = {
    "nothing": ("nothing shown", "F3"),
    "over_range": ("over range", "Shift+F3"),
    "no_metal": ("no metal", "Ctrl+F3"),
}
GAP_S = 4.0  # a person does not read two places within the time of a double trigger


class BeginSession(Act):
    step = said_.BeginSession

    @staticmethod
    def play(said: said_.BeginSession, walk: Walk) -> None:
        part(walk, "Gauge")
        again = walk.eyes.has("Begin a new spell with the gauge", CARD)
        if again:
            walk.hand.press("Begin a new spell with the gauge", CARD)
        if walk.eyes.controls(f"gauge: {said.gauge}", CARD):
            walk.hand.pick("gauge", said.gauge, CARD)
        if said.temperature is not None:
            walk.hand.type_into("surface temperature, °C (empty: not recorded)", f"{said.temperature.value:g}", CARD)
        walk.hand.press("Begin a new spell with it" if again else "Take this gauge in hand", CARD)


class CheckGauge(Act):
    step = said_.CheckGauge

    @staticmethod
    def play(said: said_.CheckGauge, walk: Walk) -> None:
        part(walk, "Gauge")
        if said.again and walk.eyes.has("Check the gauge again (closing check)", CARD):
            walk.hand.press("Check the gauge again (closing check)", CARD)
        if walk.eyes.controls(f"foil: {said.foil}", CARD):
            walk.hand.pick("foil", said.foil, CARD)
        for reading in said.values:
            enter(walk, "raw value", reading)


class CorrectReadings(Act):
    step = said_.CorrectReadings

    @staticmethod
    def play(said: said_.CorrectReadings, walk: Walk) -> None:
        part(walk, "Gauge")
        walk.hand.press("Correct by two points…", CARD)
        walk.hand.type_into("reason for the correction (printed)", said.reason, CARD)
        walk.hand.press("Correct the readings of this spell", CARD)


class TypeReading(Act):
    step = said_.TypeReading

    @staticmethod
    def play(said: said_.TypeReading, walk: Walk) -> None:
        part(walk, "Walk")
        back_to_panel(walk)
        enter(walk, "value", said.reading)


class TypeReadings(Act):
    step = said_.TypeReadings

    @staticmethod
    def play(said: said_.TypeReadings, walk: Walk) -> None:
        part(walk, "Walk")
        back_to_panel(walk)
        gap_s = GAP_S if said.every is None else said.every.value
        for i, reading in enumerate(said.values):
            if i:
                walk.clock.forward(seconds=gap_s)
            enter(walk, "value", reading)


class GaugeSends(Act):
    """The gauge is a device of its own: whoever has the keys, its signs come in one breath."""

    step = said_.GaugeSends

    @staticmethod
    def play(said: said_.GaugeSends, walk: Walk) -> None:
        walk.gauge_sends(typed(said.reading))


class NoValue(Act):
    step = said_.NoValue

    @staticmethod
    def play(said: said_.NoValue, walk: Walk) -> None:
        part(walk, "Walk")
        back_to_panel(walk)
        name, key = NO_VALUE[said.why]
        walk.hand.act(f"No value: {name}", key, CARD)


class ChosenPlace(Act):
    step = said_.ChosenPlace

    @staticmethod
    def play(said: said_.ChosenPlace, walk: Walk) -> None:
        part(walk, "Walk")
        back_to_panel(walk)
        before = len(walk.eyes.lines(PLACES))
        walk.hand.place(panel_name(walk.panel), *shares(walk.panel, said.at))
        walk.hand.press(walk.eyes.name_like("Add a place here: .*", CARD), CARD)
        walk.expect("places", lambda: len(walk.eyes.lines(PLACES)), before + 1)


def part(walk: Walk, title: str) -> None:
    """Open a part of the Thickness card."""
    walk.hand.turn_to("Thickness")
    walk.hand.turn_card(title)


def back_to_panel(walk: Walk) -> None:
    """The script's panel is in hand, whatever the program turned to after a panel was complete."""
    if walk.panel:
        walk.hand.panel(panel_name(walk.panel))


def enter(walk: Walk, field: str, reading: Quantity) -> None:
    """Type one value into its field and enter it."""
    walk.hand.type_into(field, typed(reading), CARD)
    walk.hand.enter("Enter the value", CARD)


def typed(reading: Quantity) -> str:
    """A value as a person types it: as many decimals as the script has."""
    number = f"{reading.value:.{reading.digits}f}"
    return number if reading.unit == "um" else f"{number} {reading.unit}"
