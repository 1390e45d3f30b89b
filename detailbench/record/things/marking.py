"""Marks, looks and photographs. Places are two distances from named edges plus the panel's size then."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from detailbench.record.thing import SeenThing, Thing


@dataclass(frozen=True, kw_only=True)
class Mark(SeenThing):
    """A surface defect. ``shape``: field (all over the panel), point, line or area. ``edge_a`` and ``edge_b`` are
    empty for a field; a line runs from the place to (``end_a_mm``, ``end_b_mm``) from the same edges."""

    table = "mark"
    panel: str
    kind: str
    shape: str = "field"
    edge_a: str = ""
    edge_a_mm: float | None = None
    edge_b: str = ""
    edge_b_mm: float | None = None
    end_a_mm: float | None = None
    end_b_mm: float | None = None
    panel_w_mm: float | None = None
    panel_h_mm: float | None = None
    severity: int = 0
    depth: int | None = None
    intent: str = "target"
    count: int | None = None
    length_mm: float | None = None
    area_cm2: float | None = None
    lamp_id: str = ""
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class MarkCheck(SeenThing):
    """A mark looked at again after the work: ``severity`` 0 means no longer seen under this lamp."""

    table = "mark_check"
    mark_id: str
    severity: int
    depth: int | None = None
    lamp_id: str = ""
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class PanelLook(SeenThing):
    """Looked at this panel under this lamp and saw nothing."""

    table = "panel_look"
    panel: str
    lamp_id: str = ""


@dataclass(frozen=True, kw_only=True)
class Evidence(Thing):
    """A file kept by its SHA-256. ``offset_source`` says where the local offset of ``taken_at`` came from. The name it
    came with is personal data (``file_name``); ``name`` is one of our own, or empty. ``forgotten``: the file was taken
    out with its owner's data, its hash stays."""

    table = "evidence"
    sha256: str
    size: int
    media_type: str
    name: str = ""
    taken_at: datetime | None = None
    offset_source: str = ""
    width_px: int | None = None
    height_px: int | None = None
    forgotten: bool = False


@dataclass(frozen=True, kw_only=True)
class Photo(SeenThing):
    """A photograph in this job. ``moment``: arrival, before, trial, after, mishap. ``pair``: the photo beside it.
    ``shows`` something other than paint: vin_plate, plate, odometer, clock, whole_car; test_section: half and half
    beside the tape line of the trial ``trial_id``; empty for a panel or mark."""

    table = "photo"
    evidence_id: str
    panel: str = ""
    mark_id: str = ""
    moment: str = "before"
    lamp_id: str = ""
    caption: str = ""
    pair: str = ""
    shows: str = ""
    mishap_id: str = ""
    trial_id: str = ""
