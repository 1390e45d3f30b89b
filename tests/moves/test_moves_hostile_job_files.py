"""A job's file written by a hostile hand: nothing it holds reaches a file outside, an owner's limit, or a page."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from invented_findings import Hands
from invented_shop import INVENTED_NOW, InventedShop
from photographed_samples import photo

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadFile, BadInput, RecordTrouble
from detailbench.findings.limits import limits_in_force
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.arrival import AddDamage, DescribeCar
from detailbench.moves.bench import Bench
from detailbench.moves.custody import NoteCustody
from detailbench.moves.intake import AddRemark, AddRepair
from detailbench.moves.job_exchange import ImportJob, files_beside, write_job
from detailbench.moves.limits import AddLimit
from detailbench.moves.mishaps import RecordMishap, TellMishap
from detailbench.moves.other_work import RecordOtherWork
from detailbench.moves.photos import AddPhoto
from detailbench.moves.washing import RecordWashStep
from detailbench.record.evidence import EvidenceStore

Body = dict[str, Any]


@pytest.fixture
def body(invented: InventedShop, tmp_path: Path) -> Body:
    """A job with one of what a day brings, as its file holds it."""
    hands = Hands(invented, invented.job())
    job = hands.job
    hands.do(hands.adopted("roof", means="sanding") and AddLimit(job, "bar_panel", ("roof",)))
    hands.do(NoteCustody(job, "in", {"energy": "fuel", "energy_percent": 40.0, "keys_count": 2}))
    asked = hands.do(AskOwner(job, "limit", "may we?", price=Decimal("12.50")))
    hands.do(AnswerOwner(job, asked, "no", "telephone"))
    mishap = hands.do(RecordMishap(job, "ladder fell", "roof"))
    hands.do(TellMishap(job, mishap, "owner", "telephone"))
    hands.do(RecordWashStep(job, "clay", ("bonnet",)))
    hands.do(RecordOtherWork(job, "glass", 5.0, Decimal(3)))
    hands.do(AddDamage(job, "dent", "roof"))
    hands.do(AddRepair(job, "wing painted", "roof"))
    hands.do(AddRemark(job, "be careful"))
    hands.do(AddPhoto(job, photo(), "one.jpg", panel="bonnet"))
    write_job(invented.bench.store, job, tmp_path / "job.json")
    return json.loads((tmp_path / "job.json").read_bytes())  # type: ignore[no-any-return]


@pytest.fixture
def theirs(tmp_path: Path) -> Iterator[Bench]:
    bench = Bench(tmp_path / "theirs", HandClock(INVENTED_NOW))
    yield bench
    bench.close()


def taken_in(bench: Bench, body: Body, files: Path | None = None) -> str:
    return bench.do(ImportJob(json.dumps(body).encode(), "job.json", files)).scope


def test_a_job_with_a_step_of_sanding_goes_out_and_in(body: Body, theirs: Bench, tmp_path: Path) -> None:
    job = taken_in(theirs, body, files_beside(tmp_path / "job.json"))
    assert [s.means for s in theirs.job(job).steps] == ["sanding", "machine"]


@pytest.mark.parametrize("sha256", ["../../../precious", "/precious", "AB" * 32, "ab" * 31, "", "ab" * 31 + "\n\n"])
def test_a_hash_that_is_none_leads_to_no_file(body: Body, theirs: Bench, sha256: str) -> None:
    body["things"]["evidence"][0]["sha256"] = sha256
    with pytest.raises(BadFile, match="sha256"):
        taken_in(theirs, body)


def test_no_file_outside_is_read_or_deleted_by_a_hash_that_is_none(tmp_path: Path) -> None:
    precious = tmp_path / "precious"
    precious.write_text("invented")
    files = EvidenceStore(tmp_path / "workshop" / "evidence")
    sha256 = "../../../precious"
    assert files.path("ab" * 32).parent.parent == files.folder
    with pytest.raises(RecordTrouble):
        files.drop(sha256)
    with pytest.raises(RecordTrouble):
        files.read(sha256)
    assert not files.has(sha256)
    assert precious.read_text() == "invented"


def forged_lift(body: Body) -> None:
    body["things"]["owner_limit"][0]["lifted_by"] = body["things"]["agreement"][0]["id"]


def field(table: str, name: str, value: Any) -> Callable[[Body], None]:
    def change(body: Body) -> None:
        body["things"][table][0][name] = value

    return change


@pytest.mark.parametrize(
    ("change", "where"),
    [
        (forged_lift, "lifted_by"),
        (field("agreement", "price", "1e400"), "price"),
        (field("agreement", "price", "-5"), "price"),
        (field("other_work", "price", "-0.01"), "price"),
        (field("other_work", "price", "1e400"), "price"),
        (field("custody", "energy_percent", 400), "energy_percent"),
        (field("custody", "energy_percent", -3), "energy_percent"),
        (field("custody", "keys_count", -5), "keys_count"),
        (field("custody", "keys_count", 10**12), "keys_count"),
        (field("mishap", "told", "mother"), "told"),
        (field("mishap", "channel", "smoke"), "channel"),
        (field("wash_step", "kind", "zz"), "kind"),
        (field("agreement", "about", "zz"), "about"),
        (field("damage", "part", "zz"), "part"),
        (field("stated_repair", "said_by", "zz"), "said_by"),
        (field("remark", "moment", "zz"), "moment"),
        (field("remark", "role", "zz"), "role"),
        (field("evidence", "size", -1), "size"),
        (field("job", "number", ""), "number"),
        (field("job", "number", "x" * 3000), "number"),
        (field("job", "number", "../2031-001"), "number"),
    ],
)
def test_what_no_move_writes_is_not_taken_in(
    body: Body, theirs: Bench, change: Callable[[Body], None], where: str
) -> None:
    change(body)
    with pytest.raises(BadFile, match=where):
        taken_in(theirs, body)
    assert theirs.shop().jobs == ()


def test_a_limit_lifted_by_its_own_yes_is_taken_in_lifted(
    invented: InventedShop, theirs: Bench, tmp_path: Path
) -> None:
    hands = Hands(invented, invented.job())
    hands.do(AddLimit(hands.job, "bar_panel", ("roof",)))
    asked = hands.do(AskOwner(hands.job, "limit", "may we?"))
    hands.do(AnswerOwner(hands.job, asked, "yes", "telephone"))
    write_job(invented.bench.store, hands.job, tmp_path / "lifted.json")
    job = taken_in(theirs, json.loads((tmp_path / "lifted.json").read_bytes()))
    assert limits_in_force(theirs.job(job)) == ()


def test_a_yes_that_the_journal_knows_nothing_of_lifts_nothing(body: Body, theirs: Bench) -> None:
    agreement = next(a for a in body["things"]["agreement"] if a["limit_id"])
    limit = next(each for each in body["things"]["owner_limit"] if each["id"] == agreement["limit_id"])
    limit["lifted_by"], agreement["answer"] = agreement["id"], "yes"
    with pytest.raises(BadFile, match="the journal tells otherwise"):
        taken_in(theirs, body)


def test_a_plate_known_here_stays_as_it_is(body: Body, invented: InventedShop, theirs: Bench) -> None:
    job = taken_in(theirs, body)
    car = theirs.job(job).car.id
    theirs.do(DescribeCar(job, {}, plate="INV 77"))
    other = invented.bench.do(_another_job(car)).scope
    write_job(invented.bench.store, other, invented.folder.parent / "other.json")
    second = json.loads((invented.folder.parent / "other.json").read_bytes())
    taken_in(theirs, second)
    assert theirs.job(job).said(car, "plate") == "INV 77"


def _another_job(car: str) -> Any:
    from detailbench.moves.arrival import NewJob

    return NewJob(car_id=car, owner={"name": "Invented Second"})


@pytest.mark.parametrize("price", ["1e400", "NaN", "-1"])
def test_a_price_no_one_pays_is_refused(invented: InventedShop, price: str) -> None:
    with pytest.raises(BadInput, match="price"):
        invented.bench.do(RecordOtherWork(invented.job(), "glass", price=Decimal(price)))
