"""A layer gauge's readings after the work release nothing while no check confirms them, and none of them is forgotten
when more was taken off since."""

from __future__ import annotations

import math

import pytest
from invented_findings import Hands
from test_findings_layers import CLEAR, known_paint, layer_gauge, reserve, survey
from test_findings_removal import AFTER, BEFORE, MIDDLE, places, read, sheet

from detailbench.basics.errors import Refused
from detailbench.findings.planned_removal import Forecasts, Planned, StepForecast
from detailbench.moves.readings import RecordReading
from detailbench.moves.surface import SetState
from detailbench.moves.trials import JudgeTrial
from detailbench.moves.work import AdoptProcess, StartStep
from detailbench.record.things import ProcessStep
from detailbench.trials.removal import MeasuredTrial, removal

HIGH = tuple(v + 15.0 for v in CLEAR)
LOW = tuple(v - 9.0 for v in CLEAR)


def unchecked(hands: Hands, gauge: str, clear: tuple[float, ...], panel: str = "roof") -> None:
    """Wiped and read, with no check of the gauge at all."""
    hands.do(SetState(hands.job, (panel,), clean="wiped"))
    hands.session(gauge)
    for value in clear:
        hands.later()
        hands.do(RecordReading(hands.job, panel, 130.0, clear_um=value))
    hands.later()


def test_unconfirmed_readings_after_the_work_do_not_release_what_confirmed_ones_held(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands, 36.0)
    gauge = layer_gauge(hands)
    step = hands.adopted("roof")
    survey(hands, gauge, CLEAR)
    hands.do_anyway("roof", step)
    unchecked(hands, gauge, HIGH)
    assert hands.ruling("roof").ruling == "held back"
    with pytest.raises(Refused, match="Chance of less than the reserve"):
        hands.do(StartStep(hands.job, "roof", step.id))


def test_unconfirmed_low_readings_after_the_work_still_hold(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands, 25.0)
    gauge = layer_gauge(hands)
    step = hands.adopted("roof")
    survey(hands, gauge, CLEAR)
    assert hands.ruling("roof").ruling != "held back"
    hands.do_anyway("roof", step)
    unchecked(hands, gauge, tuple(v - 16.0 for v in CLEAR))
    assert hands.ruling("roof").ruling == "held back"


def test_one_confirmed_place_after_the_work_does_not_confirm_the_unconfirmed_ones_before_it(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands, 36.0)
    gauge = layer_gauge(hands)
    step = hands.adopted("roof")
    unchecked(hands, gauge, HIGH)
    assert hands.ruling("roof").ruling == "held back"
    hands.do_anyway("roof", step)
    survey(hands, gauge, HIGH[:1])
    assert "Readings not confirmed by a gauge check: they release nothing." in [
        r.sentence for r in hands.ruling("roof").reasons
    ]


def test_a_thin_clear_coat_read_between_two_steps_counts_after_the_second_one_too(hands: Hands) -> None:
    known_paint(hands)
    reserve(hands, 30.0)
    gauge = layer_gauge(hands)
    step = hands.adopted("roof")
    survey(hands, gauge, CLEAR)
    hands.do_anyway("roof", step)
    survey(hands, gauge, LOW)
    assert hands.ruling("roof").ruling == "held back"
    hands.do_anyway("roof", step)
    room = hands.ruling("roof").room
    assert room is not None
    assert room.decides_um == pytest.approx(min(LOW))
    assert hands.ruling("roof").ruling == "held back"


def test_a_confirming_trial_without_its_technique_does_not_unlearn_what_the_step_takes_off(hands: Hands) -> None:
    where = places(hands, *MIDDLE)
    read(hands, where, BEFORE)
    trial = hands.do(sheet(hands))
    hands.do(JudgeTrial(hands.job, trial, "yes", "clear"))
    hands.later()
    read(hands, where, AFTER)
    hands.confirmed("roof", 2)
    group = hands.shop.group(hands.job, "roof")
    step = {"combination_id": hands.picture.trials[0].combination_id, "polish_s": 60.0, "section_m2": 0.36}
    hands.do(AdoptProcess(hands.job, group.id, [step]))
    planned = Forecasts(hands.picture).planned("bonnet")
    assert planned.why_none == ""
    assert planned.mean_um is not None
    assert planned.mean_um > 0.5


def test_two_steps_of_one_combination_share_one_unknown_rate(hands: Hands) -> None:
    def known(combination: str, u_um: float) -> StepForecast:
        step = ProcessStep(
            id="s", entered_at=hands.picture.job.entered_at, entered_by="", job_id=hands.job, process_id="p", number=1,
            combination_id=combination,
        )  # fmt: skip
        trials = [MeasuredTrial(2.0, u_um, 1000.0)]
        return StepForecast(step, removal(trials, load_path_j_m2=1000.0), None, "")

    one, other = known("a", 0.3), known("b", 0.3)
    u = one.removal.u_removed_um if one.removal is not None else None
    assert u is not None
    assert Planned((one, one)).u_um == pytest.approx(2 * u)
    assert Planned((one, other)).u_um == pytest.approx(math.sqrt(2) * u)
