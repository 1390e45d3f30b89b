"""The journal that comes with a job's file: what is changed, dropped or put into it is seen; what cannot be is said."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
import rfc8785
from invented_findings import Hands
from invented_shop import INVENTED_NOW, InventedShop

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadFile
from detailbench.moves.arrival import AddDamage, NewJob
from detailbench.moves.bench import Bench
from detailbench.moves.forgetting import ForgetOwner
from detailbench.moves.job_exchange import ImportJob, files_beside, write_job
from detailbench.moves.marks import CorrectMark, RecordMark
from detailbench.record.checking import check
from detailbench.record.things import Document

Body = dict[str, Any]


def written(invented: InventedShop, job: str, name: str = "job.json") -> Body:
    file = invented.folder.parent / name
    write_job(invented.bench.store, job, file, files=False)
    return json.loads(file.read_bytes())  # type: ignore[no-any-return]


@pytest.fixture
def body(invented: InventedShop) -> Body:
    """A job among others of the workshop: an entry of another job lies between most of its own."""
    do, job = invented.bench.do, invented.job()
    mark = do(RecordMark(job, "bonnet", "swirl", 2)).id
    other = invented.job("Second Owner")
    do(CorrectMark(job, mark, {"severity": 3}))
    do(AddDamage(other, "of another job"))
    do(AddDamage(job, "taken back"))
    invented.bench.undo(job)
    do(AddDamage(other, "more of another job"))
    do(CorrectMark(job, mark, {"severity": 4}))
    with invented.bench.store.writing(invented.clock.now(), invented.person) as w:
        kept = w.keep_file(b"%PDF invented", "application/pdf", "handover-2031-001-1.pdf")
        w.add(
            Document, job_id=job, kind="handover", evidence_id=kept.id, sha256=kept.sha256, pages=1,
            key_fingerprint="0" * 64, chain_head=w.chain_head,
        )  # fmt: skip
        w.sign_off(job, "CloseDocument", "handover report closed", undoable=False)
    do(AddDamage(job, "an invented dent"))
    return written(invented, job)


@pytest.fixture
def theirs(tmp_path: Path) -> Iterator[Bench]:
    bench = Bench(tmp_path / "theirs", HandClock(INVENTED_NOW))
    yield bench
    bench.close()


def taken_in(bench: Bench, body: Body, head: str | None = None) -> str:
    return bench.do(ImportJob(json.dumps(body).encode(), known_head=head)).scope


def signed(body: Body, n: int, **values: Any) -> None:
    """The entry with other values, and a hash to match."""
    entry = body["journal"][n]
    entry["body"].update(values)
    entry["hash"] = hashlib.sha256(rfc8785.dumps(entry["body"])).hexdigest()


def test_a_job_among_others_goes_out_and_in_and_its_history_goes_on(
    body: Body, theirs: Bench, invented: InventedShop
) -> None:
    job = taken_in(theirs, body)
    theirs.do(AddDamage(job, "seen by them"))
    file = theirs.folder.parent / "again.json"
    write_job(theirs.store, job, file, files=False)
    third = Bench(theirs.folder.parent / "third", HandClock(INVENTED_NOW))
    third.do(ImportJob(file.read_bytes()))
    assert [d.words for d in third.job(job).damages] == ["an invented dent", "seen by them"]
    third.close()
    assert [t for t in check(invented.bench.store).troubles if "Journal" in t] == []


# what is seen
@pytest.mark.parametrize("n", range(8))
def test_an_entry_left_out_is_seen(body: Body, theirs: Bench, n: int) -> None:
    del body["journal"][n]
    with pytest.raises(
        BadFile, match=r"journal\[\d\]: .*missing|journal.*tells nothing of it|journal.*tells otherwise"
    ):
        taken_in(theirs, body)
    assert theirs.shop().jobs == ()


def test_the_first_entry_left_out_is_seen(body: Body, theirs: Bench) -> None:
    body["journal"] = body["journal"][1:]
    with pytest.raises(BadFile, match=r"journal\[0\]: an entry before it is missing"):
        taken_in(theirs, body)


def test_no_entry_at_all_is_seen(body: Body, theirs: Bench) -> None:
    body["journal"] = []
    with pytest.raises(BadFile, match="the journal tells nothing of it"):
        taken_in(theirs, body)


def test_words_that_were_not_signed_for_are_seen(body: Body, theirs: Bench) -> None:
    body["journal"][1]["says"] = "mark on roof"
    with pytest.raises(BadFile, match=r"journal\[1\]: its words are not those that were signed off"):
        taken_in(theirs, body)


def exchange(body: Body) -> None:
    body["journal"][2], body["journal"][3] = body["journal"][3], body["journal"][2]


def twice(body: Body) -> None:
    body["journal"].insert(2, body["journal"][1])


def of_another_job(body: Body) -> None:
    signed(body, -1, scope="somewhere else")


def no_entry(body: Body) -> None:
    del body["journal"][1]["body"]["changes"]
    signed(body, 1)


def unlinked(body: Body) -> None:
    del body["journal"][-1]["body"]["before"]
    signed(body, -1)


def resigned(body: Body) -> None:
    signed(body, 1, by="")


@pytest.mark.parametrize(
    ("act", "told"),
    [
        (exchange, "an entry before it is missing, or it stands elsewhere"),
        (twice, "an entry before it is missing, or it stands elsewhere"),
        (of_another_job, "it is an entry of something else"),
        (no_entry, "it is no entry of a journal"),
        (unlinked, "an entry before it is missing, or it stands elsewhere"),
        (resigned, "an entry before it is missing, or it stands elsewhere"),
    ],
)
def test_what_does_not_follow_is_seen(body: Body, theirs: Bench, act: Callable[[Body], None], told: str) -> None:
    act(body)
    with pytest.raises(BadFile, match=rf"journal\[.*{told}"):
        taken_in(theirs, body)


def test_a_value_the_journal_tells_otherwise_is_seen(body: Body, theirs: Bench) -> None:
    body["things"]["mark"][0]["severity"] = 1
    with pytest.raises(BadFile, match=r"mark .*severity: the journal tells otherwise \(4\)"):
        taken_in(theirs, body)


def test_a_thing_the_journal_made_and_the_file_leaves_out_is_seen(body: Body, theirs: Bench) -> None:
    del body["things"]["damage"]
    with pytest.raises(BadFile, match=r"damage .*: the journal tells of it, and it is not in the file"):
        taken_in(theirs, body)


def test_a_thing_that_was_taken_back_is_seen(body: Body, theirs: Bench) -> None:
    back = next(
        c["now"] for e in body["journal"] for c in e["body"]["changes"] if c["now"].get("words") == "taken back"
    )
    thing = {k: v for k, v in back.items() if k not in ("seq", "withdrawn")} | {"order": 99}
    body["things"]["damage"].append(thing)
    with pytest.raises(BadFile, match=r"damage .*: the journal says that it was taken back"):
        taken_in(theirs, body)


def test_a_document_that_names_another_file_is_refused_naming_both(body: Body, theirs: Bench) -> None:
    kept = body["things"]["document"][0]["sha256"]
    body["things"]["document"][0]["sha256"] = "ab" * 32
    with pytest.raises(BadFile, match=rf"document .*sha256.*{kept[:12]}.*abababababab"):
        taken_in(theirs, body)


def test_a_document_that_was_not_closed_on_the_head_it_names_is_refused(body: Body, theirs: Bench) -> None:
    body["things"]["document"][0]["chain_head"] = "ab" * 32
    with pytest.raises(BadFile, match=r"document .*chain_head: the journal tells otherwise"):
        taken_in(theirs, body)


def all_signed(body: Body, *, linked: bool = True) -> None:
    """Every entry's hash anew, and every link to match; without the links between the job's own entries where asked."""
    before, anew = "0" * 64, {}
    for entry in body["journal"]:
        entry["body"]["previous"] = anew.get(entry["body"]["previous"], entry["body"]["previous"])
        for change in entry["body"]["changes"]:
            if "chain_head" in change["now"]:
                change["now"]["chain_head"] = anew.get(change["now"]["chain_head"], change["now"]["chain_head"])
        entry["body"].pop("before")
        if linked:
            entry["body"]["before"] = before
        was = entry["hash"]
        before = entry["hash"] = hashlib.sha256(rfc8785.dumps(entry["body"])).hexdigest()
        anew[was] = before
    for document in body["things"]["document"]:
        document["chain_head"] = anew.get(document["chain_head"], document["chain_head"])


def whole_anew(body: Body) -> None:
    """Another severity in every place, and every hash to match."""
    for entry in body["journal"]:
        for change in entry["body"]["changes"]:
            for side in ("now", "was"):
                if (change[side] or {}).get("severity") == 4:
                    change[side]["severity"] = 1
    body["things"]["mark"][0]["severity"] = 1
    all_signed(body)


def test_a_journal_written_anew_as_a_whole_shows_only_against_a_head_kept_elsewhere(body: Body, theirs: Bench) -> None:
    head = body["journal"][-1]["hash"]
    whole_anew(body)
    with pytest.raises(BadFile, match="the head given is not in its journal"):
        taken_in(theirs, body, head)
    assert taken_in(theirs, body)


def test_the_head_a_closed_document_carries_is_found(body: Body, theirs: Bench) -> None:
    assert taken_in(theirs, body, body["things"]["document"][0]["chain_head"])


def test_a_journal_of_an_earlier_journey_must_be_the_one_its_history_names(
    body: Body, theirs: Bench, tmp_path: Path
) -> None:
    job = taken_in(theirs, body)
    file = tmp_path / "again.json"
    write_job(theirs.store, job, file)
    again = json.loads(file.read_bytes())
    (history,) = again["things"]["history"]
    history["head"] = "ab" * 32
    for entry in again["journal"]:
        for change in entry["body"]["changes"]:
            if change["table"] == "history":
                change["now"]["head"] = "ab" * 32
    all_signed(again)
    third = Bench(tmp_path / "third", HandClock(INVENTED_NOW))
    with pytest.raises(BadFile, match=r"the journal kept for it ends in .* the history names abababababab"):
        third.do(ImportJob(json.dumps(again).encode(), files=files_beside(file)))
    third.do(ImportJob(file.read_bytes(), files=files_beside(file)))
    third.close()


# what stays as it was
def test_a_journal_from_before_its_entries_named_each_other_is_taken_in(body: Body, theirs: Bench) -> None:
    all_signed(body, linked=False)
    assert taken_in(theirs, body)


def test_a_job_without_its_owner_goes_out_and_in(invented: InventedShop, theirs: Bench) -> None:
    job = invented.job()
    car = invented.picture(job).car.id
    second = invented.bench.do(NewJob(car_id=car)).scope
    invented.bench.do(ForgetOwner(second))
    for one in (job, second):
        taken_in(theirs, written(invented, one, f"{one}.json"))
    assert len(theirs.shop().jobs) == 2


def test_a_cut_chain_of_a_job_shows_in_the_check(hands_of_two: tuple[Hands, str]) -> None:
    hands, job = hands_of_two
    hands.do(AddDamage(job, "a dent"))
    rows = [line.n for line in hands.shop.bench.entries(job)]
    with hands.shop.bench.store.writing(hands.shop.clock.now(), hands.shop.person) as w:
        from detailbench.record.tables import journal

        w._connection.execute(journal.delete().where(journal.c.n == rows[-2]))
    assert any("entry before it in the same job" in t for t in check(hands.shop.bench.store).troubles)


@pytest.fixture
def hands_of_two(invented: InventedShop) -> tuple[Hands, str]:
    hands = Hands(invented, invented.job())
    hands.do(AddDamage(hands.job, "first"))
    assert replace(hands, job=hands.job) == hands
    return hands, hands.job
