"""Looking at a photograph: kind by content, size as seen, time with the source of its offset."""

from __future__ import annotations

import hashlib
from datetime import datetime, timedelta, timezone

import pytest
from photographed_samples import SAMPLES, VIDEO, corners, notes, photo, saved, zipped
from PIL import Image

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadFile
from detailbench.photos.intake import OffsetSource, camera_ahead, content_hash, corrected, look_at

CET = timezone(timedelta(hours=1))


def test_a_photograph_tells_kind_size_time_camera_and_whether_it_carries_a_place(clock: HandClock) -> None:
    content = photo()
    found = look_at(content, "IMG_1.jpg", clock)
    assert (found.name, found.media_type, found.size_bytes) == ("IMG_1.jpg", "image/jpeg", len(content))
    assert (found.width_px, found.height_px, found.turn) == (96, 64, 1)
    assert found.taken_at == datetime(2031, 3, 10, 8, 15, 30, tzinfo=CET)
    assert found.offset_source is OffsetSource.CAMERA
    assert found.camera == "Invented Camera 1"
    assert found.has_place
    assert found.sha256 == hashlib.sha256(content).hexdigest() == content_hash(content)


@pytest.mark.parametrize("turn", range(1, 9))
def test_the_size_is_as_seen_after_the_turn(clock: HandClock, turn: int) -> None:
    found = look_at(photo(turn), "a.jpg", clock)
    assert found.turn == turn
    assert (found.width_px, found.height_px) == ((64, 96) if turn in (5, 6, 7, 8) else (96, 64))


@pytest.mark.parametrize("turn", [0, 9, 77])
def test_a_turn_that_does_not_exist_is_none(clock: HandClock, turn: int) -> None:
    assert look_at(photo(turn), "a.jpg", clock).turn == 1


def test_a_large_photograph_keeps_its_full_size_though_it_is_unpacked_coarsely(clock: HandClock) -> None:
    found = look_at(saved(corners(3000, 2000)), "a.jpg", clock)
    assert (found.width_px, found.height_px) == (3000, 2000)


@pytest.mark.parametrize(("kind", "media_type"), [("PNG", "image/png"), ("WEBP", "image/webp"), ("MPO", "image/jpeg")])
def test_the_kind_goes_by_content_not_by_name(clock: HandClock, kind: str, media_type: str) -> None:
    more = {"save_all": True, "append_images": [corners()]} if kind == "MPO" else {}
    found = look_at(saved(corners(), kind, exif=notes(turn=6), **more), "named.txt", clock)
    assert found.media_type == media_type
    assert (found.width_px, found.height_px) == (64, 96)


def test_a_heic_from_a_phone_is_read_turned_once_with_time_and_place(clock: HandClock) -> None:
    found = look_at((SAMPLES / "turned.heic").read_bytes(), "IMG_2.HEIC", clock)
    assert found.media_type == "image/heic"
    assert (found.width_px, found.height_px, found.turn) == (64, 96, 1)
    assert found.taken_at == datetime(2031, 3, 10, 8, 15, 30, tzinfo=CET)
    assert found.has_place


def test_without_an_offset_the_workshops_own_is_assumed_and_said(clock: HandClock) -> None:
    found = look_at(photo(offset=None), "a.jpg", clock)
    assert found.taken_at == datetime(2031, 3, 10, 8, 15, 30, tzinfo=clock.now().tzinfo)
    assert found.offset_source is OffsetSource.ASSUMED


def test_an_offset_west_of_greenwich_is_read(clock: HandClock) -> None:
    taken = look_at(photo(offset="-03:30"), "a.jpg", clock).taken_at
    assert taken is not None
    assert taken.utcoffset() == -timedelta(hours=3, minutes=30)


@pytest.mark.parametrize("offset", ["+25:00", "   :  ", "+1:00", "Z", "+01:75"])
def test_an_offset_that_is_none_is_treated_as_missing(clock: HandClock, offset: str) -> None:
    assert look_at(photo(offset=offset), "a.jpg", clock).offset_source is OffsetSource.ASSUMED


@pytest.mark.parametrize("taken", [None, "0000:00:00 00:00:00", "    :  :     :  :  ", "soon"])
def test_a_camera_without_a_time_gives_none_never_a_guess(clock: HandClock, taken: str | None) -> None:
    found = look_at(photo(taken=taken), "a.jpg", clock)
    assert found.taken_at is None
    assert found.offset_source is OffsetSource.NONE


def test_a_picture_without_any_notes_is_taken(clock: HandClock) -> None:
    found = look_at(saved(corners()), "a.jpg", clock)
    assert (found.taken_at, found.camera, found.has_place, found.turn) == (None, "", False, 1)


def test_broken_notes_do_not_cost_the_picture(clock: HandClock) -> None:
    found = look_at(saved(corners(), exif=b"Exif\x00\x00MM\x00*\x00\x00\x00\x08\x00\x7f\x01\x12"), "a.jpg", clock)
    assert found.turn == 1
    assert found.taken_at is None


def test_a_camera_an_hour_ahead_is_put_right_by_a_photograph_of_a_clock(clock: HandClock) -> None:
    clock_photo = look_at(photo(taken="2031:03:10 09:00:00"), "clock.jpg", clock)
    ahead = camera_ahead(clock_photo, datetime(2031, 3, 10, 8, 0, tzinfo=CET))
    assert ahead == timedelta(hours=1)
    found = corrected(look_at(photo(taken="2031:03:10 09:10:00"), "a.jpg", clock), ahead)
    assert found.taken_at == datetime(2031, 3, 10, 8, 10, tzinfo=CET)
    assert found.offset_source is OffsetSource.CLOCK_PHOTO


def test_a_photograph_without_a_time_can_neither_set_nor_be_put_right(clock: HandClock) -> None:
    timeless = look_at(photo(taken=None), "a.jpg", clock)
    assert corrected(timeless, timedelta(hours=1)) == timeless
    with pytest.raises(BadFile, match="carries no time"):
        camera_ahead(timeless, datetime(2031, 3, 10, 8, 0, tzinfo=CET))


OTHER_FILES = {
    "empty": (b"", "it is empty, 0 bytes"),
    "zip": (zipped(), "it is a zip archive"),
    "video": (VIDEO, "it is a video"),
    "older video": (b"RIFF\x00\x00\x00\x00AVI LIST" + b"\x00" * 80, "it is a video"),
    "web video": (b"\x1aE\xdf\xa3" + b"\x00" * 80, "it is a video"),
    "pdf": (b"%PDF-1.7\n", "it is a PDF"),
    "raw or tiff": (b"II*\x00" + b"\x00" * 80, "save it as JPEG"),
    "text": (b"hello, this is no photograph", "it is not a photograph"),
    "three bytes": (b"\xff\xd8", "it is not a photograph"),
}


@pytest.mark.parametrize("what", OTHER_FILES)
def test_another_kind_of_file_named_jpg_is_refused_with_what_it_is(clock: HandClock, what: str) -> None:
    content, why = OTHER_FILES[what]
    with pytest.raises(BadFile, match=f"^IMG_3.jpg was not taken: .*{why}") as caught:
        look_at(content, "IMG_3.jpg", clock)
    assert caught.value.name == "IMG_3.jpg"


@pytest.mark.parametrize("share", [0.2, 0.5, 0.9, 0.98])
def test_a_photograph_cut_short_is_refused(clock: HandClock, share: float) -> None:
    noise = Image.effect_noise((320, 240), 80).convert("RGB")
    for whole in (saved(noise, exif=notes()), saved(noise, "PNG"), saved(noise, "WEBP")):
        with pytest.raises(BadFile, match="damaged or only part"):
            look_at(whole[: int(len(whole) * share)], "a.jpg", clock)


def test_a_heic_cut_short_is_refused(clock: HandClock) -> None:
    whole = (SAMPLES / "turned.heic").read_bytes()
    for length in (40, len(whole) // 2, len(whole) - 60):
        with pytest.raises(BadFile, match="damaged or only part"):
            look_at(whole[:length], "a.heic", clock)
