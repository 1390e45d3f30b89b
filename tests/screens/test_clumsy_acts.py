"""Clumsy acts at the real window that no walk script can do: a full disk while closing, a folder something copies."""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from invented_shop import InventedShop, invented, prepared
from PySide6 import QtGui
from PySide6.QtCore import Qt
from PySide6.QtGui import QTextDocumentFragment
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QLabel
from pytestqt.qtbot import QtBot
from stage_scenes import click, field, named, ready_job, shown_window, type_into, words

import detailbench.screens
from detailbench.basics.clock import HandClock
from detailbench.moves.bench import Bench
from detailbench.record.checking import check
from detailbench.screens.app import open_window
from detailbench.screens.look.parts import tip
from detailbench.screens.stages.handover.stage import HandoverStage
from detailbench.screens.window import Window

__all__ = ["invented", "prepared"]

resource = pytest.importorskip("resource", reason="needs a limit the system sets on how much may be written")

SECRET = "four ordinary words here"
LONG_MS = 60_000
ROOM = 9_000  # bytes: more than the journal of a small entry, less than any document
HOSTILE = '<b>&"=HYPERLINK("x")</b>\nsecond  line'


@contextmanager
def no_file_larger_than(size: int) -> Iterator[None]:
    """The system itself refuses to write a file beyond ``size``, as a full disk does."""
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, before[1]))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)


# act 20, the closing
@pytest.fixture
def stage() -> HandoverStage:
    return HandoverStage()


@pytest.fixture
def closing(qtbot: QtBot, invented: InventedShop, stage: HandoverStage) -> Window:
    window = shown_window(qtbot, invented, ready_job(invented, "bonnet"), stage)
    click(window, "Close")
    for name in ("passphrase of the workshop's key", "the passphrase again"):
        field(window, name).setText(SECRET)  # type: ignore[attr-defined]
    return window


def ended(qtbot: QtBot, stage: HandoverStage) -> None:
    acts = stage.acts
    assert acts is not None
    qtbot.waitUntil(lambda: not acts.beside.busy, timeout=LONG_MS)


def documents(invented: InventedShop) -> int:
    (job,) = invented.bench.shop().jobs
    return len(invented.picture(job.id).documents)


def test_act_20_a_full_disk_while_closing_leaves_all_as_it_was_and_one_key_closes_once_there_is_room(
    closing: Window, stage: HandoverStage, invented: InventedShop, qtbot: QtBot
) -> None:
    head = invented.bench.store.head()
    with no_file_larger_than(ROOM):
        click(closing, "Close the report")
        ended(qtbot, stage)
        assert f"free some space on the disk of {invented.folder} and try again" in words(closing.centre.card)
        assert closing.notices.kind == "stop"
        assert closing.strip.last.whole == "NOT CLOSED: the report. F5 tries again."
        QTest.keyClick(closing.windowHandle(), Qt.Key.Key_F5)  # still no room
        ended(qtbot, stage)
        assert closing.strip.last.whole == "NOT CLOSED: the report. F5 tries again."
    assert invented.bench.store.head() == head
    assert documents(invented) == 0
    assert [p for p in (invented.folder / "evidence").rglob("*") if p.is_file()] == []
    QTest.keyClick(closing.windowHandle(), Qt.Key.Key_F5)
    ended(qtbot, stage)
    assert documents(invented) == 1
    assert "NOT CLOSED" not in closing.strip.last.whole
    assert "free some space" not in words(closing.centre.card)
    assert check(invented.bench.store).troubles == ()


def test_act_20_what_was_not_closed_of_one_job_is_not_closed_of_another_and_undo_still_works(
    closing: Window, stage: HandoverStage, invented: InventedShop, qtbot: QtBot
) -> None:
    with no_file_larger_than(ROOM):
        click(closing, "Close the report")
        ended(qtbot, stage)
    assert closing.strip.undo.isEnabled()
    other = invented.job()
    closing.open_job(other)
    assert "NOT CLOSED" not in closing.strip.last.whole
    QTest.keyClick(closing.windowHandle(), Qt.Key.Key_F5)
    ended(qtbot, stage)
    assert [invented.picture(job.id).documents for job in invented.bench.shop().jobs] == [(), ()]


# act 10, the folder something copies to and fro
@pytest.fixture
def copied(tmp_path: Path, clock: HandClock) -> Path:
    """A workshop with one job in a folder that another computer's copy was brought into."""
    from detailbench.moves.arrival import NewJob

    bench = Bench(tmp_path / "workshop", clock)
    bench.do(NewJob())
    bench.close()
    (bench.folder / "workshop (other laptop).sqlite").write_bytes(b"")
    return bench.folder


OpenHere = Callable[[], Window]


@pytest.fixture
def open_here(copied: Path, clock: HandClock, qtbot: QtBot) -> OpenHere:
    def act() -> Window:
        window = open_window(copied, clock)
        qtbot.addWidget(window)
        window.activateWindow()
        qtbot.waitUntil(window.isActiveWindow)
        qtbot.waitUntil(lambda: window.context.bench is not None)
        return window

    return act


def say_stay(window: Window, by_keys: bool) -> None:
    """Shop, Kept safe, Clock and place, and the one button there."""
    if by_keys:
        rows = [b.accessibleName() for b in window.rail.findChildren(QAbstractButton) if b.isVisible()]
        digit = (rows.index("Shop") + 1) % 10
        QTest.keyClick(window.windowHandle(), Qt.Key(Qt.Key.Key_0 + digit), Qt.KeyboardModifier.ControlModifier)
    else:
        click(window, "Shop")
    for name in ("Shop: Kept safe", "Clock and place", "Work here all the same"):
        if by_keys:
            wanted = named(window, name)
            for _tab in range(120):
                if wanted.hasFocus():
                    break
                QTest.keyClick(window.windowHandle(), Qt.Key.Key_Tab)
            assert wanted.hasFocus(), name
            QTest.keyClick(window.windowHandle(), Qt.Key.Key_Space)
        else:
            click(window, name)


@pytest.mark.parametrize("by_keys", [True, False], ids=["keys", "mouse"])
def test_act_10_a_folder_that_is_copied_to_and_fro_is_said_before_the_first_entry_with_the_safe_way(
    open_here: OpenHere, copied: Path, clock: HandClock, qtbot: QtBot, by_keys: bool
) -> None:
    window = open_here()
    qtbot.waitUntil(lambda: "workshop (other laptop).sqlite" in window.notices.text)
    assert "copies this folder to and fro" in window.notices.text
    assert "The safe way: keep the workshop on a disk of this computer and back it up" in window.notices.text
    begin = window.context.bench
    assert begin is not None
    head = begin.store.head()
    for _try in range(2):
        qtbot.waitUntil(lambda: window.isActiveWindow())
        click(window, "Arrival")
        click(window, "Car")
        type_into(window, "car, in words", "invented estate")
        assert begin.store.head() == head
        assert field(window, "car, in words").text() == "invented estate"  # type: ignore[attr-defined]
    say_stay(window, by_keys)
    assert named(window, "Clock and place").isVisible()
    told = [
        label.text() for label in window.findChildren(QLabel) if label.accessibleName() == "where the workshop lies"
    ]
    assert told[0].endswith("Nothing speaks against it.")
    assert begin.store.head() != head
    window.close()
    again = open_here()
    qtbot.waitUntil(lambda: bool(again.context.job_id))
    assert "to and fro" not in again.notices.text  # asked once
    again.close()


# act 17, in the small words that come up beside a thing
def test_act_17_a_tool_tip_shows_what_was_typed(qtbot: QtBot) -> None:
    assert QtGui.Qt.mightBeRichText(HOSTILE)  # as it stands it would be read as markup
    assert QTextDocumentFragment.fromHtml(tip(HOSTILE)).toPlainText() == HOSTILE
    assert tip("5 < 6 & 7 > 3") == "5 < 6 & 7 > 3"


def test_act_17_no_tool_tip_goes_round_that() -> None:
    folder = Path(detailbench.screens.__file__).parent
    bare = []
    for file in sorted(folder.rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr == "setToolTip":
                (said,) = node.args
                if not (isinstance(said, ast.Call) and isinstance(said.func, ast.Name) and said.func.id == "tip"):
                    bare.append(f"{file.name}:{node.lineno}")
    assert bare == []
