"""What went wrong on our watch, and who was told."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreement_words import CHANNELS, told_words
from detailbench.moves.agreeing import moment_of_telling, needs_a_person
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car
from detailbench.record.picture import one
from detailbench.record.things import Mishap
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class RecordMishap:
    """Something went wrong: what, on which panel (empty: on none), and when, where that is not now."""

    undoable: ClassVar[bool] = True
    job_id: str
    words: str
    panel: str = ""
    at: datetime | None = None

    def make(self, w: Writer) -> Done:
        if not self.words.strip():
            raise BadInput(_("Say in a few words what happened."), field="words")
        on_this_car(w.job(self.job_id), (self.panel,), or_none=True)
        moment_of_telling(self.at, w.now)
        needs_a_person(w)
        thing = w.add(Mishap, job_id=self.job_id, words=self.words.strip(), panel=self.panel, stated_at=self.at)
        if self.panel:
            return Done(self.job_id, _("mishap on {panel} entered").format(panel=panel_name(self.panel)), thing.id)
        return Done(self.job_id, _("mishap entered"), thing.id)


@dataclass(frozen=True)
class CorrectMishapTime:
    """When a mishap happened, where that was entered wrongly: not to come, and not after somebody was told of it."""

    undoable: ClassVar[bool] = True
    job_id: str
    mishap_id: str
    at: datetime

    def make(self, w: Writer) -> Done:
        moment_of_telling(self.at, w.now)
        needs_a_person(w)
        mishap = one(w.job(self.job_id).mishaps, self.mishap_id)
        if mishap.told_at is not None and self.at > mishap.told_at:
            raise BadInput(
                _("Somebody was told of it before that: it happened earlier."), field="at", given=self.at.isoformat()
            )
        w.change(mishap, stated_at=self.at)
        if mishap.panel:
            says = _("time of the mishap on {panel} corrected").format(panel=panel_name(mishap.panel))
            return Done(self.job_id, says, mishap.id)
        return Done(self.job_id, _("time of the mishap corrected"), mishap.id)


@dataclass(frozen=True)
class TellMishap:
    """The owner or the bearer was told of a mishap: how, and when, where that is not now. Told anew, the newest
    counts; the one before stays in the journal."""

    undoable: ClassVar[bool] = True
    job_id: str
    mishap_id: str
    told: str
    channel: str
    at: datetime | None = None

    def make(self, w: Writer) -> Done:
        if self.told not in ("owner", "bearer"):
            raise BadInput(_("The owner or the bearer is told."), field="told", given=self.told)
        if self.channel not in CHANNELS:
            raise BadInput(_("Say how: present, by telephone or by message."), field="channel", given=self.channel)
        moment_of_telling(self.at, w.now)
        needs_a_person(w)
        mishap = one(w.job(self.job_id).mishaps, self.mishap_id)
        if self.at is not None and self.at < (mishap.stated_at or mishap.entered_at):
            raise BadInput(
                _("It happened later than that: nobody can have been told before."),
                field="at",
                given=self.at.isoformat(),
            )
        w.change(mishap, told=self.told, channel=self.channel, told_at=self.at or w.now)
        return Done(self.job_id, _("mishap: {told}").format(told=told_words(self.told)), mishap.id)
