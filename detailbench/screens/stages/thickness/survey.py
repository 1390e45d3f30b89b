"""What the readings of one picture say, computed once for all who draw it."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property

from detailbench.findings.changes import PanelChange, changes, moment_of
from detailbench.findings.gloss import PanelGloss, gloss
from detailbench.findings.panels import Moment, PanelSeen, odd, outline_of, panels_seen
from detailbench.findings.permissions import permissions
from detailbench.findings.reference_places import Reference, references
from detailbench.findings.room_left import ShopSees, clear_pictures
from detailbench.record.picture import JobPicture
from detailbench.screens.stages.thickness.walk import panels_due
from detailbench.thickness.odd_findings import Finding
from detailbench.thickness.odd_panels import OddPanels
from detailbench.thickness.permission import Permission


class Survey:
    """Findings of a picture, each made when first asked for."""

    def __init__(self, picture: JobPicture) -> None:
        self.picture = picture

    @cached_property
    def before(self) -> Mapping[str, PanelSeen]:
        return panels_seen(self.picture, "as_found")

    @cached_property
    def after(self) -> Mapping[str, PanelSeen]:
        return panels_seen(self.picture, "polished")

    @cached_property
    def panels_due(self) -> tuple[str, ...]:
        """Readable panels with places still due, in walking order."""
        return panels_due(self.picture, outline_of(self.picture))

    @cached_property
    def odd(self) -> OddPanels | None:
        return odd(self.picture, seen=self.before)

    @cached_property
    def permissions(self) -> Mapping[str, Permission]:
        return permissions(self.picture, seen=self.before)

    @cached_property
    def clear_pictures(self) -> Mapping[str, ShopSees]:
        """For the shop's eyes only; asked for by the part of the card that says so."""
        return clear_pictures(self.picture)

    @cached_property
    def references(self) -> tuple[Reference, ...]:
        """Shuts and undersides of all panels."""
        return references(self.picture)

    @cached_property
    def gloss(self) -> Mapping[str, PanelGloss]:
        return gloss(self.picture)

    @cached_property
    def changes(self) -> Mapping[str, PanelChange]:
        return changes(self.picture)

    @cached_property
    def newest(self) -> Mapping[str, PanelSeen]:
        """Every panel as last measured."""
        return {key: self.latest(key) for key in self.before}

    @cached_property
    def odd_newest(self) -> OddPanels | None:
        """The panels compared as last measured."""
        return odd(self.picture, seen=self.newest)

    def moment(self, panel: str) -> Moment:
        """Which moment a reading taken now belongs to."""
        return moment_of(self.picture, panel)

    def now(self, panel: str) -> PanelSeen:
        """The panel at the present moment."""
        return (self.after if self.moment(panel) == "polished" else self.before)[panel]

    def latest(self, panel: str) -> PanelSeen:
        """The panel as last measured: after the work where that was done."""
        after = self.after[panel] if any(r.work == "polished" for r in self.picture.readings) else None
        return after if after is not None and after.taken else self.before[panel]

    def finding(self, panel: str) -> Finding | None:
        """How the panel compares with twin and family; None where nothing was measured on it."""
        found = self.odd
        return None if found is None else next((f for f in found.findings if f.key == panel), None)


class SurveyKeeper:
    """Keeps the survey of the newest picture."""

    def __init__(self) -> None:
        self._kept: Survey | None = None

    def of(self, picture: JobPicture) -> Survey:
        if self._kept is None or self._kept.picture is not picture:
            self._kept = Survey(picture)
        return self._kept
