"""Coming back to a job: where the work stood, also over a night and when somebody else was there."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop, invented, prepared

from detailbench.moves import marks, readings, shop, surface
from detailbench.moves.gloss import RecordGloss
from detailbench.moves.handover import RecordProtection
from detailbench.moves.turning import TurnJob
from detailbench.screens.frame.come_back import stage_to_return_to, you_were_here
from detailbench.screens.stages import all_stages

__all__ = ["invented", "prepared"]


@pytest.fixture
def job(invented: InventedShop) -> str:
    """Three places of the bonnet read by Ana."""
    job = invented.job()
    invented.bench.do(surface.SetState(job, ("bonnet",), clean="wiped"))
    invented.checked(job)
    for value in (118.0, 120.0, 117.0):
        invented.clock.forward(seconds=4)
        invented.bench.do(readings.RecordReading(job, "bonnet", value))
    return job


def said(invented: InventedShop, job: str, person: str = "") -> str:
    return you_were_here(invented.picture(job), invented.clock.now(), person or invented.person)


def test_after_a_short_break_it_says_minutes(invented: InventedShop, job: str) -> None:
    assert said(invented, job) == ""
    invented.clock.forward(minutes=42)
    assert said(invented, job) == "you were here: bonnet, place 3 of 8, 42 minutes ago"


def test_a_gloss_value_is_where_one_was_too(invented: InventedShop, job: str) -> None:
    values = {"name": "invented gloss meter", "principle": "gloss", "angles_deg": (60,)}
    meter = invented.bench.do(shop.AddToShop("gauge", values)).id
    invented.bench.do(readings.StartSession(job, meter, 21.0))
    invented.bench.do(surface.SetState(job, ("roof",), clean="wiped"))
    invented.clock.forward(minutes=5)
    invented.bench.do(RecordGloss(job, "roof", 60, 84.0))
    invented.clock.forward(minutes=42)
    assert said(invented, job).startswith("you were here: roof, place 1 of 8, 42 minutes ago")
    assert stage_to_return_to(invented.picture(job), all_stages()) == "thickness"


def test_over_a_night_it_says_yesterday_and_the_time(invented: InventedShop, job: str) -> None:
    at = invented.clock.now()
    invented.clock.forward(days=1)
    assert said(invented, job) == f"you were here: bonnet, place 3 of 8, yesterday {at:%H:%M}"
    invented.clock.forward(days=1)
    assert said(invented, job).endswith(f"{at:%Y-%m-%d %H:%M}")


def test_another_person_reads_who_was_there(invented: InventedShop, job: str) -> None:
    ben = invented.bench.do(shop.AddToShop("person", {"name": "Ben Invented", "initials": "BE"})).id
    at = invented.clock.now()
    invented.clock.forward(days=1)
    assert said(invented, job, ben) == f"Ana Invented was here: bonnet, place 3 of 8, yesterday {at:%H:%M}"


def test_it_is_the_same_after_a_restart_and_a_pause(invented: InventedShop, job: str) -> None:
    invented.bench.do(TurnJob(job, "paused", "over the night"))
    at = invented.clock.now()
    invented.clock.forward(days=1)
    invented.reopened()
    assert said(invented, job) == (
        f"you were here: bonnet, place 3 of 8, yesterday {at:%H:%M}; the job is paused: over the night"
    )


def test_a_protection_leads_back_to_the_handover_though_it_also_says_how_the_panels_are(
    invented: InventedShop, job: str
) -> None:
    stages = all_stages()
    assert stage_to_return_to(invented.picture(job), stages) == "thickness"
    invented.bench.do(RecordProtection(job, ("bonnet",), "invented sealant"))
    assert stage_to_return_to(invented.picture(job), stages) == "handover"
    assert stage_to_return_to(invented.picture(invented.job()), stages) == "arrival"


def test_the_panels_visited_before_it_in_one_go_are_named_too(invented: InventedShop, job: str) -> None:
    invented.clock.forward(minutes=30)  # the bonnet was an hour ago: another sitting
    for panel in ("roof", "wing_front_l", "roof", "door_front_l", "tailgate"):
        invented.clock.forward(minutes=2)
        invented.bench.do(marks.RecordMark(job, panel, "swirl", 2))
    invented.clock.forward(minutes=42)
    assert said(invented, job) == (
        "you were here: tailgate, 42 minutes ago; before that left front door, roof, left front wing"
    )


def test_many_panels_before_it_are_counted(invented: InventedShop, job: str) -> None:
    invented.clock.forward(minutes=30)
    for panel in ("roof", "wing_front_l", "wing_front_r", "door_front_l", "door_front_r", "tailgate"):
        invented.bench.do(marks.RecordMark(job, panel, "swirl", 2))
        invented.clock.forward(minutes=1)
    invented.clock.forward(minutes=41)
    assert said(invented, job).endswith(
        "42 minutes ago; before that right front door, left front door, right front wing and 2 more"
    )


def test_what_somebody_else_did_meanwhile_is_not_yours(invented: InventedShop, job: str) -> None:
    invented.clock.forward(minutes=2)
    ana = invented.bench.person
    invented.bench.person = invented.bench.do(shop.AddToShop("person", {"name": "Ben Invented", "initials": "BE"})).id
    invented.bench.do(marks.RecordMark(job, "roof", "swirl", 2))
    invented.bench.person = ana
    invented.clock.forward(minutes=2)
    invented.bench.do(marks.RecordMark(job, "tailgate", "swirl", 2))
    invented.clock.forward(minutes=42)
    assert said(invented, job) == "you were here: tailgate, 42 minutes ago; before that bonnet"
