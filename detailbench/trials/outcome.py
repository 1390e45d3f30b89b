"""What one trial showed, what is known around it, and what is advised."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.trials.movement import Movement
from detailbench.trials.rungs import Range, RungSeen

PAINT_SYSTEMS = (
    "clear_over_colour",
    "single_stage",
    "matt",
    "tinted_clear",
    "filmed",
    "wrapped",
    "bare",
    "unknown",
)


class Cleared(StrEnum):
    """Were the marks cleared?"""

    YES = "yes"
    CANT_TELL = "cant_tell"
    NO = "no"

    @property
    def label(self) -> str:
        return {"yes": _("yes"), "cant_tell": _("can't tell"), "no": _("no")}[self.value]


class Finish(StrEnum):
    """The finish after a wipe under the lamp."""

    CLEAR = "clear"
    EVEN_HAZE = "even_haze"
    TRAILS = "trails"
    PAD_MARKS = "pad_marks"
    TOWEL_MARKS = "towel_marks"
    SMEAR = "smear"

    @property
    def label(self) -> str:
        words = {
            "clear": _("clear"),
            "even_haze": _("even haze"),
            "trails": _("trails"),
            "pad_marks": _("pad or dust marks"),
            "towel_marks": _("towel marks"),
            "smear": _("smear"),
        }
        return words[self.value]


class Stopped(StrEnum):
    """Why a trial was stopped."""

    HEAT = "heat"
    COLOUR_ON_PAD = "colour_on_pad"
    EDGE = "edge"
    PAD = "pad"

    @property
    def label(self) -> str:
        words = {"heat": _("heat"), "colour_on_pad": _("colour on pad"), "edge": _("edge"), "pad": _("pad")}
        return words[self.value]


class Result(StrEnum):
    """What a trial says to do next, by key."""

    KEEP = "keep"
    STRONGER = "stronger"
    MILDER = "milder"
    TWO_STEPS = "two_steps"
    SMALLER_SECTION = "smaller_section"
    SLOWER_ARM = "slower_arm"
    OTHER_PAD = "other_pad"
    OTHER_MOVEMENT = "other_movement"
    LOWER_LEVEL = "lower_level"
    WIPE = "wipe"
    SECOND_LAMP = "second_lamp"
    COUNT = "count"
    OTHER_TOWEL = "other_towel"
    CLEAN_PAD = "clean_pad"
    COOLER = "cooler"
    FRESH_PLACE = "fresh_place"
    ON_HOLD = "on_hold"

    @property
    def label(self) -> str:
        words = {
            "keep": _("keep"),
            "stronger": _("stronger"),
            "milder": _("milder"),
            "two_steps": _("two steps"),
            "smaller_section": _("smaller section"),
            "slower_arm": _("slower arm"),
            "other_pad": _("other pad"),
            "other_movement": _("other movement"),
            "lower_level": _("agree a lower level"),
            "wipe": _("wipe and look again"),
            "second_lamp": _("second lamp"),
            "count": _("count in the frame"),
            "other_towel": _("other towel"),
            "clean_pad": _("clean pad"),
            "cooler": _("cooler"),
            "fresh_place": _("fresh place"),
            "on_hold": _("on hold"),
        }
        return words[self.value]


@dataclass(frozen=True)
class Outcome:
    """One trial's outcome: marks and finish, or why it was stopped; never both, never neither.

    ``only_deep_left``: what is left is all of depth 3 or more, which never counts as not cleared.
    """

    cleared: Cleared | None = None
    finish: Finish | None = None
    stopped: Stopped | None = None
    only_deep_left: bool = False

    def __post_init__(self) -> None:
        if self.stopped is None and (self.cleared is None or self.finish is None):
            raise BadInput(_("An outcome needs both: were the marks cleared, and the finish."), field="outcome")
        if self.stopped is not None and (self.cleared is not None or self.finish is not None):
            raise BadInput(_("A stopped trial has no finding about marks or finish."), field="stopped")


@dataclass(frozen=True)
class Context:
    """What is known around the trial.

    ``range``: what is known of the rungs, mildest first, before this outcome; ``at``: the rung tried; ``on_top_of``:
    the rung whose place it was tried on, None on a fresh place. ``already``: results acted on since this rung was
    first tried. ``clear_coat``: known, thin, unknown. ``colour``: dark, mid, light. ``feel``: soft, medium, hard,
    sticky or None. ``paint_system``: one of PAINT_SYSTEMS. ``order``: the shop's, compound or pad first.
    ``time_left``: a slower arm would still be within the compound's working time. ``trial_minutes``: shop setting.
    ``mild_end``: the paint asks for the mild end, so that stronger is the next rung only. ``cut``: the rung at the
    bottom of the place, where that is not ``on_top_of``; ``cut_cleared``: whether it cleared there, None: not known.
    """

    range: Range
    at: int
    on_top_of: int | None = None
    already: frozenset[Result] = frozenset()
    clear_coat: str = "unknown"
    colour: str = "dark"
    feel: str | None = None
    paint_system: str = "unknown"
    order: tuple[str, ...] = ("compound", "pad")
    time_left: bool = True
    trial_minutes: float = 8.0
    mild_end: bool = False
    cut: int | None = None
    cut_cleared: bool | None = None

    def __post_init__(self) -> None:
        if not 0 <= self.at < len(self.range):
            raise BadInput(_("The combination tried is not in this range."), field="at", given=self.at)
        if self.on_top_of is not None and not 0 <= self.on_top_of < len(self.range):
            raise BadInput(_("The combination beneath is not in this range."), field="on_top_of", given=self.on_top_of)
        for name, value, known in (
            ("clear_coat", self.clear_coat, ("known", "thin", "unknown")),
            ("colour", self.colour, ("dark", "mid", "light")),
            ("feel", self.feel, (None, "soft", "medium", "hard", "sticky")),
            ("paint_system", self.paint_system, PAINT_SYSTEMS),
        ):
            if value not in known:
                raise BadInput(_("“{value}” is not known here.").format(value=value), field=name, given=value)

    @property
    def tried(self) -> RungSeen:
        return self.range[self.at]

    @property
    def movement(self) -> Movement:
        return self.tried.rung.movement


@dataclass(frozen=True)
class Option:
    """One thing to do next. ``rung``: index of the combination to try (the same one where only the technique, pad
    care or place changes), None where nothing is polished. ``changes``: what differs from the trial just made.
    ``place``: same, fresh, on_top or none. ``then``: the combination to refine with afterwards, on top."""

    result: Result
    sentence: str
    rung: int | None = None
    changes: tuple[str, ...] = ()
    place: str = "same"
    minutes: float | None = None
    then: int | None = None


@dataclass(frozen=True)
class Advice:
    """What the outcome says to do next.

    ``teaches``: it says something about the range; ``about``: both, cleared, finish or nothing. ``forbids``: this
    combination at this technique (heat) or the whole panel (colour on the pad), see ``forbids_what``.
    ``flags_order``: the range's order is in doubt on this paint. ``mishap``: True, or None where the paint system
    must be known first. ``row``: the table's row that spoke.
    """

    chosen: Option
    next_options: tuple[Option, ...]
    teaches: bool
    about: str
    forbids: bool
    forbids_what: str
    starts_two_steps: bool
    flags_order: bool
    mishap: bool | None
    row: str

    @property
    def result(self) -> Result:
        return self.chosen.result

    @property
    def sentence(self) -> str:
        return self.chosen.sentence

    @property
    def rung(self) -> int | None:
        return self.chosen.rung
