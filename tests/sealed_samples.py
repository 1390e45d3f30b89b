"""Invented documents and keys for the seal's tests: small PDFs, one workshop key, one stranger's key."""

from __future__ import annotations

import functools
import io
import tempfile
from datetime import datetime, timedelta, timezone
from pathlib import Path

from reportlab.pdfgen.canvas import Canvas

from detailbench.basics.clock import HandClock
from detailbench.seal.keys import WorkshopKey, make_key
from detailbench.seal.sealing import SealLook, seal_pdf

CLOSED_AT = datetime(2031, 3, 14, 17, 5, tzinfo=timezone(timedelta(hours=1)))
PASSPHRASE = "four ordinary words here"
WORKSHOP = "Invented Bench"
WORDS = "left front wing: 118 µm (invented)"


def plain_pdf(words: str = WORDS, pages: int = 2, size: tuple[int, int] = (595, 842)) -> bytes:
    """A plain PDF as the report hands it over, the same bytes each time."""
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=size, invariant=1)
    for number in range(pages):
        canvas.drawString(20, 30, f"{words} page {number + 1}")
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def sample_key(workshop: str = WORKSHOP) -> WorkshopKey:
    """A workshop's key, made once for the whole run and kept nowhere."""
    return _key(workshop)


@functools.cache
def _key(workshop: str) -> WorkshopKey:
    with tempfile.TemporaryDirectory() as folder:
        return make_key(Path(folder) / "workshop.key", workshop, PASSPHRASE, HandClock(CLOSED_AT))


def sealed_pdf(workshop: str = WORKSHOP, *, words: str = WORDS, owner: bool = True) -> bytes:
    """``plain_pdf`` closed by the workshop, with a drawn seal on the last page."""
    return _sealed(workshop, words, owner)


@functools.cache
def _sealed(workshop: str, words: str, owner: bool) -> bytes:
    return seal_pdf(
        plain_pdf(words),
        sample_key(workshop),
        HandClock(CLOSED_AT),
        reason="Handover",
        location="Workshop",
        name="Ana (invented)",
        look=SealLook(plain_pdf("seal", pages=1, size=(200, 80)), (50, 60, 250, 140)),
        owner_field=owner,
        owner_box=(300, 60, 500, 140) if owner else None,
    )
