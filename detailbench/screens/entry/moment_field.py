"""A day and a time as typed; empty means now."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

from detailbench.basics.texts import _
from detailbench.screens.entry.moment_reading import read_moment
from detailbench.screens.entry.text_field import TextField


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
