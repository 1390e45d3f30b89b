"""What goes into the supplement: typed, or a mark that asks to be told; each item with how far it has come."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreement_words import answer_line
from detailbench.findings.kit_names import with_initials
from detailbench.findings.supplement import (
    ItemSeen,
    item_words,
    items,
    mark_words,
    offered,
    supplements,
    unanswered,
)
from detailbench.moves.supplement import AddSupplementItem, StrikeSupplementItem
from detailbench.record.picture import JobPicture
from detailbench.screens.asking import AskAbout
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button, gives_way, sentence, set_kind, tip
from detailbench.screens.stages.wash.asked_text import AskedText
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import in_line
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job
from detailbench.screens.stages.work_parts.when import when_words


class ItemsPart(QWidget):
    """Nothing is added by itself; a mark offered is taken in by one press."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.says = sentence()
        self.of = in_line(ChoiceRow(_("of"), (("panel", _("this panel")), ("car", _("whole car"))), columns=2))
        self.of.set_value("panel")
        self.words = AskedText(_("what was found"))
        emptied_for_each_job(context, self.words)
        self.note = button(_("Note it"), self.add, name=_("Note it for the supplement"))
        self.take_in = button("", self._take_in)
        self.list = gives_way(OpenList(context.dress, _("items of the supplement")), m.target * 2)
        self.list.chosen.connect(self._chosen)
        self.strike = button(_("Strike out"), self._strike, name=_("Strike out the chosen item"))
        self.ask = button(_("Ask the owner"), self._ask, name=_("Ask the owner about the supplement"))
        self.words.line.returnPressed.connect(self.add)
        typed, does = QHBoxLayout(), QHBoxLayout()
        typed.addWidget(self.words, 1)
        typed.addWidget(self.note, 0, Qt.AlignmentFlag.AlignBottom)
        does.addWidget(self.strike, 1)
        does.addWidget(self.ask, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.says)
        column.addWidget(self.of)
        column.addLayout(typed)
        column.addWidget(self.take_in)
        column.addWidget(self.list, 1)
        column.addLayout(does)

    def add(self) -> None:
        """What is typed becomes an item of the selected panel, or of the whole car."""
        job, panel = self._context.job_id, self._context.selected_panel
        if job is None:
            return
        if self.of.value == "panel" and not panel:
            self._context.notice(_("Choose a panel first, or press “whole car”."), "stop")
            return
        words = self.words.text().strip()
        if not words:
            self.words.say(_("Say in words what was found."))
            return
        move = AddSupplementItem(job, words, panel if self.of.value == "panel" else "")
        if self._context.do(move, initiator=self, at=self.words.refuse) is not None:
            self.words.clear()

    def redraw(self) -> None:
        """Show the items, the mark offered next, and what the supplement waits for."""
        picture = self._context.picture
        seen = items(picture) if picture is not None else ()
        self.list.set_lines([self._line(picture, s) for s in seen if picture is not None])
        text, flagged = _standing(picture) if picture is not None else ("", False)
        self.says.setText(text)
        set_kind(self.says, "flagged" if flagged else "")
        marks = offered(picture) if picture is not None else ()
        self.take_in.setVisible(bool(marks))
        if marks:
            words = _("Take in: {panel}, {mark}").format(panel=panel_name(marks[0].panel), mark=mark_words(marks[0]))
            if len(marks) > 1:
                words = _("{words} (1 of {n})").format(words=words, n=len(marks))
            room = max(self.width() - 2 * self._context.dress.look.measure.space("wide"), 120)
            shown = self.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, room)
            self.take_in.setText(shown.replace("&", "&&"))
            self.take_in.setAccessibleName(words)
            self.take_in.setToolTip(tip(words))
        self._enable()

    def _enable(self) -> None:
        picture = self._context.picture
        self.strike.setEnabled(picture is not None and bool(self.list.key))  # one that is closed says why it stays
        self.ask.setEnabled(picture is not None and bool(supplements(picture)) and bool(unanswered(picture)))

    def _chosen(self, item_id: str) -> None:
        picture = self._context.picture
        item = next((i for i in picture.supplement if i.id == item_id), None) if picture is not None else None
        if item is not None and item.panel:
            self._context.select_panel(item.panel)
        self._enable()

    def _take_in(self) -> None:
        picture = self._context.picture
        marks = offered(picture) if picture is not None else ()
        if picture is not None and marks:
            self._context.do(AddSupplementItem(picture.job.id, mark_id=marks[0].id), initiator=self)

    def _strike(self) -> None:
        job = self._context.job_id
        if job is not None and self.list.key:
            self._context.do(StrikeSupplementItem(job, self.list.key), initiator=self)

    def _ask(self) -> None:
        picture = self._context.picture
        closed = supplements(picture) if picture is not None else ()
        if picture is not None and closed:
            waiting = "; ".join(item_words(i) for i in unanswered(picture))
            self._context.owner_wanted.emit(AskAbout("ask", "supplement", question=waiting, document_id=closed[-1].id))

    @staticmethod
    def _line(picture: JobPicture, seen: ItemSeen) -> Line:
        if seen.answer is not None:
            far = answer_line(picture, seen.answer)
        elif seen.document is not None:
            far = _("closed {at}, not answered yet").format(at=when_words(seen.document.entered_at))
        else:
            far = _("in no closed supplement yet")
        return Line(seen.item.id, with_initials(picture.shop, f"{item_words(seen.item)}\n{far}", seen.item))


def _standing(picture: JobPicture) -> tuple[str, bool]:
    """What the supplement waits for, and whether a machine start waits with it."""
    if not picture.supplement:
        return _("What shows after the wash and is not in the arrival record: the owner is told first."), False
    waiting = unanswered(picture)
    if not waiting:
        return _("Every item is answered."), False
    if any(s.document is None for s in items(picture)):
        return _("Close it, send it off and ask the owner: until the answer no machine starts."), True
    return _("Closed and not answered yet: until the answer no machine starts."), True
