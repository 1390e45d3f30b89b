"""What is hoped for and what will surely remain."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.moves.arrival import SetHopes
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.stages.cautions_line import CautionsLine
from detailbench.screens.stages.work_parts.kept_fields import KeptFields


class HopesPage(QWidget):
    """In the owner's words; below, the stage's usual cautions."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        fields = self._fields = KeptFields(context, self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        for name, title in (
            ("hoped_level", _("hoped-for level, in the owner's words")),
            ("will_remain", _("what will surely remain")),
        ):
            column.addWidget(fields.note(title, _reader(name), _mover(name)))
        column.addWidget(fields.text(_("price range"), _reader("price_range"), _mover("price_range")))
        column.addStretch(1)
        column.addWidget(CautionsLine(context, "arrival"))

    def redraw(self) -> None:
        self._fields.redraw()


def _reader(name: str) -> Callable[[JobPicture], str]:
    return lambda picture: str(getattr(picture.job, name))


def _mover(name: str) -> Callable[[str, str], Any]:
    return lambda job, text: SetHopes(job, {name: text})
