"""Which panels are meant at the end of a job: the polished ones, the one in hand, or the whole car."""

from __future__ import annotations

from detailbench.findings.panels import outline_of
from detailbench.findings.walking import panels_in_order
from detailbench.record.picture import JobPicture


def polished(picture: JobPicture) -> tuple[str, ...]:
    """The panels a step was finished on, in walking order."""
    done = {r.panel for r in picture.runs if r.ended == "finished"}
    return tuple(key for key in panels_in_order(picture) if key in done)


def panels_meant(picture: JobPicture, choice: str, in_hand: str) -> tuple[str, ...]:
    """``choice``: polished, panel (the one in hand, none while there is none) or anything else for the whole car."""
    if choice == "panel":
        return (in_hand,) if in_hand else ()
    return polished(picture) if choice == "polished" else tuple(outline_of(picture).panels)
