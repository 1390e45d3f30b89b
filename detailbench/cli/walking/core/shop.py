"""The shop's own things, found by the name a person calls them."""

from __future__ import annotations

from typing import Any

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.kinds import amount
from detailbench.cli.walking.steps import shop as s
from detailbench.moves.shop import AddToShop, ChangeInShop, Retire, SetSetting
from detailbench.moves.starter import StockStarterKit
from detailbench.record.thing import ShopThing

LISTS = {
    "person": "people",
    "gauge": "gauges",
    "foil": "shims",
    "lamp": "lamps",
    "disc": "discs",
    "machine": "machines",
    "pad": "pads",
    "product": "products",
    "towel": "towels",
}
TABLES = {"foil": "shim", "disc": "sanding_disc"}


def found(hand: Hand, what: str, name: str, *, retired: bool = False) -> ShopThing:
    """The newest thing of this kind with this name. Raises Refused when the shop has none."""
    for thing in reversed(getattr(hand.bench.shop(), LISTS[what])):
        if name in (getattr(thing, "label", ""), getattr(thing, "name", "")) and thing.retired == retired:
            kept: ShopThing = thing
            return kept
    raise Refused(_("The shop has no {what} called “{name}”.").format(what=what, name=name), rule="not_in_shop")


def lamp_id(hand: Hand, name: str) -> str:
    """The lamp's id; empty where none is named."""
    return found(hand, "lamp", name).id if name else ""


def _given(**values: Any) -> dict[str, Any]:
    return {name: value for name, value in values.items() if value is not None}


def add_person(step: s.AddPerson, hand: Hand) -> None:
    initials = step.initials or "".join(word[0] for word in step.person.split())
    hand.do(AddToShop("person", {"name": step.person, "initials": initials, "role": step.role}))


def add_gauge(step: s.AddGauge, hand: Hand) -> None:
    values = _given(
        accuracy_fixed_um=amount(step.fixed),
        accuracy_share=step.share and step.share.value / 100,
        resolution_um=amount(step.resolution),
    )
    words = {"serial": step.serial, "certificate": step.certificate, "laboratory": step.laboratory}
    substrates = ("steel", "aluminium") if step.reads == "both" else (step.reads,)
    hand.do(AddToShop("gauge", {"name": step.gauge, "substrates": substrates, **values, **words}))


def add_foil(step: s.AddFoil, hand: Hand) -> None:
    values = _given(accuracy_um=amount(step.accuracy))
    certified = {
        "label": step.foil,
        "value_um": step.certified.um,
        "substrate": step.on,
        "certificate": step.certificate,
    }
    hand.do(AddToShop("shim", {**certified, **values}))


def add_lamp(step: s.AddLamp, hand: Hand) -> None:
    values = _given(colour_temperature_k=step.colour and int(step.colour.value))
    hand.do(AddToShop("lamp", {"name": step.lamp, "kind": step.kind, **values}))


def stock_kit(_step: s.StockKit, hand: Hand) -> None:
    hand.do(StockStarterKit())


def shop_setting(step: s.ShopSetting, hand: Hand) -> None:
    hand.do(SetSetting(step.key, step.setting))


def retire(step: s.RetireThing, hand: Hand) -> None:
    thing = found(hand, step.what, step.thing, retired=step.back)
    hand.do(Retire(TABLES.get(step.what, step.what), thing.id, back=step.back))


def rename(step: s.RenameThing, hand: Hand) -> None:
    thing = found(hand, step.what, step.thing)
    field = "label" if step.what == "foil" else "name"
    hand.do(ChangeInShop(TABLES.get(step.what, step.what), thing.id, {field: step.to}))


ACTS = {
    s.AddPerson: add_person,
    s.AddGauge: add_gauge,
    s.AddFoil: add_foil,
    s.AddLamp: add_lamp,
    s.StockKit: stock_kit,
    s.ShopSetting: shop_setting,
    s.RetireThing: retire,
    s.RenameThing: rename,
}
