"""Which readings make a place's and a panel's figure, and that a low value never vanishes from what decides."""

from __future__ import annotations

import pytest
from invented_findings import Hands

from detailbench.basics.errors import Refused
from detailbench.body.edges import EdgePosition
from detailbench.findings.changes import changes
from detailbench.findings.due import due
from detailbench.findings.panels import PlaceSeen, panel_seen
from detailbench.findings.walking import next_place, panel_places, readings_at
from detailbench.moves.readings import AddPlace, DecidePlace
from detailbench.moves.readings_file import ImportedReading, ImportReadings
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetState
from detailbench.moves.work import StartStep

PLAIN = (110.0, 111.0, 112.0, 109.0, 110.0, 111.0, 112.0, 109.0)


def at(hands: Hands, panel: str, number: int, moment: str = "as_found") -> PlaceSeen:
    seen = panel_seen(hands.picture, panel, moment)  # type: ignore[arg-type]
    return next(p for p in seen.places if p.place.number == number)


def set_aside(hands: Hands, panel: str, number: int, moment: str = "as_found") -> None:
    place = hands.place(panel, number)
    hands.do(DecidePlace(hands.job, place, moment, "set_aside", "sticker under it"))


def test_a_place_read_dirty_and_then_wiped_counts_as_wiped(hands: Hands) -> None:
    hands.checked_session()
    hands.read("roof", 125.0, place=1)
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.read("roof", 110.0, place=1)
    found = at(hands, "roof", 1)
    assert (found.value_um, len(found.readings), len(found.counted)) == (110.0, 2, 1)


def test_a_place_read_by_two_gauges_counts_the_newer_one_only(hands: Hands) -> None:
    other = hands.do(AddToShop("gauge", {"name": "second invented gauge"}))
    hands.survey({"roof": (110.0,)})
    hands.survey({"roof": ()}, gauge=other)
    hands.read("roof", 114.0, place=1)
    assert at(hands, "roof", 1).value_um == 114.0


@pytest.mark.parametrize(("second_c", "value"), [(24.0, 112.0), (24.1, 114.0), (None, 114.0)])
def test_readings_at_unlike_temperatures_share_no_mean(hands: Hands, second_c: float | None, value: float) -> None:
    hands.survey({"roof": (110.0,)}, temperature_c=21.0)
    hands.survey({"roof": ()}, temperature_c=second_c)
    hands.read("roof", 114.0, place=1)
    assert at(hands, "roof", 1).value_um == value


def test_a_gauge_that_gives_nothing_takes_no_value_away(hands: Hands) -> None:
    other = hands.do(AddToShop("gauge", {"name": "second invented gauge"}))
    hands.survey({"roof": (70.0,)})
    hands.survey({"roof": ()}, gauge=other)
    hands.read("roof", None, place=1)
    assert at(hands, "roof", 1).value_um == 70.0
    assert not panel_seen(hands.picture, "roof").no_value


def test_a_low_reading_no_figure_counts_still_holds_the_panel_back(hands: Hands) -> None:
    hands.leave_below(90.0)
    hands.checked_session()
    hands.read("roof", 80.0, place=1)
    hands.survey({"roof": ()})
    hands.read("roof", 118.0, place=1)
    assert at(hands, "roof", 1).value_um == 118.0
    assert "“leave below” total of 90" in " ".join(r.sentence for r in hands.ruling("roof").reasons)


def test_while_readings_disagree_the_lowest_of_them_counts(hands: Hands) -> None:
    hands.leave_below(90.0)
    hands.survey({"roof": PLAIN})
    assert hands.ruling("roof").ruling == "careful"  # paint system unknown
    hands.read("roof", 70.0, place=1)
    found = at(hands, "roof", 1)
    assert found.figure is not None
    assert (found.figure.verdict, found.value_um, found.low_um) == ("one more", 90.0, 70.0)
    assert hands.ruling("roof").ruling == "held back"


def test_readings_between_two_polishings_are_not_those_after_the_work(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.survey({"roof": (110.0,) * 5})
    hands.polish("roof", step)
    hands.survey({"roof": (109.0,) * 5})
    hands.polish("roof", step)
    assert panel_seen(hands.picture, "roof", "polished").taken == 0
    assert readings_at(hands.picture, hands.place("roof", 1), "polished") == ()
    assert "roof" in due(hands.picture)["thickness"].what
    assert "roof" not in changes(hands.picture)
    hands.survey({"roof": (107.0,)})
    found = at(hands, "roof", 1, "polished")
    assert (found.value_um, [r.value_um for r in found.earlier]) == (107.0, [109.0])


def test_the_walk_begins_again_after_a_second_polishing(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.polish("roof", step)
    hands.checked_session()
    hands.read("roof", 109.0, 109.0, 109.0)
    assert next_place(hands.picture, "roof").number == 4
    hands.do_anyway("roof", step)
    assert next_place(hands.picture, "roof").number == 1


def test_a_low_reading_between_two_polishings_still_counts(hands: Hands) -> None:
    hands.leave_below(90.0)
    step = hands.adopted("roof")
    hands.survey({"roof": (110.0,) * 5})
    hands.polish("roof", step)
    hands.survey({"roof": (110.0, 80.0, 110.0)})
    hands.do(StartStep(hands.job, "roof", step.id, override="owner agreed by telephone"))
    hands.later()
    assert hands.ruling("roof").ruling == "held back"


def test_a_file_read_in_later_keeps_the_moment_it_was_taken_in(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.later(60)
    when = hands.shop.clock.now()
    hands.later(60)
    hands.polish("roof", step)
    hands.checked_session()
    hands.do(ImportReadings(hands.job, (ImportedReading("roof", 110.0, at=when),)))
    kept = hands.picture.readings[-1]
    assert (kept.clean, kept.work, kept.cover) == ("wiped", "as_found", "bare")


def test_setting_aside_ends_with_the_next_reading_there(hands: Hands) -> None:
    hands.survey({"roof": (*PLAIN[:7], 190.0)})
    set_aside(hands, "roof", 8)
    assert at(hands, "roof", 8).set_aside == "sticker under it"
    assert hands.figures("roof").places == 7
    hands.read("roof", 60.0, place=8)
    assert at(hands, "roof", 8).set_aside == ""
    assert panel_seen(hands.picture, "roof").low_um == 60.0


def test_a_panels_last_place_is_not_set_aside(hands: Hands) -> None:
    hands.leave_below(90.0)
    hands.survey({"roof": (70.0, 76.0)})
    set_aside(hands, "roof", 2)
    with pytest.raises(Refused, match=r"(?i)low"):
        set_aside(hands, "roof", 1)
    assert hands.ruling("roof").ruling == "held back"


def test_a_low_reading_its_repeat_agrees_with_stays_whatever_a_third_says(hands: Hands) -> None:
    hands.survey({"roof": PLAIN})
    hands.read("bonnet", *PLAIN)
    hands.read("bonnet", 60.0, 60.5, place=8)
    with pytest.raises(Refused, match="agrees with the low reading"):
        set_aside(hands, "bonnet", 8)


def test_a_low_reading_every_repeat_disagrees_with_may_be_set_aside(hands: Hands) -> None:
    hands.survey({"roof": (60.0, *PLAIN[1:])})
    hands.read("roof", 110.0, place=1)
    set_aside(hands, "roof", 1)
    assert hands.figures("roof").min_um == 109.0


def test_a_high_place_that_hides_a_low_reading_is_not_set_aside_for_being_high(hands: Hands) -> None:
    hands.survey({"roof": PLAIN})
    hands.read("roof", 60.0, 60.5, 300.0, 300.0, place=2)
    found = at(hands, "roof", 2)
    assert found.value_um is not None
    assert found.value_um > hands.figures("roof").median_um
    assert found.low_um == 60.0
    with pytest.raises(Refused):
        set_aside(hands, "roof", 2)


def test_a_low_reading_is_outvoted_by_the_median_only_where_no_repeat_stands_by_it(hands: Hands) -> None:
    hands.survey({"roof": PLAIN})
    hands.read("roof", 60.0, 112.0, 111.0, place=2)
    assert (at(hands, "roof", 2).value_um, at(hands, "roof", 2).low_um) == (111.0, 111.0)
    hands.read("roof", 60.5, place=2)
    assert (at(hands, "roof", 2).value_um, at(hands, "roof", 2).low_um) == (111.0, 60.0)


def test_a_place_chosen_by_hand_that_lies_low_blocks_and_is_in_no_mean(hands: Hands) -> None:
    hands.survey({"roof": PLAIN})
    first = panel_places(hands.picture, "roof")[0]
    where = EdgePosition(
        first.edge_a, first.edge_a_mm + 30, first.edge_b, first.edge_b_mm, first.panel_w_mm, first.panel_h_mm
    )
    hands.do(AddPlace(hands.job, "roof", where))
    hands.read("roof", 95.0, place=len(PLAIN) + 1)
    figures = hands.figures("roof")
    assert (figures.mean_um, figures.places, figures.lowest_um) == (sum(PLAIN) / 8, 8, 95.0)
    assert "A place chosen by hand is low." in [r.sentence for r in hands.ruling("roof").reasons]
