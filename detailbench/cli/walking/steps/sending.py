"""Values a gauge sends that wait, and the line it sends them on."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import TEXT, whole
from detailbench.cli.walking.step import Step, named, value


@dataclass(frozen=True, kw_only=True)
class PlaceTray(Step):
    verb = "tray place"
    does = "what waits in the tray lands on the panel in hand, value after value"


@dataclass(frozen=True, kw_only=True)
class PutTrayAway(Step):
    verb = "tray away"
    does = "what waits in the tray is nothing new: put it aside"


@dataclass(frozen=True, kw_only=True)
class ExpectTray(Step):
    verb = "expect tray"
    does = "so many values wait in the tray"
    count: int = value(whole())


@dataclass(frozen=True, kw_only=True)
class PlugIn(Step):
    verb = "shop line"
    does = "the serial port a gauge is plugged in at; an empty one: it has none any more"
    gauge: str = value(TEXT)
    port: str = value(TEXT)
    speed: int = named(whole(50), 9600)


@dataclass(frozen=True, kw_only=True)
class PutFileAway(Step):
    verb = "file away"
    does = "a readings file beside the script holds nothing of ours: it is not offered again"
    file: str = value(TEXT)
