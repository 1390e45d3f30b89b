"""The starter kit: machines, pads, compounds, the range made of them, lamps and towels; no makers.

The order of ``range`` is the only strength there is: mild first, a prior and not a law.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import Any

from detailbench.basics import shelf
from detailbench.basics.errors import BadFile
from detailbench.basics.texts import _
from detailbench.trials.movement import Movement
from detailbench.trials.rungs import Range, Rung, RungSeen


@dataclass(frozen=True)
class Machine:
    """``dials``: dial position and its orbits (rotary: turns) per minute; ``own_rpm``: turns of a forced pad."""

    key: str
    name: str
    movement: Movement
    orbit_mm: float | None
    plate_mm: float
    own_rpm: float | None
    weight_n: float
    dials: tuple[tuple[str, float], ...]


@dataclass(frozen=True)
class Pad:
    key: str
    name: str
    material: str
    sizes_mm: tuple[float, ...]


@dataclass(frozen=True)
class Compound:
    """A compound or polish; ``kind``: finishing, medium, cutting, one_step.
    ``oily``: may hide marks until the panel wipe."""

    key: str
    name: str
    kind: str
    working_time_s: float
    oily: bool


@dataclass(frozen=True)
class Lamp:
    """``kind``: letter of the lamp kind; ``colour_k``: colour temperature in kelvin."""

    key: str
    name: str
    kind: str
    colour_k: int


@dataclass(frozen=True)
class Towel:
    """``use``: wiping, last_wipe or drying."""

    key: str
    name: str
    use: str


@dataclass(frozen=True)
class Kit:
    """All of it. ``rungs``: the range, mildest first."""

    machines: tuple[Machine, ...]
    pads: tuple[Pad, ...]
    compounds: tuple[Compound, ...]
    rungs: tuple[Rung, ...]
    lamps: tuple[Lamp, ...]
    towels: tuple[Towel, ...]
    technique: Mapping[str, Any]

    def fresh_range(self) -> Range:
        """The range with nothing seen yet."""
        return tuple(RungSeen(rung) for rung in self.rungs)


def read_kit(data: Mapping[str, Any], name: str = "kit.json") -> Kit:
    """A kit from its data. Raises BadFile naming the part that is wrong."""
    machines = tuple(_machine(row, name) for row in _rows(data, "machines", name))
    pads = tuple(
        Pad(row["key"], row["name"], row["material"], tuple(row["sizes_mm"]))
        for row in _with(_rows(data, "pads", name), ("key", "name", "material", "sizes_mm"), "pads", name)
    )
    compounds = tuple(
        Compound(row["key"], row["name"], row["kind"], row["working_time_s"], row["oily"])
        for row in _with(
            _rows(data, "compounds", name), ("key", "name", "kind", "working_time_s", "oily"), "compounds", name
        )
    )
    lamps = tuple(
        Lamp(row["key"], row["name"], row["kind"], row["colour_k"])
        for row in _with(_rows(data, "lamps", name), ("key", "name", "kind", "colour_k"), "lamps", name)
    )
    towels = tuple(
        Towel(row["key"], row["name"], row["use"])
        for row in _with(_rows(data, "towels", name), ("key", "name", "use"), "towels", name)
    )
    rungs = _range(data, machines, pads, compounds, name)
    for part, things in (
        ("machines", machines),
        ("pads", pads),
        ("compounds", compounds),
        ("range", rungs),
        ("lamps", lamps),
        ("towels", towels),
    ):
        keys = [thing.key for thing in things]
        for key in keys:
            if keys.count(key) > 1:
                raise _bad(name, part, key, _("the key stands twice"))
    return Kit(machines, pads, compounds, rungs, lamps, towels, dict(data.get("technique", {})))


def _range(
    data: Mapping[str, Any],
    machines: tuple[Machine, ...],
    pads: tuple[Pad, ...],
    compounds: tuple[Compound, ...],
    name: str,
) -> tuple[Rung, ...]:
    by = (
        {m.key: m for m in machines},
        {p.key: p for p in pads},
        {c.key: c for c in compounds},
    )
    out = []
    for row in _with(_rows(data, "range", name), ("key", "machine", "pad", "compound"), "range", name):
        for part, known in (("machine", by[0]), ("pad", by[1]), ("compound", by[2])):
            if row[part] not in known:
                raise _bad(name, "range", row[part], _("there is no such {part}").format(part=part))
        machine, pad, compound = by[0][row["machine"]], by[1][row["pad"]], by[2][row["compound"]]
        label = _("{machine}, {pad}, {compound}").format(
            machine=_(machine.name), pad=_(pad.name), compound=_(compound.name)
        )
        out.append(Rung(row["key"], label, machine.key, machine.movement, pad.key, pad.material, compound.key))
    return tuple(out)


def _machine(row: Mapping[str, Any], name: str) -> Machine:
    _with([row], ("key", "name", "movement", "orbit_mm", "plate_mm", "own_rpm", "weight_n", "dials"), "machines", name)
    if row["movement"] not in {m.value for m in Movement}:
        raise _bad(name, "machines", row["movement"], _("there is no such movement"))

    dials = row["dials"]
    if any(low[1] >= high[1] for low, high in pairwise(dials)):
        raise _bad(name, "machines", row["key"], _("the dial must rise from low to high"))
    return Machine(
        row["key"],
        row["name"],
        Movement(row["movement"]),
        row["orbit_mm"],
        row["plate_mm"],
        row["own_rpm"],
        row["weight_n"],
        tuple((position, per_min) for position, per_min in dials),
    )


def _rows(data: Mapping[str, Any], part: str, name: str) -> list[Mapping[str, Any]]:
    rows = data.get(part)
    if not isinstance(rows, list) or not rows or not all(isinstance(r, dict) for r in rows):
        raise _bad(name, part, rows, _("a list of entries is needed"))
    return rows


def _with(rows: list[Mapping[str, Any]], fields: tuple[str, ...], part: str, name: str) -> list[Mapping[str, Any]]:
    for row in rows:
        for field in fields:
            if field not in row:
                raise _bad(name, part, row.get("key"), _("“{field}” is missing").format(field=field))
    return rows


def _bad(name: str, part: str, value: object, why: str) -> BadFile:
    sentence = _("{name}, {part}: {why} ({value}).").format(name=name, part=part, why=why, value=value)
    return BadFile(sentence, name=name, column=part, value=str(value))


@cache
def starter_kit() -> Kit:
    """The kit the program ships, labels in English."""
    return read_kit(shelf.data("kit.json"))
