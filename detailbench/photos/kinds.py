"""What a file is, by its first bytes, whatever it is called."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.basics.texts import _

ENOUGH_TO_TELL = 64
"""Bytes from the start of a file that ``kind_of`` needs."""


@dataclass(frozen=True)
class Kind:
    """``media_type`` of a photograph the program reads; or, empty, what the file is instead, as end of a sentence."""

    media_type: str
    instead: str = ""


# file type brands of ISO/IEC 14496-12; those of pictures are of ISO/IEC 23008-12 (HEIF)
_HEIF_BRANDS = (b"heic", b"heix", b"heim", b"heis", b"mif1")


def kind_of(start: bytes) -> Kind:
    """The kind of file that begins with ``start`` (its first ``ENOUGH_TO_TELL`` bytes)."""
    if not start:
        return Kind("", _("it is empty, 0 bytes"))
    if start.startswith(b"\xff\xd8\xff"):
        return Kind("image/jpeg")
    if start.startswith(b"\x89PNG\r\n\x1a\n"):
        return Kind("image/png")
    if start[:4] == b"RIFF" and start[8:12] == b"WEBP":
        return Kind("image/webp")
    if start[4:8] == b"ftyp":
        brands = {start[i : i + 4] for i in (8, *range(16, len(start) - 3, 4))}
        if start[8:12] in _HEIF_BRANDS:
            return Kind("image/heic")
        if b"avif" in brands or b"avis" in brands:
            return Kind("", _("it is a kind of picture the program does not read; save it as JPEG"))
        return Kind("", _("it is a video"))
    return Kind("", _instead(start))


def _instead(start: bytes) -> str:
    if start[:4] == b"RIFF" and start[8:12] == b"AVI ":
        return _("it is a video")
    if start.startswith(b"\x1aE\xdf\xa3") or start[4:8] in (b"moov", b"mdat", b"wide", b"free"):
        return _("it is a video")
    if start.startswith((b"PK\x03\x04", b"PK\x05\x06")):
        return _("it is a zip archive; unpack it first")
    if start.startswith(b"%PDF-"):
        return _("it is a PDF")
    if start.startswith((b"II*\x00", b"MM\x00*", b"II+\x00", b"MM\x00+", b"GIF8", b"BM")):
        return _("it is a kind of picture the program does not read; save it as JPEG")
    return _("it is not a photograph")
