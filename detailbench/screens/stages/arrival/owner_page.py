"""Owner: personal, kept apart."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.parties import owner_of
from detailbench.moves.arrival import DescribeCar, SetOwner
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.wash.last_groups_part import LastGroupsPart
from detailbench.screens.stages.work_parts.kept_fields import KeptFields
from detailbench.screens.stages.work_parts.pages import in_line


class OwnerPage(QWidget):
    """Person or company, name, contact of a company, telephone, mail, address, plate."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        fields = self._fields = KeptFields(context, self)
        self.kind = fields.choice(
            _("owner is a"),
            [("person", _("person")), ("company", _("company"))],
            _kind,
            lambda job, key: SetOwner(job, kind=key),
            columns=2,
        )

        def personal(name: str, title: str) -> QWidget:
            return fields.text(title, _reader(name), _mover(name))

        self.contact = personal("contact", _("who speaks for the company"))
        reach = QHBoxLayout()
        reach.addWidget(personal("telephone", _("telephone")), 1)
        reach.addWidget(personal("mail", _("mail")), 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        self.last = LastGroupsPart(context)  # the first thing seen when a car comes back
        column.addWidget(self.last)
        column.addWidget(in_line(self.kind))
        column.addWidget(personal("name", _("owner's name")))
        column.addWidget(self.contact)
        column.addLayout(reach)
        where = QHBoxLayout()
        where.addWidget(personal("address", _("address")), 2)
        where.addWidget(
            fields.text(
                _("plate"), lambda p: p.said(p.car.id, "plate"), lambda job, text: DescribeCar(job, plate=text)
            ),
            1,
        )
        column.addLayout(where)
        column.addWidget(sentence(_("Kept apart from the rest, so that an owner can be forgotten later.")))
        column.addStretch(1)

    def redraw(self) -> None:
        self._fields.redraw()
        self.last.redraw()
        picture = self._context.picture
        self.contact.setVisible(
            picture is not None and (_kind(picture) == "company" or bool(_reader("contact")(picture)))
        )


def _kind(picture: JobPicture) -> str:
    owner = owner_of(picture)
    return owner.kind if owner is not None else ""


def _reader(name: str) -> Callable[[JobPicture], str]:
    def read(picture: JobPicture) -> str:
        owner = owner_of(picture)
        return picture.said(owner.id, name) if owner is not None else ""

    return read


def _mover(name: str) -> Callable[[str, str], Any]:
    return lambda job, text: SetOwner(job, {name: text})
