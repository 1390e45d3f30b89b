"""What tests begin with is done once and copied: a copy is as if it had been done, and no test sees another's."""

from __future__ import annotations

from invented_shop import InventedShop, invented, prepared

from detailbench.moves.surface import SetState
from detailbench.record.checking import check

__all__ = ["invented", "prepared"]


def begun(shop: InventedShop, done: list[str]) -> str:
    def do() -> str:
        done.append("done")
        job = shop.job()
        shop.clock.forward(minutes=7)
        return job

    return shop.begin("a job", do)


DONE: list[str] = []
SEEN: list[tuple[str, str]] = []


def goes_on(shop: InventedShop) -> None:
    began = shop.clock.now()
    job = begun(shop, DONE)
    assert (shop.clock.now() - began).total_seconds() == 420
    SEEN.append((job, shop.bench.store.head()[1]))
    shop.bench.do(SetState(job, ("bonnet",), clean="wiped"))  # the next copy does not have it
    assert check(shop.bench.store).troubles == ()


def test_what_begins_a_test_is_done_once(invented: InventedShop) -> None:
    goes_on(invented)
    assert DONE == ["done"]


def test_and_the_next_is_given_a_copy_of_its_own(invented: InventedShop) -> None:
    goes_on(invented)
    assert DONE == ["done"]
    assert SEEN[0] == SEEN[-1]


def test_from_another_point_or_under_a_window_it_is_done_anew(invented: InventedShop) -> None:
    done: list[str] = []
    invented.clock.forward(minutes=1)
    begun(invented, done)
    begun(invented, done)
    assert len(done) == 2
    invented.bench.watch(lambda _changes, _initiator: None)
    bench = invented.bench
    for _turn in range(2):
        invented.begin("here", lambda: done.append("under a window"))
    assert done[2:] == ["under a window"] * 2
    assert invented.bench is bench
