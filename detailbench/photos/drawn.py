"""Drawn stand-ins for photographs: a lamp's reflection in dark paint, with swirls round it or without.

For the example workshop and for tests, where a real photograph would show a real car. They say *drawn* in the picture.
"""

from __future__ import annotations

import io

import numpy as np
from PIL import Image, ImageDraw

SWIRLS = {"many": 260, "few": 40, "none": 0}
WIDE_PX, HIGH_PX = 960, 640


def drawn_reflection(swirls: int, seed: int = 1) -> bytes:
    """A JPEG, 960 × 640: a point lamp mirrored in dark blue paint and ``swirls`` fine scratches. A scratch lights up
    where it crosses the light's direction, so a random scatter looks like rings round the lamp. Same numbers, same
    bytes."""
    rng = np.random.default_rng(seed)
    lamp_x, lamp_y = WIDE_PX * 0.55, HIGH_PX * 0.42
    y, x = np.mgrid[0:HIGH_PX, 0:WIDE_PX]
    away = np.hypot(x - lamp_x, y - lamp_y)
    glow = 235.0 * np.exp(-((away / 26.0) ** 2)) + 70.0 * np.exp(-away / 150.0)
    base = np.array([14.0, 20.0, 44.0])
    shade = 1.0 + 0.25 * (y / HIGH_PX)
    picture = base[None, None, :] * shade[:, :, None] + glow[:, :, None] * np.array([1.0, 0.98, 0.9])
    picture += rng.normal(0.0, 1.2, picture.shape)  # a sensor's grain
    image = Image.fromarray(np.clip(picture, 0, 255).astype(np.uint8), "RGB")
    draw = ImageDraw.Draw(image, "RGBA")
    for _n in range(swirls):
        radius, angle = 30.0 + 260.0 * rng.random(), 2 * np.pi * rng.random()
        length = rng.uniform(0.08, 0.5) * (40.0 / radius + 0.4)
        bright = int(150 * np.exp(-radius / 140.0)) + 25
        box = (lamp_x - radius, lamp_y - radius, lamp_x + radius, lamp_y + radius)
        start = np.degrees(angle)
        draw.arc(box, start, start + float(np.degrees(length)), fill=(220, 220, 210, bright), width=1)
    draw.text((14, HIGH_PX - 24), "drawn, invented: no real paint", fill=(170, 170, 170, 255))
    out = io.BytesIO()
    image.save(out, "JPEG", quality=82)
    return out.getvalue()
