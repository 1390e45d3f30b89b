"""What makes a part of the kit another part than its namesake, and how its name says so."""

from __future__ import annotations

from typing import Any

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.record.picture import ShopPicture
from detailbench.trials.movement import Movement

# what makes a part another part; its name, batch, weight and declared values do not
KIND_OF = {
    "machines": ("movement", "orbit_mm", "own_rpm", "plate_mm"),
    "pads": ("material", "diameter_mm"),
    "products": ("kind",),
}
USED_AS = {"machines": "machine_id", "pads": "pad_id", "products": "product_id"}


def first_of(things: tuple[Any, ...], thing: Any) -> Any:
    """What a thing was before it was changed, and before that; the thing itself where it replaced nothing."""
    by_id = {t.id: t for t in things} if thing.replaces else {}
    while thing.replaces in by_id:
        thing = by_id[thing.replaces]
    return thing


def part_name(shop: ShopPicture, field: str, part: Any) -> str:
    """A part's name; where another part of the shop's combinations bears the same one, with what tells them apart: its
    size or kind, else a number. ``field``: machines, pads or products. What only changed its batch or declared values
    is the same part, and needs none."""
    things: tuple[Any, ...] = getattr(shop, field)
    name = _called(part)
    used = {getattr(c, USED_AS[field]) for c in shop.combinations}
    alike = [t for t in things if (t.id in used or t.id == part.id) and _called(t).casefold() == name.casefold()]
    own = _what(field, things, part)
    others = [t for t in alike if _what(field, things, t) != own]
    if not others:
        return name
    apart = [f for f in KIND_OF[field] if any(getattr(t, f) != getattr(part, f) for t in others)]
    told = " ".join([name, *filter(None, (_said(f, getattr(part, f)) for f in apart))])
    twins = [t for t in alike if all(getattr(t, f) == getattr(part, f) for f in KIND_OF[field])]
    # what is in the range keeps its name, what came later gets the number
    roots = list(dict.fromkeys(first_of(things, t).id for t in sorted(twins, key=lambda t: (t.retired, t.seq))))
    number = roots.index(first_of(things, part).id) + 1
    return told if number == 1 else _("{name} no. {n}").format(name=told, n=number)


def _called(part: Any) -> str:
    return _(part.name)


def _what(field: str, things: tuple[Any, ...], part: Any) -> tuple[object, ...]:
    return (first_of(things, part).id, *(getattr(part, name) for name in KIND_OF[field]))


def _said(field: str, value: Any) -> str:
    """One field of a part in words, as short as it is plain; empty where nothing is noted."""
    if value in (None, ""):
        return ""
    measures = {
        "diameter_mm": _("{n} mm"),
        "orbit_mm": _("orbit {n} mm"),
        "plate_mm": _("plate {n} mm"),
        "own_rpm": _("own turns {n}/min"),
    }
    if field in measures:
        return measures[field].format(n=format_number(value))
    if field == "movement":
        return Movement(value).label
    kinds = {
        "foam": _("foam"), "wool": _("wool"), "fibre": _("microfibre"), "cutting": _("cutting"), "medium": _("medium"),
        "finishing": _("finishing"), "one_step": _("one step"),
    }  # fmt: skip
    return kinds.get(value, str(value))
