"""Damage already there on arrival, in words, on the selected panel or elsewhere."""

from __future__ import annotations

from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.moves.arrival import AddDamage, StrikeDamage
from detailbench.screens.context import Context
from detailbench.screens.entry.text_field import NoteField
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.stages.work_parts.open_list import Line, OpenList


class DamagePage(QWidget):
    """A field, the list, and striking out the chosen line."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self.where = sentence()
        self.words = NoteField(_("existing damage, in words"), lines=2)
        self.words.committed.connect(self.add)
        self.list = OpenList(context.dress, _("existing damage"))
        self.list.chosen.connect(lambda _key: self._enable())
        self.strike = button(_("Strike out the chosen line"), self.strike_out)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(self.where)
        column.addWidget(self.words)
        column.addWidget(button(_("Note this damage"), self.words.commit))
        self.list.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Ignored)  # gives way first
        column.addWidget(self.list, 1)
        column.addWidget(self.strike)

    def add(self, words: str) -> None:
        """Note what was typed."""
        job = self._context.job_id
        if words.strip() and job is not None:
            done = self._context.do(AddDamage(job, words, self._context.selected_panel), initiator=self)
            if done is not None:
                self.words.clear()

    def strike_out(self) -> None:
        """Strike out the chosen line."""
        job = self._context.job_id
        if job is not None and self.list.key:
            self._context.do(StrikeDamage(job, self.list.key), initiator=self)

    def redraw(self) -> None:
        panel = self._context.selected_panel
        where = panel_name(panel) if panel else _("no panel: glass, wheels, lamps, trim, or the whole car")
        self.where.setText(_("On: {where}").format(where=where))
        self.where.setAccessibleName(self.where.text())
        damages = self._context.picture.damages if self._context.picture is not None else ()
        lines = []
        for damage in damages:
            front = panel_name(damage.panel) if damage.panel else _("elsewhere")
            lines.append(Line(damage.id, f"{front}: {damage.words}"))
        self.list.set_lines(lines)
        self._enable()

    def _enable(self) -> None:
        self.strike.setEnabled(bool(self.list.key))
