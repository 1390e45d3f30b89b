"""The outcome table as data: which row an outcome falls in, and what the row tries in turn.

Common practice, no source. Rows are looked through from the top; the first that fits speaks. Within a row the first
result that can be done, and was not done already, is advised; the rest are offered.
"""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.trials.outcome import Cleared, Context, Finish, Outcome, Result, Stopped

R = Result
ANY_CLEARED = frozenset(Cleared)


@dataclass(frozen=True)
class Row:
    """``on_top``, ``driven`` (a movement that leaves trails), ``hard``: None fits either. ``cut``: what is known of the
    clearing of the cut beneath, any where empty. ``about``: what it teaches.

    ``two_steps``: the row sets out on a cut and a refine on top whatever is chosen first.
    """

    key: str
    chain: tuple[Result, ...]
    last: Result
    cleared: frozenset[Cleared] = frozenset()
    finish: Finish | None = None
    stopped: Stopped | None = None
    on_top: bool | None = None
    driven: bool | None = None
    hard: bool | None = None
    cut: tuple[bool | None, ...] = ()
    about: str = "nothing"
    forbids: str = ""
    two_steps: bool = False
    flags_order: bool = False

    def fits(self, outcome: Outcome, context: Context) -> bool:
        if self.stopped is not outcome.stopped:
            return False
        if self.stopped is None and (self.finish not in (None, outcome.finish) or outcome.cleared not in self.cleared):
            return False
        return (
            self.on_top in (None, context.on_top_of is not None)
            and self.driven in (None, context.movement.leaves_trails)
            and self.hard in (None, context.feel == "hard")
            and (not self.cut or context.cut_cleared in self.cut)
        )


YES, NO, CANT_TELL = frozenset({Cleared.YES}), frozenset({Cleared.NO}), frozenset({Cleared.CANT_TELL})

ROWS: tuple[Row, ...] = (
    # stopped
    Row("stopped: heat", (R.COOLER, R.MILDER), R.LOWER_LEVEL, stopped=Stopped.HEAT, forbids="technique"),
    Row("stopped: colour on pad", (), R.ON_HOLD, stopped=Stopped.COLOUR_ON_PAD, forbids="panel"),
    Row("stopped: edge", (), R.FRESH_PLACE, stopped=Stopped.EDGE),
    Row("stopped: pad", (), R.CLEAN_PAD, stopped=Stopped.PAD),
    # the finish hides what there is to judge
    Row("pad or dust marks", (R.CLEAN_PAD, R.OTHER_PAD), R.CLEAN_PAD, ANY_CLEARED, Finish.PAD_MARKS),
    Row("towel marks", (), R.OTHER_TOWEL, ANY_CLEARED, Finish.TOWEL_MARKS),
    Row("smear", (), R.WIPE, ANY_CLEARED, Finish.SMEAR),
    # on top of a cut only the finish is judged; both together serve where the cut cleared
    Row(
        "on top, clear, the cut did not clear",
        (R.STRONGER, R.OTHER_MOVEMENT),
        R.LOWER_LEVEL,
        ANY_CLEARED,
        Finish.CLEAR,
        on_top=True,
        cut=(False,),
        about="finish",
        two_steps=True,
    ),
    Row(
        "on top, clear, the cut not known",
        (),
        R.SECOND_LAMP,
        ANY_CLEARED,
        Finish.CLEAR,
        on_top=True,
        cut=(None,),
        about="finish",
        two_steps=True,
    ),
    Row("on top, clear", (), R.KEEP, ANY_CLEARED, Finish.CLEAR, on_top=True, about="finish", two_steps=True),
    Row(
        "on top, even haze",
        (R.CLEAN_PAD, R.MILDER, R.STRONGER),
        R.LOWER_LEVEL,
        ANY_CLEARED,
        Finish.EVEN_HAZE,
        on_top=True,
        about="finish",
        two_steps=True,
    ),
    Row(
        "on top, trails",
        (R.OTHER_MOVEMENT,),
        R.LOWER_LEVEL,
        ANY_CLEARED,
        Finish.TRAILS,
        on_top=True,
        driven=True,
        two_steps=True,
    ),
    Row(
        "trails without a driven pad",
        (R.WIPE, R.CLEAN_PAD),
        R.SECOND_LAMP,
        ANY_CLEARED,
        Finish.TRAILS,
        driven=False,
    ),
    Row("can't tell", (R.SECOND_LAMP, R.WIPE), R.COUNT, CANT_TELL),
    # cleared
    Row("cleared, clear", (), R.KEEP, YES, Finish.CLEAR, about="both"),
    Row(
        "cleared, even haze",
        (R.CLEAN_PAD, R.MILDER, R.TWO_STEPS, R.OTHER_PAD),
        R.LOWER_LEVEL,
        YES,
        Finish.EVEN_HAZE,
        about="both",
    ),
    Row(
        "cleared, trails",
        (R.TWO_STEPS,),
        R.LOWER_LEVEL,
        YES,
        Finish.TRAILS,
        driven=True,
        about="cleared",
        two_steps=True,
    ),
    # not cleared
    Row(
        "not cleared, clear",
        (R.WIPE, R.SLOWER_ARM, R.SMALLER_SECTION, R.STRONGER, R.OTHER_MOVEMENT, R.TWO_STEPS),
        R.LOWER_LEVEL,
        NO,
        Finish.CLEAR,
        about="both",
    ),
    Row(
        "not cleared, trails",
        (R.STRONGER, R.OTHER_MOVEMENT, R.TWO_STEPS, R.SLOWER_ARM, R.SMALLER_SECTION),
        R.LOWER_LEVEL,
        NO,
        Finish.TRAILS,
        driven=True,
        about="cleared",
        two_steps=True,
    ),
    Row(
        "not cleared, even haze, hard",
        (R.TWO_STEPS, R.OTHER_PAD, R.COOLER),
        R.LOWER_LEVEL,
        NO,
        Finish.EVEN_HAZE,
        hard=True,
        about="both",
        flags_order=True,
    ),
    Row(
        "not cleared, even haze",
        (R.OTHER_PAD, R.COOLER, R.TWO_STEPS),
        R.LOWER_LEVEL,
        NO,
        Finish.EVEN_HAZE,
        about="both",
        flags_order=True,
    ),
)


def row_for(outcome: Outcome, context: Context) -> Row:
    """The first row that fits. Every outcome has one."""
    return next(row for row in ROWS if row.fits(outcome, context))
