"""Photographs: taken into the record as they are, by their hash; looked at only to know what they are."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.findings.panels import outline_of
from detailbench.findings.states import State, state_of_all
from detailbench.moves.move import Done
from detailbench.moves.panels import lamp_of_the_shop, on_this_car
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Photo
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer

MOMENTS = choices("photo", "moment")
SHOWS = choices("photo", "shows")


def _state(picture: JobPicture, panel: str, seq: int | None = None) -> State:
    """The state a photo shows: of its panel, else of the whole car."""
    return state_of_all(picture, (panel,) if panel else tuple(outline_of(picture).panels), seq)


@dataclass(frozen=True)
class AddPhoto:
    """A photograph of this job, of a panel, of a mark, or of what ``shows`` says (vin_plate, plate, odometer, clock,
    whole_car; test_section: half and half beside the tape line of the trial ``trial_id``). The same file twice is kept
    once and said."""

    undoable: ClassVar[bool] = True
    job_id: str
    content: bytes = field(repr=False)
    name: str = ""
    panel: str = ""
    mark_id: str = ""
    moment: str = "before"
    lamp_id: str = ""
    caption: str = ""
    shows: str = ""
    mishap_id: str = ""
    trial_id: str = ""

    def make(self, w: Writer) -> Done:
        if self.moment not in MOMENTS:
            raise BadInput(
                _("A photo is of the arrival, before, a trial, after, or of a mishap."),
                field="moment",
                given=self.moment,
            )
        _known_shows(self.shows)
        picture = w.job(self.job_id)
        on_this_car(picture, (self.panel,), or_none=True)
        lamp_of_the_shop(picture, self.lamp_id)
        if self.mark_id:
            one(picture.marks, self.mark_id)
        if self.mishap_id:
            one(picture.mishaps, self.mishap_id)
        _of_a_trial(picture, self.trial_id, self.shows, self.panel)
        from detailbench.photos.intake import look_at  # the picture library is loaded with the first photo

        seen = look_at(self.content, self.name, HandClock(w.now))
        kept = w.keep_file(
            self.content,
            seen.media_type,
            came_as=self.name,
            taken_at=seen.taken_at,
            offset_source=seen.offset_source or "",
            width_px=seen.width_px,
            height_px=seen.height_px,
        )
        same = (self.panel, self.moment, self.shows, self.mishap_id, self.trial_id)
        there = [
            (p.panel, p.moment, p.shows, p.mishap_id, p.trial_id) for p in picture.photos if p.evidence_id == kept.id
        ]
        if same in there:
            return Done(self.job_id, _("photo already there"), note=_("This photo is here already; it was kept once."))
        photo = w.add(
            Photo,
            job_id=self.job_id,
            evidence_id=kept.id,
            panel=self.panel,
            mark_id=self.mark_id,
            moment=self.moment,
            lamp_id=self.lamp_id,
            caption=self.caption,
            shows=self.shows,
            mishap_id=self.mishap_id,
            trial_id=self.trial_id,
            **_state(picture, self.panel).as_fields(),
        )
        note = _("The photo says where it was taken; that stays out of every copy.") if seen.has_place else ""
        return Done(self.job_id, _("photo added"), photo.id, note)


def _of_a_trial(picture: JobPicture, trial_id: str, shows: str, panel: str) -> None:
    """Raise BadInput for a test section without its trial, or a trial of another panel."""
    if shows == "test_section" and not trial_id:
        raise BadInput(_("Say which trial this test section is of."), field="trial_id")
    if trial_id and one(picture.trials, trial_id).panel != panel:
        raise BadInput(_("That trial was made on another panel."), field="trial_id")


def _known_shows(shows: str) -> None:
    if shows not in ("", *SHOWS):
        raise BadInput(
            _("A photo shows paint, a test section, the VIN plate, the plate, the odometer, a clock or the whole car."),
            field="shows",
            given=shows,
        )


@dataclass(frozen=True)
class PairPhotos:
    """Before and after of the same view stand side by side in print; of a test section also its two halves."""

    undoable: ClassVar[bool] = True
    job_id: str
    before_id: str
    after_id: str

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        before, after = one(picture.photos, self.before_id), one(picture.photos, self.after_id)
        halves = before.trial_id and before.trial_id == after.trial_id and before.id != after.id
        if not halves and (before.moment == "after" or after.moment != "after"):
            raise BadInput(_("A pair is one photo from before and one from after the work."), field="after_id")
        if before.panel != after.panel:
            raise Refused(_("A pair shows the same panel."), rule="pair")
        w.change(after, pair=before.id)
        return Done(self.job_id, _("photos paired"), after.id)


@dataclass(frozen=True)
class CorrectPhoto:
    """New words under a photo, or what it shows; the old ones stay in the journal. Of another panel, it carries the
    state which that one was in when the photo was entered."""

    undoable: ClassVar[bool] = True
    job_id: str
    photo_id: str
    values: Mapping[str, str]

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        photo = one(picture.photos, self.photo_id)
        for name in self.values:
            if name not in ("caption", "panel", "mark_id", "moment", "lamp_id", "shows", "trial_id"):
                raise BadInput(_("A photo has no field “{name}” to correct.").format(name=name), field=name)
        if self.values.get("moment", photo.moment) not in MOMENTS:
            raise BadInput(_("A photo is of the arrival, before, a trial, after, or of a mishap."), field="moment")
        _known_shows(self.values.get("shows", ""))
        on_this_car(picture, (self.values.get("panel", photo.panel),), or_none=True)
        lamp_of_the_shop(picture, self.values.get("lamp_id", ""))
        if self.values.get("mark_id"):
            one(picture.marks, self.values["mark_id"])
        panel = self.values.get("panel", photo.panel)
        _of_a_trial(picture, self.values.get("trial_id", photo.trial_id), self.values.get("shows", photo.shows), panel)
        moved = {} if panel == photo.panel else _state(picture, panel, photo.seq).as_fields()
        w.change(photo, **self.values, **moved)
        return Done(self.job_id, _("photo corrected"), photo.id)


@dataclass(frozen=True)
class StrikePhoto:
    """Take a photo out of the job; file and journal keep it."""

    undoable: ClassVar[bool] = True
    job_id: str
    photo_id: str

    def make(self, w: Writer) -> Done:
        photo = one(w.job(self.job_id).photos, self.photo_id)
        w.withdraw(photo)
        return Done(self.job_id, _("photo struck out"), photo.id)
