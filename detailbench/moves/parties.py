"""The bearer: who brings or fetches the car for the owner, and on whose word."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.parties import ERRANDS, bearer_for
from detailbench.moves.move import Done
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Party
from detailbench.record.writing import Writer

PERSONAL = ("name", "telephone", "authority")


@dataclass(frozen=True)
class SetBearer:
    """Name, telephone and ``authority`` (in words: on whose word) of whoever brings or fetches the car. ``errand``:
    brings, fetches or both. Another name for one half of a bearer's errand makes two bearers of one."""

    undoable: ClassVar[bool] = True
    job_id: str
    values: Mapping[str, str] = field(default_factory=dict)
    errand: str = "brings"

    def make(self, w: Writer) -> Done:
        if self.errand not in ERRANDS:
            raise BadInput(_("A bearer brings the car, fetches it, or both."), field="errand", given=self.errand)
        for name in self.values:
            if name not in PERSONAL:
                raise BadInput(_("There is no field “{name}” here.").format(name=name), field=name)
        picture = w.job(self.job_id)
        bearer = self._who(w, picture)
        if "authority" in self.values and bearer.authority:
            w.change(bearer, authority="")  # an older program kept it among the plain fields
        for name in PERSONAL:
            if name in self.values and self.values[name].strip() != picture.said(bearer.id, name):
                w.personal(bearer.id, name, self.values[name].strip())
        return Done(self.job_id, _("bearer noted"), bearer.id)

    def _who(self, w: Writer, picture: JobPicture) -> Party:
        found = bearer_for(picture, self.errand)
        if found is None and self.errand == "both":
            found = bearer_for(picture, "brings") or bearer_for(picture, "fetches")
        if found is None:
            return w.add(Party, job_id=self.job_id, role="bearer", errand=self.errand)
        known, new = picture.said(found.id, "name"), self.values.get("name", "").strip()
        if found.errand == "both" and self.errand != "both" and known and new and known != new:
            w.change(found, errand="fetches" if self.errand == "brings" else "brings")
            return w.add(Party, job_id=self.job_id, role="bearer", errand=self.errand)
        return found if found.errand == "both" and not new else w.change(found, errand=self.errand)


@dataclass(frozen=True)
class StrikeBearer:
    """Take a bearer out again: the owner came in person."""

    undoable: ClassVar[bool] = True
    job_id: str
    party_id: str

    def make(self, w: Writer) -> Done:
        party = one(w.job(self.job_id).parties, self.party_id)
        if party.role != "bearer":
            raise BadInput(_("Only a bearer can be taken out."), field="party_id")
        w.withdraw(party)
        return Done(self.job_id, _("bearer struck out"), party.id)
