"""The workshop's key: its fingerprint, and another one when the passphrase is forgotten."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput, DetailbenchError
from detailbench.basics.texts import _
from detailbench.findings.settings import setting
from detailbench.moves.documents import key_path
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence
from detailbench.screens.pages.shop.safe.says import Answer
from detailbench.screens.stages.closing.beside import Beside
from detailbench.screens.stages.closing.secret_field import SecretField
from detailbench.seal.keys import read_fingerprint
from detailbench.seal.renewing import Renewed, new_key


class KeyPage(QWidget):
    """A forgotten passphrase cannot be found again; documents closed before stay as good as they were."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._beside: Beside[Renewed] = Beside(context)
        self._beside.changed.connect(self.redraw)
        m = context.dress.look.measure
        self.now = Answer.make(_("fingerprint"))
        self.first = SecretField(_("new passphrase, at least 8 characters"))
        self.again = SecretField(_("the new passphrase again"))
        self.again.line.returnPressed.connect(self.make)
        self.make_it = button(_("Passphrase forgotten: make a new key"), self.make)
        self.said = Answer.make(_("new key"))
        secrets = QHBoxLayout()
        secrets.addWidget(self.first, 1)
        secrets.addWidget(self.again, 1)
        acts = QHBoxLayout()
        acts.addWidget(self.make_it)
        acts.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addWidget(self.now)
        column.addWidget(
            sentence(
                _(
                    "A forgotten passphrase cannot be found again. A new key can be made; the old one is set aside, "
                    "and documents closed before verify against the old fingerprint as they did."
                )
            )
        )
        column.addLayout(secrets)
        column.addLayout(acts)
        column.addWidget(self.said)
        column.addStretch(1)

    def redraw(self) -> None:
        """The key there is."""
        bench: Any = self._context.bench
        if bench is None:
            return
        path = key_path(bench.folder)
        there = path.exists()
        try:
            text = _("Fingerprint: {digits}").format(digits=read_fingerprint(path)) if there else ""
        except DetailbenchError as error:
            text = str(error)
        self.now.say(text or _("The workshop has no key yet; it is made when the first document is closed."))
        for each in (self.first, self.again, self.make_it):
            each.setEnabled(there and self._context.can_write and not self._beside.busy)

    def make(self) -> None:
        """Set the old key aside and make another."""
        bench: Any = self._context.bench
        if bench is None:
            return
        first, second = self.first.line.text(), self.again.line.text()
        self.first.say("")
        self.again.say("" if first == second else _("The two passphrases differ."))
        if first != second:
            return
        path, name, clock = key_path(bench.folder), str(setting(bench.shop(), "shop_name")), self._context.clock
        self._beside.start(
            lambda: new_key(path, name, first, clock),
            self._made,
            window=self.window(),
            failed=self._failed,
        )

    def _made(self, found: Renewed) -> None:
        self._context.opened_key = found.key
        self.said.say(found.says)
        for each in (self.first, self.again):
            each.line.clear()
        self.redraw()

    def _failed(self, error: DetailbenchError) -> None:
        if isinstance(error, BadInput) and error.field == "passphrase":
            self.first.say(str(error))
        else:
            self.said.say(str(error), "stop")
