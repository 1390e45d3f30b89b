"""The computer's clock, and the place the workshop lies in: what is wrong with them, said by a person."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.clock import shown
from detailbench.moves.clock import NoteClock
from detailbench.screens.context import Context
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, heading, rule, sentence
from detailbench.screens.pages.shop.safe.says import Answer


class ClockPage(QWidget):
    """Both are printed or noted; neither stops anything once it is said."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.now = Answer.make(_("clock"))
        self.words = TextField(_("what is wrong with the clock, or was done about it"), of_form=True)
        self.words.line.returnPressed.connect(self.note)
        self.note_it = button(_("Note it"), self.note, name=_("Note the clock"))
        self.place = Answer.make(_("where the workshop lies"))
        self.stay = button(_("Work here all the same"), self.accept)
        acts = QHBoxLayout()
        acts.addWidget(self.note_it)
        acts.addStretch(1)
        beside = QHBoxLayout()
        beside.addWidget(self.stay)
        beside.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addWidget(heading(_("Clock")))
        column.addWidget(self.now)
        column.addWidget(
            sentence(_("Entries keep their order by number, whatever the clock says; documents print it."))
        )
        column.addWidget(self.words)
        column.addLayout(acts)
        column.addWidget(rule())
        column.addWidget(heading(_("Where the workshop lies")))
        column.addWidget(self.place)
        column.addLayout(beside)
        column.addStretch(1)

    def redraw(self) -> None:
        """What is known now."""
        bench = self._context.bench
        if bench is None:
            return
        clock, place = bench.clock_trouble(), bench.place_trouble
        now = _("This computer's clock says {at}.").format(at=shown(self._context.clock.now()))
        self.now.say(clock or now, "stop" if clock else "")
        self.place.say(place or _("{folder}. Nothing speaks against it.").format(folder=bench.folder),
                       "stop" if place else "")  # fmt: skip
        self.stay.setVisible(bool(place))
        self.note_it.setEnabled(self._context.can_write)

    def note(self) -> None:
        """Note what is typed."""
        done = self._context.do(NoteClock(self.words.text()), initiator=self, at=self.words.say)
        if done is not None:
            self.words.clear()

    def accept(self) -> None:
        """Work here all the same, noted once."""
        bench: Any = self._context.bench
        if bench is not None:
            bench.accept_place(self)
