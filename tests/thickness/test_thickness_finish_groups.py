"""Finish groups as proposed from the readings: a question each, nothing adopted, doubt left open."""

from __future__ import annotations

from collections.abc import Sequence

from hypothesis import given, settings
from hypothesis import strategies as st

from detailbench.thickness.finish_groups import Proposal, proposed_groups
from detailbench.thickness.odd_findings import PanelMean
from detailbench.thickness.odd_panels import odd_panels

REST = [PanelMean(f"p{i}", float(m)) for i, m in enumerate((118, 121, 116, 119, 122, 117, 120, 115, 118, 119))]


def of(*panels: PanelMean, rest: Sequence[PanelMean] = REST) -> Proposal:
    return proposed_groups(odd_panels([*rest, *panels]))


def test_panels_that_read_alike_are_proposed_together_whatever_their_metal() -> None:
    light = [PanelMean(f"a{i}", float(m), substrate="aluminium") for i, m in enumerate((96, 99, 97))]
    (group,) = of(*light).groups
    assert group.why == "reads alike"
    assert group.keys == tuple(p.key for p in [*REST, *light])
    assert group.sentence.startswith("13 panels read alike: one finish group?")


def test_each_odd_panel_is_proposed_alone() -> None:
    found = of(PanelMean("door_l", 241.0, twin="door_r"), PanelMean("door_r", 119.0), PanelMean("wing", 239.0))
    assert [(g.keys, g.why) for g in found.groups[1:]] == [(("door_l",), "differs"), (("wing",), "differs")]


def test_twins_that_share_the_difference_are_proposed_together_once() -> None:
    found = of(PanelMean("sill_l", 180.0, twin="sill_r"), PanelMean("sill_r", 183.0, twin="sill_l"))
    assert [(g.keys, g.why) for g in found.groups[1:]] == [(("sill_l", "sill_r"), "differs as its twin")]


def test_two_groups_are_proposed_as_two_and_neither_is_named_first() -> None:
    means = (100, 103, 98, 101, 104, 99, 160, 163, 158, 161, 164, 159)
    found = of(rest=[PanelMean(f"p{i}", float(m)) for i, m in enumerate(means)])
    assert [g.why for g in found.groups] == ["thinner group", "thicker group"]
    assert [len(g.keys) for g in found.groups] == [6, 6]


def test_what_is_in_doubt_or_not_measured_is_left_open_with_its_reason() -> None:
    found = of(
        PanelMean("bumper", None, substrate="plastic", no_value=True),
        PanelMean("door", None, no_value=True),
        PanelMean("roof", None),
        PanelMean("bonnet", 118.0, substrate="aluminium"),
    )
    said = {o.key: o.sentence for o in found.open}
    assert set(said) == {"bumper", "door", "roof", "bonnet"}
    assert "Cannot be read" in said["bumper"]
    assert "should be metal" in said["door"]
    assert "Not measured" in said["roof"]
    assert "Too few panels" in said["bonnet"]


def test_a_panel_to_look_at_again_is_in_no_group_yet() -> None:
    means = [100.0, 104, 97, 102, 99, 105, 101, 98, 122]
    found = of(rest=[PanelMean(f"p{i}", m) for i, m in enumerate(means)])
    assert [o.key for o in found.open] == ["p8"]
    assert [len(g.keys) for g in found.groups] == [8]
    assert "more places" in found.open[0].sentence


def test_panels_that_scatter_far_beyond_usual_are_not_put_together() -> None:
    means = (80, 96, 110, 124, 88, 131, 103, 117)
    found = of(rest=[PanelMean(f"p{i}", float(m)) for i, m in enumerate(means)])
    assert not found.groups
    assert len(found.open) == 8
    assert "scatter more than usual" in found.open[0].sentence


def test_shuts_and_undersides_make_no_finish_group() -> None:
    shuts = [PanelMean(f"s{i}", float(m), surface="shut") for i, m in enumerate((70, 72, 69))]
    found = of(*shuts)
    assert [g.keys for g in found.groups] == [tuple(p.key for p in REST)]
    assert not found.open


@settings(max_examples=25, deadline=None)
@given(st.lists(st.floats(60, 400), min_size=1, max_size=12))
def test_every_measured_panel_stands_in_exactly_one_place(means: list[float]) -> None:
    panels = [PanelMean(f"p{i}", m, twin=f"p{i ^ 1}") for i, m in enumerate(means)]
    found = proposed_groups(odd_panels(panels))
    placed = [k for g in found.groups for k in g.keys] + [o.key for o in found.open]
    assert sorted(placed) == sorted(p.key for p in panels)
    for word in ("original", "repaint", "refinish", "accident"):
        assert word not in " ".join(g.sentence for g in found.groups).casefold()
