"""The passphrase and the button that closes a document."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence, set_kind
from detailbench.screens.stages.closing.closing_acts import ClosingActs
from detailbench.screens.stages.closing.secret_field import SecretField


class ClosePart(QWidget):
    """The passphrase is asked for once in a run of the program; the first time of all it is typed twice."""

    def __init__(self, context: Context, acts: ClosingActs) -> None:
        super().__init__()
        self._context, self._acts = context, acts
        self.first_use = sentence()
        self.passphrase = SecretField(_("passphrase of the workshop's key"))
        self.again = SecretField(_("the passphrase again"))
        self.close_it = button(acts.words.close, self._close, role="main")
        self.passphrase.line.returnPressed.connect(self._close)
        self.again.line.returnPressed.connect(self._close)
        self.why_not = sentence()
        set_kind(self.why_not, "stop")
        self.why_not.hide()
        secrets = QHBoxLayout()
        secrets.addWidget(self.passphrase, 1)
        secrets.addWidget(self.again, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("thin"))
        column.addWidget(self.first_use)
        column.addLayout(secrets)
        column.addWidget(self.close_it)
        column.addWidget(self.why_not)

    def redraw(self) -> None:
        acts = self._acts
        made, busy, name = acts.has_key_file, acts.beside.busy, acts.workshop_name
        self.first_use.setVisible(not made)
        self.first_use.setText(
            _(
                "The seal's key is made now, in the name “{name}”, and never in an owner's. Without its passphrase "
                "nobody can use it; forgotten, a new key is needed."
            ).format(name=name)
            if name
            else _("Type the workshop's name under Shop first: the key is made in that name.")
        )
        set_kind(self.first_use, "" if name else "flagged")
        self.passphrase.setVisible(acts.key is None)
        self.again.setVisible(acts.key is None and not made)
        for part in (self.passphrase, self.again, self.close_it):
            part.setEnabled(not busy and self._context.picture is not None)
        if busy:
            self._tell("")
        words = acts.words
        self.close_it.setText(_("Working on it…") if busy else words.anew if acts.documents() else words.close)

    def _close(self) -> None:
        first, second = self.passphrase.line.text(), self.again.line.text()
        self.passphrase.say("")
        self.again.say("")
        if self._acts.key is None and not self._acts.has_key_file and first != second:
            self.again.say(_("The two passphrases differ."))
            return
        if self._acts.key is None and not first:
            self.passphrase.say(_("Type the passphrase of the workshop's key."))
            return
        if self._acts.close(first, self.window(), self._refused):
            for field in (self.passphrase, self.again):
                field.line.clear()

    def _refused(self, error: object) -> None:
        """A sentence at its place: the passphrase's while that is asked for, else under the button."""
        self._acts.said = ""
        if self._acts.key is None:
            self.passphrase.say(str(error))
        else:
            self._tell(str(error))

    def _tell(self, why_not: str) -> None:
        self.why_not.setText(why_not)
        self.why_not.setVisible(bool(why_not))
