"""The Wash stage: what the surface is, finish groups, panels held back."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.cli.walking.steps import surface as said_
from window.act import Act
from window.walk import Walk

CARD = "Card"
CLEAN = {
    "dirty": "dirty",
    "washed": "washed",
    "decontaminated": "decontaminated",
    "wiped": "panel-wiped, bare",
}
COVER = {"bare": "bare", "earlier_coating": "earlier coating", "protected": "protected", "not_known": "not known"}
PAINT = {
    "clear_over_colour": "clear over colour",
    "single_stage": "single-stage",
    "matt": "matt or satin",
    "tinted_clear": "tinted clear",
    "filmed": "filmed",
    "wrapped": "wrapped",
    "bare": "bare",
    "unknown": "unknown",
}


class NoteState(Act):
    step = said_.NoteState

    @staticmethod
    def play(said: said_.NoteState, walk: Walk) -> None:
        page(walk, "State")
        mean(walk, said.panels)
        if said.how:
            walk.hand.type_into("how, in words; goes with what you press next", said.how, CARD)
        if said.clean:
            walk.hand.press(f"the surface is now: {CLEAN[said.clean]}", CARD)
        if said.cover:
            walk.hand.press(f"what lies on the paint: {COVER[said.cover]}", CARD)
        walk.hand.pick("for", "this panel", CARD)


class MakeFinishGroup(Act):
    step = said_.MakeFinishGroup

    @staticmethod
    def play(said: said_.MakeFinishGroup, walk: Walk) -> None:
        page(walk, "Group")
        mean(walk, said.panels)
        walk.hand.type_into("name of the finish group", said.group, CARD)
        walk.hand.press("Make this finish group", CARD)
        walk.hand.pick("for", "this panel", CARD)
        walk.hand.turn_card("Paint")
        walk.hand.panel(panel_name(said.panels[0]))
        walk.hand.choose("finish groups", said.group)
        walk.hand.pick("paint system", PAINT[said.paint], CARD)


class GroupsAsLast(Act):
    step = said_.GroupsAsLast

    @staticmethod
    def play(said: said_.GroupsAsLast, walk: Walk) -> None:
        page(walk, "Group")
        if not said.painted:
            walk.hand.press("Nothing was painted since: take the groups over", CARD)
            return
        walk.hand.panel(panel_name(said.painted))
        painted = f"Only {panel_name(said.painted)} painted since: take the groups over, that panel apart"
        walk.hand.press(painted, CARD)


class HoldPanel(Act):
    step = said_.Hold

    @staticmethod
    def play(said: said_.Hold, walk: Walk) -> None:
        walk.hand.put_away_stop()
        page(walk, "Held")
        walk.hand.panel(panel_name(walk.panel))
        walk.hand.type_into("reason, at least two words; it is printed", said.reason, CARD)
        walk.hand.press("Hold this panel back", CARD)


class ReleasePanel(Act):
    step = said_.Release

    @staticmethod
    def play(said: said_.Release, walk: Walk) -> None:
        page(walk, "Held")
        walk.hand.panel(panel_name(walk.panel))
        walk.hand.press("Release this panel", CARD)


class NotePaint(Act):
    step = said_.NotePaint

    @staticmethod
    def play(said: said_.NotePaint, walk: Walk) -> None:
        page(walk, "Paint")
        if said.of:
            walk.hand.choose("finish groups", said.of)
        else:
            walk.hand.panel(panel_name(walk.panel))
        walk.hand.pick("paint system", PAINT[said.paint], CARD)


class Irreplaceable(Act):
    step = said_.Irreplaceable

    @staticmethod
    def play(said: said_.Irreplaceable, walk: Walk) -> None:
        page(walk, "Paint")
        walk.hand.panel(panel_name(walk.panel))
        walk.hand.pick("cannot be replaced", said.irreplaceable, CARD)


def page(walk: Walk, title: str) -> None:
    """Open a page of the Wash card."""
    walk.hand.turn_to("Wash")
    walk.hand.turn_card(title)


def mean(walk: Walk, panels: tuple[str, ...]) -> None:
    """Say which panels the next entry is for."""
    walk.hand.pick("for", "several", CARD)
    walk.hand.press("Take in none", CARD)
    for panel in panels:
        walk.hand.take_in(panel_name(panel))
