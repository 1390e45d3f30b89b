"""How a seal is put into a PDF: two fields, one increment, PAdES baseline B-B, no network, no randomness.

Only ``sealing`` calls this; importing it loads pyHanko.
"""

from __future__ import annotations

import asyncio
import hashlib
import io
import logging
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from asn1crypto import x509 as asn1_x509  # type: ignore[import-untyped]
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric.ec import ECDSA
from cryptography.hazmat.primitives.asymmetric.utils import decode_dss_signature, encode_dss_signature
from pyhanko.pdf_utils import content, generic, layout
from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter
from pyhanko.pdf_utils.reader import PdfFileReader
from pyhanko.sign import fields
from pyhanko.sign.signers import pdf_signer
from pyhanko.sign.signers.pdf_cms import Signer
from pyhanko.stamp import BaseStampStyle

from detailbench.seal.fields import OWNER_FIELD, SEAL_FIELD, SEAL_ROOM, Box
from detailbench.seal.keys import WorkshopKey

# What the library remarks about a file is judged in our own words; its log lines are not for a person's terminal.
for _library in ("pyhanko", "pyhanko_certvalidator"):
    logging.getLogger(_library).addHandler(logging.NullHandler())

# order of the base point of P-256 (FIPS 186-4, D.1.2.3)
P256_ORDER = 0xFFFFFFFF00000000FFFFFFFFFFFFFFFFBCE6FAADA7179E84F3B9CAC2FC632551


def has_form(pdf: bytes) -> bool:
    """Whether the file has fields of any kind: a seal is only put on a file that has none."""
    root = PdfFileReader(io.BytesIO(pdf)).root
    return "/AcroForm" in root and len(root["/AcroForm"]["/Fields"]) > 0


def sign(
    pdf: bytes,
    key: WorkshopKey,
    at: datetime,
    *,
    reason: str,
    location: str,
    name: str,
    owner_field: bool,
    drawn: bytes | None,
    seal_box: Box | None,
    owner_box: Box | None,
    page: int,
) -> bytes:
    """The sealed file. Errors of pyHanko come through as they are; ``sealing`` turns them into sentences."""
    writer = _QuietWriter.over(pdf, at)
    for spec in _field_specs(owner_field, seal_box, owner_box, page):
        fields.append_signature_field(writer, spec)
    meta = pdf_signer.PdfSignatureMetadata(
        field_name=SEAL_FIELD,
        md_algorithm="sha256",
        location=location or None,
        reason=reason or None,
        name=name or None,
        certify=True,
        subfilter=fields.SigSeedSubFilter.PADES,
        docmdp_permissions=fields.MDPPerm.FILL_FORMS,
    )
    signer = pdf_signer.PdfSigner(meta, WorkshopSigner(key), stamp_style=_DrawnStamp(drawn=drawn))
    return asyncio.run(_sign(signer, writer, at))


async def _sign(signer: pdf_signer.PdfSigner, writer: IncrementalPdfFileWriter, at: datetime) -> bytes:
    """The steps of PAdES B-B in turn, with our own time: the short way through asks the machine for it."""
    session = signer.init_signing_session(writer, existing_fields_only=True)
    session.system_time = at
    document = session.prepare_tbs_document(validation_info=None, bytes_reserved=2 * SEAL_ROOM)
    output = io.BytesIO()
    digest, _same = document.digest_tbs_document(output=output)
    attributes = await signer.signer.signed_attrs(digest.document_digest, "sha256", use_pades=True)
    container = await signer.signer.async_sign_prescribed_attributes("sha256", signed_attrs=attributes)
    digest.fill_with_cms(output, container)
    return output.getvalue()


def _field_specs(
    owner_field: bool, seal_box: Box | None, owner_box: Box | None, page: int
) -> list[fields.SigFieldSpec]:
    def corners(box: Box | None) -> tuple[int, int, int, int] | None:
        return None if box is None else (round(box[0]), round(box[1]), round(box[2]), round(box[3]))

    specs = [fields.SigFieldSpec(SEAL_FIELD, on_page=page, box=corners(seal_box))]
    if owner_field:
        everything = fields.FieldMDPSpec(fields.FieldMDPAction.ALL)
        specs.append(
            fields.SigFieldSpec(
                OWNER_FIELD,
                on_page=page,
                box=corners(owner_box),
                field_mdp_spec=everything,
                doc_mdp_update_value=fields.MDPPerm.NO_CHANGES,
            )
        )
    return specs


class WorkshopSigner(Signer):
    """ECDSA on P-256 with a nonce from key and message (RFC 6979) and the smaller of the two equal values of s.

    So the same file, key and time give the same bytes, and no other bytes carry the same signature.
    """

    def __init__(self, key: WorkshopKey) -> None:
        super().__init__(signing_cert=asn1_x509.Certificate.load(key.certificate_der))
        self._private = key.private

    async def async_sign_raw(self, data: bytes, digest_algorithm: str, dry_run: bool = False) -> bytes:
        r, s = decode_dss_signature(self._private.sign(data, ECDSA(hashes.SHA256(), deterministic_signing=True)))
        return encode_dss_signature(r, min(s, P256_ORDER - s))


class _QuietWriter(IncrementalPdfFileWriter):
    """Adds to the file and leaves its description alone: closing changes neither title nor dates of the pages."""

    @classmethod
    def over(cls, pdf: bytes, at: datetime) -> _QuietWriter:
        writer = cls(io.BytesIO(pdf))
        seed = hashlib.sha256(pdf).digest() + at.isoformat().encode("ascii")
        first = writer._document_id[0] if "/ID" in writer.prev.trailer else _file_id(b"first" + seed)
        writer._document_id = generic.ArrayObject([first, _file_id(b"second" + seed)])
        return writer

    def _update_meta(self) -> None:
        """Nothing: the dates in the file are those of the report."""


def _file_id(seed: bytes) -> generic.ByteStringObject:
    """A file identifier that is new for new content (ISO 32000-1, 14.4) without asking for chance."""
    return generic.ByteStringObject(hashlib.sha256(seed).digest()[:16])


@dataclass(frozen=True)
class _DrawnStamp(BaseStampStyle):
    """The look of a visible seal: one page drawn by the report, scaled into the box. No text is set here."""

    drawn: bytes | None = None

    def create_stamp(self, writer: Any, box: layout.BoxConstraints, text_params: dict[str, str]) -> Any:
        return _Stamp(self.drawn, writer, box) if self.drawn is not None else None


class _Stamp(content.AppearanceContent):
    def __init__(self, drawn: bytes, writer: Any, box: layout.BoxConstraints) -> None:
        super().__init__(writer, box=box)
        self._drawn = drawn

    def render(self) -> bytes:
        page = self._ensure_writer.import_page_as_xobject(PdfFileReader(io.BytesIO(self._drawn)))
        self.resources.xobject["/Drawn"] = page
        left, low, right, high = (float(v) for v in page.get_object()["/BBox"])
        scale = min(self.box.width / (right - left), self.box.height / (high - low))
        x = (self.box.width - scale * (right - left)) / 2 - scale * left
        y = (self.box.height - scale * (high - low)) / 2 - scale * low
        return f"q {scale:.5f} 0 0 {scale:.5f} {x:.3f} {y:.3f} cm /Drawn Do Q".encode("ascii")
