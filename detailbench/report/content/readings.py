"""Readings, panel by panel: every place with its readings, the panel's figures, and the change."""

from __future__ import annotations

from datetime import datetime

from detailbench.basics.numbers import format_least_thickness
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.gauges import ULTRASONIC, gauge_of, is_gloss_meter
from detailbench.findings.measuring_mode import enough, mode_of, place_counts
from detailbench.findings.panels import READABLE, Moment, PanelSeen, PlaceSeen
from detailbench.findings.places_shown import places_in_mean
from detailbench.findings.reference_places import references
from detailbench.record.things import PlaceDecision, Reading
from detailbench.report.content.blocks import Block, Column, Grid, PanelSheet, Para, PlaceDot, Rows
from detailbench.report.content.came_off import change_texts
from detailbench.report.content.figures import (
    bare_thickness,
    clock,
    count,
    day,
    number,
    of_thing,
    recorded,
    thickness,
    thickness_unit,
    worked,
)
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.gauge_checks import session_letter
from detailbench.report.content.layered import clear_texts
from detailbench.report.content.marking import point_of
from detailbench.report.content.moved import moved_words
from detailbench.report.content.parts import Figure, Text, joined, said, traced, typed
from detailbench.report.content.put_right import struck_readings
from detailbench.report.content.thickness_maps import odd_sentence, place_position
from detailbench.report.content.wording import (
    counted,
    initials,
    opening,
    panels_counted,
    panels_listed,
    places_counted,
    readings_counted,
    short_place,
    state_words,
)

FLAGS = {
    "double": "double?",
    "implausible": "outside the shop's usual range",
    "unit": "unit in doubt",
    "zero": "zero",
}
NO_VALUE = {"over_range": "over range", "no_metal": "no metal", "nothing": "nothing shown"}


def readings_blocks(g: Gathered) -> tuple[Block, ...]:
    """How many readings there are and where none were taken, then a sheet for each panel."""
    if not g.picture.readings:
        return (Para((_("No readings were taken in this job."),)),)
    return (Para(_how_many(g)), *_not_measured(g), *_bound_note(g), *(_sheet(g, key) for key in g.measured))


def _bound_note(g: Gathered) -> tuple[Para, ...]:
    """What the lower bound of a sheet says, once for all of them."""
    seen = [g.before[k].figures or g.after[k].figures for k in g.measured]
    first = next((f for f in seen if f is not None and f.lower_bound_um is not None), None)
    if first is None:
        return ()
    ref = g.refs.of(first.working)
    confidence, share = (float(str(first.working.inputs[k])) for k in ("confidence", "share"))
    text = said(
        _(
            "“Thicker than” under a panel's readings says: with confidence of at least {confidence}\u00a0%, at least "
            "{share}\u00a0% of the measured field of this panel (edges and body lines excluded) is thicker than the "
            "figure given. An interval in brackets holds the panel's mean with {confidence}\u00a0% confidence."
        ),
        confidence=number(100 * confidence, worked(ref, "confidence", times=100), 0),
        share=number(100 * share, worked(ref, "share", times=100), 0),
    )
    return (Para(text, "note"),)


def _how_many(g: Gathered) -> Text:
    """n taken, n printed, n set aside."""
    seen = [p for key in g.measured for moment in (g.before[key], g.after[key]) for p in moment.places]
    aside = [f"{p.place.id} {i}" for i, p in enumerate(seen) if p.set_aside]
    kept = {r.id for r in g.picture.readings}
    struck = [i for i in struck_readings(g.past) if i not in kept]
    without = [r.id for r in g.picture.readings if r.value_um is None]
    return joined(
        [
            said(
                _("{taken} taken, {printed} printed; {aside} set aside, each with its reason."),
                taken=readings_counted([r.id for r in g.picture.readings]),
                printed=count(readings_printed(g)),
                aside=places_counted(aside),
            ),
            counted(without, _("{n} of them gave no value."), _("{n} of them gave no value.")) if without else (),
            counted(
                struck,
                _("{n} reading was struck out or taken back; it stays in the journal and is not printed."),
                _("{n} readings were struck out or taken back; they stay in the journal and are not printed."),
            )
            if struck
            else _("A reading struck out again stays in the journal and is not printed."),
            _(
                "A place is given by its distances from two named edges of its panel, in mm, and drawn as a dot; an "
                "open dot is a place a person chose, which does not enter mean and scatter."
            ),
            _("Two values with a stroke are the total and the clear coat in it, by a gauge that resolves layers.")
            if any(r.clear_um is not None for r in g.picture.readings)
            else (),
        ]
    )


def readings_printed(g: Gathered) -> tuple[str, ...]:
    """The ids of the readings that stand in the sheets and among shuts and undersides."""
    seen = [p for key in g.measured for moment in (g.before[key], g.after[key]) for p in moment.places]
    apart = [r.id for reference in references(g.picture) for p in reference.places for r in p.readings]
    return (*(r.id for p in seen for r in (*p.earlier, *p.readings)), *apart)


def apart_read(g: Gathered) -> list[str]:
    """The ids of the places in shuts and on undersides that were read."""
    return [p.place.id for reference in references(g.picture) for p in reference.places if p.readings]


def _decisions(g: Gathered) -> tuple[PlaceDecision, ...]:
    newest = {(d.place_id, d.moment): d for d in g.picture.place_decisions}
    return tuple(newest.values())


def _all(seen: PlaceSeen) -> tuple[Reading, ...]:
    return (*seen.earlier, *seen.readings)


def _not_measured(g: Gathered) -> tuple[Para, ...]:
    missing = [k for k in g.order if k not in g.measured]
    gauges = [gauge_of(g.picture, s) for s in g.picture.sessions]
    thickness = [gauge for gauge in gauges if not is_gloss_meter(gauge)]
    # ultrasound reads through plastic too: where it was in hand, the gauge is no reason
    by_metal = bool(thickness) and all(gauge.principle != ULTRASONIC for gauge in thickness)
    other = [k for k in missing if by_metal and g.outline.panels[k].substrate not in READABLE]
    rest = [k for k in missing if k not in other]
    out = []
    if rest:
        out.append(Para(said(_("Not measured: {panels}."), panels=panels_listed(rest))))
    if other:
        text = _("Not measured, because a gauge for metal cannot read them: {panels}.")
        out.append(Para(said(text, panels=panels_listed(other))))
    if not any(s.taken for s in g.after.values()):
        out.append(Para((_("No readings were taken after the work."),)))
    return tuple(out)


def _sheet(g: Gathered, key: str) -> PanelSheet:
    before, after = g.before[key], g.after[key]
    dots = []
    for seen in before.places:
        at = point_of(g, key, place_position(seen.place))
        taken = _all(seen) or next((_all(p) for p in after.places if p.place.id == seen.place.id), ())
        if at is not None and taken:
            dots.append(PlaceDot(str(seen.place.number), at, seen.place.origin == "chosen"))
    return PanelSheet(
        panel=key,
        style=g.picture.car.style,
        length_mm=g.picture.car.length_mm,
        title=opening(panel_name(key)),
        dots=tuple(dots),
        above=tuple(
            t
            for seen, when in ((before, _("Before")), (after, _("After")))
            for t in (_taken_how(g, seen, when), mode_text(seen))
            if t
        ),
        grid=_places(g, before, after),
        below=_below(g, key),
    )


def _taken_how(g: Gathered, seen: PanelSeen, when: str) -> Text:
    """ "Before: session A, 12 March 2031, 08:30, wiped, bare" """
    readings = [r for p in seen.places for r in p.readings]
    if not readings:
        return ()
    sessions = dict.fromkeys(r.session_id for r in readings)
    states = dict.fromkeys(state_words(r) for r in readings)
    first: datetime = readings[0].entered_at
    text = said(
        _("{when}: session {sessions}, {day}, {time}; {states}; by {who}"),
        when=when,
        sessions=", ".join(session_letter(g, s) for s in sessions),
        day=day(first, recorded(readings[0], "entered_at")),
        time=clock(first, recorded(readings[0], "entered_at")),
        states="; ".join(states),
        who=joined([initials(g.picture.shop, p) for p in dict.fromkeys(r.entered_by for r in readings)], ", "),
    )
    more = [seen.corrected] if seen.corrected else []
    if not seen.confirmed:
        more.append(_("not confirmed by a gauge check"))
    return joined([text, *more], "; ")


def mode_text(seen: PanelSeen) -> Text:
    """Survey or full, with how many readings and places make it so."""
    counts = place_counts(seen)
    if not counts:
        return ()
    least = min(counts.values(), key=len)
    texts = {
        "full": _("Full: {each} or more readings at each of {n} places."),
        "survey": _("Survey: {each} or more readings at each of {n} places."),
        "": _("Less than a survey: places read {n}, a survey takes {fewest}."),
    }
    fewest = [p.place.id for p in seen.places if p.place.origin == "proposed"][: enough(seen)]
    return said(texts[mode_of(seen)], each=count(least), n=count(list(counts)), fewest=count(fewest))


def modes_line(g: Gathered) -> list[Text]:
    """How many panels were measured in full, by a survey or by less, before the work or else after it."""
    by_mode: dict[str, list[str]] = {"full": [], "survey": [], "": []}
    for key in g.measured:
        seen = next((s for s in (g.before[key], g.after[key]) if place_counts(s)), None)
        if seen is not None:
            by_mode[mode_of(seen)].append(key)
    words = {
        "full": _("in full (three readings or more at each place): {panels}"),
        "survey": _("by a survey (one reading or more at five places or more): {panels}"),
        "": _("by less than a survey: {panels}"),
    }
    parts = [said(words[m], panels=panels_counted(keys)) for m, keys in by_mode.items() if keys]
    return [said(_("Measured {how}."), how=joined(parts, "; "))] if parts else []


def _places(g: Gathered, before: PanelSeen, after: PanelSeen) -> Grid:
    later = {p.place.id: p for p in after.places}
    rows = [_place_row(g, p, later[p.place.id]) for p in before.places if _all(p) or _all(later[p.place.id])]
    unit = thickness_unit()
    columns = [
        Column(_("Place"), 0.08, right=True),
        Column(_("Where, mm from edges"), 0.26),
        Column(_("Before, {unit}").format(unit=unit), 0.37),
        Column(_("After, {unit}").format(unit=unit), 0.29),
    ]
    sides = [any(_all(p) for p in seen.places) for seen in (before, after)]
    kept = [0, 1, *([2] if sides[0] else []), *([3] if sides[1] else [])]
    if len(kept) == 3:
        columns[kept[2]] = Column(columns[kept[2]].title, 0.66)
    return Grid(tuple(columns[i] for i in kept), (Rows((), tuple(tuple(row[i] for i in kept) for row in rows)),))


def _place_row(g: Gathered, before: PlaceSeen, after: PlaceSeen) -> tuple[Text, ...]:
    place = before.place
    where = short_place(place, place_position(place))
    origin = {"chosen": _("chosen by a person"), "control": _("control place, not polished")}.get(place.origin, "")
    return (
        (of_thing(place, "number", 0),),
        joined([where, origin, moved_words(g, place.panel, place_position(place))], "; "),
        _values(g, before, "as_found"),
        _values(g, after, "polished"),
    )


def _values(g: Gathered, seen: PlaceSeen, moment: Moment) -> Text:
    """Raw readings, their mean where there are several, flags, and a person's decision."""
    texts: list[Text] = [joined([_reading(r) for r in seen.counted or seen.readings], " · ")]
    other = [r for r in seen.readings if r not in seen.counted]
    for text, left_out in (
        (_("not counted, no good gauge check on both sides: {values}"), [r for r in other if r.id in g.not_confirmed]),
        (_("not counted with the rest, read otherwise: {values}"), [r for r in other if r.id not in g.not_confirmed]),
    ):
        if left_out and seen.counted:
            texts.append(said(text, values=joined([_reading(r) for r in left_out], " · ")))
    if seen.earlier:
        text = (
            _("after an earlier polishing: {values}")
            if moment == "polished"
            else _("read after a trial polished here, not as found: {values}")
        )
        texts.append(said(text, values=joined([_reading(r) for r in seen.earlier], " · ")))
    if seen.figure is not None and len(seen.counted) > 1:
        trace = worked(g.refs.of(seen.figure.working), "value_um")
        word = _("middle") if seen.figure.verdict == "median used" else _("mean")
        texts.append(said("{word} {value}", word=word, value=bare_thickness(seen.figure.value_um, trace, 1)))
    decision = next((d for d in _decisions(g) if d.place_id == seen.place.id and d.moment == moment), None)
    if decision is not None:
        word = _("set aside") if decision.decision == "set_aside" else _("kept")
        if decision.decision == "set_aside" and not seen.set_aside:
            word = _("was set aside, read again since and counted")
        texts.append(
            said(
                _("{word} by {who}: {reason}"),
                word=word,
                who=initials(g.picture.shop, decision.entered_by),
                reason=typed(decision.reason),
            )
        )
    return joined(texts, "; ")


def _reading(reading: Reading) -> Text:
    if reading.value_um is None:
        value: Text = (_(NO_VALUE[reading.no_value]),)
    else:
        value = (bare_thickness(reading.value_um, recorded(reading, "value_um")),)
        if reading.clear_um is not None:
            value = (*value, " / ", bare_thickness(reading.clear_um, recorded(reading, "clear_um")))
    flags = [_(FLAGS.get(f, f)) for f in reading.flags]
    remark = joined([*flags, typed(reading.note)], ", ")
    return (*value, " (", *remark, ")") if remark else value


def _below(g: Gathered, key: str) -> tuple[Text, ...]:
    texts: list[Text] = []
    for seen, when in ((g.before[key], _("Before")), (g.after[key], _("After"))):
        if seen.figures is not None:
            texts.append(figures_line(g, seen, when))
        elif seen.no_value:
            texts.append(said(_("{when}: read, but the gauge gave no value."), when=when))
        texts += [said(_("{when}, {place}"), when=when, place=t) for t in _disagreements(g, seen)]
    texts += clear_texts(g, key)
    finding = next((f for f in g.odd.findings if f.key == key), None) if g.odd is not None else None
    if finding is not None and g.odd is not None:
        texts.append(odd_sentence(g, g.odd, finding))
    if key in g.changes:
        texts += change_texts(g, g.changes[key])
    elif g.before[key].taken and key in g.worked:
        texts.append((_("Not measured after the work: no change is stated."),))
    return tuple(texts)


def figures_line(g: Gathered, seen: PanelSeen, when: str) -> Text:
    """A panel's figures in one line, then how thin the rest may be."""
    found = seen.figures
    if found is None:
        return ()
    ref = g.refs.of(found.working)
    parts: list[Text] = [
        said(
            _("{n}, mean {mean}"),
            n=counted([p.place.id for p in places_in_mean(seen)], _("{n} place"), _("{n} places")),
            mean=thickness(found.mean_um, worked(ref, "mean_um"), 1),
        )
    ]
    if found.interval_um is not None and found.sd_um is not None:
        low, high = found.interval_um
        parts[-1] = said(
            _("{mean} ({low} to {high}), scatter {sd}"),
            mean=parts[-1],
            low=bare_thickness(low, worked(ref, "interval_um/0"), 1),
            high=bare_thickness(high, worked(ref, "interval_um/1"), 1),
            sd=bare_thickness(found.sd_um, worked(ref, "sd_um"), 1),
        )
    parts.append(
        said(
            _("lowest {low}, highest {high}"),
            low=bare_thickness(found.min_um, worked(ref, "min_um")),
            high=bare_thickness(found.max_um, worked(ref, "max_um")),
        )
    )
    bound = _bound(seen, ref)
    return said("{when}: {line}.", when=when, line=joined([*parts, bound], ", "))


def _bound(seen: PanelSeen, ref: str) -> Text:
    found = seen.figures
    if found is None or found.lower_bound_um is None:
        return ()
    if found.lower_bound_um <= 0:
        return (_("the places scatter too much to state how thin the rest may be"),)
    shown = format_least_thickness(found.lower_bound_um)
    return said(_("thicker than {bound}"), bound=Figure(shown, found.lower_bound_um, worked(ref, "lower_bound_um")))


def _disagreements(g: Gathered, seen: PanelSeen) -> list[Text]:
    out = []
    for place in seen.places:
        figure = place.figure
        if figure is None or figure.verdict not in ("one more", "median used"):
            continue
        ref = g.refs.of(figure.working)
        sentence = traced(
            figure.sentence,
            [
                thickness(figure.range_um, worked(ref, "range_um"), 1),
                thickness(figure.limit_um or 0.0, worked(ref, "range_limit_um"), 1),
            ],
        )
        out.append(said(_("place {n}: {sentence}"), n=of_thing(place.place, "number", 0), sentence=sentence))
    return out
