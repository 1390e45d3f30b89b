"""A sentence a person meets names a quantity in words, never by the name it has inside."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import detailbench
from detailbench.basics.errors import BadInput
from detailbench.basics.quantity_words import called, opened
from detailbench.trials.load import load_path
from detailbench.work.sections import sections

ROOMS = ("body", "thickness", "marks", "trials", "work", "photos")
USUAL = {
    "force_n": 30.0, "pad_speed_m_s": 3.0, "seconds": 60.0, "patch_a_mm": 350.0, "patch_b_mm": 260.0, "pad_mm": 130.0,
    "working_time_s": 90.0,
}  # fmt: skip


@pytest.mark.parametrize("name", sorted(USUAL))
def test_what_cannot_be_worked_out_with_is_named_in_words(name: str) -> None:
    with pytest.raises(BadInput) as caught:
        load_path(**(USUAL | {name: 0.0}))
    assert caught.value.field == name
    assert "_" not in str(caught.value)
    assert str(caught.value) == f"{opened(name)} must be a number above zero."


def test_the_first_letter_is_large_and_the_unit_is_left_out() -> None:
    with pytest.raises(BadInput, match=r"^The area of the panel must be a number above zero\.$"):
        sections(panel_m2=0.0, section_m2=0.1)
    assert called("something_else_um") == "something else"


def test_no_sentence_of_the_trade_rooms_is_filled_with_an_inner_name() -> None:
    inner = re.compile(r'\(\s*"“\{(?:name|field)\}”[^"]*(?:must|cannot|is nought|needs|whole number)')
    top = Path(detailbench.__file__).parent
    files = [file for room in ROOMS for file in sorted((top / room).rglob("*.py"))]
    assert len(files) > 50
    assert [str(f.relative_to(top)) for f in files if inner.search(f.read_text("utf-8"))] == []
