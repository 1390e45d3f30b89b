"""Words for what the record keeps as keys: states, lamps, people, places, roles."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition
from detailbench.body.names import edge_name, panel_name
from detailbench.marks.words import lamp_name as lamp_kind
from detailbench.record.picture import ShopPicture, one
from detailbench.record.thing import SeenThing, Thing
from detailbench.record.things import FinishGroup
from detailbench.report.content.figures import count, number, recorded
from detailbench.report.content.parts import Sayable, Text, joined, plain, said, text_of, typed


def state_words(seen: SeenThing) -> str:
    """ "wiped, bare" """
    clean = {"dirty": _("unwashed"), "washed": _("washed"), "decontaminated": _("decontaminated"), "wiped": _("wiped")}
    cover = {
        "bare": _("bare"),
        "earlier_coating": _("earlier coating"),
        "protected": _("protected"),
        "not_known": _("cover not known"),
    }
    return f"{clean[seen.clean]}, {cover[seen.cover]}"


def lamp_words(shop: ShopPicture, lamp_id: str) -> Text:
    """ "point lamp, warm (3000 K)"; the kind of lamp is added where its name does not say it."""
    if not lamp_id:
        return (_("no lamp noted"),)
    lamp = one(shop.lamps, lamp_id)
    name: Text = typed(_(lamp.name))
    kind = lamp_kind(lamp.kind)
    if kind.split()[0] not in _(lamp.name):
        name = said("{name}, {kind}", name=name, kind=kind)
    if lamp.colour_temperature_k is None:
        return name
    kelvin = number(lamp.colour_temperature_k, recorded(lamp, "colour_temperature_k"), 0, "K")
    return said("{lamp} ({kelvin})", lamp=name, kelvin=kelvin)


def initials(shop: ShopPicture, person_id: str) -> Text:
    """Initials of who entered something, or a dash where nobody was chosen."""
    for person in shop.people:
        if person.id == person_id:
            return typed(person.initials)
    return ("–",)


def person_words(shop: ShopPicture, person_id: str) -> Text:
    """Name, role and initials."""
    for person in shop.people:
        if person.id == person_id:
            role = said(", {role}", role=typed(person.role)) if person.role else ()
            return (*typed(person.name), *role, *said(" ({initials})", initials=typed(person.initials)))
    return (_("not stated"),)


def place_words(thing: Thing, at: EdgePosition) -> Text:
    """ "320 mm from the front edge, 210 mm from the upper edge", each distance traced to ``thing``."""
    return said(
        _("{a} mm from {edge_a}, {b} mm from {edge_b}"),
        a=number(at.a_mm, recorded(thing, "edge_a_mm"), 0),
        edge_a=edge_name(at.edge_a),
        b=number(at.b_mm, recorded(thing, "edge_b_mm"), 0),
        edge_b=edge_name(at.edge_b),
    )


def short_place(thing: Thing, at: EdgePosition) -> Text:
    """ "320 front, 210 upper": the same for a narrow column whose head says what is meant."""
    return said(
        "{a_mm} {a}, {b_mm} {b}",
        a_mm=number(at.a_mm, recorded(thing, "edge_a_mm"), 0),
        a=short_edge(at.edge_a),
        b_mm=number(at.b_mm, recorded(thing, "edge_b_mm"), 0),
        b=short_edge(at.edge_b),
    )


def short_edge(edge: str) -> str:
    """The edge without its article and noun, for a narrow column."""
    words = {
        "front": _("front"), "rear": _("rear"), "upper": _("upper"), "lower": _("lower"), "left": _("left"),
        "right": _("right"),
    }  # fmt: skip
    return words.get(edge, edge)


def group_name(group: FinishGroup) -> Text:
    """A finish group by name; the drawing's own groups in our words."""
    ours = {"body": _("body"), "plastic parts": _("plastic parts")}
    return opening(ours[group.name]) if group.name in ours else typed(group.name)


def listed(texts: Sequence[Sayable]) -> Text:
    """ "bonnet, roof and tailgate" """
    if len(texts) < 2:
        return joined(texts)
    return said(_("{all_but_last} and {last}"), all_but_last=joined(texts[:-1], ", "), last=texts[-1])


def counted(of: Sequence[str], one_: str, many: str) -> Text:
    """How many there are, in the template for one or for many, each with the field ``n``."""
    return said(one_ if len(of) == 1 else many, n=count(of))


def panels_counted(of: Sequence[str]) -> Text:
    """ "12 panels" """
    return counted(of, _("{n} panel"), _("{n} panels"))


def marks_counted(of: Sequence[str]) -> Text:
    """ "31 marks" """
    return counted(of, _("{n} mark"), _("{n} marks"))


def readings_counted(of: Sequence[str]) -> Text:
    """ "96 readings" """
    return counted(of, _("{n} reading"), _("{n} readings"))


def places_counted(of: Sequence[str]) -> Text:
    """ "8 places" """
    return counted(of, _("{n} place"), _("{n} places"))


def panels_listed(keys: Iterable[str]) -> Text:
    """Panels by name."""
    return listed([panel_name(k) for k in keys])


def opening(text: Sayable) -> Text:
    """The text as the beginning of a sentence."""
    parts = text_of(text)
    if parts and isinstance(parts[0], str) and parts[0]:
        return (parts[0][0].upper() + parts[0][1:], *parts[1:])
    return parts


def ended(text: Sayable) -> Text:
    """The text with a full stop, unless it ends in one."""
    parts = text_of(text)
    return parts if plain(parts).rstrip().endswith((".", "!", "?", "…")) else (*parts, ".")
