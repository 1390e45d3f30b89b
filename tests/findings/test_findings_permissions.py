"""What may be worked: nothing thicker, later or unconfirmed ever makes a panel freer, and no clear coat is named."""

from __future__ import annotations

from invented_findings import Hands
from invented_shop import FOIL_UM

from detailbench.findings.permissions import permissions
from detailbench.moves.intake import AddRepair
from detailbench.moves.shop import SetSetting
from detailbench.moves.surface import SetPaintSystem
from detailbench.thickness.permission import STRICTER

PLAIN = (110.0, 111.0, 112.0, 109.0, 110.0, 111.0, 112.0, 109.0)
METAL = ("roof", "tailgate", "wing_front_l", "wing_front_r", "door_front_l", "door_front_r")


def known_paint(hands: Hands) -> None:
    for group in hands.picture.groups:
        hands.do(SetPaintSystem(hands.job, group.id, "clear_over_colour"))


def test_a_panel_measured_thinner_after_the_work_is_held_back(hands: Hands) -> None:
    known_paint(hands)
    hands.leave_below(108.0)
    step = hands.adopted("roof")
    hands.survey({"roof": PLAIN})
    assert hands.ruling("roof").ruling == "may be worked"
    hands.polish("roof", step)
    hands.survey({"roof": tuple(v - 3 for v in PLAIN)})
    assert hands.ruling("roof").ruling == "held back"


def test_a_panel_measured_thicker_after_the_work_is_no_freer(hands: Hands) -> None:
    hands.leave_below(108.0)
    step = hands.adopted("roof", means="hand")
    hands.survey({"roof": (100.0,) * 8})
    hands.do_anyway("roof", step)
    hands.survey({"roof": (130.0,) * 8})
    assert hands.ruling("roof").ruling == "held back"


def test_more_paint_never_loosens_a_ruling_above_the_shops_own_totals(hands: Hands) -> None:
    hands.leave_below(90.0)
    hands.do(SetSetting("careful_below_um", 100.0))
    found = []
    for more_um in (0.0, 6.0, 20.0, 60.0, 150.0, 900.0):
        car = Hands(hands.shop, hands.shop.job())
        known_paint(car)
        car.survey({p: tuple(v + more_um * (p == "roof") for v in PLAIN[:5]) for p in METAL})
        found.append(STRICTER.index(car.ruling("roof").ruling))
    assert found[0] == STRICTER.index("may be worked")
    assert found[-1] == STRICTER.index("careful")
    assert found == sorted(found)


def test_no_ruling_names_a_figure_for_the_clear_coat(hands: Hands) -> None:
    known_paint(hands)
    hands.survey({p: PLAIN[:5] for p in METAL})
    for ruling in permissions(hands.picture).values():
        assert not any(sign.isdigit() for sign in ruling.clear_coat)
    assert "reads the total only" in hands.ruling("roof").clear_coat
    assert hands.ruling("bumper_front").clear_coat == "Clear coat unknown."


def test_readings_not_confirmed_release_nothing(hands: Hands) -> None:
    known_paint(hands)
    hands.leave_below(80.0)
    session = hands.checked_session()
    hands.read("roof", *PLAIN)
    assert hands.ruling("roof").ruling == "held back"
    hands.check(session, tuple(v + 4 for v in FOIL_UM), again=True)
    assert hands.ruling("roof").ruling == "held back"
    hands.survey({"tailgate": PLAIN})
    assert hands.ruling("tailgate").ruling == "may be worked"


def test_confirmed_readings_of_before_are_not_undone_by_open_ones_of_after(hands: Hands) -> None:
    known_paint(hands)
    hands.leave_below(80.0)
    step = hands.adopted("roof")
    hands.survey({"roof": PLAIN})
    hands.polish("roof", step)
    hands.checked_session()
    hands.read("roof", 108.0, 109.0)
    assert hands.ruling("roof").ruling == "may be worked"
    hands.read("roof", 79.0)
    assert hands.ruling("roof").ruling == "held back"


def test_what_was_not_measured_is_said_so_and_gets_no_figure(hands: Hands) -> None:
    sentences = [r.sentence for r in hands.ruling("roof").reasons]
    assert "Not measured: nothing is known about its thickness." in sentences
    sentences = [r.sentence for r in hands.ruling("bumper_front").reasons]
    assert "Cannot be read by this gauge: plan by trial and watch the temperature." in sentences
    hands.checked_session()
    hands.read("roof", None)
    sentences = [r.sentence for r in hands.ruling("roof").reasons]
    assert "No value on a panel that should be metal: find out why first." in sentences


def test_a_repair_stated_on_a_panel_makes_that_panel_careful_and_no_other(hands: Hands) -> None:
    known_paint(hands)
    hands.leave_below(80.0)
    hands.survey({p: PLAIN for p in METAL})
    assert hands.ruling("roof").ruling == "may be worked"
    hands.do(AddRepair(hands.job, "painted after a parking knock", "roof"))
    assert hands.ruling("roof").ruling == "careful"
    assert "A repair was stated here." in [r.sentence for r in hands.ruling("roof").reasons]
    assert hands.ruling("tailgate").ruling == "may be worked"
