"""The second look: when it is due, on which panels, what was found."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.kit_names import lamp_name, with_initials
from detailbench.findings.second_look import FOUND, found_words, second_look_due
from detailbench.moves.looking_again import RecordSecondLook
from detailbench.record.picture import JobPicture
from detailbench.record.things import SecondLook
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, gives_way, sentence, set_kind
from detailbench.screens.stages.handover.panels_meant import panels_meant
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import in_line
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job
from detailbench.screens.stages.work_parts.when import when_words


class SecondLookPage(QWidget):
    """Wiped, under the same lamp as before; the day after, or after a wash."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.due = sentence()
        which = (("polished", _("polished")), ("panel", _("this panel")), ("car", _("whole car")))
        self.panels = in_line(ChoiceRow(_("looked at"), which))
        self.found = ChoiceRow(_("found"), [(key, found_words(key)) for key in FOUND], columns=3)
        self.lamp = in_line(ChoiceRow(_("under"), (), columns=2))
        self.words = TextField(_("in words: washed, wiped, what was seen"), of_form=True)
        self.enter = button(_("Enter the second look"), self._enter, role="main")
        self.list = gives_way(OpenList(context.dress, _("Second looks")), m.target)
        self.panels.set_value("polished")
        emptied_for_each_job(context, self.words)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        for part in (self.due, self.panels, self.found, self.lamp, self.words, self.enter):
            column.addWidget(part)
        column.addWidget(self.list, 1)

    def redraw(self) -> None:
        picture = self._context.picture
        self.enter.setEnabled(picture is not None)
        if picture is None:
            self.list.set_lines(())
            return
        self._show_due(picture)
        lamps = [(lamp.id, lamp_name(picture.shop, lamp.id)) for lamp in picture.shop.lamps if not lamp.retired]
        if list(self.lamp.buttons) != [key for key, _text in lamps]:
            self.lamp.set_choices(lamps)
            used = [m.lamp_id for m in picture.marks if m.lamp_id]
            self.lamp.set_value(used[-1] if used else "")
        self.lamp.setVisible(0 < len(lamps) <= 4)
        self.list.set_lines([Line(s.id, look_words(picture, s)) for s in reversed(picture.second_looks)])

    def _show_due(self, picture: JobPicture) -> None:
        today = self._context.clock.now()
        found = second_look_due(picture, today.tzinfo)
        if found.on is None:
            self.due.setText(
                _("Looked at again after the last work.") if found.looks else _("No panel was polished yet.")
            )
            set_kind(self.due, "")
            return
        n = format_number(len(found.panels))
        early = today.date() < found.on
        words = _("Panels to look at again: {n}.")
        if early:
            words = _("Panels to look at again: {n}; of use from {day} on.")
        self.due.setText(words.format(n=n, day=found.on.isoformat()))
        set_kind(self.due, "" if early else "flagged")

    def _enter(self) -> None:
        picture = self._context.picture
        if picture is None:
            return
        if not self.found.value:
            self._context.notice(_("Choose what was found first."), "stop")
            return
        panels = panels_meant(picture, self.panels.value, self._context.selected_panel)
        move = RecordSecondLook(picture.job.id, panels, self.found.value, self.words.text(), self.lamp.value)
        done = self._context.do(move, self)
        if done is not None:
            self.found.set_value("")
            self.words.clear()


def look_words(picture: JobPicture, look: SecondLook) -> str:
    """ "2031-05-09 09:30, bonnet, roof: still clear; washed once, wiped" """
    panels = ", ".join(panel_name(p) for p in look.panels[:3])
    if len(look.panels) > 3:
        panels = _("{n} panels").format(n=format_number(len(look.panels)))
    words = f"{when_words(look.stated_at or look.entered_at)}, {panels}: {found_words(look.found)}"
    return with_initials(picture.shop, f"{words}; {look.words}" if look.words else words, look)
