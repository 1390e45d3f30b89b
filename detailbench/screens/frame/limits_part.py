"""The owner's limits: which are in force, reading those that cannot be computed, asking about one."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import initials
from detailbench.findings.limits import limit_words, unread
from detailbench.moves.agreeing import AcknowledgeLimits
from detailbench.record.picture import JobPicture
from detailbench.record.things import OwnerLimit
from detailbench.screens.asking import AskAbout
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, gives_way, sentence, set_kind
from detailbench.screens.stages.work_parts.open_list import Line, OpenList


class LimitsPart(QWidget):
    """``read``: who is entering has acknowledged them; ``ask_wanted``: the owner shall be asked about the chosen
    one."""

    read = Signal()
    ask_wanted = Signal(object)

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.says = sentence()
        self.list = gives_way(OpenList(context.dress, _("Limits of this job")), m.target * 3)
        self.list.chosen.connect(lambda _key: self.redraw())
        self.acknowledge = button(_("I have read them"), self._acknowledge, role="main")
        self.ask = button(_("Ask about the chosen one"), self._ask)
        row = QHBoxLayout()
        row.setSpacing(m.space("gap"))
        row.addWidget(self.acknowledge, 1)
        row.addWidget(self.ask, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addWidget(self.says)
        column.addWidget(self.list, 1)
        column.addLayout(row)

    @property
    def _chosen(self) -> OwnerLimit | None:
        picture = self._context.picture
        kept = picture.limits if picture is not None else ()
        return next((m for m in kept if m.id == self.list.key), None)

    def take_focus(self) -> None:
        """On what is to be done: reading, else the list."""
        if self.acknowledge.isEnabled():
            self.acknowledge.setFocus()
        elif self.list.isVisible():
            self.list.setFocus()

    def redraw(self) -> None:
        picture, bench = self._context.picture, self._context.bench
        if picture is None or bench is None:
            return
        waiting = unread(picture, bench.person, self._context.clock.now().date())
        self.list.setVisible(bool(picture.limits))
        self.list.set_lines([Line(m.id, _line(picture, m, waiting)) for m in picture.limits])
        self.acknowledge.setEnabled(bool(waiting))
        chosen = self._chosen
        self.ask.setEnabled(chosen is not None and not chosen.lifted_by)
        if not picture.limits:
            text = _("The owner set no limits. They are entered in Arrival.")
        elif waiting:
            text = _("Read these before a trial or a start: the program cannot watch over them. Once a day is enough.")
        else:
            text = _("They bind whatever we think; only a new agreement lifts one.")
        self.says.setText(text)
        set_kind(self.says, "flagged" if waiting else "")

    def _acknowledge(self) -> None:
        picture = self._context.picture
        if picture is not None and self._context.do(AcknowledgeLimits(picture.job.id), self) is not None:
            self.read.emit()

    def _ask(self) -> None:
        chosen = self._chosen
        if chosen is not None:
            self.ask_wanted.emit(AskAbout("ask", "limit", limit_id=chosen.id))


def _line(picture: JobPicture, limit: OwnerLimit, waiting: tuple[OwnerLimit, ...]) -> str:
    """The limit, and below it who entered it and how it stands."""
    seen = [s for s in picture.limits_seen if s.limit_id == limit.id]
    if limit.lifted_by:
        state = _("lifted by an agreement")
    elif limit in waiting:
        state = _("to be read today")
    elif limit.kind == "other" and seen:
        state = _("in force, last read by {who}").format(who=initials(picture.shop, seen[-1].entered_by))
    else:
        state = _("in force")
    return f"{limit_words(limit)}\n{initials(picture.shop, limit.entered_by)} · {state}"
