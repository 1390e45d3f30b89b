"""The plan and the work left while it goes on; what is due."""

from __future__ import annotations

import pytest
from invented_findings import Hands

from detailbench.findings.due import due, places_measured
from detailbench.findings.overrun import longest_planned_min
from detailbench.findings.plan import WorkStanding, work_plan, work_standing
from detailbench.findings.processes import is_finished, next_step_of
from detailbench.moves.handover import RecordProtection
from detailbench.moves.marks import LookAgain, LookedNothingSeen, RecordMark
from detailbench.moves.surface import HoldPanel, MakeGroup, SetPaintSystem, SetState
from detailbench.moves.work import AdoptProcess, FinishStep, StartStep, TickSections
from detailbench.record.things import ProcessStep


@pytest.fixture
def step(hands: Hands) -> ProcessStep:
    """A process for the roof alone."""
    hands.do(MakeGroup(hands.job, "roof alone", ("roof",)))
    return hands.adopted("roof")


def standing(hands: Hands) -> WorkStanding:
    return work_standing(hands.picture, hands.shop.clock.now())


def planned_min(hands: Hands) -> float:
    return standing(hands).plan.minutes


def test_a_running_step_counts_by_its_share_of_the_plan_and_never_beyond_nine_tenths(
    hands: Hands, step: ProcessStep
) -> None:
    assert standing(hands).left.whole == 1.0
    hands.do(StartStep(hands.job, "roof", step.id))
    hands.later(60 * planned_min(hands) / 4)
    assert standing(hands).left.whole == pytest.approx(0.75)
    hands.later(60 * planned_min(hands) * 5)
    assert standing(hands).left.whole == pytest.approx(0.1)
    hands.do(FinishStep(hands.job, "roof"))
    assert (standing(hands).left.whole, standing(hands).left.minutes_left) == (0.0, 0.0)


def test_sections_ticked_count_instead_of_the_time_also_after_a_pause(hands: Hands, step: ProcessStep) -> None:
    sections = standing(hands).plan.steps[0].sections.number
    hands.do(StartStep(hands.job, "roof", step.id))
    hands.later(60)
    hands.do(TickSections(hands.job, "roof", 3))
    left = 1 - 3 / sections
    assert standing(hands).left.whole == pytest.approx(left)
    hands.do(FinishStep(hands.job, "roof", ended="paused"))
    assert standing(hands).left.whole == pytest.approx(left)
    hands.later(3600)
    hands.do(StartStep(hands.job, "roof", step.id))
    hands.later(600)
    assert standing(hands).left.whole == pytest.approx(left)


def test_the_time_of_a_pause_is_no_work(hands: Hands, step: ProcessStep) -> None:
    hands.do(StartStep(hands.job, "roof", step.id))
    hands.later(120)
    hands.do(FinishStep(hands.job, "roof", ended="paused"))
    hands.later(3600)
    hands.do(StartStep(hands.job, "roof", step.id))
    hands.later(60)
    assert standing(hands).actual_min[("roof", step.id)] == pytest.approx(3.0)


def test_a_timer_left_running_tells_no_time(hands: Hands, step: ProcessStep) -> None:
    hands.do(StartStep(hands.job, "roof", step.id))
    hands.later(7200)
    hands.do(FinishStep(hands.job, "roof", ended="left_running"))
    assert standing(hands).actual_min[("roof", step.id)] is None


def test_a_step_finished_long_after_its_plan_is_finished_and_asks_for_the_true_time(
    hands: Hands, step: ProcessStep
) -> None:
    hands.do(StartStep(hands.job, "roof", step.id))
    run = hands.picture.runs[-1]
    longest = longest_planned_min(hands.picture, run)
    assert longest == next(s.minutes.high for s in work_plan(hands.picture).steps if s.panel == "roof")
    hands.later(60 * longest + 59)
    assert hands.shop.bench.do(FinishStep(hands.job, "roof")).note == ""
    hands.shop.bench.undo(hands.job)
    hands.later(14 * 3600)
    done = hands.shop.bench.do(FinishStep(hands.job, "roof"))
    assert "Was it left running?" in done.note
    assert hands.picture.runs[-1].ended == "finished"
    hands.shop.bench.undo(hands.job)
    assert hands.shop.bench.do(FinishStep(hands.job, "roof", minutes=18.0)).note == ""
    assert hands.picture.runs[-1].minutes == 18.0


def test_a_clock_set_back_while_a_step_runs_tells_no_time_and_breaks_nothing(hands: Hands, step: ProcessStep) -> None:
    hands.do(StartStep(hands.job, "roof", step.id))
    hands.later(-3600)
    assert standing(hands).actual_min[("roof", step.id)] is None
    hands.do(FinishStep(hands.job, "roof"))
    assert standing(hands).left.whole == 0.0


def test_the_same_step_adopted_anew_is_not_asked_for_twice(hands: Hands, step: ProcessStep) -> None:
    hands.polish("roof", step)
    group = hands.shop.group(hands.job, "roof").id
    hands.do(AdoptProcess(hands.job, group, [{"combination_id": step.combination_id, "polish_s": 45.0}]))
    anew = hands.picture.steps[-1]
    assert is_finished(hands.picture, "roof", anew.id)
    assert standing(hands).left.whole == 0.0


def test_another_step_adopted_anew_is_to_be_done(hands: Hands, step: ProcessStep) -> None:
    hands.polish("roof", step)
    milder = hands.adopted("roof", rung=2)
    assert next_step_of(hands.picture, "roof") == milder
    assert standing(hands).left.whole == 1.0


def test_a_held_panel_is_neither_planned_nor_due_but_one_begun_stays(hands: Hands) -> None:
    hands.do(MakeGroup(hands.job, "upper side", ("roof", "tailgate")))
    step = hands.adopted("roof")
    assert set(due(hands.picture)["work"].what) == {"roof:1", "tailgate:1"}
    hands.do(HoldPanel(hands.job, "tailgate", "waits for the owner"))
    assert standing(hands).plan.held == (("tailgate", "Held back: waits for the owner."),)
    assert due(hands.picture)["work"].what == ("roof:1",)
    hands.polish("roof", step)
    hands.do(HoldPanel(hands.job, "roof", "waits as well"))
    assert [s.panel for s in standing(hands).plan.steps] == ["roof"]
    assert (due(hands.picture)["work"].done, due(hands.picture)["work"].due) == (1, 0)


def test_the_wash_is_due_until_a_panel_is_decontaminated(hands: Hands) -> None:
    panels = len(due(hands.picture)["wash"].what)
    hands.do(SetState(hands.job, ("roof",), clean="washed"))
    assert due(hands.picture)["wash"].due == panels
    hands.do(SetState(hands.job, ("roof",), clean="decontaminated"))
    assert (due(hands.picture)["wash"].due, due(hands.picture)["wash"].done) == (panels - 1, 1)


def test_a_panel_is_looked_at_by_a_mark_or_by_saying_nothing_was_seen(hands: Hands) -> None:
    panels = due(hands.picture)["marks"].due
    hands.do(RecordMark(hands.job, "roof", "swirl", 2))
    hands.do(LookedNothingSeen(hands.job, "tailgate"))
    assert due(hands.picture)["marks"].due == panels - 2


def test_places_are_due_again_after_the_work(hands: Hands, step: ProcessStep) -> None:
    hands.survey({"roof": (110.0,) * 8})
    found = due(hands.picture)["thickness"]
    assert "roof" not in found.what
    hands.polish("roof", step)
    worked = due(hands.picture)["thickness"]
    assert "roof" in worked.what
    assert (worked.done, worked.due) == (found.done, found.due + 8)  # what was measured as found stays measured
    hands.survey({"roof": (108.0,) * 8})
    assert "roof" not in due(hands.picture)["thickness"].what
    seen = places_measured(hands.picture)
    assert (seen.found, seen.after, seen.after_due) == (8, 8, 0)


def test_the_handover_list_is_worked_off_one_by_one(hands: Hands, step: ProcessStep) -> None:
    mark = hands.do(RecordMark(hands.job, "roof", "swirl", 2))
    hands.survey({"roof": (110.0,) * 8})
    hands.polish("roof", step)
    assert {"after_readings", "after_marks", "protection"} <= set(due(hands.picture)["handover"].what)
    hands.survey({"roof": (108.0,) * 8})
    hands.do(LookAgain(hands.job, mark, 0))
    hands.do(RecordProtection(hands.job, ("roof",), "an invented sealant"))
    assert set(due(hands.picture)["handover"].what) == {
        "second_look", "acceptance", "signatures", "odometer_out", "report", "report_left",
    }  # fmt: skip


def test_a_group_without_a_process_is_due_under_trials(hands: Hands, step: ProcessStep) -> None:
    found = due(hands.picture)["trials"]
    assert "roof alone" not in found.what
    assert found.done == 1
    hands.do(SetPaintSystem(hands.job, hands.shop.group(hands.job, "roof").id, "matt"))
    assert due(hands.picture)["work"].due == 0
