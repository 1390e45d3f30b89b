"""Having somebody chosen who enters, from wherever one is, and going back there with what was typed."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

from detailbench.basics.texts import _
from detailbench.screens.frame.frame import Frame
from detailbench.screens.frame.live import Live
from detailbench.screens.frame.override_sheet import OverrideSheet


class AskingFrame(Frame, Protocol):
    """A window whose acts may wait for a name."""

    live: Live
    override: OverrideSheet


class WhoEnters:
    """Belongs to one window."""

    def __init__(self, window: AskingFrame) -> None:
        self._window = window
        self._before: QWidget | None = None

    def ask(self) -> None:
        """Open the sheet of people."""
        bench = self._window.context.bench
        if bench is not None:
            if not self._window.centre.person.isVisible():
                self._before = QApplication.focusWidget()
            people = [(p.id, p.name) for p in bench.shop().people if not p.retired]
            self._window.centre.person.show_people(people, bench.person)

    def choose(self, person_id: str) -> None:
        """This person enters from now on."""
        bench = self._window.context.bench
        if bench is not None:
            bench.person = person_id
            self._window.live.strip()
            self._window.context.notice(_("{name} is entering now.").format(name=self.name()), "plain")

    def name(self) -> str:
        """Who is entering, empty while nobody was chosen."""
        return self._window.live.person_name()

    def go_back(self) -> None:
        """The keys go back to where they were: what was typed there still stands."""
        before, self._before = self._before, None
        if self._window.override.isVisible() and self.name():
            self._window.override.person_chosen()
        elif before is not None and before.isVisible():
            before.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self._window.to_map()
