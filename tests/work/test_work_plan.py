from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.errors import BadInput
from detailbench.work import PanelToDo, Process, Progress, Step, WorkPlan, plan_work, work_left
from detailbench.work.left import MOST_WHILE_RUNNING, done_share
from detailbench.work.sections import minutes, sections

CUT = Step("cut", "cut", section_m2=0.1, overlap=0.0, spread_s=20, polish_s=70, wipe_s=30, pad_care_every=0, setup_s=0)
FINE = Step(
    "fine", "refine", section_m2=0.2, overlap=0.0, spread_s=20, polish_s=70, wipe_s=30, pad_care_every=0, setup_s=0
)
PANELS = [
    PanelToDo("roof", "main", 1.0, 0.1),
    PanelToDo("bonnet", "main", 0.8),
    PanelToDo("bumper_front", "skins", 0.6),
    PanelToDo("door_front_l", "main", 0.4),
]
PROCESSES = {"main": Process((CUT, FINE)), "skins": Process((FINE,))}


def plan() -> WorkPlan:
    return plan_work(PANELS, PROCESSES, {"door_front_l": "through the clear"})


# sections and minutes


def test_sections_are_rounded_up_and_never_fewer_than_one() -> None:
    assert sections(panel_m2=1.01, section_m2=0.5).number == 3
    assert sections(panel_m2=0.01, section_m2=0.5).number == 1


def test_a_whole_number_of_sections_stays_whole() -> None:
    # 0.6·1.2/0.24 is a hair above three in binary
    assert sections(panel_m2=0.6, overlap=0.2, section_m2=0.24).number == 3


def test_overlap_takes_more_sections() -> None:
    assert sections(panel_m2=1.0, section_m2=0.1).number == 10
    assert sections(panel_m2=1.0, section_m2=0.1, overlap=0.25).number == 13


def test_what_the_panels_area_leaves_open_is_carried_into_sections_and_minutes() -> None:
    found = sections(panel_m2=1.0, section_m2=0.1, panel_share=0.1)
    assert (found.low, found.number, found.high) == (9, 10, 11)
    takes = minutes(sections=10, sections_low=9, sections_high=11, spread_s=20, polish_s=70, wipe_s=30)
    assert (takes.low, takes.minutes, takes.high) == (18.0, 20.0, 22.0)


def test_pad_care_comes_after_every_so_many_sections_and_setup_once() -> None:
    def takes(count: int) -> float:
        return minutes(
            sections=count, spread_s=0, polish_s=60, wipe_s=0, pad_care_every=4, pad_care_s=60, setup_s=300
        ).minutes

    assert [takes(n) for n in (3, 4, 8)] == [3 + 5, 4 + 1 + 5, 8 + 2 + 5]


@pytest.mark.parametrize(
    "wrong",
    [{"panel_m2": 0.0}, {"section_m2": -1.0}, {"overlap": -0.1}, {"panel_share": 1.0}, {"panel_m2": float("nan")}],
)
def test_areas_that_make_no_sense_are_refused(wrong: dict[str, float]) -> None:
    with pytest.raises(BadInput) as caught:
        sections(**{"panel_m2": 1.0, "section_m2": 0.1, **wrong})
    assert caught.value.field == next(iter(wrong))


@pytest.mark.parametrize(
    "wrong", [{"sections": 0}, {"sections_low": 5}, {"sections_high": 3}, {"spread_s": -1.0}, {"setup_s": -1.0}]
)
def test_seconds_and_sections_that_make_no_sense_are_refused(wrong: dict[str, int]) -> None:
    with pytest.raises(BadInput):
        minutes(**{"sections": 4, "spread_s": 1, "polish_s": 1, "wipe_s": 1, **wrong})


# the plan


def test_one_group_goes_through_one_step_before_its_next() -> None:
    assert [(s.panel, s.step) for s in plan().steps] == [
        ("roof", "cut"),
        ("bonnet", "cut"),
        ("roof", "fine"),
        ("bonnet", "fine"),
        ("bumper_front", "fine"),
    ]


def test_a_held_panel_stands_apart_with_its_reason() -> None:
    assert plan().held == (("door_front_l", "through the clear"),)
    assert plan().of_panel("door_front_l") == ()


def test_a_panel_whose_group_has_no_process_is_named_and_not_planned() -> None:
    found = plan_work(PANELS, {"skins": PROCESSES["skins"]})
    assert found.without_process == ("roof", "bonnet", "door_front_l")
    assert {s.panel for s in found.steps} == {"bumper_front"}


def test_the_total_adds_the_panel_steps_and_their_ranges() -> None:
    # roof 10 + 5 sections, bonnet 8 + 4, bumper 3, two minutes each
    assert plan().minutes == pytest.approx(2 * (15 + 12 + 3))
    assert plan().minutes_low < plan().minutes < plan().minutes_high
    assert plan().minutes_high == pytest.approx(2 * (11 + 6 + 12 + 3))


def test_material_is_counted_by_section_and_unknown_where_it_is_not_stated() -> None:
    known = Process((Step("cut", "cut", section_m2=0.1, overlap=0.0, material_ml=1.5),))
    assert plan_work([PANELS[0]], {"main": known}).steps[0].material_ml == pytest.approx(15)
    assert plan().steps[0].material_ml is None


def test_a_panel_twice_or_a_step_key_twice_is_refused() -> None:
    with pytest.raises(BadInput, match="twice"):
        plan_work([PANELS[0], PANELS[0]], PROCESSES)
    with pytest.raises(BadInput, match="own key"):
        Process((CUT, CUT))
    with pytest.raises(BadInput, match="at least one"):
        Process(())


@pytest.mark.parametrize("wrong", [{"means": "magic"}, {"section_m2": 0.0}, {"polish_s": -1.0}, {"overlap": -0.1}])
def test_a_step_that_makes_no_sense_is_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(BadInput):
        Step("s", "step", **wrong)  # type: ignore[arg-type]


# work left


def test_nothing_done_leaves_everything_and_all_finished_leaves_nothing() -> None:
    assert work_left(plan(), []).whole == 1.0
    everything = [Progress(s.panel, s.step, "finished") for s in plan().steps]
    done = work_left(plan(), everything)
    assert done.whole == 0.0
    assert set(done.by_panel.values()) == {0.0}
    assert done.minutes_left == 0.0


def test_finished_minutes_leave_panel_and_whole_by_their_share() -> None:
    left = work_left(plan(), [Progress("roof", "cut", "finished")])
    assert left.by_panel["roof"] == pytest.approx(5 / 15)
    assert left.by_panel["bonnet"] == 1.0
    assert left.whole == pytest.approx(1 - 20 / 60)
    assert left.minutes_left == pytest.approx(40)


@pytest.mark.parametrize("state", ["running", "paused"])
def test_a_step_begun_counts_its_minutes_but_never_as_done(state: str) -> None:
    assert done_share(state=state, planned_min=20, elapsed_min=5) == 0.25
    assert done_share(state=state, planned_min=20, elapsed_min=50) == MOST_WHILE_RUNNING == 0.9
    assert done_share(state=state, planned_min=20, elapsed_min=0) == 0
    assert done_share(state=state, planned_min=0.5, elapsed_min=0.1) == pytest.approx(0.2)
    assert done_share(state=state, planned_min=0, elapsed_min=1) == 0.9
    assert work_left(plan(), [Progress("roof", "cut", state)]).whole == 1.0


def test_sections_ticked_by_hand_count_instead_of_the_minutes() -> None:
    assert done_share(state="running", planned_min=20, elapsed_min=19, sections=10, sections_done=3) == 0.3
    assert done_share(state="running", planned_min=20, elapsed_min=1, sections=10, sections_done=12) == 1.0
    assert done_share(state="finished", planned_min=20, sections=10, sections_done=3) == 1.0


def test_held_panels_are_not_in_the_work_left() -> None:
    left = work_left(plan(), [Progress("door_front_l", "cut", "finished")])
    assert "door_front_l" not in left.by_panel
    assert left.whole == 1.0


def test_where_nothing_is_planned_there_is_no_share() -> None:
    left = work_left(plan_work([], {}), [])
    assert left.whole is None
    assert left.by_panel == {}


def test_the_last_progress_of_a_step_counts() -> None:
    seen = [Progress("bonnet", "cut", "running", 4.0), Progress("bonnet", "cut", "finished")]
    assert work_left(plan(), seen).by_panel["bonnet"] == pytest.approx(4 / 12)


@pytest.mark.parametrize(
    "wrong",
    [
        {"state": "lost"},
        {"elapsed_min": -1.0},
        {"planned_min": float("nan")},
        {"sections_done": -1},
    ],
)
def test_progress_that_makes_no_sense_is_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(BadInput):
        done_share(**{"state": "running", "planned_min": 10.0, **wrong})  # type: ignore[arg-type]


@given(
    st.lists(
        st.tuples(
            st.sampled_from(["not_started", "running", "paused", "finished"]),
            st.floats(0, 200),
            st.none() | st.integers(0, 20),
        ),
        min_size=5,
        max_size=5,
    )
)
def test_what_is_left_lies_between_nought_and_one_and_the_whole_between_the_panels(
    states: list[tuple[str, float, int | None]],
) -> None:
    seen = [Progress(s.panel, s.step, *state) for s, state in zip(plan().steps, states, strict=True)]
    left = work_left(plan(), seen)
    assert left.whole is not None
    assert all(0 <= share <= 1 for share in left.by_panel.values())
    assert min(left.by_panel.values()) - 1e-12 <= left.whole <= max(left.by_panel.values()) + 1e-12
    assert left.minutes_left == pytest.approx(left.whole * plan().minutes)
