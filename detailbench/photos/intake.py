"""Taking photographs in: what each file is, when it was taken, why one was refused. Originals stay as they are."""

from __future__ import annotations

import hashlib
import re
import struct
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta, timezone
from enum import StrEnum
from pathlib import Path

from PIL import ExifTags, Image

from detailbench.basics.clock import Clock
from detailbench.basics.errors import BadFile, DetailbenchError
from detailbench.basics.texts import _
from detailbench.photos.kinds import ENOUGH_TO_TELL, kind_of
from detailbench.photos.opening import photograph, refused

LARGEST_FILE_BYTES = 200_000_000
_LOOK_PX = 256  # how finely a file is unpacked to see that all of it is there


class OffsetSource(StrEnum):
    """Where the offset from UTC of ``taken_at`` comes from."""

    CAMERA = "camera"
    """The camera wrote it beside the time."""
    ASSUMED = "assumed"
    """The camera wrote none; that of the workshop's clock was taken."""
    CLOCK_PHOTO = "clock photo"
    """Corrected by a photograph of a clock with the same camera."""
    NONE = "none"
    """There is no time in the file."""


@dataclass(frozen=True)
class PhotoFinding:
    """What a photograph says about itself.

    ``width_px`` and ``height_px`` are as seen, after the turn the camera noted (``turn``, EXIF 1 to 8). ``taken_at``
    is aware or None. ``camera`` is for telling two cameras apart and is not printed. ``has_place`` says that the file
    tells where it was taken; copies never carry that.
    """

    name: str
    sha256: str
    size_bytes: int
    media_type: str
    width_px: int
    height_px: int
    turn: int
    taken_at: datetime | None
    offset_source: OffsetSource
    camera: str
    has_place: bool


@dataclass(frozen=True)
class Looked:
    """One file of a group: ``finding`` or, when it was not taken, ``sentence``. ``same_as`` names its double."""

    path: Path
    number: int
    of: int
    finding: PhotoFinding | None = None
    sentence: str = ""
    same_as: str = ""
    content: bytes = field(default=b"", repr=False)


def content_hash(content: bytes) -> str:
    """SHA-256 of the file as it came, hex: the name evidence is kept under."""
    return hashlib.sha256(content).hexdigest()


def look_at(content: bytes, name: str, clock: Clock) -> PhotoFinding:
    """Look at one file. Raises BadFile with a sentence: empty, another kind of file, too large, damaged, cut short."""
    with photograph(content, name) as image:
        width, height = image.size
        notes = _notes(image)
        image.draft(None, (_LOOK_PX, _LOOK_PX))  # a JPEG is read to its end but unpacked coarsely, much faster
        image.load()  # a file that was cut short shows here
    turn = _turn(notes.get(ExifTags.Base.Orientation))
    taken_at, source = _taken_at(notes, clock)
    return PhotoFinding(
        name=name,
        sha256=content_hash(content),
        size_bytes=len(content),
        media_type=kind_of(content[:ENOUGH_TO_TELL]).media_type,
        width_px=height if turn >= 5 else width,
        height_px=width if turn >= 5 else height,
        turn=turn,
        taken_at=taken_at,
        offset_source=source,
        camera=_camera(notes),
        has_place=ExifTags.IFD.GPSInfo in notes,
    )


def look_at_many(
    paths: Iterable[Path],
    clock: Clock,
    *,
    cancelled: Callable[[], bool] = lambda: False,
    known: Mapping[str, str] | None = None,
) -> Iterator[Looked]:
    """Look at files one by one, each result as soon as it is there; one bad file never stops the rest.

    ``known`` maps the content hash of photographs already kept to their names. The second of two equal files is
    reported with ``same_as``, once, and carries no content. ``cancelled`` is asked before each file.
    """
    files = list(paths)
    seen = dict(known or {})
    for number, path in enumerate(files, start=1):
        if cancelled():
            return
        bare = Looked(path, number, len(files))
        try:
            content = read_photo(path)
            same_as = seen.get(content_hash(content), "")
            if same_as:
                sentence = _("{name} is the same photograph as {other}; it is kept once.").format(
                    name=path.name, other=same_as
                )
                yield replace(bare, sentence=sentence, same_as=same_as)
                continue
            finding = look_at(content, path.name, clock)
        except DetailbenchError as error:
            yield replace(bare, sentence=str(error))
            continue
        seen[finding.sha256] = path.name
        yield replace(bare, finding=finding, content=content)


def read_photo(path: Path) -> bytes:
    """The bytes of a photograph; other kinds of file are refused by their first bytes, before all is read."""
    try:
        if path.is_dir():
            raise refused(path.name, _("it is a folder; open it and choose the photographs in it"))
        with path.open("rb") as file:
            start = file.read(ENOUGH_TO_TELL)
            kind = kind_of(start)
            if not kind.media_type:
                raise refused(path.name, kind.instead)
            content = start + file.read(LARGEST_FILE_BYTES)
    except OSError as error:
        raise BadFile(
            _("{name} cannot be read: {why}.").format(name=path.name, why=error.strerror or error), name=path.name
        ) from error
    if len(content) > LARGEST_FILE_BYTES:
        raise refused(path.name, _("it is larger than {n} MB").format(n=LARGEST_FILE_BYTES // 1_000_000))
    return content


def camera_ahead(finding: PhotoFinding, clock_showed: datetime) -> timedelta:
    """How far the camera's clock is ahead, from a photograph of a clock that showed ``clock_showed`` (aware)."""
    if finding.taken_at is None:
        raise BadFile(_("{name} carries no time, so it cannot set the camera's clock.").format(name=finding.name))
    return finding.taken_at - clock_showed


def corrected(finding: PhotoFinding, ahead: timedelta) -> PhotoFinding:
    """The same photograph with its time put right by ``camera_ahead``; without a time it stays as it is."""
    if finding.taken_at is None:
        return finding
    return replace(finding, taken_at=finding.taken_at - ahead, offset_source=OffsetSource.CLOCK_PHOTO)


# --- what the camera wrote into the file (EXIF 2.32, tags by their names there) ----------------------------


_TIMES = (
    (ExifTags.Base.DateTimeOriginal, ExifTags.Base.OffsetTimeOriginal),
    (ExifTags.Base.DateTimeDigitized, ExifTags.Base.OffsetTimeDigitized),
    (ExifTags.Base.DateTime, ExifTags.Base.OffsetTime),
)
_IN_MAIN = (ExifTags.Base.Orientation, ExifTags.Base.Make, ExifTags.Base.Model, ExifTags.Base.DateTime)
_IN_DETAILS = tuple(tag for pair in _TIMES for tag in pair if tag not in _IN_MAIN)

# Pillow unpacks each note only when it is asked for, so each may turn out broken by itself
_BROKEN_NOTE = (OSError, SyntaxError, ValueError, TypeError, LookupError, struct.error)


def _notes(image: Image.Image) -> dict[int, object]:
    """The notes wanted, by tag. One that cannot be read counts as absent, since the picture itself may be sound."""
    found: dict[int, object] = {}
    try:
        exif = image.getexif()
        details = exif.get_ifd(ExifTags.IFD.Exif)
        if exif.get_ifd(ExifTags.IFD.GPSInfo):
            found[ExifTags.IFD.GPSInfo] = True
    except _BROKEN_NOTE:
        return found
    for tags, block in ((_IN_MAIN, exif), (_IN_DETAILS, details)):
        for tag in tags:
            try:
                value = block.get(tag)
            except _BROKEN_NOTE:
                continue
            if value is not None:
                found[tag] = value
    return found


def _turn(value: object) -> int:
    return value if isinstance(value, int) and 1 <= value <= 8 else 1


def _camera(notes: dict[int, object]) -> str:
    parts = (str(notes.get(tag, "")).strip("\0 ") for tag in (ExifTags.Base.Make, ExifTags.Base.Model))
    return " ".join(part for part in parts if part)


def _taken_at(notes: dict[int, object], clock: Clock) -> tuple[datetime | None, OffsetSource]:
    for time_tag, offset_tag in _TIMES:
        local = _local_time(notes.get(time_tag))
        if local is None:
            continue
        offset = _offset(notes.get(offset_tag))
        if offset is not None:
            return local.replace(tzinfo=offset), OffsetSource.CAMERA
        return local.replace(tzinfo=clock.now().tzinfo), OffsetSource.ASSUMED
    return None, OffsetSource.NONE


def _local_time(text: object) -> datetime | None:
    try:
        return datetime.strptime(str(text).strip("\0 "), "%Y:%m:%d %H:%M:%S")
    except ValueError:
        return None  # cameras whose clock was never set write zeros or blanks


def _offset(text: object) -> timezone | None:
    found = re.fullmatch(r"([+-])(\d\d):(\d\d)", str(text).strip("\0 "))
    if not found or int(found[2]) > 14 or int(found[3]) > 59:
        return None
    size = timedelta(hours=int(found[2]), minutes=int(found[3]))
    return timezone(-size if found[1] == "-" else size)
