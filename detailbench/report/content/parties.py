"""Who owns the car, who brings and fetches it and on whose word, and how it came and went."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.findings.parties import authority_of, bearer_for
from detailbench.record.things import Party, Visit
from detailbench.report.content.blocks import Fact
from detailbench.report.content.figures import day, moment_with_offset, of_thing, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, clipped, joined, said, typed

FIELDS = ("address", "telephone", "mail")
MOST_NAME = 60


def party_facts(g: Gathered) -> list[Fact]:
    """The owner and every bearer in full, as typed."""
    out = [Fact(_role(p), _party(g, p), "typed") for p in g.picture.parties if _party(g, p)]
    if not any(p.role == "owner" for p in g.picture.parties):
        out.insert(0, Fact(_("Owner"), ((_("not noted"),),)))
    return out


def _role(party: Party) -> str:
    if party.role == "owner":
        return _("Owner")
    words = {"brings": _("Brought by"), "fetches": _("Fetched by"), "both": _("Brought, fetched by")}
    return words.get(party.errand, _("Bearer"))


def _party(g: Gathered, party: Party) -> tuple[Text, ...]:
    picture = g.picture
    name = typed(picture.said(party.id, "name")) or deleted(g)
    if party.kind == "company" and picture.said(party.id, "name"):
        name = said(_("{name} (a company)"), name=name)
    contact = typed(picture.said(party.id, "contact"))
    fields = [name, said(_("spoken for by {name}"), name=contact) if contact else ()]
    fields += [typed(picture.said(party.id, f)) for f in FIELDS]
    authority = authority_of(g.picture, party)
    if authority and not gone(g, party):
        fields.append(said(_("on the authority of {authority}"), authority=typed(authority)))
    return tuple(f for f in fields if f)


def short_name(g: Gathered, party: Party) -> Text:
    """A name cut to a line; a dash of words where there is none."""
    return clipped(g.picture.said(party.id, "name"), MOST_NAME)[0] or deleted(g) or (_("name not noted"),)


def gone(g: Gathered, party: Party) -> bool:
    """Whether a name was deleted with the owner's data."""
    return not g.picture.said(party.id, "name") and bool(deleted(g))


def deleted(g: Gathered) -> Text:
    """What stands where a name was deleted with the owner's data; nothing in a job nobody asked to forget."""
    found = next((f for f in reversed(g.picture.shop.forgettings) if f.job_id == g.picture.job.id), None)
    if found is None:
        return ()
    return said(_("(name deleted on {day})"), day=day(found.entered_at, recorded(found, "entered_at")))


def who_comes(g: Gathered, errand: str) -> Text:
    """ "brought by the daughter of the owner …": who brings or fetches the car, with the authority;
    nothing where nobody was noted."""
    bearer = bearer_for(g.picture, errand)
    words = {"brings": _("brought by {name}"), "fetches": _("fetched by {name}")}[errand]
    if bearer is None:
        return ()
    text = said(words, name=short_name(g, bearer))
    if gone(g, bearer):
        return text  # on whose word they came may name somebody
    authority = authority_of(g.picture, bearer)
    if not authority:
        return said(_("{text}, on an authority that was not noted"), text=text)
    return said(_("{text}, {authority}"), text=text, authority=clipped(authority, 100)[0])


def visit_facts(g: Gathered) -> list[Fact]:
    """Every stay of the car."""
    many = len(g.picture.visits) > 1
    out = []
    for i, visit in enumerate(g.picture.visits, 1):
        label = _("Visit {n}").format(n=i) if many else _("Visit")
        out.append(Fact(label, (visit_text(visit),)))
    return out


def visit_text(visit: Visit) -> Text:
    """When it came and left, odometer, light."""
    arrived = said(_("arrived {at}"), at=moment_with_offset(visit.arrived_at, recorded(visit, "arrived_at")))
    left: Text = (_("not fetched yet"),)
    if visit.left_at is not None:
        left = said(_("left {at}"), at=moment_with_offset(visit.left_at, recorded(visit, "left_at")))
    light = said(_("light on arrival: {light}"), light=typed(visit.light)) if visit.light else ()
    return joined([arrived, left, odometer_text(visit), light], "; ")


def odometer_text(visit: Visit) -> Text:
    """ "odometer 41 200 km in, 41 203 km out" """
    parts = [
        said(words, n=of_thing(visit, field, 0, visit.odometer_unit))
        for field, words in (("odometer_in", _("odometer {n} in")), ("odometer_out", _("{n} out")))
        if getattr(visit, field) is not None
    ]
    return joined(parts, ", ") or (_("odometer not noted"),)
