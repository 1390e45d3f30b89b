"""What the person is doing in the Marks stage: lamp in use, the open mark, looking again. It turns keys into moves."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from PySide6.QtCore import QObject, Signal

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.changes import moment_of
from detailbench.findings.mark_results import MarkResult, mark_results
from detailbench.marks.catalogue import kind as kind_of
from detailbench.moves.marks import CorrectMark, LookAgain, LookedNothingSeen, RecordMark, StrikeMark
from detailbench.moves.supplement import AddSupplementItem
from detailbench.record.things import Lamp, Mark
from detailbench.screens.context import Context
from detailbench.screens.stages.marks.open_mark import OpenMark, is_field

KEY = "marks"


class MarksDesk(QObject):
    """Knows nothing the picture knows; ``changed`` says that something here is to be drawn anew."""

    changed = Signal()
    tab_wanted = Signal(str)

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self.context = context
        self.open = OpenMark()
        self.again_id = ""  # the mark being looked at again
        self.new_marks_after = False  # after the work: enter new marks rather than look again
        self._lamp = ""
        self.other_lamp = False  # the person is choosing the lamp
        context.place_chosen.connect(self._placed)
        context.panel_selected.connect(self._selected)
        context.job_opened.connect(self._begin)
        context.stage_opened.connect(self._stage_opened)
        context.changed.connect(lambda *_a: self.changed.emit())

    @property
    def here(self) -> bool:
        """The Marks stage is in front, with a job."""
        return self.context.open_stage == KEY and self.context.picture is not None

    # the lamp
    @property
    def lamps(self) -> tuple[Lamp, ...]:
        shop = self.context.shop
        return () if shop is None else tuple(lamp for lamp in shop.lamps if not lamp.retired)

    @property
    def lamp(self) -> Lamp | None:
        """The one chosen; until then the one this job was last looked at with."""
        picture = self.context.picture
        wanted = self._lamp
        if not wanted and picture is not None:
            used = [(m.seq, m.lamp_id) for m in picture.marks]
            used += [(look.seq, look.lamp_id) for look in picture.panel_looks]
            used += [(c.seq, c.lamp_id) for c in picture.mark_checks]
            wanted = max(used)[1] if used else ""
        return next((lamp for lamp in self.lamps if lamp.id == wanted), None)

    def use_lamp(self, lamp_id: str) -> None:
        self._lamp, self.other_lamp = lamp_id, False
        self._told()

    def ask_lamp(self) -> None:
        self.other_lamp = not self.other_lamp
        self._told()

    @property
    def asks_lamp(self) -> bool:
        return self.other_lamp or (self.lamp is None and bool(self.lamps))

    # after the work
    @property
    def polished(self) -> bool:
        picture, panel = self.context.picture, self.context.selected_panel
        return picture is not None and bool(panel) and moment_of(picture, panel) == "polished"

    @property
    def looks_again(self) -> bool:
        return self.polished and not self.new_marks_after and bool(self.results())

    def results(self) -> tuple[MarkResult, ...]:
        """The selected panel's marks, with their look after the work."""
        picture, panel = self.context.picture, self.context.selected_panel
        return mark_results(picture, panel) if picture is not None and panel else ()

    @property
    def again(self) -> MarkResult | None:
        """The mark the next digit speaks of: the one chosen, else the first not looked at again."""
        results = self.results()
        chosen = next((r for r in results if r.mark.id == self.again_id), None)
        return chosen or next((r for r in results if r.after is None), None)

    def look_at(self, mark_id: str) -> None:
        self.again_id = mark_id
        self.changed.emit()

    def enter_new(self, on: bool) -> None:
        self.new_marks_after = on
        self.changed.emit()

    # what happens around
    def _begin(self) -> None:
        self.open, self.again_id, self._lamp, self.other_lamp = OpenMark(), "", "", False
        self.changed.emit()

    def _selected(self, panel: str) -> None:
        if self.open.panel != panel:
            self.finish()
            self.open = OpenMark(panel)
            self.again_id = ""
        self.changed.emit()

    def _stage_opened(self, key: str) -> None:
        if key != KEY:
            self.finish()
        elif self.open.panel != self.context.selected_panel:
            self.open = OpenMark(self.context.selected_panel)
        self.changed.emit()

    def _placed(self, panel: str, x_mm: float, y_mm: float) -> None:
        if not self.here or self.looks_again:
            return
        if self.open.asks == "depth":
            self.finish()
        self.open = replace(self.open, panel=panel).placed(self.context.outline.panels[panel], x_mm, y_mm)
        self._told()

    # entering
    def choose_kind(self, key: str) -> None:
        """The open mark is of this kind."""
        if self.open.asks == "panel":
            self.context.notice(_("Choose a panel first."), "plain")
            return
        if self.open.asks == "depth":
            self.finish()
        self.open = replace(self.open, kind_key=key, severity=None)
        self.tab_wanted.emit("enter")
        self._told()

    def digit(self, value: int) -> None:
        """One digit: severity, then depth where it matters; or the severity now, when looking again."""
        if self.looks_again:
            self._look_again(value)
        elif self.open.asks == "severity":
            self.open = replace(self.open, severity=value)
            found = self.open.kind
            if found is None or not found.depth_asked:
                self._save(None)
            else:
                self._told()
        elif self.open.asks == "depth":
            self._save(value)

    def finish(self) -> None:
        """Save what is complete without its depth; what has no severity yet is put away."""
        if self.open.asks == "depth":
            self._save(None)

    def drop(self) -> None:
        """Put the open mark away."""
        self.open = OpenMark(self.context.selected_panel)
        self._told()

    def repeat(self) -> None:
        """The last mark again, at this place."""
        last = self.last
        if last is None or not self.open.panel:
            self.context.notice(_("There is no mark yet to enter again."), "plain")
            return
        self.open = replace(self.open, kind_key=last.kind, severity=last.severity)
        self._save(last.depth, last.intent)

    @property
    def last(self) -> Mark | None:
        """The mark entered last in this job."""
        picture = self.context.picture
        return picture.marks[-1] if picture is not None and picture.marks else None

    def nothing_seen(self) -> None:
        """Looked at the selected panel under the lamp in use; nothing seen."""
        panel = self.context.selected_panel
        if not panel or self.context.job_id is None:
            self.context.notice(_("Choose a panel first."), "plain")
            return
        if self._do(LookedNothingSeen(self.context.job_id, panel, self._lamp_id())):
            self.open = OpenMark(panel)
            self._say_next(_("{panel}: looked, nothing seen.").format(panel=panel_name(panel)))
            self._told()

    def _lamp_id(self) -> str:
        return self.lamp.id if self.lamp is not None else ""

    def _save(self, depth: int | None, intent: str = "") -> None:
        open_, found = self.open, self.open.kind
        if found is None or open_.severity is None or self.context.job_id is None:
            return
        field = is_field(found)
        move = RecordMark(
            self.context.job_id,
            open_.panel,
            open_.kind_key,
            open_.severity,
            depth=depth,
            intent=intent,
            at=None if field else open_.at,
            end_mm=None if field else open_.end_mm,
            shape=open_.shape,
            lamp_id=self._lamp_id(),
            length_mm=open_.length_mm,
        )
        self.open = OpenMark(self.context.selected_panel)
        self._do(move)
        self._told()

    # the list
    def correct(self, mark_id: str, **values: Any) -> None:
        if self.context.job_id is not None:
            self._do(CorrectMark(self.context.job_id, mark_id, values))
            self.changed.emit()

    def in_supplement(self, mark_id: str) -> bool:
        """Whether the supplement speaks of this mark."""
        picture = self.context.picture
        return picture is not None and any(item.mark_id == mark_id for item in picture.supplement)

    def tell_owner(self, mark_id: str) -> None:
        """Take a mark into the supplement: the owner is told before a machine starts."""
        if self.context.job_id is not None:
            self._do(AddSupplementItem(self.context.job_id, mark_id=mark_id))
            self.changed.emit()

    def strike(self, mark_id: str) -> None:
        if self.context.job_id is not None:
            self._do(StrikeMark(self.context.job_id, mark_id))
            self.changed.emit()

    def _look_again(self, severity: int) -> None:
        seen = self.again
        if seen is None or self.context.job_id is None:
            return
        if self._do(LookAgain(self.context.job_id, seen.mark.id, severity, lamp_id=self._lamp_id())):
            self.again_id = ""
            if self.again is None:
                self._say_next(_("{panel}: every mark looked at again.").format(panel=panel_name(seen.mark.panel)))
            self._told()

    # walking on
    def panels_due(self) -> tuple[str, ...]:
        """Panels not looked at yet, in walking order."""
        picture = self.context.picture
        if picture is None:
            return ()
        from detailbench.findings.due import due

        what = set(due(picture)[KEY].what)
        return tuple(p for p in self.context.panel_order if p in what)

    def next_panel(self, step: int = 1) -> None:
        """On to the neighbour in walking order."""
        order = self.context.panel_order
        now = self.context.selected_panel
        at = (order.index(now) + step) % len(order) if now in order else 0
        self.context.select_panel(order[at])

    def _say_next(self, done: str) -> None:
        due = self.panels_due()
        order = self.context.panel_order
        now = self.context.selected_panel
        after = [p for p in due if p in order and now in order and order.index(p) > order.index(now)] or list(due)
        more = _("Next to look at: {panel}.").format(panel=panel_name(after[0])) if after else _("All panels seen.")
        self.context.notice(f"{done} {more}", "next")

    def _do(self, move: object) -> bool:
        return self.context.do(move, self) is not None

    def _told(self) -> None:
        self.changed.emit()
        self.context.drawing_changed.emit()
        self.context.next_changed.emit()

    # in words
    def waits(self) -> str:
        """What the next key records, in one line."""
        panel = self.context.selected_panel
        if not panel:
            return _("choose a panel")
        name = panel_name(panel)
        if self.asks_lamp:
            return _("{panel}: which lamp is in use?").format(panel=name)
        if self.looks_again:
            seen = self.again
            if seen is None:
                return _("{panel}: every mark looked at again").format(panel=name)
            return _("{panel}: {kind}, severity now").format(panel=name, kind=seen.kind.name)
        if self.open.asks == "kind":
            return _("{panel}: a kind of mark").format(panel=name)
        what = kind_of(self.open.kind_key).name
        asked = _("severity 0 to 5") if self.open.asks == "severity" else _("depth 0 to 5")
        return _("{panel}: {kind}, {asked}").format(panel=name, kind=what, asked=asked)
