"""Everything a document draws on, computed once from the frozen picture."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property

from detailbench.body.panels import Outline
from detailbench.findings.changes import PanelChange, changes
from detailbench.findings.gauges import confirmations
from detailbench.findings.mark_results import MarkResult, mark_results
from detailbench.findings.panels import PanelSeen, odd, outline_of, panels_seen
from detailbench.findings.permissions import permissions
from detailbench.findings.plan import WorkStanding, work_standing
from detailbench.findings.walking import panels_in_order
from detailbench.record.past import PutRight
from detailbench.record.picture import JobPicture
from detailbench.report.content.refs import Refs
from detailbench.thickness.odd_panels import OddPanels
from detailbench.thickness.permission import Permission

ReadFile = Callable[[str], bytes]


@dataclass(frozen=True)
class Gathered:
    """``order``: the panels in walking order; ``key_fingerprint`` empty while the document is not to be closed."""

    picture: JobPicture
    now: datetime
    version: str
    read_file: ReadFile
    key_fingerprint: str
    refs: Refs
    outline: Outline
    order: tuple[str, ...]
    before: Mapping[str, PanelSeen]
    after: Mapping[str, PanelSeen]
    odd: OddPanels | None
    odd_after: OddPanels | None
    changes: Mapping[str, PanelChange]
    marks: tuple[MarkResult, ...]
    permissions: Mapping[str, Permission]
    standing: WorkStanding
    past: tuple[PutRight, ...] = ()

    def marks_on(self, panel: str) -> tuple[MarkResult, ...]:
        return tuple(m for m in self.marks if m.mark.panel == panel)

    @cached_property
    def not_confirmed(self) -> frozenset[str]:
        """The readings that do not lie between two good gauge checks."""
        return frozenset(key for key, found in confirmations(self.picture).items() if not found.confirmed)

    @property
    def measured(self) -> tuple[str, ...]:
        """Panels with readings before or after, in walking order."""
        return tuple(
            k
            for k in self.order
            if any(p.readings or p.earlier for seen in (self.before[k], self.after[k]) for p in seen.places)
        )

    @property
    def begun(self) -> bool:
        """Whether a machine was set on any panel: only then is there an “after the work”."""
        return bool(self.picture.runs)

    @property
    def worked(self) -> tuple[str, ...]:
        """Panels on which a step was finished, in walking order."""
        done = {r.panel for r in self.picture.runs if r.ended == "finished"}
        return tuple(k for k in self.order if k in done)


def gather(
    picture: JobPicture,
    *,
    now: datetime,
    version: str,
    read_file: ReadFile,
    key_fingerprint: str = "",
    past: Sequence[PutRight] = (),
) -> Gathered:
    """Compute what the document draws on. ``read_file`` gives the bytes of an evidence file by its SHA-256; ``past``:
    the job's entries put right, as its journal tells them."""
    outline = outline_of(picture)
    return Gathered(
        picture=picture,
        now=now,
        version=version,
        read_file=read_file,
        key_fingerprint=key_fingerprint,
        refs=Refs(),
        outline=outline,
        order=panels_in_order(picture),
        before=panels_seen(picture, "as_found"),
        after=panels_seen(picture, "polished"),
        odd=odd(picture),
        odd_after=odd(picture, "polished"),
        changes=changes(picture),
        marks=mark_results(picture),
        permissions=permissions(picture),
        standing=work_standing(picture, now),
        past=tuple(past),
    )
