"""What the gauge sends: it lands where the walk stands, or waits in the tray. Nothing lands in silence."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, replace
from typing import Protocol

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.moves.tray import HoldValues, PlaceWaiting, PutAway, Sent
from detailbench.record.things import Reading, WaitingValue
from detailbench.screens.context import Burst, Context
from detailbench.screens.stages.thickness.flood import FloodWatch
from detailbench.screens.stages.thickness.words import stage_words
from detailbench.thickness.gauge_line import LineRead
from detailbench.thickness.gloss import ANGLES
from detailbench.thickness.sent_text import SentText


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
    def read(self, text: str) -> SentText: ...
    def land(self, read: SentText, source: str, no_value: str = "", session_id: str = "") -> str: ...
    def told(self) -> None: ...


@dataclass(frozen=True)
class Understood:
    """A sent text as it was read; ``no_value``: why the gauge gave none."""

    read: SentText
    no_value: str = ""


def of_line(burst: Burst, line: LineRead) -> Understood:
    """By the gauge's own line."""
    below = _("A reading cannot be below nought; a minus is only taken on the zero plate.")
    wrong = line.sentence or (below if line.value is not None and line.value < 0 else "")
    if line.unit == "gu":
        angle = next((a for a in ANGLES if a == line.angle_deg), None)
        return Understood(
            SentText(burst.text, "gloss", angle_deg=angle, value_gu=line.value, unit="gu", sentence=wrong)
        )
    read = SentText(burst.text, value_um=line.value_um, clear_um=line.clear_um, unit=line.unit, sentence=wrong)
    return Understood(read, "nothing" if line.no_value else "")


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
        seen = self._understood(burst)
        if seen.read.sentence:
            return self._to_tray(burst, seen.read.sentence)
        session = self._session(burst.gauge_id)
        if session is None:
            return self._to_tray(burst, _("“{gauge}” is not in hand").format(gauge=self._gauge_name(burst.gauge_id)))
        if not desk.panel:
            return self._to_tray(burst, _("no panel is chosen"))
        if seen.read.question and seen.read.value_um is None:  # a nought is kept and flagged
            if not desk.here:
                return self._to_tray(burst, seen.read.question)
            desk.ask_in_field(burst.text)
            return seen.read.question
        done = panel_name(desk.panel) if desk.done_here and seen.read.kind == "thickness" else ""
        if done and not desk.here:
            return self._to_tray(burst, _("{panel} has all its values").format(panel=done))
        if done and (after := desk.panel_after()):
            self.context.select_panel(after)  # the gauge walks on by itself: the hand is on the next panel
        sentence = desk.land(seen.read, "gauge", seen.no_value, session)
        if not sentence:
            return self._to_tray(burst, _("it could not be entered"))
        if seen.read.kind == "thickness" and desk.last is not None:
            flood.landed(desk.last.id)
        return sentence

    def _understood(self, burst: Burst) -> Understood:
        """By the gauge's own line where it came by one, else by what is being measured now."""
        return Understood(self._desk.read(burst.text)) if burst.read is None else of_line(burst, burst.read)

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
        sent = Sent(burst.text, why, burst.gauge_id)
        seen = self._understood(burst)
        read, angle = seen.read, seen.read.angle_deg
        if burst.read is not None and read.kind == "thickness":
            sent = replace(sent, value_um=read.value_um, unit=read.unit, no_value=seen.no_value, clear_um=read.clear_um)
        elif read.kind == "gloss" and angle is not None and read.value_gu is not None:
            text = f"{read.value_gu:.10g}" if burst.read is not None else burst.text  # a line holds more than that
            sent = replace(sent, text=text, unit="gu", angle_deg=angle)
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
