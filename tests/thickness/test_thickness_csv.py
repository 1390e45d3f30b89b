"""Readings from a file: each line lands in exactly one of two lists, and nothing is guessed in silence."""

from __future__ import annotations

from contextlib import suppress
from datetime import UTC, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from detailbench.basics.errors import BadFile
from detailbench.basics.numbers import PlausibleRange
from detailbench.thickness.csv_import import ReadingsFile, read_file

PANELS = {"bonnet": "bonnet", "left front door": "door_front_l", "dach": "roof"}


def read(text: str | bytes, **options: object) -> ReadingsFile:
    data = text.encode() if isinstance(text, str) else text
    options = {"panel_key": lambda words: PANELS.get(words.casefold()), "name": "list.csv"} | options
    return read_file(data, **options)  # type: ignore[arg-type]


def values(found: ReadingsFile) -> list[float | None]:
    return [None if r.value_um is None else round(r.value_um, 6) for r in found.accepted]


@pytest.mark.parametrize("separator", [";", ",", "\t", "|"])
def test_every_separator_is_found(separator: str) -> None:
    rows = [
        ["value", "unit", "panel", "place", "time", "note"],
        ["118", "um", "Bonnet", "3", "2031-05-05T18:10+02:00", "near edge"],
    ]
    found = read("\n".join(separator.join(row) for row in rows))
    (reading,) = found.accepted
    assert (reading.value_um, reading.panel, reading.place, reading.note) == (118.0, "bonnet", "3", "near edge")
    assert reading.time == datetime(2031, 5, 5, 16, 10, tzinfo=UTC)
    assert reading.time.utcoffset() == timedelta(hours=2)
    assert (found.separator, found.refused, reading.line) == (separator, (), 2)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
def test_every_encoding_is_found(encoding: str) -> None:
    found = read("value (µm);note\n118,5;Tür\n".encode(encoding))
    assert values(found) == [118.5]
    assert found.accepted[0].note == "Tür"


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
def test_every_line_ending_is_read(ending: str) -> None:
    assert values(read(ending.join(["value", "118", "119", ""]))) == [118.0, 119.0]


def test_only_the_value_is_required() -> None:
    (reading,) = read("value\n118\n").accepted
    assert (reading.panel, reading.place, reading.time, reading.note, reading.unit) == (None, "", None, "", "um")


@pytest.mark.parametrize("text", ["118\n119,5\n", "\ufeff118\n119.5", "118\r\n\r\n119,5"])
def test_one_column_needs_no_heading(text: str) -> None:
    assert values(read(text)) == [118.0, 119.5]


@pytest.mark.parametrize("heading", ["value (mil)", "Value [mil]", "VALUE_mil", "value mils", '"value (mil)"'])
def test_the_heading_may_name_the_unit(heading: str) -> None:
    found = read(f"{heading};place\n4.6;1\n")
    assert values(found) == [116.84]
    assert found.accepted[0].unit == "mil"
    assert values(read("value µm\n118\n", unit_default="mil")) == [118.0]


def test_units_may_be_mixed_by_column_or_in_the_cell() -> None:
    found = read("value;unit\n118;um\n4.6;mil\n118;µm\n4.6 mil;\n")
    assert values(found) == [118.0, 116.84, 118.0, 116.84]


@pytest.mark.parametrize(
    ("text", "column", "part"),
    [
        ("value (um);unit\n4.6;mil\n", "unit", "another unit"),
        ("value;unit\n4.6 mil;um\n", "value", "one unit, its column another"),
        ("value (um)\n4.6 mil\n", "value", "one unit, its column another"),
        ("value;unit\n118;mm\n", "unit", "µm or mil"),
        ("value;panel\n118;spaceship\n", "panel", "no such panel"),
        ("value\n118O\n", "value", "“O” is a letter"),
        ("value\n-3\n", "value", "below nought"),
        ("value;panel\n;bonnet\n", "value", "no number here"),
        ("value\n1,234\n", "value", "1.234 or 1234"),
        ("value;time\n118;05/06/2031 18:10\n", "time", "2031-05-05 18:10"),
        ("value;time\n118;2031-05-05\n", "time", "2031-05-05 18:10"),
        ("value;time\n118;2031-05-05 18:10\n", "time", "no offset"),
        ("value;time\n118;31.02.2031 18:10\n", "time", "2031-05-05 18:10"),
        ("value;unit\n118;um;7\n", "", "more cells than columns"),
        ("value,unit\n118,5,um\n", "", "decimal comma needs quotes"),
        ('value;note\n118;"open\n', "", "not closed"),
        ("value\n11\x008\n", "", "empty bytes"),
    ],
)
def test_a_refused_line_names_number_column_value_and_reason(text: str, column: str, part: str) -> None:
    found = read("\n" + text)
    assert found.accepted == ()
    (refused,) = found.refused
    assert (refused.line, refused.column) == (3, column)
    assert part in refused.reason
    assert refused.sentence.startswith("Line 3")
    assert refused.reason in refused.sentence


def test_a_refused_line_leaves_its_neighbours_alone() -> None:
    found = read('value;note\n118;a\n118O;b\n119;"open\n120;\n')
    assert values(found) == [118.0, 120.0]
    assert [r.line for r in found.refused] == [3, 4]
    assert found.refused[0].value == "118O"


def test_a_note_in_quotes_may_run_over_lines_and_hold_separators() -> None:
    found = read('value;note\n118;"two\nlines; ""here"""\n119;x\n')
    assert [r.note for r in found.accepted] == ['two\nlines; "here"', "x"]
    assert [r.line for r in found.accepted] == [2, 4]


def test_a_decimal_comma_in_quotes_is_read_between_commas() -> None:
    assert values(read('value,unit\n"118,5",um\n')) == [118.5]


def test_the_file_decides_what_its_mark_means_and_the_note_says_so() -> None:
    found = read("value\n1,234\n118,5\n120,250\n")
    assert values(found) == [1.234, 118.5, 120.25]
    assert "as in line 3; lines like it: 2" in found.notes[0]
    assert values(read("value\n118.5\n1,234\n")) == [118.5, 1234.0]


def test_where_the_file_writes_both_marks_the_line_is_refused() -> None:
    found = read("value\n118,5\n118.5\n1,234\n")
    assert values(found) == [118.5, 118.5]
    assert found.refused[0].line == 4
    assert found.notes == ()


@pytest.mark.parametrize("word", ["no value", "No Value", "-", "—", "---"])
def test_no_value_is_a_reading(word: str) -> None:
    (reading,) = read(f"value;panel\n{word};bonnet\n").accepted
    assert (reading.no_value, reading.value_um, reading.panel) == (True, None, "bonnet")


def test_doubtful_values_are_kept_and_flagged() -> None:
    found = read("value\n0\n4.6\n118\n5000\n")
    assert [r.doubt for r in found.accepted] == ["no value", "mil", "", "high"]
    assert "no value?" in found.accepted[0].flag
    assert "switch to mil" in found.accepted[1].flag
    strict = read("value\n118\n", plausible=PlausibleRange(120.0, 300.0))
    assert strict.accepted[0].doubt == "low"


def test_a_time_without_offset_takes_the_zone_chosen() -> None:
    zone = timezone(timedelta(hours=2))
    found = read("value;time\n118;2031-05-05 18:10\n119;5.5.2031 9:05\n120;05.05.2031 18:10:30\n", zone=zone)
    assert [r.time for r in found.accepted] == [
        datetime(2031, 5, 5, 18, 10, tzinfo=zone),
        datetime(2031, 5, 5, 9, 5, tzinfo=zone),
        datetime(2031, 5, 5, 18, 10, 30, tzinfo=zone),
    ]


def test_columns_may_be_missing_at_the_end_and_unknown_ones_are_passed_over() -> None:
    found = read("panel;value;operator;note\nbonnet;118\nDach;119;Ana;x\n;;;\n")
    assert [(r.panel, r.value_um, r.note) for r in found.accepted] == [("bonnet", 118.0, ""), ("roof", 119.0, "x")]


def test_a_separator_hint_on_the_first_line_is_passed_over() -> None:
    found = read("sep=;\nvalue;unit\n118;um\n")
    assert (values(found), found.accepted[0].line) == ([118.0], 3)


@pytest.mark.parametrize(
    ("data", "part"),
    [
        (b"", "is empty"),
        (b"\r\n \n", "is empty"),
        (b"\xff\xfe", "is empty"),
        (b"a;b\n1;2\n", "no column is named “value”"),
        (b"118;119\n", "no column is named “value”"),
        (b"sep=;\n", "no column is named “value”"),
        (b"value;value (mil)\n1;2\n", "stands there twice"),
        (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "no column is named “value”"),
        (b"value\n\x81\xff\n", "not text"),
    ],
)
def test_what_is_no_list_of_readings_is_refused_as_a_whole(data: bytes, part: str) -> None:
    with pytest.raises(BadFile, match=part) as caught:
        read(data)
    assert "list.csv" in str(caught.value)
    assert caught.value.name == "list.csv"


def test_a_wrong_heading_is_named_by_its_line() -> None:
    for heading in ("a;b", "value;value"):
        with pytest.raises(BadFile) as caught:
            read(f"sep=;\n\n{heading}\n1;2\n")
        assert (caught.value.line, caught.value.value) == (3, heading)


def test_a_file_too_large_to_be_readings_is_refused() -> None:
    with pytest.raises(BadFile, match="too large"):
        read(b"1" * (64 * 2**20 + 1))


def test_a_hundred_thousand_lines_all_arrive() -> None:
    found = read("value;panel\n" + "118,5;bonnet\n11x;bonnet\n" * 50_000)
    assert len(found.accepted) == len(found.refused) == 50_000
    assert found.accepted[-1].line == 100_000
    assert found.refused[-1].line == 100_001


def test_control_characters_are_named_and_long_values_cut() -> None:
    found = read("value\n\x07" + "9" * 100 + "x\n")
    assert found.refused[0].value.startswith("\\x07999")
    assert len(found.refused[0].value) == 60


@given(st.binary(max_size=300))
def test_any_bytes_end_in_lists_or_one_sentence(data: bytes) -> None:
    for whole in (data, b"value;unit;panel;time;note\n" + data):
        with suppress(BadFile):
            found = read(whole)
            lines = [x.line for x in (*found.accepted, *found.refused)]
            assert len(set(lines)) == len(lines)
            assert all(r.reason for r in found.refused)


@given(st.lists(st.integers(301, 19_999).filter(lambda n: n % 10), min_size=1, max_size=30), st.sampled_from(".,"))
def test_every_value_written_is_read_back(tenths: list[int], mark: str) -> None:
    text = "value;place\n" + "".join(f"{t // 10}{mark}{t % 10};{i}\n" for i, t in enumerate(tenths))
    found = read(text)
    assert [r.value_um for r in found.accepted] == [t / 10 for t in tenths]
    assert [r.doubt for r in found.accepted] == [""] * len(tenths)


def test_a_file_cut_off_in_its_last_line_is_said() -> None:
    found = read("value;panel;place\n118;bonnet;1\n119;bon")
    assert found.notes == (
        "Line 3, the last, has no end and fewer cells than the others: the file may be cut off there.",
    )
    assert [line.line for line in found.refused] == [3]


@pytest.mark.parametrize(
    "text",
    ["value;panel\n118;bonnet\n119;bonnet", "value;panel\n118;bonnet\n119\n", "118\n119", "value;panel\n118;bonnet\n"],
)
def test_a_file_whose_last_line_is_whole_or_ended_is_not_called_cut_off(text: str) -> None:
    assert read(text).notes == ()


def test_more_lines_than_one_car_has_are_refused_before_any_is_read() -> None:
    def never(_words: str) -> str | None:
        raise AssertionError("a line was read")

    with pytest.raises(BadFile, match="has 12 lines; one car never has more than 10 readings"):
        read("value;panel\n" + "118;bonnet\n" * 11, most_lines=10, panel_key=never)


def test_empty_lines_and_the_heading_do_not_count_as_readings() -> None:
    assert len(read("value\n" + "118\n\n" * 10, most_lines=10).accepted) == 10
