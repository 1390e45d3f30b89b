"""Two pictures of thickness, panel by panel: the places as found, and what came off. Totals only, never a layer."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.changes import PanelChange
from detailbench.findings.panels import PanelSeen
from detailbench.findings.places_shown import PlaceShown, Standing, places_shown
from detailbench.report.content.blocks import Block, Heading, ValueMark, ValueRow, ValueRows, ValueSign
from detailbench.report.content.came_off import change_sentence
from detailbench.report.content.figures import bare_thickness, number, thickness_unit, worked
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Figure, Text, said
from detailbench.report.content.wording import opening
from detailbench.thickness.panel import Panel

PLACES_ROOM_UM, CHANGE_ROOM_UM = 4.0, 0.5
FAR_UM = 200.0  # filler under one panel would press the others into a line
SIGNS: dict[Standing, ValueSign] = {"in the mean": "dot", "beside the mean": "open", "set aside": "cross"}


def rows_blocks(g: Gathered) -> tuple[Block, ...]:
    """The places of every panel with a value before the work; what came off where a change is printed."""
    out: list[Block] = []
    shown = [k for k in _twins_together(g) if g.before[k].figures is not None]
    if shown:
        out += [Heading((_("Places, panel by panel"),)), _places(g, shown)]
    changed = [k for k in _twins_together(g) if k in g.changes and _is_printed(g.changes[k])]
    if changed:
        out += [Heading((_("What came off"),)), _came_off(g, changed)]
    return tuple(out)


def _twins_together(g: Gathered) -> list[str]:
    """The panels in walking order, each followed by its twin."""
    out: list[str] = []
    for key in g.order:
        twin = g.outline.panels[key].twin
        out += [k for k in (key, twin) if k and k in g.order and k not in out]
    return out


def _joins(g: Gathered, keys: list[str], i: int) -> bool:
    return i > 0 and g.outline.panels[keys[i]].twin == keys[i - 1]


def _places(g: Gathered, keys: list[str]) -> ValueRows:
    rows = tuple(_places_row(g, g.before[k], joins=_joins(g, keys, i)) for i, k in enumerate(keys))
    words: tuple[tuple[ValueSign, str], ...] = (
        ("dot", _("place")),
        ("open", _("place that enters no mean: chosen by a person, or not polished as a control")),
        ("cross", _("place set aside")),
        ("mean", _("mean of the panel's places")),
        ("interval", _("its interval")),
        ("band", _("this car's own paint on panels of the same metal: mean and scatter")),
    )
    unit = thickness_unit()
    return ValueRows(
        rows=rows,
        axis=(_("Total thickness before the work, {unit}").format(unit=unit),),
        head=_head(g, [f for k in keys if (f := g.before[k].figures) is not None]),
        key=_used(words, rows),
        room_um=PLACES_ROOM_UM,
        far_um=FAR_UM,
    )


def _used(words: tuple[tuple[ValueSign, str], ...], rows: tuple[ValueRow, ...]) -> tuple[tuple[ValueSign, str], ...]:
    kinds = {m.kind for row in rows for m in row.marks}
    return tuple(w for w in words if w[0] in kinds)


def _head(g: Gathered, figures: list[Panel]) -> Text:
    unit = thickness_unit()
    first = next((f for f in figures if f.interval_um is not None), None)
    if first is None:
        return (_("mean, {unit}").format(unit=unit),)
    confidence = float(str(first.working.inputs["confidence"]))
    figure = number(100 * confidence, worked(g.refs.of(first.working), "confidence", times=100), 0)
    return said(_("mean ({confidence}\u00a0% interval), {unit}"), confidence=figure, unit=unit)


def _places_row(g: Gathered, seen: PanelSeen, *, joins: bool) -> ValueRow:
    found = seen.figures
    assert found is not None
    ref = g.refs.of(found.working)
    mean = bare_thickness(found.mean_um, worked(ref, "mean_um"), 1)
    marks = [*_band(g, seen.key), *(_place(g, p, ref) for p in places_shown(seen))]
    beside: Text = (mean,)
    if found.interval_um is not None:
        low, high = (bare_thickness(v, worked(ref, f"interval_um/{i}"), 1) for i, v in enumerate(found.interval_um))
        marks.append(ValueMark("interval", (low, high)))
        beside = said(_("{mean} ({low} to {high})"), mean=mean, low=low, high=high)
    marks.append(ValueMark("mean", (mean,)))
    return ValueRow(opening(panel_name(seen.key)), tuple(marks), beside, joins)


def _place(g: Gathered, place: PlaceShown, ref: str) -> ValueMark:
    trace = worked(ref, place.at)
    if not place.at:
        assert place.seen.figure is not None
        trace = worked(g.refs.of(place.seen.figure.working), "value_um")
    return ValueMark(SIGNS[place.standing], (bare_thickness(place.value_um, trace),))


def _band(g: Gathered, key: str) -> list[ValueMark]:
    """This car's own paint among the panels compared with this one. Where they fall into two groups, or scatter so much
    that they may, nobody can say which paint is the car's own: nothing is drawn."""
    if g.odd is None:
        return []
    for i, family in enumerate(g.odd.families):
        if key not in family.keys or family.own_mean_um is None or family.own_scatter_um is None:
            continue
        if family.two_groups or family.wide:
            continue
        ref, at = g.refs.of(g.odd.working), f"families/{i}"
        middle = bare_thickness(family.own_mean_um, worked(ref, f"{at}/own_mean_um"), 1)
        scatter = bare_thickness(family.own_scatter_um, worked(ref, f"{at}/own_scatter_um"), 1)
        return [ValueMark("band", (middle, scatter))]
    return []


def _is_printed(found: PanelChange) -> bool:
    """Whether the words state a figure with an interval: the picture shows nothing they do not."""
    change = found.change
    return change is not None and found.for_print and change.low_um is not None and change.high_um is not None


def _came_off(g: Gathered, keys: list[str]) -> ValueRows:
    rows = tuple(_change_row(g, g.changes[k], joins=_joins(g, keys, i)) for i, k in enumerate(keys))
    first = g.changes[keys[0]].change
    assert first is not None
    confidence = float(str(first.working.inputs["confidence"]))
    ref = g.refs.of(first.working)
    words: tuple[tuple[ValueSign, str], ...] = (
        ("point", _("came off")),
        ("hollow", _("not told from zero, or thicker: no removal is stated")),
        ("interval", _("its interval")),
    )
    return ValueRows(
        rows=rows,
        axis=(_("What came off, {unit}; left of zero: thicker after the work").format(unit=thickness_unit()),),
        head=said(
            _("came off ({confidence}\u00a0% interval)"),
            confidence=number(100 * confidence, worked(ref, "confidence", times=100), 0),
        ),
        key=_used(words, rows),
        room_um=CHANGE_ROOM_UM,
        zero=True,
    )


def _change_row(g: Gathered, found: PanelChange, *, joins: bool) -> ValueRow:
    change = found.change
    assert change is not None
    assert change.low_um is not None
    assert change.high_um is not None
    ref = g.refs.of(change.working)
    low, at, high = (
        bare_thickness(value, worked(ref, name), 1)
        for value, name in (
            (change.low_um, "low_um"), (change.estimate_um, "estimate_um"), (change.high_um, "high_um"),
        )
    )  # fmt: skip
    sign: ValueSign = "point" if change.outcome == "removed" else "hollow"
    marks = ValueMark("interval", (low, high)), ValueMark(sign, (at,))
    return ValueRow(opening(panel_name(found.key)), marks, _change_words(g, found), joins)


def _change_words(g: Gathered, found: PanelChange) -> Text:
    """The figures of the change as its sentence prints them."""
    told = [p for p in change_sentence(g, found) if isinstance(p, Figure)]
    assert found.change is not None
    if found.change.outcome == "removed":
        value, low, high, *_rest = told
        return said(_("{value} ({low} to {high})"), value=value, low=low, high=high)
    if found.change.outcome == "thicker":
        return said(_("thicker by {value}"), value=told[0])
    return said(_("less than {value}"), value=told[0])
