"""A working's values in words: nothing of the machine's, nothing empty, a line an object."""

from __future__ import annotations

from detailbench.basics.calculations import Calculation
from detailbench.screens.frame.working_words import in_words
from detailbench.trials.calculations import CALCULATIONS


def calculation(name: str) -> Calculation:
    return next(c for c in CALCULATIONS if c.name == name)


RUNGS = [
    {"cleared": "no", "finish_clear": "yes", "refined": "", "trails": "", "movement": "free_orbit"},
    {
        "cleared": "yes",
        "finish_clear": "no",
        "refined": "yes",
        "trails": "yes",
        "movement": "forced",
        "refined_on": [2],
    },
    {"cleared": "", "finish_clear": "", "refined": "", "trails": "", "movement": "rotary"},
]


def test_the_advisers_combinations_are_told_a_line_each_by_number() -> None:
    assert in_words("rungs", RUNGS)[1].split("\n") == [
        "1: did not clear, finish clear, orbital, free",
        "2: cleared, finish not clear, finish clear on top of 3, left trails, orbital, forced",
        "3: nothing seen, rotary",
    ]


def test_what_the_adviser_proposes_is_the_combination_of_the_same_number() -> None:
    found = calculation("adviser").run(
        {"rungs": [{**r, "refined": "", "trails": "", "refined_on": None} for r in RUNGS]}
    )
    assert found.results["rung"] == 1  # the plain value is not touched
    assert in_words("rung", found.results["rung"]) == ("combination", "2")
    assert in_words("on_top", None) == ("on top", "–")


def test_objects_leave_out_what_is_empty_and_say_units_and_words() -> None:
    rows = [
        {"panel": "wing_front_left", "minutes": 12.5, "sections": None, "says": "", "done": True},
        {"removed_um": 0.4, "u_um": 0.0, "paint": ""},
    ]
    assert in_words("rows", rows)[1].split("\n") == [
        "1: panel wing front left, minutes 12.5, done yes",
        "2: removed 0.4\u00a0µm, u 0\u00a0µm",
    ]


def test_what_somebody_wrote_is_not_touched() -> None:
    assert in_words("what", "P_2000 disc")[1] == "P_2000 disc"
    assert in_words("likeness", "same_maker_and_age")[1] == "same maker and age"
    assert in_words("cured", "no")[1] == "no"


def test_like_paint_before_and_judgements_are_sentences() -> None:
    box = {"cl": 1, "ch": 3, "gl": 2, "gh": 4, "rl": 0, "likeness": "same_code"}
    assert in_words("before", [box])[1] == (
        "1: mildest that clears 2 to 4, 2 to 4 finish clear, haze taken off from 1 on, likeness: same code"
    )
    answers = [{"rung": 1, "cleared": "yes", "finish_clear": "", "beneath": None}]
    assert in_words("answers", answers)[1] == "1: combination 2, cleared"
