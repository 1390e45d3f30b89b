"""Forgetting an owner: the values and files go for good, the chain holds, and what cannot be reached is said."""

from __future__ import annotations

import hashlib
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from invented_shop import InventedShop
from photographed_samples import photo

from detailbench.basics.errors import RecordTrouble, Refused
from detailbench.moves.arrival import AddDamage, NewJob, SetOwner
from detailbench.moves.bench import Bench
from detailbench.moves.documents import CloseReport, open_key
from detailbench.moves.forgetting import ForgetOwner
from detailbench.moves.giving_out import give_job
from detailbench.moves.handover import RecordAcceptance, Sign
from detailbench.moves.intake import AddRemark, StrikeRemark
from detailbench.moves.parties import SetBearer
from detailbench.moves.photos import AddPhoto
from detailbench.moves.shop import SetSetting
from detailbench.record.checking import check
from detailbench.record.store import DATABASE
from detailbench.record.things import Photo, Signature

OWNER = "Quintessa Unmistakable"
PLATE, BONNET = photo(), photo(taken=None)
WORD = "word of Quintessa's sister"
SECRETS = (OWNER, "000 555 777", "INV UN 1", "roof <later> Unmistakably", "0.1234567", "plate-of-quintessa.jpg", WORD)


@pytest.fixture
def known(invented: InventedShop) -> tuple[InventedShop, str]:
    """A job full of what names its owner, with a closed document and two photographs, one of the plate."""
    do = invented.bench.do
    do(SetSetting("shop_name", "Invented Bay"))
    job = do(NewJob(plate="INV UN 1", owner={"name": "Quintessa Misspelt", "telephone": "000 555 777"})).scope
    owner = invented.picture(job).parties[0]
    with invented.bench.store.writing(invented.clock.now(), invented.person) as w:
        w.personal(owner.id, "name", OWNER)
        w.sign_off(job, "SetOwner", "owner noted", undoable=True)
    do(SetBearer(job, {"authority": WORD}))
    do(AddPhoto(job, PLATE, "plate-of-quintessa.jpg"))
    with invented.bench.store.writing(invented.clock.now(), invented.person) as w:
        w.change(w.every(Photo, job_id=job)[0], shows="plate")
        w.sign_off(job, "CorrectPhoto", "photo corrected", undoable=True)
    do(AddPhoto(job, BONNET, "bonnet.jpg", panel="bonnet"))
    do(RecordAcceptance(job, "with_remarks", "roof <later> Unmistakably"))
    do(Sign(job, "owner", name=OWNER, strokes=[[(0.1234567, 0.2), (0.3, 0.4)]]))
    do(Sign(job, "workshop", name="Ana Invented", strokes=[[(0.7654321, 0.2), (0.3, 0.4)]]))
    key = open_key(invented.folder, invented.bench.shop(), "invented words", invented.clock)
    do(CloseReport(job, key))
    return invented, job


def bytes_below(folder: Path) -> bytes:
    return b"\n".join(p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file())


def test_before_forgetting_every_secret_lies_in_the_files(known: tuple[InventedShop, str]) -> None:
    invented, _job = known
    held = bytes_below(invented.folder)
    assert [s for s in SECRETS if s.encode() not in held] == []


def test_no_byte_of_what_was_forgotten_stays_in_any_file_of_the_workshop(known: tuple[InventedShop, str]) -> None:
    invented, job = known
    document = invented.picture(job).documents[0]
    plate = invented.picture(job).photos[0]
    shown = invented.picture(job).evidence_of(plate.evidence_id).sha256
    invented.bench.do(ForgetOwner(job))
    invented.bench.close()
    held = bytes_below(invented.folder)
    assert [s for s in (*SECRETS, "Quintessa Misspelt") if s.encode() in held] == []
    assert not invented.bench.store.files.has(document.sha256)
    assert not invented.bench.store.files.has(shown)
    with closing(sqlite3.connect(invented.folder / DATABASE)) as raw:
        assert raw.execute("SELECT count(*) FROM personal WHERE salt IS NOT NULL AND value IS NULL").fetchone() == (0,)


def test_the_chain_holds_and_the_check_counts_what_was_forgotten(known: tuple[InventedShop, str]) -> None:
    invented, job = known
    head = invented.bench.store.head()[1]
    done = invented.bench.do(ForgetOwner(job))
    found = check(invented.reopened().store, head)
    assert found.troubles == ()
    assert found.head_found is True
    (forgetting,) = invented.picture(job).forgettings
    # name twice, telephone, on whose word, plate, two file names, remarks, the signer's name and strokes; and as files
    # the report and the plate
    assert (forgetting.values_gone, forgetting.files_gone) == (10, 2)
    assert found.notes == ("10 values and 2 files were forgotten; their hashes stay, and the chain holds.",)
    assert done.note.startswith("Deleted: values 10, files 2.")


def test_what_is_the_workshops_own_stays(known: tuple[InventedShop, str]) -> None:
    invented, job = known
    invented.bench.do(ForgetOwner(job))
    picture = invented.picture(job)
    own = next(s for s in picture.signatures if s.role == "workshop")
    assert picture.said(own.id, "name") == "Ana Invented"
    assert "0.7654321" in picture.said(own.id, "strokes")
    bonnet = next(p for p in picture.photos if p.panel == "bonnet")
    assert invented.bench.evidence_bytes(picture.evidence_of(bonnet.evidence_id).sha256) == BONNET
    assert (len(picture.documents), len(picture.signatures)) == (1, 2)


def test_a_forgotten_document_says_so_when_it_is_asked_for(known: tuple[InventedShop, str]) -> None:
    invented, job = known
    invented.bench.do(ForgetOwner(job))
    with pytest.raises(RecordTrouble, match="was forgotten with its owner's data; only its hash stays"):
        invented.bench.evidence_bytes(invented.picture(job).documents[0].sha256)


def test_it_cannot_be_taken_back_and_what_came_before_neither(known: tuple[InventedShop, str]) -> None:
    invented, job = known
    invented.bench.do(ForgetOwner(job))
    with pytest.raises(Refused, match="nothing here that can be taken back"):
        invented.bench.undo(job)
    assert all(
        invented.picture(job).said(s.id, "strokes") == "" for s in invented.picture(job).signatures if s.role == "owner"
    )


def test_forgetting_twice_is_said(known: tuple[InventedShop, str]) -> None:
    invented, job = known
    invented.bench.do(ForgetOwner(job))
    with pytest.raises(Refused, match="nothing left here to forget"):
        invented.bench.do(ForgetOwner(job))


def test_all_jobs_of_the_car_are_forgotten_unless_only_this_one_is_meant(invented: InventedShop) -> None:
    one = invented.job("First Unmistakable")
    car = invented.picture(one).car.id
    two = invented.bench.do(NewJob(car_id=car, owner={"name": "Second Unmistakable"})).scope
    invented.bench.do(ForgetOwner(two, only_this_job=True))
    picture = invented.picture(one)
    assert picture.said(picture.parties[0].id, "name") == "First Unmistakable"
    assert picture.said(car, "plate") == "INV 01"
    invented.bench.do(ForgetOwner(two))
    picture = invented.picture(one)
    assert (picture.said(picture.parties[0].id, "name"), picture.said(car, "plate")) == ("", "")
    with pytest.raises(Refused, match="something entered since rests on it"):
        invented.bench.undo(one)
    assert check(invented.bench.store).troubles == ()


def test_the_same_photograph_may_be_added_again_after_it_was_forgotten(known: tuple[InventedShop, str]) -> None:
    invented, job = known
    invented.bench.do(ForgetOwner(job))
    other = invented.job()
    invented.bench.do(AddPhoto(other, PLATE, "again.jpg", panel="bonnet"))
    picture = invented.reopened().job(other)
    assert invented.bench.evidence_bytes(picture.evidence_of(picture.photos[0].evidence_id).sha256) == PLATE
    assert check(invented.bench.store).troubles == ()


def test_the_copy_kept_when_an_older_workshop_was_brought_up_goes_too(known: tuple[InventedShop, str]) -> None:
    invented, job = known
    copy = invented.folder / "workshop-before-schema-2.sqlite"
    copy.write_bytes(OWNER.encode())
    invented.bench.do(ForgetOwner(job))
    assert not copy.exists()


def test_a_signature_of_the_owner_stays_as_the_fact_that_one_signed(known: tuple[InventedShop, str]) -> None:
    invented, job = known
    invented.bench.do(ForgetOwner(job))
    owner = [s for s in invented.picture(job).signatures if s.role == "owner"]
    assert [type(s) for s in owner] == [Signature]
    assert owner[0].way == "drawn"


# a job's file that left the shop
def test_forgetting_names_the_job_files_written_out_that_it_cannot_reach(known: tuple[InventedShop, str]) -> None:
    invented, job = known
    folder = invented.folder.parent
    other = invented.job()
    for name, of, personal in (("one", job, True), ("bare", job, False), ("other", other, True)):
        invented.clock.forward(hours=24)
        give_job(invented.bench, of, folder / f"{name}.json", personal=personal)
    noted = [(f.of_job, f.personal) for f in invented.bench.shop().job_files_out]
    assert noted == [(job, True), (job, False), (other, True)]
    written = hashlib.sha256((folder / "one.json").read_bytes()).hexdigest()
    assert invented.bench.shop().job_files_out[0].sha256 == written
    note = invented.bench.do(ForgetOwner(job)).note
    assert f"Job files written out with it: 1, on 2031-03-11 ({written[:12]}…)." in note
    bare = invented.job()
    give_job(invented.bench, bare, folder / "bare2.json", personal=False)
    assert "Job files written out" not in invented.bench.do(ForgetOwner(bare)).note


def test_a_file_that_left_is_not_taken_back_and_takes_nothing_from_the_job(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(AddDamage(job, "a dent"))
    give_job(invented.bench, job, invented.folder.parent / "one.json")
    with pytest.raises(Refused, match="nothing here that can be taken back"):
        invented.bench.undo()
    assert invented.bench.undo(job).says == "taken back: existing damage noted"
    assert len(invented.bench.shop().job_files_out) == 1


def test_where_nothing_may_be_written_the_file_is_and_that_it_is_not_noted_is_said(invented: InventedShop) -> None:
    job = invented.job()
    reader = Bench(invented.folder, invented.clock, read_only=True)
    given = give_job(reader, job, invented.folder.parent / "one.json")
    reader.close()
    assert given.file.exists()
    assert "It is not noted in the workshop" in given.not_noted
    assert invented.bench.shop().job_files_out == ()


# what was forgotten does not come back
def test_doing_again_after_the_owner_was_forgotten_says_what_did_not_come_back(invented: InventedShop) -> None:
    one = invented.job()
    car = invented.picture(one).car.id
    two = invented.bench.do(NewJob(car_id=car)).scope
    invented.bench.do(SetOwner(two, {"name": "Second Unmistakable", "telephone": "000 7"}))
    invented.bench.undo(two)
    invented.clock.forward(hours=24)
    invented.bench.do(ForgetOwner(one))
    again = invented.bench.redo(two)
    assert again.says == "done again: owner noted; what was forgotten since is not back"
    assert again.note == (
        "The owner was forgotten on 2031-03-11: values 2, files 0 are gone for good and did not come back."
    )
    assert invented.bench.entries(two)[-1].says == again.says
    picture = invented.picture(two)
    assert [picture.said(p.id, "name") for p in picture.parties] == [""]
    assert check(invented.bench.store).troubles == ()


def test_taking_back_a_strike_says_so_too(invented: InventedShop) -> None:
    one = invented.job()
    car = invented.picture(one).car.id
    two = invented.bench.do(NewJob(car_id=car)).scope
    remark = invented.bench.do(AddRemark(two, "Unmistakable words")).id
    invented.bench.do(StrikeRemark(two, remark))
    invented.bench.do(ForgetOwner(one))
    back = invented.bench.undo(two)
    assert back.says == "taken back: remark struck out; what was forgotten since is not back"
    assert "values 1, files 0" in back.note
    assert [invented.picture(two).said(r.id, "remarks") for r in invented.picture(two).remarks] == [""]


def test_where_nothing_was_forgotten_nothing_is_said(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(SetOwner(job, {"name": "Another Invented"}))
    invented.bench.undo(job)
    again = invented.bench.redo(job)
    assert (again.says, again.note) == ("done again: owner noted", "")
