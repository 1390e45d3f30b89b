"""Invented photographs for the photo tests: coloured corners, notes a camera writes, files that are something else."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

from PIL import ExifTags, Image

SAMPLES = Path(__file__).parent / "photos" / "samples"

RED, GREEN, BLUE, GREY = (200, 30, 30), (30, 180, 30), (30, 30, 200), (120, 120, 120)


def corners(width: int = 96, height: int = 64) -> Image.Image:
    """Red upper left, green upper right, blue lower left, grey lower right."""
    image = Image.new("RGB", (width, height), GREY)
    image.paste(RED, (0, 0, width // 2, height // 2))
    image.paste(GREEN, (width // 2, 0, width, height // 2))
    image.paste(BLUE, (0, height // 2, width // 2, height))
    return image


def notes(
    *, turn: int = 1, taken: str | None = "2031:03:10 08:15:30", offset: str | None = "+01:00", place: bool = True
) -> Image.Exif:
    """What a camera writes beside the picture."""
    exif = Image.Exif()
    exif[ExifTags.Base.Orientation] = turn
    exif[ExifTags.Base.Make] = "Invented"
    exif[ExifTags.Base.Model] = "Camera 1"
    details = exif.get_ifd(ExifTags.IFD.Exif)
    if taken is not None:
        details[ExifTags.Base.DateTimeOriginal] = taken
    if offset is not None:
        details[ExifTags.Base.OffsetTimeOriginal] = offset
    if place:
        where = exif.get_ifd(ExifTags.IFD.GPSInfo)
        where[ExifTags.GPS.GPSLatitudeRef] = "N"
        where[ExifTags.GPS.GPSLatitude] = (10.0, 20.0, 30.0)
    return exif


def saved(image: Image.Image, kind: str = "JPEG", **options: object) -> bytes:
    out = io.BytesIO()
    image.save(out, kind, **options)
    return out.getvalue()


def photo(turn: int = 1, **more: object) -> bytes:
    """A JPEG of ``corners`` as stored, with notes."""
    return saved(corners(), quality=95, exif=notes(turn=turn, **more))  # type: ignore[arg-type]


def zipped() -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr("photo.jpg", "not really")
    return out.getvalue()


VIDEO = b"\x00\x00\x00\x18ftypmp42\x00\x00\x00\x00mp42isom" + b"\x00" * 400
