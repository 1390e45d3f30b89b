"""What became of the shop's kit: which combinations of the range name a part that was replaced since, and which
combinations are the same thing under another name."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from detailbench.findings.kit_names import combinations_in_use, parts
from detailbench.record.picture import ShopPicture
from detailbench.record.things import Combination

PARTS = (("machine_id", "machines"), ("pad_id", "pads"), ("product_id", "products"))
# what makes a part another part; its name, batch, weight and declared values do not
KIND_OF = {
    "machines": ("movement", "orbit_mm", "own_rpm", "plate_mm"),
    "pads": ("material", "diameter_mm"),
    "products": ("kind",),
}
What = tuple[object, ...]


def newest(things: tuple[Any, ...], id_: str) -> Any:
    """What replaced a thing, and what replaced that; the thing itself where nothing did."""
    by_old = {t.replaces: t for t in things if t.replaces}
    found = next(t for t in things if t.id == id_)
    while found.id in by_old:
        found = by_old[found.id]
    return found


def renewed_parts(shop: ShopPicture, combination: Combination) -> Mapping[str, str]:
    """Field → id of what replaced a part of it since and is in use; empty where there is none."""
    out = {}
    for name, field in PARTS:
        had = getattr(combination, name)
        now = newest(getattr(shop, field), had)
        if now.id != had and not now.retired:
            out[name] = now.id
    return out


def outdated(shop: ShopPicture) -> tuple[tuple[Combination, Mapping[str, str]], ...]:
    """The combinations of the range that could take what replaced a part of theirs, mildest first."""
    found = ((c, renewed_parts(shop, c)) for c in combinations_in_use(shop))
    return tuple((c, values) for c, values in found if values)


def what_it_is(shop: ShopPicture, combination: Combination) -> What:
    """The same for two combinations whose parts differ in name, batch or declared values only: what was seen with one
    was seen with the other. A pad that was given another diameter is another pad."""
    out: list[object] = []
    for part, (_name, field) in zip(parts(shop, combination), PARTS, strict=True):
        by_id = {t.id: t for t in getattr(shop, field)}
        first: Any = part
        while first.replaces in by_id:
            first = by_id[first.replaces]
        out += [first.id, *(getattr(part, name) for name in KIND_OF[field])]
    return tuple(out)


def same_combinations(shop: ShopPicture, combination_id: str) -> frozenset[str]:
    """The ids of every combination that is this one, also under names it had before or has now."""
    what = {c.id: what_it_is(shop, c) for c in shop.combinations}
    return frozenset(id_ for id_, each in what.items() if each == what.get(combination_id)) | {combination_id}
