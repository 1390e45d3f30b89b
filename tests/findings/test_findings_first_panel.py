"""The first panel done and read again is held against the forecast from this shop's own trial; the rest waits on it."""

from __future__ import annotations

import json
import math

import pytest
from invented_findings import Hands
from test_findings_layers import CLEAR, layer_gauge, reserve
from test_findings_layers import survey as layered_survey
from test_findings_removal import measured

from detailbench.basics.errors import Refused
from detailbench.findings.first_panel import FirstSeen, first_panels
from detailbench.findings.planned_removal import Forecasts
from detailbench.moves.surface import SetPaintSystem
from detailbench.moves.trials import JudgeTrial
from detailbench.moves.work import AdoptProcess, FinishStep, StartStep
from detailbench.record.things import ProcessStep
from detailbench.thickness.calculations import CALCULATIONS

BEFORE = (110.0, 111.0, 112.0, 109.0, 110.5, 111.5, 112.5, 109.5)


@pytest.fixture
def step(hands: Hands) -> ProcessStep:
    """Adopted on the ground of a trial that was measured: 2 µm off."""
    for group in hands.picture.groups:
        hands.do(SetPaintSystem(hands.job, group.id, "clear_over_colour"))
    trial = measured(hands).trial
    hands.do(JudgeTrial(hands.job, trial.id, "yes", "clear"))
    adopt(hands)
    return hands.picture.steps[-1]


def adopt(hands: Hands) -> None:
    trial = hands.picture.trials[-1]
    steps = [{"combination_id": trial.combination_id, "section_m2": 0.36, "polish_s": 60.0}]
    hands.do(AdoptProcess(hands.job, trial.group_id, steps, override="one trial is enough here"))


def first_done(hands: Hands, step: ProcessStep, off_um: float) -> None:
    """The tailgate read, polished and read again."""
    hands.survey({"tailgate": BEFORE})
    hands.do_anyway("tailgate", step)
    hands.survey({"tailgate": tuple(v - off_um for v in BEFORE)})


def seen(hands: Hands) -> FirstSeen:
    (found,) = first_panels(hands.picture)
    return found


def test_what_the_steps_take_is_foreseen_from_the_trials_own_rate(hands: Hands, step: ProcessStep) -> None:
    planned = Forecasts(hands.picture).planned("tailgate")
    (told,) = planned.steps
    assert told.removal is not None
    assert told.load is not None
    rate = told.removal.rate
    assert rate is not None
    assert planned.mean_um == pytest.approx(rate * told.load.load_path_j_m2 / 1000)
    of_rate = (told.removal.u_rate or 0.0) * told.load.load_path_j_m2 / 1000
    assert planned.u_um == pytest.approx(math.hypot(of_rate, (planned.mean_um or 0.0) * told.load.share))
    assert hands.ruling("tailgate").working.inputs["planned_um"] == pytest.approx(planned.mean_um)


def test_while_the_first_panel_is_not_read_again_nothing_is_held(hands: Hands, step: ProcessStep) -> None:
    assert first_panels(hands.picture) == ()
    hands.survey({"tailgate": BEFORE})
    hands.do_anyway("tailgate", step)
    assert (seen(hands).panel, seen(hands).found, seen(hands).why_none) == ("tailgate", None, "not measured again yet")
    hands.do_anyway("bonnet", step)


def test_a_first_panel_that_came_out_as_foreseen_lets_the_rest_go_on(hands: Hands, step: ProcessStep) -> None:
    foreseen = Forecasts(hands.picture).planned("tailgate").mean_um
    assert foreseen is not None
    first_done(hands, step, foreseen)
    found = seen(hands).found
    assert found is not None
    assert (found.outcome, found.meet) == ("go on", True)


def test_where_more_came_off_than_foreseen_the_next_panel_is_refused_until_it_is_set_aside(
    hands: Hands, step: ProcessStep
) -> None:
    first_done(hands, step, 30.0)
    assert seen(hands).holds
    hands.survey({"bonnet": BEFORE})
    with pytest.raises(Refused, match=r"First panel, tailgate: Hold and plan again\. More came off") as stopped:
        hands.do(StartStep(hands.job, "bonnet", step.id))
    assert stopped.value.may_override
    hands.do(StartStep(hands.job, "bonnet", step.id, override="paint is soft, known now"))
    assert "first_panel" in [o.rule for o in hands.picture.overrides]
    hands.do(FinishStep(hands.job, "bonnet"))
    assert not seen(hands).holds
    assert seen(hands).set_aside is not None


def test_adopting_anew_makes_another_first_panel(hands: Hands, step: ProcessStep) -> None:
    first_done(hands, step, 30.0)
    adopt(hands)
    assert first_panels(hands.picture) == ()


def test_its_working_is_redone_with_the_same_outcome(hands: Hands, step: ProcessStep) -> None:
    first_done(hands, step, 30.0)
    found = seen(hands).found
    assert found is not None
    redo = next(c for c in CALCULATIONS if c.name == "first_panel")
    inputs = json.loads(json.dumps(found.working.as_json()))["inputs"]
    again = redo.run({k: v for k, v in inputs.items() if v is not None}).results
    assert again == found.working.results


def test_the_layer_gauges_readings_after_it_hold_where_their_risk_is_above_the_limit(hands: Hands) -> None:
    for group in hands.picture.groups:
        hands.do(SetPaintSystem(hands.job, group.id, "clear_over_colour"))
    reserve(hands, 33.0)
    step = hands.adopted("roof")
    gauge = layer_gauge(hands)
    layered_survey(hands, gauge, CLEAR, panel="tailgate")
    hands.do_anyway("tailgate", step)
    layered_survey(hands, gauge, tuple(v - 4.0 for v in CLEAR), 114.0, panel="tailgate")
    found = seen(hands).found
    assert found is not None
    assert (found.outcome, found.forecast_um) == ("hold", None)
    assert "From the readings after the work the chance of going below the reserve is" in found.sentence


def test_a_step_by_hand_is_not_foreseen_from_a_trial_by_machine(hands: Hands, step: ProcessStep) -> None:
    trial = hands.picture.trials[-1]
    by_hand = [{"combination_id": trial.combination_id, "means": "hand"}]
    hands.do(AdoptProcess(hands.job, trial.group_id, by_hand, override="one trial is enough here"))
    planned = Forecasts(hands.picture).planned("tailgate")
    assert (planned.known, planned.mean_um, planned.u_um) == (False, None, None)
    assert planned.why_none == "not measured: by hand or by sanding"


def test_what_was_measured_after_it_is_no_forecast_any_more(hands: Hands, step: ProcessStep) -> None:
    assert Forecasts(hands.picture).planned("tailgate").mean_um
    first_done(hands, step, 2.0)
    assert Forecasts(hands.picture).planned("tailgate", measured_after=True).mean_um == 0.0
    assert hands.ruling("tailgate").working.inputs["planned_um"] == 0.0
