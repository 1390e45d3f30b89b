"""Shuts and undersides, lines of their own: values beside each other, and no word about the outer panels."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.reference_places import Reference, ReferenceSeen, note_words, references, surface_words
from detailbench.report.content.blocks import Block, Column, Grid, Heading, Para, Rows
from detailbench.report.content.figures import bare_thickness, of_thing, recorded, thickness_unit, worked
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, joined, said
from detailbench.report.content.thickness_maps import place_position
from detailbench.report.content.wording import opening, short_place

NO_VALUE = {"over_range": "over range", "no_metal": "no metal", "nothing": "nothing shown"}


def apart_blocks(g: Gathered) -> tuple[Block, ...]:
    """Every reference place with its readings; nothing where there is none."""
    found = [r for r in references(g.picture) if any(p.readings for p in r.places)]
    if not found:
        return ()
    unit = thickness_unit()
    columns = (
        Column(_("Panel"), 0.28),
        Column(_("Place"), 0.08, right=True),
        Column(_("Where, mm from edges"), 0.26),
        Column(_("Read, {unit}").format(unit=unit), 0.24),
        Column(_("Mean, {unit}").format(unit=unit), 0.14, right=True),
    )
    rows = tuple(row for reference in found for row in _rows(g, reference))
    return (Heading((_("Shuts and undersides"),)), Grid(columns, (Rows((), rows),)), Para((note_words(),), "note"))


def _rows(g: Gathered, reference: Reference) -> list[tuple[Text, ...]]:
    mean: Text = ()
    if reference.figures is not None:
        ref = g.refs.of(reference.figures.working)
        mean = (bare_thickness(reference.figures.mean_um, worked(ref, "mean_um"), 1),)
    name = opening(f"{panel_name(reference.panel)}, {surface_words(reference.surface)}")
    read = [p for p in reference.places if p.readings]
    return [
        (
            name if first else (),
            (of_thing(p.place, "number", 0),),
            short_place(p.place, place_position(p.place)),
            _read(p),
            mean if first else (),
        )
        for first, p in ((p is read[0], p) for p in read)
    ]


def _read(seen: ReferenceSeen) -> Text:
    values: list[Text] = []
    for reading in seen.readings:
        if reading.value_um is None:
            values.append((_(NO_VALUE[reading.no_value]),))
            continue
        value: Text = (bare_thickness(reading.value_um, recorded(reading, "value_um")),)
        if reading.clear_um is not None:
            value = (*value, " / ", bare_thickness(reading.clear_um, recorded(reading, "clear_um")))
        values.append(value)
    text = joined(values, " · ")
    return text if seen.confirmed else said(_("{values}; not confirmed by a gauge check"), values=text)
