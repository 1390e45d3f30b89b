"""Other work: glass, wheels, trim, the inside."""

from __future__ import annotations

from decimal import Decimal, InvalidOperation

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_quantity, read_typed
from detailbench.basics.texts import _
from detailbench.findings.kit_names import with_initials
from detailbench.moves.other_work import RecordOtherWork, StrikeOtherWork
from detailbench.record.picture import JobPicture
from detailbench.record.things import OtherWork
from detailbench.screens.context import Context
from detailbench.screens.entry.text_field import NoteField, TextField
from detailbench.screens.look.parts import button, gives_way, sentence
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job


class OtherWorkPage(QWidget):
    """What it was, its minutes and price as far as they are known."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.words = NoteField(_("other work, in words"), lines=2)
        self.minutes = TextField(_("minutes, if known"), of_form=True)
        self.price = TextField(_("price, if it has one"), of_form=True)
        emptied_for_each_job(context, self.words, self.minutes, self.price)
        self.add = button(_("Note this work"), self._add, role="main")
        self.list = gives_way(OpenList(context.dress, _("Other work")), m.target * 2)
        self.strike = button(_("Strike out"), self._strike, name=_("Strike out the chosen work"))
        self.list.chosen.connect(lambda _key: self._enable())
        figures, does = QHBoxLayout(), QHBoxLayout()
        figures.addWidget(self.minutes, 1)
        figures.addWidget(self.price, 1)
        does.addWidget(self.add, 2)
        does.addWidget(self.strike, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(sentence(_("Work that is no polishing: glass, wheels, trim, the inside.")))
        column.addWidget(self.words)
        column.addLayout(figures)
        column.addLayout(does)
        column.addWidget(self.list, 1)

    def redraw(self) -> None:
        picture = self._context.picture
        self.add.setEnabled(picture is not None)
        self.list.set_lines([] if picture is None else [Line(o.id, work_words(picture, o)) for o in picture.other_work])
        self._enable()

    def _enable(self) -> None:
        self.strike.setEnabled(bool(self.list.key))

    def _add(self) -> None:
        job, words = self._context.job_id, self.words.text().strip()
        if job is None:
            return
        if not words:
            self.words.say(_("Say in words what was done."))
            self.words.edit.setFocus()
            return
        self.words.say("")
        try:
            minutes, price = self._minutes(), self._price()
        except BadInput as error:
            field = self.minutes if error.field == "minutes" else self.price
            field.say(str(error))
            return
        self.minutes.say("")
        self.price.say("")
        if self._context.do(RecordOtherWork(job, words, minutes, price), self, self.minutes.say) is not None:
            for part in (self.words, self.minutes, self.price):
                part.clear()

    def _minutes(self) -> float | None:
        text = self.minutes.text().strip()
        if not text:
            return None
        typed = read_typed(text, expects="plain")
        if typed.value is None:
            raise BadInput(typed.question or typed.sentence, field="minutes", given=text)
        return typed.value

    def _price(self) -> Decimal | None:
        text = self.price.text().strip()
        if not text:
            return None
        typed = read_typed(text, expects="plain")
        if typed.value is None:
            raise BadInput(typed.question or typed.sentence, field="price", given=text)
        try:
            return Decimal(repr(typed.value))
        except InvalidOperation as error:
            raise BadInput(_("A price is an amount, 0 or more."), field="price", given=text) from error

    def _strike(self) -> None:
        job = self._context.job_id
        if job is not None and self.list.key:
            self._context.do(StrikeOtherWork(job, self.list.key), self)


def work_words(picture: JobPicture, work: OtherWork) -> str:
    """ "trim on the left wing cleaned: 20 min, 15.50" """
    parts = []
    if work.minutes is not None:
        parts.append(format_quantity(work.minutes, "min", 0))
    if work.price is not None:
        parts.append(_("price {sum}").format(sum=work.price))
    words = f"{work.words}: {', '.join(parts)}" if parts else work.words
    return with_initials(picture.shop, words, work)
