"""What is known of a finish group's paint: lightness, refinish and cure, and how it feels under the pad."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any, ClassVar

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.cure import cure_words
from detailbench.findings.paint_feel import feel_words
from detailbench.findings.processes import group_of
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car, real_number
from detailbench.record.picture import one
from detailbench.record.things import PaintFeel
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer

LIGHTNESS = choices("finish_group", "lightness")
YES_NO = choices("finish_group", "refinished")
FEELS = choices("paint_feel", "feel")
MOST_CURE_DAYS = 365.0
FIELDS = ("lightness", "refinished", "refinished_on", "cure_days", "cure_word", "irreplaceable")


@dataclass(frozen=True)
class SetGroupPaint:
    """What is known of a finish group's paint. ``values``: lightness (dark, mid, light), refinished (yes, no),
    refinished_on (a date), cure_days (what the paint maker states), cure_word (the painter's word), irreplaceable (yes,
    no); what is left out stays as it was."""

    undoable: ClassVar[bool] = True
    job_id: str
    group_id: str
    values: Mapping[str, Any]

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        group = one(picture.groups, self.group_id)
        self._check(w.now.date())
        values = {k: v.strip() if isinstance(v, str) else v for k, v in self.values.items()}
        if not values:
            raise BadInput(_("Say what is known of this paint."), field="values")
        w.change(group, **values)
        changed = one(w.job(self.job_id).groups, group.id)
        says = _("paint of “{group}” noted").format(group=_(group.name))
        return Done(self.job_id, says, group.id, cure_words(picture, changed, w.now.date()))

    def _check(self, today: date) -> None:
        for name in self.values:
            if name not in FIELDS:
                raise BadInput(_("A finish group's paint has no field “{name}”.").format(name=name), field=name)
        lightness, refinished = self.values.get("lightness", ""), self.values.get("refinished", "")
        if lightness not in ("", *LIGHTNESS):
            raise BadInput(_("The colour is dark, mid or light."), field="lightness", given=lightness)
        if refinished not in ("", *YES_NO):
            raise BadInput(_("Refinished: yes or no."), field="refinished", given=refinished)
        irreplaceable = self.values.get("irreplaceable", "")
        if irreplaceable not in ("", *YES_NO):
            raise BadInput(_("Cannot be replaced: yes or no."), field="irreplaceable", given=irreplaceable)
        on = self.values.get("refinished_on")
        if on is not None and not isinstance(on, date):
            raise BadInput(_("That is not a date."), field="refinished_on", given=str(on))
        if on is not None and on > today:
            raise BadInput(_("That day has not come yet."), field="refinished_on", given=on.isoformat())
        days = self.values.get("cure_days")
        if days is not None:
            real_number(days, "cure_days")
            if not 0 <= days <= MOST_CURE_DAYS:
                raise BadInput(_("A cure takes from nothing to a year."), field="cure_days", given=days)


@dataclass(frozen=True)
class NotePaintFeel:
    """How the paint of these panels behaves under the pad: soft, medium or hard; sticky or not. One of the two at
    least."""

    undoable: ClassVar[bool] = True
    job_id: str
    panels: tuple[str, ...]
    feel: str = ""
    sticky: str = ""
    note: str = ""

    def make(self, w: Writer) -> Done:
        if self.feel not in ("", *FEELS):
            raise BadInput(_("The paint is soft, medium or hard."), field="feel", given=self.feel)
        if self.sticky not in ("", "yes", "no"):
            raise BadInput(_("The paint is sticky: yes or no."), field="sticky", given=self.sticky)
        if not self.panels or not (self.feel or self.sticky):
            raise BadInput(_("Choose the panels, and how their paint feels."), field="feel")
        picture = w.job(self.job_id)
        on_this_car(picture, self.panels)
        groups = {g.id for p in self.panels if (g := group_of(picture, p)) is not None}
        if len(groups) > 1:
            raise BadInput(_("These panels carry different paint: note each finish group by itself."), field="panels")
        felt = w.add(
            PaintFeel,
            job_id=self.job_id,
            panels=self.panels,
            feel=self.feel,
            sticky=self.sticky,
            note=self.note.strip(),
        )
        return Done(self.job_id, _("paint feel noted: {feel}").format(feel=feel_words(felt)), felt.id)
