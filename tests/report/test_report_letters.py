"""Typed words reach the page as typed: no markup, no files, no letters of another's font, and lost letters are said."""

from __future__ import annotations

import io
from dataclasses import replace

import pikepdf
import pytest
from reading_reports import pdf_pages, pdf_text
from whole_job import Whole

from detailbench.record.picture import JobPicture
from detailbench.report import document_pdf
from detailbench.report.content.parts import Figure, Typed, Worked, clipped, joined, plain, said, traced, typed
from detailbench.report.pages.letters import REGULAR, font_for, marked_up, markup, runs

HOSTILE = (
    '<b>&"',
    '<img src="file:///etc/passwd" width="100" height="100"/>',
    '=HYPERLINK("http://example.invalid","x")',
    "<a href='http://example.invalid'>x</a>",
    "</para><para>two",
    "{0} {name} %s %(x)s",
)


def with_owner(picture: JobPicture, name: str) -> JobPicture:
    owner = next(p for p in picture.parties if p.role == "owner")
    personal = {**picture.shop.personal, (owner.id, "name"): name}
    return replace(picture, shop=replace(picture.shop, personal=personal))


@pytest.mark.parametrize("words", HOSTILE)
def test_markup_in_a_typed_word_is_printed_as_it_stands(words: str) -> None:
    safe = marked_up(words)
    for sign in "<>":
        assert safe.count(sign) == 0
    assert "".join(r.letters for r in runs(words)) == words


def test_an_owner_named_with_markup_is_printed_and_opens_no_file(whole: Whole) -> None:
    made = document_pdf(whole.content(with_owner(whole.picture, "\n".join(HOSTILE))))
    text = pdf_text(made.pdf)
    for words in HOSTILE:
        assert words in text
    with pikepdf.open(io.BytesIO(made.pdf)) as pdf:
        for page in pdf.pages:
            for annotation in page.get("/Annots", []):
                assert "/URI" not in str(annotation.get("/A", ""))


def test_letters_no_font_can_set_are_counted_where_they_stood() -> None:
    assert "".join(r.letters for r in runs("\u0623\u062d\u0645\u062f Invented")) == (
        "[4 letters that cannot be shown] Invented"
    )
    assert "".join(r.letters for r in runs("a\u202eb")) == "a[1 letter that cannot be shown] b"
    assert "".join(r.letters for r in runs("ok \U0001f697")) == "ok [1 letter that cannot be shown]"


def test_an_arabic_owner_is_printed_with_the_remark(whole: Whole) -> None:
    made = document_pdf(whole.content(with_owner(whole.picture, "\u0623\u062d\u0645\u062f Invented")))
    assert "Owner: [4 letters that cannot be shown] Invented" in pdf_text(made.pdf)


@pytest.mark.parametrize("words", ["Łódź", "Ωμέγα", "Жук", "Ærø ž ß ı", "½ ≤ 3 · ∞ ⌈x⌉"])
def test_other_european_letters_and_signs_are_shown(words: str) -> None:
    assert all(font_for(letter, REGULAR) for letter in words)
    assert "cannot be shown" not in "".join(r.letters for r in runs(words))


def test_a_letter_only_the_wider_font_has_is_set_in_it() -> None:
    assert marked_up("a⌈b") == 'a<font name="Wider">⌈</font>b'


def test_four_hundred_letters_without_a_blank_wrap_inside_the_margins(whole: Whole) -> None:
    from reading_reports_layout import outside_margins

    made = document_pdf(whole.content(with_owner(whole.picture, "W" * 400)))
    assert "W" * 50 in pdf_text(made.pdf).replace(" ", "")
    assert outside_margins(made.pdf) == []


def test_a_pasted_page_in_a_note_runs_over_pages_without_loss(whole: Whole) -> None:
    words = " ".join(f"word{i}" for i in range(1200))
    marks = tuple(replace(m, note=words) if i == 0 else m for i, m in enumerate(whole.picture.marks))
    made = document_pdf(whole.content(replace(whole.picture, marks=marks)))
    text = pdf_text(made.pdf)
    assert all(f"word{i}" in text for i in (0, 599, 1199))


def test_a_line_break_typed_is_a_line_break_printed() -> None:
    assert marked_up("a\nb") == "a<br/>b"


def test_said_puts_parts_in_their_fields_and_keeps_figures() -> None:
    figure = Figure("3", 3, Worked("W1", ("n",)))
    text = said("{n} places on the {panel}.", n=figure, panel=typed("<roof>"))
    assert text == (figure, " places on the ", Typed("<roof>"), ".")
    assert plain(text) == "3 places on the <roof>."


def test_traced_finds_figures_in_order_and_never_inside_a_longer_number() -> None:
    two, ten = Figure("2", 2, Worked("W1", ("a",))), Figure("10", 10, Worked("W1", ("b",)))
    assert traced("12 of 2 and 10.", (two, ten)) == ("12 of ", two, " and ", ten, ".")
    assert traced("none here", (two,)) == ("none here",)


def test_one_reference_stands_for_the_figures_of_one_clause() -> None:
    a, b = Figure("1", 1, Worked("W1", ("a",))), Figure("2", 2, Worked("W1", ("b",)))
    other = Figure("3", 3, Worked("W2", ("c",)))
    assert markup((a, " to ", b, " (95 %). Then.")).count(">W1<") == 1
    assert markup((a, " to ", b, " (95 %). Then.")).index("W1") < markup((a, " to ", b, " (95 %). Then.")).index(
        ". Then"
    )
    assert markup((a, " to ", other)).count(">W1<") == 1
    assert ">W2<" in markup((a, " to ", other))


def test_empty_texts_leave_no_comma_behind() -> None:
    assert plain(joined(["a", (), typed(" "), "b"], ", ")) == "a, b"


def test_what_is_cut_on_page_one_says_so_and_is_cut_at_a_blank() -> None:
    text, cut = clipped("one two three four", 10)
    assert cut
    assert plain(text) == "one two…"
    assert clipped("short", 10) == ((Typed("short"),), False)


def test_long_hopes_are_cut_on_page_one_and_stand_in_full_under_the_order(whole: Whole) -> None:
    words = " ".join(f"hope{i}" for i in range(300))
    made = document_pdf(whole.content(replace(whole.picture, job=replace(whole.picture.job, hoped_level=words))))
    pages = pdf_pages(made.pdf)
    assert "in full under The order" in " ".join(pages[0].split())
    assert "hope299" not in pages[0]
    assert "hope299" in pdf_text(made.pdf)
