"""One reader for totals, totals with their clear coat, and gloss: typed, sent, in a file and on a line alike."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.errors import BadInput
from detailbench.thickness.csv_import import read_file
from detailbench.thickness.gauge_line import LineForm, read_line
from detailbench.thickness.sent_text import clear_unfit, read_sent


@pytest.mark.parametrize(
    ("text", "total_um", "clear_um", "unit"),
    [
        ("118 / 42", 118.0, 42.0, "um"),
        ("118/42", 118.0, 42.0, "um"),
        ("118,5 / 42,5 µm", 118.5, 42.5, "um"),
        ("4.65 / 1.65 mil", 118.11, 41.91, "mil"),
        ("4.65 mil / 1.65", 118.11, 41.91, "mil"),
        ("1.234,5 / 42", 1234.5, 42.0, "um"),
        ("118 / 118", 118.0, 118.0, "um"),
        ("118", 118.0, None, "um"),
    ],
)
def test_the_total_comes_first_then_the_clear_coat(
    text: str, total_um: float, clear_um: float | None, unit: str
) -> None:
    read = read_sent(text)
    assert (read.value_um, read.unit, read.accepted) == (pytest.approx(total_um), unit, True)
    assert read.clear_um == (clear_um if clear_um is None else pytest.approx(clear_um))


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("42 / 118", "The clear coat is more than the total"),
        ("118 / 0", "A clear coat of 0 is none"),
        ("118 /", "Two numbers with a stroke"),
        ("/ 42", "Two numbers with a stroke"),
        ("118 / 42 / 20", "Two numbers with a stroke"),
        ("118 / 4O", "“O” is a letter"),
        ("118 / -42", "cannot be below nought"),
        ("118 / ∞", "“∞” is not a number"),
        ("30 mm / 4", "“mm” is no unit"),
        ("118 um / 1.65 mil", "stand in two units"),
        ("60: ", "There is no number"),
        ("45: 84", "Gloss is read at 20°, 60° or 85°"),
        ("20: -3", "below nought is not possible"),
        ("60: 99999", "No gloss meter shows that"),
    ],
)
def test_what_is_no_such_value_is_refused_in_a_sentence_and_gives_no_figure(text: str, told: str) -> None:
    read = read_sent(text)
    assert told in read.sentence
    assert (read.value_um, read.clear_um, read.value_gu) == (None, None, None)


@pytest.mark.parametrize("text", ["1.234 / 42", "118 / 1,234", "60: 84.213"])
def test_what_can_be_read_in_two_ways_asks(text: str) -> None:
    read = read_sent(text)
    assert read.question.startswith("Is this ")
    assert (read.value_um, read.value_gu) == (None, None)


def test_a_gauge_that_reads_the_total_only_takes_no_clear_coat() -> None:
    assert "resolves no layers" in read_sent("118 / 42", layers=False).sentence
    assert read_sent("118", layers=False).value_um == 118.0


@pytest.mark.parametrize("text", ["60: 84.2", "60° 84,2 GU", "60:84.2gu", " 60 : 84.2 "])
def test_gloss_says_its_angle_first(text: str) -> None:
    read = read_sent(text)
    assert (read.kind, read.angle_deg, read.value_gu, read.unit) == ("gloss", 60, 84.2, "gu")


def test_a_meter_with_one_angle_may_leave_it_out_and_one_with_three_may_not() -> None:
    assert (read_sent("84.2", angles=(60,)).angle_deg, read_sent("84.2", angles=(60,)).value_gu) == (60, 84.2)
    assert "Say the angle first" in read_sent("84.2", angles=(20, 60, 85)).sentence
    assert "does not measure at 85°" in read_sent("85: 12", angles=(60,)).sentence


@given(st.text(max_size=30))
def test_whatever_is_typed_is_read_asked_or_refused_and_never_raises(text: str) -> None:
    for read in (read_sent(text), read_sent(f"{text}/{text}"), read_sent(f"60:{text}")):
        known = read.value_um is not None or read.value_gu is not None
        assert known or read.sentence or read.question
        assert not clear_unfit(read.value_um, read.clear_um)


# files
def file(text: str) -> object:
    return read_file(text.encode(), panel_key=lambda words: words if words == "roof" else None, name="x.csv")


def test_a_file_may_hold_the_clear_coat_in_a_column_or_behind_a_stroke() -> None:
    found = file("panel;value;clear\nroof;118;42\nroof;120 / 43;\nroof;119;-\nroof;121;\n")
    assert [(r.value_um, r.clear_um) for r in found.accepted] == [(118, 42), (120, 43), (119, None), (121, None)]
    assert not found.refused


def test_the_clear_coats_column_has_a_unit_of_its_own_or_that_of_the_value() -> None:
    found = file("value [mil];clear [um]\n4.65;42\n")
    assert (found.accepted[0].value_um, found.accepted[0].clear_um) == (pytest.approx(118.11), 42.0)
    found = file("value_mil;clear\n4.65;1.65\n")
    assert found.accepted[0].clear_um == pytest.approx(41.91)
    found = file("value;clear\n4.65 mil;1.65\n118;42\n118;1.65 mil\n")
    assert [r.clear_um for r in found.accepted] == [pytest.approx(41.91), 42.0, pytest.approx(41.91)]


def test_a_clear_coat_that_cannot_be_refuses_its_line_only() -> None:
    found = file("value;clear\n118;142\n118;O\n118;1.234\n118;42\n42/118;\n")
    assert [r.line for r in found.accepted] == [5]
    assert [(r.line, r.column) for r in found.refused] == [
        (2, "clear"), (3, "clear"), (4, "clear"), (6, "value"),
    ]  # fmt: skip


def test_a_file_may_hold_gloss_by_a_column_of_angles_or_in_the_value() -> None:
    found = file("panel;value;angle\nroof;84.2;60\nroof;20: 71;\nroof;118;\n")
    assert [(r.angle_deg, r.value_gu, r.value_um) for r in found.accepted] == [
        (60, 84.2, None), (20, 71.0, None), (None, None, 118.0),
    ]  # fmt: skip
    found = file("value;unit;angle\n84;gu;\n84;gu;45\n84;gu;85\n")
    assert [r.line for r in found.refused] == [2, 3]
    assert found.accepted[0].angle_deg == 85


# lines
LAYERED = LineForm(divider="semicolon", value_part=1, clear_part=2)
GLOSS = LineForm(divider="blank", value_part=2, angle_part=1, unit="gu")


def test_a_line_says_the_clear_coat_in_a_part_of_its_own() -> None:
    assert (read_line("118;42", LAYERED).value_um, read_line("118;42", LAYERED).clear_um) == (118.0, 42.0)
    in_mil = read_line("4.65mil;1.65mil", LAYERED)
    assert (in_mil.value_um, in_mil.clear_um) == (pytest.approx(118.11), pytest.approx(41.91))
    assert read_line("4.65mil;1.65", LAYERED).clear_um == pytest.approx(41.91)
    assert read_line("118", LAYERED).clear_um is None
    assert "more than the total" in read_line("42;118", LAYERED).sentence
    assert "two units" in read_line("118um;1.65mil", LAYERED).sentence
    assert "“O” is no unit known here" in read_line("118;4O", LAYERED).sentence


def test_a_line_of_a_gloss_meter_says_its_angle() -> None:
    read = read_line("60 84.2 GU", GLOSS)
    assert (read.angle_deg, read.value, read.unit, read.sentence) == (60, 84.2, "gu", "")
    assert "does not say which" in read_line("45 84.2", GLOSS).sentence
    assert "no unit known" in read_line("60 84.2 um", GLOSS).sentence
    assert "no unit known" in read_line("84.2 gu", LineForm(value_part=1)).sentence


@pytest.mark.parametrize(
    "wrong",
    [
        {"clear_part": 2}, {"value_part": 1, "clear_part": 1}, {"value_part": 2, "angle_part": 1},
        {"unit": "gu"}, {"unit": "gu", "value_part": 2, "angle_part": 1, "clear_part": 3},
    ],
)  # fmt: skip
def test_a_form_of_a_line_that_cannot_be_is_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(BadInput):
        LineForm(**wrong)  # type: ignore[arg-type]
