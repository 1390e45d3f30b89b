"""The kept things, by subject, and the list of all of them."""

from __future__ import annotations

from detailbench.record.thing import Thing
from detailbench.record.things.documents import Acceptance, Document, Signature
from detailbench.record.things.intake import Car, Damage, Job, Party, Visit
from detailbench.record.things.marking import Evidence, Mark, MarkCheck, PanelLook, Photo
from detailbench.record.things.measuring import CheckReading, GaugeSession, Place, PlaceDecision, Reading
from detailbench.record.things.shop import Combination, Gauge, Lamp, Machine, Pad, Person, Product, Setting, Shim
from detailbench.record.things.surface import FinishGroup, Hold, StateNote
from detailbench.record.things.trialling import Trial, TrialOutcome
from detailbench.record.things.working import Override, Process, ProcessStep, Protection, StepRun

ALL: tuple[type[Thing], ...] = (
    Person, Gauge, Shim, Lamp, Machine, Pad, Product, Combination, Setting,
    Car, Job, Visit, Party, Damage,
    FinishGroup, StateNote, Hold,
    Evidence, Photo, Mark, MarkCheck, PanelLook,
    GaugeSession, CheckReading, Place, Reading, PlaceDecision,
    Trial, TrialOutcome,
    Process, ProcessStep, StepRun, Override, Protection,
    Document, Acceptance, Signature,
)  # fmt: skip

__all__ = [
    "ALL",
    "Acceptance",
    "Car",
    "CheckReading",
    "Combination",
    "Damage",
    "Document",
    "Evidence",
    "FinishGroup",
    "Gauge",
    "GaugeSession",
    "Hold",
    "Job",
    "Lamp",
    "Machine",
    "Mark",
    "MarkCheck",
    "Override",
    "Pad",
    "PanelLook",
    "Party",
    "Person",
    "Photo",
    "Place",
    "PlaceDecision",
    "Process",
    "ProcessStep",
    "Product",
    "Protection",
    "Reading",
    "Setting",
    "Shim",
    "Signature",
    "StateNote",
    "StepRun",
    "Trial",
    "TrialOutcome",
    "Visit",
]
