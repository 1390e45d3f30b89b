"""The Handover stage as the window knows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.screens.actions import Action
from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Colouring, PanelFill
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.handover.after_page import change_words
from detailbench.screens.stages.handover.card import HandoverCard
from detailbench.screens.stages.handover.due_words import due_title
from detailbench.screens.stages.handover.panels_meant import polished
from detailbench.screens.stages.stage import ColouringChoice, Stage

if TYPE_CHECKING:
    from detailbench.record.picture import JobPicture


class HandoverStage(Stage):
    """Giving the car back."""

    key = "handover"

    def __init__(self) -> None:
        self.acts: ClosingActs | None = None
        self.card: HandoverCard | None = None

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return _("Handover")

    def begin(self, context: Context) -> None:
        self.acts = self.acts or ClosingActs(context, "handover")

    def make_card(self, context: Context) -> QWidget:
        self.begin(context)
        assert self.acts is not None
        self.card = HandoverCard(context, self.acts)
        return self.card

    def counts(self, picture: JobPicture) -> tuple[float, int]:
        from detailbench.findings.due import due

        found = due(picture)[self.key]
        return found.done, found.done + found.due

    def what_next(self, context: Context) -> str:
        from detailbench.findings.due import due

        if context.picture is None:
            return ""
        open_ = due(context.picture)[self.key].what
        return _("still open: {what}").format(what=due_title(open_[0])) if open_ else _("nothing is open here")

    def colourings(self) -> tuple[ColouringChoice, ...]:
        return (ColouringChoice("after", _("came off"), after_colouring),)

    def actions(self, context: Context) -> tuple[Action, ...]:
        if self.card is None:
            return ()
        pages = self.card.pages
        return (
            Action("page_on", _("next page"), "Ctrl+PgDown", lambda: pages.step(1), shown=False),
            Action("page_back", _("page before"), "Ctrl+PgUp", lambda: pages.step(-1), shown=False),
        )


MEASURED: Hatch = ""
NOT_MEASURED: Hatch = "rising"
NOT_POLISHED: Hatch = "dots"


def after_colouring(context: Context) -> Colouring:
    """Polished panels with what came off; those not read again hatched. No ramp: how much
    came off is not how good it is."""
    from detailbench.basics.numbers import format_thickness
    from detailbench.findings.changes import changes
    from detailbench.findings.panels import outline_of

    picture = context.picture
    fills: dict[str, PanelFill] = {}
    if picture is not None:
        found, done = changes(picture), polished(picture)
        for key in outline_of(picture).panels:
            if key not in done:
                fills[key] = PanelFill(None, NOT_POLISHED, "", _("not polished"))
            elif key not in found:
                fills[key] = PanelFill(None, NOT_MEASURED, "", _("no readings after the work yet"))
            else:
                change = found[key].change
                stated = change is not None and change.outcome == "removed"
                text = format_thickness(change.estimate_um, digits=1) if stated and change is not None else "–"
                fills[key] = PanelFill(None, MEASURED, text, change_words(found[key]))
    return Colouring(
        "after",
        _("came off"),
        fills,
        hatches=((NOT_MEASURED, _("not read again")), (NOT_POLISHED, _("not polished"))),
    )
