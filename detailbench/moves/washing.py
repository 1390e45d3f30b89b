"""The wash, step by step, and the white-pad rub. A step done sets the panels' state in the same move."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.limits import barred_stops, panel_list, solvent_stops
from detailbench.findings.panels import outline_of
from detailbench.findings.processes import group_of
from detailbench.findings.rubs import FOUND, found_words, proposed_paint, rub_means
from detailbench.findings.states import state_of
from detailbench.findings.washing import KINDS, becomes, kind_words, wipe_says
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car
from detailbench.moves.reasons import says_why
from detailbench.record.picture import JobPicture
from detailbench.record.things import RubTest, StateNote, WashStep
from detailbench.record.writing import Writer

REPEAT_WITHIN = timedelta(seconds=1)


@dataclass(frozen=True)
class RecordWashStep:
    """A step of the wash on these panels, by who enters it and now. ``why_not``: it was left out, and why (at least two
    words). A panel wipe leaves a coating where it is unless ``cover_off`` says that it was taken off before. The same
    step twice within a second is once."""

    undoable: ClassVar[bool] = True
    job_id: str
    kind: str
    panels: tuple[str, ...]
    product: str = ""
    why_not: str = ""
    note: str = ""
    cover_off: bool = False

    def make(self, w: Writer) -> Done:
        if self.kind not in KINDS:
            raise BadInput(_("“{value}” is not a step of a wash.").format(value=self.kind), field="kind")
        if not self.panels:
            raise BadInput(_("Choose the panels first."), field="panels")
        left_out = bool(self.why_not.strip())
        if self.why_not and not says_why(self.why_not):
            raise BadInput(
                _("Say in at least two words why the step was left out; it is printed."),
                field="why_not",
                given=self.why_not,
            )
        if self.cover_off and (self.kind != "panel_wipe" or left_out):
            raise BadInput(_("Only a panel wipe says that a coating was taken off before."), field="cover_off")
        picture = w.job(self.job_id)
        panels = tuple(dict.fromkeys(self.panels))
        on_this_car(picture, panels)
        again = self._again(picture, panels, w)
        if again is not None:
            return Done(self.job_id, _("already noted"), again.id)
        for stop in () if left_out else solvent_stops(picture, self.kind, panels):
            raise Refused(
                _("{sentence} What was cleaned without one is noted under State, in your words.").format(
                    sentence=stop.sentence
                ),
                rule=stop.rule,
            )
        for stop in barred_stops(picture, panels) if self.kind == "clay" and not left_out else ():
            raise Refused(stop.sentence, rule=stop.rule)
        step = w.add(
            WashStep,
            job_id=self.job_id,
            kind=self.kind,
            panels=panels,
            product="" if left_out else self.product.strip(),
            why_not=self.why_not.strip(),
            note=self.note.strip(),
        )
        words = kind_words()[self.kind]
        for made in becomes(picture, self.kind, panels, left_out=left_out, cover_off=self.cover_off):
            w.add(
                StateNote, job_id=self.job_id, panels=made.panels, clean=made.clean, cover=made.cover,
                how=_("{step} left out").format(step=words) if left_out else words,
            )  # fmt: skip
        where = _("whole car") if len(panels) == len(outline_of(picture).panels) else panel_list(panels)
        says = (_("{step} left out: {panels}") if left_out else _("{step}: {panels}")).format(step=words, panels=where)
        wiped = self.kind == "panel_wipe" and not left_out
        return Done(self.job_id, says, step.id, wipe_says(picture, panels, cover_off=self.cover_off) if wiped else "")

    def _again(self, picture: JobPicture, panels: tuple[str, ...], w: Writer) -> WashStep | None:
        """The same step of a moment ago, by the same hand."""
        last = picture.wash_steps[-1] if picture.wash_steps else None
        if last is None or w.now - last.entered_at >= REPEAT_WITHIN or last.entered_by != w.person_id:
            return None
        same = (last.kind, last.panels, last.why_not) == (self.kind, panels, self.why_not.strip())
        return last if same else None


@dataclass(frozen=True)
class RecordRubTest:
    """White pad and mild polish on a hidden place of a panel, in the panel's state of now. It proposes a paint system
    and sets none. A barred panel is not rubbed."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    found: str
    note: str = ""

    def make(self, w: Writer) -> Done:
        if self.found not in FOUND:
            raise BadInput(_("A rub finds colour, no colour, or cannot tell."), field="found", given=self.found)
        picture = w.job(self.job_id)
        on_this_car(picture, (self.panel,))
        for stop in barred_stops(picture, (self.panel,)):
            raise Refused(stop.sentence, rule=stop.rule)
        rub = w.add(
            RubTest, job_id=self.job_id, panel=self.panel, found=self.found, note=self.note.strip(),
            **state_of(picture, self.panel).as_fields(),
        )  # fmt: skip
        says = _("white-pad rub on {panel}: {found}").format(
            panel=panel_name(self.panel), found=found_words()[self.found]
        )
        return Done(self.job_id, says, rub.id, self._sentence(w.job(self.job_id)))

    def _sentence(self, picture: JobPicture) -> str:
        group = group_of(picture, self.panel)
        said = rub_means(self.found)
        if group is None or proposed_paint(picture, group) is None:
            return said
        ask = _("The paint system of “{group}” is yours to set, under Paint.").format(group=_(group.name))
        return f"{said} {ask}"
