"""The passphrase is remembered only in a store of the system that encrypts, and a failing store only means asking."""

from __future__ import annotations

import pytest
from keyring.backend import KeyringBackend
from keyring.backends.chainer import ChainerBackend
from keyring.backends.fail import Keyring as NoStore
from keyring.backends.null import Keyring as NullStore
from keyring.backends.SecretService import Keyring as SystemStore
from keyring.errors import KeyringError, KeyringLocked, PasswordDeleteError

from detailbench.seal.remembering import Memory, trusted_store


class InMemory(KeyringBackend):
    """A store that works."""

    priority = 1

    def __init__(self) -> None:
        self.kept: dict[tuple[str, str], str] = {}

    def get_password(self, service: str, username: str) -> str | None:
        return self.kept.get((service, username))

    def set_password(self, service: str, username: str, password: str) -> None:
        self.kept[service, username] = password

    def delete_password(self, service: str, username: str) -> None:
        if (service, username) not in self.kept:
            raise PasswordDeleteError("not there")
        del self.kept[service, username]


class Failing(KeyringBackend):
    """A store that is locked, or whose other half has gone."""

    priority = 1

    def __init__(self, error: Exception) -> None:
        self.error = error

    def get_password(self, service: str, username: str) -> str | None:
        raise self.error

    def set_password(self, service: str, username: str, password: str) -> None:
        raise self.error

    def delete_password(self, service: str, username: str) -> None:
        raise self.error


def test_what_is_remembered_is_recalled_until_forgotten() -> None:
    memory = Memory(InMemory())
    assert memory.there
    assert memory.remember("workshop-1", "four words")
    assert memory.recall("workshop-1") == "four words"
    assert memory.recall("workshop-2") is None
    assert memory.forget("workshop-1")
    assert memory.recall("workshop-1") is None


def test_forgetting_what_was_never_kept_is_fine() -> None:
    assert Memory(InMemory()).forget("workshop-1")


@pytest.mark.parametrize(
    "error", [KeyringLocked("locked"), KeyringError("gone"), OSError("no bus"), RuntimeError("no")]
)
def test_a_failing_store_means_the_passphrase_is_asked_for(error: Exception) -> None:
    memory = Memory(Failing(error))
    assert not memory.remember("workshop-1", "four words")
    assert memory.recall("workshop-1") is None
    assert not memory.forget("workshop-1")


def test_without_a_store_nothing_is_kept() -> None:
    memory = Memory(None)
    assert not memory.there
    assert not memory.remember("workshop-1", "four words")
    assert memory.recall("workshop-1") is None
    assert memory.forget("workshop-1")


@pytest.mark.parametrize("store", [InMemory(), NoStore(), NullStore()])
def test_a_store_that_is_not_the_systems_own_is_never_used(store: KeyringBackend) -> None:
    assert trusted_store(store) is None


def test_the_systems_store_is_used_alone_or_found_among_several(monkeypatch: pytest.MonkeyPatch) -> None:
    system = SystemStore()
    assert trusted_store(system) is system
    chain = ChainerBackend()
    monkeypatch.setattr(ChainerBackend, "backends", [InMemory(), system])
    assert trusted_store(chain) is system
