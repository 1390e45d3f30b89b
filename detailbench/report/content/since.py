"""Beside the last time: each panel read again at the places of then, like with like only."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.last_time import last_time
from detailbench.findings.since_last import SinceLast, since_last
from detailbench.report.content.blocks import Block, Column, Fact, Grid, Para, Rows
from detailbench.report.content.figures import (
    bare_thickness,
    day,
    number,
    recorded,
    thickness,
    thickness_change,
    worked,
)
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Figure, Text, joined, said, text_of, traced, typed
from detailbench.report.content.wording import ended, marks_counted, opening, panels_counted


def since_last_blocks(g: Gathered) -> tuple[Block, ...]:
    """What is known of then and now; nothing where the car was not here before."""
    last = g.picture.last
    if last is None:
        return ()
    visit = last.visits[-1] if last.visits else None
    at: Text = ()
    if visit is not None:
        field = "left_at" if visit.left_at is not None else "arrived_at"
        at = said(_(", {day}"), day=day(visit.left_at or visit.arrived_at, recorded(visit, field)))
    intro = said(_("This car was here last under job {number}{at}."), number=typed(last.job.number), at=at)
    found = since_last(g.picture)
    if not found:
        return (Para(intro), Para((_("No place of then was read again, so nothing is set beside it."),)))
    rows = tuple(_row(g, found[key]) for key in g.order if key in found)
    columns = (
        Column(_("Panel"), 0.20), Column(_("Of then: last readings, marks left, protection"), 0.36),
        Column(_("Thickness since then"), 0.44),
    )  # fmt: skip
    note = _("Places of then were read again; a change may have any cause, and what it is cannot be read off a gauge.")
    return (Para(intro), Grid(columns, (Rows((), rows),)), Para((note,), "note"))


def since_last_facts(g: Gathered, most: int = 3) -> list[Fact]:
    """The same for page one: the first panels in words, the rest counted."""
    found = since_last(g.picture)
    if g.picture.last is None or not found:
        return []
    keys = [k for k in g.order if k in found]
    texts = [
        ended(said("{panel}: {words}", panel=opening(panel_name(k)), words=_sentence(g, found[k]))) for k in keys[:most]
    ]
    if keys[most:]:
        texts.append(said(_("The other {panels}: see Beside the last time."), panels=panels_counted(keys[most:])))
    return [Fact(_("Since last time"), tuple(texts))]


def _row(g: Gathered, found: SinceLast) -> tuple[Text, ...]:
    return opening(panel_name(found.key)), _then(g, found.key), _sentence(g, found)


def _then(g: Gathered, key: str) -> Text:
    then = last_time(g.picture, key)
    if then is None:
        return ("–",)
    parts: list[Text] = []
    if then.figures is not None:
        ref = g.refs.of(then.figures.working)
        parts.append(said(_("mean {mean}"), mean=thickness(then.figures.mean_um, worked(ref, "mean_um"), 1)))
    if then.marks:
        parts.append(said(_("{marks} left"), marks=marks_counted([m.mark.id for m in then.marks])))
    parts += [typed(p.product) for p in then.protections]
    return joined(parts, "; ") or ("–",)


def _sentence(g: Gathered, found: SinceLast) -> Text:
    """The finding's sentence with its figures traced; a figure that is not for print is left out and said so."""
    change = None if found.compared is None else found.compared.change
    if change is None:
        return opening(traced(found.sentence, []))
    if not found.for_print:
        return (_("No figure is printed: a temperature or a gauge check is missing on one side."),)
    ref = g.refs.of(change.working)
    figures: list[Figure] = []
    if found.change_um is not None:
        figures.append(thickness_change(found.change_um, worked(ref, "estimate_um", times=-1), 1))
    if found.low_um is not None and found.high_um is not None:
        figures.append(bare_thickness(found.low_um, worked(ref, "high_um", times=-1), 1))
        figures.append(bare_thickness(found.high_um, worked(ref, "low_um", times=-1), 1))
        confidence = float(str(change.working.inputs["confidence"]))
        figures.append(number(100 * confidence, worked(ref, "confidence", times=100), 0))
        if found.low_um <= 0 <= found.high_um:
            return _within(found, ref)
    return opening(traced(found.sentence, figures))


def _within(found: SinceLast, ref: str) -> Text:
    """Not to be told from zero: the interval itself is printed."""
    low, high = found.low_um or 0.0, found.high_um or 0.0
    return said(
        _("Not distinguishable from zero (interval {low} to {high})"),
        low=text_of(thickness_change(low, worked(ref, "high_um", times=-1), 1)),
        high=text_of(thickness_change(high, worked(ref, "low_um", times=-1), 1)),
    )
