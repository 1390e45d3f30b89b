"""What each move refuses, in words a person can act on. Nothing of a refused move is kept."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput, DetailbenchError, RecordTrouble, Refused
from detailbench.moves import arrival, handover, marks, readings, shop, surface, trials, work
from detailbench.moves.move import Move
from detailbench.record.checking import check

Make = Callable[[InventedShop, str], Move]
NAN = math.nan

# the move, the family, a part of its sentence
REFUSED: list[tuple[Make, type[DetailbenchError], str]] = [
    (lambda i, j: arrival.NewJob(style="coach"), BadInput, "no drawing of the body style “coach”"),
    (lambda i, j: arrival.NewJob(car={"wheels": 4}), BadInput, "no field “wheels”"),
    (lambda i, j: arrival.NewJob(car={"year": 19}), BadInput, "four digits"),
    (lambda i, j: arrival.NewJob(car={"lightness": "pale"}), BadInput, "dark, mid or light"),
    (lambda i, j: arrival.NewJob(car={"length_mm": 200.0}), BadInput, "does not fit this drawing"),
    (lambda i, j: arrival.NewJob(owner={"phone": "1"}), BadInput, "no field “phone”"),
    (lambda i, j: arrival.NewJob(owner={"name": "half a \udc00 sign"}), BadInput, "cannot be kept"),
    (lambda i, j: arrival.NewJob(kind="repair"), BadInput, "correction or an inspection"),
    (lambda i, j: arrival.NewJob(car_id="none"), RecordTrouble, "no car"),
    (lambda i, j: arrival.DescribeCar("none", {"colour": "red"}), RecordTrouble, "Nothing here has the id"),
    (lambda i, j: arrival.DescribeCar(j, {"style": "coach"}), BadInput, "no drawing"),
    (lambda i, j: arrival.DescribeCar(j, {"length_mm": NAN}), BadInput, "not a number"),
    (lambda i, j: arrival.DescribeCar(j, {"colour": 5}), BadInput, "Text is expected"),
    (lambda i, j: arrival.SetOwner(j, {"age": "50"}), BadInput, "no field “age”"),
    (lambda i, j: arrival.SetVisit(j, {"odometer_in": -1}), BadInput, "whole number, 0 or more"),
    (lambda i, j: arrival.SetVisit(j, {"odometer_in": 10**20}), BadInput, "too large"),
    (lambda i, j: arrival.SetVisit(j, {"odometer_in": True}), BadInput, "not a number"),
    (lambda i, j: arrival.SetVisit(j, {"odometer_unit": "leagues"}), BadInput, "km or mi"),
    (lambda i, j: arrival.SetVisit(j, {"arrived_at": "today"}), BadInput, "date or time"),
    (lambda i, j: arrival.SetVisit(j, {"arrived_at": i.clock.now().replace(tzinfo=None)}), BadInput, "offset"),
    (lambda i, j: arrival.SetHopes(j, {"mood": "good"}), BadInput, "no field “mood”"),
    (lambda i, j: arrival.AddDamage(j, "  "), BadInput, "Say in words"),
    (lambda i, j: arrival.AddDamage(j, "chip", panel="spoiler"), BadInput, "no panel “spoiler”"),
    (lambda i, j: arrival.StrikeDamage(j, "none"), RecordTrouble, "no damage"),
    (lambda i, j: surface.SetPaintSystem(j, i.group(j).id, "magic"), BadInput, "not a paint system"),
    (lambda i, j: surface.MakeGroup(j, "", ("bonnet",)), BadInput, "needs a name"),
    (lambda i, j: surface.MakeGroup(j, i.group(j).name, ("bonnet",)), BadInput, "of that name already"),
    (lambda i, j: surface.MakeGroup(j, "x", ("spoiler",)), BadInput, "no panel “spoiler”"),
    (lambda i, j: surface.SetState(j, ("bonnet",), clean="shiny"), BadInput, "shiny"),
    (lambda i, j: surface.SetState(j, (), clean="wiped"), BadInput, "Choose the panels"),
    (lambda i, j: surface.SetState(j, ("spoiler",), clean="wiped"), BadInput, "no panel “spoiler”"),
    (lambda i, j: surface.HoldPanel(j, "bonnet", "no"), BadInput, "at least two words"),
    (lambda i, j: surface.HoldPanel(j, "spoiler", "not this one"), BadInput, "no panel"),
    (lambda i, j: surface.ReleasePanel(j, "bonnet"), Refused, "not held back"),
    (lambda i, j: marks.RecordMark(j, "bonnet", "dragon", 3), BadInput, "no kind of mark"),
    (lambda i, j: marks.RecordMark(j, "spoiler", "swirl", 3), BadInput, "no panel “spoiler”"),
    (lambda i, j: marks.RecordMark(j, "bonnet", "swirl", 6), BadInput, "one digit from 0 to 5"),
    (lambda i, j: marks.RecordMark(j, "bonnet", "swirl", 3, depth=-1), BadInput, "one digit from 0 to 5"),
    (lambda i, j: marks.RecordMark(j, "bonnet", "swirl", 3, intent="erase"), BadInput, "not an intent"),
    (lambda i, j: marks.RecordMark(j, "bonnet", "swirl", 3, length_mm=NAN), BadInput, "not a number"),
    (lambda i, j: marks.CorrectMark(j, "none", {"severity": 1}), RecordTrouble, "Nothing here"),
    (lambda i, j: marks.LookedNothingSeen(j, "spoiler"), BadInput, "no panel “spoiler”"),
    (lambda i, j: readings.StartSession(j, "none"), RecordTrouble, "no gauge"),
    (lambda i, j: readings.StartSession(j, i.gauge, NAN), BadInput, "not a number"),
    (lambda i, j: readings.RecordReading(j, "bonnet", 118.0), Refused, "Choose the gauge first"),
    (lambda i, j: readings.RecordReading(j, "bonnet"), BadInput, "either a value or"),
    (lambda i, j: readings.RecordReading(j, "bonnet", 118.0, no_value="nothing"), BadInput, "either a value or"),
    (lambda i, j: readings.RecordReading(j, "bonnet", no_value="lost"), BadInput, "not a reason for no value"),
    (lambda i, j: readings.RecordReading(j, "bonnet", -3.0), BadInput, "never below zero"),
    (lambda i, j: readings.RecordReading(j, "bonnet", NAN), BadInput, "not a number"),
    (lambda i, j: readings.ProposePlaces(j, "spoiler"), BadInput, "no panel “spoiler”"),
    (lambda i, j: readings.RecordCheck(j, i.checked(j), i.foil, ()), BadInput, "at least one value"),
    (lambda i, j: readings.RecordCheck(j, i.checked(j), i.foil, (-1.0,)), BadInput, "only possible on the zero plate"),
    (lambda i, j: handover.RecordProtection(j, ("bonnet",), " "), BadInput, "Name what was put on"),
    (lambda i, j: handover.RecordProtection(j, (), "x"), BadInput, "Choose the panels"),
    (lambda i, j: handover.RecordProtection(j, ("bonnet",), "x", kind="magic"), BadInput, "a coating, a sealant"),
    (lambda i, j: handover.RecordProtection(j, ("bonnet",), "x", humidity_percent=0.0), BadInput, "above 0"),
    (lambda i, j: handover.RecordAcceptance(j, "delighted"), BadInput, "accepted, with remarks"),
    (lambda i, j: handover.RecordAcceptance(j, "with_remarks"), BadInput, "remarks first"),
    (lambda i, j: handover.Sign(j, "neighbour"), BadInput, "Owner, bearer or workshop"),
    (lambda i, j: handover.Sign(j, "owner", way="wink"), BadInput, "not a way of signing"),
    (lambda i, j: handover.Sign(j, "owner"), BadInput, "Nothing was drawn"),
    (lambda i, j: handover.Sign(j, "owner", strokes=[[(0, 0), (NAN, 1)]]), BadInput, "not a number"),
    (lambda i, j: shop.AddToShop("job", {}), BadInput, "not something a shop keeps"),
    (lambda i, j: shop.AddToShop("gauge", {"name": " "}), BadInput, "name first"),
    (lambda i, j: shop.AddToShop("gauge", {"name": "x", "colour": "red"}), BadInput, "no field “colour”"),
    (lambda i, j: shop.AddToShop("gauge", {"name": "x", "id": "mine"}), BadInput, "no field “id”"),
    (lambda i, j: shop.AddToShop("gauge", {"name": "x", "accuracy_share": -0.1}), BadInput, "below zero"),
    (lambda i, j: shop.AddToShop("gauge", {"name": "x", "accuracy_fixed_um": "1"}), BadInput, "not a number"),
    (lambda i, j: shop.AddToShop("shim", {"label": "x"}), BadInput, "The certified value is missing"),
    (lambda i, j: shop.AddToShop("machine", {"name": "x", "movement": "jump"}), BadInput, "must be one of"),
    (lambda i, j: shop.AddToShop("combination", {"machine_id": "a", "pad_id": "b", "product_id": "c"}),
     RecordTrouble, "no machine"),
    (lambda i, j: shop.ChangeInShop("gauge", i.gauge, {"name": ""}), BadInput, "name first"),
    (lambda i, j: shop.ChangeInShop("gauge", "none", {"name": "x"}), RecordTrouble, "no gauge"),
    (lambda i, j: shop.SetSetting("mood", "good"), BadInput, "no setting “mood”"),
    (lambda i, j: shop.SetSetting("leave_below_um", "ninety"), BadInput, "number of 0 or more"),
    (lambda i, j: shop.SetSetting("leave_below_um", NAN), BadInput, "number of 0 or more"),
    (lambda i, j: shop.SetSetting("plausible_low_um", None), BadInput, "number of 0 or more"),
    (lambda i, j: shop.SetSetting("unit", "ell"), BadInput, "um or mil"),
    (lambda i, j: shop.SetSetting("shop_name", 5), BadInput, "Text is expected"),
    (lambda i, j: trials.JudgeTrial(j, "none", "yes", "clear"), RecordTrouble, "Nothing here"),
    (lambda i, j: trials.JudgeTrial(j, "none", "maybe", "clear"), BadInput, "not an outcome"),
    (lambda i, j: work.AdoptProcess(j, i.group(j).id, []), BadInput, "at least one step"),
    (lambda i, j: work.StartStep(j, "bonnet", "none"), Refused, "No such step is adopted"),
    (lambda i, j: work.FinishStep(j, "bonnet"), Refused, "Nothing is running"),
    (lambda i, j: work.FinishStep(j, "bonnet", ended="gone"), BadInput, "finished, paused or left running"),
    (lambda i, j: work.FinishStep(j, "bonnet", minutes=-1.0), BadInput, "more than nothing"),
    (lambda i, j: work.TickSections(j, "bonnet", 1), Refused, "Nothing is running"),
]  # fmt: skip


@pytest.mark.parametrize(("make", "family", "told"), REFUSED, ids=[f"{n:02}" for n in range(len(REFUSED))])
def test_a_move_that_cannot_be_made_says_why_and_leaves_no_trace(
    invented: InventedShop, make: Make, family: type[DetailbenchError], told: str
) -> None:
    job = invented.job()
    move = make(invented, job)
    before = invented.bench.store.head()
    with pytest.raises(family) as caught:
        invented.bench.do(move)
    assert told in str(caught.value)
    assert type(caught.value) is family
    assert invented.bench.store.head() == before
    assert check(invented.bench.store).troubles == ()
