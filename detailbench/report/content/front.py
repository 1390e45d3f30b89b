"""Page one in plain words: which car, who, when, hoped for, found, done, remains, measured, accepted."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.body.outlines import style_name
from detailbench.findings.adopted_now import no_longer_seen, other_means
from detailbench.findings.kit_names import step_name
from detailbench.findings.mildest import mildest_sentence
from detailbench.findings.parties import bearer_for, owner_of
from detailbench.findings.processes import process_of, steps_of
from detailbench.findings.settings import setting
from detailbench.record.things import FinishGroup
from detailbench.report.content.accepting import acceptance_of, not_as_agreed
from detailbench.report.content.blocks import Fact, Facts, Front
from detailbench.report.content.came_off import change_sentence
from detailbench.report.content.figures import count, day, moment_with_offset, of_thing, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.marking import kinds_in_words, remaining_marks
from detailbench.report.content.missing import missing_facts, standing_facts
from detailbench.report.content.order import plate_text, vin_text
from detailbench.report.content.own_faults import own_fault_facts, set_aside_facts
from detailbench.report.content.parties import odometer_text, short_name, who_comes
from detailbench.report.content.parts import Text, Typed, clipped, joined, plain, said
from detailbench.report.content.readings import apart_read, modes_line, readings_printed
from detailbench.report.content.since import since_last_facts
from detailbench.report.content.taken_in import taken_in_facts
from detailbench.report.content.thickness_maps import odd_line, range_of_means
from detailbench.report.content.wording import (
    counted,
    ended,
    group_name,
    marks_counted,
    opening,
    panels_counted,
    panels_listed,
    person_words,
    places_counted,
    readings_counted,
)
from detailbench.report.content.work_done import minutes_spent, not_finished, work_plan_view

MOST_LETTERS = 200
MOST_NAME = 60
MOST_LINES = 3


def front(g: Gathered, kind: str) -> Front:
    """The front page."""
    view, legend = work_plan_view(g)
    car = g.picture.car
    described = clipped(car.described, MOST_NAME)[0] or opening(style_name(car.style))
    return Front(
        kind=kind,
        car=described,
        under=under_the_car(g),
        rows=Facts(tuple(_rows(g))),
        style=car.style,
        length_mm=car.length_mm,
        plan=view,
        plan_legend=legend,
    )


def under_the_car(g: Gathered) -> tuple[Text, ...]:
    """What stands beneath the car's name: style, colour, year; plate, VIN; odometer."""
    return tuple(t for t in _under(g) if t)


def _under(g: Gathered) -> tuple[Text, ...]:
    car = g.picture.car
    first = joined(
        [
            style_name(car.style) if car.described else "",
            _short(car.colour),
            said(_("year {year}"), year=of_thing(car, "year", 0)) if car.year is not None else (),
        ],
        ", ",
    )
    return opening(first), opening(joined([_cut(plate_text(g)), _cut(vin_text(car))], "; ")), _odometer(g)


def _cut(text: Text) -> Text:
    """The text with its typed words cut to a line."""
    return tuple(q for p in text for q in (_short(p.text) if isinstance(p, Typed) else (p,)))


def _odometer(g: Gathered) -> Text:
    return opening(odometer_text(g.picture.visits[-1])) if g.picture.visits else ()


def _short(words: str, most: int = MOST_NAME) -> Text:
    return clipped(words, most)[0]


def _rows(g: Gathered) -> list[Fact]:
    return [
        Fact(_("Who"), (_who(g),)),
        Fact(_("When"), (_when(g),)),
        *standing_facts(g),
        *taken_in_facts(g),
        Fact(_("Hoped for"), (_as_typed(g.picture.job.hoped_level),), "typed"),
        Fact(_("Found"), _found(g)),
        Fact(_("Done"), _done(g)),
        Fact(_("Measured"), _measured(g)),
        *since_last_facts(g),
        Fact(_("Remains"), _remains(g)),
        *own_fault_facts(g),
        *set_aside_facts(g),
        *missing_facts(g),
        Fact(_("Answer"), (_answer(g),)),
        *_references(g),
    ]


def _references(g: Gathered) -> tuple[Fact, ...]:
    """What the small letters behind a figure are, where any stand on the page."""
    words = _("A small W with a number leads to the working of a figure, at the end.")
    return (Fact(_("Figures"), ((words,),)),) if g.refs.all() else ()


def _as_typed(words: str) -> Text:
    text, cut = clipped(words, MOST_LETTERS)
    if not text:
        return (_("Nothing was typed about what was hoped for."),)
    return joined([text, _("(in full under The order)")]) if cut else text


def _who(g: Gathered) -> Text:
    owner = owner_of(g.picture)
    parts: list[Text] = [said(_("Owner: {name}"), name=short_name(g, owner)) if owner else (_("Owner not noted"),)]
    bearers = [who_comes(g, e) for e in ("brings", "fetches") if bearer_for(g.picture, e) is not None]
    parts += [b for b in bearers if b]
    people = dict.fromkeys(
        m.entered_by
        for m in (
            *g.picture.wash_steps,
            *g.picture.state_notes,
            *g.picture.marks,
            *g.picture.readings,
            *g.picture.gloss_readings,
            *g.picture.runs,
        )
    )
    if people:
        names = [_short(str(setting(g.picture.shop, "shop_name")))]
        names += [_cut(person_words(g.picture.shop, p)) for p in list(people)[:4]]
        parts.append(said(_("workshop: {names}"), names=joined(names, ", ")))
    return ended(joined(parts, "; "))


def _when(g: Gathered) -> Text:
    visit = g.picture.visits[-1] if g.picture.visits else None
    parts: list[Text] = []
    if visit is not None:
        parts.append(said(_("Arrived {at}"), at=moment_with_offset(visit.arrived_at, recorded(visit, "arrived_at"))))
    runs = g.picture.runs
    if runs:
        first, last = (
            day(runs[0].started_at, recorded(runs[0], "started_at")),
            day(runs[-1].started_at, recorded(runs[-1], "started_at")),
        )
        both = said(_("worked on {first}"), first=first)
        if last.shown != first.shown:
            both = said(_("worked on from {first} to {last}"), first=first, last=last)
        parts.append(both)
    if visit is not None and visit.left_at is not None:
        parts.append(said(_("left {at}"), at=moment_with_offset(visit.left_at, recorded(visit, "left_at"))))
    else:
        parts.append((_("not fetched yet when this was printed"),))
    return ended(joined(parts, "; "))


def _found(g: Gathered) -> tuple[Text, ...]:
    out: list[Text] = []
    if g.marks:
        out.append(
            said(
                _("{marks} on {panels}: {kinds}."),
                marks=marks_counted([m.mark.id for m in g.marks]),
                panels=panels_counted(sorted({m.mark.panel for m in g.marks})),
                kinds=kinds_in_words(g),
            )
        )
    else:
        out.append((_("No marks were entered."),))
    if g.picture.damages:
        out.append(
            counted(
                [d.id for d in g.picture.damages],
                _("{n} entry of damage already there on arrival."),
                _("{n} entries of damage already there on arrival."),
            )
        )
    out += _found_thickness(g)
    return tuple(out)


def _found_thickness(g: Gathered) -> list[Text]:
    if not g.picture.readings:
        return [(_("Paint thickness was not measured."),)]
    out: list[Text] = []
    span = range_of_means(g)
    panels = [k for k in g.measured if g.before[k].figures is not None]
    if span and len(panels) > 1:
        out.append(
            said(
                _("Total paint thickness on {panels}: panel means from {span}."),
                panels=panels_counted(panels),
                span=span,
            )
        )
    elif span:
        out.append(
            said(_("Total paint thickness on the {panel}: mean {span}."), panel=panel_name(panels[0]), span=span[0])
        )
    else:
        out.append((_("No panel was measured before the work."),))
    out += modes_line(g)
    if g.odd is not None:
        standing_out = [f for f in g.odd.findings if f.verdict in ("differs", "no value", "look again")]
        out += [odd_line(g, g.odd, f) for f in standing_out[:MOST_LINES]]
        more = standing_out[MOST_LINES:]
        if more:
            out.append(
                said(_("{n} further panels stand out; see Thickness."), n=panels_counted([f.key for f in more])[0])
            )
        if any(f.two_groups for f in g.odd.families):
            out.append((_("The panels fall into two groups by thickness; see Thickness."),))
    return out


def _done(g: Gathered) -> tuple[Text, ...]:
    out: list[Text] = []
    if not g.worked:
        out.append((_("No panel was polished."),))
    else:
        spent = minutes_spent(g, g.picture.runs)  # every go, the paused ones too; none where one is not known
        minutes: Text = said(_(", {minutes} at the machine"), minutes=spent) if spent is not None else ()
        out.append(said(_("Polished: {panels}{minutes}."), panels=panels_counted(g.worked), minutes=minutes))
        out += [t for t in (_process(g, group) for group in g.picture.groups) if t][:MOST_LINES]
    held = [k for k, _why in g.standing.plan.held]
    if held:
        names = panels_listed(held) if len(held) <= MOST_LINES else panels_counted(held)
        out.append(said(_("Held back, reasons under Work: {panels}."), panels=names))
    for p in g.picture.protections[:2]:
        kinds = {"coating": _("Coating"), "sealant": _("Sealant"), "wax": _("Wax")}
        out.append(
            said(
                _("{kind} put on {panels}: {product}."),
                kind=kinds[p.kind],
                panels=panels_counted(p.panels),
                product=_short(p.product),
            )
        )
    return tuple(out)


def _process(g: Gathered, group: FinishGroup) -> Text:
    process = process_of(g.picture, group.id)
    if process is None or not set(group.panels) & set(g.worked):
        return ()
    steps = steps_of(g.picture, process)
    names = joined([_short(step_name(g.picture.shop, s), 80) for s in steps], _(", then "))
    text = said("{group}: {names}", group=_short_group(group), names=names)
    if no_longer_seen(g.picture, process):
        return ended(said(_("{text}; its test sections no longer speak for it, see Test sections"), text=text))
    if any(other_means(g.picture.shop, s.combination_id, s.means) for s in steps):
        return ended(said(_("{text}; it was not tried by the means it was done with, see Test sections"), text=text))
    polishing = [s for s in steps if s.means != "sanding"]
    why = None
    if polishing and process.trial_ids:
        why = mildest_sentence(g.picture, group, polishing[0].combination_id, cut=len(polishing) > 1)
    return ended(said(_("{text}; the first step was {why} on its test sections"), text=text, why=why) if why else text)


def _short_group(group: FinishGroup) -> Text:
    name = group_name(group)
    return clipped(plain(name), MOST_NAME)[0] if len(plain(name)) > MOST_NAME else name


def _measured(g: Gathered) -> tuple[Text, ...]:
    if not g.picture.readings:
        return ((_("No readings were taken."),),)
    places = [p.place.id for k in g.measured for s in (g.before[k], g.after[k]) for p in s.places if p.readings]
    places += apart_read(g)
    out: list[Text] = [
        said(
            _("{readings} at {places} on {panels}, all printed here."),
            readings=readings_counted(readings_printed(g)),
            places=places_counted(list(dict.fromkeys(places))),
            panels=panels_counted(g.measured),
        )
    ]
    if not g.changes:
        after = _("Not measured after the work, so nothing is said about what came off.")
        out.append((after if g.begun else _("No panel was polished, so nothing was measured a second time."),))
        return tuple(out)
    shown = [k for k in g.order if k in g.changes and g.changes[k].change is not None and g.changes[k].for_print]
    for key in shown[:MOST_LINES]:
        out.append(
            ended(said("{panel}: {change}", panel=opening(panel_name(key)), change=change_sentence(g, g.changes[key])))
        )
    if len(shown) > MOST_LINES:
        out.append(
            said(
                _("The other {panels} with a printed change: see Readings."), panels=panels_counted(shown[MOST_LINES:])
            )
        )
    none = [k for k in g.order if k in g.changes and k not in shown]
    if none:
        out.append(said(_("No change is printed for {panels}; the reasons stand there."), panels=panels_counted(none)))
    return tuple(out)


def _remains(g: Gathered) -> tuple[Text, ...]:
    out: list[Text] = []
    seen = [m for m in remaining_marks(g) if m.after is not None]
    unseen = [m for m in remaining_marks(g) if m.after is None]
    zero = [m for m in g.marks if m.after is not None and m.after.severity == 0]
    gone, unlike = [m for m in zero if m.like], [m for m in zero if not m.like]
    if gone:
        text = _("{marks} no longer seen under the same lamp.")
        out.append(said(text, marks=marks_counted([m.mark.id for m in gone])))
    if unlike:
        out.append(
            counted(
                [m.mark.id for m in unlike],
                _("{n} mark not seen again after the work, but not comparable: see Marks."),
                _("{n} marks not seen again after the work, but not comparable: see Marks."),
            )
        )
    if seen:
        less = [m.mark.id for m in seen if m.like and m.after is not None and m.after.severity < m.mark.severity]
        text = _("{marks} still seen after the work, {less} of them less than before under the same lamp.")
        if not less:
            text = _("{marks} still seen after the work.")
        out.append(said(text, marks=marks_counted([m.mark.id for m in seen]), less=count(less)))
    if unseen:
        text = _("{marks} not looked at again after the work.") if g.begun else _("{marks} as found.")
        out.append(said(text, marks=marks_counted([m.mark.id for m in unseen])))
    open_ = not_finished(g)
    if open_:
        names = panels_listed(open_) if len(open_) <= MOST_LINES else panels_counted(open_)
        out.append(said(_("In the plan and not polished: {panels}."), panels=names))
    if g.picture.job.will_remain:
        text_, cut = clipped(g.picture.job.will_remain, MOST_LETTERS)
        more = _(" (in full under The order)") if cut else ""
        out.append(said(_("Agreed in words to remain: {words}{more}"), words=text_, more=more))
    return tuple(out) or ((_("Nothing is recorded about what remains."),),)


def _answer(g: Gathered) -> Text:
    found = acceptance_of(g)
    if found is None:
        return (_("Not accepted yet: no answer of the owner was entered."),)
    words = {
        "accepted": _("Accepted by the owner"),
        "with_remarks": _("Accepted by the owner with remarks, printed on the last page"),
        "not_accepted": _("Not accepted by the owner; see the last page"),
    }
    answer = said(
        "{answer}, {at}.",
        answer=words[found.answer],
        at=moment_with_offset(found.entered_at, recorded(found, "entered_at")),
    )
    return joined([answer, not_as_agreed(g, found)])
