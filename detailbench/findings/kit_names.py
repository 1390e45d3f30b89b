"""Names and values of the shop's kit as a job used it; retired things keep the name of then."""

from __future__ import annotations

from detailbench.basics.texts import _, language
from detailbench.findings.kit_told_apart import part_name
from detailbench.record.picture import ShopPicture, one
from detailbench.record.thing import Thing
from detailbench.record.things import Combination, Machine, Pad, ProcessStep, Product


def parts(shop: ShopPicture, combination: Combination) -> tuple[Machine, Pad, Product]:
    """Machine, pad and compound or polish of a combination."""
    return (
        one(shop.machines, combination.machine_id),
        one(shop.pads, combination.pad_id),
        one(shop.products, combination.product_id),
    )


def combination_name(shop: ShopPicture, combination_id: str) -> str:
    """ "free orbital · foam pad · fine polish". Where parts of one name are in the shop's combinations, the name says
    what tells them apart: no two combinations of different parts are called the same."""
    # beside the fields, as in told_once: every rung of every range asks again, and a picture never changes
    kept: dict[tuple[str, str], str] = vars(shop).setdefault("_combination_names", {})
    key = (combination_id, language())
    if key not in kept:
        machine, pad, product = parts(shop, one(shop.combinations, combination_id))
        named = (("machines", machine), ("pads", pad), ("products", product))
        kept[key] = " · ".join(part_name(shop, field, part) for field, part in named)
    return kept[key]


def step_name(shop: ShopPicture, step: ProcessStep) -> str:
    """What a step is done with: its combination, or the disc it sands with."""
    if step.means != "sanding":
        return combination_name(shop, step.combination_id)
    disc = next((d for d in shop.discs if d.id == step.disc_id), None)
    return _("sanding") if disc is None else _("sanding · {disc}").format(disc=disc.name)


def combinations_in_use(shop: ShopPicture) -> tuple[Combination, ...]:
    """The shop's range, mildest first, without what is retired."""
    return tuple(sorted((c for c in shop.combinations if not c.retired), key=lambda c: (c.rung, c.seq)))


def lamp_name(shop: ShopPicture, lamp_id: str) -> str:
    """A lamp's name, or "no lamp noted"."""
    return _(one(shop.lamps, lamp_id).name) if lamp_id else _("no lamp noted")


def person_name(shop: ShopPicture, person_id: str) -> str:
    """Name of who entered something, or "not stated"."""
    for person in shop.people:
        if person.id == person_id:
            return person.name
    return _("not stated")


def initials(shop: ShopPicture, person_id: str) -> str:
    """Initials of who entered something; a dash where nobody was chosen."""
    return next((person.initials or person.name for person in shop.people if person.id == person_id), "–")


def with_initials(shop: ShopPicture, text: str, *things: Thing) -> str:
    """A line of a list with the initials of who entered what it tells of."""
    who = ", ".join(dict.fromkeys(initials(shop, thing.entered_by) for thing in things))
    return f"{text} · {who}" if who else text
