"""An invented shop for tests: people, gauge, foils, kit, and a job begun in it. Every name and figure is made up."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta, timezone
from pathlib import Path
from tempfile import mkdtemp
from typing import TypeVar, cast

import pytest

from detailbench.basics.clock import HandClock
from detailbench.moves import arrival, readings, shop, starter, surface
from detailbench.moves.bench import Bench
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup

T = TypeVar("T")
INVENTED_NOW = datetime(2031, 3, 10, 8, 30, tzinfo=timezone(timedelta(hours=1)))
ZERO_UM = (0.1, 0.2, 0.0, 0.1, -0.1)
FOIL_UM = (102.0, 102.5, 101.8, 102.2, 102.1)


@dataclass(frozen=True)
class Begun:
    """A shop's folder after something was done in it, by whom and until when, and what that gave."""

    folder: Path
    person: str
    until: datetime
    gave: object


@dataclass
class InventedShop:
    """An open bench with what a first day needs, and the ids to speak of it."""

    bench: Bench
    clock: HandClock
    person: str
    gauge: str
    zero: str
    foil: str
    origin: Path | None = None  # the folder of the shop this is a copy of
    kept: dict[object, Begun] = field(default_factory=dict)  # what was begun before in copies of it

    @property
    def folder(self) -> Path:
        return self.bench.folder

    def job(self, owner: str = "Invented Owner") -> str:
        """A car comes in; its job's id."""
        move = arrival.NewJob(
            car={"colour": "dark blue", "lightness": "dark"},
            plate="INV 01",
            owner={"name": owner, "telephone": "000 111"},
        )
        return self.bench.do(move).scope

    def measured(self, job: str, panel: str = "bonnet", values: tuple[float, ...] = (118.0,) * 5) -> str:
        """A good check, then these values on a clean panel; the session's id."""
        session = self.checked(job)
        self.bench.do(surface.SetState(job, (panel,), clean="wiped"))
        for value in values:
            self.clock.forward(seconds=4)
            self.bench.do(readings.RecordReading(job, panel, value))
        return session

    def checked(self, job: str, foil_um: tuple[float, ...] = FOIL_UM) -> str:
        """The gauge in hand and a full round of checks; the session's id."""
        session = self.bench.do(readings.StartSession(job, self.gauge, 21.0)).id
        self.bench.do(readings.RecordCheck(job, session, self.zero, ZERO_UM))
        self.bench.do(readings.RecordCheck(job, session, self.foil, foil_um))
        return session

    def picture(self, job: str) -> JobPicture:
        return self.bench.job(job)

    def group(self, job: str, panel: str = "bonnet") -> FinishGroup:
        return next(g for g in reversed(self.bench.job(job).groups) if panel in g.panels)

    def reopened(self) -> Bench:
        """The same workshop closed and opened again."""
        person = self.bench.person
        self.bench.close()
        self.bench = Bench(self.folder, self.clock, person=person)
        return self.bench

    def begin(self, what: object, do: Callable[[], T]) -> T:
        """What many tests begin with is done once, through moves as ever; whoever begins the same from the same point
        of the record at the same hour is given a copy of the folder after it. ``do`` depends on nothing else, and
        ``what`` names it with all that it is given. Under a window it is done anew: that keeps its bench."""
        if self.origin is None or self.bench._watchers:
            return do()
        key = (what, self.bench.store.head(), self.bench.person, self.clock.now())
        if key not in self.kept:
            gave = do()
            folder = Path(mkdtemp(dir=self.origin.parent))
            shutil.copytree(self.folder, folder, dirs_exist_ok=True)
            self.kept[key] = Begun(folder, self.bench.person, self.clock.now(), gave)
            return gave
        begun = self.kept[key]
        self.bench.close()
        shutil.rmtree(self.folder)
        shutil.copytree(begun.folder, self.folder)
        self.clock.set(begun.until)
        self.bench = Bench(self.folder, self.clock, person=begun.person)
        return cast(T, begun.gave)


def invented_shop(folder: Path, clock: HandClock) -> InventedShop:
    """Open a new workshop and fill the shelf."""
    bench = Bench(folder, clock)
    person = bench.do(shop.AddToShop("person", {"name": "Ana Invented", "initials": "AE"})).id
    bench.person = person
    bench.do(starter.StockStarterKit())
    gauge = bench.do(shop.AddToShop("gauge", {"name": "invented gauge"})).id
    zero = bench.do(shop.AddToShop("shim", {"label": "zero plate", "value_um": 0.0})).id
    foil = bench.do(shop.AddToShop("shim", {"label": "foil 102", "value_um": 102.0})).id
    return InventedShop(bench, clock, person, gauge, zero, foil)


@pytest.fixture(scope="session")
def prepared(tmp_path_factory: pytest.TempPathFactory) -> InventedShop:
    """A filled shop, closed; tests work on copies of it."""
    made = invented_shop(tmp_path_factory.mktemp("prepared") / "workshop", HandClock(INVENTED_NOW))
    made.bench.close()
    return made


@pytest.fixture
def invented(prepared: InventedShop, tmp_path: Path, clock: HandClock) -> Iterator[InventedShop]:
    """An open invented shop of its own for one test, closed again after it."""
    folder = tmp_path / "workshop"
    shutil.copytree(prepared.folder, folder)
    bench = Bench(folder, clock, person=prepared.person)
    mine = replace(prepared, bench=bench, clock=clock, origin=prepared.folder)
    yield mine
    mine.bench.close()
