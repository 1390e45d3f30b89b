"""What is common to all readings of a session: a correction's own uncertainty where one is in force, else the gauge's
stated accuracy; carried into the change and the shop's picture."""

from __future__ import annotations

import math

import numpy as np
import pytest
from invented_findings import Hands

from detailbench.findings.changes import changes
from detailbench.findings.corrections import common_u_um
from detailbench.findings.room_left import clear_pictures
from detailbench.moves.gauge_correction import CorrectGauge
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetPaintSystem, SetState
from detailbench.thickness.clear_picture import ClearPicture

# zero 1.2, foil 102 reads 104.4: t = (r − 1.2)·102/103.2
ZERO_UM = (1.1, 1.2, 1.3, 1.2, 1.2)
FOIL_UM = (104.3, 104.4, 104.5, 104.4, 104.4)
SECOND_UM = (51.8, 51.7, 51.9, 51.8, 51.8)
AT_UM = 117.41860
ROOF = (120.0, 121.0, 119.0, 120.5, 119.5, 120.0, 121.5, 118.5)


def one_by_one(hands: Hands, panel: str, values: tuple[float, ...]) -> None:
    """Each at a place of its own: a failed check would send the walk back to the first."""
    for n, value in enumerate(values, 1):
        hands.read(panel, value, place=n)


def corrected(hands: Hands, panels: dict[str, tuple[float, ...]]) -> None:
    second = hands.do(AddToShop("shim", {"label": "foil 50", "value_um": 50.0}))
    hands.do(SetState(hands.job, tuple(panels), clean="wiped"))
    session = hands.session()
    hands.check(session, FOIL_UM, zero_um=ZERO_UM)
    hands.check(session, SECOND_UM, again=True, zero_um=ZERO_UM, foil=second)
    for panel, values in panels.items():
        one_by_one(hands, panel, values)
    hands.do(CorrectGauge(hands.job, session, hands.shop.foil, second, "zero drifted overnight"))


def by_hand_um(hands: Hands, at_um: float) -> float:
    """u² = g²·[(t/c − 1)² + (t/c)²]·s_r²/m + (t/c)²·u_c², g = c/(s − z)."""
    foil = next(s for s in hands.picture.shop.shims if s.id == hands.shop.foil)
    c, s_r = 102.0, float(np.std(FOIL_UM, ddof=1))
    gain = c / (float(np.mean(FOIL_UM)) - float(np.mean(ZERO_UM)))
    part = at_um / c
    return math.sqrt(gain**2 * ((part - 1) ** 2 + part**2) * s_r**2 / 5 + (part * foil.u_um) ** 2)


def test_a_correction_in_force_has_its_own_uncertainty_and_else_the_stated_accuracy_speaks(hands: Hands) -> None:
    corrected(hands, {"roof": ROOF})
    session = hands.picture.sessions[0]
    assert common_u_um(hands.picture, session, "steel", AT_UM) == pytest.approx(by_hand_um(hands, AT_UM))
    plain = hands.session()
    other = next(s for s in hands.picture.sessions if s.id == plain)
    assert common_u_um(hands.picture, other, "steel", AT_UM) == pytest.approx((1.0 + 0.01 * AT_UM) / math.sqrt(3))


def test_the_change_without_foils_in_both_sessions_carries_the_larger_of_the_two(hands: Hands) -> None:
    step = hands.adopted("roof")
    corrected(hands, {"roof": ROOF})
    hands.do_anyway("roof", step)
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.session()
    one_by_one(hands, "roof", tuple(v - 2.0 for v in ROOF))
    found = changes(hands.picture)["roof"].change
    assert found is not None
    mean = float(np.mean([(v - 1.2) * 102 / 103.2 for v in ROOF]))
    expected = max(by_hand_um(hands, mean), (1.0 + 0.01 * mean) / math.sqrt(3))
    assert found.working.inputs["u_cal_um"] == pytest.approx(expected, rel=1e-4)


def test_the_shops_picture_of_corrected_readings_carries_it_too(hands: Hands) -> None:
    for group in hands.picture.groups:
        hands.do(SetPaintSystem(hands.job, group.id, "clear_over_colour"))
    panels = ("roof", "tailgate", "door_front_l", "door_front_r", "door_rear_l", "door_rear_r")
    corrected(hands, {p: ROOF[:5] for p in panels})
    seen = clear_pictures(hands.picture)["roof"]
    assert isinstance(seen.found, ClearPicture)
    mean = float(np.mean([(v - 1.2) * 102 / 103.2 for v in ROOF[:5]]))
    assert seen.found.working.inputs["u_cal_um"] == pytest.approx(by_hand_um(hands, mean), rel=1e-4)
