"""A gauge correction decided by a person is said in print, with name and reason."""

from __future__ import annotations

from pathlib import Path

from reading_reports import said_in
from week_job import played

SCRIPT = "../walks/gauge_corrected.walk"


def test_a_correction_prints_who_decided_it_and_why(tmp_path: Path) -> None:
    week = played(tmp_path, SCRIPT)
    (kept,) = week.picture.corrections
    found = said_in(week.content())
    assert "readings count corrected by two points, by decision of Ana Invented" in found
    assert kept.reason in found
    assert "corrected by decision of AE" in found
