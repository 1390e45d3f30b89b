"""Every document of the week in crooked states, with hostile words, on either paper; and every figure traced."""

from __future__ import annotations

from dataclasses import replace

import pytest
from reading_reports import figures, pdf_pages, pdf_text, said_in, traced_value, workings
from week_job import KINDS, Week

from detailbench.record.things import JobTurn
from detailbench.report import document_pdf
from detailbench.report.content.parts import Counted, Worked


# crooked jobs
@pytest.mark.parametrize(
    ("turn", "words"),
    [
        ("paused", "Paused"), ("fetched_early", "Fetched early"), ("stopped_after_trial", "Stopped after the trial"),
        ("unfinished", "Given back unfinished"), ("refused", "Refused"),
    ],
)  # fmt: skip
def test_a_crooked_job_prints_and_page_one_says_how_it_stands(turn: str, words: str, week: Week) -> None:
    taken = JobTurn(
        id="t", entered_at=week.now, entered_by=week.picture.shop.people[0].id, seq=10**13,
        job_id=week.picture.job.id, turn=turn, reason="the owner needed the car",
    )  # fmt: skip
    picture = replace(week.picture, turns=(*week.picture.turns, taken))
    content = week.content(picture=picture)
    front = said_in(content.front)
    assert f"{words} 9 May 2031, 09:30, AE: the owner needed the car." in front
    assert "Planned and not finished: 2 panels." in front
    pages = pdf_pages(document_pdf(content).pdf)
    assert "the owner needed the car" in pages[0]


@pytest.mark.parametrize("size", ["A4", "Letter"])
@pytest.mark.parametrize("kind", KINDS)
def test_every_document_is_set_on_either_paper(kind: str, size: str, week: Week) -> None:
    made = document_pdf(week.content(kind), page_size=size)
    pages = pdf_pages(made.pdf)
    assert len(pages) == made.pages
    assert all(f"page {i} of {made.pages}" in page for i, page in enumerate(pages, 1))


HOSTILE = '<b>&" =HYPERLINK("x") </font> ' + "W" * 400 + " " + "pasted words " * 600


def test_whatever_is_typed_anywhere_is_printed_and_breaks_no_page(week: Week) -> None:
    p = week.picture
    bad = {
        "limits": [replace(x, words=HOSTILE) for x in p.limits],
        "damages": [replace(x, words=HOSTILE, where=HOSTILE) for x in p.damages],
        "repairs": [replace(x, words=HOSTILE) for x in p.repairs],
        "agreements": [replace(x, question=HOSTILE) for x in p.agreements],
        "mishaps": [replace(x, words=HOSTILE) for x in p.mishaps],
        "supplement": [replace(x, words=HOSTILE) for x in p.supplement],
        "custody": [replace(x, keys_at=HOSTILE, valuables=HOSTILE, warning_lamps=HOSTILE) for x in p.custody],
        "car_moves": [replace(x, to_place=HOSTILE, from_place=HOSTILE) for x in p.car_moves],
        "wash_steps": [replace(x, product=HOSTILE, note=HOSTILE) for x in p.wash_steps],
        "second_looks": [replace(x, words=HOSTILE) for x in p.second_looks],
        "other_work": [replace(x, words=HOSTILE) for x in p.other_work],
        "turns": [replace(x, reason=HOSTILE) for x in p.turns],
        "deliveries": [replace(x, note=HOSTILE) for x in p.deliveries],
        "parties": [replace(x, authority=HOSTILE) for x in p.parties],
        "overrides": [replace(x, reason=HOSTILE) for x in p.overrides],
    }
    said_ = {k: HOSTILE if k[1] != "strokes" else v for k, v in p.shop.personal.items()}
    full = replace(p, **{k: tuple(v) for k, v in bad.items()}, shop=replace(p.shop, personal=said_))
    for kind in KINDS:
        for size in ("A4", "Letter"):
            pages = pdf_pages(document_pdf(week.content(kind, full), page_size=size).pdf)
            assert "page 1 of" in pages[0]
            assert '<b>&" =HYPERLINK("x") </font>' in " ".join(" ".join(pages).split())


def test_arabic_is_said_to_be_letters_that_cannot_be_shown(week: Week) -> None:
    mishaps = tuple(replace(m, words="\u0623\u062d\u0645\u062f") for m in week.picture.mishaps)
    content = week.content(picture=replace(week.picture, mishaps=mishaps))
    assert "letters that cannot be shown]" in pdf_text(document_pdf(content).pdf)


# every figure leads somewhere
@pytest.mark.parametrize("kind", KINDS)
def test_every_figure_of_every_document_is_what_its_trace_leads_to(kind: str, week: Week) -> None:
    content = week.content(kind)
    found = figures(content)
    assert len(found) > 20
    wrong = [
        (f, traced_value(f, week.picture, workings(content), week.now, week.past))
        for f in found
        if not _same(f.value, traced_value(f, week.picture, workings(content), week.now, week.past))
    ]
    assert wrong == []
    assert all(len(set(f.trace.of)) == len(f.trace.of) for f in found if isinstance(f.trace, Counted))
    assert {f.trace.ref for f in found if isinstance(f.trace, Worked)} == set(workings(content))


def _same(one: object, other: object) -> bool:
    if isinstance(one, int | float) and isinstance(other, int | float):
        return one == pytest.approx(other, rel=1e-9, abs=1e-9)
    return one == other
