"""When the far view comes and goes: one key, and by itself when a gauge speaks or a timer runs."""

from __future__ import annotations

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from detailbench.screens.actions import in_text_field
from detailbench.screens.context import Burst
from detailbench.screens.frame.far import FarView
from detailbench.screens.frame.frame import Frame


class FarKeeper(QObject):
    """Who put the far view away is not shown it again before asking for it, or opening another stage once no timer
    runs any more."""

    def __init__(self, window: Frame, over: QWidget) -> None:
        super().__init__(over)
        self._window = window
        self._over = over
        self._refused = self._timed = False
        self.view = FarView(over, window.dress)
        self.view.left.connect(self.leave)
        window.context.timer_changed.connect(self._timer_changed)
        window.bursts.burst.connect(self.take_burst)

    @property
    def shown(self) -> bool:
        return self.view.isVisible()

    def allow(self) -> None:
        """It may come by itself again; not over another stage while the timer it was put away from still runs."""
        if not self._timed:
            self._refused = False

    def show(self) -> None:
        self.view.setGeometry(self._over.rect())
        self.fill()
        self.view.show()
        self.view.raise_()
        self._window.flash.raise_()
        self.view.setFocus()

    def fill(self) -> None:
        """Draw its four things anew."""
        stage, context = self._window.stage, self._window.context
        if stage is not None and context.picture is not None:
            self.view.show_facts(stage.far(context))

    def fill_if_shown(self) -> None:
        if self.shown:
            self.fill()

    def switch(self) -> None:
        if self.shown:
            self.leave()
        else:
            self._refused = False
            self.show()

    def leave(self) -> None:
        self._refused = True
        self.view.hide()
        self._window.to_map()

    def take_burst(self, burst: Burst) -> None:
        """A gauge spoke: its value goes where the taker puts it, and the sentence says where that was."""
        window = self._window
        typing = in_text_field()  # asked first: the taker may move the focus
        where = window.context.burst(burst)
        window.strip.set_gauge(burst.text)
        if where:
            window.notices.say_more(where)
        self._come_by_itself(typing)

    def _timer_changed(self, text: str, runs: bool) -> None:
        self._window.strip.set_timer(text)
        self._timed = bool(text)
        if runs:
            self._come_by_itself(in_text_field())
        else:
            self.fill_if_shown()

    def _come_by_itself(self, typing: bool) -> None:
        if self.shown:
            self.fill()
        elif not (typing or self._refused or self._window.context.picture is None or self._sheet_open):
            self.show()

    @property
    def _sheet_open(self) -> bool:
        """Somebody is at a sheet: what is asked there is not covered."""
        return any(sheet.isVisible() for sheet in self._window.centre.sheets)
