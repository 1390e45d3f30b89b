"""The owner's limits as they are entered. What they stop, and what lifts them later, lies elsewhere."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.findings.limits import panel_list
from detailbench.findings.limits_bound import bound
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car, real_number
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import OwnerLimit
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer

KINDS = choices("owner_limit", "kind")
MOST_UM = 1000.0


@dataclass(frozen=True)
class AddLimit:
    """What must not happen to this car. ``bar_panel`` names its panels, ``most_off`` how much may come off (µm, above
    0), ``other`` is words; ``panels`` empty: the whole car."""

    undoable: ClassVar[bool] = True
    job_id: str
    kind: str
    panels: tuple[str, ...] = ()
    most_off_um: float | None = None
    words: str = ""

    def make(self, w: Writer) -> Done:
        if self.kind not in KINDS:
            raise BadInput(_("“{value}” is not a limit.").format(value=self.kind), field="kind", given=self.kind)
        picture = w.job(self.job_id)
        on_this_car(picture, self.panels)
        if self.kind == "bar_panel" and not self.panels:
            raise BadInput(_("Choose the panel that must not be touched."), field="panels")
        if self.kind == "other" and not self.words.strip():
            raise BadInput(_("Say the limit in words."), field="words")
        if self.kind == "most_off":
            self._amount()
        elif self.most_off_um is not None:
            raise BadInput(_("Only “most that may come off” has an amount."), field="most_off_um")
        values = {
            "kind": self.kind,
            "panels": tuple(dict.fromkeys(self.panels)),
            "most_off_um": self.most_off_um,
            "words": self.words.strip(),
        }
        for known in picture.limits:
            if not known.lifted_by and all(getattr(known, name) == value for name, value in values.items()):
                return Done(self.job_id, _("limit already there"), known.id, _("This limit stands already."))
        limit = w.add(OwnerLimit, job_id=self.job_id, **values)
        return Done(self.job_id, _("owner's limit noted"), limit.id, self._running(picture))

    def _running(self, picture: JobPicture) -> str:
        """What runs where the limit binds: it stops no machine by itself."""
        runs = [r.panel for r in picture.runs if r.finished_at is None and (not self.panels or r.panel in self.panels)]
        return _("A step is running there: {panels}.").format(panels=panel_list(runs)) if runs else ""

    def _amount(self) -> None:
        if self.most_off_um is None:
            raise BadInput(_("Type how much may come off at most, in µm."), field="most_off_um")
        real_number(self.most_off_um, "most_off_um")
        if not 0 < self.most_off_um <= MOST_UM:
            raise BadInput(
                _("Type an amount above 0; where nothing may come off, bar the panel instead."),
                field="most_off_um",
                given=self.most_off_um,
            )


@dataclass(frozen=True)
class StrikeLimit:
    """Take out a limit entered by mistake, while nothing rests on it and no document was closed since; afterwards only
    an agreement with the owner lifts it."""

    undoable: ClassVar[bool] = True
    job_id: str
    id: str

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        limit = one(picture.limits, self.id)
        if bound(picture, limit):
            raise Refused(_("This limit binds by now: only an agreement with the owner lifts it."), rule="limit_binds")
        w.withdraw(limit)
        return Done(self.job_id, _("owner's limit struck out"), limit.id)
