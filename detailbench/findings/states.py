"""The state of each panel now, folded from what was noted."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from detailbench.record.picture import JobPicture

READY = frozenset({"decontaminated", "wiped"})


@dataclass(frozen=True)
class State:
    """``clean``: dirty, washed, decontaminated, wiped · ``work``: as_found, polished · ``cover``: bare,
    earlier_coating, protected, not_known."""

    clean: str = "dirty"
    work: str = "as_found"
    cover: str = "not_known"

    @property
    def bare_and_clean(self) -> bool:
        """What is seen or measured now can be compared with what was seen or measured in the same state."""
        return self.clean in READY and self.cover == "bare"

    def as_fields(self) -> dict[str, str]:
        return {"clean": self.clean, "work": self.work, "cover": self.cover}


def states(picture: JobPicture) -> Mapping[str, State]:
    """Panel → state, for every panel anything was noted about; others are as they arrived."""
    out: dict[str, State] = {}
    for note in picture.state_notes:
        for panel in note.panels:
            was = out.get(panel, State())
            out[panel] = State(note.clean or was.clean, note.work or was.work, note.cover or was.cover)
    return out


def state_of(picture: JobPicture, panel: str) -> State:
    """The state of one panel now."""
    return states(picture).get(panel, State())
