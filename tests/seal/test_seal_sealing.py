"""Sign and close: what is put into the file, and what is refused before anything is."""

from __future__ import annotations

import io
import shutil
import socket
import subprocess
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, NoReturn

import pikepdf
import pytest
from pyhanko.pdf_utils.reader import PdfFileReader
from pyhanko.sign.fields import FieldMDPAction, FieldMDPSpec, enumerate_sig_fields
from sealed_samples import CLOSED_AT, plain_pdf, sample_key, sealed_pdf

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadFile, RecordTrouble, Refused
from detailbench.seal import verifying
from detailbench.seal.fields import OWNER_FIELD, SEAL_FIELD
from detailbench.seal.sealing import SealLook, seal_pdf
from detailbench.seal.verdict import Outcome, Verdict
from detailbench.seal.verifying import verify_pdf


def dictionary(sealed: bytes) -> Any:
    reader = PdfFileReader(io.BytesIO(sealed))
    return {name: (value, field.get_object()) for name, value, field in enumerate_sig_fields(reader)}


def test_the_pages_handed_over_stay_in_the_file_byte_for_byte() -> None:
    assert sealed_pdf().startswith(plain_pdf())


def test_both_fields_are_there_and_only_the_seal_is_filled() -> None:
    fields = dictionary(sealed_pdf())
    assert list(fields) == [SEAL_FIELD, OWNER_FIELD]
    assert fields[SEAL_FIELD][0] is not None
    assert fields[OWNER_FIELD][0] is None


def test_the_owners_field_locks_the_whole_file_when_signed() -> None:
    lock = dictionary(sealed_pdf())[OWNER_FIELD][1]["/Lock"]
    assert FieldMDPSpec.from_pdf_object(lock).action is FieldMDPAction.ALL
    assert lock["/P"] == 1  # ISO 32000-2, table 237: 1 means no further change


def test_without_an_owners_field_only_the_seal_is_there() -> None:
    assert list(dictionary(sealed_pdf(owner=False))) == [SEAL_FIELD]


def test_the_seal_is_pades_and_certifies_with_filling_in_only() -> None:
    seal = dictionary(sealed_pdf())[SEAL_FIELD][0].get_object()
    assert seal["/SubFilter"] == "/ETSI.CAdES.detached"  # ETSI EN 319 142-1, 6.3
    reference = seal["/Reference"][0]
    assert reference["/TransformMethod"] == "/DocMDP"
    assert reference["/TransformParams"]["/P"] == 2  # ISO 32000-1, table 254: filling in and signing
    assert (seal["/Reason"], seal["/Location"], seal["/Name"]) == ("Handover", "Workshop", "Ana (invented)")


def test_the_time_is_the_given_clocks_with_its_offset() -> None:
    assert verify_pdf(sealed_pdf()).signed_at == CLOSED_AT
    assert b"/M (D:20310314170500+01'00')" in sealed_pdf().replace(b"\\072", b":").replace(b"\\053", b"+").replace(
        b"\\047", b"'"
    )


def test_title_producer_and_dates_of_the_pages_are_left_alone() -> None:
    with pikepdf.open(io.BytesIO(plain_pdf())) as before, pikepdf.open(io.BytesIO(sealed_pdf())) as after:
        assert dict(after.docinfo) == dict(before.docinfo)
        assert after.docinfo


def test_the_same_pages_key_and_time_give_the_same_bytes() -> None:
    def once() -> bytes:
        look = SealLook(plain_pdf("seal", pages=1, size=(200, 80)), (50, 60, 250, 140))
        return seal_pdf(plain_pdf(), sample_key(), HandClock(CLOSED_AT), look=look, owner_box=(300, 60, 500, 140))

    assert once() == once()


def test_another_minute_gives_another_file() -> None:
    later = HandClock(CLOSED_AT + timedelta(minutes=1))
    one = seal_pdf(plain_pdf(), sample_key(), HandClock(CLOSED_AT))
    assert one != seal_pdf(plain_pdf(), sample_key(), later)


def test_the_drawn_page_fills_the_box_without_being_stretched() -> None:
    with pikepdf.open(io.BytesIO(sealed_pdf())) as pdf:
        widget = next(a for a in pdf.pages[-1].Annots if a.T == SEAL_FIELD)
        assert [float(v) for v in widget.Rect] == [50, 60, 250, 140]
        look = widget.AP.N
        across, _b, _c, up, _x, _y = (float(v) for v in look.read_bytes().split()[1:7])
        assert across == up == 1.0
        assert b"seal page 1" in look.Resources.XObject.Drawn.read_bytes()


def test_a_seal_that_shows_nowhere_still_prints_as_pdf_a_wants() -> None:
    sealed = seal_pdf(plain_pdf(), sample_key(), HandClock(CLOSED_AT), owner_field=False)
    with pikepdf.open(io.BytesIO(sealed)) as pdf:
        widget = next(a for a in pdf.pages[-1].Annots if a.T == SEAL_FIELD)
        assert int(widget.F) & 4 == 4  # ISO 19005-1, 6.5.3: the print flag is set
        assert int(widget.F) & (1 | 2 | 32) == 0  # and invisible, hidden and no-view are not


def test_files_written_with_cross_reference_streams_are_sealed_too() -> None:
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(plain_pdf())) as pdf:
        pdf.save(out, object_stream_mode=pikepdf.ObjectStreamMode.generate, deterministic_id=True)
    sealed = seal_pdf(out.getvalue(), sample_key(), HandClock(CLOSED_AT))
    assert verify_pdf(sealed, expected_fingerprint=sample_key().fingerprint).outcome is Outcome.UNCHANGED


def test_a_closed_file_is_not_closed_again() -> None:
    with pytest.raises(BadFile, match="already"):
        seal_pdf(sealed_pdf(), sample_key(), HandClock(CLOSED_AT))


@pytest.mark.parametrize("rubbish", [b"", b"hello", b"%PDF-1.4\n%%EOF", plain_pdf()[:700]])
def test_what_is_no_pdf_is_refused(rubbish: bytes) -> None:
    with pytest.raises(BadFile, match="cannot be closed"):
        seal_pdf(rubbish, sample_key(), HandClock(CLOSED_AT))


def test_a_page_that_is_not_there_is_refused() -> None:
    with pytest.raises(BadFile, match="cannot be closed"):
        seal_pdf(plain_pdf(pages=1), sample_key(), HandClock(CLOSED_AT), page=5)


def test_a_clock_before_the_key_stops_closing() -> None:
    with pytest.raises(Refused, match="2019-01-01, before the workshop's key was made") as caught:
        seal_pdf(plain_pdf(), sample_key(), HandClock(datetime(2019, 1, 1, tzinfo=CLOSED_AT.tzinfo)))
    assert caught.value.rule == "clock_before_key"


def test_a_key_that_ran_out_stops_closing() -> None:
    with pytest.raises(Refused, match="ran out on 2061-03-") as caught:
        seal_pdf(plain_pdf(), sample_key(), HandClock(datetime(2062, 1, 1, tzinfo=CLOSED_AT.tzinfo)))
    assert caught.value.rule == "key_ran_out"


def test_an_hour_back_on_the_clock_does_not_stop_closing() -> None:
    back = HandClock(CLOSED_AT - timedelta(hours=1))
    sealed = seal_pdf(plain_pdf(), sample_key(), back)
    assert verify_pdf(sealed, expected_fingerprint=sample_key().fingerprint).outcome is Outcome.UNCHANGED


def test_a_result_that_fails_its_own_check_is_not_handed_out(monkeypatch: pytest.MonkeyPatch) -> None:
    def doubtful(pdf: bytes, **_: object) -> Verdict:
        return Verdict(Outcome.CHANGED, ("Changed: invented.",))

    monkeypatch.setattr(verifying, "verify_pdf", doubtful)
    with pytest.raises(RecordTrouble, match="not kept: Changed: invented"):
        seal_pdf(plain_pdf(), sample_key(), HandClock(CLOSED_AT))


def test_sealing_and_checking_ask_the_network_for_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    def no_network(*_: object, **__: object) -> NoReturn:
        raise AssertionError("the network was asked")

    monkeypatch.setattr(socket.socket, "connect", no_network)
    monkeypatch.setattr(socket, "getaddrinfo", no_network)
    sealed = seal_pdf(plain_pdf("no network"), sample_key(), HandClock(CLOSED_AT))
    assert verify_pdf(sealed, expected_fingerprint=sample_key().fingerprint).outcome is Outcome.UNCHANGED


def test_an_outside_reader_calls_the_seal_valid(tmp_path: Path) -> None:
    """Outside check: pdfsig of poppler-utils, another reader with another library below it."""
    program = shutil.which("pdfsig")
    assert program, "poppler-utils is not installed"
    path = tmp_path / "sealed.pdf"
    path.write_bytes(sealed_pdf())
    said = subprocess.run([program, str(path)], capture_output=True, text=True, check=True).stdout
    assert "Signature is Valid." in said
    assert "Signature Type: ETSI.CAdES.detached" in said
    assert "Total document signed" in said
    assert f"Signature Field Name: {OWNER_FIELD}\n  The signature form field is not signed." in said
