"""The approved test section: level, price and two halves beside the tape put to the owner, and held against at
handover."""

from __future__ import annotations

from decimal import Decimal

import pytest
from invented_findings import Hands
from invented_findings import hands as hands

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.agreement_words import approved_words, newer_counts
from detailbench.findings.agreements import approved_section, approved_sections, price_agreed, section_photos
from detailbench.findings.due_handover import handover_list
from detailbench.findings.level_met import levels_met, still_unsaid, unsaid_which
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.handover import RecordAcceptance
from detailbench.moves.photos import AddPhoto, CorrectPhoto, PairPhotos
from detailbench.moves.shop import SetSetting
from detailbench.moves.surface import MakeGroup
from detailbench.photos.drawn import drawn_reflection

LEVEL = "swirls gone, single scratches stay"


def half(hands: Hands, trial: str, swirls: int, panel: str = "roof") -> str:
    content = drawn_reflection(swirls, seed=swirls)
    return hands.do(
        AddPhoto(hands.job, content, f"{swirls}.jpg", panel, moment="trial", shows="test_section", trial_id=trial)
    )


def tried(hands: Hands, panel: str = "roof") -> str:
    hands.tried(panel)
    return hands.picture.trials[-1].id


def shown(hands: Hands) -> str:
    """The section shown and agreed to; its trial."""
    trial = tried(hands)
    first, second = half(hands, trial, 400), half(hands, trial, 10)
    hands.do(PairPhotos(hands.job, first, second))
    asked = hands.shop.bench.do(
        AskOwner(hands.job, "test_section", "so?", Decimal(640), panels=("roof",), level=f" {LEVEL} ")
    )
    assert asked.note == ""
    hands.do(AnswerOwner(hands.job, asked.id, "yes", "present"))
    return trial


def test_the_level_the_price_and_the_two_halves_stand_with_the_owners_yes(hands: Hands) -> None:
    trial = shown(hands)
    found = approved_section(hands.picture)
    assert found is not None
    assert (found.trial.id, found.level, found.price) == (trial, LEVEL, Decimal(640))
    assert LEVEL in approved_words(hands.picture)
    first, second = section_photos(hands.picture, trial)
    assert second.pair == first.id


def test_what_is_missing_of_it_is_said_when_the_owner_is_asked(hands: Hands) -> None:
    tried(hands)
    done = hands.shop.bench.do(AskOwner(hands.job, "test_section", "so?", panels=("roof",)))
    assert "No level" in done.note
    assert "No pair of photos" in done.note


def test_the_section_put_to_the_owner_is_the_one_photographed_not_the_confirming_one(hands: Hands) -> None:
    trial = tried(hands)
    half(hands, trial, 400)
    tried(hands, "tailgate")
    asked = hands.do(AskOwner(hands.job, "test_section", "so?", panels=("roof",), level=LEVEL))
    assert next(a for a in hands.picture.agreements if a.id == asked).trial_id == trial


def test_a_level_belongs_to_a_section_or_a_question_about_the_level(hands: Hands) -> None:
    with pytest.raises(BadInput) as caught:
        hands.do(AskOwner(hands.job, "extra_work", "the tailgate too?", level=LEVEL))
    assert caught.value.field == "level"


def test_a_photo_of_a_section_names_its_trial_on_that_panel(hands: Hands) -> None:
    trial = tried(hands)
    content = drawn_reflection(10)
    with pytest.raises(BadInput, match="which trial"):
        hands.do(AddPhoto(hands.job, content, panel="roof", shows="test_section"))
    with pytest.raises(BadInput, match="another panel"):
        half(hands, trial, 10, "tailgate")
    photo = half(hands, trial, 10)
    with pytest.raises(BadInput, match="another panel"):
        hands.do(CorrectPhoto(hands.job, photo, {"panel": "tailgate"}))
    with pytest.raises(BadInput, match="which trial"):
        hands.do(CorrectPhoto(hands.job, photo, {"trial_id": ""}))


def test_two_halves_of_two_trials_are_no_pair(hands: Hands) -> None:
    one = half(hands, tried(hands), 400)
    other = half(hands, tried(hands), 10)
    with pytest.raises(BadInput, match="before and one from after"):
        hands.do(PairPhotos(hands.job, one, other))


@pytest.mark.parametrize("met", ["yes", "no"])
def test_the_work_is_held_against_the_section_at_handover(hands: Hands, met: str) -> None:
    shown(hands)
    hands.do(RecordAcceptance(hands.job, "with_remarks", "as we said", level_met=met))
    assert hands.picture.acceptances[-1].level_met == met


def test_a_level_nobody_approved_cannot_be_met(hands: Hands) -> None:
    with pytest.raises(BadInput, match="approved no test section"):
        hands.do(RecordAcceptance(hands.job, "accepted", level_met="yes"))
    shown(hands)
    with pytest.raises(BadInput, match="yes or no"):
        hands.do(RecordAcceptance(hands.job, "accepted", level_met="nearly"))
    with pytest.raises(BadInput, match="not met and the work is accepted"):
        hands.do(RecordAcceptance(hands.job, "accepted", level_met="no"))
    assert hands.picture.acceptances == ()


def agreed(hands: Hands, panel: str, level: str, price: int | None = None) -> str:
    """A section tried on this panel and agreed to; the agreement."""
    trial = tried(hands, panel)
    asked = hands.do(
        AskOwner(
            hands.job, "test_section", "so?", None if price is None else Decimal(price), (panel,), trial_id=trial,
            level=level,
        )
    )  # fmt: skip
    hands.do(AnswerOwner(hands.job, asked, "yes", "present"))
    return asked


def two_groups(hands: Hands) -> tuple[str, str]:
    """Two finish groups with an approved section each; the agreements."""
    hands.do(MakeGroup(hands.job, "the roof", ("roof",)))
    return agreed(hands, "bonnet", "swirls gone"), agreed(hands, "roof", "haze gone")


def test_each_approved_section_has_an_answer_of_its_own(hands: Hands) -> None:
    bonnet, roof = two_groups(hands)
    sections = {bonnet: "yes", roof: "no"}
    hands.do(RecordAcceptance(hands.job, "with_remarks", "the roof is still hazy", sections=sections))
    found = hands.picture.acceptances[-1]
    assert (found.level_met, found.met_ids, found.not_met_ids) == ("no", (bonnet,), (roof,))
    assert [(s.trial.panel, met) for s, met in levels_met(hands.picture, found)] == [("bonnet", "yes"), ("roof", "no")]


def test_what_nobody_said_of_one_of_several_sections_is_told(hands: Hands) -> None:
    bonnet, _roof = two_groups(hands)
    done = hands.shop.bench.do(RecordAcceptance(hands.job, "accepted", sections={bonnet: "yes"}))
    assert "Nobody said whether the work is as agreed on: the roof, roof." in done.note
    assert hands.picture.acceptances[-1].level_met == ""


def test_the_handover_is_due_until_each_of_several_sections_was_spoken_of(hands: Hands) -> None:
    bonnet, roof = two_groups(hands)
    hands.do(RecordAcceptance(hands.job, "accepted", sections={bonnet: "yes"}))
    assert not handover_list(hands.picture)["acceptance"]
    assert [s.trial.panel for s in still_unsaid(hands.picture)] == ["roof"]
    hands.do(RecordAcceptance(hands.job, "accepted", sections={bonnet: "yes", roof: "yes"}))
    assert handover_list(hands.picture)["acceptance"]
    assert hands.picture.acceptances[-1].level_met == "yes"


def test_one_section_nobody_spoke_of_keeps_the_handover_open_no_longer_than_before(hands: Hands) -> None:
    agreed(hands, "bonnet", "swirls gone")
    hands.do(RecordAcceptance(hands.job, "accepted"))
    assert handover_list(hands.picture)["acceptance"]


def test_a_no_that_names_no_section_is_told_of_none_of_several(hands: Hands) -> None:
    two_groups(hands)
    hands.do(RecordAcceptance(hands.job, "with_remarks", "still hazy", level_met="no"))
    found = hands.picture.acceptances[-1]
    assert unsaid_which(hands.picture, found)
    assert [met for _s, met in levels_met(hands.picture, found)] == ["", ""]


def test_a_word_about_a_section_nobody_approved_is_refused(hands: Hands) -> None:
    bonnet, _roof = two_groups(hands)
    with pytest.raises(BadInput, match="approved no test section"):
        hands.do(RecordAcceptance(hands.job, "accepted", sections={"none": "yes"}))
    with pytest.raises(BadInput, match="yes or no"):
        hands.do(RecordAcceptance(hands.job, "accepted", sections={bonnet: "nearly"}))


def test_a_second_agreed_section_of_a_finish_group_takes_the_place_of_the_first_with_its_price(hands: Hands) -> None:
    first = agreed(hands, "bonnet", "swirls gone", 640)
    hands.later()
    trial = tried(hands, "roof")
    asked = hands.do(AskOwner(hands.job, "test_section", "so?", Decimal(500), ("roof",), trial_id=trial, level="less"))
    assert price_agreed(hands.picture) == Decimal(640)  # until it is answered
    done = hands.shop.bench.do(AnswerOwner(hands.job, asked, "yes", "present"))
    assert "This answer counts for the finish group" in done.note
    assert price_agreed(hands.picture) == Decimal(500)
    assert [s.level for s in approved_sections(hands.picture)] == ["less"]
    assert "a newer answer" in newer_counts(hands.picture, first)


def test_sections_of_two_finish_groups_stand_beside_each_other_with_their_prices(hands: Hands) -> None:
    hands.do(MakeGroup(hands.job, "the roof", ("roof",)))
    agreed(hands, "bonnet", "swirls gone", 640)
    agreed(hands, "roof", "haze gone", 200)
    assert price_agreed(hands.picture) == Decimal(840)


def test_a_no_to_a_second_section_leaves_the_first(hands: Hands) -> None:
    agreed(hands, "bonnet", "swirls gone", 640)
    asked = hands.do(AskOwner(hands.job, "test_section", "so?", trial_id=tried(hands), panels=("roof",), level="all"))
    hands.do(AnswerOwner(hands.job, asked, "no", "present"))
    assert [s.level for s in approved_sections(hands.picture)] == ["swirls gone"]


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("adviser_stop", "soon"),
        ("change_first", "machine"),
        ("misjudged_percent", 50.0),
        ("finish_misjudged_light_percent", 0.0),
        ("trial_min", -1.0),
    ],
)
def test_a_setting_of_the_trials_nothing_could_be_worked_out_with_is_refused(
    hands: Hands, key: str, value: object
) -> None:
    with pytest.raises(BadInput) as caught:
        hands.do(SetSetting(key, value))
    assert caught.value.field == key


def test_asking_without_a_judged_trial_is_refused(hands: Hands) -> None:
    with pytest.raises(Refused, match="No trial was judged"):
        hands.do(AskOwner(hands.job, "test_section", "so?", panels=("roof",), level=LEVEL))
