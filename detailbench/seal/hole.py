"""The bytes a signature does not cover: the hole in the file that holds the signature itself.

A signature says nothing about its own hole, so a changed byte there goes unseen by most readers: unused zeros,
small instead of capital hex digits, a second way to write the same structure. Here the hole must hold exactly
what the workshop's program writes there, byte for byte.
"""

from __future__ import annotations

import binascii
import hashlib
from dataclasses import dataclass

from asn1crypto import cms, parser  # type: ignore[import-untyped]
from cryptography.hazmat.primitives.asymmetric.utils import decode_dss_signature, encode_dss_signature

from detailbench.seal.pdf_signing import P256_ORDER


@dataclass(frozen=True)
class Hole:
    """Where the hole lies: ``start`` at ``<``, ``end`` just past ``>``; ``covered`` is where the signed bytes end."""

    start: int
    end: int
    covered: int


def hole_of(byte_range: list[int], file_bytes: int) -> Hole | None:
    """The hole a /ByteRange leaves, or None when the range is not the plain one: all of the file but one hole."""
    if len(byte_range) != 4:
        return None
    start, before, after, rest = byte_range
    covered = after + rest
    if start != 0 or not 0 < before < after or rest <= 0 or covered > file_bytes:
        return None
    return Hole(before, after, covered)


def filling(pdf: bytes, hole: Hole) -> bytes | None:
    """The signature in the hole, or None unless the hole is hex digits, then zeros only (ISO 32000-1, 12.8.1)."""
    text = pdf[hole.start : hole.end]
    if text[:1] != b"<" or text[-1:] != b">":
        return None
    try:
        content = binascii.unhexlify(text[1:-1])
        length = parser.peek(content)
    except ValueError:
        return None
    return None if content[length:].strip(b"\0") else content[:length]


def written_by_us(pdf: bytes, hole: Hole) -> bool:
    """Whether the hole is, byte for byte, what the workshop's program writes for the signature in it.

    The signature is taken apart, put together anew from its certificate, signed statements and signature value,
    and compared: so every byte of the hole is either signed or has only this one value.
    """
    content = filling(pdf, hole)
    if content is None:
        return False
    digits = content.hex().upper().encode("ascii")
    room = hole.end - hole.start - 2
    if pdf[hole.start : hole.end] != b"<" + digits + b"0" * (room - len(digits)) + b">":
        return False
    return content == _anew(content)


def _anew(content: bytes) -> bytes | None:
    signed_data = cms.ContentInfo.load(content, strict=True)["content"]
    signer = signed_data["signer_infos"][0]
    certificate = signed_data["certificates"][0].chosen
    statements = cms.CMSAttributes.load(b"\x31" + signer["signed_attrs"].dump()[1:])
    named = _certificate_named(statements)
    r, s = decode_dss_signature(signer["signature"].native)
    if named != hashlib.sha256(certificate.dump()).digest() or not 0 < s <= P256_ORDER // 2:
        return None
    digest = cms.DigestAlgorithm({"algorithm": "sha256"})
    identity = {"issuer": certificate.issuer, "serial_number": certificate.serial_number}
    signer_info = {
        "version": "v1",
        "sid": cms.SignerIdentifier({"issuer_and_serial_number": cms.IssuerAndSerialNumber(identity)}),
        "digest_algorithm": digest,
        "signature_algorithm": {"algorithm": "sha256_ecdsa"},
        "signed_attrs": statements,
        "signature": encode_dss_signature(r, s),
    }
    anew = cms.ContentInfo(
        {
            "content_type": "signed_data",
            "content": cms.SignedData(
                {
                    "version": "v1",
                    "digest_algorithms": [digest],
                    "encap_content_info": {"content_type": "data"},
                    "certificates": [cms.CertificateChoices("certificate", certificate)],
                    "signer_infos": [signer_info],
                }
            ),
        }
    )
    return bytes(anew.dump())


def _certificate_named(statements: cms.CMSAttributes) -> bytes | None:
    """SHA-256 of the certificate that the signed statements name (RFC 5035, ESSCertIDv2), None without one."""
    for statement in statements:
        if statement["type"].native == "signing_certificate_v2":
            return bytes(statement["values"][0]["certs"][0]["cert_hash"].native)
    return None
