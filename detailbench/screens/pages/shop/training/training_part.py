"""An ended job's trials without the answers: what was known then, the next step said, then the comparison."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.kit_names import person_name
from detailbench.findings.training import Question, agreement, for_training, newest_round, next_question, questions
from detailbench.moves.training import AnswerTraining
from detailbench.record.picture import JobPicture
from detailbench.record.things import TrainingAnswer
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button, gives_way, heading, sentence
from detailbench.screens.pages.shop.training.known_then import job_words, known_lines
from detailbench.screens.stages.trials.known import outcome_words
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import Faces
from detailbench.trials.outcome import Result

LEAST_MM = 40.0


class TrainingPart(QWidget):
    """Who is entering is who learns. No score: how often the same was said, beside what was done and the rule."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._jobs: dict[str, JobPicture] = {}
        self._asked: tuple[Question, ...] = ()
        self._shown = ""  # the trial whose comparison is shown
        self._anew = False
        m = context.dress.look.measure
        self.jobs = OpenList(context.dress, _("jobs that have ended"))
        self.jobs.chosen.connect(lambda _key: self._begin())
        self.none = sentence()
        self.what = heading("")
        self.known = gives_way(OpenList(context.dress, _("what was known then")), m.px(LEAST_MM))
        results = [(str(result), result.label) for result in Result]
        self.says = ChoiceRow(_("what comes next"), results, columns=3)
        self.says.chosen.connect(self._answer)
        self.compared = sentence()
        self.go_on = button(_("Next trial"), self._go_on, role="main")
        self.begin_anew = button(_("Begin anew"), self._begin_anew)
        self.faces = Faces()
        compare = QWidget()
        column = QVBoxLayout(compare)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.compared)
        row = QHBoxLayout()
        for each in (self.go_on, self.begin_anew):
            row.addWidget(each)
        row.addStretch(1)
        column.addLayout(row)
        self._compare = compare
        self.faces.addWidget(self.says)
        self.faces.addWidget(compare)
        left = QVBoxLayout()
        left.setSpacing(m.space("thin"))
        left.addWidget(heading(_("Training")))
        left.addWidget(sentence(_("An ended job is gone through again: say what comes next, then see what was done.")))
        left.addWidget(self.none)
        left.addWidget(self.jobs, 1)
        right = QVBoxLayout()
        right.setSpacing(m.space("thin"))
        right.addWidget(self.what)
        right.addWidget(self.known, 1)
        right.addWidget(self.faces, 0, Qt.AlignmentFlag.AlignBottom)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(m.space("wide"))
        row.addLayout(left, 3)
        row.addLayout(right, 6)

    def redraw(self) -> None:
        """Show the jobs and where the one who learns is in the chosen one."""
        bench = self._context.bench
        if bench is None:
            return
        self._jobs = {p.job.id: p for p in for_training(bench.jobs_with_trials())}
        self.jobs.set_lines([Line(key, self._job_line(p)) for key, p in self._jobs.items()])
        text = _("No job with judged trials has ended yet.") if not self._jobs else ""
        self.none.setText(text)
        self.none.setVisible(bool(text))
        self._draw()

    def _job_line(self, picture: JobPicture) -> str:
        judged = sum(1 for q in {o.trial_id for o in picture.outcomes} if q)
        return _("{job}\n{n} judged trials").format(job=job_words(picture), n=judged)

    def answers(self) -> tuple[TrainingAnswer, ...]:
        """What who is entering answered in the round that is on."""
        bench, shop = self._context.bench, self._context.shop
        if bench is None or shop is None or not self.jobs.key or self._anew:
            return ()
        return newest_round(shop, self.jobs.key, bench.person)

    def _begin(self) -> None:
        """Another job: its round goes on where it was left."""
        self._shown, self._anew = "", False
        self._draw()

    def _begin_anew(self) -> None:
        self._shown, self._anew = "", True
        self._draw()

    def _go_on(self) -> None:
        self._shown = ""
        self._draw()
        self.says.take_focus()

    def _answer(self, key: str) -> None:
        asked = next_question(self._asked, self.answers())
        if asked is None or not self.jobs.key:
            return
        move = AnswerTraining(self.jobs.key, asked.trial.id, key, anew=self._anew)
        if self._context.do(move, initiator=self) is None:
            self.says.set_value("")
            return
        self._anew = False
        self._shown = asked.trial.id
        self._draw()
        self.go_on.setFocus(Qt.FocusReason.OtherFocusReason)

    def _draw(self) -> None:
        picture = self._jobs.get(self.jobs.key)
        for each in (self.what, self.known, self.faces):
            each.setVisible(picture is not None)
        bench = self._context.bench
        if picture is None or bench is None:
            return
        self._asked = questions(picture, bench.changed_rows(picture.job.id))
        answers = self.answers()
        if self._shown not in {a.trial_id for a in answers}:
            self._shown = ""  # the answer was taken back
        asked = next_question(self._asked, answers)
        shown = next((q for q in self._asked if q.trial.id == self._shown), None) or asked or self._asked[-1]
        who = person_name(picture.shop, bench.person) if bench.person else _("nobody chosen")
        self.what.setText(_("Trial {n} of {of} · {who}").format(n=shown.number, of=len(self._asked), who=who))
        self.known.set_lines([Line(key, words) for key, words in known_lines(shown)], shown.trial.id)
        if asked is not None and not self._shown:
            self.says.set_value("")
            self.faces.setCurrentWidget(self.says)
        else:
            self._compared(shown, answers, at_end=asked is None)
            self.faces.setCurrentWidget(self._compare)

    def _compared(self, shown: Question, answers: tuple[TrainingAnswer, ...], at_end: bool) -> None:
        said = next(a for a in answers if a.trial_id == shown.trial.id)
        fits = ", ".join(result.label for result in Result if result in shown.done)
        done = _("{what} ({words})").format(what=shown.done_words, words=fits) if fits else shown.done_words
        rule = _("it cannot say") if shown.rule is None else shown.rule.result.label
        corrected = ""
        if shown.corrected is not None:
            corrected = _("The outcome was corrected later: {what}").format(what=outcome_words(shown.corrected))
        rows = [
            _("Said: {word}").format(word=Result(said.result).label),
            _("What was done: {what}").format(what=done),
            _("The plain rule with what was known then: {word}").format(word=rule),
            agreement(self._asked, answers).sentence,
        ]
        if corrected:
            rows.insert(1, corrected)
        if at_end:
            rows.append(_("That was the last trial of this job."))
        text = "\n".join(rows)
        self.compared.setText(text)
        self.compared.setAccessibleName(text)
        self.go_on.setVisible(not at_end)
        self.begin_anew.setVisible(at_end)
