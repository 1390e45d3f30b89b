"""How a closed document left the shop: by which way, to whom, when."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.delivered import to_whom_missing
from detailbench.findings.kit_names import with_initials
from detailbench.moves.delivering import WAYS, CorrectDelivery, NoteDelivery
from detailbench.record.picture import JobPicture
from detailbench.record.things import Delivery
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.moment_reading import read_moment
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, gives_way, sentence, set_kind
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.closing.words import way_words
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.typed_for_job import emptied_for_each_job
from detailbench.screens.stages.work_parts.when import when_words


class DeliverPart(QWidget):
    """Of the newest closed document of a kind. A noted delivery is never undone, only put right."""

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self._context, self._acts = context, acts
        m = context.dress.look.measure
        self.says = sentence()
        self.way = ChoiceRow(_("it left by"), [(way, way_words(way)) for way in WAYS], columns=4)
        self.to = TextField(_("to whom"), of_form=True)
        self.at = TextField(_("when, if not now"), of_form=True)
        emptied_for_each_job(context, self.to, self.at)
        self.note = button(_("Note that it left"), self._note, role="main")
        self.never = button(_("It did not leave"), self._never, name=_("The chosen delivery did not leave after all"))
        self.list = gives_way(OpenList(context.dress, _("How it left")), m.target * 2)
        self.list.chosen.connect(lambda _key: self._enable())
        row, does = QHBoxLayout(), QHBoxLayout()
        row.addWidget(self.to, 3)
        row.addWidget(self.at, 2)
        does.addWidget(self.note, 1)
        does.addWidget(self.never, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.says)
        column.addWidget(self.way)
        column.addLayout(row)
        column.addLayout(does)
        column.addWidget(self.list, 1)

    def redraw(self) -> None:
        picture, documents = self._context.picture, self._acts.documents()
        for part in (self.way, self.to, self.at, self.note):
            part.setEnabled(bool(documents) and not self._acts.beside.busy)
        if picture is None or not documents:
            self.says.setText(_("Nothing is closed yet: close it first."))
            self.list.set_lines(())
            self._enable()
            return
        own = {d.id for d in documents}
        noted = [d for d in picture.deliveries if d.document_id in own]
        left = any(d.document_id == documents[0].id for d in noted)
        closed = when_words(documents[0].entered_at)
        words = _("Closed {at}; it has left the shop.") if left else _("Closed {at}; it has not left the shop yet.")
        self.says.setText(words.format(at=closed))
        set_kind(self.says, "" if left else "flagged")
        self.list.set_lines([Line(d.id, delivery_words(picture, d)) for d in reversed(noted)])
        self._enable()

    def _enable(self) -> None:
        self.never.setEnabled(bool(self.list.key))

    def _note(self) -> None:
        picture, documents = self._context.picture, self._acts.documents()
        if picture is None or not documents:
            return
        if not self.way.value:
            self._context.notice(_("Choose how it left first."), "stop")
            return
        try:
            at = read_moment(self.at.text(), self._context.clock.now())
        except BadInput as error:
            self.at.say(str(error))
            return
        self.at.say("")
        move = NoteDelivery(picture.job.id, documents[0].id, self.way.value, self.to.text(), at)
        if self._context.do(move, self, self.at.say) is not None:
            self.way.set_value("")
            for field in (self.to, self.at):
                field.clear()

    def _never(self) -> None:
        job = self._context.job_id
        if job is not None and self.list.key:
            self._context.do(CorrectDelivery(job, self.list.key, never_left=True), self)


def delivery_words(picture: JobPicture, delivery: Delivery) -> str:
    """ "2031-05-05 17:50 by mail, to …" """
    at = when_words(delivery.stated_at or delivery.entered_at)
    ways = {
        "mail": _("{at}, by mail"),
        "message": _("{at}, by message"),
        "print": _("{at}, in print"),
        "handed": _("{at}, handed over"),
    }
    words = ways[delivery.way].format(at=at)
    to = picture.said(delivery.id, "to")
    if to:
        words = _("{how}, to {whom}").format(how=words, whom=to)
    elif to_whom_missing(picture, delivery):
        words = _("{how}, to whom is not noted").format(how=words)
    words = f"{words}: {delivery.note}" if delivery.note else words
    return with_initials(picture.shop, words, delivery)
