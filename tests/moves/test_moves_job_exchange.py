"""A job out to a file and in again: the same but for what must differ; what is not as it should be is refused."""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Callable, Iterator
from copy import deepcopy
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import pytest
import rfc8785
from invented_shop import INVENTED_NOW, InventedShop
from photographed_samples import photo

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadFile, RecordTrouble, Refused
from detailbench.moves.arrival import AddDamage, SetOwner
from detailbench.moves.bench import Bench
from detailbench.moves.forgetting import ForgetOwner
from detailbench.moves.job_exchange import ImportJob, files_beside, write_job
from detailbench.moves.marks import RecordMark
from detailbench.moves.photos import AddPhoto
from detailbench.moves.shop import Retire
from detailbench.record.checking import check
from detailbench.record.things import Document


@dataclass
class Two:
    """A job in one workshop, its file, and another, empty workshop."""

    ours: InventedShop
    theirs: Bench
    job: str
    file: Path

    @property
    def body(self) -> dict[str, Any]:
        return json.loads(self.file.read_bytes())  # type: ignore[no-any-return]

    def take_in(self, content: bytes | None = None, files: Path | None = None) -> Any:
        return self.theirs.do(ImportJob(self.file.read_bytes() if content is None else content, "job.json", files))


@pytest.fixture(scope="session")
def exchanged(prepared: InventedShop, tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, str]:
    """A workshop ``ours`` with a job in it and its file ``job.json``, made once; tests work on copies."""
    folder = tmp_path_factory.mktemp("exchanged")
    shutil.copytree(prepared.folder, folder / "ours")
    clock = HandClock(INVENTED_NOW)
    invented = replace(prepared, bench=Bench(folder / "ours", clock, person=prepared.person), clock=clock)
    do = invented.bench.do
    job = invented.job()
    invented.measured(job)
    do(RecordMark(job, "bonnet", "swirl", severity=2))
    do(AddPhoto(job, photo(), "one.jpg", panel="bonnet"))
    do(AddDamage(job, "an invented dent"))
    do(AddDamage(job, "taken back"))
    invented.bench.undo(job)
    with invented.bench.store.writing(invented.clock.now(), invented.person) as w:  # quicker than closing a true one
        kept = w.keep_file(b"%PDF invented", "application/pdf", "handover-2031-001-1.pdf")
        w.add(
            Document, job_id=job, kind="handover", evidence_id=kept.id, sha256=kept.sha256, pages=1,
            key_fingerprint="0" * 64, chain_head=w.chain_head,
        )  # fmt: skip
        w.sign_off(job, "CloseDocument", "handover report closed", undoable=False)
    write_job(invented.bench.store, job, folder / "job.json")
    invented.bench.close()
    return folder, job


@pytest.fixture
def two(exchanged: tuple[Path, str], prepared: InventedShop, tmp_path: Path, clock: HandClock) -> Iterator[Two]:
    folder, job = exchanged
    shutil.copytree(folder, tmp_path, dirs_exist_ok=True)
    ours = replace(prepared, bench=Bench(tmp_path / "ours", clock, person=prepared.person), clock=clock)
    theirs = Bench(tmp_path / "theirs", HandClock(INVENTED_NOW))
    yield Two(ours, theirs, job, tmp_path / "job.json")
    theirs.close()
    ours.bench.close()


def without_history(body: dict[str, Any]) -> dict[str, Any]:
    """What an import adds by itself: where the job came from. The rest must be the same."""
    body = deepcopy(body)
    del body["journal"]
    histories = body["things"].pop("history", [])
    kept = {h["evidence_id"] for h in histories}
    body["things"]["evidence"] = [e for e in body["things"]["evidence"] if e["id"] not in kept]
    return body


def test_a_job_out_in_and_out_again_is_the_same_but_for_its_history(two: Two, tmp_path: Path) -> None:
    two.take_in(files=files_beside(two.file))
    again = tmp_path / "again.json"
    write_job(two.theirs.store, two.job, again)
    assert without_history(json.loads(again.read_bytes())) == without_history(two.body)
    assert check(two.theirs.store).troubles == ()


def test_the_picture_of_the_job_is_the_same_in_the_other_workshop(two: Two) -> None:
    two.take_in(files=files_beside(two.file))
    ours, theirs = two.ours.picture(two.job), two.theirs.job(two.job)
    for name in ("marks", "readings", "places", "check_readings", "damages", "documents", "photos", "parties"):
        mine, others = getattr(ours, name), getattr(theirs, name)
        assert [(t.id, t.entered_at, t.entered_by) for t in others] == [
            (t.id, t.entered_at, t.entered_by) for t in mine
        ]
    assert [r.value_um for r in theirs.readings] == [r.value_um for r in ours.readings]
    assert theirs.said(theirs.parties[0].id, "name") == "Invented Owner"
    for evidence in ours.shop.evidence:
        assert two.theirs.evidence_bytes(evidence.sha256) == two.ours.bench.evidence_bytes(evidence.sha256)


def test_people_gauges_foils_and_kit_the_job_names_travel_with_it(two: Two) -> None:
    two.take_in()
    shop = two.theirs.shop()
    assert [p.name for p in shop.people] == ["Ana Invented"]
    assert [g.name for g in shop.gauges] == ["invented gauge"]
    assert {s.label for s in shop.shims} == {"zero plate", "foil 102"}
    assert shop.pads == ()  # the job names none


def test_the_journal_as_it_was_is_kept_and_each_of_its_entries_can_be_checked(two: Two) -> None:
    two.take_in()
    picture = two.theirs.job(two.job)
    (history,) = picture.histories
    content = two.theirs.evidence_bytes(picture.evidence_of(history.evidence_id).sha256)
    told = json.loads(content)
    assert rfc8785.dumps(two.body["journal"]) == content
    assert (history.entries, history.head) == (len(told), told[-1]["hash"])
    assert [e["says"] for e in told] == [line.says for line in two.ours.bench.entries(two.job)]


def test_the_file_is_canonical_json_with_ids_sorted_and_carries_no_binary(two: Two) -> None:
    assert rfc8785.dumps(two.body) == two.file.read_bytes()
    for rows in two.body["things"].values():
        assert [r["id"] for r in rows] == sorted(r["id"] for r in rows)
    assert re.fullmatch(r"2031-03-10T\d\d:\d\d:\d\d\+01:00", two.body["things"]["reading"][0]["entered_at"])


def test_what_was_taken_back_does_not_travel(two: Two) -> None:
    assert [d["words"] for d in two.body["things"]["damage"]] == ["an invented dent"]


def test_taking_the_same_file_in_twice_is_said_and_changes_nothing(two: Two) -> None:
    two.take_in(files=files_beside(two.file))
    head = two.theirs.store.head()
    again = two.take_in(files=files_beside(two.file))
    assert again.note == "This job is here already, the same."
    assert two.theirs.store.head() == head


def test_files_left_out_are_named_as_missing_and_may_be_brought_later(two: Two) -> None:
    done = two.take_in()
    assert re.fullmatch(r"2 kept files are missing: [0-9a-f]{12}…, [0-9a-f]{12}….", done.note)
    assert len(check(two.theirs.store).troubles) == 2
    two.take_in(files=files_beside(two.file))
    assert check(two.theirs.store).troubles == ()


def test_a_file_beside_that_is_not_what_its_hash_says_counts_as_missing(two: Two) -> None:
    one = next(files_beside(two.file).iterdir())
    one.write_bytes(b"something else")
    assert f"1 kept files are missing: {one.name[:12]}" in two.take_in(files=files_beside(two.file)).note


def test_it_cannot_be_taken_back(two: Two) -> None:
    two.take_in()
    with pytest.raises(Refused, match="nothing here that can be taken back"):
        two.theirs.undo(two.job)


def test_a_number_taken_here_gets_another_and_the_rest_stays(two: Two) -> None:
    from detailbench.moves.arrival import NewJob

    two.theirs.do(NewJob())
    done = two.take_in(files=files_beside(two.file))
    assert done.note == "Its number 2031-001 is taken here; it is 2031-001-2 now."
    assert two.theirs.job(two.job).job.number == "2031-001-2"
    assert two.take_in(files=files_beside(two.file)).note == "This job is here already, the same."
    assert two.theirs.job(two.theirs.do(NewJob()).scope).job.number == "2031-002"


def test_an_id_here_with_other_content_is_refused_and_nothing_changes(two: Two) -> None:
    two.take_in(files=files_beside(two.file))
    head = two.theirs.store.head()
    body = two.body
    body["things"]["reading"][0]["value_um"] = 141
    with pytest.raises(BadFile, match=r"reading .*value_um: this id is here already with other content \(118.0\)"):
        two.take_in(rfc8785.dumps(body))
    assert two.theirs.store.head() == head


def test_a_gauge_retired_here_since_is_still_the_same_gauge(two: Two) -> None:
    two.take_in(files=files_beside(two.file))
    two.theirs.do(Retire("gauge", two.theirs.shop().gauges[0].id))
    assert two.take_in(files=files_beside(two.file)).note == "This job is here already, the same."


def test_without_the_personal_block_no_name_travels_and_what_shows_the_owner_stays_behind(
    two: Two, tmp_path: Path
) -> None:
    bare = tmp_path / "bare.json"
    written = write_job(two.ours.bench.store, two.job, bare, personal=False)
    held = bare.read_bytes() + b"".join(p.read_bytes() for p in files_beside(bare).iterdir())
    assert [s for s in ("Invented Owner", "000 111", "INV 01", "one.jpg") if s.encode() in held] == []
    document = two.ours.picture(two.job).documents[0]
    assert written.left_out == (document.sha256,)
    done = two.take_in(bare.read_bytes(), files_beside(bare))
    assert f"1 kept files are missing: {document.sha256[:12]}" in done.note
    assert two.theirs.shop().personal == {}


SAME = "This job is here already, the same"


def test_personal_data_that_are_not_here_are_said_not_to_be_taken_in(two: Two, tmp_path: Path) -> None:
    bare = tmp_path / "bare.json"
    write_job(two.ours.bench.store, two.job, bare, personal=False)
    two.take_in(bare.read_bytes())
    again = two.take_in(files=files_beside(two.file))
    assert again.note.startswith(
        f"{SAME} but for personal data: 4 values of the file are not here and were not taken in."
    )
    assert two.theirs.shop().personal == {}


def test_an_owner_forgotten_here_is_not_brought_back_by_the_file_and_that_is_said(two: Two) -> None:
    two.take_in(files=files_beside(two.file))
    two.theirs.do(ForgetOwner(two.job))
    again = two.take_in(files=files_beside(two.file))
    assert again.note.startswith(
        f"{SAME} but for personal data: 4 values of the file are not here and were not taken in. "
        "The owner was forgotten here on 2031-03-10."
    )
    assert two.theirs.shop().personal == {}


def test_personal_data_that_differ_or_are_not_in_the_file_stay_here_and_that_is_said(two: Two, tmp_path: Path) -> None:
    two.take_in(files=files_beside(two.file))
    two.theirs.do(SetOwner(two.job, {"name": "Invented Other"}))
    files = files_beside(two.file)
    again = two.take_in(files=files)
    assert again.note == f"{SAME} but for personal data: 1 values differ; those here stay."
    bare = tmp_path / "bare.json"
    write_job(two.ours.bench.store, two.job, bare, personal=False)
    again = two.take_in(bare.read_bytes(), files)
    assert again.note == f"{SAME}; the file was written without personal data, and those here stay."
    owner = two.theirs.job(two.job).parties[0].id
    assert two.theirs.shop().said(owner, "name") == "Invented Other"


def test_nothing_is_written_over(two: Two) -> None:
    with pytest.raises(RecordTrouble, match="is there already"):
        write_job(two.ours.bench.store, two.job, two.file)
    with pytest.raises(RecordTrouble, match="is there already"):
        write_job(two.ours.bench.store, two.job, two.file, files=False)


def change(path: str, value: object) -> Callable[[dict[str, Any]], None]:
    """Set what lies at ``a.0.b``."""

    def act(body: dict[str, Any]) -> None:
        *way, last = path.split(".")
        at: Any = body
        for step in way:
            at = at[int(step)] if isinstance(at, list) else at[step]
        at[int(last) if isinstance(at, list) else last] = value

    return act


def doubled(body: dict[str, Any]) -> None:
    body["things"]["reading"].append(body["things"]["reading"][0])


def dropped(path: str, name: str) -> Callable[[dict[str, Any]], None]:
    def act(body: dict[str, Any]) -> None:
        at: Any = body
        for step in path.split(".") if path else ():
            at = at[int(step)] if isinstance(at, list) else at[step]
        del at[name]

    return act


SOMEONE = "11111111-2222-4333-8444-555555555555"
DEEP: list[Any] = []
for _n in range(9):
    DEEP = [DEEP]


@pytest.mark.parametrize(
    ("act", "told"),
    [
        (change("format", "another"), "it is no job file of this program"),
        (change("version", 2), "written by a newer program"),
        (change("version", "1"), "a version is expected"),
        (change("version", True), "a version is expected"),
        (change("more", 1), "there is no such field"),
        (dropped("", "personal"), "this field is missing"),
        (change("things", []), "an object is expected"),
        (change("things.songs", []), "there is no such kind of thing"),
        (change("things.reading", {}), "a list is expected"),
        (change("things.reading.0", 7), r"reading\[0\]: an object is expected"),
        (change("things.reading.0.value_um", "118"), r"reading\[0\].value_um: That is not a number"),
        (change("things.reading.0.value_um", True), r"reading\[0\].value_um: That is not a number"),
        (change("things.reading.0.entered_at", "2031-03-10T08:30:00"), "A time needs its offset"),
        (change("things.reading.0.entered_at", "yesterday"), "a time with its offset is expected"),
        (change("things.reading.0.entered_at", 7), "a time with its offset is expected"),
        (change("things.reading.0.flags", "double"), "a list is expected"),
        (change("things.reading.0.flags", DEEP), "a list is expected"),
        (change("things.reading.0.flags", [{}]), "a list is expected"),
        (change("things.reading.0.clean", None), r"clean: Text is expected"),
        (change("things.reading.0.clean", "sparkling"), r"clean: it must be one of: decontaminated, dirty"),
        (change("things.reading.0.id", "1"), "an id is expected"),
        (change("things.reading.0.id", "not-an-id"), "an id is expected"),
        (change("things.reading.0.place_id", SOMEONE), "names a thing that is neither in the file nor here"),
        (change("things.reading.0.job_id", SOMEONE), "belongs to another job"),
        (change("things.reading.0.more", 1), "there is no such field"),
        (change("things.reading.0.order", -1), "A whole number is expected"),
        (dropped("things.reading.0", "unit"), r"reading\[0\].unit: this field is missing"),
        (dropped("things", "place"), "names a thing that is neither"),
        (dropped("things", "car"), r"things.car: exactly one is expected"),
        (doubled, "this id stands twice"),
        (change("things.mark.0.kind", "sparkle"), "there is no such kind of mark"),
        (change("things.mark.0.panel", "spoiler"), "no panel “spoiler”"),
        (change("things.mark.0.severity", 2.5), "A whole number is expected"),
        (change("things.mark.0.severity", -1), "cannot be below zero"),
        (change("things.mark.0.severity", 2**60), "too large|no job has"),
        (change("things.car.0.style", "spaceship"), "spaceship"),
        (change("things.gauge.0.resolution_um", 0), "must be above zero"),
        (change("things.place.0.panel_w_mm", 0), "must be above zero"),
        (change("job", SOMEONE), "names another job than it holds"),
        (change("journal.0.says", 3), "does not match its hash"),
        (change("journal.0.body.by", "someone"), "does not match its hash; it was changed"),
        (change("journal.0", []), "hash, says and body are expected"),
        (change("personal.0.subject", SOMEONE), "about nothing in this file"),
        (change("personal.0.value", 7), "Text is expected"),
        (change("personal.0", 7), "subject, field and value are expected"),
        (change("personal", {}), "a list is expected"),
    ],
)
def test_a_file_that_is_not_as_it_should_be_is_refused_naming_the_place(
    exchanged: tuple[Path, str], invented: InventedShop, act: Callable[[dict[str, Any]], None], told: str
) -> None:
    body = json.loads((exchanged[0] / "job.json").read_bytes())
    act(body)
    head = invented.bench.store.head()
    with pytest.raises(BadFile, match=told) as caught:
        invented.bench.do(ImportJob(json.dumps(body).encode()))
    assert str(caught.value).startswith("job.json")
    assert invented.bench.store.head() == head
    assert invented.bench.shop().jobs == ()


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"", "line 1, column 1: it is not JSON"),
        (b"\xff\xfe", "not UTF-8"),
        (b"[]", "an object is expected"),
        (b'{"format": "detailbench-job",\n "version": }', "line 2, column 13"),
        (b'{"a": NaN}', "NaN is no number"),
        (b'{"a": -Infinity}', "-Infinity is no number"),
        (b'{"a": 1, "a": 2}', "a name stands twice"),
        (b"[" * 200_000, "nested without end"),
        (b'{"a":' * 200_000, "nested without end"),
        (b'{"a": ' + b"9" * 5000 + b"}", "a number no job has"),
    ],
)
def test_what_is_no_such_file_at_all_is_refused_in_a_sentence(
    invented: InventedShop, content: bytes, told: str
) -> None:
    head = invented.bench.store.head()
    with pytest.raises(BadFile, match=told):
        invented.bench.do(ImportJob(content))
    assert invented.bench.store.head() == head


def test_a_file_larger_than_any_job_is_not_read(two: Two, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("detailbench.record.job_reading.MOST_BYTES", 100)
    with pytest.raises(BadFile, match="larger than any job"):
        two.take_in()
