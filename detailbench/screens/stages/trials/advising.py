"""The plain rule's and the adviser's word on the group at hand, and what is shown of its range with them."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QObject, Signal

from detailbench.findings.adviser import AdviserAsked, AdviserSays, ask_adviser
from detailbench.findings.processes import process_of
from detailbench.findings.range_picture import RangePicture, range_picture
from detailbench.findings.range_shown import range_shown
from detailbench.record.picture import JobPicture
from detailbench.screens.stages.trials.draft import draft_on_top, rubbed_harder
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.trials.solving import Solver
from detailbench.trials.adviser_search import Stop
from detailbench.trials.outcome import Result
from detailbench.trials.range_drawing import RungShown


class Advising(QObject):
    """One for the stage, beside its hand. ``changed`` fires when the adviser has said something new."""

    changed = Signal()

    def __init__(self, hand: TrialHand) -> None:
        super().__init__(hand)
        self._hand = hand
        self.solver = Solver(hand.context, self)
        self.solver.said.connect(self.changed.emit)
        self._stop: dict[str, Stop] = {}  # by finish group, where a person chose
        self._for: tuple[JobPicture, str, str] | None = None
        self._asked: AdviserAsked | None = None
        self._figures: RangePicture | None = None

    @property
    def asked(self) -> AdviserAsked | None:
        """The question about the group at hand; None where there is no group, or the shop has no range."""
        self._look()
        group, asked = self._hand.group, self._asked
        if asked is None or group is None or not asked.clear_coat_known:
            return asked
        return replace(asked, stop=self._stop.get(group.id, asked.stop))

    @property
    def says(self) -> AdviserSays | None:
        """The answer; None while it is being worked out, or nothing is asked."""
        asked = self.asked
        return None if asked is None else self.solver.of(asked)

    def choose_stop(self, stop: Stop) -> None:
        """Prove or thrift, for this group; only asked where the clear coat is known."""
        group = self._hand.group
        if group is not None:
            self._stop[group.id] = stop
            self.changed.emit()

    @property
    def figures(self) -> RangePicture | None:
        """All that is known of the group's range; None without a group."""
        self._look()
        return self._figures

    def range(self) -> tuple[RungShown, ...]:
        """The group's range as it is shown, empty without a group."""
        picture, group, figures = self._hand.context.picture, self._hand.group, self.figures
        if picture is None or group is None or figures is None:
            return ()
        plain = self._asked.plain if self._asked is not None else None
        up_next = ""
        tried_next = plain is not None and plain.result is not Result.KEEP and process_of(picture, group.id) is None
        if tried_next and plain is not None and plain.rung is not None:
            up_next = figures.rungs[plain.rung].combination_id
        return range_shown(picture, figures, up_next)

    def disagrees(self) -> str:
        """Where the shop's order and its readings disagree, in sentences; empty otherwise."""
        found = self.figures
        return "" if found is None else " ".join(o.sentence for o in found.order if o.disagrees)

    def may_take_up(self) -> bool:
        """The adviser would do something else than the rule, and it can be set up from here."""
        says = self.says
        return says is not None and says.move is not None and not says.agrees and says.move.kind in ("try", "refine")

    def take_up(self) -> None:
        """Set up what the adviser would do."""
        picture, group, says = self._hand.context.picture, self._hand.group, self.says
        if picture is None or group is None or says is None or says.move is None or says.move.rung is None:
            return
        asked = self.asked
        if asked is None:
            return
        if says.move.kind == "try":
            combination, harder = asked.made_of(says.move.rung)
            self._hand.set_draft(on_top_of="", at=None)
            self._hand.choose_combination(combination)
            if harder is not None:
                self._hand.set_draft(**rubbed_harder(picture, group.id, harder))
        elif says.move.on_top is not None:
            cut, cut_harder = asked.made_of(says.move.rung)
            refining, harder = asked.made_of(says.move.on_top)
            only = None if cut_harder is None else frozenset(cut_harder.trials)
            draft = draft_on_top(picture, group.id, cut, refining, only)
            if draft is None:
                return
            if harder is not None:
                draft = replace(draft, **rubbed_harder(picture, group.id, harder))
            self._hand.context.select_panel(draft.panel)
            self._hand.take_draft(draft)
        self._hand.page_wanted.emit("sheet")

    def _look(self) -> None:
        """Ask anew where the record, the group or the panel is another."""
        context, group = self._hand.context, self._hand.group
        picture, panel = context.picture, context.selected_panel
        if picture is None or group is None or context.bench is None:
            self._for, self._asked, self._figures = None, None, None
            return
        if self._for is not None and self._for[0] is picture and self._for[1:] == (group.id, panel):
            return
        earlier = context.bench.jobs_with_trials()
        same = self._for is not None and self._for[0] is picture and self._for[1] == group.id
        self._for = (picture, group.id, panel)
        self._asked = ask_adviser(picture, group.id, earlier, panel=panel, day=context.clock.now().date())
        if not same:  # another panel of the group changes only where the next trial is
            self._figures = range_picture(picture, group.id, earlier)
