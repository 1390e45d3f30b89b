"""Nobody is printed as saying what that person did not sign; the same minutes stand on every page."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from reading_reports import said_in
from whole_job import Whole

STATEMENT = "I looked at the car with the workshop"


@pytest.mark.parametrize("way", ["absent", "declined", "telephone", "message"])
def test_an_owner_who_did_not_sign_is_not_printed_with_the_statement(whole: Whole, way: str) -> None:
    signatures = tuple(
        replace(s, way=way, statement="") if s.role == "owner" else replace(s, statement="")
        for s in whole.picture.signatures
    )
    assert STATEMENT not in said_in(whole.content(replace(whole.picture, signatures=signatures)))


def test_before_anybody_signed_the_statement_stands_to_be_signed_on_paper(whole: Whole) -> None:
    assert STATEMENT in said_in(whole.content(replace(whole.picture, signatures=())))


def test_the_first_page_gives_the_minutes_of_every_go_as_the_page_on_work_does(whole: Whole) -> None:
    first, *rest = whole.picture.runs
    runs = (replace(first, ended="paused"), *rest)
    text = said_in(whole.content(replace(whole.picture, runs=runs)))
    minutes = re.findall(r"(\d+) min at the machine", text)
    assert len(minutes) == 2
    assert len(set(minutes)) == 1
