"""Trails speak of the movement, never of the strength: a rotary that left them is no haze, and a free orbital finish on
top makes two steps of it."""

from __future__ import annotations

from invented_findings import Hands
from test_findings_outcome_table import ROTARY, judged, learnt

from detailbench.findings.adviser import adviser_says, ask_adviser
from detailbench.findings.range_picture import range_picture
from detailbench.findings.trial_story import known_range, may_adopt_steps, range_combinations
from detailbench.trials.adviser_prior import Box, whole
from detailbench.trials.adviser_seen import box_of


def test_trails_on_a_rotary_then_clear_by_free_orbital_on_top(hands: Hands) -> None:
    group = hands.shop.group(hands.job, "roof")
    judged(hands, ROTARY, "yes", "trails")
    cut = hands.picture.trials[-1].id
    n = len(known_range(hands.picture, group.id))
    # it clears: nothing else is known, not of this finish and not of any stronger one
    assert box_of(known_range(hands.picture, group.id)) == whole(n)._replace(ch=ROTARY)
    says = adviser_says(asked(hands))
    assert says.move is not None
    judged(hands, 1, "yes", "clear", on=cut)
    assert learnt(hands, ROTARY) == (True, None, None, True, False)
    assert learnt(hands, 1) == (None, None, True, False, False)
    assert box_of(known_range(hands.picture, group.id)) == Box(0, ROTARY, 2, n, 0)
    both = adviser_says(asked(hands))
    assert both.how == "exact"
    assert both.move is not None
    assert both.move[:3] == ("adopt_two", ROTARY, 1)
    names = [range_combinations(hands.picture, group.id)[i].id for i in (ROTARY, 1)]
    assert may_adopt_steps(hands.picture, group, names)[1] is None
    known = [r.known for r in range_picture(hands.picture, group.id).rungs]
    assert (known[ROTARY], known[1], known[4]) == ("trails", "refines", "never_tried")


def test_a_cut_that_left_trails_is_not_tried_again_for_its_finish(hands: Hands) -> None:
    for rung in range(ROTARY):
        judged(hands, rung, "no", "clear")
    judged(hands, ROTARY, "yes", "trails")
    move = adviser_says(asked(hands)).move
    assert move is not None
    assert (move.kind, move.rung) == ("refine", ROTARY)
    seen = known_range(hands.picture, hands.shop.group(hands.job, "roof").id)
    assert move.on_top is not None
    assert not seen[move.on_top].rung.movement.leaves_trails


def test_trails_on_top_say_nothing_about_taking_haze_off(hands: Hands) -> None:
    judged(hands, ROTARY, "yes", "even_haze")
    cut = hands.picture.trials[-1].id
    judged(hands, 6, "yes", "trails", on=cut)
    assert learnt(hands, 6) == (None, None, None, True, False)
    move = adviser_says(asked(hands)).move
    assert move is not None
    assert move.on_top != 6


def asked(hands: Hands):  # type: ignore[no-untyped-def]
    found = ask_adviser(hands.picture, hands.shop.group(hands.job, "roof").id)
    assert found is not None
    return found
