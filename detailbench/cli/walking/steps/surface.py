"""What the surface is."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import PANEL, PANELS, TEXT, word
from detailbench.cli.walking.step import Step, named, value


@dataclass(frozen=True, kw_only=True)
class NoteState(Step):
    verb = "state"
    does = "from here on these panels are so; wiped means bare unless said otherwise"
    panels: tuple[str, ...] = value(PANELS)
    clean: str = value(word(shown="dirty|washed|decontaminated|wiped"), "")
    work: str = named(word(shown="as_found|polished"), "")
    cover: str = named(word(shown="bare|earlier_coating|protected|not_known"), "")
    how: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class MakeFinishGroup(Step):
    verb = "group"
    does = "a finish group of its own for these panels"
    group: str = value(TEXT)
    panels: tuple[str, ...] = value(PANELS)
    paint: str = named(word(shown="PAINT"), "unknown")


@dataclass(frozen=True, kw_only=True)
class GroupsAsLast(Step):
    verb = "groups-as-last"
    does = "the finish groups and paint systems of the car's last job, a panel painted since apart"
    painted: str = named(PANEL, "")


@dataclass(frozen=True, kw_only=True)
class NotePaint(Step):
    verb = "paint"
    does = "the paint system of the finish group of the panel in hand, or of a named one"
    paint: str = value(word(shown="PAINT"))
    of: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class Hold(Step):
    verb = "hold"
    does = "hold the panel in hand back from any machine"
    reason: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class Release(Step):
    verb = "release"
    does = "release the panel in hand again"


@dataclass(frozen=True, kw_only=True)
class Irreplaceable(Step):
    verb = "irreplaceable"
    does = "whether the paint of the panel in hand could not be put on again as it is"
    irreplaceable: str = value(word("yes", "no"))
