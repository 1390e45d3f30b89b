"""The work: panel × step with minutes, what was held back and why, rules set aside, protection."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_thickness
from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.body.names import panel_name
from detailbench.findings.permissions import shop_totals
from detailbench.findings.plan import run_minutes
from detailbench.findings.processes import is_finished, panel_steps
from detailbench.record.things import Override, ProcessStep, Protection, StepRun
from detailbench.report.content.adopted import step_label
from detailbench.report.content.blocks import (
    Block,
    Column,
    Fact,
    Facts,
    Fill,
    Grid,
    Heading,
    Legend,
    Para,
    PlanView,
    Rows,
)
from detailbench.report.content.figures import clock, day, moment, number, of_thing, recorded, thickness, worked
from detailbench.report.content.first_done import first_panel_blocks
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.layered import room_figures
from detailbench.report.content.parts import Figure, Recorded, Text, joined, plain, said, traced, typed
from detailbench.report.content.wording import (
    ended,
    group_name,
    initials,
    opening,
    panels_counted,
    panels_listed,
    person_words,
)
from detailbench.work.climate import dew_point

RULES = {
    "held": "held back by a person",
    "thickness": "thickness or paint system",
    "gauge_check": "gauge check failed",
    "owner_limit": "owner's limit",
    "no_process": "no process adopted",
    "not_seen_to_work": "not seen to work on this paint",
    "supplement": "supplement not answered",
    "ended": "the job had ended, or the car was not noted as here",
    "first_panel": "first panel not as foreseen",
    "low_reading": "reading below “leave below” taken out",
    "no_longer_seen": "process last seen not to work on this paint",
    "not_confirmed": "process not confirmed on a second panel",
    "odd_not_tried": "nothing tried on a panel unlike the rest",
    "material_not_tried": "nothing tried on this material",
    "sanding_not_read": "not read beside the sanding",
    "cure": "refinish under its stated cure time",
    "cure_unknown": "refinish whose cure is not known",
    "colour_on_pad": "another trial with a combination that took colour",
    "rubbed_less": "rubbed less than it was seen to need",
    "hot_before": "rubbed as hard as when it was stopped for heat",
    "other_means": "by hand what was tried by machine, or the other way round",
    "stopped_here": "combination stopped for heat or colour on this paint",
}


def work_blocks(g: Gathered) -> tuple[Block, ...]:
    """The whole section."""
    out: list[Block] = []
    if g.picture.runs:
        out += [Para(_total(g)), _runs(g)]
    else:
        out.append(Para((_("No machine work is recorded in this job."),)))
    out += _left(g)
    out += first_panel_blocks(g)
    held = held_texts(g)
    if held:
        out += [Heading((_("Held back"),)), *(Para(t) for t in held)]
    out += _overrides(g)
    return tuple(out)


def minutes_spent(g: Gathered, runs: Sequence[StepRun]) -> Figure | None:
    """Minutes of these goes together, traced to them; None while one of them is not known."""
    known = [run_minutes(r, g.now) for r in runs]
    if not runs or any(m is None for m in known):
        return None
    total = sum(m for m in known if m is not None)
    return number(total, Recorded("step_run", tuple(r.id for r in runs), "minutes spent"), 0, _("min"))


def _known(g: Gathered) -> list[StepRun]:
    return [r for r in g.picture.runs if run_minutes(r, g.now) is not None]


def _total(g: Gathered) -> Text:
    known = _known(g)
    spent = minutes_spent(g, known)
    text = said(
        _("{panels} finished, {minutes} at the machine."),
        panels=panels_counted(g.worked),
        minutes=spent if spent is not None else _("time not known"),
    )
    extra: list[Text] = []
    if len(known) < len(g.picture.runs):
        extra.append((_("One or more goes were left running; their time is not known and not in the sum."),))
    plan = g.standing.plan
    if plan.steps:
        ref = g.refs.of(named(g, plan.working))
        extra.append(
            said(
                _("Planned from the shop's own times: {minutes} ({low} to {high} by what the areas leave open)."),
                minutes=number(plan.minutes, worked(ref, "minutes"), 0, _("min")),
                low=number(plan.minutes_low, worked(ref, "minutes_low"), 0),
                high=number(plan.minutes_high, worked(ref, "minutes_high"), 0),
            )
        )
    return joined([text, *extra])


def named(g: Gathered, working: Working) -> Working:
    """The working with finish groups and steps by name instead of by the record's ids: the same calculation."""
    names = {group.id: plain(group_name(group)) for group in g.picture.groups}
    names |= {s.id: _("step {n} of process {m}").format(n=s.number, m=_process_number(g, s)) for s in g.picture.steps}

    def told(value: Any) -> Any:
        if isinstance(value, str):
            return names.get(value, value)
        if isinstance(value, Mapping):
            return {told(k): told(v) for k, v in value.items()}
        return [told(v) for v in value] if isinstance(value, list | tuple) else value

    return replace(working, inputs=told(working.inputs), results=told(working.results))


def _process_number(g: Gathered, step: ProcessStep) -> int:
    return 1 + [p.id for p in g.picture.processes].index(step.process_id)


def _runs(g: Gathered) -> Grid:
    groups = []
    for key in g.order:
        mine = [r for r in g.picture.runs if r.panel == key]
        rows = []
        for step_id in dict.fromkeys(r.step_id for r in mine):
            goes = [r for r in mine if r.step_id == step_id]
            rows.append(_run_row(g, step_id, goes))
        if rows:
            groups.append((key, rows))
    flat = [(opening(panel_name(key)) if i == 0 else (), *row) for key, rows in groups for i, row in enumerate(rows)]
    return Grid(
        (
            Column(_("Panel"), 0.19),
            Column(_("Step"), 0.37),
            Column(_("Time"), 0.10, right=True),
            Column(_("When"), 0.22),
            Column(_("State"), 0.07),
            Column(_("By"), 0.05),
        ),
        (Rows((), tuple(flat)),),
    )


def _run_row(g: Gathered, step_id: str, goes: list[StepRun]) -> tuple[Text, ...]:
    spent = minutes_spent(g, goes)
    first, last = goes[0], goes[-1]
    when: Text = said(
        "{day}, {time}",
        day=day(first.started_at, recorded(first, "started_at")),
        time=clock(first.started_at, recorded(first, "started_at")),
    )
    if last.finished_at is not None:
        trace = recorded(last, "finished_at")
        same = last.finished_at.date() == first.started_at.date()
        when = (
            said("{when}–{end}", when=when, end=clock(last.finished_at, trace))
            if same
            else said(_("{when} to {end}"), when=when, end=moment(last.finished_at, trace))
        )
    words = {
        "finished": _("done"), "paused": _("paused"), "left_running": _("left running"), "": _("running"),
    }  # fmt: skip
    state = _("done") if any(r.ended == "finished" for r in goes) else words[last.ended]
    return (
        step_label(g, step_id),
        (spent,) if spent is not None else (_("not known"),),
        when,
        (state,),
        joined([initials(g.picture.shop, p) for p in dict.fromkeys(r.entered_by for r in goes)], ", "),
    )


def not_finished(g: Gathered) -> tuple[str, ...]:
    """Panels with a planned step that was not finished."""
    planned = dict.fromkeys(s.panel for s in g.standing.plan.steps)
    return tuple(k for k in planned if not all(is_finished(g.picture, k, s.id) for s in panel_steps(g.picture, k)))


def _left(g: Gathered) -> list[Block]:
    out: list[Block] = []
    open_ = not_finished(g)
    if open_:
        left = g.standing.left
        ref = g.refs.of(named(g, left.working))
        out.append(
            Para(
                said(
                    _("Planned and not finished: {panels}; about {minutes} by the plan."),
                    panels=panels_listed(open_),
                    minutes=number(left.minutes_left, worked(ref, "minutes_left"), 0, _("min")),
                )
            )
        )
    without = g.standing.plan.without_process
    if without and (g.picture.runs or g.picture.processes):
        out.append(Para(said(_("No process adopted, not polished: {panels}."), panels=panels_listed(without))))
    return out


def held_texts(g: Gathered) -> tuple[Text, ...]:
    """Every panel held back, with its reasons; figures traced."""
    out = []
    for key in g.order:
        texts = [
            said(_("held by {who}: {reason}"), who=initials(g.picture.shop, h.entered_by), reason=typed(h.reason))
            for h in g.picture.holds
            if h.panel == key and not h.lifted
        ]
        texts += [
            traced(r.sentence, _ruling_figures(g, key, r.sentence))
            for r in g.permissions[key].reasons
            if r.ruling == "held back"
        ]
        if texts and key not in {r.panel for r in g.picture.runs}:
            out.append(ended(said("{panel}: {why}", panel=opening(panel_name(key)), why=joined(texts, "; "))))
    return tuple(out)


def _ruling_figures(g: Gathered, key: str, sentence: str) -> list[Figure]:
    room = g.permissions[key].room
    if room is not None and sentence == " ".join(room.sentences[1:]):
        return room_figures(g, room)
    low = _low_figures(g, key)
    return [*low[:1], *_taken_and_planned(g, key, sentence), *low[1:]]


def _taken_and_planned(g: Gathered, key: str, sentence: str) -> list[Figure]:
    """What was measured off and what the steps still take, where a sentence names it, by the ruling's working."""
    working = g.permissions[key].working
    values = {n: working.inputs[n] for n in ("removed_um", "planned_um", "most_um")}
    numbers = {n: float(v) for n, v in values.items() if isinstance(v, int | float)}
    planned, most = numbers.get("planned_um", 0.0), numbers.get("most_um")
    taken = numbers.get("removed_um", 0.0) + planned
    out = []
    for um, at, digits in ((taken, "taken_and_planned_um", 1), (planned, "planned_um", 1), (most, "most_um", 1)):
        shown = "" if um is None else format_thickness(um, digits=digits)
        if shown and um and shown in sentence:
            out.append(thickness(um, worked(g.refs.of(working), at), digits))
    return out


def _low_figures(g: Gathered, key: str) -> list[Figure]:
    """The figures a ruling's sentence may hold: the lowest place, then the shop's own total."""
    seen = g.before[key].figures
    if seen is None:
        return []
    ref = g.refs.of(seen.working)
    low_at = "min_um"
    if seen.lowest_um < seen.min_um:
        extra = seen.working.inputs["extra_places_um"]
        values = list(extra) if isinstance(extra, list) else []
        low_at = f"extra_places_um/{values.index(seen.lowest_um)}" if seen.lowest_um in values else low_at
    out = [thickness(seen.lowest_um, worked(ref, low_at), 1)]
    totals = shop_totals(g.picture)
    for field, total in (("leave_below_um", totals.leave_below_um), ("careful_below_um", totals.careful_below_um)):
        if total is not None:
            out.append(Figure(format_thickness(total), total, Recorded("setting", (field,), "value")))
    return out


def _overrides(g: Gathered) -> list[Block]:
    if not g.picture.overrides:
        return [Para((_("No rule was set aside."),), "note")] if g.picture.runs else []
    rows = [_override(g, o) for o in g.picture.overrides]
    return [
        Heading((_("Rules set aside by a person"),)),
        Grid(
            (
                Column(_("Panel"), 0.18),
                Column(_("Rule"), 0.22),
                Column(_("Reason as typed"), 0.30),
                Column(_("By, when"), 0.30),
            ),
            (Rows((), tuple(rows)),),
        ),
    ]


def _override(g: Gathered, override: Override) -> tuple[Text, ...]:
    return (
        opening(panel_name(override.panel)),
        (_(RULES.get(override.rule, override.rule)),),
        typed(override.reason),
        said(
            "{who}, {when}",
            who=person_words(g.picture.shop, override.entered_by),
            when=moment(override.entered_at, recorded(override, "entered_at")),
        ),
    )


def work_plan_view(g: Gathered) -> tuple[PlanView, Legend]:
    """The small plan view of page one: what was polished, what was held back."""
    held = {k for k, _why in g.standing.plan.held}
    fills = {}
    for key in g.order:
        if key in g.worked:
            fills[key] = Fill(0.42)
        elif key in held:
            fills[key] = Fill(None, "falling")
        else:
            fills[key] = Fill()
    legend = Legend(hatches=(("falling", _("held back")),) if held else ())
    return PlanView(((_("Panels polished are filled.") if g.worked else _("No panel was polished.")),), fills), legend


def protection_blocks(g: Gathered) -> tuple[Block, ...]:
    """What was put on, with the climate and how far the surface was above the dew point."""
    if not g.picture.protections:
        return (Para((_("No coating, sealant or wax was recorded."),)),)
    rows = tuple(Fact(_kind(p), _protection(g, p)) for p in g.picture.protections)
    return (Facts(rows), Para((_("The product's own data sheet comes first."),), "note"))


def _kind(protection: Protection) -> str:
    return {"coating": _("Coating"), "sealant": _("Sealant"), "wax": _("Wax")}[protection.kind]


def _protection(g: Gathered, p: Protection) -> tuple[Text, ...]:
    what = joined(
        [
            typed(p.product),
            said(_("batch {batch}"), batch=typed(p.batch)) if p.batch else (_("batch not noted"),),
            moment(p.entered_at, recorded(p, "entered_at")),
            said(_("by {who}"), who=initials(g.picture.shop, p.entered_by)),
        ],
        "; ",
    )
    on = said(_("On: {panels}."), panels=panels_listed(k for k in g.order if k in p.panels))
    cure: Text = ()
    if p.cure_h is not None:
        cure = said(_("Cure time stated: {h}."), h=of_thing(p, "cure_h", None, "h"))
    return tuple(t for t in (ended(what), on, _climate(g, p), cure) if t)


def _climate(g: Gathered, p: Protection) -> Text:
    words = (
        ("air_c", _("air {v}"), "°C"),
        ("humidity_percent", _("humidity {v}"), "%"),
        ("surface_c", _("surface {v}"), "°C"),
    )
    known = [said(w, v=of_thing(p, f, None, u)) for f, w, u in words if getattr(p, f) is not None]
    if not known:
        return (_("Climate not recorded."),)
    first = ended(said(_("Climate: {known}"), known=joined(known, ", ")))
    if p.air_c is None or p.humidity_percent is None:
        return (*first, " ", _("The dew point cannot be given."))
    try:
        found = dew_point(air_c=p.air_c, humidity_percent=p.humidity_percent, surface_c=p.surface_c)
    except BadInput as error:
        return (*first, " ", str(error))
    ref = g.refs.of(found.working)
    dew = number(found.dew_point_c, worked(ref, "dew_point_c"), 1, "°C")
    if found.margin_c is None:
        return joined([first, said(_("Dew point {dew}."), dew=dew)])
    margin = number(found.margin_c, worked(ref, "margin_c"), 1, "°C")
    text = _("Dew point {dew}; the surface was {margin} above it.")
    if found.margin_c < 0:
        text = _("Dew point {dew}; the surface was below it ({margin}).")
    elif found.warns:
        text = _("Dew point {dew}; the surface was only {margin} above it: little margin.")
    return joined([first, said(text, dew=dew, margin=margin)])
