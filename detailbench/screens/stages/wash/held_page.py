"""Panels a person holds back from any machine, with the reason that is printed."""

from __future__ import annotations

from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.kit_names import with_initials
from detailbench.moves.surface import HoldPanel, ReleasePanel
from detailbench.record.picture import ShopPicture
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, label
from detailbench.screens.stages.wash.asked_text import AskedText
from detailbench.screens.stages.work_parts.open_list import Line, OpenList


class HeldPage(QWidget):
    """Hold the selected panel; release the one chosen in the list, or the selected one."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self.panel = label("", "strong", wrap=True)
        self.reason = AskedText(_("reason, at least two words; it is printed"))
        self.hold_it = button(_("Hold this panel back"), self.hold)
        self.list = OpenList(context.dress, _("panels held back"))
        self.list.chosen.connect(context.select_panel)
        self.release_it = button(_("Release this panel"), self.release)
        self.reason.line.returnPressed.connect(self.hold)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        for part in (self.panel, self.reason, self.hold_it):
            column.addWidget(part)
        self.list.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Ignored)  # gives way first
        column.addWidget(self.list, 1)
        column.addWidget(self.release_it)

    def hold(self) -> None:
        """Hold the selected panel back for the reason typed; a reason that will not do stays."""
        job, panel = self._context.job_id, self._context.selected_panel
        if job is None or not panel:
            self._context.notice(_("Choose a panel first."), "stop")
            return
        reason = self.reason.text().strip()
        if len(reason.split()) < 2:
            self.reason.say(_("Give the reason in at least two words; it is printed."))
            return
        if self._context.do(HoldPanel(job, panel, reason), initiator=self, at=self.reason.refuse) is not None:
            self.reason.clear()

    def release(self) -> None:
        """Release the selected panel."""
        job = self._context.job_id
        if job is not None and self._context.selected_panel:
            self._context.do(ReleasePanel(job, self._context.selected_panel), initiator=self)

    def redraw(self) -> None:
        """Show what is held and whether the selected panel is."""
        picture, panel = self._context.picture, self._context.selected_panel
        held = {h.panel: h for h in picture.holds if not h.lifted} if picture is not None else {}
        shop = picture.shop if picture is not None else ShopPicture()
        lines = [
            Line(key, with_initials(shop, f"{panel_name(key)}: {hold.reason}", hold), "crossed")
            for key, hold in held.items()
        ]
        self.list.set_lines(lines, panel)
        if not panel:
            text = _("No panel chosen yet.")
        elif panel in held:
            text = _("{panel}: held back").format(panel=panel_name(panel))
        else:
            text = _("{panel}: not held back").format(panel=panel_name(panel))
        self.panel.setText(text[:1].upper() + text[1:])
        self.panel.setAccessibleName(self.panel.text())
        self.hold_it.setEnabled(bool(panel) and panel not in held)
        self.release_it.setEnabled(panel in held)
