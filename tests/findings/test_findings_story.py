"""Trials go with the panel they were made on; marks compare only under a lamp that was noted."""

from __future__ import annotations

import pytest
from invented_findings import Hands

from detailbench.basics.errors import Refused
from detailbench.findings.mark_results import mark_results, worst_severity
from detailbench.findings.processes import group_of
from detailbench.findings.trial_story import known_range, range_combinations, told, trials_of
from detailbench.moves.marks import LookAgain, RecordMark
from detailbench.moves.surface import MakeGroup, SetState
from detailbench.moves.trials import JudgeTrial, RecordTrial


def test_a_trial_goes_with_its_panel_to_the_new_finish_group(hands: Hands) -> None:
    hands.tried("door_front_r", rung=2)
    hands.tried("roof", rung=3)
    hands.do(MakeGroup(hands.job, "refinished door", ("door_front_r",)))
    rest, door = hands.shop.group(hands.job, "roof"), hands.shop.group(hands.job, "door_front_r")
    assert [t.panel for t in trials_of(hands.picture, rest.id)] == ["roof"]
    assert [t.panel for t in trials_of(hands.picture, door.id)] == ["door_front_r"]
    assert [s.cleared for s in known_range(hands.picture, door.id)][2:4] == [True, None]
    assert [s.cleared for s in known_range(hands.picture, rest.id)][2:4] == [None, True]


def test_a_trial_of_a_group_that_is_no_more_can_still_be_judged(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "bumper_front")
    combination = range_combinations(hands.picture, group.id)[1].id
    made = hands.do(RecordTrial(hands.job, group.id, "bumper_front", combination))
    hands.do(MakeGroup(hands.job, "plastic again", group.panels))
    hands.do(JudgeTrial(hands.job, made, "yes", "clear"))
    now = group_of(hands.picture, "bumper_front")
    assert now is not None
    assert [t.outcome is not None for t in told(hands.picture, now.id)] == [True]


def test_a_refining_trial_stands_on_a_place_of_its_own_panel(hands: Hands) -> None:
    hands.tried("roof", rung=3, finish="even_haze")
    under = hands.picture.trials[-1]
    group = hands.shop.group(hands.job, "roof")
    with pytest.raises(Refused, match="same panel"):
        hands.do(RecordTrial(hands.job, group.id, "tailgate", under.combination_id, on_top_of=under.id))


def lamps(hands: Hands) -> list[str]:
    return [lamp.id for lamp in hands.shop.bench.shop().lamps]


@pytest.mark.parametrize(
    ("before", "after", "says"),
    [
        (0, 0, "no longer seen under this lamp"),
        (0, 1, "not comparable: another lamp"),
        (0, None, "not comparable: lamp not noted"),
        (None, None, "not comparable: lamp not noted"),
    ],
)
def test_a_mark_is_gone_only_under_the_lamp_it_was_seen_under(
    hands: Hands, before: int | None, after: int | None, says: str
) -> None:
    known = lamps(hands)
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    mark = hands.do(RecordMark(hands.job, "roof", "swirl", 3, lamp_id="" if before is None else known[before]))
    hands.do(LookAgain(hands.job, mark, 0, lamp_id="" if after is None else known[after]))
    assert [r.says for r in mark_results(hands.picture)] == [says]


def test_a_look_before_the_panel_was_clean_compares_with_nothing(hands: Hands) -> None:
    lamp = lamps(hands)[0]
    mark = hands.do(RecordMark(hands.job, "roof", "swirl", 3, lamp_id=lamp))
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.do(LookAgain(hands.job, mark, 0, lamp_id=lamp))
    assert [r.says for r in mark_results(hands.picture)] == ["not comparable: not clean and bare before"]


def test_the_worst_after_the_work_is_not_known_while_a_mark_was_not_looked_at_again(hands: Hands) -> None:
    first = hands.do(RecordMark(hands.job, "roof", "swirl", 3))
    second = hands.do(RecordMark(hands.job, "roof", "swirl", 4))
    hands.do(LookAgain(hands.job, first, 0))
    assert worst_severity(hands.picture, "roof", after=True) is None
    hands.do(LookAgain(hands.job, second, 1))
    assert worst_severity(hands.picture, "roof", after=True) == 1
    assert worst_severity(hands.picture, "roof") == 4
