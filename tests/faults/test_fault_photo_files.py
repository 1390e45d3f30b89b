"""Photographs meant to do harm, and disks that fail: one sentence, and the bench goes on."""

from __future__ import annotations

import errno
import random
import struct
import warnings
import zlib
from pathlib import Path

import pytest
from photographed_samples import SAMPLES, corners, notes, photo, saved
from PIL import Image

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadFile
from detailbench.photos.copies import print_copy, small_copy
from detailbench.photos.intake import look_at, look_at_many
from detailbench.photos.opening import MOST_PIXELS


def png_of(width: int, height: int) -> bytes:
    """A PNG of one repeated line: a few kB that claim to be ``width`` × ``height``."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    header = struct.pack(">IIBBBBB", width, height, 1, 0, 0, 0, 0)
    packer = zlib.compressobj(9)
    line = b"\0" * (1 + (width + 7) // 8)
    data = b"".join([*(packer.compress(line) for _ in range(height)), packer.flush()])
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", data) + chunk(b"IEND", b"")


@pytest.mark.parametrize(("width", "height"), [(9_500, 9_500), (13_000, 13_000), (30_000, 30_000)])
def test_a_small_file_that_unpacks_to_far_too_many_pixels_is_refused(clock: HandClock, width: int, height: int) -> None:
    """The middle ones, between one and two times the limit, Pillow would only warn about."""
    bomb = png_of(width, height)
    assert len(bomb) < 200_000
    for act in (lambda: look_at(bomb, "b.png", clock), lambda: small_copy(bomb, 100), lambda: print_copy(bomb)):
        with pytest.raises(BadFile, match="89 million pixels"):
            act()


def test_it_is_refused_also_where_warnings_are_not_errors(clock: HandClock) -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        with pytest.raises(BadFile, match="89 million pixels"):
            look_at(png_of(9_500, 9_500), "b.png", clock)


def test_the_limit_is_the_one_pillow_warns_at() -> None:
    assert MOST_PIXELS == Image.MAX_IMAGE_PIXELS


def test_a_heic_that_claims_too_many_pixels_is_refused(clock: HandClock) -> None:
    content = bytearray((SAMPLES / "turned.heic").read_bytes())
    place = content.index(b"ispe") + 8  # ISO/IEC 23008-12, 6.5.3: width and height after version and flags
    content[place : place + 8] = struct.pack(">II", 12_000, 9_000)
    with pytest.raises(BadFile, match="million pixels"):
        look_at(bytes(content), "b.heic", clock)


def test_a_png_whose_text_unpacks_without_end_is_refused(clock: HandClock) -> None:
    packed = zlib.compress(b"a" * 80_000_000, 9)
    body = b"zTXt" + b"Comment\0\0" + packed
    text = struct.pack(">I", len(packed) + 9) + body + struct.pack(">I", zlib.crc32(body))
    plain = saved(corners(), "PNG")
    with pytest.raises(BadFile, match="damaged"):
        look_at(plain[:33] + text + plain[33:], "t.png", clock)


@pytest.mark.parametrize("place", [b"Exif\0", b"hvc1\0"])
def test_a_heic_whose_table_of_contents_is_not_text_is_refused_before_it_can_stop_the_program(
    clock: HandClock, place: bytes
) -> None:
    content = bytearray((SAMPLES / "turned.heic").read_bytes())
    content[content.index(place)] = 0xCD
    with pytest.raises(BadFile, match="damaged"):
        look_at(bytes(content), "b.heic", clock)


def test_what_a_phone_hangs_behind_the_last_box_does_not_cost_the_picture(clock: HandClock) -> None:
    content = (SAMPLES / "turned.heic").read_bytes() + b"\x7f\0\0\0tail of some phone"
    assert look_at(content, "b.heic", clock).width_px == 64


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "HEIC"])
def test_random_damage_ends_in_a_picture_or_one_sentence_and_nothing_else(clock: HandClock, kind: str) -> None:
    chance = random.Random(11)
    whole = (SAMPLES / "turned.heic").read_bytes() if kind == "HEIC" else saved(corners(), kind, exif=notes(turn=6))
    refusals: list[str] = []
    for _ in range(150):
        content = bytearray(whole)
        for _ in range(chance.choice((1, 3, 20))):
            content[chance.randrange(len(content))] = chance.randrange(256)
        try:
            look_at(bytes(content), "x", clock)
            small_copy(bytes(content), 50, name="x")
        except BadFile as error:
            refusals.append(str(error))
    assert 0 < len(refusals) < 150
    assert all(sentence.startswith("x was not taken") for sentence in refusals)


def test_a_card_pulled_out_while_reading_is_said_and_the_rest_goes_on(
    tmp_path: Path, clock: HandClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    one, two = tmp_path / "one.jpg", tmp_path / "two.jpg"
    one.write_bytes(photo())
    two.write_bytes(photo(3))
    real = Path.open

    def pulled(path: Path, *more: object, **most: object) -> object:
        if path == one:
            raise OSError(errno.EIO, "Input/output error")
        return real(path, *more, **most)  # type: ignore[call-overload]

    monkeypatch.setattr(Path, "open", pulled)
    first, second = look_at_many([one, two], clock)
    assert first.sentence == "one.jpg cannot be read: Input/output error."
    assert second.finding is not None
