"""The gauge, its checks, and readings, in the Thickness stage."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.cli.walking.kinds import Quantity
from detailbench.cli.walking.steps import measuring as said_
from window.act import Act
from window.acts.marks import shares
from window.stuck import Unusable
from window.walk import Walk

CARD = "Card"
PLACES = "Places of this panel"
NO_VALUE = {
    "nothing": ("nothing shown", "F3"),
    "over_range": ("over range", "Shift+F3"),
    "no_metal": ("no metal", "Ctrl+F3"),
}
ASKED = "Which is meant?: no value"
DOUBTS = {
    "nothing": ("0 means bare metal here; no value?", "It was no value"),
    "mil": ("Did the gauge switch to mil?", "It was mil"),
}
SENT_MS = 120
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
        spell = walk.eyes.has("Begin a new spell with it", CARD)  # another one picked is taken in hand
        walk.hand.press("Begin a new spell with it" if spell else "Take this gauge in hand", CARD)


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


class GaugeSendsMany(Act):
    """No hand is as fast: the values lie a fraction of a second apart by their stamps."""

    step = said_.GaugeSendsMany

    @staticmethod
    def play(said: said_.GaugeSendsMany, walk: Walk) -> None:
        for i, reading in enumerate(said.values):
            walk.gauge_sends(typed(reading), i * SENT_MS)


class TypeAsItIs(Act):
    """What is not taken stands in the field with what is wrong about it, or what is asked."""

    step = said_.TypeAsItIs

    @staticmethod
    def play(said: said_.TypeAsItIs, walk: Walk) -> None:
        part(walk, "Walk")
        back_to_panel(walk)
        walk.hand.type_into("value", said.text, CARD)
        walk.hand.enter("Enter the value", CARD)
        if walk.eyes.said_of("value", CARD) == said.text:
            raise Unusable(f"“{said.text}” stays in the field: {' | '.join(walk.eyes.texts(CARD))}")


class NoValue(Act):
    """Where a 0 stands in the field and is asked about, that question is what is answered."""

    step = said_.NoValue

    @staticmethod
    def play(said: said_.NoValue, walk: Walk) -> None:
        part(walk, "Walk")
        back_to_panel(walk)
        if said.why == "nothing" and walk.eyes.has(ASKED, CARD):
            walk.hand.press(ASKED, CARD)
            return
        name, key = NO_VALUE[said.why]
        walk.hand.act(f"No value: {name}", key, CARD)


class ReadingWas(Act):
    step = said_.ReadingWas

    @staticmethod
    def play(said: said_.ReadingWas, walk: Walk) -> None:
        part(walk, "Walk")
        back_to_panel(walk)
        doubt, button = DOUBTS[said.what]
        doubtful = [line for line in walk.eyes.lines(PLACES) if doubt in line]
        if not doubtful:
            raise Unusable(f"no place says “{doubt}”")
        walk.hand.choose(PLACES, doubtful[-1])
        walk.hand.press(button, CARD)


class ShiftFrom(Act):
    step = said_.ShiftFrom

    @staticmethod
    def play(said: said_.ShiftFrom, walk: Walk) -> None:
        part(walk, "Walk")
        back_to_panel(walk)
        walk.hand.choose(PLACES, f"place {said.place}: ")
        walk.hand.press("Move this and all after it one place back", CARD)


class ChangeSide(Act):
    step = said_.ChangeSide

    @staticmethod
    def play(said: said_.ChangeSide, walk: Walk) -> None:
        part(walk, "Walk")
        back_to_panel(walk)
        taken = [line for line in walk.eyes.lines(PLACES) if not line.endswith("due")]
        if not taken:
            raise Unusable("that panel has no reading to move")
        walk.hand.choose(PLACES, taken[-1])
        walk.hand.press("These readings belong to the twin panel", CARD)
        meant = r"\d+ panels of this side" if said.whole_side else panel_name(walk.panel)
        walk.hand.press(walk.eyes.name_like(f"move to the other side of the car: {meant}", CARD), CARD)


class DecideOddPlace(Act):
    step = said_.DecideOddPlace

    @staticmethod
    def play(said: said_.DecideOddPlace, walk: Walk) -> None:
        part(walk, "Panel")
        back_to_panel(walk)
        walk.eyes.expect(f"Place {said.place} stands out", CARD)
        walk.hand.type_into("reason (printed)", said.reason, CARD)
        walk.hand.press({"set_aside": "Set aside", "kept": "Keep it"}[said.decision], CARD)
        done = {"set_aside": "set aside", "kept": "kept"}[said.decision]
        if not walk.wait(lambda: walk.eyes.says(f"place {said.place} {done}: {said.reason}", CARD)):
            raise Unusable(f"it is not decided; the notice line says: {walk.eyes.notice()}")


class ImportFile(Act):
    """The dialog names the file, the card says what can be taken, one press takes it."""

    step = said_.ImportFile

    @staticmethod
    def play(said: said_.ImportFile, walk: Walk) -> None:
        part(walk, "File")
        if said.panel:
            walk.hand.panel(panel_name(said.panel))
        walk.hand.press("Choose a file of readings", CARD)
        walk.hand.choose_file(walk.beside / said.file)
        walk.eyes.expect(said.file, CARD)
        if said.unit != "um":
            walk.hand.pick("values without a unit are in", said.unit, CARD)
        if walk.eyes.has("Lines not taken, and why", CARD):
            raise Unusable(f"not all of it can be taken: {walk.eyes.lines('Lines not taken, and why')}")
        take = walk.eyes.name_like(r"Take \d+ readings in", CARD)
        walk.hand.press(take, CARD)
        walk.expect("taken in", lambda: take in walk.eyes.names(CARD), False)


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
