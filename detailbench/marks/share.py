"""How many of the counted marks are gone, and what that count can and cannot say.

Whether a mark kind is *cleared* is a person's judgement against the approved level; a count supports it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from statistics import NormalDist

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working

FEWEST_FOR_A_SHARE = 20
CONFIDENCE = 0.95
SOURCE = Source("Wilson 1927, score interval for a share; from 20 counted marks on (the lower limit is a shop rule)")


@dataclass(frozen=True)
class ShareCleared:
    """Counted marks gone. ``share`` and its interval are None below the fewest marks that make a share."""

    gone: int
    of: int
    share: float | None
    low: float | None
    high: float | None
    says: str
    working: Working


def wilson(gone: int, of: int, confidence: float = CONFIDENCE) -> tuple[float, float]:
    """The Wilson score interval of a share, without continuity correction. ``of`` at least 1."""
    z = NormalDist().inv_cdf(0.5 + confidence / 2)
    p = gone / of
    middle = (p + z * z / (2 * of)) / (1 + z * z / of)
    half = z / (1 + z * z / of) * math.sqrt(p * (1 - p) / of + z * z / (4 * of * of))
    return max(0.0, middle - half), min(1.0, middle + half)


def share_cleared(marks_before: int, marks_left: int, agreed_share: float | None = None) -> ShareCleared:
    """Share of counted marks gone, like lamp and like frame before and after.

    ``agreed_share`` (0…1): what was agreed with the owner, if a share was. Raises BadInput for impossible counts.
    """
    if marks_before < 1:
        raise BadInput(_("At least one mark must have been counted before."), field="marks_before", given=marks_before)
    if marks_left < 0:
        raise BadInput(_("A count cannot be below zero."), field="marks_left", given=marks_left)
    if marks_left > marks_before:
        raise BadInput(
            _("More marks are counted now than before: compare under the same lamp and in the same frame."),
            field="marks_left",
            given=marks_left,
        )
    if agreed_share is not None and not 0 <= agreed_share <= 1:
        raise BadInput(_("The agreed share lies between 0 and 1."), field="agreed_share", given=agreed_share)
    gone = marks_before - marks_left
    enough = marks_before >= FEWEST_FOR_A_SHARE
    share = gone / marks_before if enough else None
    low, high = wilson(gone, marks_before) if enough else (None, None)
    supports = _supports(low, high, agreed_share)
    working = Working(
        name="share_cleared",
        formula="share = (before − left)/before; interval by Wilson's score, 95 %, from 20 marks on",
        inputs={"marks_before": marks_before, "marks_left": marks_left, "agreed_share": agreed_share},
        results={"marks_gone": gone, "share": share, "share_low": low, "share_high": high, "count_says": supports},
        source=SOURCE,
        changes_with=_("more marks counted make the interval narrower"),
        notes=(_("A count supports a person's judgement; it does not make it."),),
    )
    return ShareCleared(gone, marks_before, share, low, high, _sentence(gone, marks_before, supports), working)


def _supports(low: float | None, high: float | None, agreed: float | None) -> str:
    if agreed is None:
        return "no share agreed"
    if low is None or high is None or low <= agreed <= high:
        return "decides nothing"
    return "reached" if low > agreed else "not reached"


def _sentence(gone: int, of: int, supports: str) -> str:
    count = _("{gone} of {of} counted marks gone").format(gone=gone, of=of)
    tail = {
        "no share agreed": "",
        "decides nothing": _("the count decides nothing about the agreed share"),
        "reached": _("the count supports that the agreed share is reached"),
        "not reached": _("the count speaks against the agreed share being reached"),
    }[supports]
    return f"{count}; {tail}." if tail else f"{count}."
