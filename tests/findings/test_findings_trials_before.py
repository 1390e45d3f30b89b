"""Trials of earlier jobs: searched by paint and by what was tried; what served on like paint."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from invented_findings import Hands

from detailbench.findings.kit_names import combination_name
from detailbench.findings.like_before import like_before
from detailbench.findings.trials_before import Sought, paint_words, trials_before, trials_with
from detailbench.moves.arrival import DescribeCar
from detailbench.moves.kit_range import RenewRange
from detailbench.moves.shop import ChangeInShop
from detailbench.moves.trials import JudgeTrial
from detailbench.moves.work import AdoptProcess
from detailbench.record.picture import JobPicture
from detailbench.record.things import PaintFeel


def another(hands: Hands, **car: Any) -> Hands:
    made = Hands(hands.shop, hands.shop.job())
    made.do(DescribeCar(made.job, car))
    return made


def served(hands: Hands, rung: int) -> str:
    """Tried, confirmed on a second panel and adopted; its name."""
    combination = hands.tried("roof", rung=rung)
    hands.tried("bonnet", rung=rung)
    group = hands.shop.group(hands.job, "roof")
    hands.do(AdoptProcess(hands.job, group.id, [{"combination_id": combination}]))
    return combination_name(hands.picture.shop, combination)


def felt(picture: JobPicture, panel: str, feel: str, sticky: str = "") -> JobPicture:
    """The same job with a word about how its paint feels."""
    last = picture.trials[-1]
    note = PaintFeel(
        id=f"feel of {panel}", entered_at=last.entered_at, entered_by=last.entered_by, job_id=picture.job.id,
        panels=(panel,), feel=feel, sticky=sticky, seq=last.seq + 1,
    )  # fmt: skip
    return replace(picture, paint_feels=(*picture.paint_feels, note))


def refinished(picture: JobPicture, panel: str) -> JobPicture:
    groups = tuple(replace(g, refinished="yes") if panel in g.panels else g for g in picture.groups)
    return replace(picture, groups=groups)


@pytest.fixture
def pictures(hands: Hands) -> tuple[JobPicture, ...]:
    dark = another(hands, paint_code="X 12", year=2019)
    dark.tried("roof", rung=0, cleared="no")
    dark.tried("bonnet", rung=2)
    light = another(hands, paint_code="Y 7", year=2024)
    light.tried("roof", rung=5, finish="even_haze")
    return felt(dark.picture, "bonnet", "soft", "yes"), refinished(light.picture, "roof")


@pytest.mark.parametrize(
    ("sought", "numbers"),
    [
        (Sought(), ["Y 7", "X 12", "X 12"]),
        (Sought(code="x1"), ["X 12", "X 12"]),
        (Sought(code="2"), []),
        (Sought(year=2024), ["Y 7"]),
        (Sought(refinished="yes"), ["Y 7"]),
        (Sought(refinished="no"), []),
        (Sought(feel="soft"), ["X 12"]),
        (Sought(sticky="yes", code="X 12"), ["X 12"]),
        (Sought(feel="hard"), []),
        (Sought(words="haze"), ["Y 7"]),
        (Sought(words="MEDIUM bonnet"), ["X 12"]),
        (Sought(words="keep"), ["X 12"]),
        (Sought(words="keep haze"), []),
    ],
)
def test_a_trial_is_found_by_what_is_known_of_its_paint_and_by_what_came_of_it(
    pictures: tuple[JobPicture, ...], sought: Sought, numbers: list[str]
) -> None:
    assert [t.code for t in trials_with(pictures, sought)] == numbers


def test_of_these_jobs_alone(pictures: tuple[JobPicture, ...]) -> None:
    assert {t.picture.job.id for t in trials_with(pictures, Sought(jobs=(pictures[0].job.id,)))} == {pictures[0].job.id}


def test_a_trial_says_its_number_in_the_job_and_its_paint_without_guessing(pictures: tuple[JobPicture, ...]) -> None:
    newest, bonnet, roof = trials_before(pictures)
    assert [t.number for t in (newest, bonnet, roof)] == [1, 2, 1]
    assert paint_words(bonnet.picture, bonnet.group, bonnet.feel) == "X 12, 2019, soft, sticky"
    assert paint_words(newest.picture, newest.group, newest.feel) == "Y 7, 2024, refinished"


def test_what_served_on_the_same_colour_code_is_counted_by_job(hands: Hands) -> None:
    names = []
    for _job in range(2):
        other = another(hands, paint_code="x12", year=2031)
        names.append(served(other, rung=2))
    third = another(hands, paint_code="X 12")
    third.tried("roof", rung=4)
    served(another(hands, paint_code="Z 1"), rung=1)
    hands.do(DescribeCar(hands.job, {"paint_code": " X 12"}))
    found = like_before(hands.picture, hands.shop.bench.jobs_with_trials())
    assert found is not None
    assert (found.likeness, len(found.jobs), found.served) == ("same_code", 3, ((names[0], 2),))
    assert "3 jobs" in found.sentence
    assert f"{names[0]} (2 ×)" in found.sentence
    # where its own trials speak against it since, it did not serve
    for trial in other.picture.trials:
        other.do(JudgeTrial(other.job, trial.id, "no", "clear"))
    found = like_before(hands.picture, hands.shop.bench.jobs_with_trials())
    assert found is not None
    assert found.served == ((names[0], 1),)
    polish = hands.picture.shop.products[1]
    hands.do(ChangeInShop("product", polish.id, {"name": "renamed polish"}))
    hands.do(RenewRange())
    found = like_before(hands.picture, hands.shop.bench.jobs_with_trials())
    assert found is not None
    assert "renamed polish" in found.served[0][0]  # said as the range calls it today


def test_a_code_nobody_had_falls_back_to_maker_and_age_and_nothing_known_says_nothing(hands: Hands) -> None:
    other = another(hands, vin="ZZZ1", year=2029)
    other.tried("roof", rung=2)
    assert like_before(hands.picture, hands.shop.bench.jobs_with_trials()) is None
    hands.do(DescribeCar(hands.job, {"paint_code": "X 12", "vin": "zzz9", "year": 2031}))
    found = like_before(hands.picture, hands.shop.bench.jobs_with_trials())
    assert found is not None
    assert (found.likeness, found.jobs, found.served) == ("same_maker_and_age", (other.job,), ())
    assert "same maker and age: one job" in found.sentence
    assert "Nothing adopted there is known to serve." in found.sentence
