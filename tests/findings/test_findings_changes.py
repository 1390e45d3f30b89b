"""What came off: like pairs only, the gauge's shift by the right foil, intervals against arithmetic done apart."""

from __future__ import annotations

import math

import numpy as np
import pytest
from invented_findings import Hands
from invented_shop import FOIL_UM
from scipy import stats

from detailbench.body.edges import EdgePosition
from detailbench.findings.changes import PanelChange, changes
from detailbench.findings.walking import panel_places
from detailbench.moves.readings import AddPlace, DecidePlace, ProposePlaces, RecordCheck, RecordReading
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetState
from detailbench.record.things import ProcessStep
from detailbench.thickness.calculations import CALCULATIONS
from detailbench.thickness.change import Change

BEFORE = (110.0, 111.0, 112.0, 109.0, 110.5, 111.5, 112.5, 109.5)
AFTER = (107.6, 109.1, 109.4, 107.2, 108.2, 109.0, 110.4, 107.1)
FOIL_AFTER_UM = tuple(v + 0.6 for v in FOIL_UM)


@pytest.fixture
def step(hands: Hands) -> ProcessStep:
    return hands.adopted("roof")


def of_roof(hands: Hands) -> PanelChange:
    return changes(hands.picture)["roof"]


def figure(hands: Hands) -> Change:
    found = of_roof(hands).change
    assert found is not None
    return found


def before_and_after(hands: Hands, step: ProcessStep, foil_after: tuple[float, ...] = FOIL_AFTER_UM) -> None:
    hands.survey({"roof": BEFORE})
    hands.polish("roof", step)
    hands.survey({"roof": AFTER}, foil_after)


def test_removal_shift_and_interval_are_those_of_arithmetic_done_apart(hands: Hands, step: ProcessStep) -> None:
    before_and_after(hands, step)
    d = np.array(BEFORE) - np.array(AFTER)
    foil = np.array(FOIL_UM)
    # each session has its opening and its closing round on the same foil: ten values a side, the shift 0.6 µm
    s_foil = math.sqrt(np.sum(np.tile(foil - foil.mean(), 4) ** 2) / (4 * 4))
    s_all = math.sqrt(np.sum(np.tile(foil - foil.mean(), 4) ** 2) / (2 * 9))
    s_r, dof_r = max((s_foil, 16), (s_all, 18))  # the larger of within rounds and within sessions
    s_r = max(s_r, 1 / math.sqrt(12))  # nothing scatters less than the gauge's last digit allows
    s_d = max(d.std(ddof=1), 1 / math.sqrt(6))
    parts = (s_d**2 / 8, 2 * s_r**2 / 10)
    u = math.sqrt(sum(parts))
    dof = u**4 / (parts[0] ** 2 / 7 + parts[1] ** 2 / dof_r)
    half = float(stats.t.ppf(0.975, dof)) * u
    found = figure(hands)
    assert found.pairs == 8
    assert found.estimate_um == pytest.approx(d.mean() + 0.6)
    assert (found.low_um, found.high_um) == pytest.approx((d.mean() + 0.6 - half, d.mean() + 0.6 + half), rel=1e-6)
    assert found.outcome == "removed"
    assert of_roof(hands).for_print


def test_a_foil_that_wandered_within_a_session_widens_the_interval(hands: Hands, step: ProcessStep) -> None:
    hands.survey({"roof": BEFORE})
    hands.polish("roof", step)
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    session = hands.checked_session(FOIL_UM)
    hands.read("roof", *AFTER)
    hands.check(session, tuple(v + 1.2 for v in FOIL_UM), again=True)
    wandering = figure(hands)
    assert wandering.estimate_um == pytest.approx(np.mean(BEFORE) - np.mean(AFTER) + 0.6)
    steady = Hands(hands.shop, hands.shop.job())
    before_and_after(steady, steady.adopted("roof"))
    u = figure(steady).u_um
    assert u is not None
    assert wandering.u_um is not None
    assert wandering.u_um > u


def test_of_several_foils_the_one_nearest_the_paint_shows_the_shift(hands: Hands, step: ProcessStep) -> None:
    thick = hands.do(AddToShop("shim", {"label": "foil 250", "value_um": 250.0}))
    shifts = {0: 0.0, 1: 3.0}
    for i, values in enumerate((BEFORE, AFTER)):
        hands.do(SetState(hands.job, ("roof",), clean="wiped"))
        session = hands.session()
        hands.do(RecordCheck(hands.job, session, hands.shop.zero, (0.0, 0.1, 0.0, 0.1, 0.0)))
        hands.do(RecordCheck(hands.job, session, thick, [250.0 + shifts[i]] * 5))
        hands.do(RecordCheck(hands.job, session, hands.shop.foil, [v + 0.6 * i for v in FOIL_UM]))
        hands.read("roof", *values)
        if i == 0:
            hands.check(session, again=True)
            hands.polish("roof", step)
    assert figure(hands).shift.value_um == pytest.approx(0.6)


def test_a_foil_on_the_other_metal_shows_no_shift(hands: Hands, step: ProcessStep) -> None:
    gauge = hands.do(AddToShop("gauge", {"name": "both metals", "substrates": ("steel", "aluminium")}))
    zero = hands.do(AddToShop("shim", {"label": "zero al", "value_um": 0.0, "substrate": "aluminium"}))
    foil = hands.do(AddToShop("shim", {"label": "foil al", "value_um": 102.0, "substrate": "aluminium"}))
    for values in (BEFORE, AFTER):
        hands.do(SetState(hands.job, ("roof",), clean="wiped"))
        session = hands.session(gauge)
        hands.check(session, zero=zero, foil=foil)
        hands.read("roof", *values)
        if values is BEFORE:
            hands.do_anyway("roof", step)
    assert figure(hands).shift.measured_by == "accuracy"
    assert not of_roof(hands).for_print


def test_without_a_foil_on_both_sides_the_stated_accuracy_counts_twice(hands: Hands, step: ProcessStep) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.session()
    hands.read("roof", *BEFORE)
    hands.do_anyway("roof", step)
    hands.survey({"roof": AFTER})
    d = np.array(BEFORE) - np.array(AFTER)
    u_cal = (1.0 + 0.01 * np.mean(BEFORE)) / math.sqrt(3)
    s_d = max(d.std(ddof=1), 1 / math.sqrt(6))
    found = figure(hands)
    assert found.u_um == pytest.approx(math.sqrt(s_d**2 / 8 + 2 * u_cal**2))
    assert found.estimate_um == pytest.approx(d.mean())


def test_two_sessions_on_one_side_have_a_shift_between_them_that_no_foil_of_one_shows(
    hands: Hands, step: ProcessStep
) -> None:
    hands.survey({"roof": BEFORE[:4]})
    hands.survey({"roof": BEFORE[4:]})
    hands.polish("roof", step)
    hands.survey({"roof": AFTER}, FOIL_AFTER_UM)
    assert figure(hands).pairs == 8
    assert figure(hands).shift.measured_by == "accuracy"


def test_foil_values_of_a_session_that_is_in_no_pair_change_nothing(hands: Hands, step: ProcessStep) -> None:
    other = hands.do(AddToShop("gauge", {"name": "second invented gauge"}))
    hands.survey({"roof": (), "tailgate": BEFORE[:2]}, tuple(v + 1.5 for v in FOIL_UM), gauge=other)
    before_and_after(hands, step)
    assert figure(hands).shift.value_um == pytest.approx(0.6)


@pytest.mark.parametrize(
    ("after_c", "pairs", "for_print"), [(24.0, 8, True), (24.1, 0, False), (18.0, 8, True), (None, 8, False)]
)
def test_pairs_lie_within_three_degrees_and_an_unknown_one_is_for_the_screen_only(
    hands: Hands, step: ProcessStep, after_c: float | None, pairs: int, for_print: bool
) -> None:
    hands.survey({"roof": BEFORE}, temperature_c=21.0)
    hands.polish("roof", step)
    hands.survey({"roof": AFTER}, FOIL_AFTER_UM, temperature_c=after_c)
    found = of_roof(hands)
    assert (len(found.pairing.pairs), found.for_print) == (pairs, for_print)
    assert (found.change is None) == (pairs == 0)


def test_another_gauge_after_the_work_gives_no_figure(hands: Hands, step: ProcessStep) -> None:
    other = hands.do(AddToShop("gauge", {"name": "second invented gauge"}))
    hands.survey({"roof": BEFORE})
    hands.polish("roof", step)
    hands.survey({"roof": AFTER}, gauge=other)
    assert (of_roof(hands).change, of_roof(hands).why_none) == (None, "Not comparable: another gauge.")


def test_one_place_read_with_another_gauge_leaves_the_pairs_and_its_sessions_alone(
    hands: Hands, step: ProcessStep
) -> None:
    other = hands.do(AddToShop("gauge", {"name": "second invented gauge"}))
    before_and_after(hands, step)
    hands.survey({"roof": ()}, tuple(v - 1.5 for v in FOIL_UM), gauge=other)
    hands.read("roof", 140.0, place=3)
    found = of_roof(hands)
    assert (len(found.pairing.pairs), len(found.pairing.not_comparable)) == (7, 1)
    assert figure(hands).shift.value_um == pytest.approx(0.6)
    assert figure(hands).mean_difference_um == pytest.approx(
        np.mean(np.delete(BEFORE, 2)) - np.mean(np.delete(AFTER, 2))
    )


def test_readings_before_the_panel_was_wiped_stay_out_of_the_pairs(hands: Hands, step: ProcessStep) -> None:
    hands.checked_session()
    hands.read("roof", *(v + 9 for v in BEFORE))
    before_and_after(hands, step)
    assert figure(hands).mean_difference_um == pytest.approx(np.mean(BEFORE) - np.mean(AFTER))


def test_readings_between_two_polishings_stay_out_of_the_pairs(hands: Hands, step: ProcessStep) -> None:
    hands.survey({"roof": BEFORE})
    hands.polish("roof", step)
    hands.survey({"roof": tuple(v - 1 for v in BEFORE)})
    hands.polish("roof", step)
    hands.survey({"roof": AFTER}, FOIL_AFTER_UM)
    assert figure(hands).mean_difference_um == pytest.approx(np.mean(BEFORE) - np.mean(AFTER))


def test_a_protected_panel_gives_no_figure(hands: Hands, step: ProcessStep) -> None:
    hands.survey({"roof": BEFORE})
    hands.polish("roof", step)
    hands.do(SetState(hands.job, ("roof",), clean="wiped", cover="protected"))
    hands.checked_session()
    hands.read("roof", *AFTER)
    assert (of_roof(hands).change, of_roof(hands).why_none) == (None, "Not comparable: protected after.")


def test_no_value_and_places_set_aside_are_in_no_pair(hands: Hands, step: ProcessStep) -> None:
    hands.survey({"roof": (*BEFORE[:7], 190.0)})
    place = panel_places(hands.picture, "roof")[7]
    hands.do(DecidePlace(hands.job, place.id, "as_found", "set_aside", "sticker under it"))
    hands.polish("roof", step)
    hands.survey({"roof": (None, *AFTER[1:])}, FOIL_AFTER_UM)  # type: ignore[dict-item]
    found = of_roof(hands)
    assert len(found.pairing.pairs) == 6
    assert [n.sentence for n in found.pairing.not_comparable] == [
        "Not comparable: no value after.",
        "Not comparable: no reading before.",
    ]


def test_a_place_chosen_by_hand_is_in_no_pair(hands: Hands, step: ProcessStep) -> None:
    hands.survey({"roof": BEFORE})
    first = panel_places(hands.picture, "roof")[0]
    near = EdgePosition(
        first.edge_a, first.edge_a_mm + 30, first.edge_b, first.edge_b_mm, first.panel_w_mm, first.panel_h_mm
    )
    hands.do(AddPlace(hands.job, "roof", near))
    hands.survey({"roof": (150.0,)})
    hands.polish("roof", step)
    hands.survey({"roof": (*AFTER, 120.0)})
    assert len(of_roof(hands).pairing.pairs) == 8
    assert figure(hands).mean_difference_um == pytest.approx(np.mean(BEFORE) - np.mean(AFTER))


def test_a_failed_closing_check_keeps_the_figure_out_of_print(hands: Hands, step: ProcessStep) -> None:
    hands.survey({"roof": BEFORE})
    hands.polish("roof", step)
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    session = hands.checked_session(FOIL_AFTER_UM)
    hands.read("roof", *AFTER)
    hands.check(session, tuple(v + 4 for v in FOIL_UM), again=True)
    assert not of_roof(hands).for_print


def test_a_panel_that_came_out_thicker_states_no_removal(hands: Hands, step: ProcessStep) -> None:
    hands.survey({"roof": BEFORE})
    hands.polish("roof", step)
    hands.survey({"roof": tuple(v + 5 for v in AFTER)})
    found = figure(hands)
    assert found.outcome == "thicker"
    assert "no removal can be stated" in found.sentence


# places kept from the polishing
def controls(hands: Hands, count: int = 5) -> list[str]:
    """Places on the tailgate that no machine goes over."""
    hands.do(ProposePlaces(hands.job, "tailgate"))
    shape = hands.picture.places[-1]
    at = EdgePosition(shape.edge_a, shape.edge_a_mm, shape.edge_b, shape.edge_b_mm, shape.panel_w_mm, shape.panel_h_mm)
    return [hands.do(AddPlace(hands.job, "tailgate", at, "control")) for _n in range(count)]


def one_side(hands: Hands, values: tuple[float, ...], where: list[str], control: tuple[float, ...]) -> None:
    hands.do(SetState(hands.job, ("roof", "tailgate"), clean="wiped", cover="bare"))
    hands.session()
    hands.read("roof", *values)
    for place, value in zip(where, control, strict=True):
        hands.later()
        hands.do(RecordReading(hands.job, "tailgate", value, place_id=place))


CONTROL = (120.0, 121.0, 119.0, 122.0, 120.5)
CONTROL_AFTER = (120.9, 121.5, 120.0, 122.6, 121.0)


def test_five_unpolished_control_places_measure_the_shift_where_foils_are_missing(
    hands: Hands, step: ProcessStep
) -> None:
    where = controls(hands)
    one_side(hands, BEFORE, where, CONTROL)
    hands.do_anyway("roof", step)
    one_side(hands, AFTER, where, CONTROL_AFTER)
    found = figure(hands)
    moved = np.array(CONTROL_AFTER) - np.array(CONTROL)
    assert (found.shift.measured_by, found.shift.per_session) == ("control places", 5)
    assert found.shift.value_um == pytest.approx(moved.mean())
    assert found.estimate_um == pytest.approx(np.mean(BEFORE) - np.mean(AFTER) + moved.mean())
    redo = next(c for c in CALCULATIONS if c.name == "change")
    given = {k: v for k, v in found.working.as_json()["inputs"].items() if v not in (None, [])}
    assert redo.run(given).results["estimate_um"] == pytest.approx(found.estimate_um)


def test_four_control_places_measure_no_shift_and_none_enters_its_panels_mean(hands: Hands, step: ProcessStep) -> None:
    where = controls(hands, 4)
    one_side(hands, BEFORE, where, CONTROL[:4])
    hands.do_anyway("roof", step)
    one_side(hands, AFTER, where, CONTROL_AFTER[:4])
    assert figure(hands).shift.measured_by == "accuracy"
    hands.read("tailgate", 118.0, place=1)
    assert hands.figures("tailgate").mean_um == 118.0
