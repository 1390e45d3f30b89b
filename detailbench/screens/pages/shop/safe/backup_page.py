"""Backup: where to, when last, now; how a backup is brought back."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import DetailbenchError
from detailbench.basics.texts import _
from detailbench.record.backing_up import make_backup_folder
from detailbench.record.backups_made import BackupMade, backup_folder, backups_made, set_backup_folder
from detailbench.record.restoring import Restored, restore
from detailbench.screens.context import Context
from detailbench.screens.entry.file_choice import choose_folder
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.frame.backing_up import Backups
from detailbench.screens.look.parts import button, caption, rule, sentence
from detailbench.screens.pages.shop.safe.says import Answer
from detailbench.screens.stages.closing.beside import Beside


class BackupPage(QWidget):
    """Backups run beside the window; here one is asked for, and the last is named."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._backups = Backups(context, self, by_itself=False)
        self._backups.ended.connect(self._ended)
        self._beside: Beside[Restored] = Beside(context)
        self._beside.changed.connect(self.redraw)
        m = context.dress.look.measure
        self.folder = TextField(_("backup folder on this computer"))
        self.folder.committed.connect(self._set_folder)
        self.choose = button(_("Choose a folder …"), self._choose, name=_("Choose the backup folder"))
        self.now = button(_("Back up now"), self.back_up, role="main")
        self.check = button(_("Check the record"), lambda: context.stage_wanted.emit("history"))
        self.last = Answer.make(_("last backup"))
        self.to = TextField(_("new folder for what is brought back"), of_form=True)
        self.to.line.returnPressed.connect(self.restore)
        self.bring_back = button(_("Restore the newest backup there"), self.restore)
        self.restored = Answer.make(_("restored"))
        acts = QHBoxLayout()
        for each in (self.now, self.choose, self.check):
            acts.addWidget(each)
        acts.addStretch(1)
        back = QHBoxLayout()
        back.addWidget(self.bring_back)
        back.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addWidget(self.folder)
        column.addLayout(acts)
        column.addWidget(self.last)
        column.addWidget(
            caption(
                _("By itself: on leaving a stage after a change, at every closed document, on closing the program.")
            )
        )
        column.addWidget(rule())
        column.addWidget(self.to)
        column.addLayout(back)
        column.addWidget(self.restored)
        column.addWidget(
            sentence(
                _(
                    "Nothing is written over, and a file that is missing is named. On another computer, from a shell:  "
                    "detailbench restore BACKUP_FOLDER --to NEW_FOLDER"
                )
            )
        )
        column.addStretch(1)

    def redraw(self) -> None:
        """Show where backups go and which was the last."""
        bench = self._context.bench
        if bench is None:
            return
        to = backup_folder(bench.folder)
        self.folder.set_text("" if to is None else str(to))
        self.now.setEnabled(to is not None and not self._backups.busy)
        self.bring_back.setEnabled(to is not None and not self._beside.busy)
        made = backups_made(bench.folder)
        if made:
            self.last.say(last_words(made[-1]))
        elif to is None:
            self.last.say(_("No backup is made: type a folder on another disk first."), "stop")
        else:
            self.last.say(_("No backup was made yet."))

    def back_up(self) -> None:
        """Begin one; the page stays alive meanwhile."""
        if self._backups.start():
            self.last.say(_("Backing up …"))
            self.now.setEnabled(False)

    def _ended(self, found: object) -> None:
        self.redraw()
        if isinstance(found, BackupMade):
            self._context.notice(_("Backed up."), "saved")
        elif isinstance(found, DetailbenchError):
            self.last.say(str(found), "stop")

    def _choose(self) -> None:
        choose_folder(self, _("Backup folder"), lambda path: self._set_folder(str(path)))

    def _set_folder(self, typed: str) -> None:
        bench = self._context.bench
        if bench is None:
            return
        try:
            if typed:
                make_backup_folder(Path(typed))
            set_backup_folder(bench.folder, Path(typed) if typed else None)
        except DetailbenchError as error:
            self.folder.refuse(str(error))
            return
        self._context.notice(_("Backups go there from now on.") if typed else _("No backups from now on."), "saved")
        self.redraw()

    def restore(self) -> None:
        """Bring the newest backup back into the folder typed, beside the window."""
        bench: Any = self._context.bench
        source = backup_folder(bench.folder) if bench is not None else None
        typed = self.to.text().strip()
        if source is None or self._beside.busy:
            return
        if not typed:
            self.to.say(_("Type a folder that does not exist yet."))
            return
        self.to.say("")
        now = self._context.clock.now()
        self.restored.say(_("Restoring …"))
        self._beside.start(
            lambda: restore(source, Path(typed), now),
            lambda found: self.restored.say(restored_words(Path(typed), found)),
            window=self.window(),
            failed=lambda error: self.restored.say(str(error), "stop"),
        )


def last_words(made: BackupMade) -> str:
    """When, where, how far."""
    words = _("Last backup: {at}, {n} entries, in {folder}").format(
        at=made.at[:16].replace("T", " "), n=made.entries, folder=made.folder
    )
    if made.missing:
        words += ". " + _("{n} kept files were missing in the workshop itself.").format(n=len(made.missing))
    return words


def restored_words(to: Path, found: Restored) -> str:
    """What was brought back, and how to open it."""
    return _(
        "Restored to {folder} and checked: {n} entries, {m} files. Open it with:  detailbench window {folder}"
    ).format(folder=to, n=found.check.entries, m=found.check.files)
