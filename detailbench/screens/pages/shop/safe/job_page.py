"""A job's file: the open job out, another workshop's job in."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.moves.giving_out import give_job
from detailbench.moves.job_exchange import ImportJob, Written, files_beside
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.file_choice import choose_files
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, heading, rule, sentence
from detailbench.screens.pages.shop.safe.says import Answer
from detailbench.screens.stages.closing.beside import Beside
from detailbench.screens.stages.work_parts.pages import in_line


class JobPage(QWidget):
    """Both ways run beside the window."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._out: Beside[Written] = Beside(context)
        self._in: Beside[Any] = Beside(context)
        m = context.dress.look.measure
        self.to = TextField(_("write the open job to this file"), of_form=True)
        self.to.line.returnPressed.connect(self.write)
        self.personal = in_line(
            ChoiceRow(_("personal data"), (("with", _("travels along")), ("without", _("stays here"))), columns=2)
        )
        self.personal.set_value("with")
        self.write_it = button(_("Write the job out"), self.write, role="main")
        self.written = Answer.make(_("written"))
        self.source = TextField(_("take a job in from this file"), of_form=True)
        self.source.line.returnPressed.connect(self.take)
        self.choose = button(_("Choose …"), self._choose, name=_("Choose the job's file"))
        self.take_it = button(_("Take the job in"), self.take)
        self.taken = Answer.make(_("taken in"))
        out = QHBoxLayout()
        out.addWidget(self.write_it)
        out.addSpacing(m.space("gap"))
        out.addWidget(self.personal, 1)
        into = QHBoxLayout()
        for each in (self.choose, self.take_it):
            into.addWidget(each)
        into.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addWidget(heading(_("Out")))
        column.addWidget(self.to)
        column.addLayout(out)
        column.addWidget(self.written)
        column.addWidget(rule())
        column.addWidget(heading(_("In")))
        column.addWidget(self.source)
        column.addLayout(into)
        column.addWidget(self.taken)
        column.addWidget(
            sentence(
                _(
                    "Kept files lie in a folder beside the file. Ids, times, people and kit come along. Taking in "
                    "cannot be undone."
                )
            )
        )
        column.addStretch(1)

    def redraw(self) -> None:
        """What can be done now."""
        self.write_it.setEnabled(self._context.picture is not None and not self._out.busy)
        self.take_it.setEnabled(self._context.can_write and not self._in.busy)

    def write(self) -> None:
        """Write the open job out."""
        bench: Any = self._context.bench
        picture, typed = self._context.picture, self.to.text().strip()
        if bench is None or picture is None:
            self.written.say(_("No job is open."), "stop")
            return
        if not typed:
            self.to.say(_("Type a file that does not exist yet."))
            return
        self.to.say("")
        job_id, personal = picture.job.id, self.personal.value != "without"
        self._out.start(
            lambda: give_job(bench, job_id, Path(typed), personal=personal),
            lambda found: self.written.say(written_words(found)),
            window=self.window(),
            failed=lambda error: self.written.say(str(error), "stop"),
            writes=_("A job is being written out; one moment."),
        )

    def take(self) -> None:
        """Take the job in; nothing else is entered meanwhile."""
        bench, typed = self._context.bench, self.source.text().strip()
        if bench is None:
            return
        file = Path(typed)
        try:
            content = file.read_bytes() if typed else b""
        except OSError as error:
            self.source.say(_("{name} cannot be read ({why}).").format(name=typed, why=error.strerror))
            return
        if not typed:
            self.source.say(_("Type the file's name."))
            return
        self.source.say("")
        beside = files_beside(file)
        move = ImportJob(content, file.name, beside if beside.is_dir() else None)
        self.taken.say(_("Taking it in …"))
        self._in.start(
            lambda: bench.do(move),
            lambda done: self.taken.say(f"{done.says}. {done.note}".strip()),
            window=self.window(),
            failed=lambda error: self.taken.say(str(error), "stop"),
            writes=_("A job is being taken in; one moment."),
        )

    def _choose(self) -> None:
        choose_files(
            self,
            _("A job's file"),
            (_("Job files (*.json)"),),
            False,
            lambda found: self.source.line.setText(str(found[0])),
        )


def written_words(written: Written) -> str:
    """What was written, and what stayed behind."""
    words = _("Written: {file}, with {n} kept files beside it.").format(file=written.file, n=written.files)
    if written.left_out:
        words += " " + _("{n} kept files stayed behind.").format(n=len(written.left_out))
    return f"{words} {written.not_noted}".strip()
