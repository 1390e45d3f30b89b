"""A full disk, a pulled stick, half a file: keys and closed documents come to no harm, and say so."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest
from sealed_samples import PASSPHRASE, plain_pdf, sample_key, sealed_pdf

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadInput, RecordTrouble
from detailbench.seal.keys import change_passphrase, load_key, make_key
from detailbench.seal.verdict import Outcome
from detailbench.seal.verifying import verify_pdf


def disk_full(*_: object) -> None:
    raise OSError(errno.ENOSPC, "No space left on device")


def test_a_full_disk_leaves_no_half_key(tmp_path: Path, clock: HandClock, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "fsync", disk_full)
    with pytest.raises(RecordTrouble, match="No space left"):
        make_key(tmp_path / "workshop.key", "Invented Bench", PASSPHRASE, clock)
    assert list(tmp_path.iterdir()) == []


def test_a_full_disk_leaves_the_old_passphrase_working(
    tmp_path: Path, clock: HandClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "workshop.key"
    made = make_key(path, "Invented Bench", PASSPHRASE, clock)
    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", disk_full)
        with pytest.raises(RecordTrouble, match="Nothing was changed"):
            change_passphrase(path, PASSPHRASE, "a better passphrase")
    assert load_key(path, PASSPHRASE).fingerprint == made.fingerprint
    assert list(tmp_path.iterdir()) == [path]


def test_a_folder_that_went_away_is_said(tmp_path: Path, clock: HandClock) -> None:
    with pytest.raises(RecordTrouble, match="could not be written"):
        make_key(tmp_path / "stick" / "workshop.key", "Invented Bench", PASSPHRASE, clock)


def test_a_half_written_key_is_called_damaged_not_a_wrong_passphrase(tmp_path: Path, clock: HandClock) -> None:
    path = tmp_path / "workshop.key"
    make_key(path, "Invented Bench", PASSPHRASE, clock)
    whole = path.read_bytes()
    for length in range(0, len(whole) - 30, 97):
        path.write_bytes(whole[:length])
        with pytest.raises(RecordTrouble, match="damaged"):
            load_key(path, PASSPHRASE)


def test_a_key_with_a_strangers_certificate_is_damaged(tmp_path: Path, clock: HandClock) -> None:
    one, two = tmp_path / "one.key", tmp_path / "two.key"
    make_key(one, "Invented Bench", PASSPHRASE, clock)
    make_key(two, "Invented Bench", PASSPHRASE, clock)
    mark = b"-----BEGIN ENCRYPTED"
    mixed = one.read_bytes().split(mark)[0] + mark + two.read_bytes().split(mark)[1]
    one.write_bytes(mixed)
    with pytest.raises(RecordTrouble, match="damaged"):
        load_key(one, PASSPHRASE)


def test_a_key_file_with_any_byte_changed_opens_nothing_else(tmp_path: Path, clock: HandClock) -> None:
    path = tmp_path / "workshop.key"
    made = make_key(path, "Invented Bench", PASSPHRASE, clock)
    whole = path.read_bytes()
    for place in range(0, len(whole), 61):
        path.write_bytes(whole[:place] + bytes([whole[place] ^ 1]) + whole[place + 1 :])
        try:
            assert load_key(path, PASSPHRASE) == made
        except (RecordTrouble, BadInput):
            continue


def test_a_document_cut_short_anywhere_is_never_called_unchanged() -> None:
    pdf = sealed_pdf()
    seen = set()
    for length in {*range(0, len(pdf), 151), len(plain_pdf()), len(pdf) - 1, len(pdf) - 2}:
        verdict = verify_pdf(pdf[:length], expected_fingerprint=sample_key().fingerprint)
        seen.add(verdict.outcome)
        if length == len(plain_pdf()):
            assert verdict.outcome is Outcome.NOT_SEALED
    # the one before the last byte: only a line end is missing, and the seal covers that too
    assert seen <= {Outcome.NOT_WHOLE, Outcome.NOT_SEALED, Outcome.CHANGED, Outcome.DAMAGED}
    assert Outcome.NOT_WHOLE in seen


def test_a_document_with_a_hole_of_zeros_from_a_crashed_disk_is_caught() -> None:
    pdf = sealed_pdf()
    for start in range(0, len(pdf) - 600, 1024):
        torn = pdf[:start] + b"\0" * 512 + pdf[start + 512 :]
        verdict = verify_pdf(torn, expected_fingerprint=sample_key().fingerprint)
        assert verdict.outcome not in (Outcome.UNCHANGED, Outcome.SIGNED_LATER), start
