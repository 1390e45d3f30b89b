"""A day and a time as typed."""

from __future__ import annotations

import re
from datetime import datetime

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _

CLOCK = re.compile(r"(\d{1,2})[:.](\d{2})")
DAY = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})[ T]+(\d{1,2})[:.](\d{2})")


def read_moment(text: str, now: datetime) -> datetime | None:
    """``17:10`` of today, or ``2031-05-05 17:10``; in the clock's own offset. None where nothing stands. Raises
    BadInput for anything else."""
    text = text.strip()
    if not text:
        return None
    today, day = CLOCK.fullmatch(text), DAY.fullmatch(text)
    try:
        if today:
            return now.replace(hour=int(today[1]), minute=int(today[2]), second=0, microsecond=0)
        if day:
            year, month, of_month, hour, minute = (int(part) for part in day.groups())
            return datetime(year, month, of_month, hour, minute, tzinfo=now.tzinfo)
    except ValueError:
        pass
    raise BadInput(_("Type a day and time like 2031-05-05 18:10, or 18:10 for today."), field="at", given=text)
