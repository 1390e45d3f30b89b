"""The shop's range: its order, and what replaced a part of it since."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.findings.kit_names import combinations_in_use
from detailbench.findings.kit_renewal import PARTS, outdated
from detailbench.moves.move import SHOP, Done
from detailbench.record.things import Combination
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class MoveInRange:
    """A combination goes one place towards the strong end of the range (``by`` 1) or the mild end (-1).

    It stays the same combination: its trials in jobs that are open keep belonging to it."""

    undoable: ClassVar[bool] = True
    combination_id: str
    by: int

    def make(self, w: Writer) -> Done:
        if self.by not in (1, -1):
            raise BadInput(_("One place at a time."), field="by", given=self.by)
        order = list(combinations_in_use(w.shop()))
        at = next((i for i, c in enumerate(order) if c.id == self.combination_id), None)
        if at is None:
            raise Refused(_("That combination is not in the range."), rule="not_in_range")
        if not 0 <= at + self.by < len(order):
            raise Refused(
                _("It is the mildest already.") if self.by < 0 else _("It is the strongest already."), rule="end"
            )
        order.insert(at + self.by, order.pop(at))
        for rung, combination in enumerate(order):
            w.change(combination, rung=rung)
        return Done(SHOP, _("order of the range changed"), self.combination_id)


@dataclass(frozen=True)
class RenewRange:
    """What replaced a part of the range's combinations takes its place there, in all of them or in those named. The
    old combinations are retired with their names: trials made with them keep theirs."""

    undoable: ClassVar[bool] = True
    combination_ids: tuple[str, ...] = ()

    def make(self, w: Writer) -> Done:
        shop = w.shop()
        wanted = [(c, v) for c, v in outdated(shop) if not self.combination_ids or c.id in self.combination_ids]
        if not wanted:
            raise Refused(_("No part of the range was replaced since."), rule="nothing_to_renew")
        there = {_parts(c) for c in combinations_in_use(shop)}
        last = ""
        for old, values in wanted:
            w.change(old, retired=True)
            made = {name: getattr(old, name) for name, _field in PARTS} | dict(values)
            if tuple(made.values()) not in there:  # the range may hold the renewed one already
                last = w.add(Combination, rung=old.rung, **made).id
        return Done(SHOP, _("range takes what replaced its parts"), last)


def _parts(combination: Combination) -> tuple[str, ...]:
    return tuple(getattr(combination, name) for name, _field in PARTS)
