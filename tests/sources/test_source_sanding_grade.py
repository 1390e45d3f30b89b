"""Grain sizes of FEPA grades: FEPA 43-1 / ISO 6344-3 (P800 and P1000 seen second-hand, the others from memory)."""

from __future__ import annotations

from itertools import pairwise

import pytest

from detailbench.trials.sanding_grade import GRAIN_UM, sanding_grade


@pytest.mark.parametrize(("grade", "grain_um"), [("P800", 21.8), ("P1000", 18.3)])
def test_a_known_grade_has_the_grain_of_the_standard(grade: str, grain_um: float) -> None:
    assert sanding_grade(grade).grain_um == grain_um


def test_rounded_sizes_of_a_published_comparison_agree() -> None:
    # a public comparison chart of coated-abrasive grades, whole micrometres (seen second-hand)
    chart = {"P240": 60, "P280": 52, "P320": 46, "P360": 40, "P400": 35, "P500": 30, "P600": 26, "P800": 22,
             "P1000": 18, "P1200": 15, "P1500": 13, "P2000": 10, "P2500": 8}  # fmt: skip
    assert chart.keys() == GRAIN_UM.keys()
    assert all(abs(GRAIN_UM[grade] - um) <= (1.5 if grade == "P240" else 0.55) for grade, um in chart.items())
    assert all(coarse > fine for coarse, fine in pairwise(GRAIN_UM.values()))


@pytest.mark.parametrize("typed", ["P900", "P3000", "P0", "2000", "fine", "", "P2000 soft", "P-800", "Q800"])
def test_what_the_table_does_not_have_is_not_known_and_never_reckoned_from_its_neighbours(typed: str) -> None:
    found = sanding_grade(typed)
    assert found.grain_um is None
    assert "not known" in found.sentence


def test_a_grade_is_read_however_it_is_spaced_and_kept_as_the_standard_writes_it() -> None:
    assert [sanding_grade(t).grade for t in ("p2000", " P  2000 ", "P02000")] == ["P2000"] * 3
