"""The trials of all jobs, searched by paint and by what was tried; the job of the chosen one beside it, to read."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import DetailbenchError
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.trials_before import Sought, TrialBefore, trials_with
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, heading, rule, sentence
from detailbench.screens.pages.history.trial_words import found_words, paints_of, told_lines
from detailbench.screens.pages.shop.asked import whole
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import in_line

MOST = 200
ANY = "any"


class TrialsPart(QWidget):
    """Nothing of an owner is shown here. A press on a result shows its job's trials; another opens the job."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._found: dict[str, TrialBefore] = {}
        m = context.dress.look.measure
        self.code = TextField(_("paint code, as typed"))
        self.year = TextField(_("year"), check=whole)
        self.words = TextField(_("combination, finish or result"))
        for field in (self.code, self.year, self.words):
            field.line.textChanged.connect(lambda _text: self.redraw())
        self.refinished = self._choice(_("refinished"), (("yes", _("yes")), ("no", _("no"))))
        feels = (("soft", _("soft")), ("medium", _("medium")), ("hard", _("hard")))
        self.feel = self._choice(_("paint feel"), feels)
        self.sticky = self._choice(_("sticky"), (("yes", _("yes")), ("no", _("no"))))
        self._jobs: tuple[str, ...] = ()
        self.only = sentence()
        self.all = button(_("Show the trials of all jobs"), self._all)
        self.list = OpenList(context.dress, _("trials found, newest first"))
        self.list.chosen.connect(lambda _key: self._show_job())
        self.says = sentence()
        self.of_job = heading("")
        self.paints = sentence()
        self.job_trials = OpenList(context.dress, _("trials of that job"))
        self.open_it = button(_("Open this job"), self._open)
        typed = QHBoxLayout()
        typed.addWidget(self.code, 3)
        typed.addWidget(self.year, 2)
        typed.addWidget(self.words, 5)
        asked = QHBoxLayout()
        asked.addWidget(self.refinished)
        asked.addWidget(self.sticky)
        left = QVBoxLayout()
        left.setSpacing(m.space("thin"))
        left.addLayout(typed)
        left.addLayout(asked)
        left.addWidget(self.feel)
        only = QHBoxLayout()
        only.addWidget(self.only, 1)
        only.addWidget(self.all)
        left.addLayout(only)
        left.addWidget(self.list, 1)
        left.addWidget(self.says)
        right = QVBoxLayout()
        right.setSpacing(m.space("thin"))
        right.addWidget(self.of_job)
        right.addWidget(self.paints)
        right.addWidget(self.job_trials, 1)
        right.addWidget(self.open_it, 0, Qt.AlignmentFlag.AlignLeft)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(m.space("wide"))
        row.addLayout(left, 6)
        row.addWidget(rule(upright=True))
        row.addLayout(right, 5)

    def _choice(self, title: str, choices: tuple[tuple[str, str], ...]) -> ChoiceRow:
        made = in_line(ChoiceRow(title, ((ANY, _("any")), *choices), columns=len(choices) + 1))
        made.set_value(ANY)
        made.chosen.connect(lambda _key: self.redraw())
        return made

    def look_for(self, sought: Sought) -> None:
        """Show what was asked for from elsewhere."""
        for field, text in (
            (self.code, sought.code),
            (self.year, "" if sought.year is None else str(sought.year)),
            (self.words, sought.words),
        ):
            field.set_text(text)
        for row, key in ((self.refinished, sought.refinished), (self.feel, sought.feel), (self.sticky, sought.sticky)):
            row.set_value(key or ANY)
        self._jobs = sought.jobs
        self.redraw()

    def _all(self) -> None:
        self._jobs = ()
        self.redraw()

    def sought(self) -> Sought | None:
        """What stands in the fields; None while the year cannot be read: the sentence is at its place."""
        try:
            year = whole(self.year.text())
        except DetailbenchError as error:
            self.year.say(str(error))
            return None
        self.year.say("")
        values = {
            name: "" if row.value == ANY else row.value
            for name, row in (("refinished", self.refinished), ("feel", self.feel), ("sticky", self.sticky))
        }
        return Sought(code=self.code.text(), year=year, words=self.words.text(), jobs=self._jobs, **values)

    def redraw(self) -> None:
        """Show the trials that fit, newest first."""
        bench, sought = self._context.bench, self.sought()
        if bench is None or sought is None:
            return
        found = trials_with(bench.jobs_with_trials(), sought)
        shown = found[:MOST]
        self._found = {t.trial.id: t for t in shown}
        self.list.set_lines([Line(t.trial.id, found_words(t)) for t in shown])
        only = _("Only jobs on like paint: {n}.").format(n=format_number(len(self._jobs)))
        self.only.setText(only)
        for each in (self.only, self.all):
            each.setVisible(bool(self._jobs))
        jobs = len({t.picture.job.id for t in found})
        if not found:
            text = _("No trial fits.") if bench.jobs_with_trials() else _("No trial was made in this shop yet.")
        else:
            text = _("{n} trials, jobs: {jobs}; {shown} shown.").format(
                n=format_number(len(found)), jobs=format_number(jobs), shown=format_number(len(shown))
            )
        self.says.setText(text)
        self.says.setAccessibleName(text)
        self._show_job()

    def _show_job(self) -> None:
        chosen = self._found.get(self.list.key)
        for each in (self.of_job, self.paints, self.job_trials, self.open_it):
            each.setVisible(chosen is not None)
        if chosen is None:
            return
        picture: JobPicture = chosen.picture
        car = " · ".join(word for word in (picture.car.described, picture.car.colour) if word)
        self.of_job.setText(" · ".join(word for word in (picture.job.number, car) if word))
        self.paints.setText("\n".join(paints_of(picture)))
        self.paints.setAccessibleName(self.paints.text())
        self.job_trials.set_lines([Line(key, text) for key, text in told_lines(picture)], chosen.trial.id)

    def _open(self) -> None:
        chosen = self._found.get(self.list.key)
        if chosen is not None:
            self._context.open_job(chosen.picture.job.id)
            self._context.stage_wanted.emit("trials")
