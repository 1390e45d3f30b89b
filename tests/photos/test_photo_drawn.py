"""The drawn stand-ins are taken in like any photograph."""

from __future__ import annotations

import io

import numpy as np
import pytest
from PIL import Image

from detailbench.basics.clock import HandClock
from detailbench.photos.drawn import HIGH_PX, SWIRLS, WIDE_PX, drawn_reflection
from detailbench.photos.intake import look_at


def light(content: bytes) -> float:
    return float(np.asarray(Image.open(io.BytesIO(content)).convert("L"), dtype=float).mean())


@pytest.mark.parametrize("swirls", SWIRLS.values(), ids=SWIRLS)
def test_a_drawn_photo_is_taken_in_like_any_other(swirls: int, clock: HandClock) -> None:
    seen = look_at(drawn_reflection(swirls), "drawn.jpg", clock)
    assert (seen.media_type, seen.width_px, seen.height_px, seen.taken_at) == ("image/jpeg", WIDE_PX, HIGH_PX, None)


def test_the_same_numbers_draw_the_same_bytes() -> None:
    assert drawn_reflection(40, seed=3) == drawn_reflection(40, seed=3)
    assert drawn_reflection(40, seed=3) != drawn_reflection(40, seed=4)


def test_more_swirls_throw_more_light() -> None:
    none, few, many = (light(drawn_reflection(SWIRLS[k])) for k in ("none", "few", "many"))
    assert none < few < many
