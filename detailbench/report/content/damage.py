"""Damage already there on arrival, on the plan view and in words; repairs as stated, never more than a word."""

from __future__ import annotations

from collections import defaultdict

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.record.things import Damage, StatedRepair
from detailbench.report.content.blocks import Block, Column, Fill, Grid, Heading, Legend, Para, PlanView, Rows
from detailbench.report.content.figures import count, moment, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, clipped, joined, said, text_of, typed
from detailbench.report.content.wording import counted, initials, opening


def part_words(part: str) -> str:
    """What part of the car that is no panel."""
    words = {
        "panel": _("panel"), "wheel": _("wheel"), "glass": _("glass"), "lamp": _("lamp"), "trim": _("trim"),
        "inside": _("inside"), "other": _("elsewhere"),
    }  # fmt: skip
    return words.get(part, part)


def where_words(damage: Damage, most: int = 0) -> Text:
    """ "Bonnet", "Wheel, rear right", "Elsewhere": ours first, then as typed; ``most`` letters of it."""
    first: Text = ()
    if damage.panel:
        first = opening(panel_name(damage.panel))
    elif damage.part and damage.part != "panel":
        first = opening(part_words(damage.part))
    return joined([first, clipped(damage.where, most)[0] if most else typed(damage.where)], ", ") or (_("Elsewhere"),)


def damage_blocks(g: Gathered) -> tuple[Block, ...]:
    """The list, or that there is none."""
    title = Heading((_("Damage already there on arrival"),))
    if not g.picture.damages:
        return (title, Para((_("None was entered."),)))
    rows = tuple(_row(g, d) for d in g.picture.damages)
    columns = (Column(_("Where"), 0.22), Column(_("As typed"), 0.46), Column(_("Entered"), 0.25), Column(_("By"), 0.07))
    return (title, Grid(columns, (Rows((), rows),)))


def _row(g: Gathered, d: Damage | StatedRepair) -> tuple[Text, ...]:
    where = where_words(d) if isinstance(d, Damage) else _repair_where(d)
    return (
        where,
        typed(d.words),
        text_of(moment(d.entered_at, recorded(d, "entered_at"))),
        initials(g.picture.shop, d.entered_by),
    )


def _repair_where(repair: StatedRepair) -> Text:
    return opening(panel_name(repair.panel)) if repair.panel else (_("Whole car"),)


def repair_blocks(g: Gathered) -> tuple[Block, ...]:
    """Repairs as stated by somebody."""
    if not g.picture.repairs:
        return ()
    by = {"owner": _("the owner"), "bearer": _("the bearer"), "papers": _("papers")}
    rows = tuple(
        (*_row(g, r)[:2], (by.get(r.said_by, r.said_by),), *_row(g, r)[2:]) for r in g.picture.repairs
    )  # fmt: skip
    columns = (
        Column(_("Where"), 0.22), Column(_("As stated"), 0.33), Column(_("Stated by"), 0.13),
        Column(_("Entered"), 0.25), Column(_("By"), 0.07),
    )  # fmt: skip
    note = _("A repair as stated is somebody's word; nothing here was measured to say so.")
    return (Heading((_("Repairs as stated"),)), Grid(columns, (Rows((), rows),)), Para((note,), "note"))


def damage_view(g: Gathered, *, title: bool = True) -> tuple[PlanView, Legend]:
    """The car with the panels hatched on which damage was there, each with how many entries it has."""
    on: dict[str, list[str]] = defaultdict(list)
    for d in g.picture.damages:
        if d.panel in g.outline.panels:
            on[d.panel].append(d.id)
    fills = {
        key: Fill(None, "falling", text_of(count(on[key]))) if key in on else Fill() for key in g.order
    }  # fmt: skip
    elsewhere = [d.id for d in g.picture.damages if d.panel not in g.outline.panels]
    note: Text = ()
    if elsewhere and title:
        note = counted(
            elsewhere,
            _("{n} entry is about a part that is not drawn as a panel; it stands in the list."),
            _("{n} entries are about parts that are not drawn as panels; they stand in the list."),
        )
    words = _("Damage on arrival: number of entries") if on else _("No damage to a panel was entered.")
    hatches = (("falling", _("damage there")),) if on else ()
    return PlanView((words,), fills), Legend(hatches=hatches, note=note)  # type: ignore[arg-type]


def damage_line(g: Gathered, most: int = 4) -> tuple[Text, ...]:
    """The damage for page one: the first few in words, the rest counted."""
    all_ = g.picture.damages
    if not all_:
        return ((_("No damage was entered."),),)
    shown = [said("{where}: {words}", where=where_words(d, 40), words=clipped(d.words, 80)[0]) for d in all_[:most]]
    more = all_[most:]
    if more:
        shown.append(counted([d.id for d in more], _("and {n} more, in the list"), _("and {n} more, in the list")))
    return tuple(shown)
