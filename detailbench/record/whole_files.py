"""Files written whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path
from uuid import uuid4


def write_over(target: Path, content: bytes) -> None:
    """Put ``content`` in the place of ``target``: all of it or, where the disk refuses (OSError), the old one stays."""
    part = target.with_name(f".{uuid4().hex}.part")
    try:
        with part.open("xb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        part.replace(target)
    except OSError:
        part.unlink(missing_ok=True)
        raise


def settle(folder: Path) -> None:
    """Ask the disk to keep what was renamed in a folder; systems that cannot be asked are left alone."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
