"""A gauge that resolves layers, a gloss meter, places in shuts and underneath, in the Thickness stage."""

from __future__ import annotations

import math
import re

from detailbench.body.names import panel_name
from detailbench.cli.walking.kinds import Quantity
from detailbench.cli.walking.steps import layers as said_
from window.act import Act
from window.acts.expecting import panel_figures
from window.acts.marks import shares
from window.acts.shop import fill_given, turn
from window.acts.thickness import CARD, PLACES, back_to_panel, part
from window.stuck import Unusable
from window.walk import Walk

APART = "Places in shuts and underneath"
ADDS = {
    "shut": "Add a place in the shut here: .*",
    "underside": "Add a place on the underside here: .*",
    "control": "Add a place kept from the polishing here: .*",
}
WHERE = {"shut": "in the shut", "underside": "on the underside"}
WHEN = {"before": "as found", "after": "after the work"}
OUTCOMES = {
    "go_on": ("they do not contradict each other",),
    "hold": ("Hold and plan again",),
    "not_checked": ("Not checked", "not measured again yet"),
}
NUMBER = r"(-?\d+(?:\.\d+)?)"
ROOM = rf"Room left(?: after [^:]*)?: {NUMBER}\s?µm"


class AddLayerGauge(Act):
    step = said_.AddLayerGauge

    @staticmethod
    def play(said: said_.AddLayerGauge, walk: Walk) -> None:
        turn(walk, "Gauges")
        fill_given(
            walk,
            name=said.gauge,
            serial=said.serial,
            resolution=1.0 if said.resolution is None else said.resolution.value,
            fixed=1.0 if said.fixed is None else said.fixed.value,
            share=1.0 if said.share is None else said.share.value,
        )
        walk.hand.pick("principle", "ultrasonic")
        walk.hand.pick("reads on", "steel and aluminium")
        walk.hand.pick("resolves layers", "yes")
        walk.hand.press("Add: gauge")
        walk.eyes.line("Gauges", said.gauge)


class AddGlossMeter(Act):
    step = said_.AddGlossMeter

    @staticmethod
    def play(said: said_.AddGlossMeter, walk: Walk) -> None:
        turn(walk, "Gauges")
        walk.hand.pick("principle", "gloss meter")  # a meter is asked for its angles and for no µm
        fill_given(walk, name=said.gauge, serial=said.serial)
        angles = ", ".join(str(a) for a in said.angles)
        walk.hand.type_into("angles of a gloss meter, °: 20, 60, 85", angles)
        walk.hand.press("Add: gauge")
        walk.eyes.line("Gauges", said.gauge)


class TypeLayers(Act):
    step = said_.TypeLayers

    @staticmethod
    def play(said: said_.TypeLayers, walk: Walk) -> None:
        unit = said.values[0].unit
        text = " / ".join(shown(v) for v in said.values)
        to_place(walk, said.place)
        type_value(walk, text if unit == "um" else f"{text} {unit}")


class TypeGloss(Act):
    step = said_.TypeGloss

    @staticmethod
    def play(said: said_.TypeGloss, walk: Walk) -> None:
        to_place(walk, said.place)
        type_value(walk, f"{said.angle}: {shown(said.gloss)}")


class StrikeGlossValue(Act):
    """The notice of the value entered last says at which place it stands."""

    step = said_.StrikeGlossValue

    @staticmethod
    def play(said: said_.StrikeGlossValue, walk: Walk) -> None:
        part(walk, "Walk")
        back_to_panel(walk)
        found = re.search(rf"{panel_name(walk.panel)} (\d+): {NUMBER} GU at", walk.eyes.notice())
        if found is None:
            raise Unusable(f"no gloss value was entered last there; the notice line says: {walk.eyes.notice()}")
        walk.hand.choose(PLACES, f"place {found[1]}: ")
        walk.hand.press("Strike out the reading", CARD)


class PlaceApart(Act):
    step = said_.PlaceApart

    @staticmethod
    def play(said: said_.PlaceApart, walk: Walk) -> None:
        part(walk, "Walk")
        back_to_panel(walk)
        walk.hand.place(panel_name(walk.panel), *shares(walk.panel, said.at))
        name = walk.eyes.name_like(ADDS[said.where], CARD)
        walk.hand.press(name, CARD)
        walk.expect("added", lambda: name in walk.eyes.names(CARD), False)


class ExpectClear(Act):
    step = said_.ExpectClear

    @staticmethod
    def play(said: said_.ExpectClear, walk: Walk) -> None:
        panel_figures(walk, said.of)
        near(walk, "clear coat", rf"Clear coat by layer gauge: {NUMBER}\s?µm", said.clear)


class ExpectRoom(Act):
    """What is left is rounded down on the screen, so that it stays true."""

    step = said_.ExpectRoom

    @staticmethod
    def play(said: said_.ExpectRoom, walk: Walk) -> None:
        panel_figures(walk, said.of)
        wanted = math.floor(10 * said.room.value) / 10
        walk.expect("room left", lambda: figure(walk, ROOM), wanted)


class ExpectNoRoom(Act):
    step = said_.ExpectNoRoom

    @staticmethod
    def play(said: said_.ExpectNoRoom, walk: Walk) -> None:
        panel_figures(walk, said.of)
        walk.eyes.expect(said.part, CARD)
        walk.expect("room left", lambda: figure(walk, ROOM), None)


class ExpectGloss(Act):
    step = said_.ExpectGloss

    @staticmethod
    def play(said: said_.ExpectGloss, walk: Walk) -> None:
        panel_figures(walk, said.of)
        near(walk, "gloss", rf"{said.angle}°: {NUMBER} GU, [^\n]*, {WHEN[said.moment]}", said.gloss)


class ExpectGlossChange(Act):
    step = said_.ExpectGlossChange

    @staticmethod
    def play(said: said_.ExpectGlossChange, walk: Walk) -> None:
        panel_figures(walk)
        near(walk, "change of gloss", rf"\+?{NUMBER}\s?GU: [^\n]* after at {said.angle}°", said.change)


class ExpectNoGlossChange(Act):
    step = said_.ExpectNoGlossChange

    @staticmethod
    def play(said: said_.ExpectNoGlossChange, walk: Walk) -> None:
        panel_figures(walk)
        walk.eyes.expect(f"No before and after: {said.part}", CARD)


class ExpectHaze(Act):
    step = said_.ExpectHaze

    @staticmethod
    def play(said: said_.ExpectHaze, walk: Walk) -> None:
        panel_figures(walk)
        after = said.moment == "after"
        pattern = rf"Haze index [^\n]*before, {NUMBER} GU after" if after else rf"Haze index {NUMBER} GU"
        near(walk, "haze", pattern, said.haze)


class ExpectApart(Act):
    step = said_.ExpectApart

    @staticmethod
    def play(said: said_.ExpectApart, walk: Walk) -> None:
        panel_figures(walk)
        near(walk, "mean there", rf"{WHERE[said.where]}: mean {NUMBER}\s?µm", said.mean)


class ExpectFirstPanel(Act):
    step = said_.ExpectFirstPanel

    @staticmethod
    def play(said: said_.ExpectFirstPanel, walk: Walk) -> None:
        walk.hand.put_away_stop()
        walk.hand.turn_to("Work")
        walk.hand.turn_card("This panel")
        back_to_panel(walk)
        walk.expect("first panel", lambda: any(told(t, said) for t in walk.eyes.texts(CARD)), True)


def told(text: str, said: said_.ExpectFirstPanel) -> bool:
    """Whether this is what is said of the first panel."""
    return text.startswith("First panel") and said.part in text and any(w in text for w in OUTCOMES[said.outcome])


def to_place(walk: Walk, number: int | None) -> None:
    """The walk, at the place named or wherever it stands."""
    part(walk, "Walk")
    back_to_panel(walk)
    if number is not None:
        walk.hand.open_line(PLACES, f"place {number}: ")


def type_value(walk: Walk, text: str) -> None:
    """What is not taken stands in the field with what is wrong about it."""
    walk.hand.type_into("value", text, CARD)
    walk.hand.enter("Enter the value", CARD)
    if walk.eyes.said_of("value", CARD) == text:
        raise Unusable(f"“{text}” stays in the field: {' | '.join(walk.eyes.texts(CARD))}")


def shown(value: Quantity) -> str:
    """As many decimals as the script has."""
    return f"{value.value:.{value.digits}f}"


def figure(walk: Walk, pattern: str) -> float | None:
    """The figure of the first text that fits."""
    found = [m for t in walk.eyes.texts(CARD) if (m := re.search(pattern, t.replace("\u00a0", " ")))]
    return float(found[0][1]) if found else None


def near(walk: Walk, what: str, pattern: str, wanted: Quantity) -> None:
    """Wait until the figure on the card is the one wanted, as finely as the script says it."""

    def so() -> bool:
        value = figure(walk, pattern)
        return value is not None and wanted.fits(value)

    if not walk.wait(so):
        raise Unusable(f"{what}: {' | '.join(walk.eyes.texts(CARD))}")
