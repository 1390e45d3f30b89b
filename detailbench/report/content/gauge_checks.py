"""With what it was measured: gauge, certificate, and every check with its raw values."""

from __future__ import annotations

from datetime import date, datetime

from detailbench.basics.texts import _
from detailbench.findings.gauges import RoundOfChecks, is_gloss_meter, rounds
from detailbench.findings.layers import layer_check_words
from detailbench.record.picture import one
from detailbench.record.things import CheckReading, Gauge, GaugeSession, Shim
from detailbench.report.content.blocks import Block, Column, Fact, Facts, Grid, Para, Rows
from detailbench.report.content.figures import (
    bare_thickness,
    clock,
    day,
    moment_with_offset,
    number,
    of_thing,
    recorded,
    thickness,
    thickness_change,
    thickness_unit,
    worked,
)
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, joined, said, traced, typed
from detailbench.report.content.wording import counted, initials, person_words, readings_counted

PRINCIPLES = {
    "magnetic_induction": "magnetic induction",
    "eddy_current": "eddy current",
    "ultrasonic": "ultrasonic",
    "gloss": "gloss meter",
}


def session_letter(g: Gathered, session_id: str) -> str:
    """The letter a gauge session is printed under: A, B, … in the order they were begun."""
    at = [s.id for s in g.picture.sessions].index(session_id)
    return chr(ord("A") + at) if at < 26 else f"{chr(ord('A') + at // 26 - 1)}{chr(ord('A') + at % 26)}"


def gauge_blocks(g: Gathered) -> tuple[Block, ...]:
    """Gauges, then the checks of each session."""
    if not g.picture.sessions:
        return (Para((_("No gauge was taken in hand in this job."),)),)
    gauges = dict.fromkeys(s.gauge_id for s in g.picture.sessions)
    facts = tuple(Fact(_("Gauge"), (_gauge(one(g.picture.shop.gauges, id_)),)) for id_ in gauges)
    sessions = tuple(
        Fact(_("Session {letter}").format(letter=session_letter(g, s.id)), _session(g, s)) for s in g.picture.sessions
    )
    note = _(
        "Checks are judged on the values as the gauge showed them; a correction never turns a failed check into a "
        "passed one. A reading is confirmed when the checks before and after it both passed."
    )
    layered = (
        [Para((layer_check_words(),), "note")] if any(one(g.picture.shop.gauges, i).layers for i in gauges) else []
    )
    return (Facts((*facts, *sessions, *_corrected(g))), _checks(g), Para((note,), "note"), *layered)


def _corrected(g: Gathered) -> tuple[Fact, ...]:
    """Readings corrected by two points: in which session, by whose decision, and the reason as typed."""
    words = _("Session {letter}: readings count corrected by two points, by decision of {who}: {reason}")
    return tuple(
        Fact(
            _("Correction"),
            (
                said(
                    words,
                    letter=session_letter(g, kept.session_id),
                    who=person_words(g.picture.shop, kept.entered_by),
                    reason=typed(kept.reason),
                ),
            ),
        )
        for kept in g.picture.corrections
    )


def _gauge(gauge: Gauge) -> Text:
    accuracy = said(
        _("accuracy ± ({fixed} + {share} of the reading)"),
        fixed=thickness(gauge.accuracy_fixed_um, recorded(gauge, "accuracy_fixed_um")),
        share=number(gauge.accuracy_share * 100, recorded(gauge, "accuracy_share", 100), None, "%"),
    )
    certificate: Text = (_("no certificate noted"),)
    if gauge.certificate:
        certificate = joined(
            [
                said(_("certificate {number}"), number=typed(gauge.certificate)),
                typed(gauge.laboratory) or (_("laboratory not noted"),),
                _dated(gauge, "certified_on", gauge.certified_on, _("dated {day}")) or (_("date not noted"),),
                _dated(gauge, "due_on", gauge.due_on, _("due {day}")) or (_("due date not noted"),),
            ],
            ", ",
        )
    if is_gloss_meter(gauge):
        return _gloss_meter(gauge, certificate)
    return joined(
        [
            typed(gauge.name),
            said(_("serial {serial}"), serial=typed(gauge.serial)) if gauge.serial else (_("no serial number noted"),),
            _(PRINCIPLES.get(gauge.principle, gauge.principle)),
            _("for {substrates}").format(substrates=", ".join(_(s) for s in gauge.substrates)),
            said(_("last digit {digit}"), digit=thickness(gauge.resolution_um, recorded(gauge, "resolution_um"))),
            accuracy,
            _("resolves layers") if gauge.layers else _("reads the total only"),
            certificate,
        ],
        "; ",
    )


def _gloss_meter(gauge: Gauge, certificate: Text) -> Text:
    angles = ", ".join(f"{a}°" for a in gauge.angles_deg)
    return joined(
        [
            typed(gauge.name),
            said(_("serial {serial}"), serial=typed(gauge.serial)) if gauge.serial else (_("no serial number noted"),),
            _("gloss meter"),
            said(_("measures at {angles}"), angles=angles),
            certificate,
        ],
        "; ",
    )


def _dated(gauge: Gauge, field: str, at: date | None, template: str) -> Text:
    if at is None:
        return ()
    return said(template, day=day(datetime(at.year, at.month, at.day), recorded(gauge, field)))


def _session(g: Gathered, session: GaugeSession) -> tuple[Text, ...]:
    warmth: Text = (_("surface temperature not recorded"),)
    if session.temperature_c is not None:
        warmth = said(_("surface at {t}"), t=of_thing(session, "temperature_c", None, "°C"))
    first = joined(
        [
            typed(one(g.picture.shop.gauges, session.gauge_id).name),
            said(
                _("begun {at}"),
                at=moment_with_offset(session.entered_at, recorded(session, "entered_at")),
            ),
            warmth,
            _values_counted(g, session),
            person_words(g.picture.shop, session.entered_by),
            typed(session.note),
        ],
        "; ",
    )
    return (first,)


def _values_counted(g: Gathered, session: GaugeSession) -> Text:
    gloss = [r.id for r in g.picture.gloss_readings if r.session_id == session.id]
    if is_gloss_meter(one(g.picture.shop.gauges, session.gauge_id)):
        return counted(gloss, _("{n} gloss value"), _("{n} gloss values"))
    return readings_counted([r.id for r in g.picture.readings if r.session_id == session.id])


def _checks(g: Gathered) -> Grid:
    unit = thickness_unit()
    groups = []
    for session in g.picture.sessions:
        letter = session_letter(g, session.id)
        rows = [row for found in rounds(g.picture, session) for row in _round_rows(g, found)]
        if not rows and is_gloss_meter(one(g.picture.shop.gauges, session.gauge_id)):
            words = _("A gloss meter's own tile is not read here: its values are as the meter showed them.")
            rows = [((_("no check"),), (), (), (words,), ())]
        if not rows:
            rows = [((_("no check"),), (), (), (_("No check readings in this session: nothing is confirmed."),), ())]
        groups.append(Rows((_("Checks of session {letter}").format(letter=letter),), tuple(rows)))
    return Grid(
        (
            Column(_("Time"), 0.08),
            Column(_("On"), 0.24),
            Column(_("Raw values, {unit}").format(unit=unit), 0.30),
            Column(_("Outcome"), 0.32),
            Column(_("By"), 0.06),
        ),
        tuple(groups),
    )


def _round_rows(g: Gathered, found: RoundOfChecks) -> list[tuple[Text, ...]]:
    raw = [c for c in g.picture.check_readings if c.session_id == found.session.id and c.round_no == found.round_no]
    shims = list(dict.fromkeys(c.shim_id for c in raw))
    out: list[tuple[Text, ...]] = []
    for shim_id in sorted(shims, key=lambda i: one(g.picture.shop.shims, i).value_um):
        shim = one(g.picture.shop.shims, shim_id)
        values = [c for c in raw if c.shim_id == shim_id]
        out.append(
            (
                (clock(values[0].entered_at, recorded(values[0], "entered_at")),),
                _shim(shim),
                joined([_value(c) for c in values], " · "),
                _outcome(g, found, shim),
                initials(g.picture.shop, values[0].entered_by),
            )
        )
    return out


def _value(check: CheckReading) -> Text:
    return (bare_thickness(check.value_um, recorded(check, "value_um")),)


def _shim(shim: Shim) -> Text:
    named = _(shim.substrate).lower() in shim.label.lower()
    certificate: Text = (_("no certificate noted"),)
    words = _("stated value {value} ± {accuracy}")
    if shim.certificate:
        certificate = said(_("certificate {number}"), number=typed(shim.certificate))
        words = _("certificate value {value} ± {accuracy}")
    value = said(
        words,
        value=thickness(shim.value_um, recorded(shim, "value_um")),
        accuracy=thickness(shim.accuracy_um, recorded(shim, "accuracy_um")),
    )
    parts: list[Text] = [typed(shim.label), () if named else (_(shim.substrate),)]
    if shim.value_um:
        parts += [value, certificate]
    elif shim.certificate:
        parts.append(certificate)
    return joined(parts, ", ")


def _outcome(g: Gathered, found: RoundOfChecks, shim: Shim) -> Text:
    if found.check is None:
        return _incomplete(g, found) if shim.value_um > 0 or found.shim is None else ()
    check, ref = found.check, g.refs.of(found.check.working)
    if shim.value_um == 0:
        return traced(
            check.sentences[0],
            [
                thickness_change(check.zero_mean_um, worked(ref, "zero_mean_um"), 2),
                thickness(check.zero_limit_um, worked(ref, "zero_limit_um"), 2),
            ],
        )
    if found.shim is None or shim.id != found.shim.id:
        return ()
    return traced(
        check.sentences[1],
        [
            thickness(shim.value_um, recorded(shim, "value_um")),
            thickness_change(check.shim_error_um, worked(ref, "shim_error_um"), 2),
            thickness(check.shim_limit_um, worked(ref, "shim_limit_um"), 2),
        ],
    )


def _incomplete(g: Gathered, found: RoundOfChecks) -> Text:
    raw = [c for c in g.picture.check_readings if c.session_id == found.session.id and c.round_no == found.round_no]
    zero = [c.id for c in raw if one(g.picture.shop.shims, c.shim_id).value_um == 0]
    return said(
        _("Not a whole check: {zero} on the zero plate, {foil} on a foil; five on each are needed."),
        zero=readings_counted(zero),
        foil=readings_counted([c.id for c in raw if c.id not in zero]),
    )


def checks_failed(g: Gathered) -> tuple[RoundOfChecks, ...]:
    """Every complete round that failed."""
    return tuple(
        r for s in g.picture.sessions for r in rounds(g.picture, s) if r.check is not None and not r.check.passed
    )
