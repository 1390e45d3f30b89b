"""A folder where things get lost is told by what can be seen of it, and nothing is written there before a person says
so; the folder of an ordinary disk is no trouble."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from invented_shop import InventedShop

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import Refused
from detailbench.moves.bench import Bench
from detailbench.moves.shop import AddToShop
from detailbench.record import where_it_lies
from detailbench.record.where_it_lies import copies_beside, lock_holds, network_disk, worries

LAMP = AddToShop("lamp", {"name": "invented lamp"})


def mounts(tmp_path: Path, *lines: str) -> Path:
    file = tmp_path / "mounts"
    file.write_text("\n".join(lines) + "\n")
    return file


@pytest.mark.parametrize(
    ("kind", "told"),
    [
        ("nfs4", "nfs4"), ("cifs", "cifs"), ("fuse.invented-sync", "fuse.invented-sync"), ("9p", "9p"),
        ("ext4", ""), ("btrfs", ""), ("tmpfs", ""), ("fuseblk", ""), ("vfat", ""),
    ],
)  # fmt: skip
def test_the_kind_of_disk_tells_whether_it_is_this_computers(tmp_path: Path, kind: str, told: str) -> None:
    table = mounts(tmp_path, "/dev/invented / ext4 rw 0 0", f"far {tmp_path} {kind} rw 0 0")
    assert network_disk(tmp_path / "workshop", table) == told


def test_the_innermost_disk_counts_and_its_name_may_hold_spaces(tmp_path: Path) -> None:
    far = tmp_path / "far away"
    (far / "near").mkdir(parents=True)
    escaped = str(far).replace(" ", "\\040")
    table = mounts(tmp_path, f"x {escaped} cifs rw 0 0", f"y {escaped}/near ext4 rw 0 0", "broken line")
    assert network_disk(far / "workshop", table) == "cifs"
    assert network_disk(far / "near" / "workshop", table) == ""


def test_the_system_disk_is_never_called_far(tmp_path: Path) -> None:
    assert network_disk(tmp_path, mounts(tmp_path, "root / 9p rw 0 0")) == ""


def test_where_no_list_of_disks_can_be_read_nothing_is_claimed(tmp_path: Path) -> None:
    assert network_disk(tmp_path, tmp_path / "nowhere") == ""


@pytest.mark.parametrize(
    "name", ["workshop (1).sqlite", "workshop-copy.sqlite", "workshop (invented laptop).sqlite", "workshop.sqlite.1"]
)
def test_a_double_of_the_database_beside_it_is_seen(invented: InventedShop, name: str) -> None:
    (invented.folder / name).write_bytes(b"")
    assert copies_beside(invented.folder) == (name,)


@pytest.mark.parametrize(
    "name",
    ["workshop-before-schema-2.sqlite", "workshop.sqlite-journal", "writer.json", "backups.json", "notes.sqlite"],
)
def test_the_programs_own_files_are_no_doubles(invented: InventedShop, name: str) -> None:
    (invented.folder / name).write_bytes(b"")
    assert copies_beside(invented.folder) == ()


def test_an_ordinary_folder_gives_no_worry_and_its_lock_holds(invented: InventedShop) -> None:
    assert lock_holds(invented.folder)
    assert worries(invented.folder) == ()
    assert [p.name for p in invented.folder.iterdir() if p.name.endswith(".lock")] == ["writer.lock"]
    assert invented.bench.place_trouble == ""


def test_a_lock_that_does_not_lock_is_seen(invented: InventedShop, monkeypatch: pytest.MonkeyPatch) -> None:
    from filelock import SoftFileLock

    class Leaky(SoftFileLock):
        def _acquire(self) -> None:
            self._context.lock_file_fd = 0

        def _release(self) -> None:
            self._context.lock_file_fd = None

    monkeypatch.setattr(where_it_lies, "FileLock", Leaky)
    assert [w.kind for w in worries(invented.folder)] == ["lock"]


def test_nothing_is_written_before_a_person_has_accepted_the_place_once_and_it_is_noted(
    invented: InventedShop, clock: HandClock
) -> None:
    (invented.folder / "workshop (1).sqlite").write_bytes(b"")
    bench = invented.reopened()
    head = bench.store.head()
    with pytest.raises(
        Refused, match=r"Another copy .*workshop \(1\)\.sqlite.* The safe way: keep the workshop on a disk"
    ):
        bench.do(LAMP)
    assert bench.store.head() == head
    assert bench.accept_place().says == "working where the workshop lies was accepted"
    assert bench.do(LAMP).id
    setting = bench.shop().settings[-1]
    assert (json.loads(setting.value), setting.entered_by) == (["copies"], invented.person)
    bench = invented.reopened()
    assert bench.place_trouble == ""
    assert bench.do(LAMP).id


def test_who_only_reads_is_not_asked(invented: InventedShop, clock: HandClock) -> None:
    (invented.folder / "workshop (1).sqlite").write_bytes(b"")
    reader = Bench(invented.folder, clock, read_only=True)
    assert reader.place_trouble == ""
    reader.close()
