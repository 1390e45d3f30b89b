"""Marks counted in a trial's frame: a count supports what a person saw, and never judges."""

from __future__ import annotations

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.marks.share import FEWEST_FOR_A_SHARE, ShareCleared, share_cleared
from detailbench.record.things import TrialOutcome

EXACT = 1e-9  # what the arithmetic of the interval leaves over


def count_of(outcome: TrialOutcome | None) -> ShareCleared | None:
    """The count noted with an outcome, None where nobody counted. An interval only from 20 marks on."""
    if outcome is None or outcome.counted_before is None or outcome.counted_left is None:
        return None
    return share_cleared(outcome.counted_before, outcome.counted_left)


def counted_words(before: int, left: int) -> str:
    """ "21 of 24 counted marks gone, 88 % (69 to 96 %)". Raises BadInput for an impossible count."""
    return share_words(share_cleared(before, left))


def share_words(found: ShareCleared) -> str:
    """The count in one sentence; under 20 marks without a share, and it says why."""
    if found.share is None or found.low is None or found.high is None:
        return _(
            "{gone} of {of} counted marks gone; under {fewest} no share is stated. It supports, it does not judge."
        ).format(gone=found.gone, of=found.of, fewest=FEWEST_FOR_A_SHARE)
    return _(
        "{gone} of {of} counted marks gone: {share}\u00a0% ({low} to {high}\u00a0%, 95\u00a0%). "
        "It supports, it does not judge."
    ).format(
        gone=found.gone,
        of=found.of,
        share=_percent(found.share),
        low=_percent(found.low),
        high=_percent(found.high),
    )


def _percent(share: float) -> str:
    """A share in whole percent; what is not quite none, or not quite all, is never rounded to it: "below 1"."""
    shown = format_number(100 * share, 0)
    if share > EXACT and shown == format_number(0.0, 0):
        return _("below {n}").format(n=format_number(1, 0))
    if share < 1 - EXACT and shown == format_number(100.0, 0):
        return _("above {n}").format(n=format_number(99, 0))
    return shown
