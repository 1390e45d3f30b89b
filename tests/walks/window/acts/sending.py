"""Values that wait in the tray, on the Thickness card."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.cli.walking.steps import sending as said_
from window.act import Act
from window.acts import shop, thickness
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


class PlugIn(Act):
    step = said_.PlugIn

    @staticmethod
    def play(said: said_.PlugIn, walk: Walk) -> None:
        shop.turn(walk, "Gauges on a line")
        walk.hand.pick("gauge", said.gauge)
        if not said.port:
            walk.hand.press("No line for this gauge")
            walk.expect("port", lambda: walk.eyes.said_of("port"), "")
            return
        walk.hand.type_into("port", said.port)
        walk.hand.type_into("speed", str(said.speed))
        walk.hand.press("Keep this line")


class PutFileAway(Act):
    """The file lies in the watched folder, is offered, and is left for good."""

    step = said_.PutFileAway

    @staticmethod
    def play(said: said_.PutFileAway, walk: Walk) -> None:
        folder = walk.beside / "watched"
        folder.mkdir(exist_ok=True)
        (folder / said.file).write_bytes((walk.beside / said.file).read_bytes())
        shop.turn(walk, "Settings")
        walk.hand.fill("folder whose readings files are offered by themselves", str(folder))
        thickness.part(walk, "File")
        walk.eyes.expect(f"{said.file}: ", thickness.CARD)
        walk.hand.press("Leave the file", thickness.CARD)
        walk.expect("offered", lambda: walk.eyes.says(f"{said.file}: ", thickness.CARD), False)


class ExpectTray(Act):
    step = said_.ExpectTray

    @staticmethod
    def play(said: said_.ExpectTray, walk: Walk) -> None:
        thickness.part(walk, "Walk")
        walk.expect("values in the tray", lambda: len(walk.eyes.lines(TRAY)) if walk.eyes.has(TRAY) else 0, said.count)
