"""The four sounds as sound files in memory, made from sines. No Qt here.

They differ in number, pitch and direction, so that they are told apart under a polisher's noise and by an ear that has
lost the high notes: *saved* one short note, *flagged* two equal ones, *next* two rising, *stop* three falling and long.
"""

from __future__ import annotations

import io
import wave
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

RATE = 22050
RAMP_S = 0.008  # without it a note begins and ends with a click
GAP_S = 0.04
NOTES: dict[str, tuple[tuple[float, float], ...]] = {  # Hz, s
    "saved": ((880.0, 0.07),),
    "flagged": ((660.0, 0.11), (660.0, 0.11)),
    "next": ((660.0, 0.10), (990.0, 0.14)),
    "stop": ((520.0, 0.18), (390.0, 0.18), (292.0, 0.32)),
}


def samples(kind: str, loudness: float) -> NDArray[np.float64]:
    """The sound as samples between −1 and 1, shape (n,). ``loudness`` 0 … 1. KeyError for no sound of ours."""
    gap = np.zeros(round(GAP_S * RATE))
    parts: list[NDArray[np.float64]] = []
    for hertz, seconds in NOTES[kind]:
        parts += [_note(hertz, seconds), gap]
    return np.concatenate(parts[:-1]) * float(np.clip(loudness, 0.0, 1.0))


def _note(hertz: float, seconds: float) -> NDArray[np.float64]:
    t = np.arange(round(seconds * RATE)) / RATE
    tone = np.sin(2 * np.pi * hertz * t) + 0.35 * np.sin(4 * np.pi * hertz * t)
    ramp = np.minimum(1.0, np.minimum(t, t[::-1]) / RAMP_S)
    return np.asarray(tone * ramp / 1.35, dtype=np.float64)


@lru_cache(maxsize=64)
def sound_file(kind: str, percent: int) -> bytes:
    """The sound as a WAV file, 16 bits, one channel."""
    body = (samples(kind, percent / 100) * 32000).astype("<i2").tobytes()
    out = io.BytesIO()
    with wave.open(out, "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes(body)
    return out.getvalue()
