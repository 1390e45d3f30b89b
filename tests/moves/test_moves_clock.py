"""A clock that is wrong: said at the start and at the jump, noted by a person, and no entry loses its place by it."""

from __future__ import annotations

from datetime import timedelta

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput
from detailbench.findings.clock import jumps
from detailbench.moves.arrival import AddDamage
from detailbench.moves.clock import NoteClock
from detailbench.record.checking import check


def test_a_clock_before_the_last_entry_is_said_at_the_start(invented: InventedShop) -> None:
    invented.job()
    assert invented.bench.clock_trouble() == ""
    invented.clock.set(invented.clock.now() - timedelta(days=4450))
    said = invented.reopened().clock_trouble()
    assert said.startswith("The computer's clock (2019-01-02 08:30+01:00) is before the last entry (2031-03-10 08:30")
    invented.bench.do(NoteClock("the battery was empty"))
    assert invented.bench.clock_trouble() == ""


def test_entries_after_a_jump_back_keep_their_order_by_number_and_the_first_says_so(invented: InventedShop) -> None:
    job = invented.job()
    invented.clock.forward(hours=2)
    invented.bench.do(AddDamage(job, "first"))
    invented.clock.set(invented.clock.now() - timedelta(hours=1))
    second = invented.bench.do(AddDamage(job, "second"))
    third = invented.bench.do(AddDamage(job, "third"))
    assert second.note.startswith("The clock went back from 2031-03-10 10:30+01:00 to 2031-03-10 09:30+01:00.")
    assert third.note == ""
    picture = invented.reopened().job(job)
    assert [d.words for d in picture.damages] == ["first", "second", "third"]
    assert [line.says for line in invented.bench.entries(job)][-3:] == ["existing damage noted"] * 3
    assert check(invented.bench.store).troubles == ()


def test_a_jump_is_found_again_for_documents_with_what_was_noted_about_it(invented: InventedShop) -> None:
    job = invented.job()
    invented.clock.forward(hours=2)
    invented.bench.do(AddDamage(job, "first"))
    before = invented.clock.now()
    invented.clock.set(before - timedelta(hours=1))
    invented.bench.do(AddDamage(job, "second"))
    (jump,) = jumps(invented.picture(job))
    assert (jump.before, jump.after, jump.noted) == (before, before - timedelta(hours=1), None)
    invented.bench.do(NoteClock("the telephone's time was taken"))
    (jump,) = jumps(invented.picture(job))
    assert jump.noted is not None
    assert (jump.noted.words, jump.noted.last_at) == ("the telephone's time was taken", before)


def test_a_clock_that_only_goes_on_gives_no_jump(invented: InventedShop) -> None:
    job = invented.job()
    invented.measured(job)
    assert jumps(invented.picture(job)) == ()


def test_a_note_needs_words(invented: InventedShop) -> None:
    with pytest.raises(BadInput, match="Say in words"):
        invented.bench.do(NoteClock("  "))
