"""The colour ramp tells the order by lightness alone, in even steps, for every eye and in grey."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray

from detailbench.basics.colours import Rgb, contrast, hex_of, luminance, mixed, rgb_of
from detailbench.basics.ramp import HATCHES, STOPS, ink_on, ramp_rgb

SHARES = st.floats(0, 1)

# Oklab: B. Ottosson, "A perceptual color space for image processing" (2020), matrices M1 and M2 for linear sRGB
M1 = np.array(
    [
        [0.4122214708, 0.5363325363, 0.0514459929],
        [0.2119034982, 0.6806995451, 0.1073969566],
        [0.0883024619, 0.2817188376, 0.6299787005],
    ]
)
M2 = np.array(
    [
        [0.2104542553, 0.7936177850, -0.0040720468],
        [1.9779984951, -2.4285922050, 0.4505937099],
        [0.0259040371, 0.7827717662, -0.8086757660],
    ]
)
# colour vision deficiency, severity 1.0: Machado, Oliveira, Fernandes, IEEE TVCG 15 (2009) 1291
DEFICIENCIES = {
    "protan": [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
    "deutan": [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]],
    "tritan": [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]],
}


def linear(rgb: Rgb) -> NDArray[np.float64]:
    c = np.array(rgb) / 255
    return np.where(c <= 0.04045, c / 12.92, ((c + 0.055) / 1.055) ** 2.4)


def oklab(lin: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.asarray(M2 @ np.cbrt(M1 @ lin))


def test_the_stops_lie_evenly_spaced_for_the_eye() -> None:
    labs = [oklab(linear(rgb_of(s))) for s in STOPS]
    steps = np.linalg.norm(np.diff(labs, axis=0), axis=1)
    assert steps.max() / steps.min() < 1.15  # the rest is eight-bit rounding


def test_lightness_rises_with_every_step() -> None:
    light = [float(oklab(linear(ramp_rgb(i / 200)))[0]) for i in range(201)]
    assert min(np.diff(light)) > -1e-3  # one count of eight-bit rounding
    assert min(np.diff(light[::10])) > 0.015


@pytest.mark.parametrize("name", DEFICIENCIES)
def test_the_order_holds_for_eyes_that_confuse_colours(name: str) -> None:
    seen = [np.clip(np.array(DEFICIENCIES[name]) @ linear(ramp_rgb(i / 20)), 0, 1) for i in range(21)]
    assert min(np.diff([float(oklab(s)[0]) for s in seen])) > 0.01


def test_the_order_holds_in_grey() -> None:
    grey = [luminance(ramp_rgb(i / 20)) for i in range(21)]
    assert min(np.diff(grey)) > 0


@given(SHARES, st.tuples(st.floats(0, 0.4), st.floats(0.6, 1)))
def test_words_on_the_ramp_stand_out_by_four_and_a_half(share: float, within: tuple[float, float]) -> None:
    fill = ramp_rgb(share, within)
    assert contrast(ink_on(fill), fill) >= 4.5


@pytest.mark.parametrize(("share", "end"), [(-3.0, 0), (0.0, 0), (1.0, -1), (7.0, -1)])
def test_shares_beyond_the_ends_are_held_there(share: float, end: int) -> None:
    assert hex_of(ramp_rgb(share)) == STOPS[end]


def test_a_stretch_of_the_ramp_uses_only_that_stretch() -> None:
    assert ramp_rgb(0.0, (0.25, 0.75)) == ramp_rgb(0.25)
    assert ramp_rgb(1.0, (0.25, 0.75)) == ramp_rgb(0.75)


def test_black_on_white_has_the_published_contrast() -> None:
    # WCAG 2.2: the ratio ranges from 1 to 21
    assert contrast((0, 0, 0), (255, 255, 255)) == pytest.approx(21)
    assert contrast((120, 80, 3), (120, 80, 3)) == pytest.approx(1)


@pytest.mark.parametrize("text", ["1a224c", "#1a224", "red", "#1a224g"])
def test_what_is_no_colour_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"colour|invalid literal"):
        rgb_of(text)


def test_mixing_nothing_or_all_gives_the_one_or_the_other() -> None:
    one, other = (10, 20, 30), (200, 100, 50)
    assert mixed(one, other, 0) == one
    assert mixed(one, other, 1) == other
    assert mixed(one, other, 0.5) == (105, 60, 40)


def test_each_hatch_is_drawn_by_lines_or_by_dots() -> None:
    for key, lines in HATCHES.items():
        assert lines.key == key
        assert bool(lines.angles_deg) != lines.dotted
