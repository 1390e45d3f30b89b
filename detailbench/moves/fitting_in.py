"""Whether a thing from elsewhere holds what moves write: the words of the trade, measures that can be."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import cache

from detailbench.basics.errors import BadFile
from detailbench.basics.texts import _
from detailbench.basics.workings import is_finite
from detailbench.marks.catalogue import kinds
from detailbench.record.evidence import IS_A_DIGEST
from detailbench.record.thing import Thing
from detailbench.record.things import Evidence, Gauge, GlossReading, Job, Reading
from detailbench.record.words_kept import words_of
from detailbench.thickness.gloss import ANGLES
from detailbench.thickness.sent_text import MOST_GU, clear_unfit

ABOVE_ZERO = ("section_m2", "panel_w_mm", "panel_h_mm", "diameter_mm", "length_mm", "resolution_um")
NOT_BELOW = ("_um", "_mm", "_s", "_m2", "_cm2", "_n", "minutes", "passes", "number", "severity", "depth", "rung")
MAY_BE_BELOW = ("value_um", "end_a_mm", "end_b_mm", "edge_a_mm", "edge_b_mm")
WITHIN: Mapping[tuple[str, str], tuple[int, int]] = {
    ("custody", "energy_percent"): (0, 100),
    ("custody", "keys_count"): (0, 99),
    ("agreement", "price"): (0, 10_000_000),
    ("other_work", "price"): (0, 10_000_000),
    ("protection", "humidity_percent"): (0, 100),
    ("evidence", "size"): (0, 2**53 - 1),
    ("document", "pages"): (1, 100_000),
    ("gloss_reading", "value_gu"): (0, int(MOST_GU)),
}
IS_A_NUMBER = re.compile(r"[0-9A-Za-z-]{1,40}")  # of a job: it is part of the names of files


@cache
def _mark_kinds() -> frozenset[str]:
    return frozenset(kind.key for kind in kinds())


def fits(thing: Thing, complain: Callable[[str, str, object], BadFile]) -> None:
    """Raise what ``complain(sentence, where, value)`` makes of the first field that holds what no move writes there."""
    for name, known in words_of(type(thing)).items():
        value = getattr(thing, name)
        if value not in known:
            raise complain(
                _("it must be one of: {words}.").format(words=", ".join(sorted(w for w in known if w))),
                f"{thing.table} {thing.id}.{name}",
                value,
            )
    for name, value in vars(thing).items():
        low, high = WITHIN.get((thing.table, name), (None, 0))
        if low is not None and value is not None and not low <= value <= high:
            raise complain(
                _("it must be from {low} to {high}.").format(low=low, high=high),
                f"{thing.table} {thing.id}.{name}",
                value,
            )
        if isinstance(value, bool) or not is_finite(value):
            continue
        if name in ABOVE_ZERO and value <= 0:
            raise complain(_("it must be above zero."), f"{thing.table} {thing.id}.{name}", value)
        if name.endswith(NOT_BELOW) and name not in MAY_BE_BELOW and value < 0:
            raise complain(_("That cannot be below zero."), f"{thing.table} {thing.id}.{name}", value)
    if isinstance(thing, Job) and not IS_A_NUMBER.fullmatch(thing.number):
        raise complain(_("a job's number is letters, digits and dashes."), f"job {thing.id}.number", thing.number)
    if isinstance(thing, Evidence) and not IS_A_DIGEST.fullmatch(thing.sha256):
        raise complain(_("that is no hash of a file."), f"evidence {thing.id}.sha256", thing.sha256)
    if isinstance(thing, Reading) and (unfit := clear_unfit(thing.value_um, thing.clear_um)):
        raise complain(unfit, f"reading {thing.id}.clear_um", thing.clear_um)
    if isinstance(thing, GlossReading) and thing.angle_deg not in ANGLES:
        raise complain(_("Gloss is read at 20°, 60° or 85°."), f"gloss_reading {thing.id}.angle_deg", thing.angle_deg)
    if isinstance(thing, Gauge) and any(a not in ANGLES for a in thing.angles_deg):
        raise complain(_("Gloss is read at 20°, 60° or 85°."), f"gauge {thing.id}.angles_deg", list(thing.angles_deg))
    if thing.table == "mark" and getattr(thing, "kind", "") not in _mark_kinds():
        raise complain(_("there is no such kind of mark."), f"mark {thing.id}.kind", getattr(thing, "kind", ""))
