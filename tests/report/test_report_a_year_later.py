"""The same car comes back: the report of an inspection sets its values beside the last ones, like with like only."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from reading_reports import figures, pdf_text, said_in, traced_value, workings
from week_job import Week, played

from detailbench.report import document_pdf
from detailbench.report.content.parts import Worked


@pytest.fixture(scope="module")
def later(tmp_path_factory: pytest.TempPathFactory) -> Week:
    return played(tmp_path_factory.mktemp("later"), "back_a_year_later.walk")


def beside(week: Week) -> str:
    return said_in([s for s in week.content().sections if s.title == "Beside the last time"])


def test_the_last_job_is_named_and_the_new_values_stand_beside_its_own(later: Week) -> None:
    found = beside(later)
    assert "This car was here last under job 2031-001, 5 May 2031." in found
    assert "mean 118.9 µm; 1 mark left" in found
    assert "Bonnet\n" in found
    assert "Not distinguishable from zero (interval " in found
    assert re.search(r"-4\.0 µm since then \(-\d\.\d to -\d\.\d, 95 %\)", found.replace("−", "-"))


def test_page_one_says_it_too(later: Week) -> None:
    pdf = pdf_text(document_pdf(later.content()).pdf)
    assert "Since last time" in pdf.split("page 1 of")[0]


def test_every_figure_is_what_its_trace_leads_to(later: Week) -> None:
    content = later.content()
    appendix = workings(content)
    for figure in figures(content):
        found = traced_value(figure, later.picture, appendix, later.now, later.past)
        assert figure.value == (pytest.approx(found) if isinstance(found, float) else found), figure
    assert {f.trace.ref for f in figures(content) if isinstance(f.trace, Worked)} == set(appendix)


def test_without_a_temperature_on_one_side_no_figure_is_printed(later: Week) -> None:
    sessions = tuple(replace(s, temperature_c=None) for s in later.picture.sessions)
    found = beside(replace(later, picture=replace(later.picture, sessions=sessions)))
    assert "No figure is printed: a temperature or a gauge check is missing on one side." in found
    assert "since then" not in found.split("cannot be read off")[0].replace("Thickness since then", "")


def test_a_car_that_was_never_here_has_no_such_section(later: Week) -> None:
    assert beside(replace(later, picture=replace(later.picture, last=None))) == ""
