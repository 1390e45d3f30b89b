"""A gauge's own lines: what is a value, what is none, and what is handed on with its sentence. All figures invented."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.errors import BadInput
from detailbench.thickness.gauge_line import LONGEST, CutLine, GaugeLine, LineCutter, LineForm, read_line

PLAIN = LineForm()


@pytest.mark.parametrize(
    ("line", "form", "value", "unit"),
    [
        ("118", PLAIN, 118.0, "um"),
        ("  118.5 um", PLAIN, 118.5, "um"),
        ("118.5µm", PLAIN, 118.5, "um"),
        ("4.65 mil", PLAIN, 4.65, "mil"),
        ("4.65", LineForm(unit="mil"), 4.65, "mil"),
        ("1.118", PLAIN, 1.118, "um"),  # the device's own mark leaves no doubt
        ("1,118", LineForm(decimal=","), 1.118, "um"),
        ("\x02118.0\x03", PLAIN, 118.0, "um"),
        ("-0.3", PLAIN, -0.3, "um"),
        ("N 118 Fe", PLAIN, 118.0, "um"),
        ("07;2031-05-05;118,5;um;Fe", LineForm("semicolon", 3, 4, decimal=","), 118.5, "um"),
        ("07;2031-05-05;4,66;mil;Fe", LineForm("semicolon", 3, 4, decimal=","), 4.66, "mil"),
        ("T= 118", LineForm(begins="T="), 118.0, "um"),
        ("1\t118", LineForm("tab", 2), 118.0, "um"),
    ],
)
def test_the_value_is_read_as_the_gauge_means_it(line: str, form: LineForm, value: float, unit: str) -> None:
    read = read_line(line, form)
    assert (read.value, read.unit, read.sentence) == (value, unit, "")


@pytest.mark.parametrize(
    ("line", "form", "words"),
    [
        ("118,5", PLAIN, "not this gauge's decimal mark"),
        ("1.234,5", LineForm(decimal=","), "2 numbers|not a number|no number"),
        ("118O", PLAIN, "no unit known here"),
        ("0.118 mm", PLAIN, "no unit known here"),
        ("118;mm", LineForm("semicolon", 1, 2), "no unit known here"),
        ("07 118", PLAIN, "2 numbers"),
        ("07;11", LineForm("semicolon", 3), "has 2 parts"),
        ("1\x0018", PLAIN, "no gauge writes"),
        ("9" * (LONGEST + 1), PLAIN, "longer than any"),
        ("9" * 40, PLAIN, "no number"),
    ],
)
def test_what_does_not_fit_is_handed_on_with_a_sentence(line: str, form: LineForm, words: str) -> None:
    read = read_line(line, form)
    assert read.value is None
    assert not read.beside
    assert any(each in read.sentence for each in words.split("|"))


@pytest.mark.parametrize("line", ["", "READY", "end of list", "∞"])
def test_a_line_without_any_figure_is_none_that_carries_values(line: str) -> None:
    assert read_line(line, PLAIN).beside


def test_only_lines_that_begin_as_described_carry_values() -> None:
    form = LineForm(begins="T=")
    assert read_line("B= 3.1", form).beside
    assert read_line("T= 118", form).value == 118.0


def test_what_the_gauge_writes_for_nothing_is_no_value_and_not_nought() -> None:
    form = LineForm(nothing=("----", "E5"))
    assert read_line("----", form).no_value
    assert read_line("E5", form).no_value
    assert read_line("118", form).no_value is False


def test_mil_becomes_um_exactly() -> None:
    assert read_line("4.65 mil", PLAIN).value_um == pytest.approx(118.11)


@pytest.mark.parametrize(
    ("values", "field"),
    [
        ({"divider": "slash"}, "divider"),
        ({"value_part": -1}, "value_part"),
        ({"value_part": 2, "unit_part": 2}, "unit_part"),
        ({"unit": "mm"}, "unit"),
        ({"decimal": ";"}, "decimal"),
        ({"divider": "comma", "decimal": ","}, "decimal"),
    ],
)
def test_a_form_that_cannot_be_is_refused_at_its_field(values: dict[str, object], field: str) -> None:
    with pytest.raises(BadInput) as caught:
        LineForm(**values)  # type: ignore[arg-type]
    assert caught.value.field == field


@pytest.mark.parametrize(
    ("values", "field"),
    [({"port": " "}, "port"), ({"port": "p", "speed": 3}, "speed"), ({"port": "p", "framing": "9X3"}, "framing")],
)
def test_a_line_that_cannot_be_is_refused_at_its_field(values: dict[str, object], field: str) -> None:
    with pytest.raises(BadInput) as caught:
        GaugeLine(**values)  # type: ignore[arg-type]
    assert caught.value.field == field


# cutting


@given(
    lines=st.lists(st.sampled_from(["118", "119.5 um", "T=4.6 mil", "µ 3"]), max_size=6),
    end=st.sampled_from([b"\r", b"\n", b"\r\n"]),
    cuts=st.lists(st.integers(0, 80), max_size=8),
)
def test_lines_come_out_whole_however_they_were_broken_up(lines: list[str], end: bytes, cuts: list[int]) -> None:
    data = b"".join(line.encode() + end for line in lines)
    edges = sorted({0, len(data), *(c for c in cuts if c < len(data))})
    cutter, out = LineCutter(), []
    for i, (a, b) in enumerate(itertools.pairwise(edges)):
        out += cutter.feed(data[a:b], i * 20.0)
    assert [line.text for line in out] == lines
    assert all(not line.sentence for line in out)
    assert cutter.half == ""


def test_the_rest_of_a_line_that_comes_much_later_is_not_joined_in_silence() -> None:
    cutter = LineCutter()
    assert cutter.feed(b"11", 0.0) == ()
    (line,) = cutter.feed(b"8\r\n", 5000.0)
    assert line.text == "118"
    assert "in pieces" in line.sentence
    assert cutter.feed(b"119\r\n", 5010.0) == (CutLine("119"),)


def test_half_a_line_at_the_end_of_the_wire_is_handed_on_as_half() -> None:
    cutter = LineCutter()
    cutter.feed(b"118\r\n12", 0.0)
    assert cutter.half == "12"
    (line,) = cutter.cut_off()
    assert line.text == "12"
    assert "broke off" in line.sentence
    assert cutter.cut_off() == ()


def test_a_line_without_end_is_cut_and_the_next_is_whole_again() -> None:
    cutter = LineCutter()
    assert cutter.feed(b"7" * 100_000, 0.0) == ()
    assert len(cutter.half) == LONGEST
    long, whole = cutter.feed(b"\n118\n", 1.0)
    assert "longer than any" in long.sentence
    assert whole == CutLine("118")


@given(st.binary(max_size=600))
def test_noise_never_stops_the_reader(noise: bytes) -> None:
    cutter = LineCutter()
    for line in cutter.feed(noise + b"\n118\n", 0.0):
        read_line(line.text, PLAIN)
    assert cutter.half == ""
    assert cutter.feed(b"119\n", 1.0) == (CutLine("119"),)


@given(st.text(max_size=300))
def test_any_text_is_read_or_refused_with_a_sentence(text: str) -> None:
    read = read_line(text, PLAIN)
    assert (read.value is not None) + read.no_value + read.beside + bool(read.sentence) == 1
