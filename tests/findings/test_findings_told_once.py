"""What is told of a picture is worked out once for it, and anew for another picture, question or language."""

from __future__ import annotations

from dataclasses import replace

import pytest
from invented_findings import Hands

from detailbench.basics.numbers import format_thickness, show_thickness_in
from detailbench.basics.texts import language, speak
from detailbench.findings import changes, gauges, panels, permissions, plan
from detailbench.findings.told_once import told_once
from detailbench.record.picture import JobPicture


def test_a_picture_is_asked_once_for_each_question(hands: Hands) -> None:
    asked: list[tuple[JobPicture, int]] = []

    @told_once
    def counted(picture: JobPicture, n: int) -> list[int]:
        asked.append((picture, n))
        return [n]

    picture = hands.picture
    assert counted(picture, 1) is counted(picture, 1)
    assert counted(picture, 2) == [2]
    assert asked == [(picture, 1), (picture, 2)]
    other = replace(picture)
    assert other == picture
    assert counted(other, 1) is not counted(picture, 1)


def test_another_language_is_told_anew(hands: Hands) -> None:
    said: list[str] = []

    @told_once
    def spoken(picture: JobPicture) -> str:
        said.append(language())
        return language()

    before = language()
    try:
        spoken(hands.picture)
        speak("en_US")
        assert spoken(hands.picture) == "en_US"
    finally:
        speak(before)
    assert spoken(hands.picture) == before
    assert said == [before, "en_US"]


def test_another_unit_is_told_anew(hands: Hands) -> None:
    @told_once
    def thick(picture: JobPicture) -> str:
        return format_thickness(100.0)

    assert thick(hands.picture) == "100\u00a0µm"
    show_thickness_in("mil")
    try:
        assert thick(hands.picture).endswith("mil")
    finally:
        show_thickness_in("um")
    assert thick(hands.picture) == "100\u00a0µm"


def test_two_finders_do_not_answer_for_each_other(hands: Hands) -> None:
    @told_once
    def one(picture: JobPicture) -> int:
        return 1

    @told_once
    def two(picture: JobPicture) -> int:
        return 2

    assert (one(hands.picture), two(hands.picture), one(hands.picture)) == (1, 2, 1)


def test_a_round_of_checks_is_worked_out_once_a_picture(hands: Hands, monkeypatch: pytest.MonkeyPatch) -> None:
    hands.checked_session()
    found: list[float] = []
    real = gauges.check_gauge
    monkeypatch.setattr(gauges, "check_gauge", lambda *a, **n: (found.append(0.0), real(*a, **n))[1])
    picture = hands.picture
    for _turn in range(3):
        assert gauges.last_check(picture) is not None
        assert not gauges.failed_now(picture)
        assert gauges.spoiled_by_a_check(picture) == frozenset()
    assert len(found) == 1


def test_panels_rulings_changes_and_plan_are_worked_out_once_a_picture(
    hands: Hands, monkeypatch: pytest.MonkeyPatch
) -> None:
    hands.survey({"bonnet": (118.0, 119.0, 120.0, 118.0, 121.0)})
    asked: list[str] = []
    real_place, real_ruling = panels.read_place, permissions.what_may_come_off
    monkeypatch.setattr(panels, "read_place", lambda *a, **n: (asked.append("place"), real_place(*a, **n))[1])
    monkeypatch.setattr(
        permissions, "what_may_come_off", lambda *a, **n: (asked.append("ruling"), real_ruling(*a, **n))[1]
    )
    picture = hands.picture
    first = (
        permissions.permissions(picture),
        panels.panels_seen(picture),
        changes.changes(picture),
        plan.work_plan(picture),
    )
    once = list(asked)
    assert once.count("ruling") == len(panels.outline_of(picture).panels)
    assert once.count("place") >= 5
    assert first == (
        permissions.permissions(picture, panels.panels_seen(picture)),
        panels.panels_seen(picture),
        changes.changes(picture),
        plan.work_plan(picture),
    )
    assert asked == once
    assert permissions.permissions(picture, dict(panels.panels_seen(picture))) == first[0]
    assert len(asked) > len(once)
    again = replace(picture)
    assert panels.panels_seen(again) == first[1]
    assert panels.panels_seen(again) is not first[1]
