"""Taking the car in: bearer, custody, stated repairs, damage by part, remarks, limits, and when it came."""

from __future__ import annotations

from datetime import timedelta

import pytest
from invented_shop import INVENTED_NOW, InventedShop

from detailbench.basics.errors import BadInput, RecordTrouble, Refused
from detailbench.findings.custody import custody_of, stands_now
from detailbench.findings.entered_later import arrival_entered, entered_after_arrival
from detailbench.findings.parties import authority_of, bearer_for, owner_of
from detailbench.moves import agreeing, arrival, custody, intake, limits, marks, parties, photos, surface
from detailbench.moves.documents import CloseDocument, open_key
from detailbench.moves.handover import CarLeaves
from detailbench.moves.shop import SetSetting
from detailbench.moves.trials import RecordTrial
from detailbench.moves.turning import CarReturns
from detailbench.moves.washing import RecordWashStep
from detailbench.photos.drawn import SWIRLS, drawn_reflection
from detailbench.seal.keys import WorkshopKey


def a_key(invented: InventedShop) -> WorkshopKey:
    invented.bench.do(SetSetting("shop_name", "Invented Bay"))
    return open_key(invented.folder, invented.bench.shop(), "invented words", invented.clock)


PICTURE = drawn_reflection(SWIRLS["none"], seed=7)


# owner and bearer
def test_a_company_has_a_contact_and_both_are_personal(invented: InventedShop) -> None:
    job = invented.job("Invented Motors")
    invented.bench.do(arrival.SetOwner(job, {"contact": "Third Invented"}, kind="company"))
    picture = invented.picture(job)
    owner = owner_of(picture)
    assert owner is not None
    assert owner.kind == "company"
    assert picture.said(owner.id, "contact") == "Third Invented"
    assert not any("Invented" in str(line.says) for line in invented.bench.entries(job))


def test_one_bearer_brings_and_fetches_until_another_name_is_given_for_one_half(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(parties.SetBearer(job, {"name": "Fourth Invented", "authority": "the owner's word"}, "both"))
    picture = invented.picture(job)
    assert bearer_for(picture, "brings") == bearer_for(picture, "fetches") is not None
    invented.bench.do(parties.SetBearer(job, {"name": "Fifth Invented"}, "fetches"))
    picture = invented.picture(job)
    brings, fetches = bearer_for(picture, "brings"), bearer_for(picture, "fetches")
    assert brings is not None
    assert fetches is not None
    assert [picture.said(b.id, "name") for b in (brings, fetches)] == ["Fourth Invented", "Fifth Invented"]
    assert (brings.errand, authority_of(picture, brings), fetches.errand, authority_of(picture, fetches)) == (
        "brings", "the owner's word", "fetches", "",
    )  # fmt: skip


def test_more_of_the_same_bearer_makes_no_second_one(invented: InventedShop) -> None:
    job = invented.job()
    for values in ({"name": "Fourth Invented"}, {"telephone": "000 9"}, {"authority": "by telephone"}):
        invented.bench.do(parties.SetBearer(job, values))
    invented.bench.do(parties.SetBearer(job, {}, "both"))
    picture = invented.picture(job)
    (bearer,) = [p for p in picture.parties if p.role == "bearer"]
    assert (bearer.errand, authority_of(picture, bearer), bearer.authority) == ("both", "by telephone", "")


def test_a_bearer_is_taken_out_and_the_owner_is_not(invented: InventedShop) -> None:
    job = invented.job()
    made = invented.bench.do(parties.SetBearer(job, {"name": "Fourth Invented"})).id
    invented.bench.do(parties.StrikeBearer(job, made))
    owner = owner_of(invented.picture(job))
    assert owner is not None
    assert bearer_for(invented.picture(job), "brings") is None
    with pytest.raises(BadInput, match="Only a bearer"):
        invented.bench.do(parties.StrikeBearer(job, owner.id))


def test_a_known_car_comes_again_with_its_owner_as_last(invented: InventedShop) -> None:
    first = invented.job("Invented Motors")
    invented.bench.do(arrival.SetOwner(first, {"contact": "Third Invented"}, kind="company"))
    car = invented.picture(first).car.id
    again = invented.bench.do(arrival.NewJob(car_id=car, owner_as_last=True)).scope
    other = invented.bench.do(arrival.NewJob(car_id=car, owner={"name": "New Invented"})).scope
    as_last, changed = owner_of(invented.picture(again)), owner_of(invented.picture(other))
    assert as_last is not None
    assert changed is not None
    said = invented.picture(again).said
    assert [said(as_last.id, f) for f in ("name", "contact", "telephone")] == [
        "Invented Motors", "Third Invented", "000 111",
    ]  # fmt: skip
    assert as_last.kind == "company"
    assert (said(changed.id, "name"), said(changed.id, "telephone"), changed.kind) == ("New Invented", "", "person")


# custody
def test_of_every_field_of_custody_the_newest_that_was_filled_counts(invented: InventedShop) -> None:
    job = invented.job()
    for values in (
        {"energy": "fuel", "energy_percent": 40.0, "keys_count": 2, "keys_at": "board, hook 4"},
        {"valuables": "child seat"},
        {"keys_count": 1},
        {"energy_percent": 0.0},
    ):
        invented.bench.do(custody.NoteCustody(job, "in", values))
    invented.bench.do(custody.NoteCustody(job, "out", {"keys_count": 3}))
    now = custody_of(invented.picture(job), "in")
    assert (now.energy, now.energy_percent, now.keys_count, now.keys_at) == ("fuel", 0.0, 1, "board, hook 4")
    assert (now.valuables, now.warning_lamps, now.stands_at) == ("child seat", "", "")
    entries = invented.picture(job).custody
    assert now.entry_of["keys_count"] == entries[2].id
    assert now.entry_of["keys_at"] == entries[0].id
    assert custody_of(invented.picture(job), "out").keys_count == 3


def test_a_field_of_custody_is_emptied_again_and_undo_brings_it_back(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(custody.NoteCustody(job, "in", {"valuables": "child seat", "keys_count": 2}))
    invented.bench.do(custody.NoteCustody(job, "in", {"valuables": ""}))
    assert custody_of(invented.picture(job), "in").valuables == ""
    assert custody_of(invented.picture(job), "in").keys_count == 2
    invented.bench.undo(job)
    assert custody_of(invented.picture(job), "in").valuables == "child seat"


@pytest.mark.parametrize(
    "values",
    [
        {"energy": "steam"},
        {"energy_percent": 101.0},
        {"energy_percent": float("nan")},
        {"keys_count": -1},
        {"keys_count": 1.5},
        {"colour": "red"},
    ],
)
def test_custody_that_cannot_be_is_refused_and_nothing_is_kept(
    invented: InventedShop, values: dict[str, object]
) -> None:
    job = invented.job()
    with pytest.raises(BadInput):
        invented.bench.do(custody.NoteCustody(job, "in", {"keys_at": "board", **values}))
    assert invented.picture(job).custody == ()


def test_the_car_stands_where_it_was_put_last(invented: InventedShop) -> None:
    job = invented.job()
    assert stands_now(invented.picture(job)) == ""
    invented.bench.do(custody.NoteCustody(job, "in", {"stands_at": "yard"}))
    invented.bench.do(custody.MoveCar(job, "bay 1"))
    invented.bench.do(custody.MoveCar(job, "bay 2", words="the neighbour"))
    moved = invented.picture(job).car_moves
    assert [(m.from_place, m.to_place, m.person_id, m.words) for m in moved] == [
        ("yard", "bay 1", invented.person, ""),
        ("bay 1", "bay 2", "", "the neighbour"),
    ]
    invented.bench.do(custody.StrikeCarMove(job, moved[1].id))
    assert stands_now(invented.picture(job)) == "bay 1"
    with pytest.raises(BadInput, match="where the car stands"):
        invented.bench.do(custody.MoveCar(job, " "))
    with pytest.raises(RecordTrouble):
        invented.bench.do(custody.MoveCar(job, "bay 3", person_id="nobody"))


# what was said
def test_damage_names_its_part_and_a_panel_only_where_it_is_one(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(arrival.AddDamage(job, "chip", "bonnet"))
    invented.bench.do(arrival.AddDamage(job, "kerb mark", part="wheel", where=" rear right "))
    invented.bench.do(arrival.AddDamage(job, "torn mat"))
    assert [(d.part, d.panel, d.where) for d in invented.picture(job).damages] == [
        ("panel", "bonnet", ""), ("wheel", "", "rear right"), ("other", "", ""),
    ]  # fmt: skip
    with pytest.raises(BadInput, match="Choose the panel"):
        invented.bench.do(arrival.AddDamage(job, "chip", part="panel"))
    with pytest.raises(BadInput, match="Damage is on"):
        invented.bench.do(arrival.AddDamage(job, "chip", part="soul"))


def test_a_repair_is_somebodys_word_and_is_struck_out_again(invented: InventedShop) -> None:
    job = invented.job()
    made = invented.bench.do(intake.AddRepair(job, "painted", "wing_front_r", "bearer")).id
    (repair,) = invented.picture(job).repairs
    assert (repair.said_by, repair.panel) == ("bearer", "wing_front_r")
    invented.bench.do(intake.StrikeRepair(job, made))
    assert invented.picture(job).repairs == ()
    for bad in (
        intake.AddRepair(job, " "),
        intake.AddRepair(job, "x", "no_such_panel"),
        intake.AddRepair(job, "x", said_by="a rumour"),
    ):
        with pytest.raises(BadInput):
            invented.bench.do(bad)


def test_a_remark_is_kept_apart_and_its_words_are_in_no_row_of_the_journal(invented: InventedShop) -> None:
    job = invented.job()
    made = invented.bench.do(intake.AddRemark(job, "mind the <roof>", "arrival", "bearer")).id
    picture = invented.picture(job)
    assert picture.said(made, "remarks") == "mind the <roof>"
    assert [(r.moment, r.role) for r in picture.remarks] == [("arrival", "bearer")]
    assert not any("roof" in line.says for line in invented.bench.entries(job))
    for bad in (
        intake.AddRemark(job, ""),
        intake.AddRemark(job, "x", "lunch"),
        intake.AddRemark(job, "x", role="cat"),
    ):
        with pytest.raises(BadInput):
            invented.bench.do(bad)


# limits
@pytest.mark.parametrize(
    ("limit", "told"),
    [
        ({"kind": "bar_panel"}, "Choose the panel"),
        ({"kind": "most_off"}, "how much may come off"),
        ({"kind": "most_off", "most_off_um": 0.0}, "above 0"),
        ({"kind": "most_off", "most_off_um": float("inf")}, "not a number"),
        ({"kind": "no_sanding", "most_off_um": 3.0}, "Only “most that may come off”"),
        ({"kind": "other", "words": "  "}, "in words"),
        ({"kind": "no_breathing"}, "not a limit"),
        ({"kind": "no_sanding", "panels": ("no_such_panel",)}, "no panel"),
    ],
)
def test_a_limit_that_says_nothing_is_refused(invented: InventedShop, limit: dict[str, object], told: str) -> None:
    job = invented.job()
    with pytest.raises(BadInput, match=told):
        invented.bench.do(limits.AddLimit(job, **limit))  # type: ignore[arg-type]
    assert invented.picture(job).limits == ()


def test_the_same_limit_twice_is_said_and_kept_once(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(limits.AddLimit(job, "no_sanding"))
    assert "stands already" in invented.bench.do(limits.AddLimit(job, "no_sanding")).note
    invented.bench.do(limits.AddLimit(job, "no_sanding", ("roof",)))
    assert [x.panels for x in invented.picture(job).limits] == [(), ("roof",)]


def test_a_limit_is_struck_out_only_while_nothing_rests_on_it(invented: InventedShop) -> None:
    job = invented.job()
    free = invented.bench.do(limits.AddLimit(job, "no_sanding")).id
    invented.bench.do(limits.StrikeLimit(job, free))
    assert invented.picture(job).limits == ()
    bound = invented.bench.do(limits.AddLimit(job, "other", words="mind the roof")).id
    invented.bench.do(agreeing.AcknowledgeLimits(job))
    with pytest.raises(Refused, match="only an agreement"):
        invented.bench.do(limits.StrikeLimit(job, bound))


# when it came
def test_an_arrival_told_later_keeps_both_times_and_says_how_much_later(invented: InventedShop) -> None:
    job = invented.job()
    came = invented.clock.now() - timedelta(days=4, hours=3)
    done = invented.bench.do(custody.SetArrived(job, came))
    visit = invented.picture(job).visits[-1]
    assert (visit.arrived_at, visit.stated_at) == (came, came)
    assert visit.entered_at == invented.clock.now()
    assert "4 days" in done.note
    found = arrival_entered(invented.picture(job))
    assert found is not None
    assert (found.words, found.after_work) == ("entered 4 days after the stated arrival", False)


def test_a_car_cannot_have_come_later_than_now_or_after_it_left(invented: InventedShop) -> None:
    job = invented.job()
    with pytest.raises(BadInput, match="still to come"):
        invented.bench.do(custody.SetArrived(job, invented.clock.now() + timedelta(minutes=1)))
    with pytest.raises(BadInput, match="offset"):
        invented.bench.do(custody.SetArrived(job, invented.clock.now().replace(tzinfo=None)))
    assert arrival_entered(invented.picture(job)) is None
    invented.bench.do(custody.SetArrived(job, invented.clock.now() - timedelta(hours=3)))
    found = arrival_entered(invented.picture(job))
    assert found is not None
    assert found.words == "entered 3 hours after the stated arrival"


def test_a_photo_put_in_after_work_had_begun_says_so(invented: InventedShop) -> None:
    """A whole job entered on Friday with Monday's photos as arrival: allowed, every entry says when it was made."""
    job = invented.job()
    invented.bench.do(custody.SetArrived(job, invented.clock.now() - timedelta(days=4)))
    group = invented.group(job)
    combination = invented.bench.shop().combinations[0].id
    before = invented.bench.do(arrival.AddDamage(job, "chip", "bonnet")).id
    invented.clock.forward(minutes=5)
    invented.bench.do(RecordTrial(job, group.id, "bonnet", combination))
    photo = invented.bench.do(photos.AddPhoto(job, PICTURE, "monday.jpg", moment="arrival", shows="whole_car")).id
    picture = invented.picture(job)
    damage = entered_after_arrival(picture, next(d for d in picture.damages if d.id == before))
    late = entered_after_arrival(picture, next(p for p in picture.photos if p.id == photo))
    assert damage is not None
    assert late is not None
    assert damage.words == "entered 4 days after the stated arrival"
    assert late.words == "entered 4 days after the stated arrival, after work had begun"


def test_washing_counts_as_work_begun_for_what_is_entered_of_the_arrival_afterwards(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(custody.SetArrived(job, invented.clock.now() - timedelta(hours=5)))
    first = invented.bench.do(arrival.AddDamage(job, "chip", "bonnet")).id
    invented.bench.do(surface.SetState(job, ("bonnet",), clean="washed"))
    second = invented.bench.do(arrival.AddDamage(job, "dent", "bonnet")).id
    picture = invented.picture(job)
    later = {d.id: entered_after_arrival(picture, d) for d in picture.damages}
    assert [later[first].after_work, later[second].after_work] == [False, True]  # type: ignore[union-attr]


# arrival after what was done on the visit: one of the two is wrong
@pytest.mark.parametrize("done", ["wash", "mark", "record"])
def test_the_car_cannot_have_come_after_what_was_done_on_it(invented: InventedShop, done: str) -> None:
    job = invented.job()
    invented.clock.forward(minutes=30)
    move, named = {
        "wash": (RecordWashStep(job, "contact_wash", ("bonnet",)), "contact wash"),
        "mark": (marks.RecordMark(job, "bonnet", "swirl", 3), "mark"),
        "record": (CloseDocument(job, a_key(invented), "arrival"), "arrival record closed"),
    }[done]
    invented.bench.do(move)
    at = invented.clock.now()
    invented.clock.forward(minutes=30)
    with pytest.raises(BadInput, match=f"here by 2031-03-10 09:00.*{named}") as found:
        invented.bench.do(custody.SetArrived(job, at + timedelta(minutes=1)))
    assert found.value.field == "at"
    assert invented.picture(job).visits[-1].arrived_at == INVENTED_NOW
    invented.bench.do(custody.SetArrived(job, at))
    assert invented.picture(job).visits[-1].arrived_at == at


def test_what_was_done_on_an_earlier_visit_does_not_count(invented: InventedShop) -> None:
    job = invented.job()
    invented.bench.do(surface.SetState(job, ("bonnet",), clean="washed"))
    invented.clock.forward(hours=1)
    invented.bench.do(CarLeaves(job))
    invented.clock.forward(hours=2)
    invented.bench.do(CarReturns(job))
    back = invented.clock.now()
    invented.clock.forward(hours=1)
    invented.bench.do(custody.SetArrived(job, back + timedelta(minutes=20)))
    assert invented.picture(job).visits[-1].arrived_at == back + timedelta(minutes=20)


# what a photo shows
def test_a_photo_says_what_it_shows_when_it_is_kept_or_later(invented: InventedShop) -> None:
    job = invented.job()
    kept = invented.bench.do(photos.AddPhoto(job, PICTURE, moment="arrival", shows="odometer")).id
    assert invented.picture(job).photos[0].shows == "odometer"
    invented.bench.do(photos.CorrectPhoto(job, kept, {"shows": "clock"}))
    assert invented.picture(job).photos[0].shows == "clock"
    with pytest.raises(BadInput, match="A photo shows"):
        invented.bench.do(photos.CorrectPhoto(job, kept, {"shows": "a cat"}))
    with pytest.raises(BadInput, match="A photo shows"):
        invented.bench.do(photos.AddPhoto(job, PICTURE, shows="a cat"))


# which car: VIN, plate
def test_an_old_chassis_number_is_kept_as_it_is_and_no_number_has_its_reason(invented: InventedShop) -> None:
    old = invented.bench.do(arrival.NewJob(car={"vin": "4711", "year": 1961}))
    assert old.note
    assert invented.picture(old.scope).car.vin == "4711"
    none = invented.bench.do(arrival.NewJob(car={"vin_absent": "plate lost"})).scope
    assert (invented.picture(none).car.vin, invented.picture(none).car.vin_absent) == ("", "plate lost")


def test_the_same_plate_on_another_car_is_another_car(invented: InventedShop) -> None:
    first = invented.job()
    second = invented.bench.do(arrival.NewJob(car={"described": "another"}, plate="INV 01")).scope
    one, other = invented.picture(first), invented.picture(second)
    assert one.said(one.car.id, "plate") == other.said(other.car.id, "plate") == "INV 01"
    assert one.car.id != other.car.id
    assert other.last is None
