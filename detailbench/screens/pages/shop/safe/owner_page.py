"""The owner's data: what forgetting deletes, what it cannot, and the act in two presses."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.moves.forgetting import ForgetOwner
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, label, sentence
from detailbench.screens.pages.jobs.known import job_words
from detailbench.screens.pages.shop.safe.says import Answer


class OwnerPage(QWidget):
    """Speaks of the open job and the other jobs of its car."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        m = context.dress.look.measure
        self.whose = label("", "strong", wrap=True)
        self.ask = button(_("Forget this owner's data …"), lambda: self._asking(True))
        self.sure = button(_("Delete it for good"), self.forget, role="main")
        self.keep = button(_("No, keep it"), lambda: self._asking(False))
        self.said = Answer.make(_("forgotten"))
        acts = QHBoxLayout()
        for each in (self.ask, self.sure, self.keep):
            acts.addWidget(each)
        acts.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addWidget(self.whose)
        column.addWidget(
            sentence(
                _(
                    "Goes for good: names, addresses, telephone, mail, plate, message texts, remarks, drawn signatures "
                    "but the workshop's, photographs of the plate and the VIN plate, proofs of agreements, closed "
                    "documents. Of all jobs of this car."
                )
            )
        )
        column.addWidget(
            sentence(
                _(
                    "Stays: readings, marks, work, and the hash of everything deleted, so that the record can still be "
                    "checked. Not reached: backups made before and copies that left the shop; they are listed."
                )
            )
        )
        column.addLayout(acts)
        column.addWidget(self.said)
        column.addStretch(1)
        context.job_opened.connect(self._other_job)
        self._asking(False)

    def redraw(self) -> None:
        """Whose data it would be."""
        picture, shop = self._context.picture, self._context.shop
        if picture is None or shop is None:
            text = _("No job is open. Open a job of the car first.")
        else:
            text = job_words(shop, picture.job)
        self.whose.setText(text)
        self.ask.setEnabled(picture is not None and self._context.can_write)

    def forget(self) -> None:
        """Delete it; the answer says what could not be reached."""
        picture = self._context.picture
        if picture is None:
            return
        done = self._context.do(
            ForgetOwner(picture.job.id), initiator=self, at=lambda text: self.said.say(text, "stop")
        )
        self._asking(False)
        if done is not None:
            self.said.say(getattr(done, "note", ""))

    def _asking(self, on: bool) -> None:
        self.ask.setVisible(not on)
        self.sure.setVisible(on)
        self.keep.setVisible(on)
        if on:
            self.said.say(_("This cannot be undone."), "stop")
            self.keep.setFocus()
        else:
            self.said.say("")

    def _other_job(self) -> None:
        self._asking(False)
        self.redraw()
