"""The kinds of things a shop keeps: what is asked of each, and how one is said in a line."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from detailbench.basics.numbers import format_number, format_quantity
from detailbench.basics.texts import _
from detailbench.findings.gauges import GLOSS
from detailbench.marks.words import LAMPS, lamp_name
from detailbench.screens.pages.shop.asked import (
    Asked,
    angles,
    day,
    dials,
    metals,
    needed_number,
    number,
    share,
    show_angles,
    show_day,
    show_dials,
    show_metals,
    show_number,
    show_share,
    show_truth,
    truth,
    whole,
)  # fmt: skip
from detailbench.trials.movement import Movement
from detailbench.trials.sanding_grade import sanding_grade


@dataclass(frozen=True)
class Kind:
    """``table`` in the record, ``field`` of the shop's picture, what it is called, its fields, its line."""

    table: str
    field: str
    many: str
    one: str
    asked: Callable[[], tuple[Asked, ...]]
    line: Callable[[Any], str]
    says: str = ""


def _optional(name: str, title: str) -> Asked:
    return Asked(name, title, number, show_number)


def _needed(name: str, title: str) -> Asked:
    return Asked(name, title, needed_number, show_number)


def kinds() -> tuple[Kind, ...]:
    """Every kind but the range, in the order of the page."""
    return (
        Kind("person", "people", _("People"), _("person"), _person, person_line,
             _("Chosen when something is entered, not proven: there is no password, and documents say so.")),
        Kind("gauge", "gauges", _("Gauges"), _("gauge"), _gauge, gauge_line,
             _("Accuracy as its certificate states it: a fixed part and a share of the reading.")),
        Kind("shim", "shims", _("Zero plates and foils"), _("zero plate or foil"), _shim, shim_line,
             _("A zero plate has the value 0. Where the papers state a tolerance ± a and no standard uncertainty, "
               "a/√3 is usual.")),
        Kind("lamp", "lamps", _("Lamps"), _("lamp"), _lamp, lamp_line),
        Kind("machine", "machines", _("Machines"), _("machine"), _machine, machine_line),
        Kind("pad", "pads", _("Pads"), _("pad"), _pad, pad_line),
        Kind("product", "products", _("Compounds and polishes"), _("compound or polish"), _product, product_line),
        Kind("towel", "towels", _("Towels"), _("towel"), _towel, towel_line),
        Kind("sanding_disc", "discs", _("Sanding discs"), _("sanding disc"), _disc, disc_line,
             _("Sanding is only done where the owner agreed to it; the program never proposes it.")),
    )  # fmt: skip


def _person() -> tuple[Asked, ...]:
    return Asked("name", _("name")), Asked("initials", _("initials")), Asked("role", _("role"))


def person_line(person: Any) -> str:
    return _joined(f"{person.name} ({person.initials})", person.role)


def principles() -> tuple[tuple[str, str], ...]:
    return (
        ("magnetic_induction", _("magnetic induction")),
        ("eddy_current", _("eddy current")),
        ("ultrasonic", _("ultrasonic")),
        ("gloss", _("gloss meter")),
    )


def substrates() -> tuple[tuple[str, str], ...]:
    return (("steel", _("steel")), ("aluminium", _("aluminium")), ("steel+aluminium", _("steel and aluminium")))


def _of_gloss(principle: str) -> bool:
    return principle == GLOSS


def _of_thickness(principle: str) -> bool:
    return principle != GLOSS


def _gauge() -> tuple[Asked, ...]:
    """What it measures by comes first: a gloss meter has angles and no µm, a thickness gauge the other way round."""
    thickness, gloss = ("principle", _of_thickness), ("principle", _of_gloss)
    return (
        Asked("principle", _("principle"), choices=principles(), columns=2),
        Asked("name", _("name")),
        Asked("serial", _("serial number")),
        Asked("angles_deg", _("angles of a gloss meter, °: 20, 60, 85"), angles, show_angles, asked_when=gloss),
        Asked("resolution_um", _("last digit, µm"), needed_number, show_number, asked_when=thickness),
        Asked("accuracy_fixed_um", _("accuracy, fixed ±, µm"), needed_number, show_number, asked_when=thickness),
        Asked("accuracy_share", _("accuracy, ± % of the reading"), share, show_share, asked_when=thickness),
        Asked("certificate", _("certificate")),
        Asked("laboratory", _("laboratory")),
        Asked("certified_on", _("certified on"), day, show_day),
        Asked("due_on", _("due on"), day, show_day),
        Asked("substrates", _("reads on"), metals, show_metals, substrates(), columns=3, asked_when=thickness),
        Asked("layers", _("resolves layers"), truth, show_truth, (("no", _("no")), ("yes", _("yes"))),
              asked_when=thickness),
    )  # fmt: skip


def gauge_line(gauge: Any) -> str:
    accuracy = _("± ({fixed} + {share}\u00a0% of the reading)").format(
        fixed=format_quantity(gauge.accuracy_fixed_um, "µm"), share=show_share(gauge.accuracy_share)
    )
    if gauge.principle == GLOSS:  # it reads no thickness: an accuracy in µm would say something of nothing
        accuracy = "" if not gauge.angles_deg else f"{show_angles(gauge.angles_deg)}°"
    due = _("certificate due {date}").format(date=show_day(gauge.due_on)) if gauge.due_on else ""
    layers = _("resolves layers") if gauge.layers else ""
    return _joined(gauge.name, dict(principles()).get(gauge.principle, gauge.principle), layers, accuracy, due)


def _shim() -> tuple[Asked, ...]:
    return (
        Asked("label", _("name")),
        _needed("value_um", _("certified value, µm")),
        _needed("accuracy_um", _("tolerance ±, µm")),
        _needed("u_um", _("standard uncertainty, µm")),
        Asked("certificate", _("certificate")),
        Asked("substrate", _("on"), choices=substrates()[:2]),
    )


def shim_line(shim: Any) -> str:
    what = _("zero plate") if shim.value_um == 0 else format_quantity(shim.value_um, "µm")
    if what.casefold() == shim.label.strip().casefold():
        what = ""  # its name says it already
    metal = dict(substrates()).get(shim.substrate, shim.substrate)
    return _joined(shim.label, what, metal, f"± {format_quantity(shim.accuracy_um, 'µm')}")


def _lamp() -> tuple[Asked, ...]:
    return (
        Asked("name", _("name")),
        Asked("colour_temperature_k", _("colour temperature, K"), whole, show_number),
        _optional("distance_cm", _("held at, cm from the paint")),
        Asked("kind", _("kind"), choices=tuple((key, lamp_name(key)) for key in LAMPS)),
    )


def lamp_line(lamp: Any) -> str:
    kelvin = "" if lamp.colour_temperature_k is None else f"{lamp.colour_temperature_k} K"
    far = "" if lamp.distance_cm is None else _("at {cm}").format(cm=format_quantity(lamp.distance_cm, "cm"))
    return _joined(_(lamp.name), lamp_name(lamp.kind), kelvin, far)


def movements() -> tuple[tuple[str, str], ...]:
    words = {"free_orbit": _("free orbit"), "forced": _("forced orbit"), "rotary": _("rotary"), "hand": _("by hand")}
    return tuple((str(m), words[str(m)]) for m in Movement)


def _machine() -> tuple[Asked, ...]:
    return (
        Asked("name", _("name")),
        _optional("orbit_mm", _("orbit, mm")),
        _optional("plate_mm", _("plate, mm")),
        Asked("dials", _("dial: orbits or turns a minute"), dials, show_dials),
        _optional("own_rpm", _("plate's own turns a minute")),
        _optional("vibration_m_s2", _("vibration, m/s²")),
        _optional("vibration_k_m_s2", _("its uncertainty K, m/s²")),
        _optional("weight_n", _("weight on the paint, N")),
        _optional("noise_db", _("noise at the ear, dB(A)")),
        Asked("movement", _("movement"), choices=movements()),
    )


def machine_line(machine: Any) -> str:
    orbit = "" if machine.orbit_mm is None else _("orbit {mm}").format(mm=format_quantity(machine.orbit_mm, "mm"))
    plate = "" if machine.plate_mm is None else _("plate {mm}").format(mm=format_quantity(machine.plate_mm, "mm"))
    movement = dict(movements()).get(machine.movement, "")
    name = _(machine.name)
    return _joined(name, "" if movement in name else movement, orbit, plate)


def materials() -> tuple[tuple[str, str], ...]:
    return (("foam", _("foam")), ("wool", _("wool")), ("fibre", _("microfibre")))


def _pad() -> tuple[Asked, ...]:
    return (
        Asked("name", _("name")),
        _needed("diameter_mm", _("diameter, mm")),
        Asked("material", _("material"), choices=materials()),
    )


def pad_line(pad: Any) -> str:
    name, material = _(pad.name), dict(materials()).get(pad.material, "")
    return _joined(name, "" if material in name else material, format_quantity(pad.diameter_mm, "mm"))


def product_kinds() -> tuple[tuple[str, str], ...]:
    return (
        ("cutting", _("cutting")),
        ("medium", _("medium")),
        ("finishing", _("finishing")),
        ("one_step", _("one step")),
    )


def _product() -> tuple[Asked, ...]:
    return (
        Asked("name", _("name")),
        _optional("working_time_s", _("working time, s")),
        Asked("batch", _("batch")),
        Asked("kind", _("kind"), choices=product_kinds()),
    )


def product_line(product: Any) -> str:
    time = "" if product.working_time_s is None else f"{format_number(product.working_time_s)} s"
    batch = _("batch {batch}").format(batch=product.batch) if product.batch else ""
    name, kind = _(product.name), dict(product_kinds()).get(product.kind, "")
    return _joined(name, "" if kind in name else kind, time, batch)


def towel_uses() -> tuple[tuple[str, str], ...]:
    return (("wiping", _("wiping polish off")), ("last_wipe", _("last wipe")), ("drying", _("drying")))


def _towel() -> tuple[Asked, ...]:
    return Asked("name", _("name")), Asked("use", _("for"), choices=towel_uses())


def towel_line(towel: Any) -> str:
    return _joined(_(towel.name), dict(towel_uses()).get(towel.use, ""))


def _grade(text: str) -> str:
    """As the standard writes it, else as typed."""
    return sanding_grade(text).grade


def _disc() -> tuple[Asked, ...]:
    return (
        Asked("name", _("name")),
        Asked("grade", _("grade, like P2000"), _grade),
        _optional("diameter_mm", _("diameter, mm")),
    )


def disc_line(disc: Any) -> str:
    """Name and size, and below it what the standard's table says of its grade."""
    size = "" if disc.diameter_mm is None else format_quantity(disc.diameter_mm, "mm")
    return f"{_joined(disc.name, size)}\n{sanding_grade(disc.grade).sentence}"


def _joined(*parts: str) -> str:
    return " · ".join(part for part in parts if part)
