"""Readings after the work taken hot and coated come out thicker: kept, not comparable, no removal stated."""

from __future__ import annotations

from invented_findings import Hands

from detailbench.findings.changes import changes
from detailbench.findings.panels import panel_seen
from detailbench.moves.surface import SetState

BEFORE = (118.0, 120.0, 116.0, 119.0, 121.0, 117.0, 122.0, 118.0)


def test_hot_and_coated_readings_after_the_work_are_kept_and_not_comparable(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("bonnet",), clean="wiped", cover="bare"))
    session = hands.checked_session(temperature_c=21.0)
    hands.read("bonnet", *BEFORE)
    hands.check(session, again=True)
    hands.do_anyway("bonnet", hands.adopted("bonnet"))
    hands.do(SetState(hands.job, ("bonnet",), clean="wiped", cover="protected"))
    session = hands.checked_session(temperature_c=31.0)
    hands.read("bonnet", *(v + 1.8 for v in BEFORE))
    hands.check(session, again=True)
    assert panel_seen(hands.picture, "bonnet", "polished").taken == len(BEFORE)
    found = changes(hands.picture)["bonnet"]
    assert found.change is None
    assert not found.for_print
    assert found.why_none.startswith("Not comparable")
    assert "protected after" in found.why_none
    assert "31" in found.why_none
