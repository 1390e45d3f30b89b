"""What the Trials card says of a panel where no trial is proposed, of a running trial, and on its buttons."""

from __future__ import annotations

from invented_shop import InventedShop, invented, prepared
from invented_stage import press
from PySide6.QtCore import Qt
from stage_scenes import click, judged_trial, named, words
from trials_stage import job, stage, window

from detailbench.moves.surface import HoldPanel
from detailbench.screens.stages.trials.stage import TrialsStage
from detailbench.screens.window import Window

__all__ = ["invented", "job", "prepared", "stage", "window"]


def test_where_no_trial_is_proposed_the_line_says_so_and_the_reason_stands_once(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    assert stage.hand is not None
    assert stage.hand.words() == "Space: count-in, trial 1 on bonnet"
    window.context.do(HoldPanel(job, "bonnet", "owner wants it left"))
    assert stage.hand.words() == "no trial is proposed on bonnet"
    for page in ("Range", "Trial"):
        click(window, page)
        assert words(window.centre.card).count("No trial here. Held back: owner wants it left.") == 1
    assert "Set up, not proposed: " in words(window.centre.card)
    assert "Next, trial" not in words(window.centre.card)
    window.context.select_panel("roof")
    assert "Next, trial 1: " in words(window.centre.card)


def test_a_running_trial_is_named_also_while_another_panel_is_chosen(window: Window, stage: TrialsStage) -> None:
    assert stage.hand is not None
    stage.hand.start_or_stop()
    window.context.select_panel("roof")
    assert "bonnet, trial 1" in words(window.centre.card)


def test_space_starts_the_trial_also_from_the_open_page_s_own_name(window: Window, stage: TrialsStage) -> None:
    assert stage.hand is not None
    named(window, "Place").setFocus()
    press(Qt.Key.Key_Space)
    assert named(window, "place: typical").isVisible()  # it opened its page
    assert stage.hand.timer is None
    press(Qt.Key.Key_Space)
    assert stage.hand.timer is not None


def test_the_last_pair_of_light_passes_is_set_up_as_it_is_said_and_seen_on_the_sheet(
    window: Window, stage: TrialsStage, invented: InventedShop, job: str
) -> None:
    click(window, "Sheet")
    click(window, "sheet: pad, lamp")
    first = judged_trial(invented, job, 4, "yes", "even_haze")
    click(window, "Trial")
    assert "a last pair of light passes on top" in words(window.centre.card)
    click(window, "Take up what is chosen")
    assert stage.hand is not None
    draft = stage.hand.draft
    assert draft is not None
    assert (draft.on_top_of, draft.passes, draft.force_word, draft.seconds) == (first.id, 2, "light", 30)
    assert named(window, "force: light").isVisible()


def test_the_button_that_adopts_is_wide_enough_for_its_words_beside_a_confirming_trial(
    window: Window, invented: InventedShop, job: str
) -> None:
    judged_trial(invented, job, 4, "yes", "clear")
    window.resize(1366, 768)
    click(window, "Adopt")
    assert named(window, "Set up the confirming trial on a second panel").isVisible()
    adopt = named(window, "Adopt this process")
    adopt.setText("Adopt for upper panels: 4 panels")
    assert adopt.width() >= adopt.sizeHint().width()
