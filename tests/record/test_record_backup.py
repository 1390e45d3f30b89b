"""Backup and restore: whole, several kept, nothing written over, and what comes back is what was there."""

from __future__ import annotations

import json
import shutil
from datetime import timedelta
from pathlib import Path

import pytest
from invented_shop import InventedShop
from photographed_samples import photo

from detailbench.basics.errors import RecordTrouble
from detailbench.moves.bench import Bench
from detailbench.moves.documents import CloseReport, open_key
from detailbench.moves.photos import AddPhoto
from detailbench.moves.shop import AddToShop, SetSetting
from detailbench.record.backing_up import KEEP_NEWEST, back_up, backups_in, make_backup_folder
from detailbench.record.backups_made import backup_folder, backups_made, set_backup_folder
from detailbench.record.checking import check
from detailbench.record.restoring import restore
from detailbench.record.store import DATABASE

LAMP = AddToShop("lamp", {"name": "invented lamp"})


@pytest.fixture
def to(tmp_path: Path) -> Path:
    """A folder that takes backups."""
    folder = tmp_path / "stick"
    make_backup_folder(folder)
    return folder


@pytest.fixture
def worked(invented: InventedShop) -> tuple[InventedShop, str]:
    """A measured job with photographs and a closed document."""
    invented.bench.do(SetSetting("shop_name", "Invented Bay"))
    job = invented.job()
    invented.measured(job)
    invented.bench.do(AddPhoto(job, photo(), "one.jpg", panel="bonnet"))
    key = open_key(invented.folder, invented.bench.shop(), "invented words", invented.clock)
    invented.bench.do(CloseReport(job, key))
    return invented, job


def facts(bench: Bench, job: str) -> tuple[object, ...]:
    """Everything a job and its shop say, and every file behind it."""
    picture = bench.job(job)
    files = [bench.evidence_bytes(e.sha256) for e in picture.shop.evidence]
    return picture, files, bench.entries(job), bench.entries("shop"), bench.standing(job)


def test_the_drill_back_up_wreck_restore_check(worked: tuple[InventedShop, str], to: Path, tmp_path: Path) -> None:
    invented, job = worked
    before = facts(invented.bench, job)
    key = (invented.folder / "key" / "workshop.pem").read_bytes()
    made = back_up(invented.folder, to, invented.clock.now())
    head = invented.bench.store.head()
    invented.bench.close()
    shutil.rmtree(invented.folder)
    found = restore(to, tmp_path / "again", invented.clock.now(), head=made.head)
    assert found.check.troubles == ()
    assert (found.check.head_found, (found.check.entries, found.check.head)) == (True, head)
    bench = Bench(tmp_path / "again", invented.clock)
    assert facts(bench, job) == before
    assert (bench.folder / "key" / "workshop.pem").read_bytes() == key
    assert bench.read_only is None
    assert bench.do(LAMP).id
    bench.close()


def test_the_backup_says_when_where_and_how_far_and_changes_nothing_in_the_record(
    worked: tuple[InventedShop, str], to: Path
) -> None:
    invented, _job = worked
    head = invented.bench.store.head()
    made = back_up(invented.folder, to, invented.clock.now())
    assert invented.bench.store.head() == head
    assert backups_made(invented.folder) == (made,)
    assert (made.entries, made.head) == head
    assert made.at == invented.clock.now().isoformat()
    assert Path(made.folder).parent == to


def test_files_already_in_the_backup_folder_are_not_copied_again(worked: tuple[InventedShop, str], to: Path) -> None:
    invented, job = worked
    back_up(invented.folder, to, invented.clock.now())
    there = {p: p.stat().st_mtime_ns for p in (to / "evidence").rglob("*") if p.is_file()}
    invented.bench.do(AddPhoto(job, photo(taken=None), "two.jpg", panel="roof"))
    back_up(invented.folder, to, invented.clock.now())
    after = {p: p.stat().st_mtime_ns for p in (to / "evidence").rglob("*") if p.is_file()}
    assert len(after) == len(there) + 1
    assert {p: after[p] for p in there} == there


def test_several_are_kept_the_newest_and_the_last_of_each_month(invented: InventedShop, to: Path) -> None:
    at = invented.clock.now()
    for n in range(KEEP_NEWEST + 30):
        back_up(invented.folder, to, at + timedelta(days=n))
    kept = [f["made_at"][:10] for _d, f in backups_in(to)]
    days = [(at + timedelta(days=n)).date().isoformat() for n in range(KEEP_NEWEST + 30)]
    assert kept == [d for d in days[:-KEEP_NEWEST] if d == "2031-03-31"] + days[-KEEP_NEWEST:]


def test_two_backups_in_the_same_second_stand_side_by_side(invented: InventedShop, to: Path) -> None:
    one, two = (back_up(invented.folder, to, invented.clock.now()).folder for _n in range(2))
    assert one != two
    assert len(backups_in(to)) == 2


def test_a_backup_disk_that_is_not_there_is_one_sentence(invented: InventedShop, tmp_path: Path) -> None:
    (tmp_path / "empty place").mkdir()
    for folder in (tmp_path / "nowhere", tmp_path / "empty place"):
        with pytest.raises(RecordTrouble, match=r"No backup was made: .* is not there\. Plug the backup disk in"):
            back_up(invented.folder, folder, invented.clock.now())
    assert list((tmp_path / "empty place").iterdir()) == []
    assert invented.bench.do(LAMP).id


def test_restoring_names_what_is_missing_and_refuses(
    worked: tuple[InventedShop, str], to: Path, tmp_path: Path
) -> None:
    invented, job = worked
    sha256 = invented.picture(job).evidence_of(invented.picture(job).photos[0].evidence_id).sha256
    back_up(invented.folder, to, invented.clock.now())
    (to / "evidence" / sha256[:2] / sha256).unlink()
    with pytest.raises(RecordTrouble, match=f"1 kept files are missing or spoilt in the backup: {sha256[:12]}"):
        restore(to, tmp_path / "again", invented.clock.now())
    assert not (tmp_path / "again").exists()
    found = restore(to, tmp_path / "again", invented.clock.now(), even_so=True)
    assert found.missing == (sha256,)
    assert [t for t in found.check.troubles if sha256[:12] not in t] == []


def test_a_spoilt_file_in_the_backup_counts_as_missing(
    worked: tuple[InventedShop, str], to: Path, tmp_path: Path
) -> None:
    invented, _job = worked
    back_up(invented.folder, to, invented.clock.now())
    one = next(p for p in (to / "evidence").rglob("*") if p.is_file())
    one.write_bytes(b"spoilt")
    with pytest.raises(RecordTrouble, match=one.name[:12]):
        restore(to, tmp_path / "again", invented.clock.now())


def test_a_file_missing_in_the_workshop_itself_is_named_and_the_rest_is_backed_up(
    worked: tuple[InventedShop, str], to: Path
) -> None:
    invented, _job = worked
    one = next(p for p in (invented.folder / "evidence").rglob("*") if p.is_file())
    one.unlink()
    assert back_up(invented.folder, to, invented.clock.now()).missing == (one.name,)
    assert len(backups_in(to)) == 1


@pytest.mark.parametrize("what", ["folder", "empty folder", "file"])
def test_nothing_is_written_over(invented: InventedShop, to: Path, tmp_path: Path, what: str) -> None:
    back_up(invented.folder, to, invented.clock.now())
    target = tmp_path / "again"
    if what == "file":
        target.write_bytes(b"mine")
    else:
        target.mkdir()
    if what == "folder":
        (target / "mine").write_bytes(b"mine")
    with pytest.raises(RecordTrouble, match="is there already; name a new folder"):
        restore(to, target, invented.clock.now())
    assert target.is_file() == (what == "file")
    assert what != "folder" or (target / "mine").read_bytes() == b"mine"


def test_a_changed_database_in_the_backup_is_not_restored(invented: InventedShop, to: Path, tmp_path: Path) -> None:
    made = back_up(invented.folder, to, invented.clock.now())
    file = Path(made.folder) / DATABASE
    content = bytearray(file.read_bytes())
    content[len(content) // 2] ^= 1
    file.write_bytes(content)
    with pytest.raises(RecordTrouble, match="was changed since the backup was made"):
        restore(to, tmp_path / "again", invented.clock.now())
    assert sorted(p.name for p in tmp_path.iterdir()) == ["stick", "workshop"]


def test_a_head_that_is_not_in_the_backup_stops_the_restoring(invented: InventedShop, to: Path, tmp_path: Path) -> None:
    back_up(invented.folder, to, invented.clock.now())
    invented.bench.do(LAMP)
    with pytest.raises(RecordTrouble, match="tail was cut"):
        restore(to, tmp_path / "again", invented.clock.now(), head=invented.bench.store.head()[1])
    assert not (tmp_path / "again").exists()


def test_backups_of_two_workshops_in_one_folder_are_told_apart(
    invented: InventedShop, to: Path, tmp_path: Path
) -> None:
    other = Bench(tmp_path / "other", invented.clock)
    other.do(LAMP)
    back_up(other.folder, to, invented.clock.now())
    made = back_up(invented.folder, to, invented.clock.now())
    with pytest.raises(RecordTrouble, match="backups of 2 workshops; name one of"):
        restore(to, tmp_path / "again", invented.clock.now())
    restore(Path(made.folder), tmp_path / "again", invented.clock.now())
    bench = Bench(tmp_path / "again", invented.clock)
    assert bench.store.head() == invented.bench.store.head()
    bench.close()
    other.close()


def test_a_forgotten_file_is_not_backed_up_again_and_restoring_does_not_miss_it(
    worked: tuple[InventedShop, str], to: Path, tmp_path: Path
) -> None:
    from detailbench.moves.forgetting import ForgetOwner

    invented, job = worked
    back_up(invented.folder, to, invented.clock.now())
    done = invented.bench.do(ForgetOwner(job))
    assert f"Not reached, still holding it: backups 1, in {backups_made(invented.folder)[0].folder}" in done.note
    second = make_second(to)
    made = back_up(invented.folder, second, invented.clock.now())
    found = restore(Path(made.folder), tmp_path / "again", invented.clock.now())
    bench = Bench(tmp_path / "again", invented.clock)
    assert found.check.troubles == check(bench.store).troubles == ()
    with pytest.raises(RecordTrouble, match="forgotten with its owner's data"):
        bench.evidence_bytes(bench.job(job).documents[0].sha256)
    bench.close()


def make_second(to: Path) -> Path:
    folder = to.with_name("second stick")
    make_backup_folder(folder)
    return folder


def test_the_backup_folder_is_this_computers_and_what_another_wrote_there_stays(invented: InventedShop) -> None:
    assert backup_folder(invented.folder) is None
    file = invented.folder / "backups.json"
    file.write_text(json.dumps({"folders": {"another computer": "/elsewhere"}}))
    set_backup_folder(invented.folder, Path("/invented/stick"))
    assert backup_folder(invented.folder) == Path("/invented/stick")
    assert json.loads(file.read_text())["folders"]["another computer"] == "/elsewhere"
    set_backup_folder(invented.folder, None)
    assert backup_folder(invented.folder) is None


@pytest.mark.parametrize("content", ["", "[]", "{", '{"folders": 3, "made": [1, {"at": 2}]}', '{"made": 3}', "\x00"])
def test_a_spoilt_list_of_backups_stops_nothing(invented: InventedShop, to: Path, content: str) -> None:
    (invented.folder / "backups.json").write_text(content)
    assert backup_folder(invented.folder) is None
    made = back_up(invented.folder, to, invented.clock.now())
    assert backups_made(invented.folder) == (made,)
