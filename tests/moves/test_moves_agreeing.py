"""What is put to the owner: asked, answered once, replaced by a later question, and what it changes."""

from __future__ import annotations

from datetime import timedelta
from decimal import Decimal
from io import BytesIO

import pytest
from invented_findings import Hands
from invented_limits import PutLimit
from invented_shop import InventedShop
from PIL import Image

from detailbench.basics.errors import BadFile, BadInput, RecordTrouble, Refused
from detailbench.findings.agreements import (
    approved_section,
    in_force,
    newest_about,
    open_agreements,
    price_agreed,
)
from detailbench.findings.limits import limits_in_force
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.mishaps import RecordMishap
from detailbench.moves.surface import MakeGroup
from detailbench.moves.trials import JudgeTrial, RecordTrial


@pytest.fixture
def hands(invented: InventedShop) -> Hands:
    return Hands(invented, invented.job())


def ask(hands: Hands, about: str = "extra_work", question: str = "the tailgate too?", **values: object) -> str:
    return hands.do(AskOwner(hands.job, about, question, **values))  # type: ignore[arg-type]


def answer(hands: Hands, agreement: str, said: str = "yes", channel: str = "telephone", **values: object) -> str:
    return hands.do(AnswerOwner(hands.job, agreement, said, channel, **values))  # type: ignore[arg-type]


def test_a_question_is_open_until_it_is_answered(hands: Hands) -> None:
    asked = ask(hands, price=Decimal("120.50"))
    assert [a.id for a in open_agreements(hands.picture)] == [asked]
    hands.later()
    answer(hands, asked)
    kept = hands.picture.agreements[0]
    assert open_agreements(hands.picture) == ()
    assert (kept.answer, kept.channel, kept.answered_at, kept.answered_to, kept.price) == (
        "yes", "telephone", hands.shop.clock.now(), hands.shop.person, Decimal("120.50"),
    )  # fmt: skip
    assert kept.party_id == next(p.id for p in hands.picture.parties if p.role == "owner")


def test_an_answered_question_is_never_rewritten(hands: Hands) -> None:
    asked = ask(hands)
    answer(hands, asked)
    with pytest.raises(Refused, match="was answered") as caught:
        answer(hands, asked, "no")
    assert (caught.value.rule, hands.picture.agreements[0].answer) == ("answered", "yes")


def test_the_owners_words_are_kept_apart_and_stand_in_no_journal_line(hands: Hands) -> None:
    asked = ask(hands)
    answer(hands, asked, "yes_with_remark", "message", remark="only on Friday", message="ok but only on Friday")
    picture = hands.picture
    assert (picture.said(asked, "remarks"), picture.said(asked, "message")) == (
        "only on Friday", "ok but only on Friday",
    )  # fmt: skip
    lines = hands.shop.bench.entries(hands.job)
    assert not any("Friday" in line.says for line in lines)
    assert "Friday" not in repr(AnswerOwner(hands.job, asked, "yes", remark="Friday", message="Friday"))


@pytest.mark.parametrize(
    ("values", "field"),
    [
        ({"answer": "maybe", "channel": "telephone"}, "answer"),
        ({"answer": "yes", "channel": ""}, "channel"),
        ({"answer": "no", "channel": "letter"}, "channel"),
        ({"answer": "yes_with_remark", "channel": "telephone", "remark": "  "}, "remark"),
    ],
)
def test_half_an_answer_is_not_taken(hands: Hands, values: dict[str, str], field: str) -> None:
    asked = ask(hands)
    with pytest.raises(BadInput) as caught:
        hands.do(AnswerOwner(hands.job, asked, **values))  # type: ignore[arg-type]
    assert (caught.value.field, hands.picture.agreements[0].answer) == (field, "open")


def test_an_answer_may_have_been_given_earlier_but_not_later_than_now(hands: Hands) -> None:
    asked = ask(hands)
    now = hands.shop.clock.now()
    with pytest.raises(BadInput, match="not come yet"):
        answer(hands, asked, at=now + timedelta(minutes=1))
    with pytest.raises(BadInput, match="offset"):
        answer(hands, asked, at=now.replace(tzinfo=None))
    answer(hands, asked, at=now - timedelta(hours=2))
    kept = hands.picture.agreements[0]
    assert kept.answered_at == now - timedelta(hours=2)


def test_an_answer_is_taken_by_somebody(hands: Hands) -> None:
    asked = ask(hands)
    hands.shop.bench.person = ""
    with pytest.raises(Refused, match="Choose who you are"):
        answer(hands, asked)


def test_an_answer_from_somebody_not_in_this_job_or_with_a_proof_nobody_keeps_is_refused(hands: Hands) -> None:
    asked = ask(hands)
    with pytest.raises(RecordTrouble):
        answer(hands, asked, party_id="nobody")
    with pytest.raises(RecordTrouble):
        answer(hands, asked, evidence_id="nothing")
    assert hands.picture.agreements[0].answer == "open"


def test_a_picture_of_the_message_is_kept_with_the_answer_and_its_name_apart(hands: Hands) -> None:
    asked = ask(hands)
    with pytest.raises(BadFile):
        answer(hands, asked, channel="message", proof=b"no picture", proof_name="message.png")
    assert hands.picture.agreements[0].answer == "open"
    image = BytesIO()
    Image.new("RGB", (4, 4)).save(image, "PNG")
    answer(hands, asked, channel="message", proof=image.getvalue(), proof_name="owner message.png")
    proof = hands.picture.evidence_of(hands.picture.agreements[0].evidence_id)
    assert (proof.media_type, proof.name, hands.picture.said(proof.id, "file_name")) == (
        "image/png", "", "owner message.png",
    )  # fmt: skip
    assert hands.shop.bench.evidence_bytes(proof.sha256) == image.getvalue()


@pytest.mark.parametrize(
    ("values", "field"),
    [
        ({"about": "weather", "question": "rain?"}, "about"),
        ({"about": "other", "question": "  "}, "question"),
        ({"about": "other", "question": "more?", "price": Decimal("-1")}, "price"),
        ({"about": "other", "question": "more?", "price": Decimal("NaN")}, "price"),
        ({"about": "other", "question": "more?", "panels": ("wing_front_x",)}, "panel"),
        ({"about": "sanding", "question": "the run?"}, "panels"),
    ],
)
def test_half_a_question_is_not_taken(hands: Hands, values: dict[str, object], field: str) -> None:
    with pytest.raises(BadInput) as caught:
        ask(hands, **values)  # type: ignore[arg-type]
    assert (caught.value.field, hands.picture.agreements) == (field, ())


@pytest.mark.parametrize(
    ("about", "rule"), [("supplement", "not_closed"), ("test_section", "no_trial"), ("mishap", "no_mishap")]
)
def test_nothing_is_asked_about_what_is_not_there(hands: Hands, about: str, rule: str) -> None:
    with pytest.raises(Refused) as caught:
        ask(hands, about)
    assert caught.value.rule == rule


def test_the_same_asked_again_replaces_the_earlier_question(hands: Hands) -> None:
    hands.do(RecordMishap(hands.job, "a rub mark on the trim", "sill_l"))
    first = ask(hands, "mishap", "cleaned at our cost?")
    second = ask(hands, "mishap", "replaced at our cost?")
    assert hands.picture.agreements[-1].replaces == first
    assert [a.id for a in open_agreements(hands.picture)] == [second]
    answer(hands, second, "withdrawn", "")
    assert [a.id for a in open_agreements(hands.picture)] == [first]


def test_two_questions_about_extra_work_stand_beside_each_other_unless_one_names_the_other(hands: Hands) -> None:
    first = ask(hands, question="the tailgate?", price=Decimal(80))
    second = ask(hands, question="the wheels?", price=Decimal(40))
    answer(hands, first)
    answer(hands, second)
    assert price_agreed(hands.picture) == Decimal(120)
    third = ask(hands, question="the wheels without the rear ones?", price=Decimal(25), replaces=second)
    assert price_agreed(hands.picture) == Decimal(120)  # the earlier yes stands until the new question is answered
    answer(hands, third)
    assert price_agreed(hands.picture) == Decimal(105)
    assert [a.id for a in in_force(hands.picture)] == [first, third]


@pytest.mark.parametrize("said", ["no", "withdrawn"])
def test_what_was_not_agreed_has_no_price(hands: Hands, said: str) -> None:
    answer(hands, ask(hands, price=Decimal(80)), said)
    assert (price_agreed(hands.picture), in_force(hands.picture)) == (None, ())


def test_a_yes_lifts_the_limit_and_taking_it_back_puts_it_in_force_again(hands: Hands) -> None:
    limit = hands.do(PutLimit(hands.job, "bar_panel", ("mirror_cap_l",)))
    asked = ask(hands, "limit", "may the mirror cap be polished after all?")
    assert hands.picture.agreements[0].limit_id == limit
    answer(hands, asked)
    assert hands.picture.limits[0].lifted_by == asked
    hands.shop.bench.undo(hands.job)
    assert [m.id for m in limits_in_force(hands.picture)] == [limit]


@pytest.mark.parametrize("said", ["no", "withdrawn", "yes_with_remark"])
def test_anything_but_a_plain_yes_lifts_nothing(hands: Hands, said: str) -> None:
    hands.do(PutLimit(hands.job, "no_sanding"))
    asked = ask(hands, "limit", "may the run be levelled?")
    changes = hands.shop.bench.do(
        AnswerOwner(hands.job, asked, said, "telephone", remark="if it stays matt" if said == "yes_with_remark" else "")
    )
    assert len(limits_in_force(hands.picture)) == 1
    assert ("lifts nothing" in changes.note) == (said == "yes_with_remark")


def test_a_no_to_the_question_that_replaced_the_yes_puts_the_limit_back(hands: Hands) -> None:
    limit = hands.do(PutLimit(hands.job, "no_sanding"))
    answer(hands, ask(hands, "limit", "may the run be levelled?"))
    assert limits_in_force(hands.picture) == ()
    again = ask(hands, "limit", "still so?", limit_id=limit)
    changes = hands.shop.bench.do(AnswerOwner(hands.job, again, "no", "telephone"))
    assert [m.id for m in limits_in_force(hands.picture)] == [limit]
    assert "in force again" in changes.note


def test_of_several_limits_the_one_asked_about_is_named(hands: Hands) -> None:
    hands.do(PutLimit(hands.job, "no_sanding"))
    second = hands.do(PutLimit(hands.job, "no_solvent"))
    with pytest.raises(BadInput, match="which of the owner's limits"):
        ask(hands, "limit", "may it be?")
    answer(hands, ask(hands, "limit", "may it be?", limit_id=second))
    assert [m.kind for m in limits_in_force(hands.picture)] == ["no_sanding"]


def test_the_test_section_is_the_last_trial_the_process_rests_on(hands: Hands) -> None:
    hands.tried("roof", 2, cleared="no")
    hands.adopted("roof", 3)
    hands.tried("roof", 4)  # tried afterwards: not what was adopted
    adopted = hands.picture.processes[-1].trial_ids[-1]
    asked = ask(hands, "test_section", "as on the roof's test section", panels=("tailgate",), price=Decimal(420))
    assert hands.picture.agreements[0].trial_id == adopted
    assert approved_section(hands.picture) is None
    answer(hands, asked)
    found = approved_section(hands.picture, hands.shop.group(hands.job, "roof").id)
    assert found is not None
    assert (found.trial.id, found.level, found.price) == (adopted, "as on the roof's test section", Decimal(420))


def test_without_a_process_it_is_the_last_judged_trial_of_the_panels_finish_group(hands: Hands) -> None:
    hands.do(MakeGroup(hands.job, "refinished door", ("door_front_r",)))
    hands.tried("roof", 2)
    of_roof = hands.picture.trials[-1].id
    hands.tried("door_front_r", 3)
    asked = ask(hands, "test_section", "the level", panels=("roof",))
    assert newest_about(hands.picture, "test_section").trial_id == of_roof  # type: ignore[union-attr]
    answer(hands, asked)
    assert approved_section(hands.picture, hands.shop.group(hands.job, "door_front_r").id) is None


def test_the_section_put_to_the_owner_lies_on_the_panel_that_was_meant_and_was_not_stopped(hands: Hands) -> None:
    hands.tried("roof", 4)
    of_roof = hands.picture.trials[-1].id
    hands.tried("tailgate", 4)
    of_tailgate = hands.picture.trials[-1].id
    hands.do(AskOwner(hands.job, "test_section", "here?", panels=("roof",)))
    assert newest_about(hands.picture, "test_section").trial_id == of_roof  # type: ignore[union-attr]
    group = hands.shop.group(hands.job, "roof")
    hot = hands.do(RecordTrial(hands.job, group.id, "roof", hands.picture.trials[-1].combination_id))
    hands.do(JudgeTrial(hands.job, hot, stopped="heat"))
    hands.do(AskOwner(hands.job, "test_section", "on the whole?"))
    assert newest_about(hands.picture, "test_section").trial_id == of_tailgate  # type: ignore[union-attr]


def test_everything_asked_and_answered_can_be_taken_back_and_done_again(hands: Hands) -> None:
    asked = ask(hands)
    answer(hands, asked)
    hands.shop.bench.undo(hands.job)
    hands.shop.bench.undo(hands.job)
    assert hands.picture.agreements == ()
    hands.shop.bench.redo(hands.job)
    hands.shop.bench.redo(hands.job)
    assert hands.picture.agreements[0].answer == "yes"
    assert hands.shop.bench.check().troubles == ()
