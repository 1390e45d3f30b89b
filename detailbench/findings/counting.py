"""Marks counted in a trial's frame: a count supports what a person saw, and never judges."""

from __future__ import annotations

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.marks.share import FEWEST_FOR_A_SHARE, ShareCleared, share_cleared
from detailbench.record.things import TrialOutcome


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
        share=format_number(100 * found.share, 0),
        low=format_number(100 * found.low, 0),
        high=format_number(100 * found.high, 0),
    )
