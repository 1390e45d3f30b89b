"""The white-pad rub: what its finding means, and the paint system it proposes. A person sets it, never the program."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.basics.texts import _
from detailbench.basics.workings import COMMON_PRACTICE
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup, RubTest
from detailbench.record.words_kept import choices

FOUND = choices("rub_test", "found")
COLOUR_IN_IT = frozenset({"single_stage", "tinted_clear", "filmed", "wrapped", "bare"})


@dataclass(frozen=True)
class Proposed:
    """A paint system for a finish group, and the rub it rests on."""

    paint_system: str
    rub: RubTest


def found_words() -> dict[str, str]:
    return {
        "colour": _("colour on the pad"),
        "no_colour": _("no colour"),
        "cannot_tell": _("cannot tell"),
    }


def rub_means(found: str) -> str:
    """What a finding says, as far as it goes."""
    return {
        "colour": _(
            "Colour on the pad: no clear coat there, or one that is worn through; colour in the clear coat does the "
            "same ({source})."
        ),
        "no_colour": _("No colour on the pad: speaks for a clear coat at that place, and for no other ({source})."),
        "cannot_tell": _("Not to be told there: rub another hidden place, or go on as on unknown paint ({source})."),
    }[found].format(source=_(COMMON_PRACTICE))


def rubs_of(picture: JobPicture, group: FinishGroup) -> tuple[RubTest, ...]:
    """The rubs on a finish group's panels, in the order of entry."""
    return tuple(r for r in picture.rub_tests if r.panel in group.panels)


def proposed_paint(picture: JobPicture, group: FinishGroup) -> Proposed | None:
    """What the newest rub that told something proposes where it and the noted paint do not go together."""
    told = [r for r in rubs_of(picture, group) if r.found != "cannot_tell"]
    if not told:
        return None
    if told[-1].found == "colour" and group.paint_system not in COLOUR_IN_IT:
        return Proposed("single_stage", told[-1])
    if told[-1].found == "no_colour" and group.paint_system == "unknown":
        return Proposed("clear_over_colour", told[-1])
    return None
