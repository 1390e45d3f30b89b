"""The white-pad rub: what was found, what it means, and the paint system it proposes."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.kit_names import with_initials
from detailbench.findings.processes import group_of
from detailbench.findings.rubs import found_words, proposed_paint, rub_means
from detailbench.findings.state_words import state_words
from detailbench.findings.states import state_of
from detailbench.moves.surface import SetPaintSystem
from detailbench.moves.washing import RecordRubTest
from detailbench.record.picture import JobPicture
from detailbench.record.things import RubTest
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button, gives_way, label, sentence, set_kind
from detailbench.screens.stages.wash.asked_text import AskedText
from detailbench.screens.stages.wash.words import paint_words, white_pad_hint
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job
from detailbench.screens.stages.work_parts.when import when_words


class RubPage(QWidget):
    """Of the selected panel. A paint system is proposed and never set by itself."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.panel = label("", "strong", wrap=True)
        self.where = AskedText(_("hidden place, in words; goes with what you press next"))
        emptied_for_each_job(context, self.where)
        self.found = ChoiceRow(_("white-pad rub"), tuple(found_words().items()), columns=3)
        self.found.chosen.connect(self.enter)
        for made in self.found.buttons.values():
            made.setCheckable(False)
        self.means = sentence()
        self.set_it = button("", self.set_paint, role="main")
        self.list = gives_way(OpenList(context.dress, _("white-pad rubs, the newest first")), m.target)
        self.list.chosen.connect(self._chosen)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        for part in (self.panel, self.where, self.found, self.means, self.set_it):
            column.addWidget(part)
        column.addWidget(self.list, 1)

    def enter(self, found: str) -> None:
        """This was found on the selected panel."""
        job, panel = self._context.job_id, self._context.selected_panel
        if job is None or not panel:
            self._context.notice(_("Choose a panel first."), "stop")
            return
        done = self._context.do(RecordRubTest(job, panel, found, self.where.text()), initiator=self)
        if done is not None:
            self.where.clear()
            if done.note:
                self._context.notice(done.note, "flagged" if found == "colour" else "plain")

    def set_paint(self) -> None:
        """The proposed paint system, by the person's press."""
        picture, panel = self._context.picture, self._context.selected_panel
        group = group_of(picture, panel) if picture is not None and panel else None
        proposed = proposed_paint(picture, group) if picture is not None and group is not None else None
        if picture is not None and group is not None and proposed is not None:
            self._context.do(SetPaintSystem(picture.job.id, group.id, proposed.paint_system), initiator=self)

    def redraw(self) -> None:
        """Show the panel, the last rub on its paint, and what that proposes."""
        picture, panel = self._context.picture, self._context.selected_panel
        group = group_of(picture, panel) if picture is not None and panel else None
        text = _("No panel chosen yet.")
        if picture is not None and panel:
            name, state = panel_name(panel), state_words(state_of(picture, panel))
            text = _("{panel}: {state}").format(panel=name[:1].upper() + name[1:], state=state)
        self.panel.setText(text)
        self.panel.setAccessibleName(text)
        own = [r for r in picture.rub_tests if r.panel == panel] if picture is not None else []
        proposed = proposed_paint(picture, group) if picture is not None and group is not None else None
        rub = proposed.rub if proposed is not None else own[-1] if own else None
        self.means.setText(rub_means(rub.found) if rub is not None else white_pad_hint())
        set_kind(self.means, "flagged" if proposed is not None else "")
        self.set_it.setVisible(proposed is not None)
        if proposed is not None and group is not None:
            words = _("Set “{group}” to {paint}").format(
                group=_(group.name), paint=paint_words()[proposed.paint_system]
            )
            self.set_it.setText(words.replace("&", "&&"))
            self.set_it.setAccessibleName(words)
        rubs = picture.rub_tests if picture is not None else ()
        self.list.set_lines([self._line(picture, r) for r in reversed(rubs) if picture is not None])

    def _chosen(self, rub_id: str) -> None:
        picture = self._context.picture
        found = next((r for r in picture.rub_tests if r.id == rub_id), None) if picture is not None else None
        if found is not None:
            self._context.select_panel(found.panel)

    @staticmethod
    def _line(picture: JobPicture, rub: RubTest) -> Line:
        first = f"{panel_name(rub.panel)}: {found_words()[rub.found]}"
        first = f"{first}; {rub.note}" if rub.note else first
        second = f"{when_words(rub.entered_at)} · {state_words(rub)}"
        return Line(rub.id, with_initials(picture.shop, f"{first}\n{second}", rub))
