"""Owner: personal, kept apart."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.moves.arrival import DescribeCar, SetOwner
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.arrival.kept_fields import KeptFields


def owner_value(picture: JobPicture, name: str) -> str:
    """A personal value of the owner."""
    owner = next((p for p in picture.parties if p.role == "owner"), None)
    return picture.said(owner.id, name) if owner is not None else ""


class OwnerPage(QWidget):
    """Name, telephone, mail, address, plate."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._fields = KeptFields(context, self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        for name, title in (
            ("name", _("owner's name")),
            ("telephone", _("telephone")),
            ("mail", _("mail")),
            ("address", _("address")),
        ):
            column.addWidget(self._fields.text(title, _reader(name), _mover(name)))
        column.addWidget(
            self._fields.text(
                _("plate"), lambda p: p.said(p.car.id, "plate"), lambda job, text: DescribeCar(job, plate=text)
            )
        )
        column.addWidget(sentence(_("Kept apart from the rest, so that an owner can be forgotten later.")))
        column.addStretch(1)

    def redraw(self) -> None:
        self._fields.redraw()


def _reader(name: str) -> Callable[[JobPicture], str]:
    return lambda picture: owner_value(picture, name)


def _mover(name: str) -> Callable[[str, str], Any]:
    return lambda job, text: SetOwner(job, {name: text})
