"""Every question an assessor asks, row by row, found in a report as it is closed, delivered and verified."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

import pytest
from photographed_samples import corners, notes, saved
from reading_reports import pdf_text

from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.player import play
from detailbench.cli.walking.grammar import read_walk_file
from detailbench.seal.verdict import Outcome
from detailbench.seal.verifying import verify_pdf

HERE = Path(__file__).parent
BEFORE_THE_END = """
shop lamp "point lamp, neutral" kind P colour 4500 K
shop setting leave_below_um 80
car vin "1M8GDM9AXKP042788" plate "INV 07"
photo "vin.jpg" of bonnet shows vin_plate caption "plate in the engine bay"
drawn photo many moment before lamp "point lamp, neutral" caption "swirls on the bonnet"
session "invented gauge" 20 C
check "zero plate" 0.1 0.0 0.1 0.0 0.1 um
check "foil 102" 108.9 109.2 109.0 109.1 108.8 um
accept with_remarks "the roof later, as agreed" light "daylight, sun"
sign owner "Third Invented Owner" drawn
sign workshop "Ben Invented" drawn
close report
deliver report handed
"""


@dataclass(frozen=True)
class Closed:
    """The bytes of the closed report, its text, the hash of the arrival record, the fingerprint of the key."""

    pdf: bytes
    text: str
    arrival_sha256: str
    photo_sha256: str
    fingerprint: str


@pytest.fixture(scope="module")
def closed(tmp_path_factory: pytest.TempPathFactory) -> Closed:
    folder = tmp_path_factory.mktemp("closed")
    (folder / "vin.jpg").write_bytes(saved(corners(), exif=notes(taken="2031:05:05 17:20:00", offset="+02:00")))
    script = folder / "closed.walk"
    script.write_text((HERE / "week_as_it_went.walk").read_text("utf-8") + BEFORE_THE_END, "utf-8")
    hand = Hand(folder / "workshop", folder, folder, "an invented passphrase")
    play(read_walk_file(script), hand)
    hand.open()
    arrival, report = (next(d for d in hand.picture.documents if d.kind == k) for k in ("arrival", "handover"))
    vin = next(p for p in hand.picture.photos if p.shows == "vin_plate")
    pdf = hand.bench.store.files.read(report.sha256)
    found = Closed(
        pdf, pdf_text(pdf).replace("\u00a0", " "), arrival.sha256, hand.picture.evidence_of(vin.evidence_id).sha256,
        report.key_fingerprint,
    )  # fmt: skip
    hand.close()
    return found


def grouped(sha256: str) -> str:
    return " ".join(sha256[i : i + 8] for i in range(0, 64, 8))


ROWS = {
    "which car": (
        r"VIN 1M8GDM9AXKP042788", r"Plate INV 07", r"Odometer 52344 km in", r"Bonnet, .{1,20}: plate in the engine bay",
    ),
    "when": (
        r"Arrived 5 May 2031, 17:10 \(UTC\+02:00\)", r"Times are local, as the workshop's computer gave them",
        r"Entered 20 minutes after the stated arrival", r"time of taking not known",
        r"taken 5 May 2031, 17:20 \(UTC\+02:00\) \(offset from",
    ),
    "who": (
        r"Ana Invented \(AE\)", r"Ben Invented \(BE\)", r"daughter of the owner, by telephone",
        r"chosen on the screen, not proven",
    ),
    "with what": (
        r"serial INV-G-1", r"magnetic induction", r"last digit 1 µm", r"accuracy ± \(1 µm \+ 1 % of the reading\)",
        r"certificate INV-C-1, laboratory not noted", r"102\.1 · 102\.3 · 101\.9 · 102 · 102\.2", r"surface at 20 °C",
        r"point lamp, neutral \(4500 K\)",
    ),
    "where on the panel": (r"45 front, 768 left", r"in mm, and drawn as a dot"),
    "comparable": (r"Change: removed \d\.\d µm \(\d\.\d to \d\.\d, 95 %\)", r"not comparable: lamp not noted"),
    "complete": (
        r"16 readings taken, 16 printed; 0 places set aside", r"Not measured: left (front wing|[A-D]-pillar)",
    ),
    "own faults": (
        r"1 mishap \(see What was agreed\); 1 gauge check failed \(see Gauges and checks\)",
        r"1 rule, by a person who gave a reason \(see Work\)",
        r"pad edge touched the trim", r"owner waits for it", r"was 52340, is 52344",
    ),
    "what it is not": (
        r"Not a valuation, roadworthiness or accident report", r"how much of it is clear coat was not",
        r"neither advanced nor qualified",
    ),
    "rules in force": (r"detailbench \d+\.\d+", r"total thickness below which no machine starts 80 µm set by the shop"),
}  # fmt: skip


@pytest.mark.parametrize("row", ROWS)
def test_a_row_of_an_assessor_s_questions_is_answered_in_the_closed_file(row: str, closed: Closed) -> None:
    missing = [words for words in ROWS[row] if not re.search(words, closed.text)]
    assert missing == []


def test_untouched(closed: Closed) -> None:
    """The seal, and the arrival record's way out of the shop and hash, repeated."""
    assert verify_pdf(closed.pdf, expected_fingerprint=closed.fingerprint).outcome is Outcome.UNCHANGED
    assert f"SHA-256 {grouped(closed.arrival_sha256)}" in closed.text
    assert re.search(r"delivered by mail to owner's mail on 5 May 2031, 17:30 \(UTC\+02:00\)", closed.text)
    assert "the same as on your arrival record" in closed.text


def test_originals(closed: Closed) -> None:
    """A photograph is printed smaller; the hash of the file it was made from stands beside it."""
    assert f"printed smaller; SHA-256 of the kept file {grouped(closed.photo_sha256)}" in closed.text
