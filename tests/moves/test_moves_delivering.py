"""Closing each kind of document, and noting how it left: not undone, corrected by what follows."""

from __future__ import annotations

from datetime import timedelta

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import BadInput, Refused
from detailbench.moves.delivering import CorrectDelivery, NoteDelivery
from detailbench.moves.documents import CloseDocument, newest_document, open_key
from detailbench.moves.shop import SetSetting
from detailbench.record.checking import check
from detailbench.seal.keys import WorkshopKey
from detailbench.seal.verdict import Outcome
from detailbench.seal.verifying import verify_pdf


@pytest.fixture
def key(invented: InventedShop) -> WorkshopKey:
    invented.bench.do(SetSetting("shop_name", "Invented Bay"))
    return open_key(invented.folder, invented.bench.shop(), "invented words", invented.clock)


@pytest.fixture
def job(invented: InventedShop) -> str:
    return invented.job()


def arrival(invented: InventedShop, job: str, key: WorkshopKey) -> str:
    return invented.bench.do(CloseDocument(job, key, "arrival")).id


def test_a_document_names_what_it_replaces_among_those_of_its_kind(
    invented: InventedShop, key: WorkshopKey, job: str
) -> None:
    first = arrival(invented, job, key)
    report = invented.bench.do(CloseDocument(job, key)).id
    invented.clock.forward(minutes=5)
    arrival(invented, job, key)
    invented.bench.do(CloseDocument(job, key))
    documents = invented.picture(job).documents
    assert [(d.kind, d.replaces) for d in documents] == [
        ("arrival", ""),
        ("handover", ""),
        ("arrival", first),
        ("handover", report),
    ]
    for kind in ("arrival", "handover"):
        document = newest_document(invented.bench.store, job, kind)
        found = verify_pdf(
            invented.bench.evidence_bytes(document.sha256),
            recorded_sha256=document.sha256,
            expected_fingerprint=key.fingerprint,
        )
        assert found.outcome == Outcome.UNCHANGED
    assert newest_document(invented.bench.store, job, "").kind == "handover"


def test_a_supplement_of_nothing_is_not_closed(invented: InventedShop, key: WorkshopKey, job: str) -> None:
    head = invented.bench.store.head()
    with pytest.raises(Refused, match="enter what was found first"):
        invented.bench.do(CloseDocument(job, key, "supplement"))
    assert invented.bench.store.head() == head


def test_there_is_no_other_kind_of_document(invented: InventedShop, key: WorkshopKey, job: str) -> None:
    with pytest.raises(BadInput, match="arrival record, a supplement or a handover report"):
        invented.bench.do(CloseDocument(job, key, "valuation"))


def test_the_paper_is_the_one_the_shop_set(invented: InventedShop, key: WorkshopKey, job: str) -> None:
    import io

    import pikepdf

    invented.bench.do(SetSetting("page_size", "Letter"))
    arrival(invented, job, key)
    content = invented.bench.evidence_bytes(newest_document(invented.bench.store, job, "arrival").sha256)
    with pikepdf.open(io.BytesIO(content)) as pdf:
        assert [float(v) for v in pdf.pages[0].mediabox] == [0, 0, 612, 792]
    with pytest.raises(BadInput, match="A4 or Letter"):
        invented.bench.do(SetSetting("page_size", "B7"))


def test_a_delivery_is_noted_with_way_and_time_and_its_address_is_personal(
    invented: InventedShop, key: WorkshopKey, job: str
) -> None:
    document = arrival(invented, job, key)
    invented.clock.forward(minutes=30)
    left = invented.clock.now() - timedelta(minutes=10)
    done = invented.bench.do(NoteDelivery(job, document, "mail", "invented@example.invalid", left, "with the photos"))
    (noted,) = invented.picture(job).deliveries
    assert (noted.document_id, noted.way, noted.stated_at, noted.note) == (document, "mail", left, "with the photos")
    assert invented.picture(job).said(noted.id, "to") == "invented@example.invalid"
    assert "invented@example.invalid" not in done.says
    assert b"invented@example.invalid" not in b"".join(entry.says.encode() for entry in invented.bench.entries(job))
    with pytest.raises(Refused):
        invented.bench.undo(job)
    assert not check(invented.bench.store).troubles


@pytest.mark.parametrize(
    ("minutes", "sentence"), [(5, "still to come"), (-60, "closed later than that")], ids=["to come", "before closing"]
)
def test_a_document_leaves_between_its_closing_and_now(
    minutes: int, sentence: str, invented: InventedShop, key: WorkshopKey, job: str
) -> None:
    document = arrival(invented, job, key)
    invented.clock.forward(minutes=1)
    with pytest.raises(BadInput, match=sentence):
        invented.bench.do(NoteDelivery(job, document, "print", at=invented.clock.now() + timedelta(minutes=minutes)))
    with pytest.raises(BadInput, match="offset"):
        invented.bench.do(NoteDelivery(job, document, "print", at=invented.clock.now().replace(tzinfo=None)))
    with pytest.raises(BadInput, match="by mail, by message, in print"):
        invented.bench.do(NoteDelivery(job, document, "by pigeon"))
    assert invented.picture(job).deliveries == ()


def test_a_delivery_is_put_right_by_a_following_move(invented: InventedShop, key: WorkshopKey, job: str) -> None:
    document = arrival(invented, job, key)
    noted = invented.bench.do(NoteDelivery(job, document, "mail", "wrong@example.invalid")).id
    invented.bench.do(CorrectDelivery(job, noted, way="print", to="right@example.invalid"))
    (found,) = invented.picture(job).deliveries
    assert (found.way, invented.picture(job).said(noted, "to")) == ("print", "right@example.invalid")
    with pytest.raises(Refused, match="Nothing differs"):
        invented.bench.do(CorrectDelivery(job, noted, way="print"))
    invented.bench.do(CorrectDelivery(job, noted, never_left=True))
    assert invented.picture(job).deliveries == ()
    assert [e.act for e in invented.bench.entries(job)][-3:] == ["NoteDelivery", "CorrectDelivery", "CorrectDelivery"]
    assert not check(invented.bench.store).troubles
