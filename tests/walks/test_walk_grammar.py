"""How a walk script is read: every line before the first act, and a bad one named by file and line."""

from __future__ import annotations

import ast
import re
from contextlib import suppress
from datetime import datetime, timedelta, timezone
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import detailbench.cli.walking
from detailbench.basics.errors import BadFile
from detailbench.cli.walking.core.player import ACTS
from detailbench.cli.walking.grammar import VERBS, help_lines, read_walk, read_walk_file
from detailbench.cli.walking.kinds import At, Quantity
from detailbench.cli.walking.steps import marks, measuring, shop, trials, work, workshop


def one(text: str) -> object:
    (step,) = read_walk(text, "here.walk")
    return step


def test_a_line_is_a_verb_words_texts_and_quantities() -> None:
    assert one('reading 118 um place 3 note "by the badge"') == measuring.TypeReading(
        name="here.walk", line=1, reading=Quantity(118.0, "um", 0), place=3, note="by the badge"
    )


def test_comments_and_empty_lines_are_passed_over_and_lines_keep_their_numbers() -> None:
    steps = read_walk('# what this is\n\n  undo   # at once\n\tredo shop\nas "A # B"\n', "here.walk")
    assert [(type(s), s.line) for s in steps] == [
        (workshop.Undo, 3),
        (workshop.Redo, 4),
        (workshop.EnterAs, 5),
    ]
    assert (steps[1].shop, steps[2].person) == (True, "A # B")


def test_a_quote_inside_a_text_is_written_with_a_backslash() -> None:
    assert one(r'as "Ana \"the lamp\" \\ Invented"').person == 'Ana "the lamp" \\ Invented'


def test_a_time_keeps_its_offset() -> None:
    at = datetime(2031, 5, 5, 18, 10, tzinfo=timezone(timedelta(hours=2)))
    assert one("clock 2031-05-05T18:10+02:00").at == at


def test_a_thickness_in_mil_is_held_in_um() -> None:
    reading = one("reading 4.6 mil").reading
    assert (reading.um, reading.digits) == (pytest.approx(116.84), 1)


def test_several_values_share_the_unit_behind_them() -> None:
    assert [v.value for v in one('check "foil" 0.1 -0.2 0 um again').values] == [0.1, -0.2, 0.0]


def test_a_place_is_two_distances_from_named_edges() -> None:
    assert one("mark swirl 3 at front 300 mm left 210.5 mm").at == At("front", 300.0, "left", 210.5)


def test_named_values_may_stand_in_any_order() -> None:
    first = one('mark chip 2 depth 4 intent leave note "x"')
    assert first == one('mark chip 2 note "x" intent leave depth 4')
    assert isinstance(first, marks.NoteMark)


def test_verbs_of_two_words_are_told_apart() -> None:
    assert type(one("close")) is workshop.Close
    assert type(one("close report")).verb == "close report"
    assert type(one('shop person "Ana"')) is shop.AddPerson
    assert one("adopt rung 4 then rung 1").rungs == (4, 1)
    assert one("outcome stopped heat").seen == ("stopped", "heat")
    assert type(one('start because "agreed by telephone"')) is work.StartWork
    assert type(one("trial rung 1 on-top")) is trials.MakeTrial


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("dance", "“dance” is not something a walk can do"),
        ('"reading" 118 um', "“reading” is not something a walk can do"),
        ("shop", "“shop” needs one of these behind it"),
        ("expect happiness 3", "“expect” needs one of these behind it"),
        ("reading", "the line ends where a number is expected"),
        ("reading 118", "the line ends where um / µm / mil is expected"),
        ("reading 118 mm", "“mm” is none of the units"),
        ("reading 1,18 um", "“1,18” is not a number"),
        ("reading nan um", "“nan” is not a number"),
        ("reading 1e400 um", "“1e400” is not a number"),
        ("reading 118 um 119", "“119” is not expected here"),
        ('reading 118 um note "a" note "b"', "“note” stands twice"),
        ("panel bonet", "there is no panel “bonet”"),
        ("panel bonnet,roof", "one panel is expected"),
        ("as Ana", "“Ana” must stand in quotes"),
        ('as "Ana', "a quote is opened and never closed"),
        ('panel "bonnet"', "a word without quotes is expected"),
        ("clock today", "“today” is not a date and time"),
        ("clock 2031-05-05T18:10", "needs its offset"),
        ("mark swirl 2.5", "a whole number"),
        ("mark swirl -1", "a whole number"),
        ("stage lunch", "“lunch” is none of: arrival"),
        ("undo everything", "“everything” is not expected here"),
        ("shop setting unit mil", "neither a number nor a text in quotes"),
    ],
)
def test_a_line_that_cannot_be_read_is_named_by_file_and_line(text: str, told: str) -> None:
    with pytest.raises(BadFile) as caught:
        read_walk(f"undo\n\n{text}\nredo", "here.walk")
    assert told in str(caught.value)
    assert str(caught.value).startswith("here.walk, line 3: ")
    assert (caught.value.name, caught.value.line) == ("here.walk", 3)


def test_a_line_that_is_understood_up_to_a_point_says_how_it_is_written() -> None:
    with pytest.raises(BadFile, match=re.escape("It is written: finish [after NUMBER min]")):
        read_walk("finish early", "here.walk")


@given(st.text(alphabet=st.characters(exclude_characters="\n"), max_size=60))
def test_whatever_stands_in_a_line_it_is_read_or_refused_in_a_sentence(text: str) -> None:
    for line in (text, f"reading {text}", f'as "{text}"', f"mark {text}", f"check {text}"):
        with suppress(BadFile):
            assert len(read_walk(line, "here.walk")) <= len(line.splitlines())


def test_a_file_that_is_missing_or_no_text_is_said(tmp_path: Path) -> None:
    with pytest.raises(BadFile, match=r"none\.walk cannot be read"):
        read_walk_file(tmp_path / "none.walk")
    (tmp_path / "odd.walk").write_bytes(b"undo \xff\xfe")
    with pytest.raises(BadFile, match=r"odd\.walk is not UTF-8"):
        read_walk_file(tmp_path / "odd.walk")


def test_every_verb_has_a_player_and_words_for_help() -> None:
    spoken = set(VERBS.values())
    assert spoken - {workshop.WasRefused} == set(ACTS)
    assert all(cls.does for cls in spoken)
    assert len(list(help_lines())) == len(VERBS)


def test_the_grammar_knows_neither_moves_nor_record() -> None:
    folder = Path(detailbench.cli.walking.__file__).parent
    files = [p for p in folder.rglob("*.py") if "core" not in p.relative_to(folder).parts]
    assert len(files) > 12
    for file in files:
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            names = [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            names += [a.name for a in node.names] if isinstance(node, ast.Import) else []
            for name in names:
                assert name.split(".")[1:2] != ["moves"], file
                assert name.split(".")[1:2] != ["record"], file
                assert ".core" not in name, file
