"""The kept things, by subject, and the list of all of them."""

from __future__ import annotations

from detailbench.record.thing import Thing
from detailbench.record.things.agreeing import Agreement, LimitSeen, Mishap, OwnerLimit, SupplementItem
from detailbench.record.things.documents import Acceptance, Delivery, Document, Forgetting, History, Signature
from detailbench.record.things.intake import (
    Car,
    CarMoved,
    Custody,
    Damage,
    Job,
    JobTurn,
    Party,
    Remark,
    StatedRepair,
    Visit,
)
from detailbench.record.things.marking import Evidence, Mark, MarkCheck, PanelLook, Photo
from detailbench.record.things.measuring import (
    CheckReading,
    GaugeCorrection,
    GaugeSession,
    Place,
    PlaceDecision,
    Reading,
)
from detailbench.record.things.shop import (
    ClockNote,
    Combination,
    Gauge,
    Lamp,
    Machine,
    Pad,
    Person,
    Product,
    Setting,
    Shim,
)
from detailbench.record.things.surface import FinishGroup, Hold, RubTest, StateNote, WashStep
from detailbench.record.things.trialling import Trial, TrialOutcome
from detailbench.record.things.waiting import ReadingsFile, WaitingValue
from detailbench.record.things.working import OtherWork, Override, Process, ProcessStep, Protection, SecondLook, StepRun

ALL: tuple[type[Thing], ...] = (
    Person, Gauge, Shim, Lamp, Machine, Pad, Product, Combination, Setting, ClockNote,
    Car, Job, Visit, Party, Damage, StatedRepair, Custody, CarMoved, Remark, JobTurn,
    OwnerLimit, LimitSeen, Agreement, SupplementItem, Mishap,
    FinishGroup, StateNote, Hold, WashStep, RubTest,
    Evidence, Photo, Mark, MarkCheck, PanelLook,
    GaugeSession, CheckReading, GaugeCorrection, Place, Reading, PlaceDecision, WaitingValue, ReadingsFile,
    Trial, TrialOutcome,
    Process, ProcessStep, StepRun, Override, Protection, SecondLook, OtherWork,
    Document, Delivery, History, Forgetting, Acceptance, Signature,
)  # fmt: skip

__all__ = [
    "ALL",
    "Acceptance",
    "Agreement",
    "Car",
    "CarMoved",
    "CheckReading",
    "ClockNote",
    "Combination",
    "Custody",
    "Damage",
    "Delivery",
    "Document",
    "Evidence",
    "FinishGroup",
    "Forgetting",
    "Gauge",
    "GaugeCorrection",
    "GaugeSession",
    "History",
    "Hold",
    "Job",
    "JobTurn",
    "Lamp",
    "LimitSeen",
    "Machine",
    "Mark",
    "MarkCheck",
    "Mishap",
    "OtherWork",
    "Override",
    "OwnerLimit",
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
    "ReadingsFile",
    "Remark",
    "RubTest",
    "SecondLook",
    "Setting",
    "Shim",
    "Signature",
    "StateNote",
    "StatedRepair",
    "StepRun",
    "SupplementItem",
    "Trial",
    "TrialOutcome",
    "Visit",
    "WaitingValue",
    "WashStep",
]
