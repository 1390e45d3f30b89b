"""Damage already there on arrival, and repairs as stated: on the selected panel, or on what is no panel."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.kit_names import with_initials
from detailbench.moves.arrival import PARTS, AddDamage, StrikeDamage
from detailbench.moves.intake import SAID_BY, AddRepair, StrikeRepair
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, gives_way
from detailbench.screens.stages.arrival.words import damage_words, part_words, repair_words, said_by_words
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import Faces, in_line
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job

DAMAGE: Hatch = "crossed"  # as on the map
REPAIR: Hatch = "falling"


class DamagePage(QWidget):
    """What it is first; then where, and the words. One list for both, with the map's own hatches."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        what = (("damage", _("damage")), ("repair", _("stated repair")))
        self.what = in_line(ChoiceRow(_("note"), what, columns=2))
        self.damage, self.repair = _DamageForm(context), _RepairForm(context)
        self.faces = Faces()
        self.faces.addWidget(self.damage)
        self.faces.addWidget(self.repair)
        self.what.set_value("damage")
        self.what.chosen.connect(self.turn)
        self.note = button("", self.add)
        self.list = gives_way(OpenList(context.dress, _("existing damage")), m.target * 2)
        self.list.chosen.connect(lambda _key: self._enable())
        self.strike = button(_("Strike out"), self.strike_out, name=_("Strike out the chosen line"))
        does = QHBoxLayout()
        does.addWidget(self.note, 2)
        does.addWidget(self.strike, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.what)
        column.addWidget(self.faces)
        column.addLayout(does)
        column.addWidget(self.list, 1)

    def turn(self, what: str) -> None:
        """Note damage, or a stated repair."""
        self.what.set_value(what)
        self.faces.setCurrentWidget(self.repair if what == "repair" else self.damage)
        self.redraw()

    def add(self) -> None:
        """Note what was typed."""
        (self.repair if self.what.value == "repair" else self.damage).add()

    def strike_out(self) -> None:
        """Strike out the chosen line."""
        job, picture = self._context.job_id, self._context.picture
        if job is not None and picture is not None and self.list.key:
            repair = any(r.id == self.list.key for r in picture.repairs)
            self._context.do((StrikeRepair if repair else StrikeDamage)(job, self.list.key), initiator=self)

    def redraw(self) -> None:
        self.repair.redraw()
        self.note.setText(_("Note this repair") if self.what.value == "repair" else _("Note this damage"))
        self.note.setAccessibleName(self.note.text())
        picture = self._context.picture
        lines = []
        if picture is not None:
            lines = [Line(d.id, with_initials(picture.shop, damage_words(d), d), DAMAGE) for d in picture.damages]
            lines += [Line(r.id, with_initials(picture.shop, repair_words(r), r), REPAIR) for r in picture.repairs]
        self.list.set_lines(lines)
        self._enable()

    def _enable(self) -> None:
        self.strike.setEnabled(bool(self.list.key))


class _DamageForm(QWidget):
    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self.part = ChoiceRow(_("where"), [(part, part_words(part)) for part in PARTS], columns=4)
        self.part.set_value("panel")  # the card's heading says which; its name would be cut here
        self.which = TextField(_("which one"), of_form=True)
        self.words = TextField(_("existing damage, in words"), of_form=True)
        emptied_for_each_job(context, self.which, self.words)
        for field in (self.words, self.which):
            field.line.returnPressed.connect(self.add)
        row = QHBoxLayout()
        row.addWidget(self.words, 3)
        row.addWidget(self.which, 2)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(self.part)
        column.addLayout(row)

    def add(self) -> None:
        """Note what was typed."""
        job = self._context.job_id
        words, part = self.words.text().strip(), self.part.value or "panel"
        if job is None:
            return
        if not words:
            self.words.say(_("Say in words what is damaged."))
            return
        panel = self._context.selected_panel if part == "panel" else ""
        move = AddDamage(job, words, panel, part, self.which.text())
        if self._context.do(move, initiator=self, at=self.words.say) is not None:
            for field in (self.words, self.which):
                field.clear()


class _RepairForm(QWidget):
    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self.where = in_line(ChoiceRow(_("on"), (("panel", _("panel")), ("car", _("whole car"))), columns=2))
        self.by = in_line(ChoiceRow(_("stated by"), [(by, said_by_words(by)) for by in SAID_BY], columns=3))
        self.words = TextField(_("repair as stated, in words"), of_form=True)
        emptied_for_each_job(context, self.words)
        self.words.line.returnPressed.connect(self.add)
        self.where.set_value("panel")
        self.by.set_value("owner")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        for part in (self.where, self.by, self.words):
            column.addWidget(part)

    def redraw(self) -> None:
        panel = self._context.selected_panel
        self.where.buttons["panel"].setText(panel_name(panel) if panel else part_words("panel"))

    def add(self) -> None:
        """Note what was typed."""
        job, panel = self._context.job_id, self._context.selected_panel
        words = self.words.text().strip()
        if job is None:
            return
        if not words:
            self.words.say(_("Say in words what was repaired."))
            return
        if self.where.value == "panel" and not panel:
            self.words.say(_("Choose the panel on the map first."))
            return
        move = AddRepair(job, words, panel if self.where.value == "panel" else "", self.by.value)
        if self._context.do(move, initiator=self, at=self.words.say) is not None:
            self.words.clear()
