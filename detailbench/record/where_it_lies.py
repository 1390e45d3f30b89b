"""Does a workshop folder lie where things get lost? On a network disk, in a folder something copies to and fro, or
where a lock does not lock. Looked for by what can be seen of it, naming no product."""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Iterable
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from uuid import uuid4

from filelock import FileLock, Timeout

from detailbench.basics.texts import _

DATABASE = "workshop.sqlite"
OUR_COPIES = re.compile(r"workshop-before-schema-\d+\.sqlite")
NETWORK = frozenset({"nfs", "nfs3", "nfs4", "cifs", "smb", "smb2", "smb3", "smbfs", "ncpfs", "afs", "ceph", "glusterfs",
                     "lustre", "webdav", "davfs", "davfs2", "sshfs", "9p", "drvfs", "vboxsf", "vmhgfs"})  # fmt: skip
LOCAL_FUSE = frozenset({"fuseblk", "fuse.ntfs", "fuse.ntfs-3g", "fuse.exfat", "fuse.bindfs", "fuse.gocryptfs"})
REMOTE_DRIVE = 4  # GetDriveTypeW


@dataclass(frozen=True)
class Worry:
    """``kind``: network, copies or lock; ``sentence`` what was seen."""

    kind: str
    sentence: str


def worries(folder: Path) -> tuple[Worry, ...]:
    """What speaks against writing in this folder; empty where nothing was seen."""
    found = []
    disk = network_disk(folder)
    if disk:
        found.append(Worry("network", _("This workshop lies on a network or linked disk ({disk}).").format(disk=disk)))
    copies = copies_beside(folder)
    if copies:
        found.append(
            Worry(
                "copies",
                _(
                    "Another copy of the workshop lies beside it ({names}): something copies this folder to and fro."
                ).format(names=", ".join(copies)),
            )
        )
    if not lock_holds(folder):
        found.append(Worry("lock", _("A lock in this folder does not lock: two programs could write at once.")))
    return tuple(found)


def safe_way() -> str:
    """What to do instead."""
    return _(
        "Entries can be lost there. The safe way: keep the workshop on a disk of this computer and back it up to the "
        "other place."
    )


def network_disk(folder: Path, mounts: Path = Path("/proc/mounts")) -> str:
    """The kind of disk when it is not one of this computer's; empty for its own, and where it cannot be told."""
    if sys.platform == "win32":
        return _remote_drive(folder)
    try:
        lines = mounts.read_text("utf-8", "replace").splitlines()
    except OSError:
        return ""
    return _kind_of(folder, lines)


def _kind_of(folder: Path, lines: Iterable[str]) -> str:
    here = folder.resolve()
    best, kind = Path("/"), ""
    for line in lines:
        parts = line.split(" ")
        if len(parts) < 3:
            continue
        where = Path(re.sub(r"\\(\d{3})", lambda m: chr(int(m[1], 8)), parts[1]))
        if where != Path("/") and (where == here or where in here.parents) and len(where.parts) >= len(best.parts):
            best, kind = where, parts[2]
    fuse = kind.startswith("fuse") and kind not in LOCAL_FUSE
    return kind if kind in NETWORK or fuse else ""


def _remote_drive(folder: Path) -> str:
    if sys.platform == "win32":
        import ctypes

        root = folder.resolve().anchor
        if root.startswith("\\\\") or ctypes.windll.kernel32.GetDriveTypeW(root) == REMOTE_DRIVE:
            return root
    return ""


def copies_beside(folder: Path) -> tuple[str, ...]:
    """Databases in the folder that are neither ours nor the copies the program makes itself: two-way copying leaves
    such doubles, under whatever name, when both sides were changed."""
    try:
        names = sorted(p.name for p in folder.iterdir() if p.is_file())
    except OSError:
        return ()
    return tuple(
        name
        for name in names
        if name != DATABASE and name.startswith("workshop") and ".sqlite" in name and not _ours(name)
    )


def _ours(name: str) -> bool:
    beside = {f"{DATABASE}{end}" for end in ("-journal", "-wal", "-shm")}
    return name in beside or OUR_COPIES.fullmatch(name.removesuffix("-journal")) is not None


def lock_holds(folder: Path) -> bool:
    """True when a lock taken here keeps a second one out; true also where nothing can be written to try it."""
    probe = folder / f".{uuid4().hex}.lock"
    first, second = FileLock(str(probe), timeout=0), FileLock(str(probe), timeout=0)
    try:
        with first:
            try:
                with second:
                    return False
            except Timeout:
                return True
    except OSError:
        return True
    finally:
        with suppress(OSError):
            os.unlink(probe)
