"""A key whose passphrase is forgotten is set aside and another made: both fingerprints stay known."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from uuid import uuid4

from detailbench.basics.clock import Clock
from detailbench.basics.errors import RecordTrouble
from detailbench.basics.texts import _
from detailbench.seal.keys import WorkshopKey, make_key, read_fingerprint, set_aside


@dataclass(frozen=True)
class Renewed:
    """``old``: the fingerprint of the key set aside, which lies at ``kept_at``; ``key``: the new one, opened."""

    old: str
    kept_at: Path
    key: WorkshopKey

    @property
    def says(self) -> str:
        return _(
            "A new key was made. Fingerprint now: {new}. Documents closed before carry the old one: {old}; they verify "
            "against it as before. Tell whoever compares fingerprints."
        ).format(new=self.key.fingerprint, old=self.old)


def new_key(path: Path, workshop: str, passphrase: str, clock: Clock) -> Renewed:
    """Make a new key in the place of the one at ``path``, which is set aside. Raises BadInput (name, passphrase),
    RecordTrouble; the old key is where it was then."""
    old = read_fingerprint(path)
    beside = path.with_name(f".{uuid4().hex}.pem")
    key = make_key(beside, workshop, passphrase, clock)
    try:
        kept_at = set_aside(path)
        beside.rename(path)
    except OSError as error:
        raise RecordTrouble(
            _("The new key could not be put in its place ({why}).").format(why=error.strerror)
        ) from error
    finally:
        beside.unlink(missing_ok=True)
    return Renewed(old, kept_at, key)
