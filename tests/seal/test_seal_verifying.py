"""Checking a closed document: who changed what, in plain words, one exit code each."""

from __future__ import annotations

import hashlib
import io
import random
import re
from datetime import timedelta

import pikepdf
import pytest
from asn1crypto import cms, core
from asn1crypto import keys as asn1_keys
from asn1crypto import x509 as asn1_x509
from cryptography.hazmat.primitives.asymmetric.utils import decode_dss_signature, encode_dss_signature
from cryptography.hazmat.primitives.serialization import Encoding, NoEncryption, PrivateFormat
from pyhanko.pdf_utils import generic
from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter
from pyhanko.sign import fields, signers
from pyhanko.sign.validation.dss import DocumentSecurityStore
from pyhanko_certvalidator.registry import SimpleCertificateStore
from sealed_samples import CLOSED_AT, plain_pdf, sample_key, sealed_pdf

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadInput
from detailbench.seal.fields import OWNER_FIELD, SEAL_FIELD
from detailbench.seal.fingerprints import grouped
from detailbench.seal.keys import WorkshopKey
from detailbench.seal.pdf_signing import P256_ORDER
from detailbench.seal.sealing import seal_pdf
from detailbench.seal.verdict import Outcome, Verdict
from detailbench.seal.verifying import verify_pdf


def sha256(pdf: bytes) -> str:
    return hashlib.sha256(pdf).hexdigest()


def check(pdf: bytes, recorded: str | None = None) -> Verdict:
    """As the workshop checks its own file: its fingerprint known."""
    return verify_pdf(pdf, recorded_sha256=recorded, expected_fingerprint=sample_key().fingerprint)


def reader_signer(key: WorkshopKey) -> signers.SimpleSigner:
    """A signer outside the program, as an owner's own reader would have one."""
    der = key.private.private_bytes(Encoding.DER, PrivateFormat.PKCS8, NoEncryption())
    return signers.SimpleSigner(
        asn1_x509.Certificate.load(key.certificate_der), asn1_keys.PrivateKeyInfo.load(der), SimpleCertificateStore()
    )


def signed_by_owner(pdf: bytes, writer: IncrementalPdfFileWriter | None = None) -> bytes:
    writer = writer or IncrementalPdfFileWriter(io.BytesIO(pdf))
    meta = signers.PdfSignatureMetadata(
        field_name=OWNER_FIELD, subfilter=fields.SigSeedSubFilter.PADES, md_algorithm="sha256"
    )
    out = signers.sign_pdf(writer, meta, reader_signer(sample_key("Owner (invented)")), existing_fields_only=True)
    return bytes(out.getvalue())


def hole(pdf: bytes) -> tuple[int, int]:
    found = re.search(rb"/ByteRange \[0 (\d+) (\d+) \d+\]", pdf)
    assert found
    return int(found[1]), int(found[2])


# --- unchanged -------------------------------------------------------------------------------------------


def test_an_untouched_file_is_unchanged_and_the_workshops() -> None:
    verdict = check(sealed_pdf(), sha256(sealed_pdf()))
    assert (verdict.outcome, verdict.exit_code) == (Outcome.UNCHANGED, 0)
    assert verdict.fingerprint == sample_key().fingerprint
    assert verdict.signed_at == CLOSED_AT
    assert verdict.covers_whole_file
    assert verdict.hash_matches is True
    assert verdict.later == ()
    said = " ".join(verdict.sentences)
    assert said.startswith("Not changed since it was closed.")
    assert grouped(sample_key().fingerprint) in said
    assert "The hash equals the recorded one." in said


def test_without_a_recorded_hash_the_seal_alone_is_said_to_have_been_checked() -> None:
    verdict = check(sealed_pdf())
    assert verdict.outcome is Outcome.UNCHANGED
    assert verdict.hash_matches is None
    assert "No recorded hash was given to compare with." in verdict.sentences


def test_without_a_fingerprint_the_key_is_said_not_to_have_been_compared() -> None:
    verdict = verify_pdf(sealed_pdf())
    assert verdict.outcome is Outcome.KEY_NOT_COMPARED
    assert "no fingerprint was given" in verdict.sentences[0]


def test_a_check_decades_later_still_holds_since_the_time_of_closing_counts() -> None:
    # the key of the samples is valid from 2031 and the machine's own clock is elsewhere: neither is asked
    assert check(sealed_pdf()).outcome is Outcome.UNCHANGED


def test_no_sentence_claims_more_than_was_checked() -> None:
    said = " ".join(check(sealed_pdf(), sha256(sealed_pdf())).sentences).lower()
    for word in ("certified", "guaranteed", "genuine", "tamper-proof", "100 %", "perfect"):
        assert word not in said


# --- another key, another file ---------------------------------------------------------------------------


def test_a_file_sealed_again_with_another_key_of_the_same_name_is_refused() -> None:
    other = sealed_pdf("Invented Bench ")  # blanks are dropped: the same name on the certificate
    verdict = check(other)
    assert verdict.signer == sample_key().workshop
    assert (verdict.outcome, verdict.exit_code) == (Outcome.OTHER_KEY, 5)
    assert grouped(sample_key().fingerprint) in verdict.sentences[0]


def test_a_file_sealed_again_with_the_same_key_is_not_the_one_in_the_record() -> None:
    other = sealed_pdf(words="left front wing: 95 µm (invented)")
    verdict = check(other, sha256(sealed_pdf()))
    assert verdict.outcome is Outcome.CHANGED
    assert verdict.hash_matches is False
    assert "not the file in the record" in verdict.sentences[0]


@pytest.mark.parametrize("slip", ["", "12ab", "g" * 64, "0" * 63])
def test_a_hash_or_fingerprint_typed_wrong_is_asked_again_not_judged(slip: str) -> None:
    with pytest.raises(BadInput, match="64 digits"):
        verify_pdf(sealed_pdf(), recorded_sha256=slip)
    with pytest.raises(BadInput, match="64 digits"):
        verify_pdf(sealed_pdf(), expected_fingerprint=slip)


def test_a_seal_set_outside_the_keys_time_is_said() -> None:
    key = sample_key()
    lenient = WorkshopKey(
        key.workshop,
        key.fingerprint,
        key.certificate_der,
        key.valid_from,
        key.valid_until + timedelta(days=9999),
        key.private,
    )
    with pytest.raises(Exception, match="when the key was not valid"):
        seal_pdf(plain_pdf(), lenient, HandClock(key.valid_until + timedelta(days=1)))


# --- changed ---------------------------------------------------------------------------------------------


def flipped(pdf: bytes, place: int, mask: int) -> bytes:
    return pdf[:place] + bytes([pdf[place] ^ mask]) + pdf[place + 1 :]


def test_a_flipped_byte_anywhere_is_caught_by_the_seal_alone() -> None:
    pdf, chance = sealed_pdf(), random.Random(7)
    start, end = hole(pdf)
    places = [*range(0, start, 41), *range(start, end, 113), *range(end, len(pdf), 11), start, end - 1, len(pdf) - 1]
    for place in places:
        mask = chance.choice((1, 2, 4, 8, 16, 32, 64, 128, 255))
        verdict = check(flipped(pdf, place, mask))
        assert verdict.outcome not in (Outcome.UNCHANGED, Outcome.SIGNED_LATER), f"byte {place} with mask {mask}"


def test_every_flipped_byte_is_caught_by_the_recorded_hash() -> None:
    pdf, recorded = sealed_pdf(), sha256(sealed_pdf())
    start, end = hole(pdf)
    for place in (0, start - 1, start, end - 1, end, len(pdf) - 1):
        assert check(flipped(pdf, place, 1), recorded).outcome is not Outcome.UNCHANGED


@pytest.mark.slow
def test_every_byte_of_the_seal_itself_and_its_unused_room_is_caught() -> None:
    pdf = sealed_pdf()
    start, end = hole(pdf)
    used = len(pdf[start:end].rstrip(b"0>"))
    for place in [*range(start, start + used + 8), *range(start + used + 8, end, 29)]:
        for mask in (1, 32) if place < start + used else (1,):
            assert check(flipped(pdf, place, mask)).outcome not in (Outcome.UNCHANGED, Outcome.SIGNED_LATER), place


def test_unused_room_beside_the_seal_that_is_not_zero_is_named() -> None:
    pdf = sealed_pdf()
    verdict = check(flipped(pdf, hole(pdf)[1] - 10, 1))  # "0" becomes "1"
    assert verdict.outcome is Outcome.CHANGED
    assert "which must be zero, is not" in verdict.sentences[0]


def test_a_seal_written_in_small_hex_letters_is_named_though_it_means_the_same() -> None:
    pdf = sealed_pdf()
    start, end = hole(pdf)
    verdict = check(pdf[:start] + pdf[start:end].lower() + pdf[end:])
    assert verdict.outcome is Outcome.CHANGED
    assert "the seal itself was altered" in verdict.sentences[0]


def with_seal(pdf: bytes, content: bytes) -> bytes:
    """The same file with another signature container in the hole."""
    start, end = hole(pdf)
    digits = content.hex().upper().encode("ascii")
    return pdf[: start + 1] + digits.ljust(end - start - 2, b"0") + pdf[end - 1 :]


def container(pdf: bytes) -> cms.ContentInfo:
    start, end = hole(pdf)
    return cms.ContentInfo.load(bytes.fromhex(pdf[start + 1 : end - 1].decode("ascii")))


def test_the_other_signature_value_that_is_mathematically_as_good_is_refused() -> None:
    """ECDSA: with (r, s) also (r, n - s) verifies, so a byte of the seal could change unseen (SEC 1, 4.1)."""
    seal = container(sealed_pdf())
    signer = seal["content"]["signer_infos"][0]
    r, s = decode_dss_signature(signer["signature"].native)
    signer["signature"] = encode_dss_signature(r, P256_ORDER - s)
    verdict = check(with_seal(sealed_pdf(), seal.dump(force=True)))
    assert verdict.outcome is Outcome.CHANGED
    assert "the seal itself was altered" in verdict.sentences[0]


def test_something_slipped_into_the_seal_beside_what_is_signed_is_refused() -> None:
    seal = container(sealed_pdf())
    seal["content"]["signer_infos"][0]["unsigned_attrs"] = [{"type": "1.2.3.4", "values": [core.Null()]}]
    assert check(with_seal(sealed_pdf(), container(sealed_pdf()).dump())).outcome is Outcome.UNCHANGED
    assert check(with_seal(sealed_pdf(), seal.dump(force=True))).outcome is Outcome.CHANGED


def test_changed_words_on_a_page_are_changed() -> None:
    pdf = sealed_pdf(words="reading 118")
    place = plain_pdf("reading 118").index(b"/CreationDate")
    verdict = check(pdf[: place + 1] + b"X" + pdf[place + 2 :])
    assert verdict.outcome is Outcome.CHANGED
    assert "does not fit the content" in verdict.sentences[0]


def test_a_page_replaced_in_a_later_revision_is_changed() -> None:
    writer = IncrementalPdfFileWriter(io.BytesIO(sealed_pdf()))
    page = writer.find_page_for_modification(0)[0].get_object()
    page["/Contents"] = writer.add_object(generic.StreamObject(stream_data=b"BT ET"))
    writer.update_container(page)
    out = io.BytesIO()
    writer.write(out)
    assert check(out.getvalue()).outcome is Outcome.CHANGED
    assert "behind the seal" in check(out.getvalue()).sentences[0]


def test_a_page_replaced_under_an_owners_signature_is_changed() -> None:
    writer = IncrementalPdfFileWriter(io.BytesIO(sealed_pdf()))
    page = writer.find_page_for_modification(0)[0].get_object()
    page["/Contents"] = writer.add_object(generic.StreamObject(stream_data=b"BT ET"))
    writer.update_container(page)
    verdict = check(signed_by_owner(b"", writer))
    assert verdict.outcome is Outcome.CHANGED
    assert "more than a signature" in verdict.sentences[0]


def test_a_note_stuck_on_a_page_under_an_owners_signature_is_changed() -> None:
    writer = IncrementalPdfFileWriter(io.BytesIO(sealed_pdf()))
    page = writer.find_page_for_modification(0)[0].get_object()
    note = generic.DictionaryObject(
        {
            generic.pdf_name("/Type"): generic.pdf_name("/Annot"),
            generic.pdf_name("/Subtype"): generic.pdf_name("/FreeText"),
            generic.pdf_name("/Contents"): generic.pdf_string("118 was 95"),
            generic.pdf_name("/Rect"): generic.ArrayObject([generic.NumberObject(n) for n in (0, 0, 90, 90)]),
        }
    )
    page["/Annots"] = generic.ArrayObject([writer.add_object(note)])
    writer.update_container(page)
    assert check(signed_by_owner(b"", writer)).outcome is Outcome.CHANGED


@pytest.mark.parametrize("tail", [b"\n", b"x", b"\n%%EOF", b"\n% a remark\n%%EOF\n"])
def test_anything_appended_is_caught(tail: bytes) -> None:
    assert check(sealed_pdf() + tail).outcome in (Outcome.CHANGED, Outcome.NOT_WHOLE, Outcome.DAMAGED)


def test_another_field_added_later_is_changed() -> None:
    writer = IncrementalPdfFileWriter(io.BytesIO(sealed_pdf()))
    fields.append_signature_field(writer, fields.SigFieldSpec("Third"))
    out = io.BytesIO()
    writer.write(out)
    verdict = check(out.getvalue())
    assert verdict.outcome is Outcome.CHANGED
    assert "other form fields" in verdict.sentences[0]


def test_a_file_saved_anew_by_another_program_is_caught() -> None:
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(sealed_pdf())) as pdf:
        pdf.save(out)
    assert check(out.getvalue()).outcome in (Outcome.CHANGED, Outcome.DAMAGED)


# --- the owner signs later -------------------------------------------------------------------------------


def test_an_owners_later_signature_is_reported_as_a_later_revision() -> None:
    recorded = sha256(sealed_pdf())
    signed = signed_by_owner(sealed_pdf())
    verdict = check(signed, recorded)
    assert (verdict.outcome, verdict.exit_code) == (Outcome.SIGNED_LATER, 3)
    assert verdict.hash_matches is True
    assert verdict.sealed_sha256 == recorded
    assert verdict.covered_bytes == len(sealed_pdf()) < verdict.file_bytes == len(signed)
    assert [(s.name, s.fingerprint) for s in verdict.later] == [
        ("Owner (invented)", sample_key("Owner (invented)").fingerprint)
    ]
    assert any("does not know who that is" in s for s in verdict.sentences)


def test_what_follows_an_owners_signature_is_changed() -> None:
    writer = IncrementalPdfFileWriter(io.BytesIO(signed_by_owner(sealed_pdf())))
    writer.root["/Extra"] = generic.NumberObject(1)
    writer.update_root()
    out = io.BytesIO()
    writer.write(out)
    assert check(out.getvalue()).outcome is Outcome.CHANGED


def test_even_harmless_data_after_an_owners_signature_is_changed() -> None:
    """The last signature must reach to the end: certificates a reader adds for later checks are more than that."""
    out = io.BytesIO(signed_by_owner(sealed_pdf()))
    DocumentSecurityStore.add_dss(out, sig_contents=None, certs=[reader_signer(sample_key()).signing_cert])
    verdict = check(out.getvalue())
    assert verdict.outcome is Outcome.CHANGED
    assert "behind the last signature" in verdict.sentences[0]


def test_bytes_flipped_in_the_owners_part_are_caught() -> None:
    signed = signed_by_owner(sealed_pdf())
    for place in range(len(sealed_pdf()), len(signed), 397):
        verdict = check(flipped(signed, place, 2))
        assert verdict.outcome not in (Outcome.UNCHANGED, Outcome.SIGNED_LATER), place


def test_the_owners_part_cut_off_leaves_the_workshops_file_whole() -> None:
    signed = signed_by_owner(sealed_pdf())
    assert check(signed[: len(sealed_pdf())]).outcome is Outcome.UNCHANGED


# --- not sealed, not whole -------------------------------------------------------------------------------


def test_a_plain_pdf_is_not_sealed() -> None:
    verdict = check(plain_pdf())
    assert (verdict.outcome, verdict.exit_code) == (Outcome.NOT_SEALED, 7)
    assert "no seal" in verdict.sentences[0]


def test_a_pdf_signed_by_someone_elses_program_is_not_sealed() -> None:
    writer = IncrementalPdfFileWriter(io.BytesIO(plain_pdf()))
    meta = signers.PdfSignatureMetadata(field_name="Signature1", md_algorithm="sha256")
    out = signers.sign_pdf(writer, meta, reader_signer(sample_key("Owner (invented)")))
    verdict = check(out.getvalue())
    assert verdict.outcome is Outcome.NOT_SEALED
    assert "not a workshop's seal" in verdict.sentences[0]


def test_a_seal_field_signed_by_someone_elses_program_is_changed() -> None:
    """The same field name, a signature that certifies nothing: not what the workshop makes."""
    writer = IncrementalPdfFileWriter(io.BytesIO(plain_pdf()))
    meta = signers.PdfSignatureMetadata(field_name=SEAL_FIELD, md_algorithm="sha256")
    out = signers.sign_pdf(writer, meta, reader_signer(sample_key()))
    assert check(out.getvalue()).outcome is Outcome.CHANGED


def test_the_first_half_of_a_file_is_said_to_be_only_a_part() -> None:
    verdict = check(sealed_pdf()[: len(sealed_pdf()) // 2])
    assert verdict.outcome is Outcome.NOT_WHOLE
    assert "only part of it is here" in verdict.sentences[0]


@pytest.mark.parametrize("content", [b"", b"PK\x03\x04 a zip", b"\xff\xd8\xff a photo", b" %PDF-1.4 %%EOF"])
def test_what_is_no_pdf_is_said_to_be_none(content: bytes) -> None:
    verdict = check(content)
    assert (verdict.outcome, verdict.exit_code) == (Outcome.NOT_WHOLE, 8)


def test_every_outcome_has_an_exit_code_of_its_own_and_one_and_two_stay_free() -> None:
    codes = [int(outcome) for outcome in Outcome]
    assert len(set(codes)) == len(codes)
    assert not {1, 2} & set(codes)
