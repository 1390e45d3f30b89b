"""What an assessor would stumble over, each found by reading printed documents of finished and crooked jobs."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import timedelta

import pytest
from reading_reports import figures, pdf_pages, pdf_text, said_in, traced_value, workings
from reading_reports_layout import outside_margins
from week_job import KINDS, Week

from detailbench.record.things import History
from detailbench.report import DocumentContent, document_pdf
from detailbench.report.content.blocks import Heading, Para, Section


def front(content: DocumentContent) -> str:
    return said_in(content.front)


def without_work(week: Week) -> Week:
    """The week stopped after its test sections: nothing polished, nothing measured or looked at again."""
    p = week.picture
    return replace(
        week,
        picture=replace(
            p, runs=(), mark_checks=(), second_looks=(), protections=(), acceptances=(), overrides=(),
            readings=tuple(r for r in p.readings if r.work != "polished"),
        ),
        past=(),
    )  # fmt: skip


# nothing is said to be answered that was never asked
def test_a_supplement_with_nothing_in_it_claims_no_answer(week: Week) -> None:
    empty = replace(week.picture, supplement=(), agreements=())
    found = front(week.content("supplement", empty))
    assert "Answered by the owner" not in found
    assert "Nothing came to light after the arrival record." in found
    assert "Nothing was put to the owner." in found


def test_the_last_page_of_an_answered_supplement_holds_the_answer_and_no_blank_lines(week: Week) -> None:
    signing = said_in(week.content("supplement").signing)
    assert "____" not in signing
    assert "Yes, with a remark, by telephone, Invented Motors" in signing
    assert "“leave the roof”" in signing
    assert "____" in said_in(week.content("supplement", replace(week.picture, agreements=())).signing)


def test_a_supplement_for_the_owner_carries_no_cautions_for_the_bench(week: Week) -> None:
    assert "spinning pad" not in said_in(week.content("supplement"))


# page one adds up
def test_marks_of_page_one_add_up(week: Week) -> None:
    found = front(week.content())
    assert "2 marks on 2 panels" in found
    assert "1 mark not seen again after the work, but not comparable: see Marks." in found
    assert "1 mark not looked at again after the work." in found


def test_where_nothing_was_polished_nothing_is_said_to_be_after_the_work(week: Week) -> None:
    content = without_work(week).content()
    found = front(content)
    assert "after the work" not in found
    assert "2 marks as found." in found
    assert "No panel was polished, so nothing was measured a second time." in found


def test_page_one_says_that_nothing_shows_which_car_it_is(week: Week) -> None:
    found = front(week.content())
    assert "The plate is not noted." in found
    assert "There is no photograph." in found
    car = replace(week.picture.car, vin_absent="")
    assert "The VIN is not noted." in front(week.content(picture=replace(week.picture, car=car)))


def test_the_references_of_page_one_are_explained_there(week: Week) -> None:
    assert "A small W with a number leads to the working of a figure, at the end." in front(week.content())
    assert "A small W" not in front(week.content("arrival"))


def test_page_one_of_the_arrival_record_names_every_limit_where_there_is_room(week: Week) -> None:
    found = front(week.content("arrival"))
    assert "no radio" in found
    assert "more, inside" not in found


# times
def test_a_step_taken_up_again_the_next_day_says_both_days(week: Week) -> None:
    first = week.picture.runs[0]
    second = replace(
        first, id="again", started_at=first.started_at + timedelta(days=1),
        finished_at=first.started_at + timedelta(days=1, minutes=8), minutes=None,
    )  # fmt: skip
    runs = (replace(first, ended="paused"), second, *week.picture.runs[1:])
    work = said_in(week.content(picture=replace(week.picture, runs=runs)))
    assert "7 May 2031, 09:00 to 8 May 2031, 09:08" in work


# with what
def test_a_foil_without_a_certificate_is_not_said_to_have_a_certificate_value(week: Week) -> None:
    found = said_in(week.content())
    assert "certificate value" not in found
    assert "stated value 102 µm ± 0.5 µm, no certificate noted" in found
    shims = tuple(replace(s, certificate="INV-F-1") for s in week.picture.shop.shims)
    whole = said_in(week.content(picture=replace(week.picture, shop=replace(week.picture.shop, shims=shims))))
    assert "certificate value 102 µm ± 0.5 µm, certificate INV-F-1" in whole


def test_a_foil_that_names_its_metal_is_not_given_it_twice(week: Week) -> None:
    shims = tuple(replace(s, label=f"{s.label}, steel") for s in week.picture.shop.shims)
    found = said_in(week.content(picture=replace(week.picture, shop=replace(week.picture.shop, shims=shims))))
    assert "foil 102, steel, stated" in found
    assert "steel, steel" not in found


def test_what_a_gauge_s_certificate_does_not_say_is_said(week: Week) -> None:
    assert "certificate INV-C-1, laboratory not noted, date not noted, due date not noted" in said_in(week.content())


def test_a_panel_looked_at_under_a_lamp_nobody_noted_reads_as_a_sentence(week: Week) -> None:
    from detailbench.record.things import PanelLook

    mark = week.picture.marks[0]
    look = PanelLook(
        id="look", entered_at=mark.entered_at, entered_by=mark.entered_by, job_id=mark.job_id, panel="tailgate",
        lamp_id="", clean="wiped", work="as_found", cover="bare",
    )  # fmt: skip
    found = said_in(week.content(picture=replace(week.picture, panel_looks=(look,))))
    assert "Looked at and nothing seen, no lamp noted: tailgate." in found


# a job taken in from elsewhere
@pytest.fixture
def taken_in(week: Week) -> Week:
    mark = week.picture.marks[0]
    history = History(
        id="h", entered_at=week.now, entered_by=mark.entered_by, job_id=mark.job_id, evidence_id="e", head="ab" * 32,
        entries=160,
    )  # fmt: skip
    return replace(week, picture=replace(week.picture, histories=(history,)))


def test_a_job_taken_in_from_elsewhere_says_so(taken_in: Week, week: Week) -> None:
    for kind in KINDS:
        content = taken_in.content(kind)
        assert "Recorded in another workshop's book and taken in here on 9 May 2031" in front(content), kind
        inside = said_in(content.sections)
        assert "Recorded in another workshop's book and taken in here on 9 May 2031" in inside
        assert "abababab abababab" in inside
        assert "another workshop's book" not in said_in(week.content(kind))


def test_a_name_that_was_deleted_reads_as_such(week: Week) -> None:
    from detailbench.record.things import Forgetting

    mark = week.picture.marks[0]
    gone = Forgetting(id="f", entered_at=week.now, entered_by=mark.entered_by, job_id=week.picture.job.id)
    shop = replace(week.picture.shop, personal={}, forgettings=(gone,))
    content = week.content(picture=replace(week.picture, shop=shop))
    assert "Owner: (name deleted on 9 May 2031); brought by (name deleted on 9 May 2031)" in front(content)
    for kind in KINDS:
        assert "daughter" not in said_in(week.content(kind, replace(week.picture, shop=shop))), kind
    assert "(name deleted on 9 May 2031)\ndrawn" in said_in(
        week.content("arrival", replace(week.picture, shop=shop)).signing
    )


# words
def test_a_source_recalled_is_not_marked_as_read(week: Week) -> None:
    printed = pdf_text(document_pdf(week.content()).pdf)
    assert "(from memory)" in printed
    assert re.search(r"from memory\W+published|published\W+from memory", printed) is None


def test_the_sheet_of_the_product_is_named_as_what_comes_first(week: Week) -> None:
    assert "The product's own data sheet comes first." in said_in(week.content())


def test_drawn_signatures_are_explained_where_there_are_any(week: Week) -> None:
    words = "neither advanced nor qualified"
    assert words in said_in(week.content("arrival"))
    assert words not in said_in(week.content("supplement"))
    assert words not in said_in(week.content("arrival", replace(week.picture, signatures=())))


# the pages
def test_the_last_page_follows_where_it_fits_and_else_is_a_page_of_its_own(week: Week) -> None:
    whole = week.content("supplement")
    not_this = replace(whole.sections[-1], new_page=True)
    short = replace(whole, sections=(not_this,))
    long = replace(whole, sections=(replace(not_this, blocks=not_this.blocks * 5),))
    for size in ("A4", "Letter"):
        last = pdf_pages(document_pdf(short, page_size=size).pdf)[-1]
        assert "What this supplement is not" in last
        assert "The owner's answer" in last
        assert "What this supplement is not" not in pdf_pages(document_pdf(long, page_size=size).pdf)[-1]


def test_a_note_never_begins_a_page_without_what_it_is_about(week: Week) -> None:
    whole = week.content("supplement")
    for n in range(36, 46):
        lines = tuple(Para((f"line {i} of it.",)) for i in range(n))
        last = (Heading(("What it is about",)), Para((f"line {n} of it.",)), Para(("the note.",), "note"))
        noted = Section("Noted", (*lines, *last), new_page=True)
        pages = pdf_pages(document_pdf(replace(whole, sections=(noted,))).pdf)
        (page,) = [p for p in pages if "the note." in p]
        assert f"line {n} of it." in page, n
        assert "What it is about" in page, n


def test_the_boxes_of_the_last_page_stay_free_and_the_margins_hold(week: Week) -> None:
    for size in ("A4", "Letter"):
        for kind in KINDS:
            assert outside_margins(document_pdf(week.content(kind), page_size=size).pdf) == [], (kind, size)


def test_every_figure_still_leads_to_what_it_says(week: Week, taken_in: Week) -> None:
    for each in (taken_in, without_work(week)):
        for kind in KINDS:
            content = each.content(kind)
            appendix = workings(content)
            for figure in figures(content):
                found = traced_value(figure, each.picture, appendix, each.now, each.past)
                assert figure.value == (pytest.approx(found) if isinstance(found, float) else found), figure
