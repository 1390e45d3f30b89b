"""What must be so at this point. A number is compared as finely as it is typed."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import PANEL, PANELS, TEXT, Quantity, quantity, whole, word
from detailbench.cli.walking.step import Step, named, value
from detailbench.cli.walking.steps.workshop import STAGES


@dataclass(frozen=True, kw_only=True)
class ExpectReadings(Step):
    verb = "expect readings"
    does = "so many readings (with or without a value) on the panel in hand, or on others"
    count: int = value(whole())
    of: tuple[str, ...] | None = named(PANELS)


@dataclass(frozen=True, kw_only=True)
class ExpectMarks(Step):
    verb = "expect marks"
    does = "so many marks on the panel in hand, or on others"
    count: int = value(whole())
    of: tuple[str, ...] | None = named(PANELS)


@dataclass(frozen=True, kw_only=True)
class ExpectPlaces(Step):
    verb = "expect places"
    does = "so many places on the panel in hand"
    count: int = value(whole())


@dataclass(frozen=True, kw_only=True)
class ExpectPhotos(Step):
    verb = "expect photos"
    does = "so many photographs in the job"
    count: int = value(whole())


@dataclass(frozen=True, kw_only=True)
class ExpectMean(Step):
    verb = "expect mean"
    does = "the mean of the panel in hand, or of another, before or after the work"
    mean: Quantity = value(quantity("um", "µm"))
    of: str = named(PANEL, "")
    moment: str = named(word("before", "after"), "before")


@dataclass(frozen=True, kw_only=True)
class ExpectState(Step):
    verb = "expect state"
    does = "the state of the panel in hand"
    clean: str = value(word(shown="CLEAN"))
    work: str = value(word(shown="WORK"), "")
    cover: str = value(word(shown="COVER"), "")


@dataclass(frozen=True, kw_only=True)
class ExpectHeld(Step):
    verb = "expect held"
    does = "the panel in hand is held back, with this in the reason"
    part: str = value(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class ExpectFree(Step):
    verb = "expect free"
    does = "nothing holds the panel in hand back"


@dataclass(frozen=True, kw_only=True)
class ExpectOdd(Step):
    verb = "expect odd"
    does = "how the panel in hand, or another, compares with the rest of the car"
    compared: str = value(word("thicker", "thinner", "look_again", "like", "two_groups", "not_compared"))
    of: str = named(PANEL, "")


@dataclass(frozen=True, kw_only=True)
class ExpectAdvice(Step):
    verb = "expect advice"
    does = "what the last judged trial says to do next, with this in it"
    part: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class ExpectStartRung(Step):
    verb = "expect first-rung"
    does = "the rung the first trial of the panel in hand should start with"
    rung: int = value(whole())


@dataclass(frozen=True, kw_only=True)
class ExpectTried(Step):
    verb = "expect tried"
    does = "the last trial of the panel in hand names what it was made with, with this in it"
    part: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class ExpectStepsLeft(Step):
    verb = "expect steps-left"
    does = "so many panel steps are not finished"
    count: int = value(whole())


@dataclass(frozen=True, kw_only=True)
class ExpectMinutesLeft(Step):
    verb = "expect minutes-left"
    does = "planned minutes not done"
    minutes: Quantity = value(quantity("min"))


@dataclass(frozen=True, kw_only=True)
class ExpectChange(Step):
    verb = "expect change"
    does = "what came off the panel in hand, from like readings"
    change: Quantity = value(quantity("um", "µm"))


@dataclass(frozen=True, kw_only=True)
class ExpectNoChange(Step):
    verb = "expect no-change"
    does = "no figure for what came off the panel in hand, with this in the reason"
    part: str = value(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class ExpectDocuments(Step):
    verb = "expect documents"
    does = "so many closed documents in the job"
    count: int = value(whole())


@dataclass(frozen=True, kw_only=True)
class ExpectClosedRecord(Step):
    verb = "expect closed-record"
    does = "what a check of the newest closed document, or of the oldest of its kind, says"
    found: str = value(word("unchanged", "signed_later", "other_key", "changed", "damaged"))
    of: str = named(word("newest", "oldest"), "newest")


@dataclass(frozen=True, kw_only=True)
class ExpectReplaced(Step):
    verb = "expect replaced"
    does = "so many closed documents of this kind were replaced by a later one"
    document: str = value(word("arrival", "supplement", "report"))
    count: int = value(whole())


@dataclass(frozen=True, kw_only=True)
class ExpectDue(Step):
    verb = "expect due"
    does = "so many things are still due in a stage"
    stage: str = value(word(*STAGES))
    count: int = value(whole())


@dataclass(frozen=True, kw_only=True)
class ExpectNotice(Step):
    verb = "expect notice"
    does = "what was said about the act before, with this in it"
    part: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class ExpectJobs(Step):
    verb = "expect jobs"
    does = "so many jobs in the workshop"
    count: int = value(whole())


@dataclass(frozen=True, kw_only=True)
class ExpectStanding(Step):
    verb = "expect standing"
    does = "how the job stands"
    standing: str = value(
        word(
            "arrived",
            "in_work",
            "paused",
            "handed_over",
            "fetched_early",
            "stopped_after_trial",
            "unfinished",
            "refused",
        )
    )


@dataclass(frozen=True, kw_only=True)
class ExpectSound(Step):
    verb = "expect sound"
    does = "the check of the record finds nothing"
