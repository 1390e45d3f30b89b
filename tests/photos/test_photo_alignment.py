"""Laying after over before by picked pairs: moved, turned and scaled as a whole, nothing bent."""

from __future__ import annotations

import io
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from photographed_samples import notes, saved
from PIL import Image, ImageDraw

from detailbench.basics.errors import BadInput
from detailbench.photos.alignment import align, fit_similarity

SQUARE = np.array([[0.0, 0.0], [100.0, 0.0], [100.0, 100.0], [0.0, 100.0]])


def moved(points: np.ndarray, scale: float, turn_rad: float, shift: tuple[float, float]) -> np.ndarray:
    c, s = math.cos(turn_rad), math.sin(turn_rad)
    return scale * points @ np.array([[c, s], [-s, c]]) + np.array(shift)


@given(
    scale=st.floats(0.2, 5.0),
    turn=st.floats(-3.1, 3.1),
    shift=st.tuples(st.floats(-500, 500), st.floats(-500, 500)),
    count=st.integers(2, 4),
)
def test_an_exact_similarity_is_found_again(scale: float, turn: float, shift: tuple[float, float], count: int) -> None:
    after = moved(SQUARE, scale, turn, shift)
    found = fit_similarity(SQUARE[:count], after[:count])
    assert found.scale == pytest.approx(scale)
    assert found.turn_rad == pytest.approx(turn, abs=1e-9)
    assert found.worst_px == pytest.approx(0, abs=1e-9)
    np.testing.assert_allclose(found.apply(SQUARE), after, atol=1e-8)


def test_a_quarter_turn_clockwise_on_the_screen_is_positive() -> None:
    found = fit_similarity(np.array([[0.0, 0.0], [10.0, 0.0]]), np.array([[0.0, 0.0], [0.0, 10.0]]))
    assert found.turn_rad == pytest.approx(math.pi / 2)


def test_slips_of_the_hand_are_evened_out_and_the_worst_is_told() -> None:
    after = moved(SQUARE, 1.0, 0.0, (0.0, 0.0))
    after[2] += (4.0, 0.0)
    found = fit_similarity(SQUARE, after)
    assert 0 < found.worst_px < 4.0

    # least squares: no other similarity near it has a smaller sum of squares
    def squares(scale: float, turn: float, x: float, y: float) -> float:
        return float(((moved(SQUARE, scale, turn, (x, y)) - after) ** 2).sum())

    there = (found.scale, found.turn_rad, found.shift_x_px, found.shift_y_px)
    best = squares(*there)
    for step in ((1e-3, 0, 0, 0), (0, 1e-3, 0, 0), (0, 0, 0.1, 0), (0, 0, 0, 0.1)):
        for sign in (1, -1):
            near = [value + sign * change for value, change in zip(there, step, strict=True)]
            assert squares(*near) > best


def test_two_pairs_fit_but_are_not_called_checked() -> None:
    assert not fit_similarity(SQUARE[:2], SQUARE[:2]).checked
    assert fit_similarity(SQUARE[:3], SQUARE[:3]).checked


def test_a_mirrored_picture_shows_as_a_large_rest_never_as_a_mirror() -> None:
    mirrored = SQUARE * (-1, 1)
    with pytest.raises(BadInput, match="contradict"):
        fit_similarity(SQUARE, mirrored)
    assert fit_similarity(SQUARE[:3], mirrored[:3]).worst_px > 20


@pytest.mark.parametrize(
    ("before", "after", "why"),
    [
        (SQUARE[:1], SQUARE[:1], "at least two"),
        (SQUARE[:2], SQUARE[:3], "at least two"),
        (np.zeros((3, 2)), SQUARE[:3], "on top of each other"),
        (SQUARE[:3], np.ones((3, 2)), "on top of each other"),
        (SQUARE[:2], np.array([[0.0, math.nan], [1.0, 1.0]]), "lies nowhere"),
    ],
)
def test_pairs_that_say_nothing_are_asked_for_again(before: np.ndarray, after: np.ndarray, why: str) -> None:
    with pytest.raises(BadInput, match=why):
        fit_similarity(before, after)


def panel(width: int, height: int, dots: np.ndarray) -> Image.Image:
    image = Image.new("RGB", (width, height), (90, 90, 90))
    draw = ImageDraw.Draw(image)
    for x, y in dots:
        draw.ellipse((x - 9, y - 9, x + 9, y + 9), fill=(255, 255, 0))
    return image


DOTS = np.array([[80.0, 60.0], [320.0, 70.0], [200.0, 240.0]])


def dot_places(image: Image.Image, near: np.ndarray, reach: int = 25) -> np.ndarray:
    """Middles of the yellow dots near the given places."""
    pixels = np.asarray(image).astype(int)
    yellow = (pixels[:, :, 0] > 170) & (pixels[:, :, 2] < 80)
    places = []
    for x, y in near.astype(int):
        low_y, low_x = max(y - reach, 0), max(x - reach, 0)
        rows, columns = np.nonzero(yellow[low_y : y + reach, low_x : x + reach])
        places.append((columns.mean() + low_x + 0.5, rows.mean() + low_y + 0.5))
    return np.array(places)


@pytest.mark.parametrize("longest", [400, 200])
def test_what_was_picked_lies_on_itself_in_the_pair(longest: int) -> None:
    after_dots = moved(DOTS, 0.8, 0.15, (90.0, 20.0))
    before, after = panel(400, 300, DOTS), panel(500, 400, after_dots)
    pair = align(saved(before, "PNG"), saved(after, "PNG"), DOTS, after_dots, longest_px=longest)
    small_before, small_after = (Image.open(io.BytesIO(jpeg)) for jpeg in (pair.before, pair.after))
    assert small_before.size == small_after.size == (longest, longest * 3 // 4)
    where = DOTS * longest / 400
    np.testing.assert_allclose(dot_places(small_before, where), where, atol=0.8)
    np.testing.assert_allclose(dot_places(small_after, where), where, atol=0.8)


def test_a_photograph_the_camera_noted_as_turned_is_laid_upright() -> None:
    upright = panel(300, 400, DOTS[:, ::-1])
    stored = upright.transpose(Image.Transpose.ROTATE_90)  # as a phone held upright stores it, with turn 6
    pair = align(
        saved(upright, "PNG"),
        saved(stored, exif=notes(turn=6), quality=95),
        DOTS[:, ::-1],
        DOTS[:, ::-1],
        longest_px=400,
    )
    laid = Image.open(io.BytesIO(pair.after))
    np.testing.assert_allclose(dot_places(laid, DOTS[:, ::-1]), DOTS[:, ::-1], atol=0.8)


def test_where_the_after_photograph_does_not_reach_is_white_not_invented() -> None:
    after_dots = DOTS - (60.0, 0.0)
    pair = align(saved(panel(400, 300, DOTS), "PNG"), saved(panel(400, 300, after_dots), "PNG"), DOTS, after_dots)
    edge = Image.open(io.BytesIO(pair.after)).convert("RGB").getpixel((10, 150))
    assert min(edge) > 245  # type: ignore[type-var]
