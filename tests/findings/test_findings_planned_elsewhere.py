"""What the plan takes off is told from this shop's measured trials on every car, the same at the gate, on screen and in
print; the trial of the paint itself counts most."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import replace

import pytest
from invented_findings import Hands
from invented_shop import InventedShop
from test_findings_removal import measured, sheet

from detailbench.basics.errors import Refused
from detailbench.findings import removal
from detailbench.findings.clock import jumps
from detailbench.findings.permissions import permissions
from detailbench.findings.planned_removal import Forecasts, Planned
from detailbench.findings.planned_words import planned_sentences
from detailbench.findings.processes import group_of
from detailbench.findings.removal import measured_trials
from detailbench.moves.arrival import NewJob
from detailbench.moves.bench import Bench
from detailbench.moves.shop import AddToShop, SetSetting
from detailbench.moves.surface import MakeGroup, SetState
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.moves.turning import TurnJob
from detailbench.moves.work import AdoptProcess, StartStep
from detailbench.record import picture as picture_reading
from detailbench.record.picture import JobPicture
from detailbench.record.things import Trial
from detailbench.record.writing import Writer


def adopted_unmeasured(hands: Hands) -> None:
    """The same combination as ``measured`` uses, tried on this car without readings, and adopted."""
    adopted(hands, hands.do(sheet(hands)))


def adopted(hands: Hands, trial: str) -> None:
    hands.do(JudgeTrial(hands.job, trial, "yes", "clear"))
    made = next(t for t in hands.picture.trials if t.id == trial)
    steps = [{"combination_id": made.combination_id, "section_m2": 0.36, "polish_s": 60.0}]
    hands.do(AdoptProcess(hands.job, made.group_id, steps, override="one trial is enough here"))


@pytest.fixture
def other(invented: InventedShop) -> Hands:
    """Another car's job of the same shop."""
    return Hands(invented, invented.job())


def planned(hands: Hands) -> Planned:
    return Forecasts(hands.picture).planned("tailgate")


def test_without_a_measured_trial_anywhere_nothing_is_foreseen(hands: Hands) -> None:
    adopted_unmeasured(hands)
    assert not planned(hands).known
    assert planned_sentences(hands.picture, planned(hands)) == ("Expected to come off here: not measured.",)


def test_a_trial_measured_on_another_car_tells_what_the_plan_takes(hands: Hands, other: Hands) -> None:
    measured(other)
    adopted_unmeasured(hands)
    (told,) = planned(hands).steps
    assert told.removal is not None
    assert (told.paints, told.on_this_paint) == (1, 0)
    assert told.removal.working.inputs["this_paint"] not in [
        t.paint for t in measured_trials(hands.picture.others, told.step.combination_id)
    ]
    assert planned(hands).mean_um == pytest.approx(told.removal.removed_um)


def test_the_trial_on_this_paint_counts_for_more_than_the_others(invented: InventedShop, other: Hands) -> None:
    measured(other)
    third, here = Hands(invented, invented.job()), Hands(invented, invented.job())
    adopted_unmeasured(third)
    trial = measured(here).trial
    adopted(here, trial.id)
    (told,) = planned(here).steps
    assert (told.paints, told.on_this_paint) == (2, 1)
    elsewhere, own = planned(third).u_um, planned(here).u_um
    assert elsewhere is not None
    assert own is not None
    assert own < elsewhere


def test_a_picture_without_steps_does_not_read_the_other_jobs(hands: Hands, other: Hands) -> None:
    measured(other)
    assert hands.picture.others == ()
    adopted_unmeasured(hands)
    assert [p.job.id for p in hands.picture.others] == [other.job]


def test_a_job_whose_trials_were_not_measured_is_not_read_along(hands: Hands, other: Hands) -> None:
    adopted_unmeasured(other)
    adopted_unmeasured(hands)
    assert hands.picture.others == ()


def test_the_gate_inside_a_writing_reads_the_same_trials(hands: Hands, other: Hands) -> None:
    """Also where the writer has no picture read before it."""
    measured(other)
    adopted_unmeasured(hands)
    bench = hands.shop.bench
    with bench.store.writing(bench.clock.now(), bench.person) as w:
        assert isinstance(w, Writer)
        inside = w.job(hands.job)
        assert Forecasts(inside).planned("tailgate").mean_um == planned(hands).mean_um
        assert permissions(inside)["tailgate"].working == permissions(hands.picture)["tailgate"].working


def test_a_trial_taken_back_elsewhere_counts_no_longer(hands: Hands, other: Hands) -> None:
    adopted_unmeasured(hands)
    found = measured(other)
    assert planned(hands).known
    while any(t.id == found.trial.id for t in other.picture.trials):
        hands.shop.bench.undo(other.job)
    assert not planned(hands).known


def test_leave_below_counts_what_other_cars_told_the_plan_takes(hands: Hands, other: Hands) -> None:
    measured(other)
    adopted_unmeasured(hands)
    hands.survey({"tailgate": (111.0, 112.0, 111.5, 112.5, 111.0, 111.8, 112.2, 111.3)})
    foreseen = planned(hands).mean_um
    assert foreseen is not None
    hands.leave_below(111.0 - foreseen / 2)
    with pytest.raises(Refused, match="leave below"):
        hands.do(StartStep(hands.job, "tailgate", hands.picture.steps[-1].id))


def test_once_the_car_has_left_nothing_measured_since_changes_what_was_foreseen(hands: Hands, other: Hands) -> None:
    adopted_unmeasured(hands)
    hands.do(TurnJob(hands.job, "fetched_early", "wanted back today"))
    hands.later(3600)
    measured(other)
    assert not planned(hands).known


def test_a_trial_speaks_of_the_paint_its_panel_is_found_to_carry(hands: Hands) -> None:
    found = measured(hands)
    hands.do(MakeGroup(hands.job, "repainted", ("roof",)))
    group = group_of(hands.picture, "roof")
    assert group is not None
    (trial,) = measured_trials((hands.picture,), found.trial.combination_id)
    assert trial.paint.endswith(group.id)
    assert group.id != found.trial.group_id


def test_what_is_not_known_of_the_panels_area_counts_in_what_is_foreseen(hands: Hands, other: Hands) -> None:
    measured(other)
    adopted_unmeasured(hands)
    (told,) = planned(hands).steps
    assert told.removal is not None
    assert told.load is not None
    assert told.load.share > 0
    rate, area = told.removal.u_removed_um or 0.0, (told.removal.removed_um or 0.0) * told.load.share
    assert planned(hands).u_um == pytest.approx(math.hypot(rate, area))


def test_few_trials_are_listed_with_median_and_range_and_five_give_an_interval(invented: InventedShop) -> None:
    others = [Hands(invented, invented.job()) for _n in range(5)]
    here = Hands(invented, invented.job())
    adopted_unmeasured(here)
    for n, other in enumerate(others[:4]):
        measured(other)
        (said,) = planned_sentences(here.picture, planned(here))
        assert said.startswith("Expected to come off here: about ")
        assert ("measured once so far, on another car." if n == 0 else f"measured {n + 1} times so far") in said
        assert "90" not in said
    assert "median" in said
    measured(others[4])
    (said,) = planned_sentences(here.picture, planned(here))
    assert "90\u00a0%" in said
    assert "5 trials on 5 paints, none of them on this one" in said


def test_the_interval_shown_holds_what_is_not_known_of_the_panels_area(invented: InventedShop) -> None:
    for _n in range(5):
        measured(Hands(invented, invented.job()))
    here = Hands(invented, invented.job())
    adopted_unmeasured(here)
    (told,) = planned(here).steps
    assert told.removal is not None
    assert told.load is not None
    sharp = replace(told, load=replace(told.load, share=0.0))
    vague = replace(told, load=replace(told.load, share=0.5))
    said = [planned_sentences(here.picture, Planned((step,)))[0] for step in (sharp, vague)]
    ends = [[float(v) for v in re.findall(r"\d+\.\d", text)] for text in said]  # about, low, high
    middle, low, high = ends[0]
    per = told.load.load_path_j_m2 / 1000
    assert low == pytest.approx((told.removal.low_rate or 0.0) * per, abs=0.06)
    assert high == pytest.approx((told.removal.high_rate or 0.0) * per, abs=0.06)
    assert ends[1][0] == middle
    assert ends[1][2] - middle == pytest.approx(math.hypot(high - middle, 1.6449 * 0.5 * middle), abs=0.15)
    assert ends[1][1] < low


def test_the_same_car_in_an_earlier_job_is_told_as_this_car_and_counts_as_another_paint(hands: Hands) -> None:
    measured(hands)
    hands.do(TurnJob(hands.job, "fetched_early", "wanted back today"))
    hands.later(86400)
    again = Hands(hands.shop, hands.shop.bench.do(NewJob(car_id=hands.picture.car.id)).scope)
    hands.do(SetState(again.job, ("roof",), clean="wiped"))
    adopted_unmeasured(again)
    (told,) = planned(again).steps
    assert (told.on_this_paint, told.on_this_car) == (0, 1)
    (said,) = planned_sentences(again.picture, planned(again))
    assert said.endswith("measured once so far, on this car, in another finish group or an earlier job.")


def test_another_process_writing_meanwhile_leaves_no_picture_of_half_a_shop(hands: Hands, other: Hands) -> None:
    """A combination made and tried elsewhere between two looks: its job is read with the shop it is of."""
    adopted_unmeasured(hands)
    reader = Bench(hands.shop.bench.folder, hands.shop.clock, read_only=True)
    assert reader.jobs_with_trials()
    shop = hands.picture.shop
    old = shop.combinations[0]
    parts = {"machine_id": old.machine_id, "pad_id": old.pad_id, "product_id": shop.combinations[-1].product_id}
    made = hands.do(AddToShop("combination", {**parts, "rung": 9}))
    hands.do(RecordTrial(other.job, other.shop.group(other.job, "roof").id, "roof", made))
    for picture in reader.jobs_with_trials():
        for trial in picture.trials:
            assert any(c.id == trial.combination_id for c in picture.shop.combinations)
    assert reader.look_for_others()
    reader.close()


def test_of_very_many_measured_jobs_the_newest_are_read(
    invented: InventedShop, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(picture_reading, "MOST_OTHERS", 2)
    others = [Hands(invented, invented.job()) for _n in range(3)]
    for other in others:
        measured(other)
    here = Hands(invented, invented.job())
    adopted_unmeasured(here)
    assert [p.job.id for p in here.picture.others] == [other.job for other in others[1:]]


def test_nothing_adopted_says_nothing(hands: Hands) -> None:
    assert planned_sentences(hands.picture, planned(hands)) == ()


def test_another_jobs_entries_are_not_told_as_this_ones(hands: Hands, other: Hands) -> None:
    """The clock's jumps are looked for in this job alone."""
    measured(other)
    adopted_unmeasured(hands)
    assert hands.picture.others
    assert jumps(hands.picture) == ()


def test_what_other_jobs_measured_is_worked_out_once_until_the_kit_changes(
    hands: Hands, other: Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    measured(other)
    adopted_unmeasured(hands)
    asked: list[str] = []
    worked_out = removal.trial_removal

    def counted(picture: JobPicture, trial: Trial) -> removal.TrialRemoval:
        asked.append(picture.job.id)
        return worked_out(picture, trial)

    monkeypatch.setattr(removal, "trial_removal", counted)
    first = planned(hands)
    assert asked.count(other.job) == 1
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    again = planned(hands)
    assert again.mean_um == first.mean_um
    assert asked.count(other.job) == 1
    hands.do(SetSetting("force_moderate_n", 50.0))
    assert planned(hands).steps[0].removal != first.steps[0].removal
    assert asked.count(other.job) == 2


def test_a_trial_recorded_after_adopting_does_not_read_the_other_jobs_again(
    hands: Hands, other: Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    measured(other)
    adopted_unmeasured(hands)
    assert hands.picture.others
    again = sheet(hands)
    read: list[str] = []
    monkeypatch.setattr(Writer, "job", _noting(Writer.job, read))
    hands.do(replace(again, at=None))
    assert read == [hands.job]


def _noting(job: Callable[[Writer, str], JobPicture], read: list[str]) -> Callable[[Writer, str], JobPicture]:
    def noted(w: Writer, job_id: str) -> JobPicture:
        read.append(job_id)
        return job(w, job_id)

    return noted
