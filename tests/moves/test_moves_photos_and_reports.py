"""Photographs are kept as they are, once; a report is closed whole or not at all and never undone."""

from __future__ import annotations

from pathlib import Path

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import BadFile, BadInput, RecordTrouble, Refused
from detailbench.moves import documents
from detailbench.moves.documents import CloseReport, copy_out, key_path, newest_document, open_key
from detailbench.moves.photos import AddPhoto, PairPhotos, StrikePhoto
from detailbench.moves.shop import SetSetting
from detailbench.photos.drawn import drawn_reflection
from detailbench.record.checking import check
from detailbench.seal.keys import WorkshopKey
from detailbench.seal.verdict import Outcome
from detailbench.seal.verifying import verify_pdf

SWIRLED, CLEAN = drawn_reflection(40, seed=1), drawn_reflection(0, seed=2)


@pytest.fixture
def key(invented: InventedShop) -> WorkshopKey:
    invented.bench.do(SetSetting("shop_name", "Invented Bay"))
    return open_key(invented.folder, invented.bench.shop(), "invented words", invented.clock)


def test_a_photo_is_kept_byte_for_byte_with_what_it_shows(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(AddPhoto(job, SWIRLED, "one.jpg", panel="bonnet", moment="arrival", caption="as it came"))
    picture = invented.picture(job)
    photo = picture.photos[0]
    kept = picture.evidence_of(photo.evidence_id)
    assert invented.bench.evidence_bytes(kept.sha256) == SWIRLED
    assert (photo.panel, photo.moment, photo.clean, kept.size) == ("bonnet", "arrival", "dirty", len(SWIRLED))


def test_the_same_photo_again_is_said_and_kept_once(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(AddPhoto(job, SWIRLED, "one.jpg", panel="bonnet"))
    again = invented.bench.do(AddPhoto(job, SWIRLED, "copy.jpg", panel="bonnet"))
    assert (again.kinds, len(invented.picture(job).photos)) == (frozenset(), 1)
    assert "kept once" in again.note


def test_a_photo_taken_back_stays_where_another_job_shows_it(invented: InventedShop) -> None:
    one, two = invented.job(), invented.job()
    invented.bench.do(AddPhoto(one, SWIRLED, "one.jpg", panel="bonnet"))
    invented.bench.do(AddPhoto(two, SWIRLED, "one.jpg", panel="roof"))
    invented.bench.undo(one)
    assert invented.picture(one).photos == ()
    photo = invented.picture(two).photos[0]
    assert invented.picture(two).said(photo.evidence_id, "file_name") == "one.jpg"
    invented.bench.redo(one)
    assert len(invented.picture(one).photos) == 1
    assert check(invented.bench.store).troubles == ()


def test_what_is_no_photograph_is_refused_and_not_kept(invented: InventedShop) -> None:
    job = invented.job()
    with pytest.raises(BadFile):
        invented.bench.do(AddPhoto(job, b"PK\x03\x04 not a photo", "one.jpg"))
    with pytest.raises(BadInput, match="no panel “spoiler”"):
        invented.bench.do(AddPhoto(job, SWIRLED, "one.jpg", panel="spoiler"))
    with pytest.raises(BadInput, match="arrival, before, a trial, after, or of a mishap"):
        invented.bench.do(AddPhoto(job, SWIRLED, "one.jpg", moment="lunch"))
    assert [p for p in (invented.folder / "evidence").rglob("*") if p.is_file()] == []


def test_a_pair_is_one_before_and_one_after_of_the_same_panel(invented: InventedShop) -> None:
    job = invented.job()
    before = invented.bench.do(AddPhoto(job, SWIRLED, "one.jpg", panel="bonnet")).id
    after = invented.bench.do(AddPhoto(job, CLEAN, "two.jpg", panel="bonnet", moment="after")).id
    elsewhere = invented.bench.do(AddPhoto(job, CLEAN, "two.jpg", panel="roof", moment="after")).id
    with pytest.raises(BadInput, match="one from after"):
        invented.bench.do(PairPhotos(job, after, before))
    with pytest.raises(Refused, match="same panel"):
        invented.bench.do(PairPhotos(job, before, elsewhere))
    invented.bench.do(PairPhotos(job, before, after))
    assert [p.pair for p in invented.picture(job).photos] == ["", before, ""]
    invented.bench.do(StrikePhoto(job, elsewhere))
    assert [p.id for p in invented.picture(job).photos] == [before, after]


def test_a_workshop_without_a_name_has_no_key(invented: InventedShop) -> None:
    with pytest.raises(Refused, match="workshop's name"):
        open_key(invented.folder, invented.bench.shop(), "invented words", invented.clock)
    assert not key_path(invented.folder).exists()


def test_the_wrong_passphrase_is_said(invented: InventedShop, key: WorkshopKey) -> None:
    with pytest.raises(BadInput):
        open_key(invented.folder, invented.bench.shop(), "other words", invented.clock)
    again = open_key(invented.folder, invented.bench.shop(), "invented words", invented.clock)
    assert again.fingerprint == key.fingerprint


def test_a_closed_report_is_kept_with_its_hash_and_cannot_be_undone(invented: InventedShop, key: WorkshopKey) -> None:
    job = invented.job()
    invented.measured(job)
    head = invented.bench.store.head()[1]
    invented.bench.do(CloseReport(job, key))
    document = newest_document(invented.bench.store, job)
    content = invented.bench.evidence_bytes(document.sha256)
    found = verify_pdf(content, recorded_sha256=document.sha256, expected_fingerprint=document.key_fingerprint)
    assert found.outcome == Outcome.UNCHANGED
    assert (document.chain_head, document.replaces, document.key_fingerprint) == (head, "", key.fingerprint)
    with pytest.raises(Refused):
        invented.bench.undo(job)
    assert check(invented.bench.store, document.chain_head).head_found


def test_a_second_report_names_the_one_it_replaces(invented: InventedShop, key: WorkshopKey) -> None:
    job = invented.job()
    first = invented.bench.do(CloseReport(job, key)).id
    invented.clock.forward(minutes=5)
    invented.bench.do(CloseReport(job, key))
    assert [d.replaces for d in invented.picture(job).documents] == ["", first]


def test_a_report_that_cannot_be_sealed_leaves_nothing_behind(
    invented: InventedShop, key: WorkshopKey, monkeypatch: pytest.MonkeyPatch
) -> None:
    job = invented.job()

    def full(*_given: object, **_named: object) -> bytes:
        raise RecordTrouble("no space for it")

    monkeypatch.setattr("detailbench.seal.sealing.seal_pdf", full)
    head = invented.bench.store.head()
    with pytest.raises(RecordTrouble, match="no space"):
        invented.bench.do(CloseReport(job, key))
    assert invented.bench.store.head() == head
    assert invented.picture(job).documents == ()
    monkeypatch.undo()
    invented.bench.do(CloseReport(job, key))
    assert len(invented.picture(job).documents) == 1


def test_a_copy_goes_out_whole_and_never_over_a_file(
    invented: InventedShop, key: WorkshopKey, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    job = invented.job()
    invented.bench.do(CloseReport(job, key))
    document = newest_document(invented.bench.store, job)
    out = copy_out(invented.bench.store, document, tmp_path / "out.pdf")
    assert out.read_bytes() == invented.bench.evidence_bytes(document.sha256)
    with pytest.raises(RecordTrouble, match="is there already"):
        copy_out(invented.bench.store, document, out)

    def full(_number: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(documents.os, "fsync", full)
    with pytest.raises(RecordTrouble, match="nothing half-written was left"):
        copy_out(invented.bench.store, document, tmp_path / "full.pdf")
    assert sorted(p.name for p in tmp_path.glob("*.p*")) == ["out.pdf"]
