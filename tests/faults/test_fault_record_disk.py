"""A disk that refuses: one sentence, and what was there before is unharmed."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from invented_shop import InventedShop

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import NotSaved, RecordTrouble
from detailbench.moves.arrival import AddDamage, NewJob
from detailbench.moves.bench import Bench
from detailbench.moves.documents import CloseReport, open_key
from detailbench.moves.shop import SetSetting
from detailbench.record.backing_up import back_up, backups_in, make_backup_folder
from detailbench.record.checking import check
from detailbench.record.store import DATABASE

resource = pytest.importorskip("resource", reason="needs a limit the system sets on how much may be written")


@contextmanager
def no_file_larger_than(size: int) -> Iterator[None]:
    """The system itself refuses to write a file beyond ``size``, as a full disk does."""
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, before[1]))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)


def test_a_full_disk_is_said_and_the_old_state_is_intact(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(AddDamage(job, "before"))
    head, size = invented.bench.store.head(), (invented.folder / DATABASE).stat().st_size
    with no_file_larger_than(size), pytest.raises(RecordTrouble, match=r"not saved.*unharmed; free some space"):
        invented.bench.do(AddDamage(job, "x" * 100_000))
    assert invented.bench.store.head() == head
    assert [d.words for d in invented.picture(job).damages] == ["before"]
    assert check(invented.bench.store).troubles == ()
    invented.bench.do(AddDamage(job, "after"))
    assert [d.words for d in invented.reopened().job(job).damages] == ["before", "after"]


def test_a_full_disk_while_a_file_is_kept_leaves_neither_file_nor_row(invented: InventedShop) -> None:
    job = invented.job()
    head = invented.bench.store.head()
    store = invented.bench.store
    with (
        no_file_larger_than(200_000),
        pytest.raises(RecordTrouble, match="free some space"),
        store.writing(invented.clock.now(), invented.person) as w,
    ):
        w.keep_file(b"\x07" * 400_000, "image/png")
    assert [p for p in (invented.folder / "evidence").rglob("*") if p.is_file()] == []
    assert store.head() == head
    assert invented.picture(job).photos == ()


def test_a_workshop_that_cannot_be_made_for_lack_of_space_is_said_and_can_be_made_later(
    tmp_path: Path, clock: HandClock
) -> None:
    with no_file_larger_than(20_000), pytest.raises(RecordTrouble):
        Bench(tmp_path / "new", clock)
    bench = Bench(tmp_path / "new", clock)
    assert bench.read_only is None
    assert bench.do(NewJob()).scope
    bench.close()


def test_a_workshop_damaged_while_it_is_open_is_said(invented: InventedShop) -> None:
    file = invented.folder / DATABASE
    file.write_bytes(b"\x07" * file.stat().st_size)
    with pytest.raises(RecordTrouble, match="cannot be read"):
        invented.bench.store.shop()
    with pytest.raises(RecordTrouble, match="not saved"):
        invented.bench.do(NewJob())
    with pytest.raises(RecordTrouble, match="not a workshop this program can read"):
        invented.reopened()


@contextmanager
def someone_without_rights() -> Iterator[None]:
    """The superuser may write everything, so it steps down for this; anyone else is bound by the modes anyway."""
    superuser = os.geteuid() == 0
    if superuser:
        os.seteuid(65534)
    try:
        yield
    finally:
        if superuser:
            os.seteuid(0)


@pytest.fixture
def readable_by_all(tmp_path: Path) -> Iterator[Path]:
    """The folder above is opened to be looked into, for whoever the test steps down to."""
    opened = []
    for folder in (tmp_path, *tmp_path.parents):
        if folder.stat().st_uid == os.geteuid() and folder.stat().st_mode & 0o005 != 0o005:
            opened.append((folder, folder.stat().st_mode))
            folder.chmod(0o755)
    yield tmp_path
    for folder, mode in opened:
        folder.chmod(mode)


def test_a_folder_that_cannot_be_written_is_opened_for_reading_and_said(
    invented: InventedShop, readable_by_all: Path
) -> None:
    job = invented.job()
    invented.bench.close()
    for path in (*invented.folder.rglob("*"), invented.folder):
        path.chmod(0o555 if path.is_dir() else 0o444)
    with someone_without_rights():
        bench = Bench(invented.folder, invented.clock)
        assert bench.read_only == "The folder cannot be written (Permission denied); opened for reading only."
        assert bench.job(job).job.number == "2031-001"
        with pytest.raises(RecordTrouble, match="cannot be written"):
            bench.do(AddDamage(job, "chip"))
        bench.close()
    invented.folder.chmod(0o755)


def test_a_folder_that_cannot_be_made_is_said(readable_by_all: Path, clock: HandClock) -> None:
    closed = readable_by_all / "closed"
    closed.mkdir(mode=0o555)
    with someone_without_rights(), pytest.raises(RecordTrouble, match=r"cannot be made or reached \(Permission denied"):
        Bench(closed / "workshop", clock)


def test_a_full_disk_while_a_document_is_closed_leaves_the_job_as_it_was_and_closing_again_works(
    invented: InventedShop,
) -> None:
    invented.bench.do(SetSetting("shop_name", "Invented Bay"))
    job = invented.job()
    invented.measured(job)
    key = open_key(invented.folder, invented.bench.shop(), "invented words", invented.clock)
    head = invented.bench.store.head()
    with (
        no_file_larger_than(9_000),
        pytest.raises(
            NotSaved, match=r"could not be kept .* unharmed; free some space on the disk of .*workshop and try again"
        ),
    ):
        invented.bench.do(CloseReport(job, key))
    assert invented.bench.store.head() == head
    assert invented.picture(job).documents == ()
    assert [p for p in (invented.folder / "evidence").rglob("*") if p.is_file()] == []
    invented.bench.do(CloseReport(job, key))  # the same key, the same move, once more
    assert len(invented.picture(job).documents) == 1
    assert check(invented.bench.store).troubles == ()


def test_a_full_backup_disk_leaves_no_half_backup_and_the_next_one_works(
    invented: InventedShop, tmp_path: Path
) -> None:
    make_backup_folder(tmp_path / "stick")
    back_up(invented.folder, tmp_path / "stick", invented.clock.now())
    head = invented.bench.store.head()
    with no_file_larger_than(20_000), pytest.raises(RecordTrouble, match=r"No backup was made .* are unharmed\."):
        back_up(invented.folder, tmp_path / "stick", invented.clock.now())
    assert invented.bench.store.head() == head
    assert len(backups_in(tmp_path / "stick")) == 1
    assert list((tmp_path / "stick").glob(".*.part")) == []
    back_up(invented.folder, tmp_path / "stick", invented.clock.now())
    assert len(backups_in(tmp_path / "stick")) == 2


def test_a_disk_pulled_out_while_the_workshop_is_open_is_said_and_the_entry_can_be_made_once_it_is_back(
    invented: InventedShop, tmp_path: Path
) -> None:
    job = invented.job()
    entry = AddDamage(job, "an invented dent")
    invented.folder.rename(tmp_path / "pulled out")
    with pytest.raises(NotSaved, match=r"This was not saved: .* check the folder, then do it again"):
        invented.bench.do(entry)
    (tmp_path / "pulled out").rename(invented.folder)
    invented.bench.do(entry)
    assert [d.words for d in invented.reopened().job(job).damages] == ["an invented dent"]
    assert check(invented.bench.store).troubles == ()


def test_a_disk_gone_for_good_is_said_each_time_and_nothing_is_called_saved(invented: InventedShop) -> None:
    job = invented.job()
    shutil.rmtree(invented.folder)
    for _try in range(2):
        with pytest.raises(NotSaved):
            invented.bench.do(AddDamage(job, "an invented dent"))
    assert not invented.folder.exists()


def test_a_kept_file_that_was_spoilt_is_written_anew_when_it_comes_again(invented: InventedShop) -> None:
    store = invented.bench.store
    with store.writing(invented.clock.now(), invented.person) as w:
        kept = w.keep_file(b"invented picture", "image/png")
        w.sign_off("shop", "KeepFile", "a file kept", undoable=True)
    store.files.path(kept.sha256).write_bytes(b"spoilt")
    assert check(store).troubles != ()
    with store.writing(invented.clock.now(), invented.person) as w:
        w.keep_file(b"invented picture", "image/png")
    assert store.files.read(kept.sha256) == b"invented picture"
    assert check(store).troubles == ()
