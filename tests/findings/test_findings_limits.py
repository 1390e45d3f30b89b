"""The owner's limits bind: nobody sets one aside, only an agreement lifts it."""

from __future__ import annotations

from datetime import timedelta

import pytest
from invented_findings import Hands
from invented_limits import PutLimit
from invented_shop import FOIL_UM

from detailbench.basics.errors import Refused
from detailbench.findings.gates import held_back, no_abrasive
from detailbench.findings.limits import limit_words, limits_in_force, reminder, solvent_stops
from detailbench.findings.permissions import permissions, removed_um
from detailbench.moves.agreeing import AcknowledgeLimits, AnswerOwner, AskOwner
from detailbench.moves.trials import RecordTrial
from detailbench.moves.work import AdoptProcess, StartStep

WORDS = "no radio after seven"


def refusal(hands: Hands, move: object) -> Refused:
    with pytest.raises(Refused) as caught:
        hands.do(move)  # type: ignore[arg-type]
    return caught.value


def start(hands: Hands, panel: str, step_id: str, override: str = "") -> StartStep:
    return StartStep(hands.job, panel, step_id, override)


def agreed(hands: Hands, about: str, **values: object) -> None:
    """Asked and answered yes."""
    asked = hands.do(AskOwner(hands.job, about, "may it be?", **values))  # type: ignore[arg-type]
    hands.do(AnswerOwner(hands.job, asked, "yes", "telephone"))


def test_a_barred_panel_stops_a_trial_and_a_start_whatever_the_reason(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(PutLimit(hands.job, "bar_panel", ("tailgate",)))
    for move in (
        start(hands, "tailgate", step.id, "owner was not there"),
        RecordTrial(
            hands.job,
            hands.shop.group(hands.job, "tailgate").id,
            "tailgate",
            step.combination_id,
            override="owner was not there",
        ),
    ):
        found = refusal(hands, move)
        assert (found.rule, found.may_override, "owner" in str(found)) == ("owner_limit", False, True)
    assert hands.picture.overrides == ()
    hands.polish("roof", step)


def test_an_agreement_lifts_it(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(PutLimit(hands.job, "bar_panel", ("tailgate",)))
    agreed(hands, "limit")
    hands.polish("tailgate", step)
    assert hands.picture.runs[-1].panel == "tailgate"


def test_without_panels_it_binds_the_whole_car(hands: Hands) -> None:
    hands.do(PutLimit(hands.job, "bar_panel"))
    assert all("owner" in why for why in held_back(hands.picture).values())
    assert set(held_back(hands.picture)) == set(permissions(hands.picture))


def measured_away(hands: Hands, taken_um: float) -> str:
    """The roof polished, read before and after at the same places; the step."""
    before = (118.0, 120.0, 119.0, 121.0, 117.0)
    hands.survey({"roof": before})
    step = hands.adopted("roof")
    hands.polish("roof", step)
    hands.survey({"roof": tuple(v - taken_um for v in before)}, FOIL_UM)
    return step.id


def test_the_most_that_may_come_off_is_compared_with_what_was_measured(hands: Hands) -> None:
    step = measured_away(hands, 3.0)
    assert removed_um(hands.picture) == {"roof": pytest.approx(3.0, abs=0.05)}
    hands.do(PutLimit(hands.job, "most_off", most_off_um=4.0))
    assert no_abrasive(hands.picture, "roof") == ()
    hands.do(PutLimit(hands.job, "most_off", ("roof",), 2.5))
    found = refusal(hands, start(hands, "roof", step, "it shines so well"))
    assert (found.rule, found.may_override) == ("owner_limit", False)
    assert "3.0" in str(found)
    assert "2.5" in str(found)


def test_of_two_figures_the_least_binds_and_other_panels_are_free(hands: Hands) -> None:
    measured_away(hands, 3.0)
    hands.do(PutLimit(hands.job, "most_off", ("roof",), 2.5))
    hands.do(PutLimit(hands.job, "most_off", ("tailgate",), 1.0))
    assert set(held_back(hands.picture)) == {"roof"}


def test_what_was_not_measured_is_careful_and_not_stopped(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(PutLimit(hands.job, "most_off", most_off_um=4.0))
    assert any("nothing taken off was measured" in r.sentence for r in hands.ruling("roof").reasons)
    hands.polish("roof", step)


def test_no_sanding_stops_adopting_it_where_no_panel_of_the_group_may_be_sanded(hands: Hands) -> None:
    combination = hands.tried("roof")
    group = hands.shop.group(hands.job, "roof")
    hands.do(PutLimit(hands.job, "no_sanding"))
    hands.confirmed("roof")
    sanding = AdoptProcess(
        hands.job, group.id, [{"combination_id": combination, "means": "sanding"}, {"combination_id": combination}]
    )
    found = refusal(hands, sanding)
    assert (found.rule, found.may_override) == ("no_sanding", False)
    hands.do(AdoptProcess(hands.job, group.id, [{"combination_id": combination}]))


def test_where_some_panels_may_be_sanded_the_others_stop_at_the_start(hands: Hands) -> None:
    hands.do(PutLimit(hands.job, "no_sanding"))
    agreed(hands, "sanding", panels=("roof",))
    step = hands.adopted("roof", means="sanding")
    hands.survey({"roof": (118.0,) * 5})
    hands.polish("roof", step)
    found = refusal(hands, start(hands, "tailgate", step.id, "only a little"))
    assert (found.rule, found.may_override) == ("no_sanding", False)
    assert "sanding" in held_back(hands.picture)["tailgate"]
    assert "roof" not in held_back(hands.picture)


def test_the_newest_answer_about_sanding_counts(hands: Hands) -> None:
    hands.do(PutLimit(hands.job, "no_sanding"))
    agreed(hands, "sanding", panels=("roof",))
    step = hands.adopted("roof", means="sanding")
    asked = hands.do(AskOwner(hands.job, "sanding", "still so?", panels=("roof",)))
    hands.do(AnswerOwner(hands.job, asked, "no", "telephone"))
    assert refusal(hands, start(hands, "roof", step.id)).rule == "no_sanding"


def test_machine_work_is_not_sanding(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(PutLimit(hands.job, "no_sanding"))
    hands.polish("roof", step)


@pytest.mark.parametrize(("step", "stops"), [("tar", True), ("panel_wipe", True), ("clay", False), ("rinse", False)])
def test_no_solvent_stops_the_steps_of_the_wash_that_use_one(hands: Hands, step: str, stops: bool) -> None:
    hands.do(PutLimit(hands.job, "no_solvent", ("sill_l",)))
    found = solvent_stops(hands.picture, step, ("sill_l", "sill_r"))
    assert [s.may_override for s in found] == ([False] if stops else [])
    assert solvent_stops(hands.picture, step, ("sill_r",)) == ()


def test_another_limit_is_read_before_a_trial_and_before_a_start(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(PutLimit(hands.job, "other", words=WORDS))
    group = hands.shop.group(hands.job, "roof").id
    for move in (
        start(hands, "roof", step.id, "no time to read"),
        RecordTrial(hands.job, group, "roof", step.combination_id),
    ):
        found = refusal(hands, move)
        assert (found.rule, found.may_override, WORDS in str(found)) == ("other", False, True)
    hands.do(AcknowledgeLimits(hands.job))
    begun = hands.shop.bench.do(start(hands, "roof", step.id))
    assert WORDS in begun.note
    tried = hands.shop.bench.do(RecordTrial(hands.job, group, "roof", step.combination_id))
    assert WORDS in tried.note


def test_it_is_read_once_a_day_by_each_person(hands: Hands) -> None:
    from detailbench.moves.shop import AddToShop

    step = hands.adopted("roof")
    hands.do(PutLimit(hands.job, "other", words=WORDS))
    hands.do(AcknowledgeLimits(hands.job))
    hands.polish("roof", step)
    hands.shop.bench.person = hands.do(AddToShop("person", {"name": "Ben Invented", "initials": "BE"}))
    assert refusal(hands, start(hands, "roof", step.id)).rule == "other"
    hands.do(AcknowledgeLimits(hands.job))
    hands.polish("roof", step)
    hands.later(timedelta(days=1).total_seconds())
    assert refusal(hands, start(hands, "roof", step.id)).rule == "other"


def test_read_twice_on_a_day_is_noted_once(hands: Hands) -> None:
    hands.do(PutLimit(hands.job, "other", words=WORDS))
    hands.do(AcknowledgeLimits(hands.job))
    hands.do(AcknowledgeLimits(hands.job))
    assert len(hands.picture.limits_seen) == 1


def test_nobody_reads_it_under_no_name(hands: Hands) -> None:
    hands.do(PutLimit(hands.job, "other", words=WORDS))
    hands.shop.bench.person = ""
    with pytest.raises(Refused, match="Choose who you are"):
        hands.do(AcknowledgeLimits(hands.job))


def test_once_lifted_nobody_is_reminded(hands: Hands) -> None:
    hands.do(PutLimit(hands.job, "other", words=WORDS))
    assert WORDS in reminder(hands.picture)
    agreed(hands, "limit")
    assert (reminder(hands.picture), limits_in_force(hands.picture)) == ("", ())


def test_a_limit_says_where_and_what(hands: Hands) -> None:
    hands.do(PutLimit(hands.job, "bar_panel", ("mirror_cap_l",), words="painted by hand"))
    hands.do(PutLimit(hands.job, "most_off", most_off_um=4.0))
    said = [limit_words(m).replace("\u00a0", " ") for m in hands.picture.limits]
    assert said == [
        "left mirror cap: not to be touched, “painted by hand”",
        "whole car: at most 4 µm may come off",
    ]
