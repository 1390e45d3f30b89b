"""What came with the car and what went back: fuel or charge, keys, lamps, valuables, where it stood, who moved it."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.findings.custody import CustodyNow, custody_of
from detailbench.record.picture import one
from detailbench.record.things import CarMoved
from detailbench.report.content.blocks import Block, Column, Fact, Facts, Grid, Heading, Para, Rows
from detailbench.report.content.figures import moment, number, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, clipped, joined, said, text_of, typed
from detailbench.report.content.wording import initials, person_words

MOST = 90


def keeping_facts(g: Gathered, at: str) -> tuple[Fact, ...]:
    """Custody coming ``in`` or going ``out``, field by field, and what was not noted."""
    found = custody_of(g.picture, at)
    if not found.filled:
        words = {"in": _("Nothing was noted about fuel, keys, lamps or valuables on arrival.")}
        words["out"] = _("Nothing was noted about fuel, keys, lamps or valuables when the car was given back.")
        return (Fact(_("In our keeping") if at == "in" else _("Given back"), ((words[at],),)),)
    rows = [Fact(label, (text,), "typed" if name in _TYPED else "plain") for label, name, text in _fields(g, found)]
    entries = [one(g.picture.custody, i) for i in dict.fromkeys(found.entry_of.values())]
    by = joined(
        [
            said(
                "{who}, {at}",
                who=initials(g.picture.shop, c.entered_by),
                at=moment(c.stated_at or c.entered_at, recorded(c, "stated_at" if c.stated_at else "entered_at")),
            )
            for c in entries
        ],
        "; ",
    )
    return (*rows, Fact(_("Noted by"), (by,)))


_TYPED = ("keys_at", "warning_lamps", "valuables", "stands_at")


def _fields(g: Gathered, found: CustodyNow) -> list[tuple[str, str, Text]]:
    nothing: Text = (_("not noted"),)
    energy = {"fuel": _("Fuel"), "charge": _("Charge")}.get(found.energy, _("Fuel or charge"))
    return [
        (energy, "energy", _energy(g, found) or nothing),
        (_("Keys"), "keys_count", joined([_keys(g, found), typed(found.keys_at)], "; ") or nothing),
        (_("Warning lamps"), "warning_lamps", typed(found.warning_lamps) or nothing),
        (_("Valuables"), "valuables", typed(found.valuables) or nothing),
        (_("Stands at"), "stands_at", typed(found.stands_at) or nothing),
    ]


def _figure(g: Gathered, found: CustodyNow, name: str, unit: str = "") -> Text:
    value = getattr(found, name)
    if value is None:
        return ()
    entry = one(g.picture.custody, found.entry_of[name])
    return text_of(number(value, recorded(entry, name), None if unit else 0, unit))


def _energy(g: Gathered, found: CustodyNow) -> Text:
    return _figure(g, found, "energy_percent", "%")


def _keys(g: Gathered, found: CustodyNow) -> Text:
    n = _figure(g, found, "keys_count")
    if not n:
        return ()
    return said(_("{n} key") if found.keys_count == 1 else _("{n} keys"), n=n)


def keeping_line(g: Gathered, at: str) -> tuple[Text, ...]:
    """The same in one or two lines, for page one."""
    found = custody_of(g.picture, at)
    if not found.filled:
        return ((_("Fuel or charge, keys and valuables were not noted."),),)
    energy = _energy(g, found)
    words = {"fuel": _("fuel {share}"), "charge": _("charge {share}")}.get(found.energy, _("fuel or charge {share}"))
    first = [said(words, share=energy) if energy else (), _keys(g, found)]
    first.append(said(_("kept at: {where}"), where=clipped(found.keys_at, MOST)[0]) if found.keys_at else ())
    rest = [
        said(words, what=clipped(value, MOST)[0])
        for words, value in (
            (_("warning lamps: {what}"), found.warning_lamps),
            (_("valuables: {what}"), found.valuables),
            (_("stands at: {what}"), found.stands_at),
        )
        if value
    ]
    return (joined([t for t in (*first, *rest) if t], "; "),)


def moves_blocks(g: Gathered) -> tuple[Block, ...]:
    """Who moved the car, from where to where."""
    if not g.picture.car_moves:
        return (Para((_("That the car was moved is not noted."),), "note"),)
    columns = (Column(_("Moved"), 0.24), Column(_("From"), 0.25), Column(_("To"), 0.25), Column(_("By"), 0.26))
    return (Grid(columns, (Rows((), tuple(_move(g, m) for m in g.picture.car_moves)),)),)


def _move(g: Gathered, m: CarMoved) -> tuple[Text, ...]:
    at = moment(m.stated_at or m.entered_at, recorded(m, "stated_at" if m.stated_at else "entered_at"))
    by = person_words(g.picture.shop, m.person_id) if m.person_id else typed(m.words) or (_("not noted"),)
    return (text_of(at), typed(m.from_place) or ("–",), typed(m.to_place) or ("–",), by)


def keeping_blocks(g: Gathered) -> tuple[Block, ...]:
    """In and out and every move of the car."""
    return (
        Heading((_("On arrival"),)),
        Facts(keeping_facts(g, "in")),
        Heading((_("Given back"),)),
        Facts(keeping_facts(g, "out")),
        *moves_blocks(g),
    )
