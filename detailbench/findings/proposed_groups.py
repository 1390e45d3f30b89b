"""Finish groups as the readings propose them; a person confirms each by making the group."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.panels import odd
from detailbench.record.picture import JobPicture
from detailbench.thickness.finish_groups import Proposal, ProposedGroup, proposed_groups
from detailbench.thickness.odd_panels import OddPanels


@dataclass(frozen=True)
class GroupToMake:
    """A proposal that is not followed yet: the panels, a name for their group, and what is asked."""

    name: str
    panels: tuple[str, ...]
    sentence: str


def group_proposals(picture: JobPicture, found: OddPanels | None = None) -> Proposal | None:
    """From the readings as found; None while nothing was measured. ``found``: the comparison, where the caller has it
    already."""
    found = odd(picture) if found is None else found
    return None if found is None else proposed_groups(found)


def group_to_make(picture: JobPicture, panel: str, found: OddPanels | None = None) -> GroupToMake | None:
    """The group proposed for this panel, unless its panels stand apart from the rest already. What reads alike is
    never proposed anew: a person who parted it had a reason the gauge cannot see."""
    proposal = group_proposals(picture, found)
    if proposal is None:
        return None
    mine = next((g for g in proposal.groups if panel in g.keys), None)
    if mine is None or mine.why == "reads alike" or _stands_apart(picture, mine, proposal):
        return None
    return GroupToMake(_free_name(picture, mine), mine.keys, mine.sentence)


def _stands_apart(picture: JobPicture, mine: ProposedGroup, proposal: Proposal) -> bool:
    """One finish group holds all of them and no panel of another proposed group."""
    others = {key for g in proposal.groups if g is not mine for key in g.keys}
    return any(set(mine.keys) <= set(g.panels) and not others & set(g.panels) for g in picture.groups)


def _free_name(picture: JobPicture, mine: ProposedGroup) -> str:
    """A name no group has yet."""
    if mine.why == "thinner group":
        name = _("thinner panels")
    elif mine.why == "thicker group":
        name = _("thicker panels")
    else:
        panels = _(" and ").join(panel_name(key) for key in mine.keys)
        name = _("{panels}, reads differently").format(panels=panels)
    taken = {g.name for g in picture.groups}
    free, n = name, 2
    while free in taken:
        free, n = f"{name} {n}", n + 1
    return free
