"""The order of the shop's range."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.findings.kit_names import combinations_in_use
from detailbench.moves.move import SHOP, Done
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
