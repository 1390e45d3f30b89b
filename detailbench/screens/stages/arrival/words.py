"""What the arrival's pages call things."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.record.things import Damage, StatedRepair


def part_words(part: str) -> str:
    """Where damage is, on a button."""
    return {
        "panel": _("panel"),
        "wheel": _("wheel"),
        "glass": _("glass"),
        "lamp": _("lamp"),
        "trim": _("trim"),
        "inside": _("inside"),
        "other": _("elsewhere"),
    }[part]


def said_by_words(said_by: str) -> str:
    return {"owner": _("owner"), "bearer": _("bearer"), "papers": _("papers")}[said_by]


def damage_words(damage: Damage) -> str:
    """ "wheel, rear right: kerb mark" """
    first = panel_name(damage.panel) if damage.panel else part_words(damage.part or "other")
    front = f"{first}, {damage.where}" if damage.where else first
    return f"{front}: {damage.words}"


def repair_words(repair: StatedRepair) -> str:
    """ "right front wing, as the bearer states: painted" """
    where = panel_name(repair.panel) if repair.panel else _("whole car")
    stated = {
        "owner": _("{where}, as the owner states: {words}"),
        "bearer": _("{where}, as the bearer states: {words}"),
        "papers": _("{where}, as papers state: {words}"),
    }
    return stated[repair.said_by].format(where=where, words=repair.words)


def due_title(key: str) -> str:
    """What the arrival still asks for, named."""
    return {
        "owner": _("owner's name"),
        "car": _("car, in words"),
        "vin": _("VIN, or why there is none"),
        "odometer": _("odometer on arrival"),
        "hoped_level": _("hoped-for level"),
        "record": _("arrival record closed and sent off"),
    }[key]


def shows_words(shows: str) -> str:
    """What a photograph shows that is no paint."""
    return {
        "vin_plate": _("VIN plate"),
        "plate": _("plate"),
        "odometer": _("odometer"),
        "clock": _("clock"),
        "whole_car": _("whole car"),
        "test_section": _("test section"),
    }[shows]
