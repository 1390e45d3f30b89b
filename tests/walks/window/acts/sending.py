"""Values that wait in the tray, on the Thickness card."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.cli.walking.steps import sending as said_
from window.act import Act
from window.acts import thickness
from window.walk import Walk

TRAY = "Values waiting in the tray"


class PlaceTray(Act):
    step = said_.PlaceTray

    @staticmethod
    def play(said: said_.PlaceTray, walk: Walk) -> None:
        thickness.part(walk, "Walk")
        thickness.back_to_panel(walk)
        walk.hand.act(f"New: put on {panel_name(walk.panel)}", "Ctrl+T", thickness.CARD)


class PutTrayAway(Act):
    step = said_.PutTrayAway

    @staticmethod
    def play(said: said_.PutTrayAway, walk: Walk) -> None:
        thickness.part(walk, "Walk")
        walk.hand.act("Put the tray's values aside", "Ctrl+Del", thickness.CARD)


class ExpectTray(Act):
    step = said_.ExpectTray

    @staticmethod
    def play(said: said_.ExpectTray, walk: Walk) -> None:
        thickness.part(walk, "Walk")
        walk.expect("values in the tray", lambda: len(walk.eyes.lines(TRAY)) if walk.eyes.has(TRAY) else 0, said.count)
