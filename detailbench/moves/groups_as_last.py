"""The finish groups of the car's last job, taken over because a person says what was painted since."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.findings.last_groups import CARRIED, carried_panels, groups_offered, painted_since_name
from detailbench.findings.panels import outline_of
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car
from detailbench.record.things import FinishGroup
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class TakeOverGroups:
    """``painted``: the panels painted since then; they get a group of their own whose paint is unknown. Panels the last
    job had in no group stay where they are."""

    undoable: ClassVar[bool] = True
    job_id: str
    painted: tuple[str, ...] = ()

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        if self.painted:
            on_this_car(picture, self.painted)
        offered = groups_offered(picture)
        if offered is None:
            raise Refused(_("There are no finish groups of a last job to take over here."), rule="no_groups")
        drawn = outline_of(picture).panels
        apart = tuple(dict.fromkeys(self.painted))
        wanted = {g.name: (g, carried_panels(g, drawn, apart)) for g in offered.groups}
        moving = {p for _group, panels in wanted.values() for p in panels} | set(apart)
        for group in picture.groups:
            left = tuple(p for p in group.panels if p not in moving)
            then, panels = wanted.pop(group.name, (None, ()))
            if then is not None and (*panels, *left):
                w.change(group, panels=(*panels, *left), **{name: getattr(then, name) for name in CARRIED})
            elif not left:
                w.withdraw(group)
            elif left != group.panels:
                w.change(group, panels=left)
        for then, panels in wanted.values():
            if panels:
                values = {name: getattr(then, name) for name in CARRIED}
                w.add(FinishGroup, job_id=self.job_id, name=then.name, panels=panels, **values)
        if apart:
            name = painted_since_name(offered.day)
            w.add(FinishGroup, job_id=self.job_id, name=name, panels=apart, refinished="yes")
        return Done(self.job_id, _("finish groups of job {number} taken over").format(number=offered.number))
