"""What of the shop's kit is out of use: a combination that was retired, or of which a part was, is proposed for no new
trial. A part that goes on under another name is not out of use."""

from __future__ import annotations

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.kit_names import combination_name, combinations_in_use, parts
from detailbench.findings.kit_renewal import PARTS, newest, what_it_is
from detailbench.record.picture import JobPicture, ShopPicture
from detailbench.record.things import Combination

NAMED = 3


def part_retired(shop: ShopPicture, combination: Combination) -> bool:
    """A part of it is retired, and so is whatever replaced that part."""
    each = zip(parts(shop, combination), PARTS, strict=True)
    return any(part.retired and newest(getattr(shop, field), part.id).retired for part, (_name, field) in each)


def out_of_use(shop: ShopPicture) -> frozenset[str]:
    """Ids of the combinations no new trial can be made with; one that is in the range under another name can."""
    gone = {c.id for c in shop.combinations if c.retired or part_retired(shop, c)}
    if not gone:
        return frozenset()
    alive = {what_it_is(shop, c) for c in shop.combinations if c.id not in gone}
    return frozenset(c.id for c in shop.combinations if c.id in gone and what_it_is(shop, c) not in alive)


def out_of_use_here(picture: JobPicture) -> frozenset[str]:
    """The same for a job in work; once its car has left nothing is tried in it, and what is retired later changes
    nothing of what it tells."""
    left = bool(picture.visits) and picture.visits[-1].left_at is not None
    return frozenset() if left else out_of_use(picture.shop)


def hang_on(shop: ShopPicture, part_id: str) -> tuple[Combination, ...]:
    """The combinations of the range a machine, pad or compound is part of, mildest first."""
    return tuple(c for c in combinations_in_use(shop) if part_id in (getattr(c, name) for name, _field in PARTS))


def hang_on_words(shop: ShopPicture, part_id: str) -> str:
    """What retiring this part would take from new trials; empty where no combination of the range has it."""
    names = [combination_name(shop, c.id) for c in hang_on(shop, part_id)]
    if not names:
        return ""
    told = "; ".join(names[:NAMED])
    if len(names) > NAMED:
        told = _("{names} and {n} more").format(names=told, n=format_number(len(names) - NAMED))
    return _("In the range with it: {names}. Once it is retired they are proposed for no new trial.").format(names=told)
