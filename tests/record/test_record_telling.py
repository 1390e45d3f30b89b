"""The journal told line by line."""

from __future__ import annotations

from datetime import timedelta

from invented_shop import InventedShop

from detailbench.moves.arrival import AddDamage, SetHopes


def test_a_line_says_when_in_the_offset_of_then_who_and_what(invented: InventedShop) -> None:
    job = invented.job()
    invented.clock.forward(minutes=7)
    at = invented.clock.now()
    invented.bench.do(AddDamage(job, "an invented dent", "bonnet"))
    last = invented.bench.entries(job)[-1]
    assert last.at == at
    assert last.at.utcoffset() == timedelta(hours=1)
    assert (last.by, last.act, last.says) == (invented.person, "AddDamage", "existing damage noted")


def test_each_scope_has_its_own_lines_oldest_first(invented: InventedShop) -> None:
    one, two = invented.job(), invented.job()
    invented.bench.do(AddDamage(two, "an invented dent"))
    assert [e.act for e in invented.bench.entries(one)] == ["NewJob"]
    assert [e.act for e in invented.bench.entries(two)] == ["NewJob", "AddDamage"]
    numbers = [e.n for e in invented.bench.entries()]
    assert numbers == sorted(numbers)
    assert "NewJob" not in {e.act for e in invented.bench.entries()}


def test_what_was_taken_back_is_marked_until_it_is_done_again(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(SetHopes(job, {"price_range": "600"}))
    invented.bench.do(AddDamage(job, "an invented dent"))
    invented.bench.undo(job)
    invented.bench.undo(job)
    undone = {e.act: e.undone for e in invented.bench.entries(job)}
    assert undone == {"NewJob": False, "SetHopes": True, "AddDamage": True, "undo": False}
    invented.bench.redo(job)
    told = invented.bench.entries(job)
    assert [e.act for e in told if e.undone] == ["AddDamage"]
    hopes = next(e for e in told if e.act == "SetHopes")
    assert [e.act for e in told if e.refers_to == hopes.n] == ["undo", "redo"]


def test_the_bench_checks_its_own_record(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(AddDamage(job, "an invented dent"))
    found = invented.bench.check()
    assert found.troubles == ()
    assert found.entries == invented.bench.entries(job)[-1].n
    assert invented.bench.check(known_head=found.head).head_found
    assert not invented.bench.check(known_head="0" * 64).head_found
