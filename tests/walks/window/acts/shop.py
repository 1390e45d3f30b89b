"""The shop's own things, on the Shop page."""

from __future__ import annotations

import re

from detailbench.cli.walking.kinds import Quantity
from detailbench.cli.walking.steps import shop as said_
from detailbench.marks.words import lamp_name
from window.act import Act
from window.stuck import Stuck, Unusable
from window.walk import Walk

SETTINGS = {
    "shop_name": "name of the workshop, as printed",
    "leave_below_um": "total thickness below which no machine starts, µm",
    "reserve_um": "clear coat that must stay, where a layer gauge measured it, µm",
    "largest_share": "largest share of the clear coat that may ever come off, 0.3 for 30 %",
    "most_risk": "largest chance of going below the reserve at a place, 0.05 for 5 %",
    "careful_below_um": "total thickness below which work goes on with care, µm",
    "usual_load_path_j_m2": "load × path of the shop's usual technique, J/m²",
}


WITH_RETIRED = "Show what is retired"
KINDS = {
    "person": ("People", "person"),
    "gauge": ("Gauges", "gauge"),
    "foil": ("Zero plates and foils", "zero plate or foil"),
    "lamp": ("Lamps", "lamp"),
    "machine": ("Machines", "machine"),
    "pad": ("Pads", "pad"),
    "product": ("Compounds and polishes", "compound or polish"),
    "towel": ("Towels", "towel"),
    "disc": ("Sanding discs", "sanding disc"),
}


def turn(walk: Walk, part: str) -> None:
    """Open a part of the Shop page."""
    walk.hand.turn_to("Shop")
    walk.hand.pick("Shop", part)


def fill_given(walk: Walk, **fields: object) -> None:
    """Type what the script gives; names of fields as on the screen, by keyword in ``FIELDS``."""
    for key, value in fields.items():
        if value not in (None, ""):
            walk.hand.type_into(FIELDS[key], f"{value:g}" if isinstance(value, float) else str(value))


FIELDS = {
    "name": "name",
    "initials": "initials",
    "role": "role",
    "serial": "serial number",
    "resolution": "last digit, µm",
    "fixed": "accuracy, fixed ±, µm",
    "share": "accuracy, ± % of the reading",
    "certificate": "certificate",
    "laboratory": "laboratory",
    "certified": "certified value, µm",
    "tolerance": "tolerance ±, µm",
    "uncertainty": "standard uncertainty, µm",
}


def given(quantity: Quantity | None, else_: float) -> float:
    """What the script says, else what moves take for granted: on the screen it has to be typed off the papers."""
    return else_ if quantity is None else quantity.value


class AddPerson(Act):
    step = said_.AddPerson

    @staticmethod
    def play(said: said_.AddPerson, walk: Walk) -> None:
        turn(walk, "People")
        fill_given(walk, name=said.person, initials=said.initials, role=said.role)
        walk.hand.press("Add: person")
        walk.eyes.line("People", said.person)


class AddGauge(Act):
    step = said_.AddGauge

    @staticmethod
    def play(said: said_.AddGauge, walk: Walk) -> None:
        turn(walk, "Gauges")
        fill_given(
            walk,
            name=said.gauge,
            serial=said.serial,
            resolution=given(said.resolution, 1.0),
            fixed=given(said.fixed, 1.0),
            share=given(said.share, 1.0),
            certificate=said.certificate,
            laboratory=said.laboratory,
        )
        walk.hand.press("Add: gauge")
        walk.eyes.line("Gauges", said.gauge)


class AddFoil(Act):
    step = said_.AddFoil

    @staticmethod
    def play(said: said_.AddFoil, walk: Walk) -> None:
        turn(walk, "Zero plates and foils")
        fill_given(
            walk,
            name=said.foil,
            certified=said.certified.value,
            tolerance=given(said.accuracy, 0.5),
            uncertainty=given(None, 0.25),
            certificate=said.certificate,
        )
        walk.hand.press("Add: zero plate or foil")
        walk.eyes.line("Zero plates and foils", said.foil)


class AddLamp(Act):
    step = said_.AddLamp

    @staticmethod
    def play(said: said_.AddLamp, walk: Walk) -> None:
        turn(walk, "Lamps")
        walk.hand.type_into("name", said.lamp)
        if said.colour is not None:
            walk.hand.type_into("colour temperature, K", f"{said.colour.value:g}")
        walk.hand.pick("kind", lamp_name(said.kind))
        walk.hand.press("Add: lamp")
        walk.eyes.line("Lamps", said.lamp)


class StockKit(Act):
    step = said_.StockKit

    @staticmethod
    def play(said: said_.StockKit, walk: Walk) -> None:
        walk.hand.turn_to("Shop")
        walk.hand.press("Put the starter kit on the shelf")


class RetireThing(Act):
    step = said_.RetireThing

    @staticmethod
    def play(said: said_.RetireThing, walk: Walk) -> None:
        many, one = chosen(walk, said.what, said.thing, retired=said.back)
        before = len(in_use(walk, many))
        walk.hand.press(f"Take back into use: {one}" if said.back else f"Retire: {one}")
        walk.expect(many, lambda: len(in_use(walk, many)), before + (1 if said.back else -1))
        if said.back:
            walk.hand.press(WITH_RETIRED)


class RenameThing(Act):
    step = said_.RenameThing

    @staticmethod
    def play(said: said_.RenameThing, walk: Walk) -> None:
        many, one = chosen(walk, said.what, said.thing)
        walk.hand.type_into("name", said.to)
        walk.hand.press(f"Keep the change: {one}")
        walk.eyes.line(many, said.to)


def in_use(walk: Walk, many: str) -> list[str]:
    """The lines of a list of the shop that are not of retired things."""
    return [line for line in walk.eyes.lines(many) if not line.endswith("\nretired")]


def chosen(walk: Walk, what: str, name: str, *, retired: bool = False) -> tuple[str, str]:
    """Choose a thing of the shop by its name; what its list is called, and one of its kind."""
    many, one = KINDS[what]
    turn(walk, many)
    if retired:
        walk.hand.press(WITH_RETIRED)
    begun = [line for line in walk.eyes.lines(many) if re.match(rf"{re.escape(name)}( · | \(|\n|$)", line)]
    begun = [line for line in begun if (line in in_use(walk, many)) != retired]
    if not begun:
        raise Unusable(f"“{many}” has no “{name}”; its lines are: {walk.eyes.lines(many)}")
    walk.hand.choose(many, begun[-1])
    return many, one


class ShopSetting(Act):
    step = said_.ShopSetting

    @staticmethod
    def play(said: said_.ShopSetting, walk: Walk) -> None:
        if said.key not in SETTINGS:
            raise Stuck(f"nobody has found the setting “{said.key}” on the screen yet")
        turn(walk, "Settings")
        typed = f"{said.setting:g}" if isinstance(said.setting, float) else str(said.setting or "")
        walk.hand.fill(SETTINGS[said.key], typed)
