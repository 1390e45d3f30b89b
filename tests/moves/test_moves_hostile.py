"""Every field of every move given the strangest numbers and texts: refused in words, or nothing that is drawn or
computed afterwards stumbles over it."""

from __future__ import annotations

import math
import shutil
import tempfile
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from pathlib import Path
from typing import Any

import pytest
from invented_findings import Hands
from invented_shop import INVENTED_NOW, InventedShop, invented_shop

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import DetailbenchError
from detailbench.body.edges import EdgePosition
from detailbench.findings.changes import changes
from detailbench.findings.due import due
from detailbench.findings.gloss import gloss as gloss_found
from detailbench.findings.mark_results import mark_results
from detailbench.findings.permissions import permissions
from detailbench.findings.plan import work_standing
from detailbench.findings.reference_places import references
from detailbench.findings.trial_story import told
from detailbench.moves import (
    arrival,
    gloss,
    handover,
    marks,
    readings,
    shop,
    supplement,
    surface,
    tray,
    trials,
    washing,
    work,
)
from detailbench.moves.move import Move
from detailbench.moves.reading_mending import NotAValue, ReadAsMil
from detailbench.moves.readings_file import ImportedReading, ImportReadings
from detailbench.moves.walk_mending import ChangeSides, ShiftBack
from detailbench.record.checking import check

NUMBERS: tuple[float, ...] = (math.nan, math.inf, -1, -1e-9, 0, 1e308, 1e-300, 10**400, 10**17)
TEXTS = ("", "\udc00", "\x00", "x" * 50_000, "\u202eabc", "none", "<b>&\"'", "=1+1", "\n")
TOTALS = ("leave_below_um", "careful_below_um", "usual_scatter_um", "plausible_low_um", "plausible_high_um",
          "touch_factor", "minute_price", "usual_load_path_j_m2")  # fmt: skip


@pytest.fixture(scope="module")
def hands() -> Iterator[Hands]:
    """A job with one of everything, in memory where there is such a folder: the disk's speed is no part of this."""
    memory = Path("/dev/shm")
    folder = Path(tempfile.mkdtemp(dir=memory if memory.is_dir() else None))
    made: InventedShop = invented_shop(folder / "workshop", HandClock(INVENTED_NOW))
    hands = Hands(made, made.job())
    step = hands.adopted("roof")
    hands.survey({"roof": (110.0, 111.0, 112.0, 109.0, 110.0)})
    hands.do(marks.RecordMark(hands.job, "roof", "swirl", 2))
    hands.do(arrival.AddDamage(hands.job, "a chip", "roof"))
    hands.do(surface.HoldPanel(hands.job, "tailgate", "waits for the owner"))
    hands.do(work.StartStep(hands.job, "roof", step.id))
    hands.do(supplement.AddSupplementItem(hands.job, "two scratches", "tailgate"))
    yield hands
    made.bench.close()
    shutil.rmtree(folder)


def of_arrival(h: Hands) -> list[Move]:
    j, picture, lamp = h.job, h.picture, h.shop.bench.shop().lamps[0].id
    mark, group = picture.marks[0].id, h.shop.group(h.job, "roof").id
    return [
        arrival.NewJob(car={"colour": "x", "length_mm": 4700.0, "year": 2020}, plate="a", owner={"name": "b"}),
        arrival.DescribeCar(j, {"colour": "a", "vin": "b"}, "p"), arrival.SetOwner(j, {"name": "x"}),
        arrival.SetVisit(j, {"odometer_in": 5, "light": "x"}), arrival.SetHopes(j, {"hoped_level": "x"}),
        arrival.AddDamage(j, "x", "roof"), arrival.StrikeDamage(j, picture.damages[0].id),
        surface.SetPaintSystem(j, group, "matt"), surface.MakeGroup(j, "n", ("roof",)),
        surface.SetState(j, ("roof",), "wiped"), surface.HoldPanel(j, "roof", "two words"),
        surface.ReleasePanel(j, "tailgate"),
        washing.RecordWashStep(j, "clay", ("roof",), "p", "two words", "n"),
        washing.RecordRubTest(j, "roof", "colour", "n"),
        supplement.AddSupplementItem(j, "x", "roof", mark),
        supplement.StrikeSupplementItem(j, picture.supplement[0].id),
        marks.RecordMark(j, "roof", "swirl", 2, 1, "target", at(h), (10.0, 10.0), "", lamp, 3, 4.0, 5.0, "n"),
        marks.CorrectMark(j, mark, {"severity": 2, "count": 2, "area_cm2": 2.0, "lamp_id": lamp, "kind": "swirl"}),
        marks.LookAgain(j, mark, 1, 0, lamp, "n"), marks.LookedNothingSeen(j, "roof", lamp),
    ]  # fmt: skip


def of_thickness(h: Hands) -> list[Move]:
    j, picture, place = h.job, h.picture, h.picture.places[0].id
    session, reading = picture.sessions[-1].id, picture.readings[0].id
    return [
        readings.StartSession(j, h.shop.gauge, 20.0, "n"), readings.RecordCheck(j, session, h.shop.zero, (0.1,)),
        readings.RecordCheck(j, session, h.shop.foil, (102.0,), True), readings.ProposePlaces(j, "bonnet", 5),
        readings.AddPlace(j, "roof", at(h)), readings.StrikeReading(j, reading),
        readings.RecordReading(j, "roof", 110.0, "", place, session, "110", "um", "typed", "n", ("double",)),
        readings.DecidePlace(j, place, "as_found", "kept", "two words"),
        ImportReadings(j, (ImportedReading("roof", 110.0, "um", 1, "n", "110"),), "f"),
        ShiftBack(j, picture.readings[1].id), ChangeSides(j, ("door_front_r",)), NotAValue(j, reading),
        ReadAsMil(j, reading), readings.AddPlace(j, "roof", at(h), "chosen", "shut"),
        readings.RecordReading(j, "roof", 110.0, "", place, layered(h), "110 / 40", clear_um=40.0),
        gloss.RecordGloss(j, "roof", 60, 84.2, place, meter(h), "60: 84.2", "typed", "n", ("double",)),
        tray.HoldValues((tray.Sent("118 / 42", "w", h.shop.gauge, 118.0, "um", "", 42.0, None),), j),
        ImportReadings(j, (ImportedReading("roof", 110.0, "um", 1, "n", "110", clear_um=40.0),), "f"),
        ImportReadings(j, (ImportedReading("roof", None, "um", 1, "n", "84", angle_deg=60, value_gu=84.0),), "f"),
    ]  # fmt: skip


def layered(h: Hands) -> str:
    """A spell of a gauge that resolves layers."""
    gauge = h.do(shop.AddToShop("gauge", {"name": "layers", "principle": "ultrasonic", "layers": True}))
    return h.session(gauge)


def meter(h: Hands) -> str:
    """A spell of a gloss meter."""
    return h.session(h.do(shop.AddToShop("gauge", {"name": "gloss", "principle": "gloss", "angles_deg": (20, 60, 85)})))


def of_work(h: Hands) -> list[Move]:
    j, group, trial = h.job, h.shop.group(h.job, "roof").id, h.picture.trials[-1]
    technique = {"dial": "high", "force_n": 3.0, "section_w_mm": 300.0, "passes": 4, "seconds": 40.0,
                 "surface_before_c": 20.0, "note": "n"}  # fmt: skip
    step = {"combination_id": trial.combination_id, "means": "machine", "section_m2": 0.1, "spread_s": 1.0,
            "overlap": 0.1, "pad_care_every": 4, "setup_s": 1.0}  # fmt: skip
    return [
        trials.RecordTrial(j, group, "roof", trial.combination_id, "typical", trial.id, at(h), technique),
        trials.CorrectTrial(j, trial.id, technique), trials.JudgeTrial(j, trial.id, "yes", "clear", "", False, "n"),
        work.AdoptProcess(j, group, [step], "w"), work.FinishStep(j, "roof", "finished", 3.0),
        work.StartStep(j, "tailgate", h.picture.steps[0].id, "two words"), work.TickSections(j, "roof", 3),
        handover.RecordProtection(j, ("roof",), "p", "sealant", "b", 20.0, 50.0, 20.0, 3.0),
        handover.RecordAcceptance(j, "with_remarks", "r", "l"),
        handover.Sign(j, "owner", "drawn", "n", [[(0.1, 0.1), (0.2, 0.2)]], "handover", "s"),
    ]  # fmt: skip


def of_shop(h: Hands) -> list[Move]:
    machine = {"name": "g", "orbit_mm": 8.0, "plate_mm": 125.0}
    gauge = {"name": "g", "substrates": ("steel",), "resolution_um": 1.0, "accuracy_share": 0.01}
    return [
        shop.AddToShop("gauge", gauge), shop.AddToShop("shim", {"label": "s", "value_um": 50.0, "accuracy_um": 1.0}),
        shop.AddToShop("product", {"name": "g", "working_time_s": 60.0}), shop.AddToShop("machine", machine),
        shop.AddToShop("pad", {"name": "g", "diameter_mm": 150.0}),
        shop.ChangeInShop("gauge", h.shop.gauge, {"resolution_um": 1.0, "accuracy_fixed_um": 1.0}),
        shop.SetSetting("currency", "EUR"), *(shop.SetSetting(key, 5.0) for key in TOTALS),
    ]  # fmt: skip


def at(h: Hands) -> EdgePosition:
    p = h.picture.places[0]
    return EdgePosition(p.edge_a, p.edge_a_mm, p.edge_b, p.edge_b_mm, p.panel_w_mm, p.panel_h_mm)


def strange(value: Any) -> Iterator[Any]:
    """The value with one part of it made strange at a time."""
    if isinstance(value, bool):
        return
    if isinstance(value, (int, float)):
        yield from NUMBERS
    elif isinstance(value, str):
        yield from TEXTS
    elif isinstance(value, Mapping):
        yield from ({**value, key: odd} for key, part in value.items() for odd in strange(part))
    elif is_dataclass(value) and not isinstance(value, type):
        for f in fields(value):
            yield from (replace(value, **{f.name: odd}) for odd in strange(getattr(value, f.name)))
    elif isinstance(value, (tuple, list)):
        yield type(value)()
        for i, part in enumerate(value):
            yield from (type(value)([*value[:i], odd, *value[i + 1 :]]) for odd in strange(part))


def looked_at(h: Hands) -> None:
    """All that is drawn and decided from a job."""
    picture = h.picture
    due(picture)
    permissions(picture)
    gloss_found(picture)
    references(picture)
    changes(picture)
    work_standing(picture, h.shop.clock.now())
    mark_results(picture)
    for group in picture.groups:
        told(picture, group.id)


@pytest.mark.slow
@pytest.mark.parametrize("part", range(4))
@pytest.mark.parametrize("moves_of", [of_arrival, of_thickness, of_work, of_shop])
def test_no_value_of_any_field_breaks_more_than_its_own_move(hands: Hands, moves_of: Any, part: int) -> None:
    taken = refused = 0
    for move in moves_of(hands)[part::4]:
        for odd in strange(move):
            try:
                done = hands.shop.bench.do(odd)
            except DetailbenchError as error:
                refused += bool(str(error))
                continue
            if done.kinds:
                looked_at(hands)
                hands.shop.bench.undo(done.scope)
                taken += 1
    assert taken > 0
    assert refused > 0
    assert check(hands.shop.bench.store).troubles == ()
