"""Copies: upright, small, sRGB, and nothing in them but the picture."""

from __future__ import annotations

import io

import numpy as np
import pytest
from photographed_samples import BLUE, GREEN, GREY, RED, SAMPLES, corners, notes, photo, saved
from PIL import Image, ImageCms, ImageOps

from detailbench.basics.errors import BadFile
from detailbench.photos.copies import print_copy, small_copy


def seen(jpeg: bytes) -> Image.Image:
    return Image.open(io.BytesIO(jpeg)).convert("RGB")


def corner_colours(image: Image.Image) -> list[tuple[int, ...]]:
    """Upper left, upper right, lower left, lower right."""
    right, low = image.width - 5, image.height - 5
    return [image.getpixel(place) for place in ((4, 4), (right, 4), (4, low), (right, low))]  # type: ignore[misc]


def close(one: tuple[int, ...], other: tuple[int, ...], within: int = 14) -> bool:
    return all(abs(a - b) <= within for a, b in zip(one, other, strict=True))


# where the stored corners (red, green, blue, grey: upper left, upper right, lower left, lower right) are to be seen;
# EXIF 2.32, tag 274: what the first row and column of the stored picture are on the upright one
UPRIGHT = {
    1: (RED, GREEN, BLUE, GREY),  # row 0 top, column 0 left
    2: (GREEN, RED, GREY, BLUE),  # top, right
    3: (GREY, BLUE, GREEN, RED),  # bottom, right
    4: (BLUE, GREY, RED, GREEN),  # bottom, left
    5: (RED, BLUE, GREEN, GREY),  # left, top
    6: (BLUE, RED, GREY, GREEN),  # right, top
    7: (GREY, GREEN, BLUE, RED),  # right, bottom
    8: (GREEN, GREY, RED, BLUE),  # left, bottom
}


@pytest.mark.parametrize("turn", UPRIGHT)
def test_every_turn_a_camera_notes_comes_out_upright(turn: int) -> None:
    for copy in (small_copy(photo(turn), 96), print_copy(photo(turn))):
        image = seen(copy)
        assert image.size == ((64, 96) if turn >= 5 else (96, 64))
        for found, expected in zip(corner_colours(image), UPRIGHT[turn], strict=True):
            assert close(found, expected), turn


def test_a_turned_heic_comes_out_upright_once() -> None:
    image = seen(small_copy((SAMPLES / "turned.heic").read_bytes(), 96))
    assert image.size == (64, 96)
    upper_left, upper_right, *_ = corner_colours(image)
    assert close(upper_left, (20, 20, 160))
    assert close(upper_right, (220, 30, 30))


@pytest.mark.parametrize(("longest", "size"), [(48, (32, 48)), (10, (7, 10)), (500, (64, 96))])
def test_a_copy_is_as_long_as_asked_and_never_enlarged(longest: int, size: tuple[int, int]) -> None:
    assert seen(small_copy(photo(6), longest)).size == size


@pytest.mark.parametrize("make", [lambda c: small_copy(c, 64), print_copy])
def test_place_camera_time_and_remarks_do_not_come_along(make: object) -> None:
    original = saved(
        corners(), exif=notes(), comment=b"remark of the camera", xmp=b"<x:xmpmeta xmlns:x='adobe:ns:meta/'/>"
    )
    assert b"remark of the camera" in original
    copy = make(original)  # type: ignore[operator]
    image = Image.open(io.BytesIO(copy))
    assert not image.getexif()
    assert not {"exif", "comment", "xmp", "icc_profile", "photoshop"} & set(image.info)
    for trace in (b"Exif", b"Invented", b"remark", b"2031:03", b"xmpmeta"):
        assert trace in original
        assert trace not in copy


def test_png_and_heic_lose_their_notes_too() -> None:
    for original in (saved(corners(), "PNG", exif=notes()), (SAMPLES / "turned.heic").read_bytes()):
        assert b"Invented" in original
        assert b"Invented" not in small_copy(original, 64)


def test_the_same_photograph_gives_the_same_copy() -> None:
    assert print_copy(photo(6)) == print_copy(photo(6))


def test_colours_of_a_wide_profile_are_brought_to_srgb() -> None:
    """A profile that swaps what numbers mean must change the numbers, and bring the eye the same colour."""
    lab = ImageCms.createProfile("LAB")
    patch = Image.new("RGB", (32, 32), (180, 90, 40))
    to_lab = ImageCms.profileToProfile(patch, ImageCms.createProfile("sRGB"), lab, outputMode="LAB")
    back = ImageCms.profileToProfile(to_lab, lab, ImageCms.createProfile("sRGB"), outputMode="RGB")
    assert close(back.getpixel((3, 3)), (180, 90, 40), 3)  # type: ignore[arg-type]
    wide = ImageCms.ImageCmsProfile(io.BytesIO(WIDE))
    stored = ImageCms.profileToProfile(patch, ImageCms.createProfile("sRGB"), wide, outputMode="RGB")
    assert not close(stored.getpixel((3, 3)), (180, 90, 40), 8)  # type: ignore[arg-type]
    copy = seen(print_copy(saved(stored, "PNG", icc_profile=WIDE)))
    assert close(copy.getpixel((16, 16)), (180, 90, 40), 6)  # type: ignore[arg-type]


def test_a_broken_profile_does_not_cost_the_picture() -> None:
    copy = seen(print_copy(saved(corners(), "PNG", icc_profile=b"no profile at all")))
    assert close(corner_colours(copy)[0], RED)


def test_a_profile_made_for_other_pixels_does_not_cost_the_picture() -> None:
    lab = ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB")).tobytes()
    copy = seen(print_copy(saved(corners(), "PNG", icc_profile=lab)))
    assert close(corner_colours(copy)[0], RED)


def test_see_through_and_odd_pixels_come_out_as_plain_rgb_on_white() -> None:
    clear = corners().convert("RGBA")
    clear.putalpha(0)
    assert close(seen(small_copy(saved(clear, "PNG"), 96)).getpixel((9, 9)), (255, 255, 255))  # type: ignore[arg-type]
    palette = corners().convert("P")
    assert close(corner_colours(seen(small_copy(saved(palette, "PNG"), 96)))[0], RED, 40)
    deep = Image.fromarray(np.full((40, 40), 0x8000, dtype=np.uint16))
    assert close(seen(small_copy(saved(deep, "PNG"), 96)).getpixel((9, 9)), (128, 128, 128), 3)  # type: ignore[arg-type]
    inks = ImageOps.invert(corners()).convert("CMYK")
    assert Image.open(io.BytesIO(small_copy(saved(inks), 96))).mode == "RGB"


def test_a_copy_of_what_is_no_photograph_is_refused() -> None:
    with pytest.raises(BadFile, match="not a photograph"):
        small_copy(b"hello", 96, name="note.jpg")


def _wide_profile() -> bytes:
    """sRGB with its red and green columns swapped: a legal profile under which numbers mean other colours."""
    profile = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    red, green = profile.index(b"rXYZ"), profile.index(b"gXYZ")
    profile[red : red + 4], profile[green : green + 4] = b"gXYZ", b"rXYZ"
    return bytes(profile)


WIDE = _wide_profile()
