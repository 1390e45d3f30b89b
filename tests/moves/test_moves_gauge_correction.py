"""A two-point correction: a person's decision, proved on a second foil; raw values and failed checks stay."""

from __future__ import annotations

import pytest
from invented_findings import Hands, hands
from invented_shop import invented, prepared

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.changes import changes
from detailbench.findings.corrections import Corrected, offered
from detailbench.findings.gauges import confirmations, failed_now, rounds
from detailbench.findings.panels import panel_seen
from detailbench.moves.gauge_correction import CorrectGauge, TakeCorrectionBack
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetState

__all__ = ["hands", "invented", "prepared"]

# the gauge reads 2.4 µm and more too high: zero 1.2, foil 102 reads 104.4, so t = (r − 1.2)·102/103.2
ZERO_UM = (1.1, 1.2, 1.3, 1.2, 1.2)
FOIL_UM = (104.3, 104.4, 104.5, 104.4, 104.4)
SECOND_UM = (51.8, 51.7, 51.9, 51.8, 51.8)  # corrected: 50.01
REASON = "zero drifted overnight"


def second_foil(hands: Hands) -> str:
    return hands.do(AddToShop("shim", {"label": "foil 50", "value_um": 50.0}))


def drifted(hands: Hands, second_um: tuple[float, ...] = SECOND_UM) -> tuple[str, str]:
    """A gauge that reads too high, checked on two foils, and a roof read with it; session and second foil."""
    second = second_foil(hands)
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    session = hands.session()
    hands.check(session, FOIL_UM, zero_um=ZERO_UM)
    hands.check(session, second_um, again=True, zero_um=ZERO_UM, foil=second)
    hands.read("roof", *([120.0] * 8))
    return session, second


def correct(hands: Hands, session: str, second: str, reason: str = REASON) -> str:
    return hands.do(CorrectGauge(hands.job, session, hands.shop.foil, second, reason))


def test_a_correction_makes_the_figures_and_leaves_the_raw_values(hands: Hands) -> None:
    session, second = drifted(hands)
    assert hands.figures("roof").mean_um == pytest.approx(120.0)
    correct(hands, session, second)
    assert hands.figures("roof").mean_um == pytest.approx((120.0 - 1.2) * 102 / 103.2)  # 117.41860
    assert {r.value_um for r in hands.picture.readings} == {120.0}


def test_a_corrected_value_has_its_working(hands: Hands) -> None:
    session, second = drifted(hands)
    correct(hands, session, second)
    line = Corrected(hands.picture).line(hands.picture.readings[0])
    assert line is not None
    working = line.working(120.0)
    assert working.name == "two_point"
    assert working.results["corrected_um"] == pytest.approx(117.4186, abs=1e-4)


def test_whose_decision_it_was_is_said_with_the_panel_and_with_the_check(hands: Hands) -> None:
    session, second = drifted(hands)
    correct(hands, session, second)
    assert panel_seen(hands.picture, "roof").corrected == "corrected by decision of AE"
    assert "corrected by decision of AE" in " ".join(hands.figures("roof").sentences)
    first, proof = (r.check for r in rounds(hands.picture, hands.picture.sessions[0]))
    assert first is not None
    assert proof is not None
    assert "by decision of AE" in first.sentences[-1]
    assert "by decision of AE" not in proof.sentences[-1]


def test_a_failed_check_stays_failed_and_confirms_nothing(hands: Hands) -> None:
    session, second = drifted(hands)
    before = [r.check.passed for r in rounds(hands.picture, hands.picture.sessions[0]) if r.check is not None]
    assert False in before
    correct(hands, session, second)
    after = [r.check.passed for r in rounds(hands.picture, hands.picture.sessions[0]) if r.check is not None]
    assert after == before
    assert failed_now(hands.picture)
    assert not any(c.confirmed for c in confirmations(hands.picture).values())


def test_the_lower_of_raw_and_corrected_is_reckoned_with(hands: Hands) -> None:
    session, second = drifted(hands)
    correct(hands, session, second)
    assert panel_seen(hands.picture, "roof").low_um == pytest.approx(117.4186, abs=1e-4)


def test_a_gauge_that_reads_too_little_gives_no_leave_by_correction(hands: Hands) -> None:
    second = second_foil(hands)
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    session = hands.session()
    hands.check(session, tuple(v - 6 for v in FOIL_UM), zero_um=tuple(v - 1.2 for v in ZERO_UM))
    hands.check(session, tuple(v - 3.5 for v in SECOND_UM), again=True, zero_um=ZERO_UM, foil=second)
    hands.read("roof", *([95.0] * 8))
    correct(hands, session, second)
    assert hands.figures("roof").mean_um > 95.0
    assert panel_seen(hands.picture, "roof").low_um == pytest.approx(95.0)


def test_one_word_is_no_reason(hands: Hands) -> None:
    session, second = drifted(hands)
    with pytest.raises(BadInput, match="two words"):
        correct(hands, session, second, "drift")
    assert hands.picture.corrections == ()


def test_a_second_foil_that_does_not_agree_proves_nothing(hands: Hands) -> None:
    session, second = drifted(hands, tuple(v + 5 for v in SECOND_UM))
    with pytest.raises(Refused, match="not proved"):
        correct(hands, session, second)


def test_the_foil_of_the_correction_cannot_prove_it(hands: Hands) -> None:
    session, _second = drifted(hands)
    with pytest.raises(BadInput, match="took no part"):
        correct(hands, session, hands.shop.foil)


def test_a_gauge_that_reads_right_is_not_corrected(hands: Hands) -> None:
    second = second_foil(hands)
    session = hands.checked_session()
    hands.check(session, (50.0, 50.1, 49.9, 50.0, 50.0), again=True, foil=second)
    with pytest.raises(Refused, match="only add noise"):
        correct(hands, session, second)
    assert offered(hands.picture) is None


def test_without_a_second_foil_nothing_is_offered(hands: Hands) -> None:
    session = hands.session()
    hands.check(session, FOIL_UM, zero_um=ZERO_UM)
    assert offered(hands.picture) is None
    second = second_foil(hands)
    hands.check(session, SECOND_UM, again=True, zero_um=ZERO_UM, foil=second)
    found = offered(hands.picture)
    assert found is not None
    assert (found.shim.id, found.second.id) == (hands.shop.foil, second)


def test_undo_brings_the_raw_figures_again(hands: Hands) -> None:
    session, second = drifted(hands)
    correct(hands, session, second)
    hands.shop.bench.undo(hands.job)
    assert hands.picture.corrections == ()
    assert hands.figures("roof").mean_um == pytest.approx(120.0)


def test_taking_it_back_later_brings_the_raw_figures_again(hands: Hands) -> None:
    session, second = drifted(hands)
    kept = correct(hands, session, second)
    hands.do(TakeCorrectionBack(hands.job, kept))
    assert hands.figures("roof").mean_um == pytest.approx(120.0)
    assert panel_seen(hands.picture, "roof").corrected == ""


def test_a_check_read_later_moves_no_correction(hands: Hands) -> None:
    session, second = drifted(hands)
    correct(hands, session, second)
    mean = hands.figures("roof").mean_um
    hands.check(session, tuple(v + 3 for v in FOIL_UM), again=True, zero_um=ZERO_UM)
    assert hands.figures("roof").mean_um == pytest.approx(mean)


def test_a_drift_that_both_sides_correct_makes_no_change(hands: Hands) -> None:
    session, second = drifted(hands)
    correct(hands, session, second)
    hands.do(SetState(hands.job, ("roof",), work="polished"))
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.checked_session()  # the gauge reads right again
    hands.read("roof", *([117.4186] * 8))
    found = changes(hands.picture)["roof"].change
    assert found is not None
    assert abs(found.estimate_um) < 0.2
    assert "corrected by decision of AE" in found.sentence
