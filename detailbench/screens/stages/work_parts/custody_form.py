"""Custody, coming in or going out: a form for either end of the visit, kept field by field."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number, read_typed
from detailbench.basics.texts import _
from detailbench.findings.custody import custody_of
from detailbench.moves.custody import NoteCustody
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.stages.work_parts.kept_fields import KeptFields, whole_number


class CustodyForm(QWidget):
    """``moment``: in or out. The newest word of each field stands in it."""

    def __init__(self, context: Context, moment: str) -> None:
        super().__init__()
        self.moment = moment
        self._context = context
        fields = self._fields = KeptFields(context, self)
        m = context.dress.look.measure
        energy, keys, seen = QHBoxLayout(), QHBoxLayout(), QHBoxLayout()
        energy.addWidget(
            fields.choice(
                _("runs on"),
                [("fuel", _("fuel")), ("charge", _("charge"))],
                self._reader("energy"),
                self._mover("energy"),
                columns=2,
            ),
            3,
        )
        energy.addWidget(
            fields.text(_("how full, %"), self._reader("energy_percent"), self._full, check=_share),
            2,
        )
        keys.addWidget(
            fields.text(
                _("keys"), self._reader("keys_count"), self._mover("keys_count", whole_number), check=whole_number
            ),
            1,
        )
        where = _("where they hang") if moment == "in" else _("given to whom")
        keys.addWidget(fields.text(where, self._reader("keys_at"), self._mover("keys_at")), 3)
        for name, title in (("warning_lamps", _("warning lamps")), ("valuables", _("valuables"))):
            seen.addWidget(fields.text(title, self._reader(name), self._mover(name)), 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        for row in (energy, keys, seen):
            column.addLayout(row)
        column.addWidget(fields.text(_("where the car stands"), self._reader("stands_at"), self._mover("stands_at")))

    def redraw(self) -> None:
        self._fields.redraw()

    def _full(self, job: str, text: str) -> NoteCustody:
        """How full, with what the car runs on where that was said when it came and not again."""
        values: dict[str, object] = {"energy_percent": _share(text)}
        picture = self._context.picture
        if picture is not None and self.moment == "out" and not custody_of(picture, "out").energy:
            came = custody_of(picture, "in").energy
            values |= {"energy": came} if came and values["energy_percent"] is not None else {}
        return NoteCustody(job, self.moment, values)

    def _reader(self, name: str) -> Callable[[JobPicture], str]:
        def read(picture: JobPicture) -> str:
            value = getattr(custody_of(picture, self.moment), name)
            if value is None:
                return ""
            return format_number(value) if isinstance(value, int | float) else str(value)

        return read

    def _mover(self, name: str, read: Callable[[str], object] = str.strip) -> Callable[[str, str], Any]:
        return lambda job, text: NoteCustody(job, self.moment, {name: read(text)})


def _share(text: str) -> float | None:
    """A typed share in per cent, or None. Raises BadInput."""
    if not text.strip():
        return None
    typed = read_typed(text.strip().rstrip("%").strip(), expects="plain")
    if typed.value is None or typed.question:
        raise BadInput(typed.question or typed.sentence, given=text)
    return typed.value
