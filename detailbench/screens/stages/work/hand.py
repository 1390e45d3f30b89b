"""The hand that carries the process over the car: start, pause, finish, tick; and what is due next."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta

from PySide6.QtCore import QObject, QTimer, Signal

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.gates import held
from detailbench.findings.overrun import left_running
from detailbench.findings.plan import WorkStanding, work_standing
from detailbench.findings.processes import is_finished, next_step_of, panel_steps, running, runs_of
from detailbench.moves.work import CorrectMinutes, FinishStep, StartStep, TickSections
from detailbench.record.things import ProcessStep, StepRun
from detailbench.screens.context import Context

TICK_MS = 1000
REPEAT_WITHIN = timedelta(seconds=1)


class WorkHand(QObject):
    """One for the stage. ``changed`` fires when something was entered, and once a second while a step runs."""

    changed = Signal()

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self.context = context
        self.true_minutes: float | None = None  # typed, entered with the finish
        self.on_screen: Callable[[], bool] = lambda: False  # whether the stage's card is shown
        self._asked: set[str] = set()
        self._last_act: datetime | None = None
        self._standing: tuple[object, datetime, WorkStanding] | None = None
        self._tick = QTimer(self)
        self._tick.setInterval(TICK_MS)
        self._tick.timeout.connect(self.tick)
        context.changed.connect(self._redraw)
        context.job_opened.connect(self._redraw)
        context.panel_selected.connect(self._redraw)

    @property
    def now(self) -> datetime:
        return self.context.clock.now()

    @property
    def panel(self) -> str:
        """The selected panel."""
        return self.context.selected_panel

    @property
    def standing(self) -> WorkStanding | None:
        """The work as it stands now; computed once for a moment."""
        picture = self.context.picture
        if picture is None:
            return None
        kept = self._standing
        if kept is None or kept[0] is not picture or kept[1] != self.now:
            self._standing = kept = (picture, self.now, work_standing(picture, self.now))
        return kept[2]

    @property
    def run(self) -> StepRun | None:
        """What runs on the selected panel."""
        return self.running_on(self.panel)

    @property
    def any_run(self) -> StepRun | None:
        """What runs anywhere, the newest first."""
        return running(self.context.picture) if self.context.picture is not None else None

    def running_on(self, panel: str) -> StepRun | None:
        """What runs on this panel."""
        picture = self.context.picture
        runs = picture.runs if picture is not None and panel else ()
        return next((r for r in reversed(runs) if r.panel == panel and r.finished_at is None), None)

    @property
    def step(self) -> ProcessStep | None:
        """The step that runs on the selected panel, else its next one."""
        picture = self.context.picture
        if picture is None or not self.panel:
            return None
        run = self.run
        if run is not None:
            return next((s for s in picture.steps if s.id == run.step_id), None)
        return next_step_of(picture, self.panel)

    @property
    def paused(self) -> bool:
        """The next step of the selected panel was begun before and paused."""
        picture, step = self.context.picture, self.step
        if picture is None or step is None or self.run is not None:
            return False
        return any(r.ended == "paused" for r in runs_of(picture, self.panel, step.id)[-1:])

    @property
    def last_go(self) -> StepRun | None:
        """The newest go at the selected panel that is over."""
        picture = self.context.picture
        over = [r for r in picture.runs if r.panel == self.panel and r.finished_at] if picture is not None else []
        return over[-1] if over else None

    @property
    def elapsed(self) -> timedelta | None:
        """How long the run on the selected panel has lasted."""
        run = self.run
        return None if run is None else max(self.now - run.started_at, timedelta())

    def next_due(self) -> str:
        """The panel the plan comes to next: not finished, not held, nothing running on it; empty: none."""
        picture, standing = self.context.picture, self.standing
        if picture is None or standing is None:
            return ""
        return next(
            (
                s.panel
                for s in standing.plan.steps
                if not is_finished(picture, s.panel, s.step)
                and self.running_on(s.panel) is None
                and not held(picture, s.panel)
            ),
            "",
        )

    # acts
    def start_or_finish(self) -> None:
        """One key: finish what runs on the selected panel, or start its next step. Without a panel, or where nothing
        is left on it, go to the next one due. A repeat within a second is the same press."""
        if self._is_repeat() or self.context.picture is None:
            return
        if not self.panel and self.any_run is not None:
            self.context.select_panel(self.any_run.panel)
        if self.run is not None:
            self.finish()
        elif self.step is not None:
            self.start()
        else:
            self.go_on()

    def start(self) -> None:
        """Start the next step of the selected panel."""
        picture, step = self.context.picture, self.step
        if picture is not None and step is not None:
            self.true_minutes = None
            self._acted()
            self.context.do(StartStep(picture.job.id, self.panel, step.id), self)

    def finish(self, ended: str = "finished") -> None:
        """Finish, pause, or say that it was left running."""
        picture = self.context.picture
        if picture is None or self.run is None:
            return
        minutes = self.true_minutes if ended != "left_running" else None
        self._acted()
        done = self.context.do(FinishStep(picture.job.id, self.panel, ended, minutes), self)
        if done is not None:
            self.true_minutes = None
            if done.note:
                self.context.notice(done.note, "flagged")
            self.changed.emit()

    def pause_or_go_on(self) -> None:
        """Pause what runs on the selected panel, else start it again."""
        if self._is_repeat():
            return
        if self.run is not None:
            self.finish("paused")
        elif self.step is not None:
            self.start()

    def tick_sections(self, number: float | None) -> None:
        """So many sections of the running step are done."""
        picture = self.context.picture
        if picture is not None and number is not None and self.run is not None:
            self.context.do(TickSections(picture.job.id, self.panel, round(number)), self)

    def correct_minutes(self, minutes: float | None) -> None:
        """The true time of the last go that is over."""
        picture, last = self.context.picture, self.last_go
        if picture is not None and last is not None:
            self.context.do(CorrectMinutes(picture.job.id, last.id, minutes), self)

    def go_on(self) -> None:
        """Select the panel the plan comes to next."""
        panel = self.next_due()
        if panel:
            self.context.select_panel(panel)
            self.context.notice(_("next: {panel}").format(panel=panel_name(panel)), "next")
        else:
            self.context.notice(self._nothing_due(), "plain")

    def _nothing_due(self) -> str:
        picture = self.context.picture
        if picture is not None and self.panel and not panel_steps(picture, self.panel):
            return _("No process is adopted for this panel yet: see Trials.")
        return _("Nothing is left to start.")

    def _is_repeat(self) -> bool:
        return self._last_act is not None and timedelta() <= self.now - self._last_act < REPEAT_WITHIN

    def _acted(self) -> None:
        self._last_act = self.now

    # live
    def tick(self) -> None:
        """Once a second while something runs."""
        self.context.drawing_changed.emit()
        self.context.next_changed.emit()
        self._say_time()
        self._ask_if_left()
        self.changed.emit()

    def _ask_if_left(self) -> None:
        """Once for each go that runs longer than planned: it is not ended, only asked about."""
        picture = self.context.picture
        for run in picture.runs if picture is not None else ():
            if picture is None or run.finished_at is not None or run.id in self._asked:
                continue
            if left_running(picture, run, self.now):
                self._asked.add(run.id)
                text = _("{panel} runs longer than planned. Was it left running?")
                self.context.notice(text.format(panel=panel_name(run.panel)), "flagged")

    def _redraw(self, *_what: object) -> None:
        if self.any_run is not None:
            if not self._tick.isActive():
                self._tick.start()
            self._say_time()
        elif self._tick.isActive():
            self._tick.stop()
            self.context.timer_changed.emit("", False)
        self.changed.emit()

    def _say_time(self) -> None:
        """The strip's timer; the far view comes by itself only while this stage is looked at."""
        run = self.any_run
        if run is not None:
            self.context.timer_changed.emit(clock_words(self.now - run.started_at), bool(self.on_screen()))


def clock_words(lasts: timedelta) -> str:
    """ "4:05", with hours from the first one on."""
    seconds = max(int(lasts.total_seconds()), 0)
    hours, minutes, seconds = seconds // 3600, seconds // 60 % 60, seconds % 60
    return f"{hours}:{minutes:02d}:{seconds:02d}" if hours else f"{minutes}:{seconds:02d}"
