"""What came with the car and what went back, folded from what was entered, and where the car stands now."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from detailbench.record.picture import JobPicture
from detailbench.record.things import Custody

EMPTY: Mapping[str, object] = {
    "energy": "",
    "energy_percent": None,
    "keys_count": None,
    "keys_at": "",
    "warning_lamps": "",
    "valuables": "",
    "stands_at": "",
}


@dataclass(frozen=True)
class CustodyNow:
    """Fields as in ``Custody``; one nobody filled is empty or None. ``entry_of``: which entry each filled one is
    from, by its id."""

    energy: str = ""
    energy_percent: float | None = None
    keys_count: int | None = None
    keys_at: str = ""
    warning_lamps: str = ""
    valuables: str = ""
    stands_at: str = ""
    entry_of: Mapping[str, str] = field(default_factory=dict)

    @property
    def filled(self) -> bool:
        return bool(self.entry_of)


def is_filled(name: str, value: object) -> bool:
    """Whether a custody field says something: 0 keys and 0 % do."""
    return value != EMPTY[name]


def custody_of(picture: JobPicture, moment: str) -> CustodyNow:
    """Custody coming ``in`` or going ``out``: of each field the newest that was filled counts."""
    values: dict[str, object] = {}
    entries: dict[str, str] = {}
    for entry in picture.custody:
        if entry.moment != moment:
            continue
        for name in EMPTY:
            value = getattr(entry, name)
            if is_filled(name, value):
                values[name], entries[name] = value, entry.id
    return CustodyNow(**values, entry_of=entries)  # type: ignore[arg-type]  # names and kinds are those of Custody


def holding(picture: JobPicture, moment: str, name: str) -> tuple[Custody, ...]:
    """The entries of a moment in which this field is filled."""
    return tuple(c for c in picture.custody if c.moment == moment and is_filled(name, getattr(c, name)))


def stands_now(picture: JobPicture) -> str:
    """Where the car stands by the newest word: moved there, or noted with its custody; empty where nobody said."""
    said = [(m.seq, m.to_place) for m in picture.car_moves if m.to_place]
    said += [(c.seq, c.stands_at) for c in picture.custody if c.stands_at]
    return max(said)[1] if said else ""
