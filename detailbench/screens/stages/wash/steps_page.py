"""The wash step by step: one press a step for the panels meant, and what was done with who and when."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import with_initials
from detailbench.findings.limits import panel_list
from detailbench.findings.states import state_of
from detailbench.findings.washing import COATED, kind_words, last_product, polished_since_coated
from detailbench.moves.reasons import says_why
from detailbench.moves.washing import RecordWashStep
from detailbench.record.picture import JobPicture
from detailbench.record.things import WashStep
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button, gives_way, tip
from detailbench.screens.stages.wash.asked_text import AskedText
from detailbench.screens.stages.wash.panels_meant import PanelsMeant
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job
from detailbench.screens.stages.work_parts.when import when_words


class StepsPage(QWidget):
    """Product and reason go with what is pressed next. Where no product is typed the one used last for that kind of
    step is taken; it stands on its button."""

    def __init__(self, context: Context, meant: PanelsMeant) -> None:
        super().__init__()
        self._context, self._meant = context, meant
        m = context.dress.look.measure
        self.kinds = ChoiceRow(_("step done"), tuple(kind_words().items()), columns=3)
        for made in self.kinds.buttons.values():  # three columns of one width, whatever product stands on a button
            made.setSizePolicy(QSizePolicy.Policy.Ignored, made.sizePolicy().verticalPolicy())
        self.kinds.chosen.connect(self.enter)
        self.product = AskedText(_("used for the step pressed next"))
        self.why_not = AskedText(_("or left out, because"))
        emptied_for_each_job(context, self.product, self.why_not)
        self.cover_off = button(_("The coating was taken off before"), self._turn_cover)
        self.cover_off.setCheckable(True)
        self.list = gives_way(OpenList(context.dress, _("steps of the wash, the newest first")), m.target)
        typed = QHBoxLayout()
        typed.setSpacing(m.space("small"))
        typed.addWidget(self.product, 1, Qt.AlignmentFlag.AlignTop)
        typed.addWidget(self.why_not, 1, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.kinds)
        column.addLayout(typed)
        column.addWidget(self.cover_off)
        column.addWidget(self.list, 1)
        for made in self.kinds.buttons.values():
            made.setCheckable(False)  # an act, not a choice that stays

    def enter(self, kind: str) -> None:
        """This step was done, or left out where a reason is typed, on the panels meant."""
        job, panels, picture = self._context.job_id, self._meant.panels, self._context.picture
        if job is None or picture is None:
            return
        if not panels:
            self._context.notice(_("Choose a panel first, or press “whole car”."), "stop")
            return
        why_not = self.why_not.text().strip()
        if why_not and not says_why(why_not):
            self.why_not.say(_("Say why in at least two words; it is printed."))
            return
        product = "" if why_not else self.product.text().strip() or last_product(picture, kind)
        off = kind == "panel_wipe" and not why_not and self.cover_off.isVisible() and self.cover_off.isChecked()
        move = RecordWashStep(job, kind, panels, product=product, why_not=why_not, cover_off=off)
        done = self._context.do(move, initiator=self)
        if done is not None:
            for field in (self.product, self.why_not):
                field.clear()
            self.cover_off.setChecked(False)
            if done.note:
                self._context.notice(done.note, "flagged")

    def redraw(self) -> None:
        """Show what was done, and what each kind was done with last."""
        picture, panels = self._context.picture, self._meant.panels
        words = kind_words()
        for number, (kind, made) in enumerate(self.kinds.buttons.items(), 1):
            product = last_product(picture, kind) if picture is not None else ""
            text = f"{number}  {words[kind]}"
            if product:
                text += f"\n{self._short(product, made)}"
            made.setText(text.replace("&", "&&"))
            made.setToolTip(tip(product))
            made.setAccessibleDescription(product)
        self.cover_off.setVisible(picture is not None and any(_covered(picture, p) for p in panels))
        steps = picture.wash_steps if picture is not None else ()
        count = len(self._context.outline.panels)
        self.list.set_lines([self._line(picture, s, count) for s in reversed(steps) if picture is not None])

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.redraw()

    def _short(self, product: str, made: QWidget) -> str:
        """As much of a product's name as a button has room for."""
        room = self.width() // 3 - 3 * self._context.dress.look.measure.space("gap")
        return made.fontMetrics().elidedText(product, Qt.TextElideMode.ElideRight, max(room, 60))

    @staticmethod
    def _line(picture: JobPicture, step: WashStep, whole: int) -> Line:
        what = kind_words()[step.kind]
        if step.why_not:
            what = _("{step} left out: {reason}").format(step=what, reason=step.why_not)
        elif step.product:
            what = _("{step} with {product}").format(step=what, product=step.product)
        if step.note:
            what = f"{what}; {step.note}"
        where = _("whole car") if len(step.panels) == whole else panel_list(step.panels)
        at = when_words(step.stated_at or step.entered_at)
        return Line(step.id, with_initials(picture.shop, f"{what}\n{where} · {at}", step))

    def _turn_cover(self) -> None:
        """Checked by itself; nothing else to do."""


def _covered(picture: JobPicture, panel: str) -> bool:
    return state_of(picture, panel).cover in COATED and not polished_since_coated(picture, panel)
