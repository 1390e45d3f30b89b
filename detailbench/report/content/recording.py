"""How this was recorded: people, later entries, earlier documents, journal, settings, program; what this is not."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.settings import Default, in_force, kept_unfit, setting
from detailbench.record.picture import one
from detailbench.report.content.blocks import Block, Column, Fact, Facts, Grid, Rows
from detailbench.report.content.figures import number
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.gauge_checks import checks_failed, session_letter
from detailbench.report.content.later import clock_facts, job_things, later_entries
from detailbench.report.content.papers import document_texts, journal_text
from detailbench.report.content.parts import Recorded, Sayable, Text, joined, said, typed
from detailbench.report.content.put_right import put_right_texts
from detailbench.report.content.standing import standing
from detailbench.report.content.taken_in import taken_in_facts
from detailbench.report.content.wording import person_words
from detailbench.work.cautions import STAGES, cautions, first_of_all

# the screen's own measure, sound and folder; what the shop keeps to itself
NOT_PRINTED = ("touch_factor", "sound_volume", "watched_folder", "minute_price")
# nothing a practice could be the source of
CHOSEN = ("unit", "currency", "page_size", "shop_name", "shop_address", "walk_from", "walk_turn")
UNITS = {"um": "µm", "mil": "mil"}


def recording_blocks(g: Gathered, printing: str = "handover") -> tuple[Block, ...]:
    """Who, later entries, what was put right, own faults, the clock, documents, journal. ``printing``: the kind of
    document."""
    people = dict.fromkeys(t.entered_by for t in job_things(g) if t.entered_by)
    late = later_entries(g)
    shop = [typed(str(setting(g.picture.shop, key))) for key in ("shop_name", "shop_address")]
    rows = [
        Fact(_("Workshop"), (joined(shop, ", ") or (_("its name was not typed"),),)),
        Fact(_("Entered by"), (*(person_words(g.picture.shop, p) for p in people), standing("who_entered"))),
        Fact(_("Entered later"), late or ((_("Nothing was entered a day or more after it happened."),),)),
        Fact(_("Put right"), put_right_texts(g)),
        *clock_facts(g),
        *taken_in_facts(g, whole=True),
        *([Fact(_("Own faults"), _faults(g)), Fact(_("Set aside"), _set_aside(g))] if printing == "handover" else []),
        Fact(_("Documents"), document_texts(g, printing)),
        Fact(_("Journal"), (journal_text(g),)),
        Fact(_("Program"), (said(_("detailbench {version}"), version=typed(g.version)),)),
    ]
    return (Facts(tuple(rows)),)


def _faults(g: Gathered) -> tuple[Text, ...]:
    out: list[Text] = []
    for found in checks_failed(g):
        text = _("A gauge check failed in session {letter}; readings it leaves unconfirmed are marked.")
        out.append((text.format(letter=session_letter(g, found.session.id)),))
    if g.picture.mishaps:
        out.append((_("Mishaps happened; they stand under What was agreed with who was told."),))
    if any(r.ended == "left_running" for r in g.picture.runs):
        out.append((_("A timer was left running; that time is not known."),))
    if not out:
        out.append((_("No failed gauge check, no mishap and no timer left running is recorded."),))
    return tuple(out)


def _set_aside(g: Gathered) -> tuple[Text, ...]:
    if g.picture.overrides:
        return ((_("Rules were set aside by a person; they stand under Work with name and reason."),),)
    return ((_("No rule was set aside."),),)


def settings_blocks(g: Gathered) -> tuple[Block, ...]:
    """The settings in force, as a printed list."""
    rows = [
        ((_(d.says),), _value(d, value), (_where_from(g, d, value),))
        for d, value in in_force(g.picture.shop)
        if d.key not in NOT_PRINTED
    ]
    return (
        Grid(
            (Column(_("Setting"), 0.52), Column(_("In force"), 0.22), Column(_("Where it comes from"), 0.26)),
            (Rows((), tuple(rows)),),
        ),
    )


def _where_from(g: Gathered, default: Default, value: Any) -> str:
    unfit = kept_unfit(g.picture.shop, default.key)
    if unfit:
        return unfit
    if g.picture.shop.setting(default.key) is not None:
        return _("set by the shop")
    if value is None or value == "":
        return ""
    return _("as shipped") if default.key in CHOSEN else _(default.source)


def _value(default: Default, value: Any) -> Text:
    if value is None or value == "":
        return (_("not set"),)
    if isinstance(value, bool) or not isinstance(value, int | float):
        words = _in_words(default.key, str(value))
        return (words,) if words else typed(str(value))
    trace = Recorded("setting", (default.key,), "value")
    shown = number(float(value), trace, None, default.unit)
    return (shown,)


def _in_words(key: str, value: str) -> str:
    """A setting that is one of a few words, as a person says it; empty for what the shop typed."""
    if key == "walk_from":
        return panel_name(value)
    words = {
        "unit": UNITS,
        "walk_turn": {"left": _("left side first"), "right": _("right side first")},
        "adviser_stop": {"prove": _("prove"), "thrift": _("thrift")},
        "change_first": {"compound": _("compound"), "pad": _("pad")},
    }
    return words.get(key, {}).get(value, "")


def limits_blocks(g: Gathered, stage: str = "handover") -> tuple[Block, ...]:
    """What this document is not, who measured, cautions with whom to defer to: none in a supplement, which is about
    what was found and is read by the owner."""
    gauges = {s.gauge_id for s in g.picture.sessions}
    layered = [one(g.picture.shop.gauges, i) for i in sorted(gauges) if one(g.picture.shop.gauges, i).layers]
    if stage != "handover":
        not_ = standing("not_valuation")
    elif not g.picture.readings:
        not_ = standing("what_this_is_not_unmeasured")
    elif layered:
        not_ = standing("what_this_is_not_layers", gauge=typed(", ".join(x.name for x in layered)))
    else:
        not_ = standing("what_this_is_not")
    rows = [
        Fact(_("What it is not"), (not_,)),
        *([Fact(_("Who measured"), (standing("who_measured"),))] if g.picture.readings or g.picture.photos else []),
        *([Fact(_("Drawn signatures"), (standing("drawn_signatures"),))] if _drawn(g, stage) else []),
        Fact(_("Seal"), (seal_text(g),)),
    ]
    warned = cautions(stage) if stage in STAGES else ()
    if warned:
        rows.append(Fact(_("Take care"), (*(_caution(c.says, c.defer_to) for c in warned), (first_of_all(),))))
    return (Facts(tuple(rows)),)


def _drawn(g: Gathered, stage: str) -> bool:
    return any(s.moment == stage and s.way == "drawn" for s in g.picture.signatures)


def _caution(says: str, defer_to: Iterable[str]) -> Text:
    return said(_("{says} See: {whom}."), says=says, whom=", ".join(defer_to))


def seal_text(g: Gathered) -> Text:
    """What the seal shows, or that there is none."""
    if not g.key_fingerprint:
        return standing("not_sealed")
    same: Sayable = ""
    if any(d.kind == "arrival" and d.key_fingerprint == g.key_fingerprint for d in g.picture.documents):
        same = standing("seal_same_key")
    return standing("seal", fingerprint=typed(g.key_fingerprint), same_key=same)
