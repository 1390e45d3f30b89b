"""The file itself: fonts, metadata, same bytes, page one, headers, margins, words kept out; and it can be sealed."""

from __future__ import annotations

import hashlib
import io
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pikepdf
import pytest
from reading_reports import pdf_pages, pdf_text, said_in
from reading_reports_layout import outside_margins
from whole_job import Whole

from detailbench.basics.errors import BadInput
from detailbench.report import OWNER_BOX, SEAL_BOX, DocumentContent, DocumentPdf, document_pdf
from detailbench.report.content.blocks import Heading
from detailbench.report.content.parts import plain

OURS = {"Lato-Regular", "Lato-Bold", "Lato-Italic", "DejaVuSans", "DejaVuSans-Bold", "DejaVuSansMono"}
KEPT_OUT = (
    "guaranteed", "verified genuine", "original paint", "accident-free", "perfect", "100 %", "permanent", "certified",
    "tamper-proof",
)  # fmt: skip


def fonts(pdf: bytes) -> dict[str, bool]:
    """Every font a page names: its name without the subset's letters, and whether it is embedded."""
    found = {}
    with pikepdf.open(io.BytesIO(pdf)) as document:
        for page in document.pages:
            for font in page.Resources.get("/Font", pikepdf.Dictionary()).values():
                name = str(font.BaseFont).lstrip("/").split("+")[-1]
                found[name] = "/FontFile2" in font.get("/FontDescriptor", pikepdf.Dictionary())
    return found


def test_only_our_own_fonts_stand_in_the_file_and_all_are_embedded(made: DocumentPdf) -> None:
    found = fonts(made.pdf)
    assert set(found) <= OURS
    assert {"Lato-Regular", "Lato-Bold", "DejaVuSansMono"} <= set(found)
    assert all(found.values())


def test_every_font_of_the_report_lies_on_the_shelf_with_a_licence() -> None:
    from detailbench.basics.shelf import resource
    from detailbench.report.pages.letters import FILES

    for file in FILES.values():
        assert resource("fonts", file).is_file()
    assert "SIL OPEN FONT LICENSE" in resource("fonts", "LICENSE-Lato.txt").read_text("utf-8")


def test_the_same_content_gives_the_same_bytes(content: DocumentContent, made: DocumentPdf) -> None:
    assert hashlib.sha256(document_pdf(content).pdf).hexdigest() == hashlib.sha256(made.pdf).hexdigest()


def test_the_same_picture_gives_the_same_content(whole: Whole, content: DocumentContent) -> None:
    assert whole.content() == content


def test_title_language_producer_and_output_intent(made: DocumentPdf) -> None:
    with pikepdf.open(io.BytesIO(made.pdf)) as pdf:
        assert str(pdf.docinfo["/Title"]).startswith("Handover report · 2031-001")
        assert str(pdf.docinfo["/Producer"]) == "detailbench 9.9.9"
        assert str(pdf.Root.Lang) == "en-GB"
        assert pdf.Root.ViewerPreferences.DisplayDocTitle
        intent = pdf.Root.OutputIntents[0]
        assert intent.DestOutputProfile.read_bytes()[36:40] == b"acsp"
        assert len(pdf.pages) == made.pages
    assert b"ReportLab" not in made.pdf


def test_nothing_in_the_file_acts_opens_or_calls_out(made: DocumentPdf) -> None:
    with pikepdf.open(io.BytesIO(made.pdf)) as pdf:
        assert "/OpenAction" not in pdf.Root
        assert "/Names" not in pdf.Root or "/JavaScript" not in pdf.Root.Names
        assert "/AcroForm" not in pdf.Root
        for page in pdf.pages:
            for annotation in page.get("/Annots", []):
                assert annotation.Subtype == "/Link"
                assert "/A" not in annotation or annotation.A.S == "/GoTo"


def test_every_page_is_headed_with_shop_job_car_and_number(made: DocumentPdf) -> None:
    for number, page in enumerate(pdf_pages(made.pdf), 1):
        text = " ".join(page.split())
        for words in ("Invented Bay Two", "job 2031-001", "INV 01", f"page {number} of {made.pages}"):
            assert words in text


def test_no_letter_stands_outside_the_margins(made: DocumentPdf) -> None:
    assert outside_margins(made.pdf) == []


def test_page_one_tells_the_whole_story(made: DocumentPdf) -> None:
    text = " ".join(pdf_pages(made.pdf)[0].replace("\u00a0", " ").split())
    for words in (
        "Invented estate, second series", "1M8GDM9AXKP042788", "Owner: Invented Owner", "Arrived 10 March 2031",
        "Swirl marks gone under the sun lamp", "13 marks on 8 panels", "Polished: 6 panels", "146 readings",
        "marks still seen after the work", "Accepted by the owner with remarks",
    ):  # fmt: skip
        assert words in text
    assert "Marks" not in text.split("page 1 of")[0]


def test_page_one_stays_one_page_however_much_there_is(whole: Whole) -> None:
    picture = whole.picture
    long = "very long words " * 200
    car = replace(picture.car, described=long, colour=long)
    job = replace(picture.job, hoped_level=long, will_remain=long)
    personal = {k: long for k in picture.shop.personal if k[1] not in ("strokes",)}
    strokes = {k: v for k, v in picture.shop.personal.items() if k[1] == "strokes"}
    full = replace(picture, car=car, job=job, shop=replace(picture.shop, personal={**personal, **strokes}))
    pages = pdf_pages(document_pdf(whole.content(full)).pdf)
    assert "Answer" in pages[0]
    assert pages[1].startswith("The days")


def test_a_front_page_far_too_full_is_set_smaller_not_cut(content: DocumentContent) -> None:
    crowded = replace(content.front, rows=replace(content.front.rows, rows=content.front.rows.rows * 3))
    pages = pdf_pages(document_pdf(replace(content, front=crowded)).pdf)
    assert pages[0].count("Accepted by the owner with remarks") == 3
    assert pages[1].startswith("The days")


def test_no_heading_stands_alone_at_the_foot_of_a_page(content: DocumentContent, made: DocumentPdf) -> None:
    titles = {s.title for s in content.sections}
    titles |= {plain(b.text) for s in content.sections for b in s.blocks if isinstance(b, Heading)}
    for page in pdf_pages(made.pdf):
        body = [line.strip() for line in page.splitlines() if line.strip() and not re.search(r"page \d+ of", line)]
        assert body[-1] not in titles


def test_words_kept_out_of_print_are_not_in_it(made: DocumentPdf) -> None:
    text = pdf_text(made.pdf).lower()
    for words in KEPT_OUT:
        assert not re.search(rf"(?<!\w){re.escape(words)}(?!\w)", text), words


def test_typed_words_are_exempt_from_that(whole: Whole) -> None:
    job = replace(whole.picture.job, hoped_level="a perfect finish, guaranteed")
    content = whole.content(replace(whole.picture, job=job))
    assert "a perfect finish, guaranteed" in said_in(content)


def test_a_page_of_another_size_is_set_as_well(content: DocumentContent) -> None:
    letter = document_pdf(content, page_size="Letter")
    with pikepdf.open(io.BytesIO(letter.pdf)) as pdf:
        assert [float(v) for v in pdf.pages[0].MediaBox] == [0, 0, 612, 792]
    assert outside_margins(letter.pdf) == []
    with pytest.raises(BadInput, match="no page size"):
        document_pdf(content, page_size="B7")


@pytest.mark.parametrize("box", [SEAL_BOX, OWNER_BOX])
def test_the_boxes_lie_on_the_last_page_free_of_other_words(box: tuple[float, ...], made: DocumentPdf) -> None:
    import pypdfium2

    with pypdfium2.PdfDocument(made.pdf) as document:
        page = document[len(document) - 1]
        text = page.get_textpage()
        inside = text.get_text_bounded(*box)
        lower = text.get_text_bounded(box[0], box[1], box[2], box[1] + (box[3] - box[1]) * 0.6)
        text.close()
        page.close()
    assert "electronic" in inside.lower()
    assert lower.strip() == ""


def test_the_report_can_be_sealed_and_the_seal_holds(made: DocumentPdf, tmp_path: Path) -> None:
    from invented_shop import INVENTED_NOW

    from detailbench.basics.clock import HandClock
    from detailbench.seal.keys import make_key
    from detailbench.seal.sealing import seal_pdf
    from detailbench.seal.verdict import Outcome
    from detailbench.seal.verifying import verify_pdf

    clock = HandClock(INVENTED_NOW)
    key = make_key(tmp_path / "key.pem", "Invented Bay Two", "invented words", clock)
    sealed = seal_pdf(made.pdf, key, clock, owner_box=OWNER_BOX)
    assert verify_pdf(sealed, expected_fingerprint=key.fingerprint).outcome is Outcome.UNCHANGED


def test_asking_for_the_report_room_loads_no_page_setter() -> None:
    code = "import sys, detailbench.report; print('reportlab' in sys.modules, 'pikepdf' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False", "False"]
