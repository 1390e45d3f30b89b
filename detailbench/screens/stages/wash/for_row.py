"""The row that says which panels the next entry is for."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button
from detailbench.screens.stages.wash.panels_meant import PanelsMeant
from detailbench.screens.stages.work_parts.pages import in_line


class ForRow(QWidget):
    """This panel, several, or the whole car; below it, when several are meant, what picks them."""

    def __init__(self, context: Context, meant: PanelsMeant) -> None:
        super().__init__()
        self._context, self._meant = context, meant
        m = context.dress.look.measure
        choices = (("panel", _("this panel")), ("several", _("several")), ("car", _("whole car")))
        self.scope = in_line(ChoiceRow(_("for"), choices, columns=3))
        self.scope.chosen.connect(meant.mean)
        self.turn = button(_("Take in"), lambda: meant.turn(context.selected_panel))
        self.left = button(_("Left side"), lambda: meant.take_side("left"), name=_("Take in the left side"))
        self.right = button(_("Right side"), lambda: meant.take_side("right"), name=_("Take in the right side"))
        self.none = button(_("None"), self._none, name=_("Take in none"))
        self.picking = QWidget()
        row = QHBoxLayout(self.picking)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(m.space("thin"))
        for each in (self.turn, self.left, self.right, self.none):
            row.addWidget(each)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.scope)
        column.addWidget(self.picking)

    def redraw(self) -> None:
        """Show what is meant now."""
        meant, selected = self._meant, self._context.selected_panel
        self.scope.set_value(meant.scope or ("panel" if selected else ""))
        self.picking.setVisible(meant.scope == "several")
        text = _("Leave out") if selected in meant.several else _("Take in")
        self.turn.setText(text)
        what = panel_name(selected) if selected else _("the selected panel")
        self.turn.setAccessibleName(f"{text}: {what}")
        self.turn.setEnabled(bool(selected))

    def _none(self) -> None:
        self._meant.forget()
        self._meant.mean("several")
