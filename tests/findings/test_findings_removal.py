"""A shop's own measured trials: only what was read in the middle of the patch, before and after, like with like."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from invented_findings import Hands
from invented_shop import FOIL_UM

from detailbench.body.edges import EdgePosition, to_edges
from detailbench.findings.kit_names import parts
from detailbench.findings.panels import outline_of, panel_seen
from detailbench.findings.removal import TrialRemoval, measured_trials, places_in_patch, trial_load, trial_removal
from detailbench.findings.trial_story import range_combinations
from detailbench.moves.readings import AddPlace, RecordReading
from detailbench.moves.surface import SetState
from detailbench.moves.trials import RecordTrial
from detailbench.trials.removal import removal

MIDDLE = ((-60.0, 0.0), (-30.0, 20.0), (0.0, -20.0), (30.0, 10.0), (60.0, 0.0))
BEFORE = (110.0, 111.0, 112.0, 109.0, 110.5)
AFTER = (108.0, 108.9, 110.1, 107.0, 108.4)


def at(hands: Hands, dx: float = 0.0, dy: float = 0.0) -> EdgePosition:
    panel = outline_of(hands.picture).panels["roof"]
    x0, y0, x1, y1 = panel.bounds
    return to_edges(panel, (x0 + x1) / 2 + dx, (y0 + y1) / 2 + dy)


def sheet(hands: Hands, rung: int = 2, **changed: Any) -> RecordTrial:
    group = hands.shop.group(hands.job, "roof")
    combination = range_combinations(hands.picture, group.id)[rung]
    machine, _pad, _product = parts(hands.picture.shop, combination)
    technique = {
        "dial": machine.dials[-1][0],
        "force_word": "moderate",
        "section_w_mm": 600.0,
        "section_h_mm": 600.0,
        "passes": 4,
        "seconds": 60.0,
        **changed,
    }
    return RecordTrial(hands.job, group.id, "roof", combination.id, at=at(hands), technique=technique)


def places(hands: Hands, *offsets: tuple[float, float]) -> list[str]:
    return [hands.do(AddPlace(hands.job, "roof", at(hands, *o))) for o in offsets]


def read(hands: Hands, where: list[str], values: tuple[float, ...]) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="wiped", cover="bare"))
    session = hands.checked_session()
    for place, value in zip(where, values, strict=True):
        hands.later()
        hands.do(RecordReading(hands.job, "roof", value, place_id=place))
    hands.check(session, FOIL_UM, again=True)
    hands.later()


def measured(hands: Hands, where: list[str] | None = None) -> TrialRemoval:
    where = where or places(hands, *MIDDLE)
    read(hands, where, BEFORE)
    trial = hands.do(sheet(hands))
    hands.later()
    read(hands, where, AFTER)
    return trial_removal(hands.picture, next(t for t in hands.picture.trials if t.id == trial))


def test_what_came_off_in_the_patch_is_the_like_difference_with_its_uncertainty(hands: Hands) -> None:
    found = measured(hands)
    assert found.why_none == ""
    assert found.measured is not None
    mean = sum(b - a for b, a in zip(BEFORE, AFTER, strict=True)) / 5
    assert found.measured.removed_um == pytest.approx(mean)
    assert found.measured.u_um > 0
    load = trial_load(hands.picture, found.trial)[0]
    assert load is not None
    assert found.measured.load_path_j_m2 == load
    told = removal(measured_trials([hands.picture], found.trial.combination_id), load_path_j_m2=load)
    assert told.state == "few"
    assert told.removed_um == pytest.approx(mean, rel=0.1)
    other = range_combinations(hands.picture, found.trial.group_id)[0].id
    assert removal(measured_trials([hands.picture], other)).state == "not_measured"


def test_places_less_than_a_pad_inside_the_patch_do_not_count(hands: Hands) -> None:
    inner, outer = places(hands, (0.0, 0.0), (250.0, 0.0))
    hands.do(sheet(hands))
    inside = places_in_patch(hands.picture, hands.picture.trials[-1])
    assert inner in inside
    assert outer not in inside


def test_readings_after_a_later_trial_on_the_same_patch_are_not_of_the_first(hands: Hands) -> None:
    where = places(hands, *MIDDLE)
    first = measured(hands, where)
    hands.do(replace(sheet(hands, rung=3), on_top_of=first.trial.id))
    hands.later()
    read(hands, where, tuple(v - 3.0 for v in AFTER))
    again = trial_removal(hands.picture, first.trial)
    second = trial_removal(hands.picture, hands.picture.trials[-1])
    assert first.measured is not None
    assert again.measured is not None
    assert again.measured.removed_um == pytest.approx(first.measured.removed_um)
    assert second.measured is not None
    assert second.measured.removed_um == pytest.approx(3.0)


def test_a_trial_without_readings_on_both_sides_is_not_measured(hands: Hands) -> None:
    read(hands, places(hands, *MIDDLE), BEFORE)
    hands.do(sheet(hands))
    found = trial_removal(hands.picture, hands.picture.trials[-1])
    assert (found.measured, found.why_none) == (None, "not measured")
    assert found.load_path_j_m2 is not None


def test_without_the_technique_no_load_is_made_up(hands: Hands) -> None:
    hands.do(sheet(hands, seconds=None))
    found = trial_removal(hands.picture, hands.picture.trials[-1])
    assert found.load_path_j_m2 is None
    assert found.measured is None
    assert found.why_none != ""


def test_what_is_read_on_a_patch_after_its_trial_is_no_longer_as_found(hands: Hands) -> None:
    where = places(hands, *MIDDLE)
    found = measured(hands, where)
    assert found.measured is not None
    seen = {p.place.id: p for p in panel_seen(hands.picture, "roof").places}
    assert [seen[w].value_um for w in where] == list(BEFORE)
    assert [[r.value_um for r in seen[w].earlier] for w in where] == [[value] for value in AFTER]
    assert [seen[w].low_um for w in where] == list(AFTER)  # it is what is left there, so it is reckoned with


def test_a_place_first_read_after_its_trial_is_kept_as_it_reads(hands: Hands) -> None:
    where = places(hands, *MIDDLE)
    hands.do(sheet(hands))
    hands.later()
    read(hands, where, AFTER)
    seen = {p.place.id: p for p in panel_seen(hands.picture, "roof").places}
    assert [seen[w].value_um for w in where] == list(AFTER)
