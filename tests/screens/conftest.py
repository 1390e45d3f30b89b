"""An invented stage, a real workshop in a temporary folder, and a window over both."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

if not os.environ.get("DISPLAY"):
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from invented_shop import INVENTED_NOW
from invented_stage import InventedStage, SecondStage, invented_working
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.moves.arrival import NewJob
from detailbench.moves.bench import Bench
from detailbench.moves.shop import AddToShop
from detailbench.screens.app import application
from detailbench.screens.window import Window

__all__ = ["invented_working"]


@pytest.fixture(scope="session")
def qapp_cls() -> object:
    return lambda argv: application(argv)


@pytest.fixture(scope="session")
def begun_workshop(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, str]:
    """The folder of a closed workshop with one invented person, and the person's id; tests work on copies of it."""
    folder = tmp_path_factory.mktemp("begun") / "workshop"
    made = Bench(folder, HandClock(INVENTED_NOW))
    person = made.do(AddToShop("person", {"name": "Ana Berg", "initials": "AB"})).id
    made.close()
    return folder, person


@pytest.fixture
def bench(begun_workshop: tuple[Path, str], tmp_path: Path, clock: HandClock) -> Iterator[Bench]:
    """A workshop with one invented person who is entering."""
    folder, person = begun_workshop
    shutil.copytree(folder, tmp_path / "workshop")
    opened = Bench(tmp_path / "workshop", clock, person=person)
    yield opened
    opened.close()


@pytest.fixture
def job_id(bench: Bench) -> str:
    """An invented car's job."""
    return bench.do(NewJob(car={"described": "invented estate", "colour": "blue"})).id


@pytest.fixture
def stage() -> InventedStage:
    return InventedStage()


MakeWindow = Callable[..., Window]


@pytest.fixture
def make_window(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str, stage: InventedStage) -> MakeWindow:
    """Makes a shown window with the invented job open."""

    def make(**options: object) -> Window:
        application()
        size = options.pop("size", (1366, 768))
        window = Window(clock, **({"stages": (stage, SecondStage()), "pages": ()} | options))  # type: ignore[arg-type]
        qtbot.addWidget(window)
        window.resize(*size)  # type: ignore[misc]
        with qtbot.waitExposed(window):
            window.show()
        window.attach(bench)
        window.open_job(job_id)
        window.activateWindow()
        qtbot.waitUntil(window.isActiveWindow)
        return window

    return make


@pytest.fixture
def window(make_window: MakeWindow) -> Window:
    return make_window()
