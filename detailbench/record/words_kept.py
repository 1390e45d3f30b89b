"""The words a field may hold, by table and field: what a move may write there, and nothing else is read or taken in.
They stand here once; moves take theirs from ``choices``. What a field holds before anyone says anything always
counts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import MISSING, fields

from detailbench.record.thing import SeenThing, Thing

SEEN: Mapping[str, tuple[str, ...]] = {
    "clean": ("dirty", "washed", "decontaminated", "wiped"),
    "work": ("as_found", "polished"),
    "cover": ("bare", "earlier_coating", "protected", "not_known"),
}
MOMENTS = ("arrival", "supplement", "handover")
WAYS = ("drawn", "telephone", "message", "declined", "absent")
WORDS: Mapping[str, Mapping[str, tuple[str, ...]]] = {
    "job": {"kind": ("correction", "inspection")},
    "car": {"lightness": ("dark", "mid", "light")},
    "visit": {"odometer_unit": ("km", "mi")},
    "party": {"role": ("owner", "bearer"), "kind": ("person", "company")},
    "finish_group": {
        "paint_system": (
            "clear_over_colour",
            "single_stage",
            "matt",
            "tinted_clear",
            "filmed",
            "wrapped",
            "bare",
            "unknown",
        ),
        "lightness": ("", "dark", "mid", "light"),
        "refinished": ("", "yes", "no"),
        "irreplaceable": ("", "yes", "no"),
    },
    "state_note": {name: ("", *words) for name, words in SEEN.items()},
    "mark": {
        "shape": ("field", "point", "line", "area"),
        "intent": ("target", "reduce", "leave", "clean_first", "refer", "hold"),
    },
    "reading": {"no_value": ("", "over_range", "no_metal", "nothing"), "unit": ("um", "mil")},
    "photo": {
        "moment": ("arrival", "before", "trial", "after", "mishap"),
        "shows": ("", "vin_plate", "plate", "odometer", "clock", "whole_car", "test_section"),
    },
    "place": {"origin": ("proposed", "chosen", "control"), "surface": ("outer", "shut", "underside")},
    "place_decision": {"decision": ("set_aside", "kept")},
    "trial": {
        "spot": ("typical", "worst", "confirming"),
        "pad_condition": ("", "fresh", "cleaned", "loaded"),
        "primed": ("", "yes", "no"),
        "timer": ("", "started", "left_running"),
    },
    "paint_feel": {"feel": ("", "soft", "medium", "hard"), "sticky": ("", "yes", "no")},
    "trial_outcome": {
        "cleared": ("", "yes", "cant_tell", "no"),
        "finish": ("", "clear", "even_haze", "trails", "pad_marks", "towel_marks", "smear"),
        "stopped": ("", "heat", "colour_on_pad", "edge", "pad"),
        "next_result": (
            "",
            "keep",
            "stronger",
            "milder",
            "two_steps",
            "smaller_section",
            "slower_arm",
            "other_pad",
            "other_movement",
            "lower_level",
            "wipe",
            "second_lamp",
            "count",
            "other_towel",
            "clean_pad",
            "cooler",
            "fresh_place",
            "on_hold",
        ),
    },
    "process_step": {"means": ("machine", "hand", "sanding")},
    "step_run": {"ended": ("", "finished", "paused", "left_running")},
    "protection": {"kind": ("coating", "sealant", "wax")},
    "document": {"kind": ("arrival", "supplement", "handover")},
    "delivery": {"way": ("mail", "message", "print", "handed")},
    "acceptance": {"answer": ("accepted", "with_remarks", "not_accepted"), "level_met": ("", "yes", "no")},
    "signature": {"role": ("owner", "bearer", "workshop"), "way": WAYS, "moment": MOMENTS},
    "owner_limit": {"kind": ("bar_panel", "most_off", "no_sanding", "no_solvent", "other")},
    "agreement": {
        "about": ("limit", "supplement", "test_section", "extra_work", "sanding", "level", "mishap", "other"),
        "answer": ("open", "yes", "yes_with_remark", "no", "withdrawn"),
        "channel": ("", "present", "telephone", "message"),
    },
    "rub_test": {"found": ("colour", "no_colour", "cannot_tell")},
    "second_look": {"found": ("still_clear", "marks_back", "haze", "trails", "smear", "cannot_tell")},
    "mishap": {"told": ("", "owner", "bearer"), "channel": ("", "present", "telephone", "message")},
    "wash_step": {
        "kind": ("pre_rinse", "contact_wash", "iron", "tar", "clay", "rinse", "dry", "panel_wipe"),
    },
    "damage": {"part": ("", "panel", "wheel", "glass", "lamp", "trim", "inside", "other")},
    "stated_repair": {"said_by": ("owner", "bearer", "papers")},
    "remark": {"moment": MOMENTS, "role": ("owner", "bearer", "workshop")},
    "custody": {"moment": ("in", "out"), "energy": ("", "fuel", "charge")},
    "job_turn": {"turn": ("paused", "resumed", "fetched_early", "stopped_after_trial", "unfinished", "refused")},
    "lamp": {"kind": ("P", "F", "L", "S", "D", "A")},
    "machine": {"movement": ("free_orbit", "forced", "rotary", "hand")},
    "pad": {"material": ("foam", "wool", "fibre")},
    "towel": {"use": ("wiping", "last_wipe", "drying")},
    "shim": {"substrate": ("steel", "aluminium")},
    "gauge": {"principle": ("magnetic_induction", "eddy_current", "ultrasonic", "gloss")},
}
# those whose meaning is looked up wherever the job is shown: a foreign word there is found when the row is read
LOOKED_UP: Mapping[str, tuple[str, ...]] = {
    "finish_group": ("paint_system", "lightness", "refinished", "irreplaceable"),
    "place": ("surface",),
    "paint_feel": ("feel", "sticky"),
    "trial": ("spot", "pad_condition", "primed", "timer"),
    "trial_outcome": ("cleared", "finish", "stopped", "next_result"),
    "step_run": ("ended",),
    "protection": ("kind",),
    "acceptance": ("answer", "level_met"),
    "signature": ("way",),
}


def choices(table: str, field: str) -> tuple[str, ...]:
    """The words a person may choose from for a field, in order: an empty one is no choice."""
    return tuple(word for word in WORDS[table][field] if word)


def words_of(cls: type[Thing]) -> dict[str, frozenset[str]]:
    """Field → the words it may hold."""
    words = dict(WORDS.get(cls.table, {}))
    if issubclass(cls, SeenThing):
        words |= SEEN
    usual = {f.name: f.default for f in fields(cls) if f.default is not MISSING}
    return {name: frozenset(known) | {str(usual.get(name, known[0]))} for name, known in words.items()}


def looked_up(cls: type[Thing]) -> dict[str, frozenset[str]]:
    """The same, of the fields that are looked up wherever the job is shown."""
    names = {*LOOKED_UP.get(cls.table, ()), *(SEEN if issubclass(cls, SeenThing) else ())}
    return {name: known for name, known in words_of(cls).items() if name in names}
