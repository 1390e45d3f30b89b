"""What the History page shows: the journal in words on the left, whether it can be trusted on the right."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.kit_names import person_name
from detailbench.moves.move import SHOP
from detailbench.record.checking import CheckResult
from detailbench.record.picture import ShopPicture
from detailbench.record.telling import Line as Told
from detailbench.report.content.figures import clock_words, day_words, offset_words
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, caption, heading, rule, sentence, set_kind
from detailbench.screens.pages.history.check_worker import RecordCheck
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import in_line

KEY = "history"
MOST = 200  # lines shown at once; older ones are found by typing a word


class HistoryView(QWidget):
    """Redrawn only while it is in front."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._stale = True
        m = context.dress.look.measure
        self.of = in_line(ChoiceRow(_("journal of"), (("job", _("the open job")), ("shop", _("the shop"))), columns=2))
        self.of.set_value("job")
        self.of.chosen.connect(lambda _key: self.redraw())
        self.typed = QLineEdit()
        self.typed.setAccessibleName(_("find in the journal"))
        self.typed.setPlaceholderText(_("a word, a name, a date"))
        self.typed.textChanged.connect(lambda _text: self.redraw())
        self.list = OpenList(context.dress, _("journal, newest first"))
        self.says = sentence()
        self.check_it = button(_("Check the record"), self.check)
        self.head = TextField(_("a hash kept elsewhere, such as a closed document's"))
        self.found = sentence()
        self.more = sentence(
            _("A cut tail or a journal written anew shows only against a hash kept elsewhere: type it above first.")
        )
        self.worker = RecordCheck(context, self)
        self.worker.ended.connect(self.show_result)
        left = QVBoxLayout()
        left.setSpacing(m.space("thin"))
        left.addWidget(heading(_("History")))
        left.addWidget(self.of)
        left.addWidget(caption(_("find in the journal")))
        left.addWidget(self.typed)
        left.addWidget(self.list, 1)
        left.addWidget(self.says)
        right = QVBoxLayout()
        right.setSpacing(m.space("small"))
        right.addWidget(heading(_("Is it whole?")))
        right.addWidget(sentence(_("Every entry carries the hash of the one before it. The check replays them all.")))
        right.addWidget(self.head)
        right.addWidget(self.more)
        right.addWidget(self.check_it, 0, Qt.AlignmentFlag.AlignLeft)
        right.addWidget(self.found)
        right.addStretch(1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(m.space("wide"))
        row.addLayout(left, 6)
        row.addWidget(rule(upright=True))
        row.addLayout(right, 4)
        context.changed.connect(lambda _changes, _who: self._changed())
        context.job_opened.connect(self._changed)
        context.stage_opened.connect(self._front)
        self.redraw()

    def redraw(self) -> None:
        """Show the lines that fit what is typed, newest first."""
        self._stale = False
        bench, shop, job = self._context.bench, self._context.shop, self._context.job_id
        if bench is None or shop is None:
            return
        scope = SHOP if self.of.value == "shop" else job or ""
        words = self.typed.text().casefold().split()
        told = [(line, words_of(shop, line)) for line in reversed(bench.entries(scope))] if scope else []
        fitting = [(line, text) for line, text in told if all(word in text.casefold() for word in words)]
        self.list.set_lines([Line(str(line.n), text) for line, text in fitting[:MOST]])
        if not scope:
            text = _("No job is open; its journal shows once one is.")
        elif not fitting:
            text = _("No entry fits these words.") if words else _("Nothing was entered yet.")
        else:
            text = _("{n} entries, {shown} shown.").format(
                n=format_number(len(fitting)), shown=format_number(min(len(fitting), MOST))
            )
        self.says.setText(text)
        self.says.setAccessibleName(text)

    def check(self) -> None:
        """Begin the check; the page stays alive meanwhile."""
        self._say(_("Checking …"))
        self.check_it.setEnabled(False)
        self.worker.start(self.head.text().strip().casefold() or None)

    def show_result(self, found: object) -> None:
        """The result in words."""
        self.check_it.setEnabled(True)
        if not isinstance(found, CheckResult):
            self._say(str(found), "stop")
        elif found.troubles:
            self._say("\n".join(found.troubles), "stop")
        else:
            text = _("The chain holds, {entries} entries; {rows} rows and {files} kept files agree with it.").format(
                entries=format_number(found.entries), rows=format_number(found.rows), files=format_number(found.files)
            )
            if found.head_found:
                text += " " + _("The hash kept elsewhere stands in it.")
            self._say(" ".join((text, *found.notes)))

    def _say(self, text: str, kind: str = "") -> None:
        self.found.setText(text)
        self.found.setAccessibleName(text)
        set_kind(self.found, kind)

    def _changed(self) -> None:
        self._stale = True
        if self._context.open_stage == KEY:
            self.redraw()

    def _front(self, key: str) -> None:
        if key == KEY and self._stale:
            self.redraw()


def words_of(shop: ShopPicture, line: Told) -> str:
    """``10 March 2031, 08:30 (UTC+01:00) · Ana Berg`` and what was done, on two lines."""
    what = _("{what} (taken back since)").format(what=line.says) if line.undone else line.says
    return f"{line.n}  {what}\n{moment_words(line.at)} · {person_name(shop, line.by)}"


def moment_words(at: datetime) -> str:
    """Day, time and offset, as noted then."""
    return f"{day_words(at)}, {clock_words(at)} ({offset_words(at)})"
