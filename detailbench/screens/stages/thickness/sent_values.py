"""What the gauge sends: it lands where the walk stands, or waits in the tray. Nothing lands in silence."""

from __future__ import annotations

from typing import Protocol

from detailbench.basics.numbers import format_number, read_typed
from detailbench.basics.texts import _
from detailbench.moves.reading_mending import HoldReadings
from detailbench.record.things import Reading
from detailbench.screens.context import Burst, Context
from detailbench.screens.stages.thickness.flood import FloodWatch, TrayValue
from detailbench.screens.stages.thickness.words import stage_words


class Walker(Protocol):
    """Who knows where the walk stands, and enters a value there."""

    @property
    def here(self) -> bool: ...
    @property
    def checking(self) -> bool: ...
    @property
    def panel(self) -> str: ...
    @property
    def last(self) -> Reading | None: ...
    @property
    def done_here(self) -> bool: ...
    def panel_after(self) -> str: ...
    def check_value(self, text: str) -> str: ...
    def ask_in_field(self, text: str) -> None: ...
    def land(self, text: str, value_um: float | None, unit: str, source: str) -> str: ...
    def told(self) -> None: ...


class SentValues:
    """Takes bursts in every stage. The tray is what waits for a person."""

    def __init__(self, context: Context, desk: Walker) -> None:
        self.context = context
        self._desk = desk
        self.tray: list[TrayValue] = []
        self._flood = FloodWatch()

    def begin(self) -> None:
        """Another job."""
        self.tray, self._flood = [], FloodWatch()

    def take_burst(self, burst: Burst) -> str:
        """Put a sent value where it belongs; returns the sentence where that is."""
        if self._flood.comes(burst.at_ms):
            return self._hold(burst)
        if self.context.job_id is None:
            return self._to_tray(burst.text, _("no job is open"))
        if self._desk.checking:
            return self._desk.check_value(burst.text)
        typed = read_typed(burst.text)
        if typed.sentence:
            return self._to_tray(burst.text, typed.sentence)
        if not self._desk.panel:
            return self._to_tray(burst.text, _("no panel is chosen"))
        if typed.value is None:
            if self._desk.here:
                self._desk.ask_in_field(burst.text)
                return typed.question
            return self._to_tray(burst.text, typed.question)
        if self._desk.done_here and (after := self._desk.panel_after()):
            self.context.select_panel(after)  # the gauge walks on by itself: the hand is on the next panel
        sentence = self._desk.land(burst.text, typed.value_um, typed.unit, "gauge")
        if not sentence:
            return self._to_tray(burst.text, _("it could not be entered"))
        reading = self._desk.last
        if reading is not None:
            self._flood.landed(reading.id, burst.text)
        if not self._desk.here and self.context.open_stage:
            sentence = _("{landed}, from {stage}").format(landed=sentence, stage=stage_words(self.context.open_stage))
        return sentence

    def _to_tray(self, text: str, why: str) -> str:
        self.tray.append(TrayValue(text, why))
        sentence = _("{value} waits in the tray: {why}").format(value=text, why=why)
        self.context.notice(sentence, "flagged")
        self._desk.told()
        return sentence

    def _hold(self, burst: Burst) -> str:
        back = self._flood.take_landed()
        if back and self.context.job_id is not None:
            self.context.do(HoldReadings(self.context.job_id, tuple(i for i, _text in back)), self._desk)
            self.tray += [TrayValue(text, _("arrived at once")) for _id, text in back]
        self.tray.append(TrayValue(burst.text, _("arrived at once")))
        sentence = _("{n} values arrived at once: new or repeated? They wait in the tray.").format(
            n=format_number(len(self.tray))
        )
        self.context.notice(sentence, "flagged")
        self._desk.told()
        return sentence

    def assign_tray(self) -> None:
        """The tray's values land on the selected panel, one after another; what cannot be read stays."""
        if not self._desk.panel:
            self.context.notice(_("Choose a panel first."), "plain")
            return
        waiting, self.tray = self.tray, []
        left = []
        for i, value in enumerate(waiting):
            typed = read_typed(value.text)
            if typed.value is None:
                left.append(TrayValue(value.text, typed.sentence or typed.question))
            elif not self._desk.land(value.text, typed.value_um, typed.unit, "tray"):
                left += waiting[i:]
                break
        self.tray = left
        self._desk.told()

    def discard_tray(self) -> None:
        """The person says that the tray's values are nothing new."""
        count, self.tray = len(self.tray), []
        self.context.notice(_("{n} values put aside, none entered.").format(n=format_number(count)), "plain")
        self._desk.told()
