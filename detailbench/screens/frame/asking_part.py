"""A new question to the owner."""

from __future__ import annotations

from decimal import Decimal

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import read_typed
from detailbench.basics.texts import _
from detailbench.findings.agreement_words import ABOUT, about_words
from detailbench.findings.limits import limit_words, limits_in_force
from detailbench.findings.processes import group_of
from detailbench.findings.settings import setting
from detailbench.moves.agreeing import LEVELLED, AskOwner
from detailbench.record.things import OwnerLimit
from detailbench.screens.asking import AskAbout
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, gives_way, sentence, set_kind
from detailbench.screens.stages.work_parts.open_list import Line, OpenList

NO_PANEL, ONE_PANEL, GROUP = "none", "panel", "group"


class AskingPart(QWidget):
    """``asked`` gives the id of the question put."""

    asked = Signal(str)

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._begun = AskAbout()
        m = context.dress.look.measure
        self.about = ChoiceRow(_("about"), [(key, about_words(key)) for key in ABOUT], columns=4)
        self.about.set_value("extra_work")
        self.about.chosen.connect(self._chosen)
        self.which = gives_way(OpenList(context.dress, _("which limit")), m.target * 2)
        self.which.chosen.connect(lambda _key: self._say(""))
        self.question = TextField(_("what the owner is asked, as it is printed"))
        self.level = TextField(_("the level put to the owner, in words"))
        self.price = TextField(_("price, if it has one"), check=read_price)
        choices = ((NO_PANEL, _("no panel")), (ONE_PANEL, _("this panel")), (GROUP, _("its finish group")))
        self.on = ChoiceRow(_("for"), choices, columns=3)
        self.on.set_value(NO_PANEL)
        self.says = sentence()
        self.says.hide()
        self.put = button(_("Put it to the owner"), self.ask, role="main")
        self.question.line.returnPressed.connect(self.ask)
        self.level.line.returnPressed.connect(self.ask)
        row = QHBoxLayout()
        row.setSpacing(m.space("gap"))
        row.addWidget(self.price, 2)
        row.addWidget(self.on, 5)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addWidget(self.about)
        column.addWidget(self.which, 1)
        column.addWidget(self.question)
        column.addWidget(self.level)
        column.addLayout(row)
        column.addWidget(self.says)
        column.addWidget(self.put)
        column.addStretch(0)

    def begin(self, about: AskAbout) -> None:
        """Begin a question with what is known of it; what was typed for another one goes."""
        if about != self._begun:
            self.forget()
        self._begun = about
        if about.about:
            self.about.set_value(about.about)
        if about.question:
            self.question.line.setText(about.question)
        if about.panels:
            self.on.set_value(ONE_PANEL if len(about.panels) == 1 else GROUP)
        self.redraw()
        if about.limit_id:
            self.which.choose(about.limit_id)
        self._say("")

    def take_focus(self) -> None:
        (self.level if self.question.text() and self._levelled else self.question).line.setFocus()

    @property
    def _levelled(self) -> bool:
        return self.about.value in LEVELLED

    def redraw(self) -> None:
        limits = self._limits()
        self.which.set_lines([Line(m.id, limit_words(m)) for m in limits])
        self.which.setVisible(self.about.value == "limit" and bool(limits))
        self.level.setVisible(self._levelled)
        panel = self._context.selected_panel
        for key, made in self.on.buttons.items():
            made.setEnabled(bool(panel) or key == NO_PANEL)
        if not panel:
            self.on.set_value(NO_PANEL)
        shop = self._context.shop
        if shop is not None:
            self.price.field.setAccessibleName(_("price, {currency}").format(currency=setting(shop, "currency")))

    def ask(self) -> None:
        """Enter the question; a refusal is said here."""
        picture = self._context.picture
        if picture is None:
            return
        try:
            price = read_price(self.price.text())
        except BadInput as error:
            self.price.say(str(error))
            self.price.line.setFocus()
            return
        begun = self._begun if self._begun.about == self.about.value else AskAbout()
        done = self._context.do(
            AskOwner(
                picture.job.id,
                self.about.value,
                self.question.text().strip(),
                price,
                self._panels(),
                limit_id=self.which.key if self.about.value == "limit" else "",
                document_id=begun.document_id,
                trial_id=begun.trial_id,
                mishap_id=begun.mishap_id,
                replaces=begun.replaces,
                level=self.level.text().strip() if self._levelled else "",
            ),
            self,
            self._say,
        )
        if done is None:
            return
        self.forget()
        self.asked.emit(done.id)

    def forget(self) -> None:
        """Empty it for the next question."""
        self._begun = AskAbout()
        for field in (self.question, self.level, self.price):
            field.clear()
        self._say("")

    def _chosen(self, _key: str) -> None:
        self._say("")
        self.redraw()

    def _limits(self) -> tuple[OwnerLimit, ...]:
        picture = self._context.picture
        return limits_in_force(picture) if picture is not None else ()

    def _panels(self) -> tuple[str, ...]:
        picture, panel = self._context.picture, self._context.selected_panel
        if picture is None or not panel or self.on.value == NO_PANEL:
            return ()
        group = group_of(picture, panel) if self.on.value == GROUP else None
        return group.panels if group is not None else (panel,)

    def _say(self, text: str) -> None:
        self.says.setText(text)
        self.says.setVisible(bool(text))
        set_kind(self.says, "stop" if text else "")


def read_price(text: str) -> Decimal | None:
    """A sum as typed; None for nothing typed. Raises BadInput with the sentence that says what is wrong."""
    if not text.strip():
        return None
    typed = read_typed(text, expects="plain")
    if typed.value is None:
        raise BadInput(typed.question or typed.sentence, field="price", given=text)
    return Decimal(str(typed.value))
