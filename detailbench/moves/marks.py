"""Marks: record, correct, strike out, look again."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition
from detailbench.body.names import panel_name
from detailbench.findings.states import state_of
from detailbench.findings.supplement import is_listed
from detailbench.marks.catalogue import kind as kind_of
from detailbench.marks.intents import Intent, cannot_be_target, first_intent
from detailbench.moves.move import Done
from detailbench.moves.panels import lamp_of_the_shop, on_panel, on_this_car
from detailbench.record.picture import one
from detailbench.record.things import Mark, MarkCheck, PanelLook
from detailbench.record.writing import Writer

CORRECTABLE = ("kind", "severity", "depth", "intent", "count", "length_mm", "area_cm2", "lamp_id", "note")


def _checked_scale(name: str, value: object) -> None:
    if value is not None and (not isinstance(value, int) or isinstance(value, bool) or not 0 <= value <= 5):
        raise BadInput(_("{name} is one digit from 0 to 5.").format(name=name.capitalize()), field=name, given=value)


def _checked_amounts(values: Mapping[str, Any]) -> None:
    for name in ("count", "length_mm", "area_cm2"):
        value = values.get(name)
        if isinstance(value, (int, float)) and value < 0:
            raise BadInput(_("That cannot be below zero."), field=name, given=value)


def _intent_for(kind_key: str, depth: int | None, intent: str, clean: str) -> str:
    """The intent given, or the catalogue's first one. Raises Refused where the kind cannot be a target now."""
    kind = kind_of(kind_key)
    if not intent:
        found = first_intent(kind, depth)
        return str(found or Intent.LEAVE)
    if intent not in set(Intent):
        raise BadInput(_("“{value}” is not an intent.").format(value=intent), field="intent", given=intent)
    if intent in (Intent.TARGET, Intent.REDUCE):
        why_not = cannot_be_target(kind, clean)
        if why_not:
            raise Refused(why_not, rule="cannot_be_target")
    return intent


@dataclass(frozen=True)
class RecordMark:
    """A mark on a panel, in the panel's state of now. ``at`` None: all over the panel (a field). A line has
    ``end_mm``, its far end from the same two edges. ``intent`` empty: what the catalogue proposes first."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    kind: str
    severity: int
    depth: int | None = None
    intent: str = ""
    at: EdgePosition | None = None
    end_mm: tuple[float, float] | None = None
    shape: str = ""
    lamp_id: str = ""
    count: int | None = None
    length_mm: float | None = None
    area_cm2: float | None = None
    note: str = ""

    def make(self, w: Writer) -> Done:
        _checked_scale("severity", self.severity)
        _checked_scale("depth", self.depth)
        kind = kind_of(self.kind)
        picture = w.job(self.job_id)
        on_this_car(picture, (self.panel,))
        lamp_of_the_shop(picture, self.lamp_id)
        _checked_amounts({"count": self.count, "length_mm": self.length_mm, "area_cm2": self.area_cm2})
        state = state_of(picture, self.panel)
        place: dict[str, Any] = {}
        if self.at is not None:
            on_panel(picture, self.panel, self.at, self.end_mm)
            place = {
                "edge_a": self.at.edge_a,
                "edge_a_mm": self.at.a_mm,
                "edge_b": self.at.edge_b,
                "edge_b_mm": self.at.b_mm,
                "panel_w_mm": self.at.panel_w_mm,
                "panel_h_mm": self.at.panel_h_mm,
            }
            if self.end_mm is not None:
                place |= {"end_a_mm": self.end_mm[0], "end_b_mm": self.end_mm[1]}
        shape = self.shape or ("field" if self.at is None else "line" if self.end_mm else "point")
        mark = w.add(
            Mark,
            job_id=self.job_id,
            panel=self.panel,
            kind=self.kind,
            shape=shape,
            severity=self.severity,
            depth=self.depth,
            intent=_intent_for(self.kind, self.depth, self.intent, state.clean),
            lamp_id=self.lamp_id,
            count=self.count,
            length_mm=self.length_mm,
            area_cm2=self.area_cm2,
            note=self.note,
            **place,
            **state.as_fields(),
        )
        says = _("{kind} {severity} on {panel}").format(
            kind=kind.name, severity=self.severity, panel=panel_name(self.panel)
        )
        return Done(self.job_id, says, mark.id)


@dataclass(frozen=True)
class CorrectMark:
    """New values for a mark; the old ones stay in the journal. A kind may be refined without losing its photos."""

    undoable: ClassVar[bool] = True
    job_id: str
    mark_id: str
    values: Mapping[str, Any]

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        mark = one(picture.marks, self.mark_id)
        lamp_of_the_shop(picture, self.values.get("lamp_id", ""))
        _checked_amounts(self.values)
        for name in self.values:
            if name not in CORRECTABLE:
                raise BadInput(_("A mark has no field “{name}” to correct.").format(name=name), field=name)
        for name in ("severity", "depth"):
            if name in self.values:
                _checked_scale(name, self.values[name])
        kind = kind_of(self.values.get("kind", mark.kind))
        intent = self.values.get("intent", mark.intent)
        values = {
            **self.values,
            "intent": _intent_for(kind.key, self.values.get("depth", mark.depth), intent, mark.clean),
        }
        w.change(mark, **values)
        return Done(self.job_id, _("{kind} corrected").format(kind=kind.name), mark.id)


@dataclass(frozen=True)
class StrikeMark:
    """Take a mark out; the journal keeps it. One that an item of the supplement rests on stays while that does."""

    undoable: ClassVar[bool] = True
    job_id: str
    mark_id: str

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        mark = one(picture.marks, self.mark_id)
        for item in picture.supplement:
            if item.mark_id == mark.id:
                says = _("The supplement speaks of it: strike it out there first.")
                if is_listed(picture, item):
                    says = _("A closed supplement speaks of it: it stays, and can be put right.")
                raise Refused(says, rule="in_use")
        w.withdraw(mark)
        return Done(self.job_id, _("{kind} struck out").format(kind=kind_of(mark.kind).name), mark.id)


@dataclass(frozen=True)
class LookAgain:
    """The mark after the work: its severity now (0: no longer seen under this lamp), in the panel's state of now."""

    undoable: ClassVar[bool] = True
    job_id: str
    mark_id: str
    severity: int
    depth: int | None = None
    lamp_id: str = ""
    note: str = ""

    def make(self, w: Writer) -> Done:
        _checked_scale("severity", self.severity)
        _checked_scale("depth", self.depth)
        picture = w.job(self.job_id)
        mark = one(picture.marks, self.mark_id)
        lamp_of_the_shop(picture, self.lamp_id)
        check = w.add(
            MarkCheck,
            job_id=self.job_id,
            mark_id=mark.id,
            severity=self.severity,
            depth=self.depth,
            lamp_id=self.lamp_id,
            note=self.note,
            **state_of(picture, mark.panel).as_fields(),
        )
        says = _("{kind} now {severity}").format(kind=kind_of(mark.kind).name, severity=self.severity)
        return Done(self.job_id, says, check.id)


@dataclass(frozen=True)
class LookedNothingSeen:
    """This panel was looked at under this lamp and nothing was seen."""

    undoable: ClassVar[bool] = True
    job_id: str
    panel: str
    lamp_id: str = ""

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        on_this_car(picture, (self.panel,))
        lamp_of_the_shop(picture, self.lamp_id)
        state = state_of(picture, self.panel)
        look = w.add(PanelLook, job_id=self.job_id, panel=self.panel, lamp_id=self.lamp_id, **state.as_fields())
        return Done(self.job_id, _("looked at {panel}, nothing seen").format(panel=panel_name(self.panel)), look.id)
