"""What the list of things due at handover says beside its tick."""

from __future__ import annotations

from invented_findings import Hands, hands
from invented_shop import invented, prepared

from detailbench.findings.due_handover import handover_list
from detailbench.screens.stages.handover.due_words import due_state

__all__ = ["hands", "invented", "prepared"]


def test_nothing_measured_before_is_no_tick_beside_a_nought(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.polish("roof", step)
    open_ = not handover_list(hands.picture)["after_readings"]
    told = due_state(hands.picture, "after_readings", open_, hands.shop.clock.now())
    assert (open_, told) == (False, "none due: nothing was measured before the work")
