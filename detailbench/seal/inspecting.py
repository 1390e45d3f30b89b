"""Reading a PDF's signatures under the strict rule. Only ``verifying`` calls this; importing it loads pyHanko."""

from __future__ import annotations

import asyncio
import hashlib
import io
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from asn1crypto import x509 as asn1_x509  # type: ignore[import-untyped]
from pyhanko.pdf_utils.reader import PdfFileReader
from pyhanko.sign.fields import MDPPerm, enumerate_sig_fields
from pyhanko.sign.validation.pdf_embedded import (
    EmbeddedPdfSignature,
    async_validate_pdf_signature,
    read_certification_data,
)
from pyhanko.sign.validation.settings import KeyUsageConstraints
from pyhanko.sign.validation.status import PdfSignatureStatus, SignatureCoverageLevel
from pyhanko_certvalidator import ValidationContext

from detailbench.basics.texts import _
from detailbench.seal.fields import OWNER_FIELD, SEAL_FIELD
from detailbench.seal.hole import Hole, filling, hole_of, written_by_us
from detailbench.seal.verdict import LaterSignature


@dataclass(frozen=True)
class Seen:
    """What the file shows. A sentence in ``not_sealed``, ``changed`` or ``outside_key_time`` says what is wrong."""

    not_sealed: str = ""
    changed: str = ""
    outside_key_time: str = ""
    fingerprint: str = ""
    signer: str = ""
    signed_at: datetime | None = None
    covered_bytes: int = 0
    later: tuple[LaterSignature, ...] = ()


def inspect(pdf: bytes) -> Seen:
    """Look at every signature. Raises one of ``trouble.reading_trouble()`` when the file cannot be read."""
    reader = PdfFileReader(io.BytesIO(pdf))
    found = {name: (value, field) for name, value, field in enumerate_sig_fields(reader)}
    if SEAL_FIELD not in found or found[SEAL_FIELD][0] is None:
        return Seen(not_sealed=_no_seal_sentence(found))
    seal = EmbeddedPdfSignature(reader, found[SEAL_FIELD][1], SEAL_FIELD)
    certificate = seal.signer_cert
    signed_at = seal.self_reported_timestamp
    hole = hole_of(list(seal.byte_range), len(pdf))
    basic = Seen(
        fingerprint=_fingerprint(certificate),
        signer=_common_name(certificate),
        signed_at=signed_at,
        covered_bytes=0 if hole is None else hole.covered,
    )
    owner = None
    if OWNER_FIELD in found and found[OWNER_FIELD][0] is not None:
        owner = EmbeddedPdfSignature(reader, found[OWNER_FIELD][1], OWNER_FIELD)

    trouble = (
        _field_trouble(reader, found, seal)
        or _hole_trouble(pdf, hole)
        or _seal_trouble(seal, last=owner is None)
        or (_later_trouble(pdf, owner) if owner is not None else "")
    )
    return Seen(
        changed=trouble,
        outside_key_time="" if trouble else _time_trouble(certificate, signed_at),
        fingerprint=basic.fingerprint,
        signer=basic.signer,
        signed_at=signed_at,
        covered_bytes=basic.covered_bytes,
        later=() if owner is None or trouble else (_later(owner),),
    )


def _no_seal_sentence(found: dict[str, Any]) -> str:
    if any(value is not None for value, _field in found.values()):
        return _("This PDF carries a signature, but not a workshop's seal.")
    return _("This PDF carries no seal. Nothing can be said about changes to it.")


def _field_trouble(reader: PdfFileReader, found: dict[str, Any], seal: EmbeddedPdfSignature) -> str:
    """Exactly the fields the workshop makes, all of them for signatures, and the seal the certifying one."""
    names = [field.get_object().get("/T") for field in reader.root["/AcroForm"]["/Fields"]]
    if names not in ([SEAL_FIELD], [SEAL_FIELD, OWNER_FIELD]) or list(found) != names:
        return _("Changed: the file has other form fields than the workshop made.")
    certification = read_certification_data(reader)
    if (
        certification is None
        or certification.permission != MDPPerm.FILL_FORMS
        or certification.author_sig.get_object() != seal.sig_object
    ):
        return _("Changed: the rule that nothing but a signature may follow was taken out.")
    return ""


def _hole_trouble(pdf: bytes, hole: Hole | None) -> str:
    if hole is None:
        return _("Changed: the seal does not cover the file from its first byte in one piece.")
    if filling(pdf, hole) is None:
        return _("Changed: the unused room beside the seal, which must be zero, is not.")
    if not written_by_us(pdf, hole):
        return _("Changed: the seal itself was altered.")
    return ""


def _seal_trouble(seal: EmbeddedPdfSignature, *, last: bool) -> str:
    status = _status(seal)
    if not (status.intact and status.valid):
        return _("Changed after it was closed: the seal does not fit the content.")
    if last and status.coverage != SignatureCoverageLevel.ENTIRE_FILE:
        return _("Changed after it was closed: something was added behind the seal.")
    if not status.docmdp_ok or not status.seed_value_ok:
        return _("Changed after it was closed: what was added is more than a signature.")
    if not status.bottom_line:
        return _("Changed: the seal's certificate is not one a workshop's key carries.")
    return ""


def _later_trouble(pdf: bytes, owner: EmbeddedPdfSignature) -> str:
    """The one thing that may follow: a signature in the owner's field that itself reaches to the end of the file."""
    hole = hole_of(list(owner.byte_range), len(pdf))
    status = _status(owner)
    if hole is None or filling(pdf, hole) is None or not status.bottom_line:
        return _("Changed after it was closed: the later signature does not hold.")
    if status.coverage != SignatureCoverageLevel.ENTIRE_FILE or hole.covered != len(pdf):
        return _("Changed after it was closed: something was added behind the last signature.")
    return ""


def _status(signature: EmbeddedPdfSignature) -> PdfSignatureStatus:
    """pyHanko's judgement, the signer's own certificate taken as its root: who it is, the fingerprint tells.

    The moment is inside the certificate's time on purpose: times are judged apart, in words of their own.
    """
    certificate = signature.signer_cert
    context = ValidationContext(
        trust_roots=[certificate],
        moment=certificate["tbs_certificate"]["validity"]["not_before"].native,
        allow_fetching=False,
        revocation_mode="soft-fail",
    )
    usage = KeyUsageConstraints(key_usage={"digital_signature", "non_repudiation"})
    return asyncio.run(
        async_validate_pdf_signature(
            signature,
            signer_validation_context=context,
            ts_validation_context=context,
            key_usage_settings=usage,
        )
    )


def _time_trouble(certificate: asn1_x509.Certificate, signed_at: datetime | None) -> str:
    validity = certificate["tbs_certificate"]["validity"]
    start, end = validity["not_before"].native, validity["not_after"].native
    if signed_at is None or signed_at.tzinfo is None or not start <= signed_at.astimezone(UTC) <= end:
        return _("Closed at a time when the key was not valid ({start:%Y-%m-%d} to {end:%Y-%m-%d}).").format(
            start=start, end=end
        )
    return ""


def _later(owner: EmbeddedPdfSignature) -> LaterSignature:
    certificate = owner.signer_cert
    return LaterSignature(_common_name(certificate), _fingerprint(certificate), owner.self_reported_timestamp)


def _fingerprint(certificate: asn1_x509.Certificate) -> str:
    return hashlib.sha256(certificate.dump()).hexdigest()


def _common_name(certificate: asn1_x509.Certificate) -> str:
    return str(certificate.subject.native.get("common_name", ""))
