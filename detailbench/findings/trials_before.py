"""The trials of every job of this shop and of those taken in, to be searched: what paint, how it felt, what was tried,
what came of it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.brought_in import brought_in
from detailbench.findings.kit_names import combination_name
from detailbench.findings.like_paint import code_key
from detailbench.findings.paint_feel import Feel, feel_of_panels, feel_words
from detailbench.findings.processes import group_of
from detailbench.findings.trial_story import outcome_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup, Trial, TrialOutcome
from detailbench.trials.outcome import Cleared, Finish, Result, Stopped


@dataclass(frozen=True)
class TrialBefore:
    """One trial with what may be searched of it; nothing of the owner. ``number``: its place among the job's trials,
    from 1; ``feel``: the newest word about its panel."""

    picture: JobPicture
    group: FinishGroup | None
    trial: Trial
    number: int
    name: str
    outcome: TrialOutcome | None
    feel: Feel

    @property
    def at(self) -> datetime:
        return self.trial.stated_at or self.trial.entered_at

    @property
    def elsewhere(self) -> bool:
        """Another workshop made it: it came with the job's file."""
        return brought_in(self.picture, self.trial)

    @property
    def code(self) -> str:
        """The colour code as it was typed."""
        return self.picture.car.paint_code

    @property
    def year(self) -> int | None:
        return self.picture.car.year

    @property
    def refinished(self) -> str:
        """yes, no or empty, as stated of its finish group."""
        return self.group.refinished if self.group is not None else ""

    @property
    def words(self) -> str:
        """What the words of a search are looked for in: combination, panel, what was seen, result."""
        kept = self.outcome
        told = [self.name, panel_name(self.trial.panel), self.group.name if self.group is not None else ""]
        if kept is not None:
            told += [
                Stopped(kept.stopped).label if kept.stopped else "",
                Finish(kept.finish).label if kept.finish else "",
                _("cleared: {cleared}").format(cleared=Cleared(kept.cleared).label) if kept.cleared else "",
                result_words(kept),
            ]
        return " ".join(told)


@dataclass(frozen=True)
class Sought:
    """What is looked for; an empty part says nothing. ``code``: the beginning of a colour code as typed, spaces and
    case aside; ``words``: each of them in the combination, the panel, what was seen or the result; ``jobs``: of these
    alone."""

    code: str = ""
    year: int | None = None
    refinished: str = ""
    feel: str = ""
    sticky: str = ""
    words: str = ""
    jobs: tuple[str, ...] = ()

    def fits(self, trial: TrialBefore) -> bool:
        if self.code and not code_key(trial.code).startswith(code_key(self.code)):
            return False
        if self.jobs and trial.picture.job.id not in self.jobs:
            return False
        if self.year is not None and trial.year != self.year:
            return False
        asked = ((self.refinished, trial.refinished), (self.feel, trial.feel.feel), (self.sticky, trial.feel.sticky))
        if any(wanted and wanted != had for wanted, had in asked):
            return False
        line = trial.words.casefold()
        return all(word in line for word in self.words.casefold().split())


def trials_before(pictures: Iterable[JobPicture]) -> tuple[TrialBefore, ...]:
    """Every trial of these jobs, newest first."""
    found = []
    for picture in pictures:
        for number, trial in enumerate(picture.trials, 1):
            found.append(
                TrialBefore(
                    picture=picture,
                    group=group_of(picture, trial.panel),
                    trial=trial,
                    number=number,
                    name=combination_name(picture.shop, trial.combination_id),
                    outcome=outcome_of(picture, trial.id),
                    feel=feel_of_panels(picture, (trial.panel,)),
                )
            )
    return tuple(sorted(found, key=lambda t: (t.at, t.trial.seq), reverse=True))


def trials_with(pictures: Iterable[JobPicture], sought: Sought) -> tuple[TrialBefore, ...]:
    """Those that fit what is sought, newest first."""
    return tuple(t for t in trials_before(pictures) if sought.fits(t))


def result_words(kept: TrialOutcome) -> str:
    """What a judged trial said to do next; empty where nothing was kept."""
    return Result(kept.next_result).label if kept.next_result else ""


def paint_words(picture: JobPicture, group: FinishGroup | None, feel: Feel) -> str:
    """ "X 12, 2019, refinished, soft, sticky": what is known of the paint; what nobody noted is left out."""
    refinished = {"yes": _("refinished"), "no": _("not refinished")}
    told = [
        picture.car.paint_code,
        "" if picture.car.year is None else str(picture.car.year),
        refinished.get(group.refinished, "") if group is not None else "",
        feel_words(feel),
    ]
    return ", ".join(word for word in told if word)
