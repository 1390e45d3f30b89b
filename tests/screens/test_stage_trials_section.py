"""The test section the owner is shown: its two halves, the level in words, and the work held against it at handover."""

from __future__ import annotations

from pathlib import Path

import pytest
from invented_shop import InventedShop, invented, prepared
from photographed_samples import photo
from pytestqt.qtbot import QtBot
from stage_scenes import click, judged_trial, named, pick, ready_job, scrolls, shown_window, type_into, words

from detailbench.findings.agreements import approved_section, section_photos
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.surface import MakeGroup
from detailbench.record.things import Trial
from detailbench.screens.stages.handover.stage import HandoverStage
from detailbench.screens.stages.handover.statement import statement
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.window import Window

__all__ = ["invented", "prepared"]


@pytest.fixture
def job(invented: InventedShop) -> str:
    return ready_job(invented, "bonnet", "roof")


@pytest.fixture
def trial(invented: InventedShop, job: str) -> Trial:
    return judged_trial(invented, job, 4, "yes", "clear")


@pytest.fixture
def stage() -> TrialsStage:
    return TrialsStage()


@pytest.fixture
def window(qtbot: QtBot, invented: InventedShop, job: str, trial: Trial, stage: TrialsStage) -> Window:
    made = shown_window(qtbot, invented, job, stage)
    made.context.select_panel("bonnet")
    click(made, "Story")
    return made


def test_two_photos_become_the_untouched_and_the_polished_half_of_the_trial(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, trial: Trial, tmp_path: Path, qtbot: QtBot
) -> None:
    assert stage.card is not None
    section = stage.card.story.section
    pick(window, "Trials of this finish group", "Trial 1")
    files = [tmp_path / "first.jpg", tmp_path / "second.jpg"]
    for turn, file in enumerate(files, 1):
        file.write_bytes(photo(turn))
    asked: list[str] = []

    def chosen(_over: object, title: str, _filters: object, many: bool, take: object) -> None:
        asked.append(title)
        assert not many
        take([files[len(asked) - 1]])  # type: ignore[operator]

    section.choose = chosen
    assert not named(window, "add the photo of the polished half").isEnabled()
    click(window, "add the photo of the untouched half")
    qtbot.waitUntil(lambda: len(section_photos(invented.picture(job), trial.id)) == 1)
    qtbot.waitUntil(lambda: not section.intake.busy)
    click(window, "add the photo of the polished half")
    qtbot.waitUntil(lambda: any(p.pair for p in invented.picture(job).photos))
    untouched, polished = section_photos(invented.picture(job), trial.id)
    assert (untouched.panel, untouched.moment, untouched.shows) == ("bonnet", "trial", "test_section")
    assert polished.pair == untouched.id
    assert [half.id if half is not None else "" for half in section.halves()] == [untouched.id, polished.id]


def test_the_level_in_words_and_the_price_are_put_to_the_owner_from_here(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str, trial: Trial
) -> None:
    pick(window, "Trials of this finish group", "Trial 1")
    click(window, "Put this test section to the owner")
    type_into(window, "price, EUR", "420")
    type_into(window, "the level put to the owner, in words", "swirl gone, deep scratches stay")
    (asked,) = invented.picture(job).agreements
    assert (asked.level, asked.price, asked.trial_id) == ("swirl gone, deep scratches stay", 420, trial.id)
    assert "Put to the owner: open." in words(window.centre.card)
    invented.bench.do(AnswerOwner(job, asked.id, "yes", "present"))
    assert "approved by the owner, present: “swirl gone, deep scratches stay”" in words(window.centre.card)
    assert approved_section(invented.picture(job)) is not None


def handed_over(qtbot: QtBot, invented: InventedShop, job: str, trial: Trial, *, approved: bool) -> Window:
    if approved:
        asked = invented.bench.do(
            AskOwner(job, "test_section", "is this it?", None, ("bonnet",), trial_id=trial.id, level="swirl gone")
        ).id
        invented.bench.do(AnswerOwner(job, asked, "yes", "present"))
    window = shown_window(qtbot, invented, job, HandoverStage())
    click(window, "Accept")
    return window


def test_the_handover_holds_the_work_against_the_approved_level(
    qtbot: QtBot, invented: InventedShop, job: str, trial: Trial
) -> None:
    window = handed_over(qtbot, invented, job, trial, approved=True)
    assert "“swirl gone”" in words(window.centre.card)
    click(window, "the owner's word, the car looked at together: accepted")
    click(window, "as agreed: yes")
    click(window, "Enter the answer")
    assert invented.picture(job).acceptances[-1].level_met == "yes"
    assert "As agreed: yes." in words(window.centre.card)
    assert not scrolls(window)


def two_sections(qtbot: QtBot, invented: InventedShop, job: str) -> Window:
    invented.bench.do(MakeGroup(job, "the roof", ("roof",)))
    for panel, level in (("bonnet", "swirl gone"), ("roof", "haze gone")):
        trial = judged_trial(invented, job, 4, "yes", "clear", panel=panel)
        asked = invented.bench.do(AskOwner(job, "test_section", "so?", None, (panel,), trial_id=trial.id, level=level))
        invented.bench.do(AnswerOwner(job, asked.id, "yes", "present"))
    window = shown_window(qtbot, invented, job, HandoverStage())
    click(window, "Accept")
    return window


def test_several_approved_sections_are_each_asked_about_and_named_in_the_line_to_be_signed(
    qtbot: QtBot, invented: InventedShop, job: str
) -> None:
    window = two_sections(qtbot, invented, job)
    assert "2 test sections were approved" in words(window.centre.card)
    click(window, "acceptance: Sections")
    assert "“haze gone”" in words(window.centre.card)
    assert not scrolls(window)
    click(window, "as agreed, bonnet: yes")
    click(window, "as agreed, roof: no")
    click(window, "acceptance: Answer")
    click(window, "the owner's word, the car looked at together: accepted with remarks")
    type_into(window, "remarks, printed as typed", "the roof is still hazy")
    click(window, "Enter the answer")
    found = invented.picture(job).acceptances[-1]
    bonnet, roof = (a.id for a in invented.picture(job).agreements)
    assert (found.met_ids, found.not_met_ids) == ((bonnet,), (roof,))
    assert "As agreed, bonnet: yes. As agreed, roof: no." in words(window.centre.card)
    signed = statement(invented.picture(job))
    assert "Test section on the bonnet, “swirl gone”: as agreed." in signed
    assert "Test section on the roof, “haze gone”: not as agreed." in signed


def test_accepted_although_not_as_agreed_needs_the_words_for_it(
    qtbot: QtBot, invented: InventedShop, job: str, trial: Trial
) -> None:
    window = handed_over(qtbot, invented, job, trial, approved=True)
    click(window, "the owner's word, the car looked at together: accepted")
    click(window, "as agreed: no")
    click(window, "Enter the answer")
    assert not invented.picture(job).acceptances
    assert "type what was said about it" in words(window.centre.card)


def test_without_an_approved_section_nothing_is_held_against_one(
    qtbot: QtBot, invented: InventedShop, job: str, trial: Trial
) -> None:
    window = handed_over(qtbot, invented, job, trial, approved=False)
    assert not [b for b in window.centre.card.findChildren(type(named(window, "Enter the answer"))) if b.isVisible()
                and b.accessibleName().startswith("as agreed")]  # fmt: skip
