"""The words a field may hold, for what comes from elsewhere: moves write no others."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import fields
from functools import cache

from detailbench.basics.errors import BadFile
from detailbench.basics.texts import _
from detailbench.basics.workings import is_finite
from detailbench.marks.catalogue import kinds
from detailbench.moves.surface import CLEAN, COVER, PAINT_SYSTEMS, WORK
from detailbench.record.thing import SeenThing, Thing
from detailbench.record.things import JobTurn
from detailbench.trials.movement import Movement

SEEN = {"clean": CLEAN, "work": WORK, "cover": COVER}
WAYS = ("drawn", "telephone", "message", "declined", "absent")
WORDS: Mapping[str, Mapping[str, tuple[str, ...]]] = {
    "job": {"kind": ("correction", "inspection")},
    "car": {"lightness": ("dark", "mid", "light")},
    "visit": {"odometer_unit": ("km", "mi")},
    "party": {"role": ("owner", "bearer"), "kind": ("person", "company")},
    "finish_group": {"paint_system": PAINT_SYSTEMS},
    "state_note": {name: ("", *words) for name, words in SEEN.items()},
    "mark": {
        "shape": ("field", "point", "line", "area"),
        "intent": ("target", "reduce", "leave", "clean_first", "refer", "hold"),
    },
    "reading": {"no_value": ("", "over_range", "no_metal", "nothing"), "unit": ("um", "mil")},
    "place": {"origin": ("proposed", "chosen", "control")},
    "place_decision": {"decision": ("set_aside", "kept")},
    "trial": {"spot": ("typical", "worst", "confirming")},
    "trial_outcome": {
        "cleared": ("", "yes", "cant_tell", "no"),
        "finish": ("", "clear", "even_haze", "trails", "pad_marks", "towel_marks", "smear"),
        "stopped": ("", "heat", "colour_on_pad", "edge", "pad"),
    },
    "process_step": {"means": ("machine", "hand")},
    "step_run": {"ended": ("", "finished", "paused", "left_running")},
    "protection": {"kind": ("coating", "sealant", "wax")},
    "document": {"kind": ("arrival", "supplement", "handover")},
    "delivery": {"way": ("mail", "message", "print", "handed")},
    "acceptance": {"answer": ("accepted", "with_remarks", "not_accepted")},
    "signature": {"role": ("owner", "bearer", "workshop"), "way": WAYS},
    "owner_limit": {"kind": ("bar_panel", "most_off", "no_sanding", "no_solvent", "other")},
    "agreement": {
        "answer": ("open", "yes", "yes_with_remark", "no", "withdrawn"),
        "channel": ("", "present", "telephone", "message"),
    },
    "rub_test": {"found": ("colour", "no_colour", "cannot_tell")},
    "second_look": {"found": ("still_clear", "marks_back", "haze", "trails", "smear", "cannot_tell")},
    "custody": {"moment": ("in", "out"), "energy": ("", "fuel", "charge")},
    JobTurn.table: {"turn": ("paused", "resumed", "fetched_early", "stopped_after_trial", "unfinished", "refused")},
    "lamp": {"kind": ("P", "F", "L", "S", "D", "A")},
    "machine": {"movement": tuple(Movement)},
    "pad": {"material": ("foam", "wool", "fibre")},
    "shim": {"substrate": ("steel", "aluminium")},
}
ABOVE_ZERO = ("section_m2", "panel_w_mm", "panel_h_mm", "diameter_mm", "length_mm", "resolution_um")
NOT_BELOW = ("_um", "_mm", "_s", "_m2", "_cm2", "_n", "minutes", "passes", "number", "severity", "depth", "rung")
MAY_BE_BELOW = ("value_um", "end_a_mm", "end_b_mm", "edge_a_mm", "edge_b_mm")


@cache
def _mark_kinds() -> frozenset[str]:
    return frozenset(kind.key for kind in kinds())


def fits(thing: Thing, complain: Callable[[str, str, object], BadFile]) -> None:
    """Raise what ``complain(sentence, where, value)`` makes of the first field that holds what no move writes there."""
    words = dict(WORDS.get(thing.table, {}))
    usual = {f.name: f.default for f in fields(thing)}  # what stands there before anyone says anything
    if isinstance(thing, SeenThing):
        words |= SEEN
    for name, known in words.items():
        value = getattr(thing, name)
        if value not in (*known, usual[name]):
            raise complain(
                _("it must be one of: {words}.").format(words=", ".join(w for w in known if w)),
                f"{thing.table} {thing.id}.{name}",
                value,
            )
    for name, value in vars(thing).items():
        if isinstance(value, bool) or not is_finite(value):
            continue
        if name in ABOVE_ZERO and value <= 0:
            raise complain(_("it must be above zero."), f"{thing.table} {thing.id}.{name}", value)
        if name.endswith(NOT_BELOW) and name not in MAY_BE_BELOW and value < 0:
            raise complain(_("That cannot be below zero."), f"{thing.table} {thing.id}.{name}", value)
    if thing.table == "mark" and getattr(thing, "kind", "") not in _mark_kinds():
        raise complain(_("there is no such kind of mark."), f"mark {thing.id}.kind", getattr(thing, "kind", ""))
