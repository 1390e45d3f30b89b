"""Evidence files, kept under their SHA-256 inside the workshop folder; never changed once written."""

from __future__ import annotations

import hashlib
import os
import re
from pathlib import Path

from detailbench.basics.errors import NotSaved, RecordTrouble
from detailbench.basics.texts import _

IS_A_DIGEST = re.compile(r"[0-9a-f]{64}")


def digest_of(content: bytes) -> str:
    """SHA-256 of the bytes, in hex."""
    return hashlib.sha256(content).hexdigest()


class EvidenceStore:
    """The folder ``evidence``: two letters, then the hash."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def path(self, sha256: str) -> Path:
        """Where a file lies. Raises RecordTrouble for what is no hash: it could lead to a file outside."""
        if not IS_A_DIGEST.fullmatch(sha256):
            raise RecordTrouble(_("“{hash}” is no kept file's hash.").format(hash=sha256[:12]))
        return self.folder / sha256[:2] / sha256

    def _stone(self, sha256: str) -> Path:
        """What says that a file was forgotten, not lost."""
        return self.path(sha256).with_suffix(".forgotten")

    def keep(self, content: bytes) -> str:
        """Write ``content`` whole or not at all; returns its hash. Raises RecordTrouble when the disk refuses."""
        sha256 = digest_of(content)
        target = self.path(sha256)
        if target.is_file() and self.problem(sha256) is None:  # a spoilt one is written anew
            return sha256
        part = target.with_suffix(".part")
        try:
            target.parent.mkdir(parents=True, exist_ok=True)
            with part.open("wb") as file:
                file.write(content)
                file.flush()
                os.fsync(file.fileno())
            part.replace(target)
        except OSError as error:
            part.unlink(missing_ok=True)
            raise NotSaved(
                _(
                    "The file could not be kept ({cause}). What was there before is unharmed; free some space on the "
                    "disk of {folder} and try again."
                ).format(cause=error.strerror, folder=self.folder.parent)
            ) from error
        return sha256

    def has(self, sha256: str) -> bool:
        """True when a file lies there; not whether it is whole."""
        return IS_A_DIGEST.fullmatch(sha256) is not None and self.path(sha256).is_file()

    def drop(self, sha256: str) -> None:
        """Delete a kept file that was forgotten; what says so stays in its place. Raises RecordTrouble."""
        try:
            self._stone(sha256).parent.mkdir(parents=True, exist_ok=True)
            self._stone(sha256).touch()
            self.path(sha256).unlink(missing_ok=True)
        except OSError as error:
            raise RecordTrouble(
                _(
                    "The kept file {hash}… could not be deleted ({cause}); it goes when the workshop is next opened."
                ).format(hash=sha256[:12], cause=error.strerror)
            ) from error

    def read(self, sha256: str) -> bytes:
        """The bytes. Raises RecordTrouble when the file is missing or no longer what it was."""
        try:
            content = self.path(sha256).read_bytes()
        except OSError as error:
            if self._stone(sha256).is_file():
                raise RecordTrouble(
                    _("The file {hash}… was forgotten with its owner's data; only its hash stays.").format(
                        hash=sha256[:12]
                    )
                ) from error
            raise RecordTrouble(
                _("The kept file {hash}… is missing from the workshop folder.").format(hash=sha256[:12])
            ) from error
        if digest_of(content) != sha256:
            raise RecordTrouble(_("The kept file {hash}… has been changed since it was kept.").format(hash=sha256[:12]))
        return content

    def problem(self, sha256: str) -> str | None:
        """A sentence if the file is missing or changed, else None."""
        try:
            self.read(sha256)
        except RecordTrouble as error:
            return str(error)
        return None
