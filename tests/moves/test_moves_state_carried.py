"""Everything seen or measured carries the three-field state the surface was in; nothing of that kind is forgotten."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import fields

import pytest
from invented_findings import Hands, hands

from detailbench.findings.states import State, state_of
from detailbench.moves.gloss import RecordGloss
from detailbench.moves.looking_again import RecordSecondLook
from detailbench.moves.marks import LookAgain, LookedNothingSeen, RecordMark
from detailbench.moves.move import Move
from detailbench.moves.photos import AddPhoto, CorrectPhoto
from detailbench.moves.readings import RecordReading, StartSession
from detailbench.moves.readings_file import ImportedReading, ImportReadings
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetState
from detailbench.moves.walk_mending import ChangeSides
from detailbench.moves.washing import RecordRubTest
from detailbench.photos.drawn import SWIRLS, drawn_reflection
from detailbench.record.picture import JOB_KINDS
from detailbench.record.thing import SeenThing

__all__ = ["hands"]

PANEL = "door_front_l"
STATES = (
    State(),
    State("washed", "as_found", "earlier_coating"),
    State("decontaminated", "as_found", "bare"),
    State("wiped", "polished", "bare"),
    State("wiped", "polished", "protected"),
)


def a_mark(hands: Hands) -> str:
    return hands.do(RecordMark(hands.job, PANEL, "swirl", 2, intent="leave"))


def a_photo(hands: Hands, panel: str = PANEL) -> Move:
    content = drawn_reflection(SWIRLS["few"], seed=len(hands.picture.photos) + 1)
    return AddPhoto(hands.job, content, "drawn.jpg", panel=panel)


def a_reading(hands: Hands) -> Move:
    hands.do(StartSession(hands.job, hands.shop.gauge))
    return RecordReading(hands.job, PANEL, 118.0)


def a_file(hands: Hands) -> Move:
    hands.do(StartSession(hands.job, hands.shop.gauge))
    return ImportReadings(hands.job, (ImportedReading(PANEL, 118.0),))


def a_meter(hands: Hands) -> None:
    values = {"name": "invented gloss", "principle": "gloss", "angles_deg": (20, 60, 85)}
    hands.do(StartSession(hands.job, hands.do(AddToShop("gauge", values))))


def a_gloss_value(hands: Hands) -> Move:
    a_meter(hands)
    return RecordGloss(hands.job, PANEL, 60, 84.0)


def a_gloss_file(hands: Hands) -> Move:
    a_meter(hands)
    return ImportReadings(hands.job, (ImportedReading(PANEL, None, angle_deg=60, value_gu=84.0),))


# what is seen → the moves that make it; the key is the picture's tuple
MADE_BY: dict[str, tuple[Callable[[Hands], Move], ...]] = {
    "marks": (lambda h: RecordMark(h.job, PANEL, "swirl", 2, intent="leave"),),
    "gloss_readings": (a_gloss_value, a_gloss_file),
    "mark_checks": (lambda h: LookAgain(h.job, a_mark(h), 0),),
    "panel_looks": (lambda h: LookedNothingSeen(h.job, PANEL),),
    "photos": (a_photo,),
    "readings": (a_reading, a_file),
    "rub_tests": (lambda h: RecordRubTest(h.job, PANEL, "no_colour"),),
    "second_looks": (lambda h: RecordSecondLook(h.job, (PANEL,), "still_clear"),),
}
WAYS = [(kind, make) for kind, makes in MADE_BY.items() for make in makes]


def of(thing: SeenThing) -> State:
    return State(thing.clean, thing.work, thing.cover)


def every_kind() -> Iterator[str]:
    return (name for name, cls in JOB_KINDS.items() if issubclass(cls, SeenThing))


def test_each_kind_of_seen_thing_is_looked_at_here() -> None:
    assert set(every_kind()) == set(MADE_BY)
    assert {f.name for f in fields(SeenThing)} >= {"clean", "work", "cover"}


@pytest.mark.parametrize("state", STATES, ids=lambda s: "-".join(s.as_fields().values()))
@pytest.mark.parametrize(("kind", "make"), WAYS, ids=[f"{k}-{i}" for i, (k, _make) in enumerate(WAYS)])
def test_it_carries_the_panels_state_of_then(
    hands: Hands, kind: str, make: Callable[[Hands], Move], state: State
) -> None:
    hands.do(SetState(hands.job, (PANEL,), **state.as_fields()))
    hands.do(make(hands))
    seen = getattr(hands.picture, kind)[-1]
    assert of(seen) == state
    hands.do(SetState(hands.job, (PANEL,), clean="wiped", work="polished", cover="protected"))
    assert of(getattr(hands.picture, kind)[-1]) == state


# of no single panel
def test_a_photo_of_the_whole_car_is_as_clean_as_its_least_clean_panel(hands: Hands) -> None:
    panels = tuple(p for g in hands.picture.groups for p in g.panels)
    hands.do(SetState(hands.job, panels, clean="wiped"))
    hands.do(a_photo(hands, ""))
    assert of(hands.picture.photos[-1]) == State("wiped", "as_found", "bare")
    hands.do(SetState(hands.job, ("roof",), clean="washed", work="polished", cover="protected"))
    hands.do(a_photo(hands, ""))
    assert of(hands.picture.photos[-1]) == State("washed", "as_found", "not_known")


def test_a_second_look_at_panels_in_two_states_is_kept_by_state(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.do(RecordSecondLook(hands.job, ("roof", PANEL), "still_clear"))
    assert {look.panels: of(look) for look in hands.picture.second_looks} == {
        ("roof",): State("wiped", "as_found", "bare"),
        (PANEL,): State(),
    }


# put right
def test_a_photo_of_another_panel_after_all_carries_that_panels_state_of_then(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="washed"))
    hands.do(a_photo(hands))
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.do(CorrectPhoto(hands.job, hands.picture.photos[-1].id, {"panel": "roof"}))
    assert of(hands.picture.photos[-1]) == State("washed", "as_found", "not_known")


def test_new_words_under_a_photo_leave_its_state(hands: Hands) -> None:
    hands.do(SetState(hands.job, (PANEL,), clean="washed"))
    hands.do(a_photo(hands))
    hands.do(SetState(hands.job, (PANEL,), clean="wiped"))
    hands.do(CorrectPhoto(hands.job, hands.picture.photos[-1].id, {"caption": "the edge"}))
    assert of(hands.picture.photos[-1]).clean == "washed"


def test_a_reading_that_changes_sides_carries_the_state_of_the_panel_the_gauge_met(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("door_front_r",), clean="decontaminated"))
    hands.do(a_reading(hands))
    hands.do(ChangeSides(hands.job, (PANEL,)))
    assert of(hands.picture.readings[-1]) == state_of(hands.picture, "door_front_r")
