"""What came off a panel, in words: with its interval, not to be told from zero, or why no figure is printed."""

from __future__ import annotations

import math

from detailbench.basics.texts import _
from detailbench.findings.changes import PanelChange
from detailbench.record.picture import one
from detailbench.report.content.figures import bare_thickness, number, of_thing, recorded, thickness, worked
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Figure, Text, joined, said, text_of, traced


def change_texts(g: Gathered, found: PanelChange) -> list[Text]:
    """What came off: with interval, or not distinguishable, or why there is no figure. Only what may be printed."""
    out: list[Text] = []
    if found.change is not None and found.for_print:
        out.append(said(_("Change: {change}."), change=_no_stop(change_sentence(g, found))))
    elif found.change is not None:
        out.append(said(_("Change: no figure is printed: {why}."), why=", ".join(_why_not_printed(found))))
    elif found.why_none:
        out.append(said(_("Change: no figure. {why}"), why=traced(found.why_none, _temperatures(g, found.key))))
    else:
        out.append((_("Change: no place was measured both before and after."),))
    reasons: dict[tuple[str, ...], list[str]] = {}
    for other in found.pairing.not_comparable:
        reasons.setdefault(other.reasons, []).append(other.place)
    for why, places in reasons.items():
        numbers = joined(
            [text_of(of_thing(one(g.picture.places, p), "number", 0)) for p in places],
            ", ",
        )
        sentence = traced(", ".join(why), _temperatures(g, found.key))
        template = (
            _("Place {n}: not comparable: {why}.") if len(places) == 1 else _("Places {n}: not comparable: {why}.")
        )
        out.append(said(template, n=numbers, why=sentence))
    return out


def change_sentence(g: Gathered, found: PanelChange) -> Text:
    """ "removed 2.1 µm (0.9 to 3.3, 95 %)", every figure traced."""
    change = found.change
    if change is None:
        return ()
    ref = g.refs.of(change.working)
    if change.outcome == "not distinguishable" and change.high_um is not None:
        most = math.ceil(10 * change.high_um) / 10
        shown = thickness(most, worked(ref, "less_than_um"), 1).shown
        return traced(change.sentence, [Figure(shown, change.high_um, worked(ref, "less_than_um"))])
    if change.outcome == "thicker":
        return traced(change.sentence, [thickness(-change.estimate_um, worked(ref, "estimate_um", times=-1), 1)])
    if change.low_um is None or change.high_um is None:
        return traced(change.sentence, [])
    confidence = float(str(change.working.inputs["confidence"]))
    return traced(
        change.sentence,
        [
            thickness(change.estimate_um, worked(ref, "estimate_um"), 1),
            bare_thickness(change.low_um, worked(ref, "low_um"), 1),
            bare_thickness(change.high_um, worked(ref, "high_um"), 1),
            number(100 * confidence, worked(ref, "confidence", times=100), 0),
        ],
    )


def _no_stop(text: Text) -> Text:
    last = text[-1] if text else ""
    return (*text[:-1], last[:-1]) if isinstance(last, str) and last.endswith(".") else text


def _why_not_printed(found: PanelChange) -> list[str]:
    pairs = found.pairing.pairs
    out = []
    if any(not p.temperature_known for p in pairs):
        out.append(_("the temperature was not recorded on both sides"))
    if any(not p.confirmed for p in pairs):
        out.append(_("some readings are not confirmed by a gauge check"))
    return out


def _temperatures(g: Gathered, key: str) -> list[Figure]:
    out = []
    for seen in (g.before[key], g.after[key]):
        readings = [r for p in seen.places for r in p.readings]
        if readings:
            session = one(g.picture.sessions, readings[-1].session_id)
            if session.temperature_c is not None:
                out.append(number(session.temperature_c, recorded(session, "temperature_c")))
    return out
