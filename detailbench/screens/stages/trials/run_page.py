"""The trial itself: ready, running, then what was seen; and what it says to do next."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.limits import binding_words
from detailbench.findings.trial_story import TrialTold, told
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button, figure, gives_way, heading, label, sentence, set_kind
from detailbench.screens.stages.trials.adviser_part import AdviserPart
from detailbench.screens.stages.trials.advising import Advising
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.known import outcome_words
from detailbench.screens.stages.trials.left_part import LeftPart
from detailbench.screens.stages.trials.outcome_keys import STOPS, key_choices
from detailbench.screens.stages.trials.seen_part import SeenPart
from detailbench.screens.stages.trials.timer import phase_words, seconds_words
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import Faces


class RunPage(QWidget):
    """Four faces: ready with the last result, the timer, the outcome, and a trial whose timer was left."""

    def __init__(self, context: Context, hand: TrialHand, advising: Advising) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self.faces = Faces()
        self.ready, self.timing, self.seen = (
            _Ready(context, hand, advising),
            _Timing(context, hand),
            SeenPart(context, hand),
        )
        self.left = LeftPart(context, hand)
        for face in (self.ready, self.timing, self.seen, self.left):
            self.faces.addWidget(face)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.faces)

    def redraw(self) -> None:
        """Show the face that belongs to where the trial stands."""
        standing = self._hand.standing
        if standing is not None and not self._hand.may_judge:
            face: _Ready | _Timing | SeenPart | LeftPart = self.timing
        elif self._hand.left is not None and not self._hand.judging.stopped:
            face = self.left
        elif self._hand.open_trial is not None:
            face = self.seen
        else:
            face = self.ready
        self.faces.setCurrentWidget(face)
        face.redraw()


class _Ready(QWidget):
    """The next trial, its start, and what the last one says to do."""

    def __init__(self, context: Context, hand: TrialHand, advising: Advising) -> None:
        super().__init__()
        self._context, self._hand, self._advising = context, hand, advising
        m = context.dress.look.measure
        self.next = label("", wrap=True)
        self.start = button(_("Start: 10 s count-in"), hand.start_or_stop, role="main", name=_("Start the timer"))
        self.untimed = button(_("Without the timer"), hand.record, name=_("Record the trial without the timer"))
        self.limits = sentence()
        set_kind(self.limits, "flagged")
        self.result = heading("")
        self.result.setWordWrap(True)
        self.seen = sentence()
        self.options = gives_way(OpenList(context.dress, _("What to do next, advised first")), m.target * 2)
        self.adviser = AdviserPart(context, advising)
        self.take = button(_("Take it up"), self.take_up, name=_("Take up what is chosen"))
        self.options.opened.connect(lambda _key: self.take_up())
        starts = QHBoxLayout()
        starts.addWidget(self.start, 1)
        starts.addWidget(self.untimed)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.next)
        column.addWidget(self.limits)
        column.addLayout(starts)
        column.addSpacing(m.space("small"))
        for piece in (self.seen, self.result):
            column.addWidget(piece)
        column.addWidget(self.options, 1)
        column.addWidget(self.take)
        column.addWidget(self.adviser)
        column.addStretch(0)

    @property
    def last(self) -> TrialTold | None:
        """The group's last judged trial."""
        picture, group = self._context.picture, self._hand.group
        if picture is None or group is None:
            return None
        judged = [t for t in told(picture, group.id) if t.advice is not None]
        return max(judged, key=lambda t: t.outcome.seq if t.outcome is not None else 0) if judged else None

    def redraw(self) -> None:
        draft, picture = self._hand.draft, self._context.picture
        self.start.setEnabled(draft is not None)
        self.untimed.setEnabled(draft is not None)
        barred = self._hand.why_none() if draft is not None else ""
        self.next.setText(
            _("Choose a panel of this group on the map first.")
            if draft is None
            else (_("Set up, not proposed: {name}") if barred else _("Next, trial {n}: {name}")).format(
                n=len(self._hand.trials) + 1, name=self._hand.draft_name()
            )
        )
        binds = binding_words(picture, draft.panel) if picture is not None and draft is not None else ""
        minds = " ".join(filter(None, (barred, binds, self._mild_end(), self._lightness())))
        self.limits.setText(minds)
        self.limits.setVisible(bool(minds))
        self.adviser.above = barred
        self.adviser.redraw()
        last = self.last
        for piece in (self.seen, self.result, self.options, self.take):
            piece.setVisible(last is not None)
        if last is None or last.advice is None or picture is None:
            return
        self.seen.setText(
            _("Trial {n} ({name}): {seen}").format(
                n=self._hand.number(last.trial.id), name=last.name, seen=outcome_words(last.outcome)
            )
        )
        self.result.setText(_("Result: {result}").format(result=last.advice.result.label))
        options = (last.advice.chosen, *last.advice.next_options)
        lines = [Line(str(i), f"{o.result.label}: {o.sentence}") for i, o in enumerate(options)]
        current = self.options.key if tuple(lines) == self.options.lines() else "0"
        self.options.set_lines(lines, current or "0")

    def _mild_end(self) -> str:
        """Why the first trial starts at the mild end, where the paint asks for it: beside the start."""
        asked = self._advising.asked
        told = asked is not None and self.last is None and asked.waits and asked.waits != asked.plain_line
        return asked.plain_line if asked is not None and told else ""

    def _lightness(self) -> str:
        """Asked for until somebody said it: how surely a finish is seen depends on it."""
        picture, group = self._context.picture, self._hand.group
        if picture is None or group is None or group.lightness or picture.car.lightness:
            return ""
        return _("Say once how light the colour is (Place, this paint): on light paint haze and swirl hardly show.")

    def take_up(self) -> None:
        """Set up what is chosen in the list."""
        last = self.last
        if last is not None and last.advice is not None:
            options = (last.advice.chosen, *last.advice.next_options)
            self._hand.take_up(options[int(self.options.key or 0)], last.trial)


class _Timing(QWidget):
    """The phase, its seconds, what follows."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._hand = hand
        self.which = label("", wrap=True)
        self.phase = heading("")
        self.left = figure("")
        self.follows = sentence()
        self.stop = button(_("Stop the timer"), hand.start_or_stop, role="main")
        self.stopped = ChoiceRow(_("stopped because of"), key_choices(STOPS), columns=4)
        self.stopped.chosen.connect(lambda key: hand.see(stopped=key))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        column.addSpacing(context.dress.look.measure.space("gap"))
        for piece in (self.which, self.phase, self.left, self.follows, self.stop):
            column.addWidget(piece)
        column.addStretch(1)
        column.addWidget(self.stopped)

    def redraw(self) -> None:
        standing = self._hand.standing
        if standing is None:
            return
        trial = self._hand.open_trial  # another panel may be chosen meanwhile
        if trial is not None:
            number = self._hand.number(trial.id)
            self.which.setText(_("{panel}, trial {n}").format(panel=panel_name(trial.panel), n=number))
        self.phase.setText(self._hand.phase_words())
        self.left.setText(seconds_words(standing.left_s))
        self.left.setAccessibleName(_("{time} left").format(time=seconds_words(standing.left_s)))
        self.follows.setText(_("then {what}").format(what=follows_words(self._hand)) if standing.following else "")
        self.stopped.set_value("")


def follows_words(hand: TrialHand) -> str:
    """What comes after the phase that runs."""
    standing = hand.standing
    if standing is None or standing.following is None:
        return ""
    return _("{phase}, {time}").format(
        phase=phase_words(standing.following.key), time=seconds_words(standing.following.seconds)
    )
