"""Closing the report beside the window: the window lives, nothing else is written, nothing is lost."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from invented_shop import InventedShop, invented, prepared
from PySide6.QtCore import QThread
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from stage_scenes import click, named, ready_job, shown_window, type_into, words

from detailbench.basics.errors import RecordTrouble
from detailbench.moves.documents import CloseReport
from detailbench.moves.surface import HoldPanel
from detailbench.record.checking import check
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.handover.stage import HandoverStage
from detailbench.screens.window import Window

__all__ = ["invented", "prepared"]

SECRET = "four ordinary words here"
LONG_MS = 60_000


@pytest.fixture
def job(invented: InventedShop) -> str:
    return ready_job(invented, "bonnet")


@pytest.fixture
def stage() -> HandoverStage:
    return HandoverStage()


@pytest.fixture
def window(qtbot: QtBot, invented: InventedShop, job: str, stage: HandoverStage) -> Window:
    made = shown_window(qtbot, invented, job, stage)
    click(made, "Close")
    return made


def acts_of(stage: HandoverStage) -> ClosingActs:
    assert stage.acts is not None
    return stage.acts


def enter_secret(window: Window, first: str = SECRET, second: str = SECRET) -> None:
    for name, text in (("passphrase of the workshop's key", first), ("the passphrase again", second)):
        from stage_scenes import field

        field(window, name).setText(text)  # type: ignore[attr-defined]


def closed(window: Window, stage: HandoverStage, qtbot: QtBot) -> None:
    """Close the report for the first time and wait for it."""
    enter_secret(window)
    click(window, "Close the report")
    qtbot.waitUntil(lambda: not acts_of(stage).beside.busy, timeout=LONG_MS)


class Gate:
    """Holds the worker inside its transaction until the test lets it go on."""

    def __init__(self) -> None:
        self.inside, self.open = threading.Event(), threading.Event()
        self.thread: Any = None

    def wait(self) -> None:
        self.thread = threading.current_thread()
        self.inside.set()
        self.open.wait(30)


@pytest.fixture
def gate(monkeypatch: pytest.MonkeyPatch) -> Iterator[Gate]:
    """The report's move stops at the gate, in the worker, with the transaction open."""
    made = Gate()
    plain = CloseReport.make

    def make(self: CloseReport, w: Any) -> Any:
        made.wait()
        return plain(self, w)

    monkeypatch.setattr(CloseReport, "make", make)
    yield made
    made.open.set()


# the key
def test_the_first_time_the_key_is_explained_and_the_passphrase_typed_twice(
    window: Window, invented: InventedShop, job: str
) -> None:
    told = words(window.centre.card)
    assert "“Invented Paintworks”, and never in an owner's" in told
    enter_secret(window, second="something else")
    click(window, "Close the report")
    assert "The two passphrases differ." in words(window.centre.card)
    assert not invented.picture(job).documents


def test_the_passphrase_is_asked_for_once(
    window: Window, stage: HandoverStage, invented: InventedShop, job: str, qtbot: QtBot
) -> None:
    closed(window, stage, qtbot)
    click(window, "report: Close")
    assert "passphrase" not in words(window.centre.card)
    click(window, "Close the report")
    qtbot.waitUntil(lambda: not acts_of(stage).beside.busy, timeout=LONG_MS)
    first, second = invented.picture(job).documents
    assert second.replaces == first.id


def test_a_wrong_passphrase_is_said_at_the_field_and_nothing_is_closed(
    window: Window, stage: HandoverStage, invented: InventedShop, job: str, qtbot: QtBot
) -> None:
    from detailbench.moves.documents import open_key

    open_key(invented.folder, invented.bench.shop(), SECRET, invented.clock)
    window.context.changed.emit(None, None)
    from stage_scenes import field

    field(window, "passphrase of the workshop's key").setText("not the words at all")  # type: ignore[attr-defined]
    click(window, "Close the report")
    qtbot.waitUntil(lambda: not acts_of(stage).beside.busy, timeout=LONG_MS)
    assert not invented.picture(job).documents
    assert acts_of(stage).key is None
    assert window.notices.kind == "stop"


def test_without_the_workshops_name_no_key_is_made(
    window: Window, stage: HandoverStage, invented: InventedShop, job: str, qtbot: QtBot
) -> None:
    from detailbench.moves.shop import SetSetting

    invented.bench.do(SetSetting("shop_name", ""))
    assert "Type the workshop's name under Shop first" in words(window.centre.card)
    closed(window, stage, qtbot)
    assert not invented.picture(job).documents
    assert not acts_of(stage).has_key_file


# beside the window
def test_the_report_is_closed_in_a_thread_and_the_picture_comes_back_in_the_windows_own(
    window: Window, stage: HandoverStage, invented: InventedShop, job: str, qtbot: QtBot, gate: Gate
) -> None:
    heard_in: list[QThread] = []
    window.context.changed.connect(lambda *_what: heard_in.append(QThread.currentThread()))
    enter_secret(window)
    click(window, "Close the report")
    qtbot.waitUntil(gate.inside.is_set, timeout=LONG_MS)
    assert gate.thread is not threading.main_thread()
    gate.open.set()
    qtbot.waitUntil(lambda: not acts_of(stage).beside.busy, timeout=LONG_MS)
    app = QApplication.instance()
    assert app is not None
    assert heard_in
    assert set(heard_in) == {app.thread()}
    assert window.context.picture is not None
    assert [d.kind for d in window.context.picture.documents] == ["handover"]
    assert check(invented.bench.store).troubles == ()


def test_while_it_is_closed_the_window_turns_pages_and_reads(
    window: Window, stage: HandoverStage, qtbot: QtBot, gate: Gate
) -> None:
    enter_secret(window)
    click(window, "Close the report")
    qtbot.waitUntil(gate.inside.is_set, timeout=LONG_MS)
    assert not named(window, "Close the report").isEnabled()
    assert "Working on it" in words(window.centre.card)
    click(window, "Due")
    window.context.select_panel("roof")
    assert "report closed: still open" in words(window.centre.card)
    assert window.context.shop is not None
    gate.open.set()
    qtbot.waitUntil(lambda: not acts_of(stage).beside.busy, timeout=LONG_MS)
    assert "report closed: done" in words(window.centre.card)


def test_what_is_entered_meanwhile_is_refused_in_words_and_goes_through_afterwards(
    window: Window, stage: HandoverStage, invented: InventedShop, job: str, qtbot: QtBot, gate: Gate
) -> None:
    enter_secret(window)
    click(window, "Close the report")
    qtbot.waitUntil(gate.inside.is_set, timeout=LONG_MS)
    move = HoldPanel(job, "roof", "owner wants it left")
    assert window.context.do(move) is None
    assert "nothing else is entered until that is done" in window.notices.text
    window.undo()
    assert "nothing else is entered until that is done" in window.notices.text
    gate.open.set()
    qtbot.waitUntil(lambda: not acts_of(stage).beside.busy, timeout=LONG_MS)
    assert window.context.do(move) is not None
    assert window.context.bench is invented.bench


def test_a_window_closed_meanwhile_stays_until_the_report_is_whole(
    window: Window, stage: HandoverStage, invented: InventedShop, job: str, qtbot: QtBot, gate: Gate
) -> None:
    enter_secret(window)
    click(window, "Close the report")
    qtbot.waitUntil(gate.inside.is_set, timeout=LONG_MS)
    window.close()
    assert window.isVisible()
    gate.open.set()
    qtbot.waitUntil(lambda: not window.isVisible(), timeout=LONG_MS)
    assert len(invented.picture(job).documents) == 1


def test_a_fault_while_closing_leaves_everything_as_it_was_and_says_so(
    window: Window,
    stage: HandoverStage,
    invented: InventedShop,
    job: str,
    qtbot: QtBot,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def full(_self: CloseReport, _w: Any) -> Any:
        raise RecordTrouble("The file could not be kept (no space left). Free some space and try again.")

    monkeypatch.setattr(CloseReport, "make", full)
    closed(window, stage, qtbot)
    assert "no space left" in window.notices.text
    assert not invented.picture(job).documents
    monkeypatch.undo()
    click(window, "Close the report")
    qtbot.waitUntil(lambda: not acts_of(stage).beside.busy, timeout=LONG_MS)
    assert len(invented.picture(job).documents) == 1


# the closed report
def test_a_closed_report_is_copied_checked_and_opened(
    window: Window, stage: HandoverStage, qtbot: QtBot, tmp_path: Path
) -> None:
    opened: list[Path] = []
    acts = acts_of(stage)
    acts.open_file = lambda path: bool(opened.append(path)) or True
    target = tmp_path / "copy.pdf"
    acts.ask_target = lambda _over, _suggested: target
    closed(window, stage, qtbot)
    click(window, "Open the copy")
    assert "Copy it out first" in words(window.centre.card)
    click(window, "Check the seal")
    qtbot.waitUntil(lambda: not acts.beside.busy, timeout=LONG_MS)
    assert "The kept report: Not changed since it was closed." in words(window.centre.card)
    click(window, "Choose where to copy to")
    click(window, "Copy the report out")
    assert target.read_bytes().startswith(b"%PDF-")
    click(window, "Open the copy")
    assert opened == [target]


def test_a_copy_that_was_changed_is_told_from_the_kept_one(
    window: Window, stage: HandoverStage, qtbot: QtBot, tmp_path: Path
) -> None:
    closed(window, stage, qtbot)
    target = tmp_path / "copy.pdf"
    type_into(window, "copy to", str(target))
    click(window, "Copy the report out")
    content = bytearray(target.read_bytes())
    content[len(content) // 3] ^= 1
    target.write_bytes(bytes(content))
    click(window, "Check the seal")
    qtbot.waitUntil(lambda: not acts_of(stage).beside.busy, timeout=LONG_MS)
    told = words(window.centre.card)
    assert "copy.pdf:" in told
    assert "Not changed since it was closed" not in told


def test_a_copy_of_another_report_is_not_taken_for_this_one(
    window: Window, stage: HandoverStage, qtbot: QtBot, tmp_path: Path
) -> None:
    closed(window, stage, qtbot)
    target = tmp_path / "first.pdf"
    type_into(window, "copy to", str(target))
    click(window, "Copy the report out")
    click(window, "report: Close")
    click(window, "Close the report")
    qtbot.waitUntil(lambda: not acts_of(stage).beside.busy, timeout=LONG_MS)
    type_into(window, "copy to", str(target))
    click(window, "Check the seal")
    qtbot.waitUntil(lambda: not acts_of(stage).beside.busy, timeout=LONG_MS)
    assert "this is not the file in the record" in words(window.centre.card)


def test_an_existing_file_is_not_written_over(
    window: Window, stage: HandoverStage, qtbot: QtBot, tmp_path: Path
) -> None:
    closed(window, stage, qtbot)
    target = tmp_path / "copy.pdf"
    target.write_text("mine")
    type_into(window, "copy to", str(target))
    click(window, "Copy the report out")
    assert target.read_text() == "mine"
    assert "is there already" in window.notices.text
