"""A value is entered where the walk stands, and a sentence says where that was and what it finished."""

from __future__ import annotations

from typing import Protocol

from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.gloss import angle_missing, angle_note
from detailbench.moves.gloss import RecordGloss
from detailbench.moves.readings import RecordReading
from detailbench.record.picture import JobPicture
from detailbench.record.things import GlossReading, Reading
from detailbench.screens.context import Context
from detailbench.screens.stages.thickness.gloss_hand import GlossHand
from detailbench.screens.stages.thickness.survey import Survey
from detailbench.screens.stages.thickness.walk import WalkPlace
from detailbench.screens.stages.thickness.words import flags_line, gloss_words, value_words
from detailbench.thickness.sent_text import SentText


class Standing(Protocol):
    """Where the walk stands."""

    rounds: int
    gloss: GlossHand

    @property
    def panel(self) -> str: ...
    @property
    def last(self) -> Reading | None: ...
    @property
    def complete(self) -> bool: ...
    @property
    def survey(self) -> Survey | None: ...
    def places(self, panel: str = "") -> tuple[WalkPlace, ...]: ...
    def references(self, panel: str = "") -> tuple[WalkPlace, ...]: ...
    def place_for(self, kind: str, angle_deg: int = 0) -> WalkPlace | None: ...
    def panel_after(self) -> str: ...
    def landed(self) -> None: ...
    def told(self) -> None: ...


class Landing:
    """Thickness and gloss take the same way."""

    def __init__(self, context: Context, desk: Standing) -> None:
        self._context = context
        self._desk = desk

    def land(self, read: SentText, source: str, no_value: str = "", session_id: str = "") -> str:
        """Record and say where it landed; empty when it was not taken."""
        job, panel, place = self._context.job_id, self._desk.panel, self._desk.place_for(read.kind, read.angle_deg or 0)
        if job is None or not panel:
            self._context.notice(_("Choose a panel first."), "stop")
            return ""
        place_id = place.id if place is not None else ""
        move: RecordGloss | RecordReading
        if read.kind == "gloss" and read.value_gu is not None and read.angle_deg is not None:
            move = RecordGloss(job, panel, read.angle_deg, read.value_gu, place_id, session_id, read.text, source)
        else:
            unit = read.unit if read.unit != "gu" else "um"
            move = RecordReading(
                job, panel, read.value_um, no_value, place_id, session_id, read.text, unit, source,
                clear_um=read.clear_um,
            )  # fmt: skip
        before = self._context.picture
        done = self._context.do(move, self._desk)
        if done is None:
            return ""
        self._desk.landed()
        sentence = self._gloss_words(before) if read.kind == "gloss" else self._thickness_words()
        self._desk.told()
        return sentence

    def _thickness_words(self) -> str:
        desk = self._desk
        reading = desk.last
        assert reading is not None
        place = next((p for p in (*desk.places(), *desk.references()) if reading in p.readings), None)
        sentence = _("{panel} {n}: {value}").format(
            panel=panel_name(desk.panel),
            n=format_number(place.number if place is not None else 0),
            value=value_words(reading),
        )
        flags = flags_line(reading)
        if flags:
            sentence += f". {flags}"
        finished = place is not None and not place.reference and len(place.readings) == desk.rounds
        if desk.complete and finished:
            sentence += ". " + self.finished_words()
            self._context.notice(sentence, "next")
        else:
            self._context.notice(sentence, "flagged" if flags else "saved")
        return sentence

    def _gloss_words(self, before: JobPicture | None) -> str:
        desk, picture = self._desk, self._context.picture
        assert picture is not None
        reading = picture.gloss_readings[-1]
        place = next((p for p in (*desk.places(), *desk.references()) if p.id == reading.place_id), None)
        sentence = _("{panel} {n}: {value}").format(
            panel=panel_name(desk.panel),
            n=format_number(place.number if place is not None else 0),
            value=gloss_words(reading),
        )
        flags = flags_line(reading)
        kept = next((p for p in picture.places if p.id == reading.place_id), None)
        if before is not None and kept is not None:
            notes = (angle_note(before, kept, reading.angle_deg), angle_missing(picture, kept, reading.angle_deg))
            flags = " ".join(text for text in (flags, *notes) if text)
        first = len(desk.gloss.values(reading.place_id, reading.angle_deg)) == 1
        if flags:
            sentence += f". {flags}"
        elif desk.gloss.complete(desk.places()) and reading.angle_deg == desk.gloss.angle and first:
            sentence += ". " + desk.gloss.left(desk.panel)
            self._context.notice(sentence, "next")
            return sentence
        self._context.notice(sentence, "flagged" if flags else "saved")
        return sentence

    def newest(self) -> Reading | GlossReading | None:
        """What was entered last in this job, of either kind."""
        picture = self._context.picture
        if picture is None:
            return None
        both = [*picture.readings[-1:], *picture.gloss_readings[-1:]]
        return max(both, key=lambda r: r.seq, default=None)

    def finished_words(self) -> str:
        """The panel is done: its mean, what stands out, and which comes next."""
        desk, survey = self._desk, self._desk.survey
        parts = []
        if survey is not None:
            seen = survey.now(desk.panel)
            if seen.figures is not None:
                parts.append(
                    _("{panel} done, mean {mean} of {n} places").format(
                        panel=panel_name(desk.panel),
                        mean=format_thickness(seen.figures.mean_um, digits=0),
                        n=format_number(seen.figures.places),
                    )
                )
            else:
                parts.append(_("{panel}: not measurable, no place gave a value").format(panel=panel_name(desk.panel)))
            found = survey.finding(desk.panel)
            if found is not None and found.verdict in ("differs", "look again") and found.sentence:
                parts.append(found.sentence.rstrip("."))
        after = desk.panel_after()
        parts.append(_("next: {panel}").format(panel=panel_name(after)) if after else _("every panel measured"))
        return ". ".join(part.rstrip(".") for part in parts)
