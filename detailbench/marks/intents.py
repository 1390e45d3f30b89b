"""What is meant to be done about a mark: six intents, what a kind proposes first, and what stands against it.

Source of the rules: common practice, no source. The person decides; these propose or give a sentence.
"""

from __future__ import annotations

from enum import StrEnum

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.marks.catalogue import Kind
from detailbench.marks.severity import DEEPEST

REDUCE_FROM_DEPTH = 2
LEAVE_FROM_DEPTH = 3
CLEANED = frozenset({"decontaminated", "wiped"})


class Intent(StrEnum):
    """The six intents, by key."""

    TARGET = "target"
    REDUCE = "reduce"
    LEAVE = "leave"
    CLEAN_FIRST = "clean_first"
    REFER = "refer"
    HOLD = "hold"

    @property
    def label(self) -> str:
        """The word on the screen and in documents."""
        words = {
            "target": _("target"),
            "reduce": _("reduce"),
            "leave": _("leave"),
            "clean_first": _("clean first"),
            "refer": _("refer"),
            "hold": _("hold"),
        }
        return words[self.value]

    @property
    def says(self) -> str:
        """One sentence on what the intent means."""
        words = {
            "target": _("To be cleared by polishing, to the agreed level."),
            "reduce": _("To be made less visible; a part stays."),
            "leave": _("Stays as it is."),
            "clean_first": _("Cleaned off first, then looked at again."),
            "refer": _("For other work or another trade."),
            "hold": _("No abrasive there."),
        }
        return words[self.value]


def first_intent(kind: Kind, depth: int | None = None) -> Intent | None:
    """What the kind proposes first; None where only the depth (0…5) can tell and none is given.

    Depth 2 proposes *reduce*, 3 and up *leave*, for every kind that polishing would otherwise touch.
    """
    if depth is not None and not 0 <= depth <= DEEPEST:
        raise BadInput(_("Depth is a whole number from 0 to {most}.").format(most=DEEPEST), field="depth", given=depth)
    if kind.first_intent not in ("target", "reduce", "by_depth"):
        return Intent(kind.first_intent)
    if depth is None:
        return None if kind.first_intent == "by_depth" else Intent(kind.first_intent)
    if depth >= LEAVE_FROM_DEPTH:
        return Intent.LEAVE
    if depth >= REDUCE_FROM_DEPTH:
        return Intent.REDUCE
    return Intent.TARGET if kind.first_intent == "by_depth" else Intent(kind.first_intent)


def cannot_be_target(kind: Kind, clean: str) -> str | None:
    """Why a mark of this kind cannot be a target or be reduced now, or None.

    ``clean``: the state's word: dirty, washed, decontaminated, wiped.
    """
    if kind.first_intent == "hold":
        return _("{name}: no abrasive there. It can be left, referred or held.").format(name=kind.name)
    if kind.surface != "paint":
        return _("{name}: not paint, so not a target of polishing here.").format(name=kind.name)
    if kind.first_intent == "clean_first" and clean not in CLEANED:
        return _("{name}: cleaned off first. It can become a target once the panel is decontaminated.").format(
            name=kind.name
        )
    return None


def makes_no_abrasive_zone(kind: Kind, intent: str | None = None) -> bool:
    """True when the map must show a no-abrasive zone there: a hold kind, or any mark whose intent is hold.

    A kind that is held by the catalogue makes a zone whatever intent was chosen.
    """
    return kind.first_intent == "hold" or intent == Intent.HOLD
