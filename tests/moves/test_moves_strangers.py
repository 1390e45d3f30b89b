"""What belongs to another job, or to nobody, is refused; what was changed elsewhere is not taken back over it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from invented_findings import Hands
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput, DetailbenchError, RecordTrouble, Refused
from detailbench.body.edges import EdgePosition
from detailbench.findings.states import State, state_of
from detailbench.moves import arrival, handover, marks, photos, readings, shop, surface, trials, work
from detailbench.moves.move import Move
from detailbench.moves.reading_mending import NotAValue, ReadAsMil
from detailbench.moves.tray import HoldValues
from detailbench.moves.walk_mending import ChangeSides, ShiftBack
from detailbench.record.checking import check

Make = Callable[[Hands, str], Move]


@pytest.fixture
def full(invented: InventedShop) -> Hands:
    """A job with one of everything another job could reach for."""
    hands = Hands(invented, invented.job())
    step = hands.adopted("roof")
    hands.survey({"roof": (110.0, 111.0)})
    hands.do(marks.RecordMark(hands.job, "roof", "swirl", 2))
    hands.do(arrival.AddDamage(hands.job, "a chip", "roof"))
    hands.do(work.StartStep(hands.job, "roof", step.id))
    return hands


# the other job's job id stands second
FOREIGN: list[Make] = [
    lambda f, j: surface.SetPaintSystem(j, f.shop.group(f.job, "roof").id, "matt"),
    lambda f, j: arrival.StrikeDamage(j, f.picture.damages[0].id),
    lambda f, j: marks.CorrectMark(j, f.picture.marks[0].id, {"severity": 0}),
    lambda f, j: marks.StrikeMark(j, f.picture.marks[0].id),
    lambda f, j: marks.LookAgain(j, f.picture.marks[0].id, 0),
    lambda f, j: readings.RecordCheck(j, f.picture.sessions[0].id, f.shop.foil, (102.0,)),
    lambda f, j: readings.RecordReading(j, "roof", 110.0, place_id=f.picture.places[0].id),
    lambda f, j: readings.RecordReading(j, "roof", 110.0, session_id=f.picture.sessions[0].id),
    lambda f, j: readings.StrikeReading(j, f.picture.readings[0].id),
    lambda f, j: readings.DecidePlace(j, f.picture.places[0].id, "as_found", "kept", "two words"),
    lambda f, j: ShiftBack(j, f.picture.readings[1].id),
    lambda f, j: NotAValue(j, f.picture.readings[0].id),
    lambda f, j: ReadAsMil(j, f.picture.readings[0].id),
    lambda f, j: HoldValues((), j, (f.picture.readings[0].id,)),
    lambda f, j: trials.CorrectTrial(j, f.picture.trials[0].id, {"seconds": 3.0}),
    lambda f, j: trials.JudgeTrial(j, f.picture.trials[0].id, "yes", "clear"),
    lambda f, j: trials.StrikeTrial(j, f.picture.trials[0].id),
    lambda f, j: trials.RecordTrial(j, f.shop.group(f.job, "roof").id, "roof", f.picture.trials[0].combination_id),
    lambda f, j: work.AdoptProcess(
        j, f.shop.group(f.job, "roof").id, [{"combination_id": f.picture.trials[0].combination_id}]
    ),
    lambda f, j: work.StartStep(j, "roof", f.picture.steps[0].id),
    lambda f, j: work.FinishStep(j, "roof"),
    lambda f, j: work.TickSections(j, "roof", 1),
]


@pytest.mark.parametrize("make", FOREIGN, ids=[f"{n:02}" for n in range(len(FOREIGN))])
def test_a_thing_of_another_job_is_out_of_reach(full: Hands, make: Make) -> None:
    job = full.shop.job()
    full.do(readings.StartSession(job, full.shop.gauge))
    before = full.shop.bench.store.head()
    with pytest.raises(DetailbenchError):
        full.shop.bench.do(make(full, job))
    assert full.shop.bench.store.head() == before


NOWHERE: list[Callable[[InventedShop], Move]] = [
    lambda i: readings.StartSession("none", i.gauge),
    lambda i: handover.RecordAcceptance("none", "accepted"),
    lambda i: handover.Sign("none", "owner", way="absent"),
    lambda i: arrival.SetHopes("none", {"hoped_level": "x"}),
    lambda i: surface.SetPaintSystem("none", "none", "matt"),
]


@pytest.mark.parametrize("make", NOWHERE, ids=[f"{n:02}" for n in range(len(NOWHERE))])
def test_a_job_that_is_not_there_takes_nothing(invented: InventedShop, make: Callable[[InventedShop], Move]) -> None:
    before = invented.bench.store.head()
    with pytest.raises(RecordTrouble):
        invented.bench.do(make(invented))
    assert invented.bench.store.head() == before


AT = EdgePosition("front", 100.0, "left", 100.0, 1400.0, 1000.0)
UNFIT: list[tuple[Make, str]] = [
    (lambda f, j: marks.RecordMark(j, "roof", "swirl", 2, lamp_id="none"), "Nothing here has the id"),
    (lambda f, j: marks.RecordMark(j, "", "swirl", 2), "no panel"),
    (lambda f, j: marks.RecordMark(j, "roof", "swirl", 2, length_mm=-1.0), "below zero"),
    (lambda f, j: marks.RecordMark(j, "roof", "swirl", 2, count=-1), "below zero"),
    (lambda f, j: marks.RecordMark(j, "roof", "swirl", 2, at=replace(AT, edge_a="upper")), "not measured from"),
    (lambda f, j: marks.RecordMark(j, "roof", "swirl", 2, at=replace(AT, a_mm=1200.0)), "outside the roof"),
    (lambda f, j: marks.RecordMark(j, "roof", "swirl", 2, at=AT, end_mm=(100.0, 5000.0)), "outside the roof"),
    (lambda f, j: marks.RecordMark(j, "roof", "swirl", 2, at=replace(AT, panel_w_mm=0.0)), "has a size"),
    (lambda f, j: marks.CorrectMark(j, f.picture.marks[0].id, {"area_cm2": -2.0}), "below zero"),
    (lambda f, j: marks.CorrectMark(j, f.picture.marks[0].id, {"lamp_id": "none"}), "Nothing here has the id"),
    (lambda f, j: marks.LookAgain(j, f.picture.marks[0].id, 0, lamp_id="none"), "Nothing here has the id"),
    (lambda f, j: marks.LookedNothingSeen(j, "roof", "none"), "Nothing here has the id"),
    (lambda f, j: marks.LookedNothingSeen(j, ""), "no panel"),
    (lambda f, j: photos.AddPhoto(j, b"x", lamp_id="none"), "Nothing here has the id"),
    (lambda f, j: surface.HoldPanel(j, "", "not this one"), "no panel"),
    (lambda f, j: surface.HoldPanel(j, "roof", ". ."), "two words"),
    (lambda f, j: surface.SetState(j, ("",), clean="wiped"), "no panel"),
    (lambda f, j: readings.AddPlace(j, "roof", replace(AT, b_mm=-40.0)), "outside the roof"),
    (lambda f, j: readings.AddPlace(j, "roof", AT, origin="proposed"), "no kind of place"),
    (lambda f, j: readings.RecordReading(j, "bonnet", 110.0, place_id=f.picture.places[0].id), "is on the roof"),
    (lambda f, j: readings.RecordReading(j, "roof", 1e300), "No gauge shows that"),
    (lambda f, j: readings.RecordReading(j, "roof", 10**400), "not a number"),
    (lambda f, j: readings.RecordCheck(j, f.picture.sessions[0].id, f.shop.foil, (1e9,)), "No gauge shows that"),
    (lambda f, j: readings.DecidePlace(j, f.picture.places[0].id, "as_found", "kept", "- -"), "two words"),
    (lambda f, j: readings.DecidePlace(j, f.picture.places[0].id, "later", "kept", "two words"), "not a state"),
    (lambda f, j: trials.CorrectTrial(j, f.picture.trials[0].id, {"seconds": "40"}), "not a number"),
    (lambda f, j: trials.CorrectTrial(j, f.picture.trials[0].id, {"lamp_id": "none"}), "Nothing here has the id"),
    (lambda f, j: work.FinishStep(j, "roof", minutes=1e9), "more than a week"),
    (lambda f, j: handover.RecordProtection(j, ("roof",), "x", cure_h=-1.0), "below zero"),
    (lambda f, j: handover.Sign(j, "owner", strokes=[[(0.1,), (0.2, 0.3)]]), "two numbers"),
    (lambda f, j: shop.SetSetting("leave_below_um", 0.0), "more than nothing"),
    (lambda f, j: shop.SetSetting("usual_scatter_um", 0.0), "more than nothing"),
    (lambda f, j: shop.SetSetting("paint_to_paint_percent", 0.0), "more than nothing"),
    (lambda f, j: shop.SetSetting("leave_below_um", 1e308), "number of 0 or more"),
    (lambda f, j: shop.SetSetting("plausible_low_um", 5000.0), "cannot lie above the upper"),
]


@pytest.mark.parametrize(("make", "told"), UNFIT, ids=[f"{n:02}" for n in range(len(UNFIT))])
def test_what_would_break_a_drawing_or_a_figure_later_is_refused_now(full: Hands, make: Make, told: str) -> None:
    before = full.shop.bench.store.head()
    with pytest.raises(DetailbenchError) as caught:
        full.shop.bench.do(make(full, full.job))
    assert told in str(caught.value)
    assert full.shop.bench.store.head() == before


STEP: list[tuple[dict[str, object], str]] = [
    ({"section_m2": 0.0}, "outside what a step can be"),
    ({"section_m2": 1e-300}, "outside what a step can be"),
    ({"section_m2": "a"}, "not a number"),
    ({"overlap": 1e6}, "outside what a step can be"),
    ({"polish_s": 1e300}, "outside what a step can be"),
    ({"pad_care_every": 0}, "outside what a step can be"),
    ({"wipe_s": -1.0}, "below zero"),
    ({"means": ""}, "by machine, by hand or by sanding"),
    ({"process_id": "x"}, "no field"),
]


@pytest.mark.parametrize(("values", "told"), STEP)
def test_a_step_no_plan_could_be_made_of_is_refused(full: Hands, values: dict[str, object], told: str) -> None:
    combination = full.picture.steps[0].combination_id
    group = full.shop.group(full.job, "roof").id
    with pytest.raises(BadInput, match=told):
        full.do(work.AdoptProcess(full.job, group, [{"combination_id": combination, **values}]))


def test_leave_below_stays_under_careful_below_whichever_is_typed(invented: InventedShop) -> None:
    invented.bench.do(shop.SetSetting("leave_below_um", 90.0))
    with pytest.raises(BadInput, match="cannot lie above"):
        invented.bench.do(shop.SetSetting("careful_below_um", 80.0))
    invented.bench.do(shop.SetSetting("careful_below_um", 100.0))
    with pytest.raises(BadInput, match="cannot lie above"):
        invented.bench.do(shop.SetSetting("leave_below_um", 101.0))


def test_a_number_taken_back_is_not_given_again(invented: InventedShop) -> None:
    first = invented.job()
    invented.bench.undo(first)
    second = invented.job()
    invented.bench.redo(first)
    assert [invented.picture(j).job.number for j in (first, second)] == ["2031-001", "2031-002"]


def test_what_another_job_of_the_car_said_since_is_not_taken_back_over(invented: InventedShop) -> None:
    first = invented.job()
    second = invented.bench.do(arrival.NewJob(car_id=invented.picture(first).car.id)).scope
    invented.bench.do(arrival.DescribeCar(first, {"colour": "green"}))
    invented.bench.do(arrival.DescribeCar(second, {"colour": "red"}))
    with pytest.raises(Refused, match="changed elsewhere since"):
        invented.bench.undo(first)
    assert invented.picture(first).car.colour == "red"
    invented.bench.undo(second)
    invented.bench.undo(first)
    assert invented.picture(first).car.colour == "dark blue"
    assert check(invented.bench.store).troubles == ()


def test_a_polished_panel_is_not_as_found_again(full: Hands) -> None:
    full.do(work.FinishStep(full.job, "roof"))
    with pytest.raises(Refused, match="not as found any more"):
        full.do(surface.SetState(full.job, ("roof",), work="as_found"))


def test_polishing_a_dirty_panel_does_not_wash_it(full: Hands) -> None:
    step = full.picture.steps[-1]
    full.polish("tailgate", step)
    assert state_of(full.picture, "tailgate") == State("dirty", "polished", "not_known")


def test_readings_that_change_sides_take_the_state_that_side_was_in_then(full: Hands) -> None:
    full.do(surface.SetState(full.job, ("wing_front_l", "wing_front_r"), clean="wiped"))
    full.read("wing_front_r", 110.0)
    full.do(surface.SetState(full.job, ("wing_front_l",), cover="protected"))
    full.do(ChangeSides(full.job, ("wing_front_r",)))
    moved = full.picture.readings[-1]
    assert (moved.clean, moved.cover) == ("wiped", "bare")


def test_a_clock_set_back_makes_no_double(full: Hands) -> None:
    full.later(-3600)
    full.do(readings.RecordReading(full.job, "roof", 112.0))
    assert full.picture.readings[-1].flags == ()


def test_nothing_personal_stands_in_the_journal(invented: InventedShop) -> None:
    secret = ("Invented Owner", "INV 01", "000 111", "Second Invented", "a private remark", "0.123456")
    job = invented.job()
    invented.bench.do(arrival.SetOwner(job, {"name": "Second Invented", "address": "a private remark"}))
    invented.bench.do(arrival.DescribeCar(job, plate="INV 01 again"))
    invented.bench.do(handover.RecordAcceptance(job, "with_remarks", "a private remark"))
    invented.bench.do(handover.Sign(job, "owner", name="Invented Owner", strokes=[[(0.123456, 0.1), (0.5, 0.6)]]))
    with invented.bench.store.reading() as connection:
        rows = connection.exec_driver_sql("SELECT says, body FROM journal").fetchall()
    text = "\n".join(f"{says}\n{body}" for says, body in rows)
    assert "owner noted" in text
    assert not [s for s in secret if s in text]
