"""What the gauge sends: it lands where the walk stands, or waits in the tray. Nothing lands in silence."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from typing import Protocol

from detailbench.basics.numbers import format_number, read_typed
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.moves.tray import HoldValues, PlaceWaiting, PutAway, Sent
from detailbench.record.things import Reading, WaitingValue
from detailbench.screens.context import Burst, Context
from detailbench.screens.stages.thickness.flood import FloodWatch
from detailbench.screens.stages.thickness.words import stage_words


class Walker(Protocol):
    """Who knows where the walk stands, and enters a value there."""

    @property
    def here(self) -> bool: ...
    @property
    def panel(self) -> str: ...
    @property
    def last(self) -> Reading | None: ...
    @property
    def done_here(self) -> bool: ...
    def panel_after(self) -> str: ...
    def checks(self, gauge_id: str) -> bool: ...
    def check_value(self, text: str, value_um: float | None) -> str: ...
    def ask_in_field(self, text: str) -> None: ...
    def land(
        self, text: str, value_um: float | None, unit: str, source: str, no_value: str = "", session_id: str = ""
    ) -> str: ...
    def told(self) -> None: ...


@dataclass(frozen=True)
class Understood:
    """A sent text read: a value, no value, a question for a person, or the sentence why it is neither."""

    value_um: float | None = None
    unit: str = "um"
    no_value: str = ""
    question: str = ""
    sentence: str = ""


def understood(burst: Burst) -> Understood:
    """By the gauge's own line where it came by one, else by the rules for typed numbers."""
    if burst.read is None:
        typed = read_typed(burst.text)
        question = typed.question if typed.value is None else ""  # a nought is kept and flagged
        return Understood(typed.value_um, typed.unit, question=question, sentence=typed.sentence)
    read = burst.read
    below = _("A reading cannot be below nought; a minus is only taken on the zero plate.")
    wrong = read.sentence or (below if read.value is not None and read.value < 0 else "")
    return Understood(read.value_um, read.unit, "nothing" if read.no_value else "", sentence=wrong)


class SentValues:
    """Takes bursts in every stage. The tray is what waits in the record for a person."""

    def __init__(self, context: Context, desk: Walker) -> None:
        self.context = context
        self._desk = desk
        self._floods: defaultdict[str, FloodWatch] = defaultdict(FloodWatch)

    @property
    def tray(self) -> tuple[WaitingValue, ...]:
        """What waits, in the order it came."""
        shop = self.context.shop
        return () if shop is None else shop.waiting

    def begin(self) -> None:
        """Another job; what waits goes on waiting."""
        self._floods.clear()

    def take_burst(self, burst: Burst) -> str:
        """Put a sent value where it belongs; returns the sentence where that is."""
        where = self._put(burst)
        if where and not self._desk.here and self.context.open_stage:
            where = _("{landed}, from {stage}").format(landed=where, stage=stage_words(self.context.open_stage))
        return where

    def _put(self, burst: Burst) -> str:
        flood, desk = self._floods[burst.gauge_id], self._desk
        if flood.comes(burst.at_ms):
            return self._hold(burst, flood)
        if self.context.job_id is None:
            return self._to_tray(burst, _("no job is open"))
        if desk.checks(burst.gauge_id):
            if burst.read is None or burst.read.value_um is not None:
                return desk.check_value(burst.text, burst.read.value_um if burst.read is not None else None)
            return self._to_tray(burst, burst.read.sentence or _("no value, during the gauge check"))
        seen = understood(burst)
        if seen.sentence:
            return self._to_tray(burst, seen.sentence)
        session = self._session(burst.gauge_id)
        if session is None:
            return self._to_tray(burst, _("“{gauge}” is not in hand").format(gauge=self._gauge_name(burst.gauge_id)))
        if not desk.panel:
            return self._to_tray(burst, _("no panel is chosen"))
        if seen.question:
            if not desk.here:
                return self._to_tray(burst, seen.question)
            desk.ask_in_field(burst.text)
            return seen.question
        done = panel_name(desk.panel) if desk.done_here else ""
        if done and not desk.here:
            return self._to_tray(burst, _("{panel} has all its values").format(panel=done))
        if done and (after := desk.panel_after()):
            self.context.select_panel(after)  # the gauge walks on by itself: the hand is on the next panel
        sentence = desk.land(burst.text, seen.value_um, seen.unit, "gauge", seen.no_value, session)
        if not sentence:
            return self._to_tray(burst, _("it could not be entered"))
        reading = desk.last
        if reading is not None:
            flood.landed(reading.id)
        return sentence

    def _session(self, gauge_id: str) -> str | None:
        """The newest spell of the gauge it came from (of any, where nobody can tell); None: it is not in hand."""
        picture = self.context.picture
        if not gauge_id or picture is None:
            return ""
        return next((s.id for s in reversed(picture.sessions) if s.gauge_id == gauge_id), None)

    def _gauge_name(self, gauge_id: str) -> str:
        shop = self.context.shop
        return next((g.name for g in shop.gauges if g.id == gauge_id), "") if shop is not None else ""

    def _to_tray(self, burst: Burst, why: str) -> str:
        if not self._keep(burst, why, ()):
            return ""
        sentence = _("{value} waits in the tray: {why}").format(value=burst.text, why=why)
        self.context.notice(sentence, "flagged")
        self._desk.told()
        return sentence

    def _hold(self, burst: Burst, flood: FloodWatch) -> str:
        if not self._keep(burst, _("arrived at once"), flood.take_landed()):
            return ""
        sentence = _("{n} values arrived at once: new or repeated? They wait in the tray.").format(
            n=format_number(flood.run)
        )
        self.context.notice(sentence, "flagged")
        self._desk.told()
        return sentence

    def _keep(self, burst: Burst, why: str, readings: tuple[str, ...]) -> bool:
        seen = understood(burst) if burst.read is not None else Understood()
        sent = Sent(burst.text, why, burst.gauge_id, seen.value_um, seen.unit, seen.no_value)
        return self.context.do(HoldValues((sent,), self.context.job_id or "", readings), self._desk) is not None

    def place(self, ids: tuple[str, ...] = ()) -> None:
        """These values (all of the tray's) land on the selected panel one after another; what cannot be read stays."""
        job, panel = self.context.job_id, self._desk.panel
        if job is None or not panel:
            self.context.notice(_("Choose a panel first."), "plain")
            return
        self.context.do(PlaceWaiting(job, panel, ids), self._desk)
        self._desk.told()

    def put_away(self, ids: tuple[str, ...] = ()) -> None:
        """The person says that these values (all of the tray's) are nothing new."""
        self.context.do(PutAway(ids, self.context.job_id or ""), self._desk)
        self._desk.told()
