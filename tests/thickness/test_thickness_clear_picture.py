"""The shop's picture of a clear coat: a range that assumes, for plain panels only, and never more than a picture."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from detailbench.basics.errors import BadInput
from detailbench.thickness.clear_picture import ClearPicture, NoPicture, Undercoats, clear_picture, picture_of
from detailbench.thickness.layer_room import ClearLimits, Removal
from detailbench.thickness.likeness import Likeness
from detailbench.thickness.permission import PanelTells

# eight places with mean 118 and standard deviation 4 exactly
EIGHT = [118 + 4 * math.sqrt(7 / 8) * s for s in (1, -1) * 4]
ALIKE = Likeness(True, True, "")
PLAIN = PanelTells("roof", "measured", "clear over colour", "like", lowest_um=114.0)


def drawn(alike: Likeness = ALIKE, total: list[float] = EIGHT, **tells: Any) -> ClearPicture | NoPicture:
    return clear_picture(total, replace(PLAIN, **tells), alike)


def test_the_worked_picture() -> None:
    found = picture_of(EIGHT, undercoats=Undercoats(75.0, 8.0), limits=ClearLimits(20.0), removal=Removal(3.0, 0.8))
    assert found.mean_um == pytest.approx(43.0)
    assert found.low_um == pytest.approx(28.010, abs=5e-4)
    assert found.dof == pytest.approx(145.3, abs=0.05)
    assert found.risk == pytest.approx(0.01468, abs=5e-6)


def test_it_is_a_range_with_its_label_and_its_two_parts() -> None:
    found = drawn()
    assert isinstance(found, ClearPicture)
    assert found.label == "assumes factory layers"
    assert found.label in found.sentence
    assert found.high_um - found.mean_um == pytest.approx(found.mean_um - found.low_um)
    assert (found.scatter_um, found.ignorance_um) == (pytest.approx(math.sqrt(18)), pytest.approx(8.0))
    assert found.ignorance_share == pytest.approx(64 / 82)
    assert "22 parts in a hundred are scatter of the places, 78 are not knowing" in found.sentence
    assert "decides nothing and stands in no document" in found.working.notes[0]


def test_more_places_narrow_the_scatter_and_never_the_ignorance() -> None:
    few, many = drawn(), drawn(total=EIGHT * 6)
    assert isinstance(few, ClearPicture)
    assert isinstance(many, ClearPicture)
    assert many.scatter_um < few.scatter_um
    assert many.ignorance_um == few.ignorance_um


@pytest.mark.parametrize(
    "system", ["single-stage", "matt or satin", "tinted clear", "filmed", "wrapped", "bare", "unknown"]
)
def test_only_clear_over_colour_has_a_picture(system: str) -> None:
    assert drawn(paint_system=system) == NoPicture("Clear coat unknown. Not known to be clear over colour.")


@pytest.mark.parametrize("compared", ["thicker", "thinner", "look again", "two groups", "not compared"])
def test_a_panel_that_does_not_read_like_the_rest_has_none(compared: str) -> None:
    assert isinstance(drawn(compared=compared), NoPicture)


@pytest.mark.parametrize("alike", [Likeness(False, False, ""), Likeness(True, False, "Its twin was not measured.")])
def test_a_panel_that_does_not_read_like_family_and_twin_has_none(alike: Likeness) -> None:
    found = drawn(alike)
    assert isinstance(found, NoPicture)
    assert alike.sentence in found.sentence


@pytest.mark.parametrize(
    "tells",
    [
        {"stated_repair": True},
        {"low_extra_place": True},
        {"measured": "not measured", "lowest_um": None},
        {"measured": "cannot be read", "lowest_um": None},
        {"measured": "no value", "lowest_um": None},
    ],
)
def test_repaired_low_and_unmeasured_panels_have_none(tells: dict[str, Any]) -> None:
    found = drawn(**tells)
    assert isinstance(found, NoPicture)
    assert not re.search(r"\d", found.sentence)


@pytest.mark.parametrize(("more", "shown"), [(0.0, True), (16.9, True), (17.1, False), (90.0, False)])
def test_a_whole_car_thicker_than_factory_layers_has_none_however_alike_its_panels(more: float, shown: bool) -> None:
    """69 below, 50 of clear at most, and twice 8 for not knowing: beyond 135 µm the assumption is given up."""
    found = drawn(total=[v + more for v in EIGHT])
    assert isinstance(found, ClearPicture) is shown
    if not shown:
        assert not re.search(r"\d", found.sentence)
        assert "Thicker than factory layers are" in found.sentence


def test_under_five_places_there_is_none() -> None:
    assert isinstance(drawn(total=EIGHT[:4]), NoPicture)
    with pytest.raises(BadInput, match="at least 5"):
        picture_of(EIGHT[:4])


def test_a_range_below_nought_is_shown_from_nought_and_an_assumption_that_fails_is_named() -> None:
    near = drawn(total=[v - 45 for v in EIGHT])
    assert isinstance(near, ClearPicture)
    assert near.low_um < 0
    assert "perhaps 0 to" in near.sentence
    gone = drawn(total=[v - 100 for v in EIGHT])
    assert isinstance(gone, ClearPicture)
    assert "the assumption does not hold here" in gone.sentence


def test_without_a_reserve_no_chance_is_stated() -> None:
    found = drawn()
    assert isinstance(found, ClearPicture)
    assert found.risk is None


@pytest.mark.parametrize("bad", [{"mean_um": 0.0}, {"u_um": 0.0}, {"u_um": math.nan}])
def test_undercoats_are_never_known_exactly(bad: dict[str, float]) -> None:
    with pytest.raises(BadInput, match="above nought"):
        Undercoats(**bad)


@pytest.mark.parametrize(("chance", "part"), [(0.0, "between 0 and ½"), (0.5, "between 0 and ½")])
def test_a_chance_out_of_range_is_refused(chance: float, part: str) -> None:
    with pytest.raises(BadInput, match=part):
        picture_of(EIGHT, chance=chance)
    with pytest.raises(BadInput, match="nought or more"):
        picture_of(EIGHT, u_cal_um=-1.0)


def reaches_the_picture(package: Path) -> list[str]:
    """Files that decide or print and name the picture: everything but this room, its finding and the screens."""
    own = {"thickness/clear_picture.py", "thickness/permission_calculations.py", "findings/room_left.py"}
    files = {p.relative_to(package).as_posix(): p for p in sorted(package.rglob("*.py"))}
    return [
        name
        for name, path in files.items()
        if name not in own
        and not name.startswith("screens/")
        and re.search(r"clear_picture|room_left import|import room_left", path.read_text("utf-8"))
    ]


def test_nothing_that_decides_or_prints_asks_for_the_picture(tmp_path: Path) -> None:
    import detailbench

    assert reaches_the_picture(Path(detailbench.__file__).parent) == []
    (tmp_path / "moves").mkdir()
    (tmp_path / "moves" / "work.py").write_text("from detailbench.findings.room_left import clear_pictures\n", "utf-8")
    assert reaches_the_picture(tmp_path) == ["moves/work.py"]
