"""The sheets about the owner and about a mishap: made when first asked for, reached from every stage."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.screens.asking import AskAbout
from detailbench.screens.frame.sheet import Sheet
from detailbench.screens.frame.who_enters import AskingFrame
from detailbench.screens.look.parts import button

if TYPE_CHECKING:
    from detailbench.screens.frame.agreement_sheet import AgreementSheet
    from detailbench.screens.frame.mishap_sheet import MishapSheet


class OwnerKeeper:
    """Belongs to one window."""

    def __init__(self, window: AskingFrame, come_near: Callable[[], object]) -> None:
        """``come_near`` puts the far view away: the sheets lie beneath it."""
        self._window = window
        self._come_near = come_near
        self.agreements: AgreementSheet | None = None
        self.mishaps: MishapSheet | None = None
        self.mishap_button = button(_("Mishap"), self.mishap, name=_("Mishap: something went wrong"))
        self.owner_button = button(_("Owner"), self.asked, name=_("Owner: asked and answered, limits"))
        window.context.changed.connect(self.follow)
        window.context.job_opened.connect(self.follow)
        self.follow()

    @property
    def buttons(self) -> tuple[QWidget, QWidget]:
        return self.mishap_button, self.owner_button

    def follow(self, *_what: object) -> None:
        """The buttons act while a job is open; how many questions wait for an answer stands on theirs."""
        picture = self._window.context.picture
        for each in self.buttons:
            each.setEnabled(picture is not None)
        waiting = 0
        if picture is not None and picture.agreements:
            from detailbench.findings.agreements import open_agreements  # not before the window is shown

            waiting = len(open_agreements(picture))
        self.owner_button.setText(_("Owner {n}").format(n=format_number(waiting)) if waiting else _("Owner"))
        says = _("1 question open") if waiting == 1 else _("{n} questions open").format(n=format_number(waiting))
        self.owner_button.setAccessibleDescription(says if waiting else "")

    def asked(self) -> None:
        """What was put to the owner; again: put it away."""
        sheet = self.agreements
        if sheet is not None and sheet.isVisible():
            sheet.close_sheet()
            return
        self.ask(AskAbout("asked"))

    def ask(self, about: AskAbout) -> None:
        """Open the sheet about the owner with this."""
        if self._window.context.picture is None:
            return
        if self.agreements is None:
            from detailbench.screens.frame.agreement_sheet import AgreementSheet  # not before the window is shown

            self.agreements = AgreementSheet(self._window.centre, self._window.context)
            self._take_in(self.agreements)
        self._come_near()
        self._put_away(self.mishaps)
        self.agreements.show_about(about)

    def mishap(self) -> None:
        """Open the sheet that takes a mishap; again: put it away."""
        if self._window.context.picture is None:
            return
        if self.mishaps is None:
            from detailbench.screens.frame.mishap_sheet import MishapSheet

            self.mishaps = MishapSheet(self._window.centre, self._window.context)
            self._take_in(self.mishaps)
        if self.mishaps.isVisible():
            self.mishaps.close_sheet()
            return
        self._come_near()
        self._put_away(self.agreements)
        self.mishaps.show_mishaps()

    def _take_in(self, sheet: Sheet) -> None:
        self._window.centre.add_sheet(sheet)
        sheet.closed.connect(self._window.to_map)

    def _put_away(self, other: Sheet | None) -> None:
        """One sheet at a time; the one that says a rule stops something would lie above."""
        self._window.override.hide()
        if other is not None:
            other.hide()
