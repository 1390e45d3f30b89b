"""What a forgotten job still says: that its owner's data was deleted, and when."""

from __future__ import annotations

from datetime import datetime

from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture, ShopPicture


def forgotten_at(shop: ShopPicture, job_id: str) -> datetime | None:
    """When the personal data of this job was last deleted; None while it is there."""
    found = [f.entered_at for f in shop.forgettings if f.job_id == job_id]
    return found[-1] if found else None


def forgotten_words(shop: ShopPicture, job_id: str) -> str:
    """``forgotten on 2031-05-09``, or empty."""
    at = forgotten_at(shop, job_id)
    return "" if at is None else _("forgotten on {day}").format(day=at.date().isoformat())


def said_or_forgotten(picture: JobPicture, subject: str, name: str) -> str:
    """A personal value; where it is empty in a forgotten job, the words that it was forgotten."""
    return picture.said(subject, name) or forgotten_words(picture.shop, picture.job.id)
