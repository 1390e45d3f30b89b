"""What was put right is said in print: a gauge correction by a person, the time of a mishap after a document."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

from invented_shop import INVENTED_NOW, InventedShop
from reading_reports import said_in
from week_job import played

from detailbench.moves.documents import CloseDocument, open_key
from detailbench.moves.mishaps import CorrectMishapTime, RecordMishap
from detailbench.moves.shop import SetSetting
from detailbench.record.past import put_right
from detailbench.report import content_of

SCRIPT = "../walks/gauge_corrected.walk"


def test_a_correction_prints_who_decided_it_and_why(tmp_path: Path) -> None:
    week = played(tmp_path, SCRIPT)
    (kept,) = week.picture.corrections
    found = said_in(week.content())
    assert "readings count corrected by two points, by decision of Ana Invented" in found
    assert kept.reason in found
    assert "corrected by decision of AE" in found


def test_the_time_of_a_mishap_put_right_after_a_document_is_printed_as_corrected(
    invented: InventedShop, tmp_path: Path
) -> None:
    job = invented.job()
    mishap = invented.bench.do(RecordMishap(job, "pad edge touched the trim", "roof")).id
    invented.bench.do(SetSetting("shop_name", "Invented Bay"))
    key = open_key(invented.folder, invented.bench.shop(), "invented words", invented.clock)
    invented.bench.do(CloseDocument(job, key, "arrival"))
    invented.clock.forward(hours=2)
    invented.bench.do(CorrectMishapTime(job, mishap, INVENTED_NOW - timedelta(minutes=40)))
    with invented.bench.store.reading() as connection:
        past = put_right(connection, job)
    content = content_of("handover")(
        invented.picture(job), now=invented.clock.now(), version="9.9.9", key_fingerprint="ab", past=past,
        read_file=invented.bench.evidence_bytes,
    )  # fmt: skip
    found = said_in(content)
    assert (
        "Mishap, roof, entered 10 March 2031, 08:30: time was 10 March 2031, 08:30, is 10 March 2031, 07:50;" in found
    )
    assert "corrected 10 March 2031, 10:30" in found
