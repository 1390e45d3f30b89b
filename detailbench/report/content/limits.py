"""The owner's limits: each in words, in force or lifted by which agreement, and whether the record shows it kept."""

from __future__ import annotations

from collections.abc import Sequence

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.limits import SOLVENT_STEPS
from detailbench.record.things import Agreement, OwnerLimit
from detailbench.report.content.blocks import Block, Column, Grid, Heading, Para, Rows
from detailbench.report.content.figures import bare_thickness, day, moment, recorded, thickness, worked
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, clipped, joined, said, typed
from detailbench.report.content.wording import counted, ended, initials, opening, panels_listed


def limit_text(g: Gathered, limit: OwnerLimit, *, short: bool = False) -> Text:
    """ "Whole car: at most 4 µm may come off" with the owner's own words."""
    where = panels_listed(k for k in g.order if k in limit.panels) if limit.panels else (_("whole car"),)
    ours: Text = ()
    if limit.kind == "most_off" and limit.most_off_um is not None:
        ours = said(_("at most {most} may come off"), most=thickness(limit.most_off_um, recorded(limit, "most_off_um")))
    else:
        words = {
            "bar_panel": _("not to be touched"), "no_sanding": _("no sanding"), "no_solvent": _("no solvent"),
        }.get(limit.kind, "")  # fmt: skip
        ours = (words,) if words else ()
    own = clipped(limit.words, 80)[0] if short else typed(limit.words)
    quoted = said(_("“{words}”"), words=own) if own else ()
    return said("{where}: {what}", where=opening(where), what=joined([ours, quoted], ", "))


def limits_lines(g: Gathered, most: int = 3) -> tuple[Text, ...]:
    """The limits for page one."""
    shown = [ended(limit_text(g, limit, short=True)) for limit in g.picture.limits[:most]]
    more = [limit.id for limit in g.picture.limits[most:]]
    if more:
        shown.append(counted(more, _("And {n} more, inside."), _("And {n} more, inside.")))
    return tuple(shown) or ((_("None were entered."),),)


def limit_blocks(g: Gathered, *, kept: bool) -> tuple[Block, ...]:
    """Every limit; ``kept``: with what the record says about its keeping."""
    title = Heading((_("Owner's limits"),))
    if not g.picture.limits:
        return (title, Para((_("No limits of the owner's were entered."),)))
    rows = tuple(
        (
            limit_text(g, limit),
            said(
                "{who}, {at}",
                who=initials(g.picture.shop, limit.entered_by),
                at=moment(limit.entered_at, recorded(limit, "entered_at")),
            ),
            *((_kept(g, limit),) if kept else ()),
        )
        for limit in g.picture.limits
    )
    columns = [Column(_("What must not happen to this car"), 0.42 if kept else 0.75), Column(_("Entered by"), 0.2)]
    if kept:
        columns.append(Column(_("Kept"), 0.38))
    return (title, Grid(tuple(columns), (Rows((), rows),)))


def _kept(g: Gathered, limit: OwnerLimit) -> Text:
    if limit.lifted_by:
        lifted = next((a for a in g.picture.agreements if a.id == limit.lifted_by), None)
        return _lifted(lifted)
    judge = {
        "bar_panel": _bar, "most_off": _most_off, "no_sanding": _no_sanding, "no_solvent": _no_solvent,
    }.get(limit.kind, _read)  # fmt: skip
    return judge(g, limit)


def _lifted(agreement: Agreement | None) -> Text:
    if agreement is None or agreement.answered_at is None:
        return (_("Lifted by an agreement."),)
    return said(
        _("Lifted by the agreement answered {at}."),
        at=moment(agreement.answered_at, recorded(agreement, "answered_at")),
    )


def _on(limit: OwnerLimit, panel: str) -> bool:
    return not limit.panels or panel in limit.panels


def _bar(g: Gathered, limit: OwnerLimit) -> Text:
    picture = g.picture
    touched = [(x.seq, x.panel) for things in (picture.runs, picture.trials, picture.rub_tests) for x in things]
    touched += [(s.seq, p) for s in picture.wash_steps if s.kind == "clay" and not s.why_not for p in s.panels]
    touched += [(put_on.seq, p) for put_on in picture.protections for p in put_on.panels]
    since, before = _since(g, limit, touched)
    if since:
        return said(_("Not kept: work is recorded on {panels}."), panels=panels_listed(since))
    if before:
        return said(
            _("Kept since it was entered; work on {panels} is recorded from before."), panels=panels_listed(before)
        )
    return (_("Kept: no clay, test section, work or protection is recorded there."),)


def _since(g: Gathered, limit: OwnerLimit, done: Sequence[tuple[int, str]]) -> tuple[list[str], list[str]]:
    """Of what was done (place in the order of entry, panel) the panels of the limit: done since it was entered, and
    before that only."""
    since = {panel for seq, panel in done if seq > limit.seq}
    before = {panel for _seq, panel in done} - since
    return [k for k in g.order if k in since and _on(limit, k)], [k for k in g.order if k in before and _on(limit, k)]


def _most_off(g: Gathered, limit: OwnerLimit) -> Text:
    worked_on = [k for k in g.worked if _on(limit, k)]
    if not worked_on:
        return (_("Nothing was polished there."),)
    over, within, reaches, unknown = [], [], [], []
    most = limit.most_off_um or 0.0
    for key in worked_on:
        found = g.changes.get(key)
        change = found.change if found is not None and found.for_print else None
        if change is None or change.high_um is None:
            unknown.append(key)
        elif change.estimate_um > most:
            over.append(key)
        elif change.high_um > most:
            reaches.append(key)
        else:
            within.append(key)
    out: list[Text] = []
    for keys, words in (
        (over, _("Not kept: more was measured off on {panels}.")),
        (reaches, _("Measured below it, its interval reaching above, on {panels}.")),
        (within, _("Kept as measured on {panels}.")),
    ):
        if keys:
            out.append(said(words, panels=joined([_measured(g, k) for k in keys], "; ")))
    if unknown:
        out.append(
            said(_("Not measured so that it can be told on {panels}."), panels=panels_listed(unknown)),
        )
    return joined(out)


def _measured(g: Gathered, key: str) -> Text:
    change = g.changes[key].change
    if change is None or change.high_um is None:
        return (panel_name(key),)
    ref = g.refs.of(change.working)
    most = bare_thickness(change.high_um, worked(ref, "high_um"), 1)
    return said(_("{panel} (at most {most})"), panel=panel_name(key), most=most)


def _no_sanding(_g: Gathered, _limit: OwnerLimit) -> Text:
    return (_("No sanding is recorded."),)


def _no_solvent(g: Gathered, limit: OwnerLimit) -> Text:
    against = [s for s in g.picture.wash_steps if s.kind in SOLVENT_STEPS and not s.why_not]
    since, before = _since(g, limit, [(s.seq, panel) for s in against for panel in s.panels])
    if since:
        return said(_("Not kept: a step with solvent is recorded on {panels}."), panels=panels_listed(since))
    kept: Text = (_("Kept: no step with solvent is recorded there."),)
    if before:
        kept = said(
            _("Kept since it was entered; a step with solvent on {panels} is recorded from before."),
            panels=panels_listed(before),
        )
    otherwise = [n for n in g.picture.state_notes if n.clean == "wiped" and n.how and n.seq > limit.seq]
    told = [
        said(
            _("{panels} wiped, as the workshop says: “{how}”."),
            panels=opening(panels_listed(k for k in g.order if k in note.panels and _on(limit, k))),
            how=typed(note.how),
        )
        for note in otherwise
        if any(_on(limit, k) for k in note.panels)
    ]
    return joined([kept, *told], " ")


def _read(g: Gathered, limit: OwnerLimit) -> Text:
    """What cannot be computed was read: by whom, on which days."""
    seen = [s for s in g.picture.limits_seen if s.limit_id == limit.id]
    if not seen:
        return (_("Nothing can be computed from it; that it was read is not noted."),)
    who = joined(
        [
            said(
                "{who}, {day}",
                who=initials(g.picture.shop, s.entered_by),
                day=day(s.entered_at, recorded(s, "entered_at")),
            )
            for s in seen
        ],
        "; ",
    )
    return said(_("Read before the work: {who}."), who=who)
