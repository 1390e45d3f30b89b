"""Odometer, light, what is hoped for and what will surely remain."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.moves.arrival import SetHopes, SetVisit
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.stages.arrival.kept_fields import KeptFields, whole_number


class HopesPage(QWidget):
    """The visit's facts above, the hopes below."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        fields = self._fields = KeptFields(context, self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        row = QHBoxLayout()
        row.addWidget(
            fields.text(
                _("odometer on arrival"), _odometer, lambda job, t: SetVisit(job, {"odometer_in": whole_number(t)}),
                check=whole_number,
            ),
            3,
        )  # fmt: skip
        row.addWidget(
            fields.choice(
                _("counts"),
                [("km", "km"), ("mi", "mi")],
                lambda p: p.visits[-1].odometer_unit,
                lambda job, key: SetVisit(job, {"odometer_unit": key}),
                columns=2,
            ),
            2,
        )
        column.addLayout(row)
        column.addWidget(
            fields.text(
                _("seen in what light"), lambda p: p.visits[-1].light, lambda job, t: SetVisit(job, {"light": t})
            )
        )
        for name, title in (
            ("hoped_level", _("hoped-for level, in the owner's words")),
            ("will_remain", _("what will surely remain")),
        ):
            column.addWidget(fields.note(title, _reader(name), _mover(name)))
        column.addWidget(fields.text(_("price range"), _reader("price_range"), _mover("price_range")))
        column.addStretch(1)

    def redraw(self) -> None:
        self._fields.redraw()


def _odometer(picture: JobPicture) -> str:
    value = picture.visits[-1].odometer_in
    return "" if value is None else str(value)


def _reader(name: str) -> Callable[[JobPicture], str]:
    return lambda picture: str(getattr(picture.job, name))


def _mover(name: str) -> Callable[[str, str], Any]:
    return lambda job, text: SetHopes(job, {name: text})
