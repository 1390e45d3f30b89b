"""What became of the shop's kit: which combinations of the range name a part that was replaced since, and which
combinations are the same thing under another name."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from detailbench.findings.kit_names import combinations_in_use, parts
from detailbench.findings.kit_told_apart import KIND_OF, first_of
from detailbench.record.picture import ShopPicture
from detailbench.record.things import Combination

PARTS = (("machine_id", "machines"), ("pad_id", "pads"), ("product_id", "products"))
HALF = " harder"  # ends the key of a half-rung: the same combination, rubbed harder, is told as another one
What = tuple[object, ...]
MOST_KEPT = 4  # the shop itself, and as it is told with half-rungs
_KEPT: list[tuple[ShopPicture, Mapping[str, str]]] = []


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
    was seen with the other. A pad that was given another diameter is another pad; one name for two pads makes them no
    one pad; a half-rung is never the combination it rubs harder with."""
    out: list[object] = [combination.id.endswith(HALF)]
    for part, (_name, field) in zip(parts(shop, combination), PARTS, strict=True):
        out += [first_of(getattr(shop, field), part).id, *(getattr(part, name) for name in KIND_OF[field])]
    return tuple(out)


def same_combinations(shop: ShopPicture, combination_id: str) -> frozenset[str]:
    """The ids of every combination that is this one, also under names it had before or has now."""
    now = stand_ins(shop)
    same = now.get(combination_id)
    return frozenset(id_ for id_, stands in now.items() if stands == same) | {combination_id}


def stand_ins(shop: ShopPicture) -> Mapping[str, str]:
    """Every combination → the one that stands for all that are the same as it: the one in the range now, the mildest of
    several; where none is in the range, the newest. Worked out once for a picture of the shop: every trial asks."""
    for known, found in _KEPT:
        if known is shop:
            return found
    found = _stand_ins(shop)
    _KEPT[:] = [(shop, found), *_KEPT[: MOST_KEPT - 1]]
    return found


def _stand_ins(shop: ShopPicture) -> Mapping[str, str]:
    place = {c.id: -i for i, c in enumerate(combinations_in_use(shop))}
    same: dict[What, list[Combination]] = {}
    for combination in shop.combinations:
        same.setdefault(what_it_is(shop, combination), []).append(combination)
    return {
        c.id: max(alike, key=lambda a: (a.id in place, place.get(a.id, 0), a.seq)).id
        for alike in same.values()
        for c in alike
    }


def stands_for(shop: ShopPicture, combination_id: str) -> str:
    """The id of the combination that stands for this one now."""
    return stand_ins(shop).get(combination_id, combination_id)
