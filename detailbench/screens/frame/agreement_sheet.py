"""What is put to the owner: asked, answered, and the owner's limits. Reached from every stage, never modal."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from detailbench.basics.texts import _
from detailbench.screens.asking import AskAbout
from detailbench.screens.context import Context
from detailbench.screens.frame.answering_part import AnsweringPart
from detailbench.screens.frame.asking_part import AskingPart
from detailbench.screens.frame.limits_part import LimitsPart
from detailbench.screens.frame.sheet import Sheet
from detailbench.screens.stages.work_parts.pages import Pages


class AgreementSheet(Sheet):
    """Three pages: what was asked, a new question, the limits. Typing stays until it is entered."""

    wide_mm = 150.0
    least_mm = 155.0

    def __init__(self, over: QWidget, context: Context) -> None:
        super().__init__(over, context.dress, _("With the owner"))
        self._context = context
        self.asked = AnsweringPart(context)
        self.ask = AskingPart(context)
        self.limits = LimitsPart(context)
        self.pages = Pages(context.dress)
        self.pages.add("asked", _("Asked"), self.asked)
        self.pages.add("ask", _("Ask"), self.ask)
        self.pages.add("limits", _("Limits"), self.limits)
        self.body.addWidget(self.pages, 1)
        self.asked.again.connect(self.show_about)
        self.limits.ask_wanted.connect(self.show_about)
        self.ask.asked.connect(self._put)
        self.limits.read.connect(self.close_sheet)
        self.pages.turned.connect(self._draw)
        context.changed.connect(self._draw)
        context.panel_selected.connect(self._draw)
        context.job_opened.connect(self._forget)

    def show_about(self, about: AskAbout) -> None:
        """Open the page asked for; a new question begins with what is known of it."""
        if about.page == "ask":
            self.ask.begin(about)
        self.pages.turn(about.page)
        self._draw()
        self.open_sheet()
        self._take_keys()

    def _put(self, agreement_id: str) -> None:
        """A question was put: its answer comes next."""
        self.asked.choose(agreement_id)
        self.pages.turn("asked")
        self._draw()
        self._take_keys()

    def _forget(self) -> None:
        """Another job: nobody's words go over into it."""
        self.hide()
        self.ask.forget()
        self.asked.forget()

    def _take_keys(self) -> None:
        page = {"asked": self.asked, "ask": self.ask, "limits": self.limits}[self.pages.page]
        page.take_focus()

    def _draw(self, *_what: object) -> None:
        if self._context.picture is None:
            return
        self.ask.redraw()
        self.asked.redraw()
        self.limits.redraw()
        if self.isVisible():
            self.opened.emit()  # whoever places it looks again how high it wants to be
