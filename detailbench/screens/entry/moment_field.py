"""A day and a time as typed; empty means now."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.screens.entry.text_field import TextField

FORMS = ("%Y-%m-%d %H:%M", "%H:%M")


class MomentField(TextField):
    """``value`` reads what stands there; what cannot be read stays, with a sentence."""

    def __init__(self, title: str, now: Callable[[], datetime]) -> None:
        super().__init__(title, check=self._check)
        self._now = now
        self.line.setPlaceholderText(_("now"))

    def value(self) -> datetime | None:
        """The moment typed, None for now. Raises BadInput when it cannot be read."""
        return read_moment(self.text(), self._now())

    def _check(self, text: str) -> None:
        read_moment(text, self._now())


def read_moment(text: str, now: datetime) -> datetime | None:
    """``2031-05-05 18:10``, or ``18:10`` for today, by the clock of now; None for nothing typed. Raises BadInput."""
    for form in FORMS:
        try:
            typed = datetime.strptime(text.strip(), form)  # the offset is that of now, put on below
        except ValueError:
            continue
        if form == "%H:%M":
            return now.replace(hour=typed.hour, minute=typed.minute, second=0, microsecond=0)
        return typed.replace(tzinfo=now.tzinfo)
    if text.strip():
        raise BadInput(_("Day and time are written 2031-05-05 18:10, or 18:10 for today."), field="at", given=text)
    return None
