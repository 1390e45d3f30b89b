"""Whatever is done, undone, done again and reopened in whatever order: the same workshop, and the check is silent."""

from __future__ import annotations

import shutil
import tempfile
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from hypothesis import Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule, run_state_machine_as_test
from invented_shop import INVENTED_NOW, InventedShop

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import DetailbenchError, Refused
from detailbench.moves import arrival, marks, readings, shop, surface, trials, work
from detailbench.moves.bench import Bench
from detailbench.moves.move import SHOP, Move
from detailbench.record.checking import check
from detailbench.record.picture import JobPicture, ShopPicture

IN_MEMORY = Path("/dev/shm")  # the disk's own speed is no part of this test
PANELS = st.sampled_from(("bonnet", "roof", "door_front_l", "bumper_front"))


def seen(picture: JobPicture | ShopPicture) -> JobPicture | ShopPicture:
    """A picture without what an undo rightly moves on: the journal's head."""
    if isinstance(picture, ShopPicture):
        return replace(picture, head=0, chain_head="")
    return replace(picture, shop=replace(picture.shop, head=0, chain_head=""))


class Days(RuleBasedStateMachine):
    """Random acts on one job. ``was`` is the model: what the job looked like before each act that can be undone."""

    prepared: InventedShop

    @initialize()
    def open(self) -> None:
        self.folder = Path(tempfile.mkdtemp(dir=IN_MEMORY if IN_MEMORY.is_dir() else None)) / "workshop"
        shutil.copytree(self.prepared.folder, self.folder)
        self.clock = HandClock(INVENTED_NOW)
        self.bench = Bench(self.folder, self.clock, person=self.prepared.person)
        self.job = self.bench.do(arrival.NewJob()).scope
        self.bench.do(readings.StartSession(self.job, self.prepared.gauge))
        group = next(g for g in self.bench.job(self.job).groups if "bonnet" in g.panels)
        combination = self.bench.shop().combinations[3].id
        made = self.bench.do(trials.RecordTrial(self.job, group.id, "bonnet", combination)).id
        self.bench.do(trials.JudgeTrial(self.job, made, "yes", "clear"))
        steps = [{"combination_id": combination}]
        self.bench.do(work.AdoptProcess(self.job, group.id, steps, override="an invented reason"))
        self.begun = len(self.bench.standing(self.job).done)
        self.was: list[JobPicture] = []
        self.again: list[JobPicture] = []

    def picture(self) -> JobPicture:
        found = self.bench.job(self.job)
        # the shop has an undo list of its own
        return replace(found, shop=ShopPicture(personal=found.personal))

    def act(self, move: Move) -> None:
        before, head = self.picture(), self.bench.store.head()
        try:
            done = self.bench.do(move)
        except DetailbenchError:
            assert self.bench.store.head() == head
            assert self.picture() == before
            return
        if not done.kinds:
            assert self.bench.store.head() == head
            return
        after = self.picture()
        self.bench.undo(self.job)
        assert self.picture() == before
        self.bench.redo(self.job)
        assert self.picture() == after
        self.was.append(before)
        self.again.clear()

    @rule(seconds=st.sampled_from((0.3, 2.0, 600.0)))
    def time_passes(self, seconds: float) -> None:
        self.clock.at += timedelta(seconds=seconds)

    @rule(panel=PANELS, value=st.sampled_from((118.0, 4.6, 0.0, 241.5, -3.0, float("nan"))))
    def reads(self, panel: str, value: float) -> None:
        self.act(readings.RecordReading(self.job, panel, value))

    @rule(panel=PANELS, severity=st.integers(-1, 6))
    def marks(self, panel: str, severity: int) -> None:
        self.act(marks.RecordMark(self.job, panel, "swirl", severity))
        found = self.picture().marks
        self.act(marks.CorrectMark(self.job, found[-1].id if found else "none", {"severity": 2, "note": panel}))

    @rule(which=st.integers(0, 9))
    def strikes_a_reading(self, which: int) -> None:
        found = self.picture().readings
        self.act(readings.StrikeReading(self.job, found[which % len(found)].id if found else "none"))

    @rule(name=st.text(max_size=12))
    def names_the_owner(self, name: str) -> None:
        self.act(arrival.SetOwner(self.job, {"name": name}))

    @rule(colour=st.text(max_size=8))
    def describes(self, colour: str) -> None:
        self.act(arrival.DescribeCar(self.job, {"colour": colour}))

    @rule(panel=PANELS, clean=st.sampled_from(("washed", "wiped", "shiny")))
    def notes_the_state(self, panel: str, clean: str) -> None:
        self.act(surface.SetState(self.job, (panel,), clean=clean))

    @rule(panel=PANELS)
    def groups(self, panel: str) -> None:
        self.act(surface.MakeGroup(self.job, f"own {panel}", (panel,)))

    @rule(rung=st.integers(0, 3), finish=st.sampled_from(("clear", "even_haze")))
    def tries(self, rung: int, finish: str) -> None:
        group = next((g for g in self.picture().groups if "bonnet" in g.panels), None)
        combination = self.bench.shop().combinations[rung].id
        self.act(trials.RecordTrial(self.job, group.id if group else "none", "bonnet", combination))
        made = self.picture().trials
        self.act(trials.JudgeTrial(self.job, made[-1].id if made else "none", "yes", finish))

    @rule(rung=st.integers(0, 3), reason=st.sampled_from(("", "an invented reason")))
    def adopts(self, rung: int, reason: str) -> None:
        group = next((g for g in self.picture().groups if "bonnet" in g.panels), None)
        steps = [{"combination_id": self.bench.shop().combinations[rung].id}]
        self.act(work.AdoptProcess(self.job, group.id if group else "none", steps, override=reason))

    @rule(reason=st.sampled_from(("", "an invented reason")))
    def starts(self, reason: str) -> None:
        steps = self.picture().steps
        self.act(work.StartStep(self.job, "bonnet", steps[-1].id if steps else "none", override=reason))

    @rule(ended=st.sampled_from(("finished", "paused")))
    def ends(self, ended: str) -> None:
        self.act(work.FinishStep(self.job, "bonnet", ended=ended))

    @rule(times=st.integers(1, 4))
    def undoes(self, times: int) -> None:
        for _time in range(min(times, len(self.was))):
            self.again.append(self.picture())
            self.bench.undo(self.job)
            assert self.picture() == self.was.pop()

    @rule()
    def does_again(self) -> None:
        if not self.again:
            with pytest.raises(Refused):
                self.bench.redo(self.job)
            return
        self.was.append(self.picture())
        self.bench.redo(self.job)
        assert self.picture() == self.again.pop()

    @rule(name=st.text(min_size=1, max_size=6))
    def adds_a_lamp_and_takes_it_back(self, name: str) -> None:
        before = self.picture()
        if name.strip():
            self.bench.do(shop.AddToShop("lamp", {"name": name}))
            self.bench.undo(SHOP)
        assert self.picture() == before

    @rule()
    def reopens(self) -> None:
        job, own = seen(self.bench.job(self.job)), seen(self.bench.shop())
        self.bench.close()
        self.bench = Bench(self.folder, self.clock, person=self.prepared.person)
        assert (seen(self.bench.job(self.job)), seen(self.bench.shop())) == (job, own)

    @invariant()
    def the_lists_are_as_long_as_the_model_says(self) -> None:
        if hasattr(self, "was"):
            standing = self.bench.standing(self.job)
            assert (len(standing.done), len(standing.undone)) == (len(self.was) + self.begun, len(self.again))

    def teardown(self) -> None:
        if not hasattr(self, "bench"):
            return
        assert check(self.bench.store).troubles == ()
        self.bench.close()
        shutil.rmtree(self.folder.parent)


@pytest.mark.slow
def test_any_order_of_moves_undo_redo_and_reopening_leaves_a_sound_workshop(prepared: InventedShop) -> None:
    machine = type("DaysHere", (Days,), {"prepared": prepared})
    run_state_machine_as_test(
        machine, settings=settings(max_examples=20, stateful_step_count=20, phases=(Phase.reuse, Phase.generate))
    )
