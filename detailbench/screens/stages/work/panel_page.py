"""The selected panel: its steps, what runs, start and finish, held back or not."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.adopted_now import no_longer_seen_stops
from detailbench.findings.gates import held, no_abrasive
from detailbench.findings.kit_names import combination_name, initials
from detailbench.findings.limits import binding_words, limits_on
from detailbench.findings.plan import WorkStanding
from detailbench.findings.processes import runs_of
from detailbench.findings.standing import standing_stops
from detailbench.findings.supplement import supplement_stops
from detailbench.moves.reasons import says_why
from detailbench.moves.surface import HoldPanel, ReleasePanel
from detailbench.record.picture import JobPicture
from detailbench.screens.asking import AskAbout
from detailbench.screens.context import Context
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import button, gives_way, label, sentence, set_kind
from detailbench.screens.stages.work.before_start import BeforeStart
from detailbench.screens.stages.work.hand import WorkHand, clock_words
from detailbench.screens.stages.work.words import minutes_words, step_state
from detailbench.screens.stages.work_parts.figure_line import FigureLine
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.owner_row import OwnerRow
from detailbench.screens.stages.work_parts.step_number import StepNumber
from detailbench.work.overrun import may_be_left_running
from detailbench.work.plan import PlannedStep


class PanelPage(QWidget):
    """Start, pause, finish, sections, true minutes; hold and release."""

    def __init__(self, context: Context, hand: WorkHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        m = context.dress.look.measure
        self.step = label("", "strong", wrap=True)
        self.planned = FigureLine(_("planned"), context)
        self.runs = FigureLine(_("runs for"), context)
        self.act = button(_("Start"), hand.start_or_finish, role="main")
        self.pause = button(_("Pause"), hand.pause_or_go_on, name=_("Pause this step"))
        self.left = button(_("Left running"), lambda: hand.finish("left_running"), name=_("Left running, time unknown"))
        self.sections = StepNumber(_("sections done"), step=1, may_be_empty=True, whole=True)
        self.minutes = StepNumber(_("true time"), "min", step=1, least=0.1, may_be_empty=True)
        self.last = StepNumber(_("true time of the last go"), "min", step=1, least=0.1, may_be_empty=True)
        self.steps = gives_way(OpenList(context.dress, _("Steps of this panel")), m.target * 3 // 2)
        self.before = BeforeStart(context)
        self.owner = OwnerRow(context, _("Ask the owner"), _("Ask the owner about this panel"), self._about)
        self.why = sentence()
        self.reason = TextField(_("hold this panel back because"), check=enough_words)
        self.hold = button(_("Hold back"), self._hold, name=_("Hold this panel back"))
        self.release = button(_("Release"), self._release, name=_("Release this panel"))
        self.supplement = button(_("To the supplement"), context.supplement_wanted.emit)
        self.sections.committed.connect(hand.tick_sections)
        self.minutes.committed.connect(self._minutes_typed)
        self.last.committed.connect(hand.correct_minutes)
        self.reason.line.returnPressed.connect(self._hold)
        figures, acts, numbers, holds = QHBoxLayout(), QHBoxLayout(), QHBoxLayout(), QHBoxLayout()
        for row, parts in (
            (figures, (self.planned, self.runs)),
            (numbers, (self.sections, self.minutes, self.last)),
        ):
            row.setSpacing(m.space("gap"))
            for part in parts:
                row.addWidget(part, 1)
        acts.addWidget(self.act, 1)
        acts.addWidget(self.pause)
        acts.addWidget(self.left)
        holds.addWidget(self.reason, 1)
        holds.addWidget(self.hold, 0, Qt.AlignmentFlag.AlignBottom)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        column.addWidget(self.step)
        column.addLayout(figures)
        column.addLayout(acts)
        column.addWidget(self.before)
        column.addLayout(numbers)
        column.addWidget(self.steps, 1)
        column.addStretch(0)
        column.addWidget(self.owner)
        column.addWidget(self.why)
        column.addWidget(self.supplement)
        column.addLayout(holds)
        column.addWidget(self.release)

    def redraw(self) -> None:
        picture, standing, hand = self._context.picture, self._hand.standing, self._hand
        if picture is None or standing is None or not hand.panel:
            self._show_nothing()
            return
        run, step = hand.run, hand.step
        planned = standing.plan.of_panel(hand.panel)
        here = next((p for p in planned if step is not None and p.step == step.id), None)
        if step is not None:
            name = combination_name(picture.shop, step.combination_id)
            self.step.setText(_("Step {n}: {name}").format(n=step.number, name=name))
        elif planned:
            self.step.setText(_("Every step of this panel is finished."))
        else:
            self.step.setText(_("No process is adopted for this panel yet: see Trials."))
        self.planned.setVisible(here is not None)
        if here is not None:
            self.planned.show_value(minutes_words(here.minutes), here.minutes.working)
        self._show_run(here)
        self.before.show_panel(hand.panel)
        said_above = len(planned) == 1 and self.before.holds and run is None and step is not None
        self.steps.setVisible(bool(planned) and not said_above)
        self.steps.set_lines([self._line(picture, standing, p) for p in planned], step.id if step is not None else "")
        waits = supplement_stops(picture)
        gone = no_longer_seen_stops(picture, hand.panel, step) if step is not None and run is None else ()
        stops = (*standing_stops(picture), *no_abrasive(picture, hand.panel), *gone, *waits)
        because = " ".join(s.sentence for s in stops if s.sentence not in self.before.sentences)
        self.supplement.setVisible(bool(waits))
        self.why.setText(because)
        self.why.setVisible(bool(because))
        set_kind(self.why, "flagged" if because else "")
        self.owner.setVisible(True)
        self.owner.show_words(binding_words(picture, hand.panel), "flagged")
        is_held = bool(held(picture, hand.panel))
        self.release.setVisible(is_held)
        for part in (self.reason, self.hold):
            part.setVisible(not is_held)
            part.setEnabled(True)
        self.act.setEnabled(run is not None or step is not None)

    def _show_run(self, here: PlannedStep | None) -> None:
        hand = self._hand
        run, elapsed = hand.run, hand.elapsed
        self.runs.setVisible(run is not None)
        paused = run is None and hand.paused
        self.act.setText(_("Finish  F9") if run is not None else _("Go on  F9") if paused else _("Start  F9"))
        on = _("Go on with this step") if paused else _("Start this step")
        self.act.setAccessibleName(_("Finish this step") if run is not None else on)
        last = hand.last_go
        self.last.setVisible(run is None and last is not None)
        if last is not None:
            self.last.set_value(last.minutes)
        for part in (self.pause, self.left, self.sections, self.minutes):
            part.setVisible(run is not None)
        if run is None or elapsed is None:
            return
        late = may_be_left_running(run.started_at, here.minutes.high if here is not None else None, hand.now)
        asks = _("{time}, longer than planned: was it left running?") if late else "{time}"
        self.runs.show_value(asks.format(time=clock_words(elapsed)))
        self.sections.set_value(None if run.sections_done is None else float(run.sections_done))
        self.sections.set_title(
            _("sections done") if here is None else _("sections done of {n}").format(n=here.sections.number)
        )
        self.minutes.set_value(hand.true_minutes)

    def _show_nothing(self) -> None:
        self.step.setText(_("Choose a panel on the map, or press F9 for the next one due."))
        for part in (
            self.planned, self.runs, self.pause, self.left, self.sections, self.minutes, self.last, self.steps,
            self.why, self.before, self.supplement, self.owner, self.release, self.reason, self.hold,
        ):  # fmt: skip
            part.hide()
        self.act.setText(_("Go to the next panel  F9"))
        self.act.setAccessibleName(_("Go to the next panel"))
        self.act.setEnabled(True)

    @staticmethod
    def _line(picture: JobPicture, standing: WorkStanding, planned: PlannedStep) -> Line:
        words = _("{n}  {name}\nplanned {minutes}, {sections} sections; {state}").format(
            n=planned.number + 1,
            name=planned.step_name,
            minutes=minutes_words(planned.minutes),
            sections=planned.sections.number,
            state=step_state(picture, standing, planned),
        )
        runs = runs_of(picture, planned.panel, planned.step)
        who = ", ".join(dict.fromkeys(initials(picture.shop, run.entered_by) for run in runs))
        return Line(planned.step, f"{words} · {who}" if who else words)

    def _about(self) -> AskAbout:
        """The limit that bars this panel, else some more work on it."""
        picture, panel = self._context.picture, self._hand.panel
        barring = limits_on(picture, panel, "bar_panel") if picture is not None else ()
        if barring:
            return AskAbout("ask", "limit", panels=(panel,), limit_id=barring[-1].id)
        return AskAbout("ask", "extra_work", panels=(panel,))

    def _minutes_typed(self, minutes: float | None) -> None:
        self._hand.true_minutes = minutes

    def _hold(self) -> None:
        picture = self._context.picture
        text = self.reason.line.text().strip()
        if picture is None or not self._hand.panel:
            return
        if not says_why(text):
            self.reason.commit()
            if not text:
                self.reason.line.setFocus()
            return
        if self._context.do(HoldPanel(picture.job.id, self._hand.panel, text), self._hand) is not None:
            self.reason.line.clear()
            self.reason.say("")

    def _release(self) -> None:
        picture = self._context.picture
        if picture is not None:
            self._context.do(ReleasePanel(picture.job.id, self._hand.panel), self._hand)


def enough_words(text: str) -> None:
    """Raises BadInput where a reason is too short to be printed."""
    if text and not says_why(text):
        raise BadInput(_("Give the reason in at least two words; it is printed."), field="reason", given=text)
