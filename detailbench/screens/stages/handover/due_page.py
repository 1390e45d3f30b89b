"""What is still due before the car goes back."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.due import due
from detailbench.findings.due_handover import handover_list
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.handover.due_words import PLACES, due_state, due_title
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.work.cautions import cautions

DONE, OPEN = "✓", "○"


class DuePage(QWidget):
    """A list; each line leads to where it is done."""

    def __init__(self, context: Context, turn: Callable[[str], object]) -> None:
        super().__init__()
        self._context, self._turn = context, turn
        self.list = OpenList(context.dress, _("Due at handover"))
        self.go = button(_("Go to it"), self._go, role="main", name=_("Go to what is chosen"))
        self.list.opened.connect(lambda _key: self._go())
        self.cautions = sentence(" ".join(f"{c.says} ({'; '.join(c.defer_to)})" for c in cautions("handover")[-1:]))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(self.list, 1)
        column.addWidget(self.go)
        column.addWidget(self.cautions)

    def redraw(self) -> None:
        picture = self._context.picture
        if picture is None:
            self.list.set_lines(())
            return
        open_, now = due(picture)["handover"].what, self._context.clock.now()
        lines = [
            Line(
                key,
                _("{sign}  {what}: {state}").format(
                    sign=OPEN if key in open_ else DONE,
                    what=due_title(key),
                    state=due_state(picture, key, key in open_, now),
                ),
            )
            for key in handover_list(picture)
        ]
        self.list.set_lines(lines, self.list.key or (open_[0] if open_ else "report"))

    def _go(self) -> None:
        if self.list.key:
            self._turn(PLACES.get(self.list.key, self.list.key))
