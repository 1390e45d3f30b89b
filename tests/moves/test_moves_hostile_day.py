"""The day bent on purpose: limits walked around, answers given twice, times that cannot be, a car that is not here."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone

import pytest
from invented_findings import Hands
from invented_shop import InventedShop
from photographed_samples import photo

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.agreements import in_force
from detailbench.findings.limits import limits_in_force, may_not_sand
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.custody import SetArrived
from detailbench.moves.documents import CloseDocument, open_key
from detailbench.moves.forgetting import ForgetOwner
from detailbench.moves.handover import CarLeaves
from detailbench.moves.limits import AddLimit
from detailbench.moves.mishaps import RecordMishap, TellMishap
from detailbench.moves.shop import SetSetting
from detailbench.moves.trials import RecordTrial
from detailbench.moves.turning import CarReturns, TurnJob
from detailbench.moves.washing import RecordRubTest
from detailbench.moves.work import FinishStep, StartStep
from detailbench.report import content_of, document_pdf

FAR_BACK = datetime(1, 1, 1, tzinfo=timezone(timedelta(hours=14)))


@pytest.fixture
def hands(invented: InventedShop) -> Hands:
    return Hands(invented, invented.job())


def asked(h: Hands, about: str = "limit", **values: object) -> str:
    return h.do(AskOwner(h.job, about, "may we?", **values))  # type: ignore[arg-type]


def answered(h: Hands, agreement: str, answer: str = "yes") -> str:
    remark = "only if you must" if answer == "yes_with_remark" else ""
    return h.shop.bench.do(AnswerOwner(h.job, agreement, answer, "telephone", remark=remark)).note


# limits
def test_a_question_asked_again_cannot_be_answered_any_more_and_so_lifts_nothing(hands: Hands) -> None:
    hands.do(AddLimit(hands.job, "no_solvent"))
    first, second = asked(hands), asked(hands)
    answered(hands, second, "no")
    with pytest.raises(Refused, match="asked again since"):
        answered(hands, first)
    assert len(limits_in_force(hands.picture)) == 1


def test_a_question_asked_again_can_still_be_taken_back(hands: Hands) -> None:
    hands.do(AddLimit(hands.job, "no_solvent"))
    first, _second = asked(hands), asked(hands)
    hands.do(AnswerOwner(hands.job, first, "withdrawn"))
    assert hands.picture.agreements[0].answer == "withdrawn"


def test_a_yes_with_a_remark_to_the_newer_question_puts_the_limit_back(hands: Hands) -> None:
    hands.do(AddLimit(hands.job, "no_solvent"))
    answered(hands, asked(hands))
    assert limits_in_force(hands.picture) == ()
    note = answered(hands, asked(hands, limit_id=hands.picture.limits[0].id), "yes_with_remark")
    assert len(limits_in_force(hands.picture)) == 1
    assert "in force again" in note


def test_a_limit_is_not_lifted_by_a_yes_to_sanding_from_before_it_was_set(hands: Hands) -> None:
    answered(hands, asked(hands, "sanding", panels=("roof",)))
    hands.do(AddLimit(hands.job, "no_sanding"))
    assert may_not_sand(hands.picture, "roof")
    answered(hands, asked(hands, "sanding", panels=("roof",)))
    assert not may_not_sand(hands.picture, "roof")


def test_a_yes_with_a_remark_allows_no_sanding(hands: Hands) -> None:
    hands.do(AddLimit(hands.job, "no_sanding"))
    answered(hands, asked(hands, "sanding", panels=("roof",)), "yes_with_remark")
    assert may_not_sand(hands.picture, "roof")


def test_of_two_questions_about_sanding_the_one_answered_last_counts(hands: Hands) -> None:
    hands.do(AddLimit(hands.job, "no_sanding"))
    first, second = asked(hands, "sanding", panels=("roof",)), asked(hands, "sanding", panels=("roof",))
    answered(hands, second)
    hands.later()
    answered(hands, first, "no")
    assert may_not_sand(hands.picture, "roof")


def test_a_barred_panel_is_not_rubbed_with_polish(hands: Hands) -> None:
    hands.do(AddLimit(hands.job, "bar_panel", ("tailgate",)))
    with pytest.raises(Refused, match="tailgate: not to be touched") as found:
        hands.do(RecordRubTest(hands.job, "tailgate", "colour"))
    assert (found.value.rule, found.value.may_override) == ("owner_limit", False)
    hands.do(RecordRubTest(hands.job, "roof", "colour"))


def test_a_limit_set_while_a_step_runs_says_which_panel_runs(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(StartStep(hands.job, "roof", step.id))
    done = hands.shop.bench.do(AddLimit(hands.job, "bar_panel", ("roof", "tailgate")))
    assert done.note == "A step is running there: roof."
    assert hands.shop.bench.do(AddLimit(hands.job, "bar_panel", ("bonnet",))).note == ""
    assert hands.shop.bench.do(AddLimit(hands.job, "no_sanding")).note == "A step is running there: roof."


# agreements
def test_a_question_replaces_only_one_about_the_same(hands: Hands) -> None:
    sanding = asked(hands, "sanding", panels=("roof",))
    answered(hands, sanding)
    with pytest.raises(BadInput, match="about something else"):
        asked(hands, "other", replaces=sanding)
    assert [a.id for a in in_force(hands.picture)] == [sanding]
    for kind in ("no_solvent", "no_sanding"):
        hands.do(AddLimit(hands.job, kind))
    one, two = hands.picture.limits
    about_one = asked(hands, limit_id=one.id)
    with pytest.raises(BadInput, match="about something else"):
        asked(hands, limit_id=two.id, replaces=about_one)


def test_the_owner_answers_a_supplement_and_no_other_document(hands: Hands) -> None:
    hands.do(SetSetting("shop_name", "Invented Bay"))
    shop = hands.shop
    key = open_key(shop.folder, shop.bench.shop(), "invented words", shop.clock)
    arrival = hands.do(CloseDocument(hands.job, key, "arrival"))
    with pytest.raises(BadInput, match="no supplement"):
        asked(hands, "supplement", document_id=arrival)


# times
def test_a_mishap_cannot_have_been_told_before_it_happened(hands: Hands) -> None:
    hands.later(7200)
    now = hands.shop.clock.now()
    mishap = hands.do(RecordMishap(hands.job, "ladder fell", "roof", at=now - timedelta(hours=1)))
    with pytest.raises(BadInput, match="happened later than that"):
        hands.do(TellMishap(hands.job, mishap, "owner", "telephone", at=now - timedelta(hours=2)))
    hands.do(TellMishap(hands.job, mishap, "owner", "telephone", at=now - timedelta(minutes=59)))
    assert hands.picture.mishaps[0].told == "owner"


def test_a_year_no_car_was_made_in_is_refused_wherever_a_time_is_said(hands: Hands) -> None:
    mishap, question = hands.do(RecordMishap(hands.job, "ladder fell")), asked(hands, "other")
    for move in (
        RecordMishap(hands.job, "ladder fell", at=FAR_BACK),
        TellMishap(hands.job, mishap, "owner", "telephone", at=FAR_BACK),
        AnswerOwner(hands.job, question, "yes", "telephone", at=FAR_BACK),
        SetArrived(hands.job, FAR_BACK),
        SetArrived(hands.job, datetime(1899, 12, 31, tzinfo=UTC)),
    ):
        with pytest.raises(BadInput):
            hands.do(move)
    content = content_of("handover")(
        hands.picture, now=hands.shop.clock.now(), version="0", read_file=hands.shop.bench.evidence_bytes
    )
    assert document_pdf(content).pages > 1


def test_a_car_cannot_have_come_back_before_it_had_left(hands: Hands) -> None:
    hands.later(3600)
    hands.do(CarLeaves(hands.job))
    left = hands.shop.clock.now()
    hands.later(3600)
    hands.do(CarReturns(hands.job))
    with pytest.raises(BadInput, match="had not left yet"):
        hands.do(SetArrived(hands.job, left - timedelta(minutes=1)))
    hands.do(SetArrived(hands.job, left + timedelta(minutes=1)))
    assert hands.picture.visits[-1].arrived_at == left + timedelta(minutes=1)


# a car that is not here
def test_nothing_starts_on_a_car_that_is_not_here(hands: Hands) -> None:
    step = hands.adopted("roof")
    group = hands.shop.group(hands.job, "roof").id
    hands.do(CarLeaves(hands.job))
    for move in (
        StartStep(hands.job, "roof", step.id),
        RecordTrial(hands.job, group, "roof", step.combination_id),
    ):
        with pytest.raises(Refused, match="note its return first") as found:
            hands.do(move)
        assert (found.value.rule, found.value.may_override) == ("ended", True)
    hands.do(CarReturns(hands.job))
    hands.do(StartStep(hands.job, "roof", step.id))


def test_an_ended_job_is_taken_up_again_before_a_step_starts_or_a_person_says_why_not(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.do(TurnJob(hands.job, "refused", "owner refused it"))
    with pytest.raises(Refused, match=r"has ended \(refused\): take it up again first"):
        hands.do(StartStep(hands.job, "roof", step.id))
    hands.do(StartStep(hands.job, "roof", step.id, override="owner changed mind"))
    assert [o.rule for o in hands.picture.overrides] == ["ended"]
    hands.do(FinishStep(hands.job, "roof"))
    hands.do(TurnJob(hands.job, "resumed"))
    hands.do(StartStep(hands.job, "roof", step.id))


# forgetting
def test_the_name_a_proof_came_with_is_forgotten_too(hands: Hands) -> None:
    question = asked(hands, "other")
    hands.do(AnswerOwner(hands.job, question, "yes", "message", proof=photo(), proof_name="letter-of-unmistakable.jpg"))
    hands.do(ForgetOwner(hands.job))
    hands.shop.bench.close()
    held = b"".join(p.read_bytes() for p in hands.shop.folder.rglob("*") if p.is_file())
    assert b"letter-of-unmistakable" not in held
