"""What stands before a machine starts on a panel: what the steps are expected to take off, the room left in its clear
coat where that was measured, and whether the first panel done by the process came out as foreseen."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.body.names import panel_name
from detailbench.findings.first_panel import FirstSeen, first_panels
from detailbench.findings.kit_names import initials
from detailbench.findings.permissions import permissions
from detailbench.findings.planned_removal import Forecasts, Planned
from detailbench.findings.planned_words import planned_sentences
from detailbench.findings.processes import group_of, process_of
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.look.parts import button, never_squeezed, sentence, set_kind
from detailbench.thickness.layer_room import LayerRoom


class BeforeStart(QWidget):
    """Hidden with nothing to say. Found once for a picture: the page is drawn every second while a step runs."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._kept: tuple[JobPicture, str] | None = None
        self._room: LayerRoom | None = None
        self._first: FirstSeen | None = None
        self._planned = Planned(())
        self.planned = sentence()
        self.why_planned = WhyButton(self._planned_working, context.show_working, _("what comes off"))
        self.room = sentence()
        self.why_room = WhyButton(lambda: self._room.working if self._room else None, context.show_working, _("room"))
        self.first = sentence()
        self.why_first = WhyButton(self._first_working, context.show_working, _("the first panel"))
        self.again = button(_("Plan again: to Trials"), lambda: context.stage_wanted.emit("trials"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        for part, why in self._lines():
            row = QHBoxLayout()
            row.addWidget(part, 1)
            row.addWidget(why, 0, Qt.AlignmentFlag.AlignTop)
            column.addLayout(row)
        column.addWidget(self.again)

    def _lines(self) -> tuple[tuple[QLabel, WhyButton], ...]:
        return (self.planned, self.why_planned), (self.room, self.why_room), (self.first, self.why_first)

    def _planned_working(self) -> Working | None:
        return next((s.removal.working for s in self._planned.steps if s.removal is not None), None)

    def _first_working(self) -> Working | None:
        found = self._first.found if self._first is not None else None
        return found.working if found is not None else None

    @property
    def sentences(self) -> tuple[str, ...]:
        """What is said here and need not be said again beside it."""
        return (" ".join(self._room.sentences[1:]),) if self._room is not None else ()

    @property
    def holds(self) -> bool:
        """The first panel stands against going on."""
        return self._first is not None and self._first.holds

    def show_panel(self, panel: str) -> None:
        """What stands before this panel."""
        picture = self._context.picture
        if picture is None or not panel:
            self.hide()
            return
        if self._kept is None or self._kept[0] is not picture or self._kept[1] != panel:
            self._kept = (picture, panel)
            self._room = permissions(picture)[panel].room
            self._first = _first_of(picture, panel)
            self._planned = Forecasts(picture).planned(panel, measured_after=True)
        self._say_planned(picture)
        self._say_room()
        self._say_first(picture)
        self.setVisible(any(not part.isHidden() for part, _why in self._lines()))
        self._stand()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._stand()

    def _stand(self) -> None:
        """What warns is never squeezed: rather the card scrolls."""
        for part, _why in self._lines():
            never_squeezed(part)

    def _say_planned(self, picture: JobPicture) -> None:
        told = planned_sentences(picture, self._planned)
        self.planned.setVisible(bool(told))
        self.why_planned.setVisible(self._planned_working() is not None)
        self.planned.setText(" ".join(told))

    def _say_room(self) -> None:
        room = self._room
        for part in (self.room, self.why_room):
            part.setVisible(room is not None)
        if room is not None:
            self.room.setText(" ".join(room.sentences))
            set_kind(self.room, "stop" if room.refused else "")

    def _say_first(self, picture: JobPicture) -> None:
        first = self._first
        self.first.setVisible(first is not None)
        self.why_first.setVisible(self._first_working() is not None)
        self.again.setVisible(first is not None and first.holds)
        if first is None:
            return
        words = first.found.sentence if first.found is not None else first.why_none
        text = _("First panel, {panel}: {what}").format(panel=panel_name(first.panel), what=words)
        if first.set_aside is not None:
            who = initials(picture.shop, first.set_aside.entered_by)
            text += " " + _("Gone on all the same by decision of {who}.").format(who=who)
        self.first.setText(text)
        set_kind(self.first, "stop" if first.holds else "")


def _first_of(picture: JobPicture, panel: str) -> FirstSeen | None:
    """Of the process this panel is done by."""
    group = group_of(picture, panel)
    process = process_of(picture, group.id) if group is not None else None
    return next((s for s in first_panels(picture) if process is not None and s.process.id == process.id), None)
