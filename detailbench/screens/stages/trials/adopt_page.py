"""Adopt a process: one step or two as seen in the trials, with the seconds the plan counts on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.adopted_now import MayAdopt, half_that_serves, may_adopt_rubbed, no_longer_seen, usual_means
from detailbench.findings.agreements import allowed_to_sand
from detailbench.findings.kit_names import combination_name
from detailbench.findings.mildest import mildest_sentence
from detailbench.findings.processes import process_of, steps_of
from detailbench.findings.trial_order import worst_due
from detailbench.findings.trial_story import may_adopt_steps, outcome_of, stack_beneath, trials_of
from detailbench.moves.work import AdoptProcess
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import FinishGroup, Trial
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import button, sentence, set_kind
from detailbench.screens.stages.trials.confirming import confirming_draft, confirming_words
from detailbench.screens.stages.trials.hand import TrialHand
from detailbench.screens.stages.work_parts.open_list import Line, OpenList
from detailbench.screens.stages.work_parts.pages import Faces, in_line, page_column
from detailbench.screens.stages.work_parts.step_number import StepNumber

CM2 = 1e4  # cm² in a m²
FIELDS = ("section_m2", "polish_s", "spread_s", "wipe_s", "pad_care_every", "setup_s")


@dataclass
class _Typed:
    """Step values a person changed, by candidate and step, until the process is adopted."""

    values: dict[tuple[str, int], dict[str, float]] = field(default_factory=dict)


class AdoptPage(QWidget):
    """What may be adopted, what is still missing, and the step times."""

    def __init__(self, context: Context, hand: TrialHand) -> None:
        super().__init__()
        self._context, self._hand = context, hand
        self._typed = _Typed()
        m = context.dress.look.measure
        self.adopted = sentence()
        self.list = OpenList(context.dress, _("Processes seen in the trials"))
        self.says = sentence()
        self.step = in_line(ChoiceRow(_("times of"), (("0", _("step 1")),), columns=2))
        self.fields = {
            "section_m2": StepNumber(_("section"), "cm²", step=50, least=50),
            "polish_s": StepNumber(_("passes"), "s", step=5, least=1),
            "spread_s": StepNumber(_("spread"), "s", step=5),
            "wipe_s": StepNumber(_("wipe"), "s", step=5),
            "pad_care_every": StepNumber(_("clean the pad after sections"), step=1, least=1, whole=True),
            "setup_s": StepNumber(_("set-up once a panel"), "s", step=30),
        }
        self.adopt = button(_("Adopt this process"), self._adopt, role="main")
        self.confirm = button(_("Confirm"), self._confirm, name=_("Set up the confirming trial on a second panel"))
        self.times = button(_("Step times"), self._turn, name=_("Step times of this process"))
        self.faces = Faces()
        times, inside = page_column(context.dress)
        numbers = QGridLayout()
        numbers.setSpacing(m.space("thin"))
        for i, name in enumerate(FIELDS):
            numbers.addWidget(self.fields[name], i // 2, i % 2)
            self.fields[name].committed.connect(self._taker(name))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.adopted)
        column.addWidget(sentence(_("Only what was tried is listed; the rest was not seen to clear on this paint.")))
        self.sanding = ChoiceRow(_("sanded first, as the owner agreed"), (), columns=3)
        inside.addWidget(self.step)
        inside.addLayout(numbers)
        inside.addWidget(sentence(_("Seconds of one section; the work plan counts on them.")))
        inside.addWidget(self.sanding)
        inside.addStretch(1)
        self.faces.addWidget(self.list)
        self.faces.addWidget(times)
        row = QHBoxLayout()
        row.addWidget(self.confirm, 1)
        row.addWidget(self.times, 1)
        column.addWidget(self.faces, 1)
        column.addWidget(self.says)
        column.addWidget(self.adopt)  # on a line of its own: it names the group
        column.addLayout(row)
        self.list.chosen.connect(lambda _key: self.redraw())
        self.step.chosen.connect(lambda _key: self.redraw())

    def _turn(self) -> None:
        """From the list to the step times and back."""
        self.faces.setCurrentIndex(1 - self.faces.currentIndex())
        self.times.setText(_("Processes") if self.faces.currentIndex() else _("Step times"))
        self.times.setAccessibleName(
            _("Back to the processes") if self.faces.currentIndex() else _("Step times of this process")
        )

    def redraw(self) -> None:
        picture, group = self._context.picture, self._hand.group
        if picture is None or group is None:
            self.list.set_lines(())
            return
        process = process_of(picture, group.id)
        kept = steps_of(picture, process) if process is not None else ()
        names = [combination_name(picture.shop, s.combination_id) for s in kept]
        adopted = _("Adopted: {steps}.").format(steps=numbered(names)) if names else _("Nothing adopted yet.")
        against = process is not None and bool(no_longer_seen(picture, process))
        # why not stands in the list below, at the process itself
        self.adopted.setText(f"{adopted} {_('Its trials no longer speak for it.')}" if against else adopted)
        set_kind(self.adopted, "flagged" if against else "")
        n = len(group.panels)
        text = _("Adopt for {group}: 1 panel") if n == 1 else _("Adopt for {group}: {n} panels")
        self.adopt.setText(text.format(group=_(group.name), n=n).replace("&", "&&"))
        self._show_discs(picture, group)
        found = candidates(picture, group)
        lines = []
        for key, steps in found.items():
            why_not = self._may(picture, group, key, steps).why_not
            told = numbered([combination_name(picture.shop, s) for s in steps])
            lines.append(Line(key, f"{told}\n{why_not or _('seen to work on this paint')}", "dots" if why_not else ""))
        self.list.set_lines(lines, self.list.key or (lines[0].key if lines else ""))
        steps = found.get(self.list.key, ())
        for part in (self.step, self.adopt, self.times, *self.fields.values()):
            part.setEnabled(bool(steps))
        self.confirm.setVisible(bool(steps) and self._may(picture, group, self.list.key, steps).confirming is not None)
        if not steps:
            self.says.setText(_("A process is adopted from judged trials: none yet."))
            return
        self._say(picture, group, steps)
        wanted = [(str(i), _("step {n}").format(n=i + 1)) for i in range(len(steps))]
        if list(self.step.buttons) != [key for key, _text in wanted]:
            self.step.set_choices(wanted)
        if not self.step.value:
            self.step.set_value("0")
        values = self._values(picture, group, steps)[int(self.step.value)]
        for name, shown in self.fields.items():
            shown.set_value(values[name] * CM2 if name == "section_m2" else values[name])

    def _say(self, picture: JobPicture, group: FinishGroup, steps: Sequence[str]) -> None:
        may = self._may(picture, group, self.list.key, steps)
        told = [may.why_not] if may.why_not else []
        if not may.why_not:
            mildest = mildest_sentence(picture, group, steps[0], cut=len(steps) > 1)
            due = may.confirming
            told += [_("In print: {words}.").format(words=mildest)] if mildest else []
            told += [due] if due else []
            worst = worst_due(picture, group)
            told += [worst] if worst else []
        self.says.setText(" ".join(told))
        set_kind(self.says, "flagged" if may.why_not else "")

    def _confirm(self) -> None:
        """On to the sheet, with what is still missing on a second panel."""
        picture, group = self._context.picture, self._hand.group
        if picture is None or group is None:
            return
        steps = candidates(picture, group).get(self.list.key, ())
        draft = confirming_draft(picture, group, steps)
        if draft is None:
            why = _("This group has no second panel to confirm it on; adopting it now asks for a name and a reason.")
            self._context.notice(why, "flagged")
            return
        self._context.select_panel(draft.panel)
        self._hand.take_draft(draft)
        self._hand.page_wanted.emit("sheet")
        self._context.notice(confirming_words(self._hand, draft), "plain")

    def _show_discs(self, picture: JobPicture, group: FinishGroup) -> None:
        """Sanding is never proposed: it can be chosen only where the owner said yes to it."""
        agreed = any(allowed_to_sand(picture, panel) for panel in group.panels)
        discs = [(d.id, d.name) for d in picture.shop.discs if not d.retired] if agreed else []
        wanted = [("", _("no")), *discs] if discs else []
        if [(key, b.text()) for key, b in self.sanding.buttons.items()] != wanted:
            self.sanding.set_choices(wanted)
        self.sanding.setVisible(bool(discs))

    def _values(
        self, picture: JobPicture, group: FinishGroup, steps: Sequence[str], key: str = ""
    ) -> list[dict[str, Any]]:
        typed = self._typed.values
        return [
            {**usual_values(picture, group, steps, i), **typed.get((key or self.list.key, i), {})}
            for i in range(len(steps))
        ]

    def _may(self, picture: JobPicture, group: FinishGroup, key: str, steps: Sequence[str]) -> MayAdopt:
        """Whether these steps may be adopted with the section and seconds that stand here."""
        first = self._values(picture, group, steps, key)[0]
        return may_adopt_rubbed(picture, group, steps, first["section_m2"], first["polish_s"])

    def _taker(self, name: str) -> Any:
        def take(value: float) -> None:
            at = (self.list.key, int(self.step.value or 0))
            kept: float = value / CM2 if name == "section_m2" else value
            self._typed.values.setdefault(at, {})[name] = round(kept) if name == "pad_care_every" else kept

        return take

    def _adopt(self) -> None:
        picture, group = self._context.picture, self._hand.group
        if picture is None or group is None:
            return
        steps = candidates(picture, group).get(self.list.key, ())
        values = self._values(picture, group, steps)
        if self.sanding.value and self.sanding.isVisibleTo(self):
            values.insert(0, {"means": "sanding", "disc_id": self.sanding.value})
        done = self._context.do(AdoptProcess(picture.job.id, group.id, values), self._hand)
        if done is not None:
            self._typed.values.clear()
            self.redraw()


def numbered(names: Sequence[str]) -> str:
    """ "1 … then 2 …"; a single step stands alone."""
    if len(names) == 1:
        return names[0]
    return _(", then ").join(f"{i} {name}" for i, name in enumerate(names, 1))


def candidates(picture: JobPicture, group: FinishGroup) -> dict[str, tuple[str, ...]]:
    """What the judged trials of a group have shown, the newest first: combinations in order, by a key."""
    found: dict[str, tuple[str, ...]] = {}
    for trial in reversed(trials_of(picture, group.id)):
        if outcome_of(picture, trial.id) is not None:
            steps = (*(t.combination_id for t in stack_beneath(picture, trial)), trial.combination_id)
            found.setdefault("+".join(steps), steps)
    ready = {key: steps for key, steps in found.items() if _serve(picture, group, steps)}
    return {**ready, **found}


def _serve(picture: JobPicture, group: FinishGroup, steps: Sequence[str]) -> bool:
    """Seen to work on this paint, as usual or rubbed harder."""
    return may_adopt_steps(picture, group, steps)[1] is None or half_that_serves(picture, group, steps) is not None


def usual_values(picture: JobPicture, group: FinishGroup, steps: Sequence[str], index: int) -> dict[str, Any]:
    """A step's values as the trial that showed it was made; the rest as usual (common practice, no source)."""
    from detailbench.work.process import Step

    usual = Step("", "")
    trial = _shown_by(picture, group, steps, index)
    section = usual.section_m2
    if trial is not None and trial.section_w_mm and trial.section_h_mm:
        section = trial.section_w_mm * trial.section_h_mm / 1e6
    return {
        "combination_id": steps[index],
        "means": usual_means(picture.shop, steps[index]),
        "section_m2": section,
        "polish_s": trial.seconds if trial is not None and trial.seconds else usual.polish_s,
        "spread_s": usual.spread_s,
        "wipe_s": usual.wipe_s,
        "pad_care_every": usual.pad_care_every,
        "setup_s": usual.setup_s,
    }


def _shown_by(picture: JobPicture, group: FinishGroup, steps: Sequence[str], index: int) -> Trial | None:
    """The newest trial of a step on top of those before it; where only what was rubbed harder serves, of those."""
    beneath = tuple(steps[:index])
    if index == 0 and may_adopt_steps(picture, group, steps)[1] is not None:
        served = half_that_serves(picture, group, steps)
        if served is not None:
            return one(picture.trials, served[1].trials[-1])
    return next(
        (
            t
            for t in reversed(trials_of(picture, group.id))
            if t.combination_id == steps[index]
            and tuple(b.combination_id for b in stack_beneath(picture, t)) == beneath
        ),
        None,
    )
