"""What went wrong on our watch, and who was told."""

from __future__ import annotations

from datetime import timedelta

import pytest
from invented_findings import Hands
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput, Refused
from detailbench.moves.mishaps import CorrectMishapTime, RecordMishap, TellMishap
from detailbench.record.past import put_right


@pytest.fixture
def hands(invented: InventedShop) -> Hands:
    return Hands(invented, invented.job())


def test_a_mishap_keeps_what_where_when_and_by_whom(hands: Hands) -> None:
    earlier = hands.shop.clock.now() - timedelta(minutes=20)
    hands.do(RecordMishap(hands.job, " pad edge touched the trim ", "wing_front_l", earlier))
    kept = hands.picture.mishaps[0]
    assert (kept.words, kept.panel, kept.stated_at, kept.entered_by, kept.told) == (
        "pad edge touched the trim", "wing_front_l", earlier, hands.shop.person, "",
    )  # fmt: skip


def test_it_need_not_be_on_a_panel(hands: Hands) -> None:
    hands.do(RecordMishap(hands.job, "a bucket fell over"))
    assert hands.picture.mishaps[0].panel == ""


@pytest.mark.parametrize("values", [{"words": "  "}, {"words": "a scratch", "panel": "wing_front_x"}])
def test_what_cannot_be_understood_is_not_kept(hands: Hands, values: dict[str, str]) -> None:
    with pytest.raises(BadInput):
        hands.do(RecordMishap(hands.job, **values))
    assert hands.picture.mishaps == ()


def test_it_has_not_happened_yet_or_happened_to_nobody(hands: Hands) -> None:
    with pytest.raises(BadInput, match="not come yet"):
        hands.do(RecordMishap(hands.job, "a scratch", at=hands.shop.clock.now() + timedelta(minutes=1)))
    hands.shop.bench.person = ""
    with pytest.raises(Refused, match="Choose who you are"):
        hands.do(RecordMishap(hands.job, "a scratch"))
    assert hands.picture.mishaps == ()


def test_who_was_told_how_and_when_is_kept_and_can_be_told_further(hands: Hands) -> None:
    mishap = hands.do(RecordMishap(hands.job, "a scratch", "roof"))
    hands.do(TellMishap(hands.job, mishap, "bearer", "present"))
    hands.later(600)
    hands.do(TellMishap(hands.job, mishap, "owner", "telephone", hands.shop.clock.now() - timedelta(minutes=5)))
    kept = hands.picture.mishaps[0]
    assert (kept.told, kept.channel, kept.told_at) == (
        "owner", "telephone", hands.shop.clock.now() - timedelta(minutes=5),
    )  # fmt: skip
    hands.shop.bench.undo(hands.job)
    assert hands.picture.mishaps[0].told == "bearer"


@pytest.mark.parametrize(("told", "channel"), [("neighbour", "present"), ("owner", "pigeon"), ("owner", "")])
def test_telling_is_to_the_owner_or_the_bearer_by_a_known_way(hands: Hands, told: str, channel: str) -> None:
    mishap = hands.do(RecordMishap(hands.job, "a scratch", "roof"))
    with pytest.raises(BadInput):
        hands.do(TellMishap(hands.job, mishap, told, channel))
    assert hands.picture.mishaps[0].told == ""


# its own time, put right
def test_the_time_of_a_mishap_is_corrected_and_taken_back(hands: Hands) -> None:
    mishap = hands.do(RecordMishap(hands.job, "a scratch", "roof"))
    hands.later(600)
    earlier = hands.shop.clock.now() - timedelta(minutes=40)
    said = hands.shop.bench.do(CorrectMishapTime(hands.job, mishap, earlier)).says
    assert (hands.picture.mishaps[0].stated_at, said) == (earlier, "time of the mishap on roof corrected")
    hands.shop.bench.undo(hands.job)
    assert hands.picture.mishaps[0].stated_at is None


def test_it_happened_neither_later_than_now_nor_after_somebody_was_told(hands: Hands) -> None:
    mishap = hands.do(RecordMishap(hands.job, "a scratch", "roof"))
    hands.later(60)
    hands.do(TellMishap(hands.job, mishap, "owner", "telephone"))
    hands.later(600)
    now = hands.shop.clock.now()
    for at, why in (
        (now + timedelta(minutes=1), "not come yet"),
        (now - timedelta(minutes=1), "was told"),
        (now.replace(tzinfo=None), "offset"),
    ):
        with pytest.raises(BadInput, match=why) as found:
            hands.do(CorrectMishapTime(hands.job, mishap, at))
        assert found.value.field == "at"
    assert hands.picture.mishaps[0].stated_at is None


@pytest.mark.parametrize("stated", [False, True])
def test_the_journal_tells_its_time_as_put_right(hands: Hands, stated: bool) -> None:
    first = hands.shop.clock.now() - timedelta(minutes=5 if stated else 0)
    mishap = hands.do(RecordMishap(hands.job, "a scratch", "roof", first if stated else None))
    hands.later(600)
    earlier = first - timedelta(hours=1)
    hands.do(CorrectMishapTime(hands.job, mishap, earlier))
    hands.shop.bench.undo(hands.job)
    with hands.shop.bench.store.reading() as connection:
        told = [(c.table, c.field, c.was, c.now) for c in put_right(connection, hands.job)]
    assert told == [
        ("mishap", "stated_at", first.isoformat(), earlier.isoformat()),
        ("mishap", "stated_at", earlier.isoformat(), first.isoformat()),
    ]
