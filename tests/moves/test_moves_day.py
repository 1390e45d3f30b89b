"""The moves of a day on one car: car and owner, surface, marks, trials, work, handover."""

from __future__ import annotations

from datetime import timedelta

import pytest
from invented_shop import FOIL_UM, InventedShop

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.processes import is_finished
from detailbench.findings.states import State, state_of
from detailbench.findings.trial_story import range_combinations
from detailbench.moves import arrival, handover, marks, readings, shop, surface, trials, work
from detailbench.moves.move import SHOP
from detailbench.record.things import ProcessStep


def trial(
    invented: InventedShop, job: str, rung: int = 3, cleared: str = "yes", finish: str = "clear", panel: str = "bonnet"
) -> str:
    group = invented.group(job)
    combination = range_combinations(invented.picture(job), group.id)[rung].id
    made = invented.bench.do(trials.RecordTrial(job, group.id, panel, combination)).id
    invented.bench.do(trials.JudgeTrial(job, made, cleared, finish))
    return combination


def adopted(invented: InventedShop, job: str) -> ProcessStep:
    combination = trial(invented, job)
    trial(invented, job, panel="roof")
    invented.bench.do(work.AdoptProcess(job, invented.group(job).id, [{"combination_id": combination}]))
    return invented.picture(job).steps[-1]


# car and owner
def test_jobs_are_numbered_by_year(invented: InventedShop) -> None:
    jobs = [invented.job(), invented.job()]
    invented.clock.forward(days=365)
    jobs.append(invented.job())
    assert [invented.picture(j).job.number for j in jobs] == ["2031-001", "2031-002", "2032-001"]


def test_every_panel_of_the_car_is_in_one_finish_group_from_the_start(invented: InventedShop) -> None:
    picture = invented.picture(invented.job())
    panels = [p for g in picture.groups for p in g.panels]
    assert len(panels) == len(set(panels))
    assert {"bonnet", "bumper_front", "door_rear_l"} <= set(panels)
    assert {g.paint_system for g in picture.groups} == {"unknown"}


def test_a_vin_with_a_wrong_check_digit_is_kept_with_a_warning(invented: InventedShop) -> None:
    done = invented.bench.do(arrival.NewJob(car={"vin": " 1m8gdm9a1kp042788 "}))
    assert "check digit" in done.note
    assert invented.picture(done.scope).car.vin == "1M8GDM9A1KP042788"


def test_an_odometer_that_ran_backwards_is_kept_and_said(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(arrival.SetVisit(job, {"odometer_in": 52_000}))
    assert "less than on arrival" in invented.bench.do(arrival.SetVisit(job, {"odometer_out": 51_999})).note


# surface
def test_a_panel_wiped_counts_as_bare_by_the_persons_word(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(surface.SetState(job, ("bonnet",), clean="wiped"))
    assert state_of(invented.picture(job), "bonnet") == State("wiped", "as_found", "bare")
    assert state_of(invented.picture(job), "roof") == State()


def test_a_door_of_its_own_leaves_the_group_it_was_in(invented: InventedShop) -> None:
    job = invented.job()
    before = invented.group(job)
    invented.bench.do(surface.MakeGroup(job, "refinished door", ("door_front_r",)))
    assert invented.group(job, "door_front_r").name == "refinished door"
    assert invented.group(job, "bonnet").panels == tuple(p for p in before.panels if p != "door_front_r")
    invented.bench.undo(job)
    assert invented.group(job, "door_front_r") == before


# marks
def test_a_field_mark_a_line_and_a_correction(invented: InventedShop) -> None:
    job = invented.job()
    mark = invented.bench.do(marks.RecordMark(job, "bonnet", "swirl", 3)).id
    invented.bench.do(marks.CorrectMark(job, mark, {"severity": 2, "note": "only under the line lamp"}))
    kept = invented.picture(job).marks[0]
    assert (kept.shape, kept.severity, kept.note, kept.panel) == ("field", 2, "only under the line lamp", "bonnet")
    invented.bench.do(marks.StrikeMark(job, mark))
    assert invented.picture(job).marks == ()


def test_a_mark_looked_at_again_keeps_both_severities(invented: InventedShop) -> None:
    job = invented.job()
    mark = invented.bench.do(marks.RecordMark(job, "bonnet", "swirl", 3)).id
    invented.bench.do(surface.SetState(job, ("bonnet",), clean="wiped", work="polished"))
    invented.bench.do(marks.LookAgain(job, mark, 0))
    picture = invented.picture(job)
    assert (picture.marks[0].severity, picture.mark_checks[0].severity) == (3, 0)
    assert (picture.marks[0].work, picture.mark_checks[0].work) == ("as_found", "polished")


# trials
def test_a_trial_with_a_technique_that_is_none_is_refused(invented: InventedShop) -> None:
    job = invented.job()
    group = invented.group(job)
    combination = range_combinations(invented.picture(job), group.id)[0].id
    for technique, told in (({"force_n": -1.0}, "more than nothing"), ({"mood": 1}, "no field “mood”")):
        with pytest.raises(BadInput, match=told):
            invented.bench.do(trials.RecordTrial(job, group.id, "bonnet", combination, technique=technique))
    with pytest.raises(BadInput, match="not in the finish group"):
        invented.bench.do(trials.RecordTrial(job, group.id, "bumper_front", combination))


def test_a_trial_a_process_rests_on_is_not_struck_out(invented: InventedShop) -> None:
    job = invented.job()
    adopted(invented, job)
    with pytest.raises(Refused, match="rests on this trial"):
        invented.bench.do(trials.StrikeTrial(job, invented.picture(job).trials[0].id))


def test_what_was_not_seen_to_work_is_not_adopted(invented: InventedShop) -> None:
    job = invented.job()
    combination = trial(invented, job, cleared="no", finish="clear")
    with pytest.raises(Refused) as caught:
        invented.bench.do(work.AdoptProcess(job, invented.group(job).id, [{"combination_id": combination}]))
    assert caught.value.rule == "not_seen_to_work"


def test_a_retired_combination_keeps_its_place_where_this_paint_tried_it(invented: InventedShop) -> None:
    job = invented.job()
    combination = trial(invented, job)
    other = invented.job()
    invented.bench.do(shop.Retire("combination", combination))
    here = {c.id for c in range_combinations(invented.picture(job), invented.group(job).id)}
    there = {c.id for c in range_combinations(invented.picture(other), invented.group(other).id)}
    assert (combination in here, combination in there) == (True, False)


# work
def test_a_step_started_twice_within_a_second_is_started_once(invented: InventedShop) -> None:
    job = invented.job()
    step = adopted(invented, job)
    invented.bench.do(work.StartStep(job, "bonnet", step.id))
    invented.clock.forward(milliseconds=900)
    assert invented.bench.do(work.StartStep(job, "bonnet", step.id)).kinds == frozenset()
    invented.clock.forward(milliseconds=200)
    with pytest.raises(Refused, match="running on that panel already"):
        invented.bench.do(work.StartStep(job, "bonnet", step.id))
    assert len(invented.picture(job).runs) == 1


def test_a_finished_step_makes_the_panel_polished_and_takes_the_time_stated(invented: InventedShop) -> None:
    job = invented.job()
    step = adopted(invented, job)
    invented.bench.do(surface.SetState(job, ("bonnet",), clean="wiped"))
    invented.bench.do(work.StartStep(job, "bonnet", step.id))
    invented.bench.do(work.TickSections(job, "bonnet", 3))
    invented.clock.forward(minutes=14)
    invented.bench.do(work.FinishStep(job, "bonnet", minutes=11.0))
    picture = invented.picture(job)
    run = picture.runs[0]
    assert (run.ended, run.minutes, run.sections_done) == ("finished", 11.0, 3)
    assert run.finished_at is not None
    assert run.finished_at - run.started_at == timedelta(minutes=14)
    assert is_finished(picture, "bonnet", step.id)
    assert state_of(picture, "bonnet") == State("decontaminated", "polished", "bare")


def test_a_paused_step_is_not_finished_and_may_go_on(invented: InventedShop) -> None:
    job = invented.job()
    step = adopted(invented, job)
    for ended in ("paused", "finished"):
        invented.bench.do(work.StartStep(job, "bonnet", step.id))
        invented.clock.forward(minutes=5)
        invented.bench.do(work.FinishStep(job, "bonnet", ended=ended))
    assert [r.ended for r in invented.picture(job).runs] == ["paused", "finished"]
    assert state_of(invented.picture(job), "bonnet").work == "polished"


def test_a_held_panel_starts_only_with_a_reason_and_a_name(invented: InventedShop) -> None:
    job = invented.job()
    step = adopted(invented, job)
    invented.bench.do(surface.HoldPanel(job, "bonnet", "waits for the owner"))
    with pytest.raises(Refused, match="waits for the owner") as caught:
        invented.bench.do(work.StartStep(job, "bonnet", step.id))
    assert caught.value.may_override
    with pytest.raises(Refused, match="two words"):
        invented.bench.do(work.StartStep(job, "bonnet", step.id, override="x"))
    invented.bench.do(work.StartStep(job, "bonnet", step.id, override="owner agreed by telephone"))
    kept = invented.picture(job).overrides[0]
    assert (kept.rule, kept.panel, kept.entered_by) == ("held", "bonnet", invented.person)
    invented.bench.do(work.FinishStep(job, "bonnet", ended="paused"))
    invented.bench.do(surface.ReleasePanel(job, "bonnet"))
    invented.bench.do(work.StartStep(job, "bonnet", step.id))
    assert len(invented.picture(job).overrides) == 1


def test_after_a_failed_gauge_check_a_machine_starts_only_with_a_reason(invented: InventedShop) -> None:
    job = invented.job()
    step = adopted(invented, job)
    invented.checked(job, tuple(v + 4 for v in FOIL_UM))
    with pytest.raises(Refused, match="last gauge check failed"):
        invented.bench.do(work.StartStep(job, "bonnet", step.id))


def test_a_panel_below_leave_below_starts_only_with_a_reason(invented: InventedShop) -> None:
    job = invented.job()
    step = adopted(invented, job)
    invented.bench.do(shop.SetSetting("leave_below_um", 90.0))
    invented.measured(job, "roof", (82.0,) * 5)
    with pytest.raises(Refused, match="“leave below” total of 90") as caught:
        invented.bench.do(work.StartStep(job, "roof", step.id))
    assert (caught.value.rule, caught.value.may_override) == ("thickness", True)
    assert invented.picture(job).runs == ()


def test_matt_paint_takes_a_machine_only_with_a_reason(invented: InventedShop) -> None:
    job = invented.job()
    step = adopted(invented, job)
    invented.bench.do(surface.SetPaintSystem(job, invented.group(job).id, "matt"))
    with pytest.raises(Refused, match="nothing abrasive here") as caught:
        invented.bench.do(work.StartStep(job, "bonnet", step.id))
    assert caught.value.may_override


# handover
def test_protection_covers_its_panels_and_keeps_the_climate_as_measured(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(handover.RecordProtection(job, ("bonnet",), "invented sealant", air_c=20.0))
    kept = invented.picture(job).protections[0]
    assert (kept.air_c, kept.humidity_percent) == (20.0, None)
    assert state_of(invented.picture(job), "bonnet").cover == "protected"


def test_acceptance_signatures_and_the_car_leaving(invented: InventedShop) -> None:
    job = invented.job()
    accepted = invented.bench.do(handover.RecordAcceptance(job, "with_remarks", "a <b>remark</b>")).id
    invented.bench.do(handover.Sign(job, "owner", name="Invented Owner", strokes=[[(0.1, 0.2), (0.5, 0.6)]]))
    invented.bench.do(handover.Sign(job, "workshop", way="absent"))
    invented.clock.forward(days=2)
    invented.bench.do(handover.CarLeaves(job))
    picture = invented.picture(job)
    assert picture.said(accepted, "remarks") == "a <b>remark</b>"
    assert picture.said(picture.signatures[0].id, "strokes") == "[[[0.1, 0.2], [0.5, 0.6]]]"
    assert [s.way for s in picture.signatures] == ["drawn", "absent"]
    assert picture.visits[0].left_at == invented.clock.now()


# the shop's own things
def test_a_renamed_machine_leaves_its_name_of_then_in_the_old_one(invented: InventedShop) -> None:
    old = invented.bench.shop().machines[0]
    new = invented.bench.do(shop.ChangeInShop("machine", old.id, {"name": "new name"})).id
    by_id = {m.id: m for m in invented.bench.shop().machines}
    assert (by_id[old.id].name, by_id[old.id].retired) == (old.name, True)
    assert (by_id[new].name, by_id[new].replaces, by_id[new].orbit_mm) == ("new name", old.id, old.orbit_mm)


def test_a_retired_thing_is_taken_back_into_use(invented: InventedShop) -> None:
    invented.bench.do(shop.Retire("gauge", invented.gauge))
    assert invented.bench.shop().gauges[0].retired
    invented.bench.do(shop.Retire("gauge", invented.gauge, back=True))
    assert not invented.bench.shop().gauges[0].retired


def test_the_newest_setting_counts_and_undo_gives_the_one_before(invented: InventedShop) -> None:
    invented.bench.do(shop.SetSetting("careful_below_um", 100.0))
    invented.bench.do(shop.SetSetting("careful_below_um", None))
    assert invented.bench.shop().setting("careful_below_um") == "null"
    invented.bench.undo(SHOP)
    assert invented.bench.shop().setting("careful_below_um") == "100.0"


def test_the_starter_kit_is_put_on_the_shelf_once(invented: InventedShop) -> None:
    from detailbench.moves.starter import StockStarterKit

    count = len(invented.bench.shop().combinations)
    assert count > 3
    assert invented.bench.do(StockStarterKit()).kinds == frozenset()
    assert len(invented.bench.shop().combinations) == count


def test_a_gauge_never_used_here_gives_no_reading_without_a_session(invented: InventedShop) -> None:
    job = invented.job()
    with pytest.raises(Refused, match="Choose the gauge first"):
        invented.bench.do(readings.RecordReading(job, "bonnet", 118.0))
