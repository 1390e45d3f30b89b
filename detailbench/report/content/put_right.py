"""Entries put right: counted where no document had listed them yet, printed as corrected where one had."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.record.past import WITHDRAWN, PutRight
from detailbench.record.writing import PER_ENTRY
from detailbench.report.content.figures import moment, moment_with_offset
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Figure, Recorded, Text, joined, said, typed
from detailbench.report.content.wording import counted, opening, person_words

NOUNS = {
    "damage": "existing damage", "finish_group": "finish group", "state_note": "state of panels",
    "hold": "panel held back", "mark": "mark", "mark_check": "mark looked at again", "panel_look": "look at a panel",
    "photo": "photograph", "gauge_session": "gauge session", "check_reading": "check reading", "place": "place",
    "reading": "reading", "gloss_reading": "gloss value", "place_decision": "decision about a place",
    "trial": "test section",
    "trial_outcome": "outcome of a test section", "process": "process", "process_step": "step",
    "step_run": "work on a panel", "override": "rule set aside", "protection": "protection", "document": "document",
    "acceptance": "acceptance", "signature": "signature", "visit": "visit", "party": "owner or bearer", "car": "car",
    "job": "order", "stated_repair": "repair as stated", "custody": "what came with the car",
    "car_moved": "move of the car", "remark": "remark", "job_turn": "turn of the job", "owner_limit": "owner's limit",
    "limit_seen": "limit read", "agreement": "agreement", "supplement_item": "supplement", "mishap": "mishap",
    "wash_step": "step of the wash", "rub_test": "white-pad rub", "second_look": "second look",
    "other_work": "other work", "delivery": "delivery",
}  # fmt: skip

FIELDS = {
    "severity": "severity", "depth": "depth", "words": "words", "value_um": "value", "odometer_in": "odometer in",
    "odometer_out": "odometer out", "arrived_at": "arrival", "minutes": "minutes", "way": "way", "keys_count": "keys",
    "energy_percent": "fuel or charge, %", "reason": "reason", "paint_system": "paint system", "described": "car",
    "colour": "colour", "vin": "VIN", "style": "drawing", "note": "note", "lamp_id": "lamp", "place_id": "place",
    "hoped_level": "hoped-for level", "will_remain": "what will remain", "price_range": "price range",
    "authority": "authority", "intent": "intent", "valuables": "valuables", "warning_lamps": "warning lamps",
    "keys_at": "where the keys hang", "stands_at": "where the car stands", "to_place": "place", "no_value": "no value",
    "kind": "kind", "temperature_c": "surface temperature, °C", "finished_at": "end", "left_at": "time of leaving",
    "stated_at": "time",
}  # fmt: skip
HIDDEN = ("lamp_id", "place_id", "style", "kind", "intent", "paint_system", "way", "no_value")
MOST = 40


def quiet_and_told(g: Gathered) -> tuple[tuple[PutRight, ...], tuple[PutRight, ...]]:
    """Those put right within the visit and before any document had listed them; and the rest."""
    closed = [d.seq // PER_ENTRY for d in g.picture.documents]
    visits = [v.seq // PER_ENTRY for v in g.picture.visits[1:]]
    told = tuple(c for c in g.past if any(c.first < n < c.n for n in (*closed, *visits)))
    return tuple(c for c in g.past if c not in told), told


def put_right_texts(g: Gathered) -> tuple[Text, ...]:
    """One line for the first, a line each for the others."""
    quiet, told = quiet_and_told(g)
    out: list[Text] = []
    acts = list(dict.fromkeys(f"{c.n}" for c in quiet))
    if acts:
        out.append(
            counted(
                acts,
                _("{n} entry was put right or taken back within the visit and before a document listed it."),
                _("{n} entries were put right or taken back within the visit and before a document listed them."),
            )
        )
    out += [_corrected(g, c) for c in told[:MOST]]
    if len(told) > MOST:
        more = [f"{c.n} {c.id} {c.field}" for c in told[MOST:]]
        out.append(counted(more, _("And {n} more; all stand in the journal."), _("And {n} more; all in the journal.")))
    return tuple(out) or ((_("Nothing was put right or taken back."),),)


def _corrected(g: Gathered, c: PutRight) -> Text:
    what = opening(_(NOUNS.get(c.table, c.table.replace("_", " "))))
    where = panel_name(str(c.row["panel"])) if c.row.get("panel") in g.outline.panels else ""
    entered = datetime.fromisoformat(str(c.row["entered_at"])) if "entered_at" in c.row else None
    head = joined(
        [
            said("{what}{where}", what=what, where=f", {where}" if where else ""),
            said(
                _("entered {at}"),
                at=moment(entered, Recorded(c.table, (c.id,), "entered_at")),
            )
            if entered is not None
            else (),
        ],
        ", ",
    )
    return said(
        _("{head}: {change}; corrected {at} by {who}."),
        head=head,
        change=_change(c),
        at=moment_with_offset(c.at, Recorded("journal", (f"{c.n}",), "at")),
        who=person_words(g.picture.shop, c.by),
    )


def _change(c: PutRight) -> Text:
    if c.field == WITHDRAWN:
        shown = [
            said("{field} {value}", field=_(FIELDS[name]), value=_value(c, name, c.row[name], "row"))
            for name in ("severity", "depth", "value_um", "words")
            if c.row.get(name) not in (None, "")
        ]
        return joined([(_("struck out"),), *shown], ", ")
    name = _(FIELDS.get(c.field, "")) if c.field in FIELDS else ""
    if not name or c.field in HIDDEN:
        return said(_("{field} changed"), field=name) if name else (_("a detail changed"),)
    return said(
        _("{field} was {was}, is {now}"),
        field=name,
        was=_value(c, c.field, c.was, "was"),
        now=_value(c, c.field, c.now, "now"),
    )


def _value(c: PutRight, name: str, value: Any, which: str) -> Text:
    trace = Recorded("journal", (f"{c.n}", c.table, c.id), f"{which}:{name}")
    if value is None or value == "":
        return (_("empty"),)
    if isinstance(value, bool):
        return (_("yes") if value else _("no"),)
    if name.endswith("_um") and isinstance(value, int | float):
        return (Figure(format_thickness(float(value)), float(value), trace),)
    if isinstance(value, int | float):
        return (Figure(format_number(float(value)), value, trace),)
    if name.endswith("_at"):
        return (moment(datetime.fromisoformat(str(value)), trace),)
    return said(_("“{words}”"), words=typed(str(value)))


def struck_readings(past: Sequence[PutRight]) -> tuple[str, ...]:
    """Readings that were struck out or taken back, by id."""
    return tuple(dict.fromkeys(c.id for c in past if c.table == "reading" and c.field == WITHDRAWN))
