"""What was put to the owner, and the answer to it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.agreement_words import ANSWERS, CHANNELS, answer_words, channel_words, price_words
from detailbench.findings.agreements import open_agreements, price_agreed
from detailbench.moves.agreeing import AnswerOwner
from detailbench.record.things import Agreement
from detailbench.screens.asking import AskAbout
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.file_choice import choose_files
from detailbench.screens.entry.moment_field import MomentField
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.frame.agreement_lines import agreement_words
from detailbench.screens.look.parts import button, gives_way, sentence, set_kind
from detailbench.screens.stages.work_parts.open_list import Line, OpenList


class AnsweringPart(QWidget):
    """Newest first. ``again`` wants a new question that replaces the chosen one."""

    again = Signal(object)

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.none = sentence(_("Nothing was put to the owner yet."))
        self.agreed = sentence()
        self.list = gives_way(OpenList(context.dress, _("Put to the owner")), m.target * 2)
        self.list.chosen.connect(lambda _key: self.redraw())
        self.answer = ChoiceRow(_("answer"), [(key, answer_words(key)) for key in ANSWERS], columns=4)
        self.answer.chosen.connect(lambda _key: self._said(""))
        self.channel = ChoiceRow(_("how"), [(key, channel_words(key)) for key in CHANNELS], columns=3)
        self.channel.chosen.connect(lambda _key: self._said(""))
        self.remark = TextField(_("owner's remark, printed as typed"))
        self.message = TextField(_("text of the message"))
        self.at = MomentField(_("answered at"), context.clock.now)
        self.says = sentence()
        self.says.hide()
        self.enter = button(_("Enter the answer"), self.take, role="main")
        self.choose_files = choose_files
        self._proof: Path | None = None
        self.proof = button(_("Add a proof"), self._ask_proof, name=_("Add a proof of the answer"))
        self.ask_again = button(_("Ask again"), self._ask_again, name=_("Ask again: a new question replaces this one"))
        self.remark.line.returnPressed.connect(self.take)
        row = QHBoxLayout()
        row.setSpacing(m.space("gap"))
        row.addWidget(self.remark, 3)
        row.addWidget(self.message, 3)
        row.addWidget(self.at, 2)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addWidget(self.none)
        column.addWidget(self.list, 1)
        column.addWidget(self.agreed)
        column.addWidget(self.answer)
        column.addWidget(self.channel)
        column.addLayout(row)
        column.addWidget(self.says)
        ends = QHBoxLayout()
        ends.setSpacing(m.space("gap"))
        ends.addWidget(self.enter, 2)
        ends.addWidget(self.proof, 1)
        column.addLayout(ends)
        column.addWidget(self.ask_again)

    @property
    def chosen(self) -> Agreement | None:
        """The agreement the answer would go to."""
        picture = self._context.picture
        kept = picture.agreements if picture is not None else ()
        return next((a for a in kept if a.id == self.list.key), None)

    def choose(self, agreement_id: str) -> None:
        """Take this one in hand."""
        self._draw_list(agreement_id)
        self.redraw()

    def take_focus(self) -> None:
        if self.answer.isVisible():
            self.answer.take_focus()
        elif self.list.isVisible():
            self.list.setFocus()
        else:
            self.setFocus()

    def redraw(self) -> None:
        picture = self._context.picture
        if picture is None:
            return
        self._draw_list(self.list.key)
        kept = self.chosen
        is_open = kept is not None and any(a.id == kept.id for a in open_agreements(picture))
        self.none.setVisible(not picture.agreements)
        self.list.setVisible(bool(picture.agreements))
        together = price_agreed(picture)
        self.agreed.setVisible(together is not None)
        if together is not None:
            self.agreed.setText(_("Agreed together: {price}").format(price=price_words(picture, together)))
        for part in (self.answer, self.channel, self.remark, self.at, self.enter, self.proof):
            part.setVisible(is_open)
        self.message.setVisible(is_open and self.channel.value == "message")
        self.ask_again.setVisible(kept is not None and not is_open)

    def _draw_list(self, current: str) -> None:
        picture = self._context.picture
        if picture is None:
            return
        waiting = open_agreements(picture)
        wanted = current or (waiting[-1].id if waiting else "")
        self.list.set_lines([Line(a.id, agreement_words(picture, a)) for a in reversed(picture.agreements)], wanted)

    def take(self) -> None:
        """Enter the answer to the chosen one."""
        picture, kept = self._context.picture, self.chosen
        if picture is None or kept is None:
            return
        if not self.answer.value:
            self._said(_("Choose the answer first."))
            return
        try:
            at = self.at.value()
        except BadInput as error:
            self.at.say(str(error))
            return
        try:
            proof = b"" if self._proof is None else self._proof.read_bytes()
        except OSError as error:
            self._said(_("{name} cannot be read ({why}).").format(name=self._proof, why=error.strerror))
            return
        message = self.message.text() if self.channel.value == "message" else ""
        done = self._context.do(
            AnswerOwner(
                picture.job.id,
                kept.id,
                self.answer.value,
                self.channel.value,
                remark=self.remark.text(),
                message=message,
                at=at,
                proof=proof,
                proof_name="" if self._proof is None else self._proof.name,
            ),
            self,
            self._said,
        )
        if done is None:
            return
        self.forget()

    def forget(self) -> None:
        """Empty it for the next answer."""
        self.answer.set_value("")
        self.channel.set_value("")  # how the next answer comes is for a person to say
        self.take_proof([])
        for field in (self.remark, self.message, self.at):
            field.clear()
        self._said("")

    def _ask_proof(self) -> None:
        filters = (_("Pictures (*.jpg *.jpeg *.png *.heic *.heif *.tif *.tiff *.webp)"),)
        self.choose_files(self, _("A picture of what was written or signed"), filters, False, self.take_proof)

    def take_proof(self, files: list[Path]) -> None:
        """This picture goes with the answer; none: nothing does."""
        self._proof = files[0] if files else None
        self.proof.setText(_("Add a proof") if self._proof is None else _("Another proof"))
        text = "" if self._proof is None else _("{name} goes with the answer.").format(name=self._proof.name)
        self.says.setText(text)
        self.says.setVisible(bool(text))
        set_kind(self.says, "")

    def _ask_again(self) -> None:
        kept = self.chosen
        if kept is not None:
            self.again.emit(
                AskAbout(
                    "ask",
                    kept.about,
                    kept.question,
                    kept.panels,
                    kept.limit_id,
                    kept.document_id,
                    kept.trial_id,
                    kept.mishap_id,
                    replaces=kept.id,
                )
            )

    def _said(self, text: str) -> None:
        self.says.setText(text)
        self.says.setVisible(bool(text))
        set_kind(self.says, "stop" if text else "")
        if not text:
            self.redraw()
