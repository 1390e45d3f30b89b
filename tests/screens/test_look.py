"""Two looks from one table: legible, sized in millimetres, focus always seen."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.colours import contrast, luminance, rgb_of
from detailbench.screens.look.looks import LookKey, look
from detailbench.screens.look.measure import MM_PER_INCH, Measure, dots_per_mm
from detailbench.screens.look.palette import BAY, COLOUR_NAMES, DESK, OUTLINE_ON, TEXT_ON, Palette
from detailbench.screens.look.stylesheet import stylesheet

PALETTES = {"bay": BAY, "desk": DESK}
KEYS: tuple[LookKey, ...] = ("bay", "desk")
SCREENS = Path(__file__).resolve().parents[2] / "detailbench" / "screens"

# WCAG 2.2: 4.5 : 1 for text (1.4.3), 3 : 1 for what tells a control or its state (1.4.11)
PAIRS = [(t, b, 4.5) for t, backs in TEXT_ON for b in backs] + [(o, b, 3.0) for o, backs in OUTLINE_ON for b in backs]


@pytest.mark.parametrize("name", PALETTES)
@pytest.mark.parametrize(("front", "back", "least"), PAIRS, ids=lambda v: str(v))
def test_words_and_outlines_stand_out(name: str, front: str, back: str, least: float) -> None:
    palette = PALETTES[name]
    assert contrast(palette.rgb(front), palette.rgb(back)) >= least


def test_every_colour_words_are_written_in_is_in_the_list() -> None:
    texts = {t for t, _backs in TEXT_ON}
    for key in KEYS:
        used = set(re.findall(r"(?<![\w-])color: (#\w{6})", stylesheet(look(key, 4.0))))
        known = {getattr(look(key, 4.0).palette, t) for t in texts}
        assert used <= known


@pytest.mark.parametrize("key", KEYS)
def test_the_style_rules_use_only_the_looks_own_colours(key: LookKey) -> None:
    worn = look(key, 4.0)
    known = {getattr(worn.palette, n) for n in COLOUR_NAMES}
    assert set(re.findall(r"#[0-9a-f]{6}\b", stylesheet(worn))) <= known


def test_no_other_file_of_the_screens_names_a_colour() -> None:
    named = [
        p.name
        for p in SCREENS.rglob("*.py")
        if p.name != "palette.py" and re.search(r"#[0-9a-fA-F]{6}\b|QColor\(\d", p.read_text("utf-8"))
    ]
    assert named == []


@pytest.mark.parametrize("area", ["ground", "well", "surface", "raised", "body", "glass"])
def test_the_bay_look_has_no_large_bright_area_and_no_red_tint(area: str) -> None:
    r, g, b = BAY.rgb(area)
    assert luminance((r, g, b)) < 0.03
    assert r <= g <= b + 4


def test_the_bay_looks_ramp_stays_darker_than_the_desks() -> None:
    assert luminance(look("bay", 4.0).ramp(1.0)) < 0.5 < luminance(look("desk", 4.0).ramp(1.0))


@pytest.mark.parametrize(("key", "mm"), [("bay", 12.0), ("desk", 8.0)])
def test_targets_have_their_millimetres(key: LookKey, mm: float) -> None:
    # at 96 dots to the inch of 25.4 mm
    measure = look(key, dots_per_mm(96)).measure
    assert measure.target == round(mm * 96 / 25.4)


@given(st.floats(60, 400), st.floats(0.5, 2))
def test_a_target_keeps_its_size_on_any_screen(dpi: float, factor: float) -> None:
    measure = look("bay", dots_per_mm(dpi, factor)).measure
    assert measure.target * MM_PER_INCH / dpi / factor == pytest.approx(12, abs=0.5 * MM_PER_INCH / dpi / factor + 1e-9)


def test_nothing_that_has_a_size_vanishes_on_a_coarse_screen() -> None:
    assert Measure(dots_per_mm=0.3).px(0.5) == 1
    assert Measure(dots_per_mm=0.3).px(0) == 0


@pytest.mark.parametrize("key", KEYS)
def test_whatever_takes_the_focus_shows_it(key: LookKey) -> None:
    worn = look(key, 4.0)
    sheet = stylesheet(worn)
    for kind in (
        "QPushButton", "QToolButton", "QLineEdit", "QPlainTextEdit", "QTextEdit", "QComboBox", "QCheckBox",
        "QRadioButton", "QListView", "QTableView", "QTreeView", "QGraphicsView",
    ):  # fmt: skip
        rule = re.search(rf"{kind}(?:\[[^\]]*\])?:focus[^{{]*\{{[^}}]*\}}", sheet)
        assert rule is not None, kind
        assert f"px solid {worn.palette.focus}" in rule[0]
    for role in set(re.findall(r'QPushButton(\[role="\w+"\])', sheet)):
        assert re.search(rf"QPushButton{re.escape(role)}:focus \{{[^}}]*{worn.palette.focus}", sheet), role


def test_every_colour_is_written_as_hex() -> None:
    for palette in (BAY, DESK):
        assert isinstance(palette, Palette)
        for name in COLOUR_NAMES:
            assert len(rgb_of(getattr(palette, name))) == 3
