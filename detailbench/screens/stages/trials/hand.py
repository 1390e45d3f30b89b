"""The hand that leads through a trial: what is set up, what is timed, what is being judged.

It holds only what is not entered yet; everything that was is in the picture.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from typing import Any

from PySide6.QtCore import QObject, QTimer, Signal

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.gates import held
from detailbench.findings.kit_names import combination_name
from detailbench.findings.processes import group_of, process_of
from detailbench.findings.trial_story import outcome_of, range_combinations, trials_of
from detailbench.findings.trial_timers import LEFT, STARTED, end_unknown
from detailbench.moves.surface import HoldPanel
from detailbench.moves.trials import CorrectTrial, RecordTrial
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup, Trial
from detailbench.screens.context import Context
from detailbench.screens.stages.trials.draft import Draft, combined, draft_from, fresh_draft, moved_to, why_nothing
from detailbench.screens.stages.trials.judging import Judging
from detailbench.screens.stages.trials.timer import JUDGED_IN, Standing, TrialTimer, begun, left_words, seconds_words
from detailbench.trials.next_step import LOOK_ONLY
from detailbench.trials.outcome import Option, Result

TICK_MS = 200


class TrialHand(QObject):
    """One for the stage. ``changed`` fires when what is not entered yet, or the timer, has changed."""

    changed = Signal()
    page_wanted = Signal(str)
    range_wanted = Signal()

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self.context = context
        self.timer: TrialTimer | None = None
        self._kept: TrialTimer | None = None  # whose passes were kept
        self.judging = Judging()
        self.again = ""  # a judged trial that is looked at once more
        self._draft: Draft | None = None
        self._draft_key: tuple[str, str, str] | None = None
        self._shown: tuple[str, str] | None = None
        self._tick = QTimer(self)
        self._tick.setInterval(TICK_MS)
        self._tick.timeout.connect(self.tick)
        context.changed.connect(self._changed)
        context.job_opened.connect(self.forget)
        context.panel_selected.connect(lambda _key: self.changed.emit())

    # where
    @property
    def group(self) -> FinishGroup | None:
        """The finish group of the selected panel; with none selected the first that has no process yet."""
        picture = self.context.picture
        if picture is None:
            return None
        if self.context.selected_panel:
            return group_of(picture, self.context.selected_panel)
        open_ = [g for g in picture.groups if process_of(picture, g.id) is None]
        return next(iter((*open_, *picture.groups)), None)

    @property
    def trials(self) -> tuple[Trial, ...]:
        """The group's trials in the order made."""
        picture, group = self.context.picture, self.group
        return trials_of(picture, group.id) if picture is not None and group is not None else ()

    @property
    def open_trial(self) -> Trial | None:
        """The trial that waits for its outcome, or that is looked at again."""
        picture = self.context.picture
        if picture is None:
            return None
        waiting = [t for t in self.trials if t.id == self.again or outcome_of(picture, t.id) is None]
        return waiting[-1] if waiting else None

    @property
    def left(self) -> Trial | None:
        """The open trial where its timer was started, does not run here, and nobody saw its passes end."""
        trial = self.open_trial
        return trial if trial is not None and self.timer is None and end_unknown(trial) else None

    def number(self, trial_id: str) -> int:
        """A trial's number within its group, from 1; the next free one for a trial that is not there."""
        ids = [t.id for t in self.trials]
        return ids.index(trial_id) + 1 if trial_id in ids else len(ids) + 1

    # what is set up
    @property
    def draft(self) -> Draft | None:
        """The next trial on the selected panel; begun afresh on another panel or job."""
        picture, group, panel = self.context.picture, self.group, self.context.selected_panel
        if picture is None or group is None or not panel:
            return None
        key = (picture.job.id, group.id, panel)
        if key != self._draft_key or self._draft is None:
            kept = self._draft if self._draft_key is not None and self._draft_key[:2] == key[:2] else None
            self._draft = self._fresh(picture, group, panel) if kept is None else moved_to(picture, kept, panel)
            if kept is not None and kept.on_top_of and self._draft is not None:
                under = next((t for t in self.trials if t.id == kept.on_top_of), None)
                if under is None or under.panel != panel:
                    self._draft = replace(self._draft, on_top_of="")
            self._draft_key = key
        return self._draft

    def _fresh(self, picture: JobPicture, group: FinishGroup, panel: str) -> Draft | None:
        bench = self.context.bench
        earlier = bench.jobs_with_trials() if bench is not None else ()
        finished = [p for p in earlier if p.visits and p.visits[-1].left_at is not None]
        return fresh_draft(picture, group, panel, finished, self.now.date())

    def why_none(self) -> str:
        """Why no trial is proposed although a panel is chosen; empty otherwise."""
        picture, group, panel = self.context.picture, self.group, self.context.selected_panel
        if picture is None or group is None or not panel:
            return ""
        return why_nothing(picture, group, panel, self.now.date())

    def set_draft(self, **values: Any) -> None:
        """Change what the next trial will be."""
        if self.draft is not None:
            self._draft = replace(self.draft, **values)
            self._tell()

    def choose_combination(self, combination_id: str) -> None:
        """Take this combination, with what is usual for it."""
        picture = self.context.picture
        if self.draft is not None and picture is not None:
            self._draft = combined(picture, self.draft, combination_id)
            self._tell()

    def take_draft(self, draft: Draft) -> None:
        """Set up a whole trial on its panel, which is selected."""
        if self.draft is not None and self.draft.panel == draft.panel:
            self._draft = draft
            self._tell()

    def take_place(self, panel: str, x_mm: float, y_mm: float) -> None:
        """The test section was pointed at on the drawing."""
        from detailbench.body.edges import to_edges
        from detailbench.body.where import on_panel

        if self.draft is not None and self.draft.panel == panel:
            outline = self.context.outline
            self.set_draft(at=to_edges(outline.panels[panel], *on_panel(outline, panel, x_mm, y_mm)), on_top_of="")
            self.context.drawing_changed.emit()

    def take_up(self, option: Option, trial: Trial) -> None:
        """Set up what an outcome says to do next."""
        picture = self.context.picture
        if picture is None:
            return
        if option.result is Result.KEEP:
            self.page_wanted.emit("adopt")
        elif option.result in LOOK_ONLY:
            self.look_again(trial.id)
        elif option.result is Result.ON_HOLD:
            if held(picture, trial.panel):
                self.context.notice(option.sentence, "plain")
            else:
                reason = _("colour on the pad in trial {n}").format(n=self.number(trial.id))
                self.context.do(HoldPanel(picture.job.id, trial.panel, reason), self)
        elif option.result is Result.LOWER_LEVEL:
            self.context.notice(option.sentence, "plain")
        else:
            self.context.select_panel(trial.panel)
            if self.draft is not None:
                self._draft = draft_from(picture, trial, option, range_combinations(picture, trial.group_id))
                self.context.notice(option.sentence, "plain")
                self.page_wanted.emit("sheet")
        self._tell()

    def look_again(self, trial_id: str) -> None:
        """Judge a trial once more; the newest outcome counts."""
        self.again, self.judging = trial_id, Judging()
        self.page_wanted.emit("run")
        self._tell()

    def forget(self) -> None:
        """Another job: nothing half done goes over into it."""
        self.judging, self.again, self._draft, self._draft_key = Judging(), "", None, None
        self._stop_timer()
        self._tell()

    # recording and timing
    @property
    def now(self) -> datetime:
        return self.context.clock.now()

    @property
    def standing(self) -> Standing | None:
        """Where the timer is, or None while none runs."""
        return None if self.timer is None else self.timer.at(self.now)

    def record(self, *, timed: bool = False) -> Trial | None:
        """Enter the trial as set up; None when it was refused (a rule may be set aside on the sheet that opens).
        ``timed``: the timer leads, and what it plans is kept when it was done."""
        picture, group, draft = self.context.picture, self.group, self.draft
        if picture is None or group is None or draft is None:
            self.context.notice(_("Choose the panel for the trial on the map first."), "stop")
            return None
        move = RecordTrial(
            picture.job.id, group.id, draft.panel, draft.combination_id, draft.spot, draft.on_top_of, draft.at,
            draft.technique(), timed=timed,
        )  # fmt: skip
        if self.context.do(move, self) is not None and not draft.on_top_of:
            self._draft = replace(draft, at=None)  # a fresh place serves once
        return self.open_trial

    def start_or_stop(self) -> None:
        """One press: starts the timer (and enters the trial), or ends what it times. A repeat within a second is
        the same press."""
        if self.timer is not None:
            if not self.timer.is_repeat(self.now):
                self.end()
            return
        trial = self.open_trial or self.record(timed=True)
        if trial is None or self.context.picture is None:
            return
        draft, picture = self.draft, self.context.picture
        seconds, prime = (draft.seconds, draft.prime) if draft is not None else (None, True)
        self.again, self.judging = "", Judging()
        self.timer = begun(picture.shop, trial, self.now, seconds, prime=prime)
        if trial.timer != STARTED and outcome_of(picture, trial.id) is None:
            self._correct(trial.id, {"seconds": None, "timer": STARTED})
        self._tick.start()
        self.page_wanted.emit("run")
        self.tick()

    def end(self) -> None:
        """A person ends the timer: passes cut short are kept as long as they were."""
        timer = self.timer
        if timer is None:
            return
        self._keep(timer)
        self._stop_timer()
        if not timer.known(self.now):
            self.context.notice(_("Stopped before the passes: nothing was polished yet."), "plain")
        self._tell()

    def _keep(self, timer: TrialTimer) -> None:
        """Keep what is known now of a trial that was not judged yet: its passes once, that it was left at any time."""
        picture, known, self._kept = self.context.picture, timer.known(self.now), timer
        trial = next((t for t in picture.trials if t.id == timer.trial_id), None) if picture is not None else None
        if picture is None or trial is None or outcome_of(picture, trial.id) is not None:
            return
        if known and (end_unknown(trial) or "timer" in known):
            self._correct(trial.id, known)

    def tick(self) -> None:
        """The phases lead on by themselves; a timer nobody came back to ends as left running."""
        standing = self.standing
        if self.timer is None or standing is None:
            return
        if standing.phase.key in JUDGED_IN and self._kept is not self.timer:
            self._keep(self.timer)
        if standing.left_running:
            self._keep(self.timer)
            self._stop_timer()
            self.context.notice(left_words(), "flagged")
        elif (shown := (self.timer.words(standing), seconds_words(standing.left_s))) == self._shown:
            return
        else:
            if self._shown is None or self._shown[0] != shown[0]:
                self.context.notice(shown[0], "timer")
            self._shown = shown
        self._tell()

    def true_seconds(self, seconds: float | None) -> None:
        """The time as the person knows it, where the timer's is not known."""
        trial = self.open_trial
        if trial is not None and seconds:
            self._correct(trial.id, {"seconds": seconds, "timer": ""})

    def time_unknown(self) -> None:
        """Nobody knows how long the passes took: so it stays, and the trial may be judged."""
        if self.left is not None:
            self._correct(self.left.id, {"seconds": None, "timer": LEFT})

    def measured_after(self, surface_c: float | None) -> None:
        """The surface's temperature after the passes, kept at once."""
        if self.open_trial is not None:
            self._correct(self.open_trial.id, {"surface_after_c": surface_c})

    def _correct(self, trial_id: str, technique: dict[str, Any]) -> None:
        if self.context.picture is not None:
            self.context.do(CorrectTrial(self.context.picture.job.id, trial_id, technique), self)

    def _stop_timer(self) -> None:
        self.timer, self._shown = None, None
        self._tick.stop()
        self.context.timer_changed.emit("", False)

    # judging
    @property
    def may_judge(self) -> bool:
        """An outcome can be entered: a trial waits, and its passes are over."""
        if self.open_trial is None or self.left is not None:
            return False
        standing = self.standing
        return standing is None or standing.phase.key in JUDGED_IN

    @property
    def may_stop(self) -> bool:
        """A trial can be entered as stopped, also while it runs."""
        return self.open_trial is not None

    def see(self, **values: Any) -> None:
        """Part of an outcome was chosen. It also says that someone is there: the timer ends."""
        if values.get("stopped"):
            if not self.may_stop:
                return
            self.judging = replace(self.judging, cleared="", finish="", stopped=values["stopped"])
        elif self.may_judge:
            self.judging = replace(self.judging, stopped="", **values)
        else:
            return
        if self.timer is not None:
            self.end()
        self._tell()

    def support(self, **values: Any) -> None:
        """A second lamp or a count: it goes in with what was seen."""
        if self.open_trial is not None:
            self.judging = replace(self.judging, **values)
            self._tell()

    def judge(self) -> bool:
        """Enter the outcome; False when it is not whole yet or was refused."""
        trial, picture, seen = self.open_trial, self.context.picture, self.judging
        if trial is None or picture is None or not seen.ready:
            return False
        # what was looked at again is closed first, so that the answer already stands when everything is redrawn
        again, self.again, self.judging = self.again, "", Judging()
        done = self.context.do(seen.move(picture.job.id, trial.id, trial.lamp_id), self)
        if done is None:
            self.again, self.judging = again, seen
        self.page_wanted.emit("run")
        self._tell()
        return done is not None

    # telling
    def words(self) -> str:
        """What the next key will record, in one line."""
        picture, standing, trial = self.context.picture, self.standing, self.open_trial
        if picture is None:
            return ""
        if standing is not None:
            return f"{self.phase_words()}, {seconds_words(standing.left_s)}"
        if self.left is not None:
            return _("trial {n}: left running, time unknown").format(n=self.number(self.left.id))
        if trial is not None:
            return _("trial {n}: cleared? finish? or stopped").format(n=self.number(trial.id))
        draft = self.draft
        if draft is None:
            return _("choose a panel for the trial")
        if self.why_none():
            return _("no trial is proposed on {panel}").format(panel=panel_name(draft.panel))
        return _("Space: count-in, trial {n} on {panel}").format(n=len(self.trials) + 1, panel=panel_name(draft.panel))

    def phase_words(self) -> str:
        """What the timer says to do now, empty while none runs."""
        standing = self.standing
        return self.timer.words(standing) if self.timer is not None and standing is not None else ""

    def draft_name(self) -> str:
        """The combination of the next trial."""
        shop = self.context.shop
        return combination_name(shop, self.draft.combination_id) if self.draft is not None and shop is not None else ""

    def _changed(self, _changes: object, _initiator: object) -> None:
        trial_ids = {t.id for t in self.context.picture.trials} if self.context.picture is not None else set()
        if self.timer is not None and self.timer.trial_id not in trial_ids:
            self._stop_timer()  # the trial was taken back
        if self.again not in trial_ids:
            self.again = ""
        if self._draft is not None and self._draft.on_top_of and self._draft.on_top_of not in trial_ids:
            self._draft = replace(self._draft, on_top_of="")
        self.changed.emit()

    def _tell(self) -> None:
        standing = self.standing
        if standing is not None:
            self.context.timer_changed.emit(seconds_words(standing.left_s), True)
        self.context.next_changed.emit()
        self.changed.emit()
