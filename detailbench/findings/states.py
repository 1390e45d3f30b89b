"""The state of each panel, now or at some moment before, folded from what was noted."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from detailbench.record.picture import JobPicture
from detailbench.record.things import StateNote

READY = frozenset({"decontaminated", "wiped"})
CLEANER = ("dirty", "washed", "decontaminated", "wiped")  # each is further than the one before


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
    return _folded(picture.state_notes)


def state_of(picture: JobPicture, panel: str) -> State:
    """The state of one panel now."""
    return states(picture).get(panel, State())


def state_of_all(picture: JobPicture, panels: Sequence[str], seq: int | None = None) -> State:
    """The state of what shows several panels at once: as clean as the least clean of them, polished where all are,
    and covered as all are, else not known. ``seq``: as it was at this place in the order of entry."""
    known = _folded(n for n in picture.state_notes if seq is None or n.seq < seq)
    found = [known.get(panel, State()) for panel in panels] or [State()]
    covers = {s.cover for s in found}
    return State(
        clean=min((s.clean for s in found), key=CLEANER.index),
        work="polished" if all(s.work == "polished" for s in found) else "as_found",
        cover=covers.pop() if len(covers) == 1 else "not_known",
    )


def state_when_entered(picture: JobPicture, panel: str, seq: int) -> State:
    """The state of one panel when the thing with this place in the order of entry was entered."""
    return _folded(n for n in picture.state_notes if n.seq < seq).get(panel, State())


def state_at(picture: JobPicture, panel: str, at: datetime) -> State:
    """The state of one panel at a stated time."""
    return _folded(n for n in picture.state_notes if n.entered_at <= at).get(panel, State())


def _folded(notes: Iterable[StateNote]) -> dict[str, State]:
    out: dict[str, State] = {}
    for note in notes:
        for panel in note.panels:
            was = out.get(panel, State())
            out[panel] = State(note.clean or was.clean, note.work or was.work, note.cover or was.cover)
    return out
