"""Reading like family and twin: what was not measured, or cannot be compared, is never like."""

from __future__ import annotations

import pytest

from detailbench.thickness.likeness import Likeness, likeness
from detailbench.thickness.odd_findings import PanelMean
from detailbench.thickness.odd_panels import odd_panels

REST = [PanelMean(f"p{i}", float(m)) for i, m in enumerate((118, 121, 116, 119, 122, 117, 120, 115))]


def of(*panels: PanelMean) -> Likeness:
    return likeness(panels[0], odd_panels([*panels, *REST]))


def door(mean: float | None, side: str = "l", **more: object) -> PanelMean:
    return PanelMean(f"door_{side}", mean, twin=f"door_{'r' if side == 'l' else 'l'}", **more)  # type: ignore[arg-type]


def test_like_family_and_twin() -> None:
    assert of(door(118.0), door(121.0, "r")).both


def test_a_panel_without_a_twin_need_only_read_like_its_family() -> None:
    assert of(PanelMean("roof", 118.0)).both


def test_an_odd_panel_is_like_neither() -> None:
    assert of(door(241.0), door(118.0, "r")) == Likeness(
        False, False, "Does not read like the rest, or could not be compared."
    )


@pytest.mark.parametrize(
    ("twin", "part"),
    [
        (None, "twin was not measured"),
        (door(None, "r"), "twin was not measured"),
        (door(118.0, "r", substrate="aluminium"), "cannot be compared"),
        (door(241.0, "r"), "twin does not read like the rest"),
    ],
)
def test_a_twin_that_is_odd_missing_or_of_another_metal_is_no_likeness(twin: PanelMean | None, part: str) -> None:
    found = of(door(118.0), *([twin] if twin else []))
    assert (found.family, found.twin) == (True, False)
    assert part in found.sentence


def test_twins_further_apart_than_the_panels_scatter_are_not_alike() -> None:
    panels = [door(110.0), door(127.0, "r"), *REST]
    found = odd_panels(panels)
    scatter = found.families[0].own_scatter_um
    assert scatter is not None
    assert {found.of(p.key).verdict for p in panels} == {"like the rest"}
    alike = likeness(panels[0], found)
    assert 2.8 * scatter < 17.0
    assert not alike.both
    assert "lie 17\u00a0µm apart" in alike.sentence


def test_no_panel_of_a_family_that_scatters_too_much_is_like_the_others() -> None:
    panels = [PanelMean(f"w{i}", float(m)) for i, m in enumerate((80, 96, 110, 124, 88, 131, 103, 117))]
    found = odd_panels(panels)
    assert found.of("w2").verdict == "like the rest"
    assert not likeness(panels[2], found).family
    assert "scatter too much" in likeness(panels[2], found).sentence


def test_too_few_panels_to_compare_is_no_likeness() -> None:
    panel = PanelMean("roof", 118.0)
    assert not likeness(panel, odd_panels([panel, PanelMean("bonnet", 119.0)])).family


def test_a_panel_that_was_not_compared_is_an_error() -> None:
    with pytest.raises(KeyError):
        likeness(PanelMean("nowhere", 100.0), odd_panels(REST))
