"""What an assessor asks of a report, each found in the PDF of a whole invented job: one test per question."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date

import pytest
from reading_reports import figures, pdf_text, said_in
from whole_job import FINGERPRINT, Whole

from detailbench.record.things import Document
from detailbench.report import DocumentContent, DocumentPdf, document_pdf
from detailbench.report.content.parts import Recorded
from detailbench.report.content.readings import readings_blocks


@pytest.fixture(scope="module")
def text(made: DocumentPdf) -> str:
    return pdf_text(made.pdf).replace("\u00a0", " ")


def test_which_car(text: str) -> None:
    """VIN typed, plate, odometer in and out, a photograph of the VIN plate."""
    for words in ("VIN 1M8GDM9AXKP042788", "Plate INV 01", "Odometer 41200 km in, 41203 km out", "VIN plate"):
        assert words in text


def test_a_car_without_a_vin_says_why(whole: Whole) -> None:
    car = replace(whole.picture.car, vin="", vin_absent="chassis number of four digits")
    assert "No VIN: chassis number of four digits" in said_in(whole.content(replace(whole.picture, car=car)))


def test_when(text: str) -> None:
    """Local time and offset; the clock is the workshop's computer; later entries say how much later."""
    assert re.search(r"Arrived 10 March 2031, \d\d:\d\d \(UTC\+01:00\)", text)
    assert "Times are local, as the workshop's computer gave them" in text
    assert "Nothing was entered a day or more after it happened." in text


def test_who(text: str) -> None:
    """Name, role and initials of who entered; owner; chosen, not proven."""
    for words in (
        "Ana Invented (AE)",
        "Bo Invented, polisher (BI)",
        "Invented Owner",
        "chosen on the screen, not proven",
    ):
        assert words in text


def test_a_bearer_and_on_whose_authority(whole: Whole) -> None:
    owner = next(p for p in whole.picture.parties if p.role == "owner")
    bearer = replace(owner, id="bearer-1", role="bearer", authority="the owner, by telephone")
    personal = {**whole.picture.shop.personal, ("bearer-1", "name"): "Invented Bearer"}
    picture = replace(whole.picture, parties=(owner, bearer), shop=replace(whole.picture.shop, personal=personal))
    found = said_in(whole.content(picture))
    assert "brought by Invented Bearer" in found
    assert "on the authority of the owner, by telephone" in found


def test_with_what(text: str) -> None:
    """Gauge, serial, principle, last digit, accuracy, certificate, laboratory; foils; raw values, temperature; lamp."""
    for words in (
        "serial INV-0042", "magnetic induction", "last digit 1 µm", "accuracy ± (1 µm + 1 % of the reading)",
        "certificate C-2031-7, Invented Lab", "stated value 102 µm ± 0.5 µm, no certificate noted",
        "102 · 102.5 · 101.8 · 102.2 · 102.1", "surface at 21 °C", "point lamp, warm (3000 K)",
    ):  # fmt: skip
        assert words in text, words


def test_dates_of_a_certificate(whole: Whole) -> None:
    gauges = tuple(
        replace(x, certified_on=date(2030, 11, 3), due_on=date(2031, 11, 3)) if x.certificate else x
        for x in whole.picture.shop.gauges
    )
    found = said_in(whole.content(replace(whole.picture, shop=replace(whole.picture.shop, gauges=gauges))))
    assert "dated 3 November 2030" in found
    assert "due 3 November 2031" in found


def test_every_raw_check_value_is_printed(whole: Whole, content: DocumentContent) -> None:
    printed = {i for f in figures(content) if isinstance(f.trace, Recorded) for i in f.trace.ids}
    assert {c.id for c in whole.picture.check_readings} <= printed


def test_where_on_the_panel(content: DocumentContent, text: str) -> None:
    """Two distances from named edges in the table; a numbered dot on the panel's drawing for each."""
    assert "45 front, 768 left" in text
    sheets = [b for s in content.sections for b in s.blocks if hasattr(b, "dots")]
    assert sheets
    for sheet in sheets:
        assert len(sheet.dots) == len(sheet.grid.groups[0].rows)
        assert [d.number for d in sheet.dots] == [row[0][0].shown for row in sheet.grid.groups[0].rows]


def test_comparable(text: str, whole: Whole) -> None:
    """A change stands with its interval; an unlike pair says why there is no figure."""
    assert re.search(r"Change: removed 2\.\d µm \(\d\.\d to \d\.\d, 95 %\)", text)
    other = tuple(
        replace(s, gauge_id=whole.picture.shop.gauges[0].id) if s.id == whole.picture.sessions[-1].id else s
        for s in whole.picture.sessions
    )
    assert "another gauge" in said_in(whole.content(replace(whole.picture, sessions=other)))


def test_complete(text: str, whole: Whole, content: DocumentContent) -> None:
    """n taken, n printed, n set aside; every reading is on paper; panels not measured, and why."""
    n = len(whole.picture.readings)
    assert f"{n} readings taken, {n} printed; 0 places set aside" in text
    printed = {
        i for f in figures(content) if isinstance(f.trace, Recorded) and f.trace.table == "reading" for i in f.trace.ids
    }
    with_value = {r.id for r in whole.picture.readings if r.value_um is not None}
    assert with_value <= printed
    assert "no metal" in text
    assert "Not measured: left A-pillar" in text
    assert "because a gauge for metal cannot read them: left mirror cap" in text


def test_what_is_drawn_on_the_map_of_marks_after_the_work_is_said_below_it(text: str) -> None:
    assert "After the work only marks looked at again and still seen are drawn, finer where less is left." in text


def test_plastic_nobody_measured_is_laid_at_a_gauge_for_metal_only_where_one_was_used(whole: Whole) -> None:
    shop = whole.picture.shop
    ultrasonic = replace(shop, gauges=tuple(replace(g, principle="ultrasonic") for g in shop.gauges))
    text = said_in(whole.content(replace(whole.picture, shop=ultrasonic)))
    assert "gauge for metal" not in text
    said = next(line for line in text.splitlines() if line.startswith("Not measured: "))
    assert "left mirror cap" in said
    assert "gauge for metal" not in said_in(whole.content(replace(whole.picture, sessions=(), readings=())))


def test_a_reading_left_out_of_the_sheets_would_show_in_the_count(whole: Whole) -> None:
    from detailbench.report.content.gathered import gather

    g = gather(whole.picture, now=whole.now, version="9", read_file=whole.read)
    short = replace(g, order=tuple(k for k in g.order if k != "roof"))
    first = readings_blocks(short)[0]
    n = len(whole.picture.readings)
    assert f"{n} readings taken, {n} printed" not in said_in(first)


def test_untouched(text: str, whole: Whole) -> None:
    """The seal's words with the fingerprint; an arrival record repeated with its hash."""
    assert f"(fingerprint {FINGERPRINT})" in text
    assert "Any change after sealing can be detected." in text
    assert "No arrival record was closed in this job." in text
    arrival = Document(
        id="doc-1", entered_at=whole.now, entered_by=whole.picture.shop.people[0].id, job_id=whole.picture.job.id,
        kind="arrival", evidence_id="e", sha256="ab" * 32, pages=3, key_fingerprint=FINGERPRINT, chain_head="c",
    )  # fmt: skip
    found = pdf_text(document_pdf(whole.content(replace(whole.picture, documents=(arrival,)))).pdf)
    assert "Arrival record closed" in found
    assert "abababab abababab" in found
    assert "the same as on your arrival record" in found


def test_own_faults(text: str, whole: Whole) -> None:
    """Rules set aside with name and reason; failed checks; corrected entries live in the journal."""
    assert "badge taped over" in text
    assert "Bo Invented, polisher (BI), 11 March 2031" in text
    assert "Rules were set aside by a person" in text
    assert "A reading struck out again stays in the journal" in text
    assert whole.picture.shop.chain_head[:8] in text


def test_held_back_panels_say_why(text: str) -> None:
    assert "Left rear quarter: held by AE: clear coat lifting." in text


def test_what_it_is_not(text: str) -> None:
    for words in (
        "Not a valuation, roadworthiness or accident report.", "how much of it is clear coat was not",
        "Panels and marks not listed were not examined.", "is a measurement, not an explanation",
        "Readings and photographs were taken by the workshop that did the work",
        "neither advanced nor qualified",
    ):  # fmt: skip
        assert words in text


def test_rules_in_force(text: str) -> None:
    """Program version and settings as a printed list, each saying where it comes from."""
    assert "detailbench 9.9.9" in text
    assert "total thickness below which no machine starts 80 µm set by the shop" in text
    assert "usual scatter between the panels of one car 7 µm common practice, no source" in text


def test_marks_before_and_after_with_lamp_and_state(text: str) -> None:
    assert re.search(
        r"isolated deeper scratch, 420 mm 442 front, 134 upper 2 4 2 point lamp, warm \(3000 K\); wiped, bare", text
    )
    assert "looks like: stone chip" in text
    assert "no longer seen under this lamp" in text


def test_why_this_process(text: str) -> None:
    assert "Why this one: it was the mildest that served on this paint." in text
    assert "The marks were not cleared. The finish was clear." in text
    assert "In the workshop's words: One step; edges by hand." in text


def test_the_words_do_not_claim_the_mildest_that_served_where_no_milder_one_was_seen(whole: Whole) -> None:
    second = whole.picture.trials[1]
    picture = replace(whole.picture, trials=(second,))
    found = said_in(whole.content(picture))
    assert "it was the mildest tried on this paint" in found
    assert "the mildest that served" not in found


def test_work_by_panel_and_step_with_minutes_and_who(text: str) -> None:
    assert re.search(
        r"Tailgate 1: free orbital · medium foam · medium polish 18 min 11 March 2031, \d\d:\d\d–\d\d:\d\d done BI",
        text,
    )


def test_protection_with_climate_and_margin(text: str) -> None:
    assert "air 20 °C, humidity 50 %, surface 20.5 °C" in text
    assert re.search(r"Dew point 9\.3 °C.{0,8}; the surface was 11\.2 °C above it", text)


def test_photographs_in_pairs_with_lamp_state_and_time(content: DocumentContent, text: str) -> None:
    rows = [b for s in content.sections for b in s.blocks if hasattr(b, "left")]
    assert sum(r.right is not None for r in rows) >= 2
    assert all(p.jpeg is not None for r in rows for p in (r.left, r.right) if p is not None)
    assert "Bonnet, before: swirl under the point lamp" in text
    assert "Bonnet, after: same place" in text


def test_acceptance_with_remarks_as_typed_and_drawn_signatures(content: DocumentContent, text: str) -> None:
    assert "Happy with the bonnet. The scratch on the right door is still seen in the sun." in text
    assert "I looked at the car with the workshop on 12 March 2031 under daylight in the yard." in text
    assert "Signing confirms this and nothing more; it gives up no right." in text
    answers = content.signing.blocks[-1].answers  # type: ignore[union-attr]
    assert [bool(a.strokes) for a in answers] == [True, True]
    assert "drawn on the workshop's screen 12 March 2031" in text


def test_damage_already_there(text: str) -> None:
    assert "Kerbed wheel, right front" in text
    assert "Right rear door Small dent, paint whole" in text


def test_cautions_defer_to_published_guidance(text: str) -> None:
    assert "Solvent vapour burns" in text
    assert "Local law, the product's own data sheet and licensed practice come first." in text
