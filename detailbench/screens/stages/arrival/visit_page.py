"""The visit: when the car arrived, as stated; the light; the odometer; photographs that say which car this is."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.entered_later import arrival_entered
from detailbench.moves.arrival import SetVisit
from detailbench.moves.custody import SetArrived
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.entry.moment_reading import read_moment
from detailbench.screens.look.parts import sentence, set_kind
from detailbench.screens.stages.arrival.car_photos import CarPhotos
from detailbench.screens.stages.work_parts.kept_fields import KeptFields, whole_number
from detailbench.screens.stages.work_parts.when import when_words


class VisitPage(QWidget):
    """What was entered later than it is said to have been says so below its field."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        fields = self._fields = KeptFields(context, self)
        self.arrived = fields.text(
            _("arrived, as stated"),
            lambda p: when_words(p.visits[-1].arrived_at),
            lambda job, text: SetArrived(job, self._moment(text)),
            check=self._moment,
        )
        self.later = sentence()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        light = fields.text(
            _("seen in what light"), lambda p: p.visits[-1].light, lambda job, t: SetVisit(job, {"light": t})
        )
        when = QHBoxLayout()
        when.addWidget(self.arrived, 1)
        when.addWidget(light, 1)
        column.addLayout(when)
        column.addWidget(self.later)
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
        self.photos = CarPhotos(context)
        column.addWidget(self.photos, 1)

    def redraw(self) -> None:
        self._fields.redraw()
        self.photos.redraw()
        picture = self._context.picture
        found = arrival_entered(picture) if picture is not None else None
        self.later.setText("" if found is None else _("{what}.").format(what=_first_up(found.words)))
        self.later.setVisible(found is not None)
        set_kind(self.later, "flagged" if found is not None and found.after_work else "")

    def _moment(self, text: str) -> datetime:
        found = read_moment(text, self._context.clock.now())
        if found is None:
            raise BadInput(_("Every car arrived at some time; type it as stated."))
        return found


def _first_up(words: str) -> str:
    return words[:1].upper() + words[1:]


def _odometer(picture: JobPicture) -> str:
    value = picture.visits[-1].odometer_in
    return "" if value is None else str(value)
