"""Like paint before: what earlier jobs of this shop saw on the same combinations, and how like their paint is."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from invented_findings import Hands

from detailbench.findings.like_paint import like_paint, likeness
from detailbench.record.picture import JobPicture
from detailbench.trials.adviser_prior import like_paint_prior, one_step_works


def as_car(picture: JobPicture, **values: Any) -> JobPicture:
    return replace(picture, car=replace(picture.car, **values))


def test_another_jobs_trials_speak_for_this_one_and_its_own_do_not(hands: Hands) -> None:
    other = Hands(hands.shop, hands.shop.job())
    other.tried("roof", rung=3)
    group = hands.shop.group(hands.job, "roof")
    found = like_paint(hands.picture, group.id, [other.picture, hands.picture])
    assert [(box.ch, box.gl, box.cl) for box, _word in found] == [(3, 4, 0)]
    hands.tried("roof", rung=2)
    assert like_paint(hands.picture, group.id, [hands.picture]) == ()
    n = len(hands.picture.shop.combinations)
    assert float(like_paint_prior(n, found)[one_step_works(n, 3)].sum()) > float(
        like_paint_prior(n, ())[one_step_works(n, 3)].sum()
    )


def test_a_refinish_is_like_no_paint_that_was_not_refinished(hands: Hands) -> None:
    other = Hands(hands.shop, hands.shop.job())
    other.tried("roof", rung=3)
    group = hands.shop.group(hands.job, "roof")
    mine, theirs = (as_car(p, paint_code="X 12") for p in (hands.picture, other.picture))
    assert [word for _box, word in like_paint(mine, group.id, [theirs])] == ["same_code"]
    again = replace(mine, groups=tuple(replace(g, refinished="yes") for g in mine.groups))
    assert [word for _box, word in like_paint(again, group.id, [theirs])] == ["other"]
    both = replace(theirs, groups=tuple(replace(g, refinished="yes") for g in theirs.groups))
    assert [word for _box, word in like_paint(again, group.id, [both])] == ["same_code"]


@pytest.mark.parametrize(
    ("mine", "theirs", "word"),
    [
        ({"paint_code": "x 12"}, {"paint_code": "X 12"}, "same_code"),
        ({"paint_code": ""}, {"paint_code": ""}, "other"),
        ({"vin": "ZZZ1", "year": 2019}, {"vin": "zzz2", "year": 2021}, "same_maker_and_age"),
        ({"vin": "ZZZ1", "year": 2019}, {"vin": "zzz2", "year": 2025}, "other"),
        ({"vin": "ZZZ1", "year": 2019}, {"vin": "YZZ2", "year": 2019}, "other"),
        ({"vin": "", "year": 2019}, {"vin": "", "year": 2019}, "other"),
        ({"vin": "ZZZ1", "year": None}, {"vin": "ZZZ2", "year": 2019}, "other"),
    ],
)
def test_likeness_is_told_by_what_is_noted_of_both_cars(
    hands: Hands, mine: dict[str, Any], theirs: dict[str, Any], word: str
) -> None:
    blank: dict[str, Any] = {"paint_code": "", "vin": "", "year": None}
    picture = hands.picture
    assert likeness(as_car(picture, **{**blank, **mine}), as_car(picture, **{**blank, **theirs})) == word
