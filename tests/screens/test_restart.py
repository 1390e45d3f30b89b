"""Dropped and started again, perhaps on a screen of another scale: on the glass, and where the work was left."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.moves.arrival import AddDamage, NewJob
from detailbench.moves.bench import Bench
from detailbench.screens.app import open_window
from detailbench.screens.window_place import OPEN, what_was_open

RUN = """
import json, sys
from pathlib import Path
from PySide6.QtCore import QSettings
from detailbench.basics.clock import SystemClock
from detailbench.screens.app import application, open_window
app = application([])
settings = QSettings(sys.argv[2], QSettings.Format.IniFormat)
window = open_window(Path(sys.argv[1]), SystemClock(), settings=settings)
if len(sys.argv) > 3:
    window.setGeometry(*map(int, sys.argv[3:]))
for _turn in range(30):
    app.processEvents()
free, box = window.screen().availableGeometry(), window.geometry()
print(json.dumps({
    "inside": free.contains(box), "screen": [free.width(), free.height()], "window": [box.width(), box.height()],
    "job": window.context.job_id, "stage": window.context.open_stage, "panel": window.context.selected_panel,
}))
window.close()
"""


def started(folder: Path, settings: Path, scale: str, *geometry: int) -> dict[str, object]:
    ended = subprocess.run(
        [sys.executable, "-c", RUN, str(folder), str(settings), *map(str, geometry)],
        capture_output=True, text=True, check=False,
        env=os.environ | {"QT_QPA_PLATFORM": "offscreen", "QT_SCALE_FACTOR": scale},
    )  # fmt: skip
    assert ended.returncode == 0, ended.stderr
    return json.loads(ended.stdout)  # type: ignore[no-any-return]


@pytest.mark.parametrize(("before", "after"), [("0.5", "1"), ("0.5", "0.75"), ("1", "0.5")])
def test_after_a_change_of_scale_the_window_comes_back_on_a_visible_screen(
    tmp_path: Path, bench: Bench, before: str, after: str
) -> None:
    bench.close()
    first = started(bench.folder, tmp_path / "s.ini", before, 500, 300, 1050, 640)
    second = started(bench.folder, tmp_path / "s.ini", after)
    assert first["screen"] != second["screen"]
    wide, high = second["screen"]  # type: ignore[misc]
    assert second["inside"] or wide < 1024 or high < 600  # no window is smaller than its least size
    assert second["window"][0] <= max(wide, 1024)  # type: ignore[index]


def test_the_same_job_stage_and_panel_are_open_again(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, tmp_path: Path
) -> None:
    other = bench.do(NewJob()).scope
    bench.close()
    settings = QSettings(str(tmp_path / "s.ini"), QSettings.Format.IniFormat)
    first = open_window(bench.folder, clock, settings=settings)
    qtbot.addWidget(first)
    qtbot.waitUntil(lambda: first.context.bench is not None)
    first.open_job(job_id)
    first.open("thickness")
    first.context.select_panel("bonnet")
    first.close()
    second = open_window(bench.folder, clock, settings=settings)
    qtbot.addWidget(second)
    qtbot.waitUntil(lambda: second.context.selected_panel == "bonnet")
    assert (second.context.job_id, second.context.open_stage) == (job_id, "thickness")
    assert second.rail.rows["thickness"].isChecked()
    assert other != job_id
    second.close()


def test_a_job_that_is_no_longer_there_leaves_the_list_of_jobs_open(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, tmp_path: Path
) -> None:
    bench.do(NewJob())
    bench.close()
    settings = QSettings(str(tmp_path / "s.ini"), QSettings.Format.IniFormat)
    settings.setValue(OPEN, ["no such job", "thickness", "bonnet"])
    window = open_window(bench.folder, clock, settings=settings)
    qtbot.addWidget(window)
    qtbot.waitUntil(lambda: window.context.bench is not None)
    assert (window.context.job_id, window.context.open_stage) == (None, "jobs")
    window.close()


@pytest.mark.parametrize("kept", [None, "thickness", [1, 2, 3], ["a"], {"a": 1}])
def test_what_cannot_be_read_is_nothing(tmp_path: Path, kept: object) -> None:
    settings = QSettings(str(tmp_path / "s.ini"), QSettings.Format.IniFormat)
    settings.setValue(OPEN, kept)
    found = what_was_open(settings)
    assert found.job in ("", "1")
    assert found.stage in ("", "2")


def test_the_second_laptop_is_told_who_has_the_workshop_since_when_and_may_read(
    qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str
) -> None:
    window = open_window(bench.folder, clock)
    qtbot.addWidget(window)
    qtbot.waitUntil(lambda: window.context.bench is not None)
    assert window.notices.text.startswith("Ana Berg has this workshop open on ")
    assert window.notices.text.endswith("since 2031-03-10 08:30. Opened for reading only.")
    assert window.context.do(AddDamage(job_id, "an invented dent")) is None
    assert "Ana Berg has this workshop open" in window.notices.text
    assert bench.job(job_id).damages == ()
    bench.do(AddDamage(job_id, "entered on the first laptop"))
    window.safe.look_for_others()
    assert window.context.picture is not None
    assert [d.words for d in window.context.picture.damages] == ["entered on the first laptop"]
    window.close()
