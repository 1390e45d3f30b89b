"""Remembering the passphrase in the system's own key store, where there is one. Never in a plain file."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from keyring.backend import KeyringBackend

SERVICE = "detailbench"

# Stores that belong to the system and keep what they hold encrypted. Everything else, such as the plain-text
# files some packages offer, counts as no store at all.
_TRUSTED = (
    "keyring.backends.SecretService",
    "keyring.backends.libsecret",
    "keyring.backends.kwallet",
    "keyring.backends.macOS",
    "keyring.backends.Windows",
)


class Memory:
    """The system's key store, or none. Every question to it may fail; then the passphrase is asked for again."""

    def __init__(self, store: KeyringBackend | None) -> None:
        self._store = store

    @property
    def there(self) -> bool:
        """Whether a passphrase can be remembered here at all."""
        return self._store is not None

    def remember(self, workshop_id: str, passphrase: str) -> bool:
        """Keep the passphrase; False when there is no store or it would not take it."""
        from keyring.errors import KeyringError

        if self._store is None:
            return False
        try:
            self._store.set_password(SERVICE, workshop_id, passphrase)
        except (KeyringError, OSError, RuntimeError):
            return False
        return True

    def recall(self, workshop_id: str) -> str | None:
        """The passphrase kept, or None."""
        from keyring.errors import KeyringError

        if self._store is None:
            return None
        try:
            return self._store.get_password(SERVICE, workshop_id)
        except (KeyringError, OSError, RuntimeError):
            return None

    def forget(self, workshop_id: str) -> bool:
        """Forget it; True when nothing is kept any more."""
        from keyring.errors import KeyringError, PasswordDeleteError

        if self._store is None:
            return True
        try:
            self._store.delete_password(SERVICE, workshop_id)
        except PasswordDeleteError:
            return self.recall(workshop_id) is None
        except (KeyringError, OSError, RuntimeError):
            return False
        return True


def system_memory() -> Memory:
    """The system's own encrypted store if one is there and trusted, else a memory that keeps nothing."""
    import keyring
    from keyring.errors import KeyringError

    try:
        return Memory(trusted_store(keyring.get_keyring()))
    except (KeyringError, OSError, RuntimeError):
        return Memory(None)


def trusted_store(found: KeyringBackend) -> KeyringBackend | None:
    """``found``, or the first trusted one of the several it stands for; None when none is trusted."""
    several: Sequence[KeyringBackend] = getattr(found, "backends", ())
    for store in (found, *several):
        if type(store).__module__ in _TRUSTED:
            return store
    return None
