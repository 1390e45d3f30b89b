"""The gauge, its checks, and readings, in the Thickness stage."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.cli.walking.kinds import Quantity
from detailbench.cli.walking.steps import measuring as said_
from window.act import Act
from window.walk import Walk

CARD = "Card"
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
        for reading in said.values:
            enter(walk, "raw value", reading)


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
