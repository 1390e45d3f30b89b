"""What the surface is: paint system by finish group, state by panel, panels held back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.findings.limits import word_asks
from detailbench.moves.move import Done
from detailbench.moves.panels import on_this_car
from detailbench.moves.reasons import says_why
from detailbench.record.picture import one
from detailbench.record.things import FinishGroup, Hold, StateNote
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer

PAINT_SYSTEMS = choices("finish_group", "paint_system")
CLEAN = choices("state_note", "clean")
WORK = choices("state_note", "work")
COVER = choices("state_note", "cover")


@dataclass(frozen=True)
class SetPaintSystem:
    """The paint system of a finish group, by the person's word."""

    undoable: ClassVar[bool] = True
    job_id: str
    group_id: str
    paint_system: str
    note: str = ""

    def make(self, w: Writer) -> Done:
        if self.paint_system not in PAINT_SYSTEMS:
            raise BadInput(_("“{value}” is not a paint system.").format(value=self.paint_system), field="paint_system")
        group = one(w.job(self.job_id).groups, self.group_id)
        w.change(group, paint_system=self.paint_system, note=self.note or group.note)
        return Done(self.job_id, _("paint system of “{group}” noted").format(group=_(group.name)), group.id)


@dataclass(frozen=True)
class MakeGroup:
    """A finish group of its own for some panels (a refinished door, say); they leave the group they were in."""

    undoable: ClassVar[bool] = True
    job_id: str
    name: str
    panels: tuple[str, ...]
    paint_system: str = "unknown"

    def make(self, w: Writer) -> Done:
        if not self.name.strip() or not self.panels:
            raise BadInput(_("A finish group needs a name and at least one panel."), field="name")
        if self.paint_system not in PAINT_SYSTEMS:
            raise BadInput(_("“{value}” is not a paint system.").format(value=self.paint_system), field="paint_system")
        picture = w.job(self.job_id)
        on_this_car(picture, self.panels)
        if any(g.name == self.name.strip() for g in picture.groups):
            raise BadInput(_("There is a finish group of that name already."), field="name", given=self.name)
        moving = dict.fromkeys(self.panels)
        scarce = any(g.irreplaceable == "yes" and moving.keys() & set(g.panels) for g in picture.groups)
        for group in picture.groups:
            left = tuple(p for p in group.panels if p not in moving)
            if not left:
                w.withdraw(group)
            elif left != group.panels:
                w.change(group, panels=left)
        new = w.add(
            FinishGroup,
            job_id=self.job_id,
            name=self.name.strip(),
            panels=tuple(moving),
            paint_system=self.paint_system,
        )
        # a refinished door on a car whose paint is irreplaceable is not: it is asked of each paint
        again = _("Say of it too whether its paint can be replaced: that of its panels could not.") if scarce else ""
        return Done(self.job_id, _("finish group “{group}” made").format(group=new.name), new.id, again)


@dataclass(frozen=True)
class SetState:
    """From here on these panels are so. Decontaminated and panel-wiped means bare, by the person's word. Where a limit
    of the owner's forbids what usually makes it so, ``how`` says in words how it was done otherwise."""

    undoable: ClassVar[bool] = True
    job_id: str
    panels: tuple[str, ...]
    clean: str = ""
    work: str = ""
    cover: str = ""
    how: str = ""

    def make(self, w: Writer) -> Done:
        for name, value, known in (
            ("clean", self.clean, CLEAN), ("work", self.work, WORK), ("cover", self.cover, COVER),
        ):  # fmt: skip
            if value and value not in known:
                raise BadInput(_("“{value}” is not a state.").format(value=value), field=name, given=value)
        if not self.panels or not (self.clean or self.work or self.cover):
            raise BadInput(_("Choose the panels and what they are now."), field="panels")
        picture = w.job(self.job_id)
        on_this_car(picture, self.panels)
        if self.work == "as_found" and any(r.panel in self.panels and r.ended == "finished" for r in picture.runs):
            raise Refused(
                _("A panel that was polished is not as found any more; what is read now is read after the work."),
                rule="polished",
            )
        asks = word_asks(picture, self.panels, self.clean, self.cover)
        if asks and not says_why(self.how):
            raise BadInput(asks, field="how", given=self.how)
        cover = self.cover or ("bare" if self.clean == "wiped" else "")
        note = w.add(
            StateNote,
            job_id=self.job_id,
            panels=self.panels,
            clean=self.clean,
            work=self.work,
            cover=cover,
            how=self.how.strip(),
        )
        one_or_more = _("state of {n} panel noted") if len(self.panels) == 1 else _("state of {n} panels noted")
        says = one_or_more.format(n=len(self.panels))
        return Done(self.job_id, says, note.id)


@dataclass(frozen=True)
class HoldPanel:
    """A person holds a panel back from any machine."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    reason: str

    def make(self, w: Writer) -> Done:
        if not says_why(self.reason):
            raise BadInput(
                _("Give the reason in at least two words; it is printed."), field="reason", given=self.reason
            )
        on_this_car(w.job(self.job_id), (self.panel,))
        thing = w.add(Hold, job_id=self.job_id, panel=self.panel, reason=self.reason.strip())
        return Done(self.job_id, _("panel held back"), thing.id)


@dataclass(frozen=True)
class ReleasePanel:
    """A held panel is released again."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str

    def make(self, w: Writer) -> Done:
        held = [h for h in w.job(self.job_id).holds if h.panel == self.panel and not h.lifted]
        if not held:
            raise Refused(_("That panel is not held back by anyone."), rule="not_held")
        for hold in held:
            w.change(hold, lifted=True)
        return Done(self.job_id, _("panel released"), held[-1].id)
