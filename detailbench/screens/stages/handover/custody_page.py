"""What goes back with the car, beside what came with it; the car moved once more."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.custody import custody_of
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.work_parts.custody_form import CustodyForm
from detailbench.screens.stages.work_parts.moved_part import MovedPart


class CustodyOutPage(QWidget):
    """Custody in is only read here; out is typed."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self.came = sentence()
        self.form, self.moving = CustodyForm(context, "out"), MovedPart(context)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        for part in (self.came, self.form, self.moving):
            column.addWidget(part)
        column.addStretch(1)

    def redraw(self) -> None:
        picture = self._context.picture
        self.came.setText("" if picture is None else came_words(picture))
        self.form.redraw()
        self.moving.redraw()


def came_words(picture: JobPicture) -> str:
    """What came with the car, in one sentence."""
    came = custody_of(picture, "in")
    if not came.filled:
        return _("Nothing was noted of what came with the car.")
    parts = []
    if came.energy_percent is not None:
        energy = {"fuel": _("fuel"), "charge": _("charge")}.get(came.energy, _("fuel or charge"))
        parts.append(_("{energy} {percent}\u00a0%").format(energy=energy, percent=format_number(came.energy_percent)))
    if came.keys_count is not None:
        parts.append(_("keys: {n}").format(n=format_number(came.keys_count)))
    if came.warning_lamps:
        parts.append(_("warning lamps: {words}").format(words=came.warning_lamps))
    if came.valuables:
        parts.append(_("valuables: {words}").format(words=came.valuables))
    if came.stands_at:
        parts.append(_("stood at {place}").format(place=came.stands_at))
    return _("Came with: {what}.").format(what="; ".join(parts)) if parts else _("Where the keys hang was noted.")
