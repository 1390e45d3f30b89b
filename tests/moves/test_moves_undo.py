"""Undo and redo: through the journal, so they outlive the program; never leaving a thing that names nothing."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import RecordTrouble, Refused
from detailbench.moves.arrival import AddDamage, DescribeCar, NewJob, SetOwner
from detailbench.moves.move import SHOP, Done
from detailbench.moves.readings import RecordReading, StartSession
from detailbench.moves.shop import AddToShop, ChangeInShop
from detailbench.moves.work import AdoptProcess
from detailbench.record.checking import check
from detailbench.record.things import Damage
from detailbench.record.writing import Writer


def words(invented: InventedShop, job: str) -> list[str]:
    return [d.words for d in invented.picture(job).damages]


def test_undo_takes_back_the_last_move_and_redo_does_it_again_also_after_a_restart(invented: InventedShop) -> None:
    job = invented.job()
    for text in ("one", "two", "three"):
        invented.bench.do(AddDamage(job, text))
    invented.reopened().undo(job)
    invented.reopened().undo(job)
    assert words(invented, job) == ["one"]
    invented.reopened().redo(job)
    assert words(invented, job) == ["one", "two"]
    assert check(invented.bench.store).troubles == ()


def test_a_new_move_clears_what_could_be_done_again(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(AddDamage(job, "one"))
    invented.bench.undo(job)
    invented.bench.do(AddDamage(job, "two"))
    with pytest.raises(Refused, match="nothing here to do again"):
        invented.bench.redo(job)


def test_undo_gives_back_the_old_values_and_the_old_personal_value(invented: InventedShop) -> None:
    job = invented.job("First Invented")
    owner = invented.picture(job).parties[0].id
    invented.bench.do(SetOwner(job, {"name": "Second Invented"}))
    invented.bench.do(DescribeCar(job, {"colour": "green"}))
    invented.bench.undo(job)
    assert invented.picture(job).car.colour == "dark blue"
    invented.bench.undo(job)
    assert invented.picture(job).said(owner, "name") == "First Invented"
    invented.bench.redo(job)
    assert invented.picture(job).said(owner, "name") == "Second Invented"


def test_jobs_and_the_shop_have_lists_of_their_own(invented: InventedShop) -> None:
    one, two = invented.job(), invented.job()
    invented.bench.do(AddDamage(one, "of the first"))
    invented.bench.do(AddDamage(two, "of the second"))
    invented.bench.do(AddToShop("lamp", {"name": "invented lamp"}))
    assert "existing damage" in invented.bench.undo(one).says
    assert words(invented, two) == ["of the second"]
    assert any(lamp.name == "invented lamp" for lamp in invented.bench.shop().lamps)


def test_nothing_to_take_back_is_said(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.undo(job)
    with pytest.raises(Refused, match="nothing here that can be taken back"):
        invented.bench.undo(job)
    with pytest.raises(RecordTrouble):
        invented.picture(job)
    invented.bench.redo(job)
    assert invented.picture(job).job.number == "2031-001"


class CannotBeUndone:
    """Something that goes out of the house, like a closed document."""

    undoable = False

    def __init__(self, job: str) -> None:
        self.job = job

    def make(self, w: Writer) -> Done:
        return Done(self.job, "gone out", w.add(Damage, job_id=self.job, words="gone out").id)


def test_what_cannot_be_undone_ends_the_list(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(CannotBeUndone(job))
    assert invented.bench.standing(job).done == ()
    with pytest.raises(Refused):
        invented.bench.undo(job)
    invented.bench.do(AddDamage(job, "after"))
    invented.bench.undo(job)
    assert words(invented, job) == ["gone out"]


def test_a_gauge_a_job_uses_is_not_taken_back_from_under_it(invented: InventedShop) -> None:
    job = invented.job()
    gauge = invented.bench.do(AddToShop("gauge", {"name": "second invented gauge"})).id
    invented.bench.do(StartSession(job, gauge))
    with pytest.raises(Refused, match="rests on it"):
        invented.bench.undo(SHOP)
    invented.bench.undo(job)
    invented.bench.undo(SHOP)
    with pytest.raises(Refused, match="was taken back"):
        invented.bench.redo(job)
    assert invented.picture(job).sessions == ()
    assert check(invented.bench.store).troubles == ()


def test_a_person_who_has_entered_something_is_not_taken_back(invented: InventedShop) -> None:
    invented.bench.person = invented.bench.do(AddToShop("person", {"name": "Bo Invented", "initials": "BI"})).id
    invented.job()
    with pytest.raises(Refused, match="rests on it"):
        invented.bench.undo(SHOP)


def test_a_car_that_came_again_is_not_taken_back_with_its_first_job(invented: InventedShop) -> None:
    first = invented.job()
    car = invented.picture(first).car.id
    second = invented.bench.do(NewJob(car_id=car)).scope
    with pytest.raises(Refused, match="rests on it"):
        invented.bench.undo(first)
    assert invented.picture(second).car.id == car


def test_a_rename_taken_back_leaves_one_name_in_use(invented: InventedShop) -> None:
    lamp = invented.bench.do(AddToShop("lamp", {"name": "old name"})).id
    invented.bench.do(ChangeInShop("lamp", lamp, {"name": "new name"}))
    invented.bench.undo(SHOP)
    assert [x.name for x in invented.bench.shop().lamps if "name" in x.name and not x.retired] == ["old name"]


def test_a_refused_move_leaves_no_trace(invented: InventedShop) -> None:
    job = invented.job()
    before = invented.bench.store.head()
    with pytest.raises(Refused):
        invented.bench.do(RecordReading(job, "bonnet", 118.0))
    with pytest.raises(RecordTrouble):
        invented.bench.do(AdoptProcess(job, invented.group(job).id, [{"combination_id": "none"}]))
    assert invented.bench.store.head() == before
    assert check(invented.bench.store).troubles == ()


class StopsHalfway:
    """Writes a row, then finds that it may not."""

    undoable = True

    def __init__(self, job: str) -> None:
        self.job = job

    def make(self, w: Writer) -> Done:
        w.add(Damage, job_id=self.job, words="half a move")
        raise Refused("not after all")


def test_a_move_that_stops_halfway_leaves_nothing_of_itself(invented: InventedShop) -> None:
    job = invented.job()
    with pytest.raises(Refused, match="not after all"):
        invented.bench.do(StopsHalfway(job))
    assert words(invented, job) == []
    assert check(invented.bench.store).troubles == ()


def test_watchers_hear_what_changed_and_who_began_it(invented: InventedShop) -> None:
    job, heard = invented.job(), []
    stop = invented.bench.watch(lambda changes, who: heard.append((changes.kinds, changes.scope, who)))
    invented.bench.do(AddDamage(job, "one"), initiator="the card")
    invented.bench.undo(job, initiator="the strip")
    stop()
    invented.bench.redo(job)
    assert heard == [(frozenset({"damage"}), job, "the card"), (frozenset({"damage"}), job, "the strip")]
