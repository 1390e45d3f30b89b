"""The whole car: minutes left, what runs, what comes next, every panel."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import NBSP, format_interval, format_quantity
from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.gates import held_back
from detailbench.findings.walking import panels_in_order
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, label
from detailbench.screens.stages.work.hand import WorkHand, clock_words
from detailbench.screens.stages.work.on_map import HELD, NO_PROCESS
from detailbench.screens.stages.work.words import panel_state
from detailbench.screens.stages.work_parts.figure_line import FigureLine
from detailbench.screens.stages.work_parts.open_list import Line, OpenList


class CarPage(QWidget):
    """The list leads to its panels."""

    def __init__(self, context: Context, hand: WorkHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self._held: tuple[JobPicture, Mapping[str, str]] | None = None
        self.left = FigureLine(_("left on the whole car"), context)
        self.plan = FigureLine(_("planned"), context)
        self.now = label("", wrap=True)
        self.next = label("", wrap=True)
        self.go = button(_("Go there"), hand.go_on, name=_("Go to the next panel"))
        self.list = OpenList(context.dress, _("Every panel with its work left"))
        self.list.chosen.connect(context.select_panel)
        figures, row = QHBoxLayout(), QHBoxLayout()
        figures.addWidget(self.left, 1)
        figures.addWidget(self.plan, 1)
        row.addWidget(self.next, 1)
        row.addWidget(self.go)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        column.addLayout(figures)
        column.addWidget(self.now)
        column.addLayout(row)
        column.addWidget(self.list, 1)

    def redraw(self) -> None:
        picture, standing = self._context.picture, self._hand.standing
        if picture is None or standing is None:
            self.list.set_lines(())
            return
        plan = standing.plan
        self.left.show_value(format_quantity(standing.left.minutes_left, "min", 0), standing.left.working)
        interval = format_interval(plan.minutes_low, plan.minutes_high, digits=0)
        self.plan.show_value(f"{format_quantity(plan.minutes, 'min', 0)} ({interval.replace(' ', NBSP)})", plan.working)
        run = self._hand.any_run
        self.now.setVisible(run is not None)
        if run is not None:
            lasts = clock_words(self._hand.now - run.started_at)
            self.now.setText(_("running: {panel}, {time}").format(panel=panel_name(run.panel), time=lasts))
        due = self._hand.next_due()
        self.next.setText(_("next: {panel}").format(panel=panel_name(due)) if due else _("Nothing is left to start."))
        self.go.setVisible(bool(due))
        held = dict(plan.held)
        lines = []
        for key in panels_in_order(picture):
            hatch: Hatch = HELD if key in held else NO_PROCESS if key in plan.without_process else ""
            name = panel_name(key)
            state = panel_state(picture, standing, key)
            if key not in held and standing.plan.of_panel(key) and key in (since := self._held_since(picture)):
                state = _("{state}; nothing more here: {why}").format(state=state, why=since[key])
            lines.append(Line(key, f"{name[:1].upper()}{name[1:]}: {state}", hatch, standing.left.by_panel.get(key)))
        self.list.set_lines(lines, self._hand.panel)

    def _held_since(self, picture: JobPicture) -> Mapping[str, str]:
        """Panels on which work went on or ended and something stands against more of it; found once for a picture."""
        if self._held is None or self._held[0] is not picture:
            self._held = (picture, held_back(picture))
        return self._held[1]
