"""Panels that differ: twin first, then the family of the same substrate; numbers in words, never a cause."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from detailbench.basics.errors import BadInput
from detailbench.thickness.odd_findings import PanelMean
from detailbench.thickness.odd_grid import posterior
from detailbench.thickness.odd_panels import OddPanels, odd_panels

TWENTY = [102, 98, 110, 105, 95, 101, 99, 107, 112, 104, 100, 96, 103, 108, 97, 106, 160, 148, 185, 131]


def car(means: list[float], **of_all: object) -> OddPanels:
    return odd_panels([PanelMean(f"p{i}", float(m), **of_all) for i, m in enumerate(means)])  # type: ignore[arg-type]


def test_the_design_case_finds_its_four_panels_and_no_other() -> None:
    result = posterior(np.array(TWENTY, dtype=float))
    assert result.chance[16:].round(3).tolist() == [1.0, 1.0, 1.0, 0.991]
    assert result.chance[:16].max().round(3) <= 0.060
    assert result.mean_um == pytest.approx(102.77, abs=0.005)
    assert result.scatter_um == pytest.approx(5.65, abs=0.005)


def test_a_panel_that_differs_says_by_how_much_and_how_many_times() -> None:
    result = car(TWENTY)
    assert [f.verdict for f in result.findings[16:]] == ["differs"] * 4
    assert {f.verdict for f in result.findings[:16]} == {"like the rest"}
    finding = result.of("p18")
    assert finding.rest_um == 102.5
    assert finding.sentence == "Thicker than the rest by 83\u00a0µm, 1.8 times."


def test_a_panel_in_doubt_asks_for_more_places() -> None:
    means = [100.0, 104, 97, 102, 99, 105, 101, 98, 122]
    result = car(means)
    assert 0.5 <= (result.of("p8").chance or 0) < 0.9
    assert result.of("p8").verdict == "look again"
    assert "more places here" in result.of("p8").sentence


def test_a_thinner_panel_is_said_to_be_thinner() -> None:
    finding = car([140.0, 143, 138, 141, 139, 142, 144, 100]).of("p7")
    assert (finding.verdict, finding.side) == ("differs", "thinner")
    assert finding.sentence == "Thinner than the rest by 41\u00a0µm."


def test_the_twin_is_named_first() -> None:
    panels = [PanelMean(f"p{i}", float(m)) for i, m in enumerate(TWENTY[:14])]
    panels += [PanelMean("door_l", 141.0, twin="door_r"), PanelMean("door_r", 103.0, twin="door_l")]
    result = odd_panels(panels)
    assert result.of("door_l").sentence.startswith("Thicker than its twin by 38\u00a0µm. Thicker than the rest by 38")
    assert result.of("door_r").sentence == "Its mean is 38\u00a0µm below its twin's. Reads like the rest."
    assert not result.of("door_l").shared_with_twin
    assert [(t.left, t.right, t.left_minus_right_um) for t in result.twins] == [("door_l", "door_r", 38.0)]


def test_left_is_left_whichever_is_given_first() -> None:
    panels = [PanelMean("door_r", 100.0, twin="door_l"), PanelMean("door_l", 104.0, twin="door_r")]
    (pair,) = odd_panels(panels).twins
    assert (pair.left, pair.left_minus_right_um) == ("door_l", 4.0)


def test_a_difference_both_twins_share_is_worded_as_one_of_build() -> None:
    panels = [PanelMean(f"p{i}", float(m)) for i, m in enumerate(TWENTY[:14])]
    panels += [
        PanelMean("sill_l", 150.0, lie="low", twin="sill_r"),
        PanelMean("sill_r", 151.0, lie="low", twin="sill_l"),
    ]
    result = odd_panels(panels)
    assert "low panels can differ by build" in result.of("sill_l").sentence
    assert result.of("sill_r").shared_with_twin


def test_families_are_kept_apart_by_substrate() -> None:
    steel = [PanelMean(f"s{i}", float(m)) for i, m in enumerate([100, 103, 98, 101, 104, 99])]
    aluminium = [PanelMean(f"a{i}", float(m), substrate="aluminium") for i, m in enumerate([150, 153, 148, 151])]
    result = odd_panels(steel + aluminium)
    assert {f.verdict for f in result.findings} == {"like the rest"}
    assert [f.substrate for f in result.families] == ["steel", "aluminium"]


def test_shuts_and_undersides_are_never_a_baseline() -> None:
    outside = [PanelMean(f"p{i}", float(m)) for i, m in enumerate([140, 143, 138, 141])]
    shuts = [PanelMean(f"s{i}", float(m), surface="shut") for i, m in enumerate([70, 72, 69])]
    result = odd_panels(outside + shuts)
    assert {f.verdict for f in result.findings} == {"like the rest"}
    assert len(result.families) == 2


def test_under_three_panels_only_values_and_the_twin() -> None:
    panels = [PanelMean("wing_l", 100.0, twin="wing_r"), PanelMean("wing_r", 180.0, twin="wing_l")]
    result = odd_panels(panels)
    assert [f.verdict for f in result.findings] == ["values only"] * 2
    assert result.findings[1].chance is None
    assert result.findings[1].sentence.startswith("Thicker than its twin by 80\u00a0µm.")
    assert "values only" in result.families[0].sentence


def test_half_the_panels_thick_alike_are_two_groups_and_neither_is_named_first() -> None:
    result = car([100.0, 103, 98, 101, 104, 99, 160, 163, 158, 161, 164, 159])
    assert {f.verdict for f in result.findings} == {"two groups"}
    thinner, thicker = result.families[0].two_groups
    assert thicker == ("p6", "p7", "p8", "p9", "p10", "p11")
    assert len(thinner) == 6
    assert "6 panels around 101\u00a0µm and 6 around 161\u00a0µm" in result.families[0].sentence
    assert "cannot tell which came first" in result.families[0].sentence
    assert result.of("p6").sentence == "Belongs to the thicker of two groups."


def test_two_groups_seen_from_the_thick_side_are_two_groups_too() -> None:
    result = car([100.0, 103, 98, 101, 140, 143, 138, 141, 144, 139, 142, 140])
    assert result.families[0].two_groups
    assert set(result.families[0].two_groups[0]) == {"p0", "p1", "p2", "p3"}


TWELVE_OF_TWENTY = [
    108.0,
    115,
    104,
    111,
    119,
    106,
    113,
    102,
    157,
    165,
    154,
    161,
    169,
    156,
    163,
    152,
    158,
    166,
    160,
    155,
]


def test_twelve_thick_alike_of_twenty_are_two_groups_though_no_single_panel_stands_out() -> None:
    """One wide paint explains them as well to the grid: none is odd. The gap in the middle tells."""
    assert posterior(np.array(TWELVE_OF_TWENTY)).chance.max() < 0.5
    result = car(TWELVE_OF_TWENTY)
    assert [len(g) for g in result.families[0].two_groups] == [8, 12]
    assert {f.verdict for f in result.findings} == {"two groups"}


@pytest.mark.parametrize(("gap", "apart"), [(13.9, False), (14.1, True)])
def test_a_gap_counts_beyond_twice_the_usual_scatter(gap: float, apart: bool) -> None:
    means = [100.0, 104, 108, 112, 116, *(116 + gap + d for d in (0.0, 4, 8, 12, 16))]
    assert posterior(np.array(means)).chance.max() < 0.5
    assert bool(car(means).families[0].two_groups) is apart


def test_a_gap_with_fewer_than_a_third_beyond_it_makes_no_groups() -> None:
    means = [92.0, 96, 100, 104, 108, 112, 116, 101, 105, 109, 113, 130.5, 131]
    assert posterior(np.array(means)).chance.max() < 0.5
    assert not car(means).families[0].two_groups


def test_fewer_than_a_third_thin_alike_are_thinner_panels_and_no_groups() -> None:
    result = car([100.0, 103, 98, 150, 153, 148, 151, 154, 149, 152, 150, 151])
    assert not result.families[0].two_groups
    assert [f.side for f in result.findings] == ["thinner"] * 3 + [""] * 9


def test_a_family_that_scatters_far_beyond_usual_says_so() -> None:
    result = car([80.0, 96, 110, 124, 88, 131, 103, 117])
    assert not result.families[0].two_groups
    assert "they may fall into groups" in result.families[0].sentence
    assert result.families[0].wide
    assert not car(TWENTY).families[0].wide
    assert not car(TWENTY).families[0].sentence


def test_no_value_on_metal_stands_out_and_plastic_does_not() -> None:
    panels = [
        PanelMean("door", None, no_value=True),
        PanelMean("bumper", None, substrate="plastic", no_value=True),
        PanelMean("roof", None),
    ]
    result = odd_panels(panels)
    assert [f.verdict for f in result.findings] == ["no value", "cannot be read", "not measured"]
    assert "should be metal" in result.of("door").sentence
    with pytest.raises(KeyError):
        result.of("nowhere")


def test_findings_keep_the_order_given() -> None:
    panels = [PanelMean("b", 100.0), PanelMean("a", None), PanelMean("c", 101.0)]
    assert [f.key for f in odd_panels(panels).findings] == ["b", "a", "c"]


def test_no_sentence_names_a_cause_or_a_first_paint() -> None:
    words = " ".join(
        f.sentence
        for means in (TWENTY, [100.0, 103, 98, 160, 163, 158])
        for f in car([float(m) for m in means]).findings
    )
    for word in ("original", "repaint", "filler", "accident", "refinish", "perfect"):
        assert word not in words.casefold()


@settings(max_examples=25, deadline=None)
@given(st.lists(st.integers(60, 400), min_size=3, max_size=10), st.randoms(use_true_random=False))
def test_the_order_of_panels_is_of_no_consequence(means: list[int], shuffle) -> None:  # type: ignore[no-untyped-def]
    x = np.array(means, dtype=float)
    order = list(range(len(means)))
    shuffle.shuffle(order)
    assert posterior(x[order]).chance == pytest.approx(posterior(x).chance[order], abs=1e-9)


@settings(max_examples=25, deadline=None)
@given(st.lists(st.floats(1, 3000), min_size=1, max_size=10))
def test_a_chance_is_a_chance_for_any_means(means: list[float]) -> None:
    chance = posterior(np.array(means)).chance
    assert np.all((chance >= 0) & (chance <= 1))


@settings(max_examples=20, deadline=None)
@given(st.floats(15, 1500))
def test_more_paint_on_one_panel_never_makes_it_less_odd(extra: float) -> None:
    base = np.array([100.0, 103, 98, 101, 104, 99, 102, 97, 100.0])
    one, two = base.copy(), base.copy()
    one[-1] += extra
    two[-1] += extra * 1.2
    assert posterior(two).chance[-1] >= posterior(one).chance[-1] - 1e-3


@pytest.mark.parametrize(
    ("panels", "scatter", "part"),
    [
        ([PanelMean("a", 1.0), PanelMean("a", 2.0)], 7.0, "given twice"),
        ([PanelMean("a", math.nan)], 7.0, "not a real number"),
        ([PanelMean("a", 1.0)], 0.0, "above nought"),
    ],
)
def test_what_cannot_be_compared_is_refused(panels: list[PanelMean], scatter: float, part: str) -> None:
    with pytest.raises(BadInput, match=part):
        odd_panels(panels, scatter)
