"""A gauge that reads off, at the real window: a correction is offered, decided with a reason, and taken back."""

from __future__ import annotations

from bay_hand import Bay, bay, invented, plain, prepared

from detailbench.findings.gauges import failed_now
from detailbench.findings.panels import panel_seen
from detailbench.moves.readings import RecordCheck, RecordReading, StartSession
from detailbench.moves.shop import AddToShop
from detailbench.screens.stages.thickness.on_map import means

__all__ = ["bay", "invented", "plain", "prepared"]

ZERO_UM = (1.1, 1.2, 1.3, 1.2, 1.2)
FOIL_UM = (104.3, 104.4, 104.5, 104.4, 104.4)
SECOND_UM = (51.8, 51.7, 51.9, 51.8, 51.8)


def drifted(bay: Bay, second_too: bool = True) -> None:
    """A gauge that reads too high, and the bonnet read with it."""
    do, shop = bay.shop.bench.do, bay.shop
    second = do(AddToShop("shim", {"label": "foil 50", "value_um": 50.0})).id
    session = do(StartSession(bay.job, shop.gauge, 21.0)).id
    do(RecordCheck(bay.job, session, shop.zero, ZERO_UM))
    do(RecordCheck(bay.job, session, shop.foil, FOIL_UM))
    if second_too:
        do(RecordCheck(bay.job, session, shop.zero, ZERO_UM, again=True))
        do(RecordCheck(bay.job, session, second, SECOND_UM))
    for _n in range(8):
        shop.clock.forward(seconds=4)
        do(RecordReading(bay.job, "bonnet", 120.0))


def gauge_tab(bay: Bay) -> str:
    bay.open("thickness")
    bay.click("Gauge")
    return bay.visible_text()


def test_without_a_second_foil_no_correction_is_offered(bay: Bay) -> None:
    drifted(bay, second_too=False)
    assert "Correct by two points…" not in gauge_tab(bay)


def test_a_correction_takes_two_words_and_leaves_the_failed_check_failed(bay: Bay) -> None:
    drifted(bay)
    gauge_tab(bay)
    bay.click("Correct by two points…")
    assert "A line through zero plate and foil 102 could correct" in bay.visible_text()
    assert bay.thickness.card is not None
    part = bay.thickness.card.gauge.correction
    bay.click("Correct the readings of this spell")
    assert "at least two words" in part.reason.says.text()
    assert bay.picture.corrections == ()
    bay.fill(part.reason.line, "zero drifted overnight")
    bay.click("Correct the readings of this spell")
    assert [c.reason for c in bay.picture.corrections] == ["zero drifted overnight"]
    assert "corrected by decision of AE: zero drifted overnight" in bay.visible_text()
    assert failed_now(bay.picture)


def test_a_corrected_panel_says_so_on_its_card_and_on_the_map(bay: Bay) -> None:
    drifted(bay)
    gauge_tab(bay)
    bay.click("Correct by two points…")
    assert bay.thickness.card is not None
    bay.fill(bay.thickness.card.gauge.correction.reason.line, "zero drifted overnight")
    bay.click("Correct the readings of this spell")
    bay.click_map("bonnet")
    bay.click("Panel")
    assert "117.4 µm" in bay.visible_text()
    assert "corrected by decision of AE" in bay.visible_text()
    assert bay.thickness.desk is not None
    fill = means(bay.window.context, bay.thickness.desk.survey).fills["bonnet"]
    assert "corrected by decision of AE" in fill.says


def test_a_correction_is_taken_back_by_its_button(bay: Bay) -> None:
    drifted(bay)
    gauge_tab(bay)
    bay.click("Correct by two points…")
    assert bay.thickness.card is not None
    bay.fill(bay.thickness.card.gauge.correction.reason.line, "zero drifted overnight")
    bay.click("Correct the readings of this spell")
    bay.click("Take the correction back")
    assert bay.picture.corrections == ()
    figures = panel_seen(bay.picture, "bonnet").figures
    assert figures is not None
    assert figures.mean_um == 120.0
