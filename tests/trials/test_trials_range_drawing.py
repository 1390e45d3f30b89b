"""The range as a picture: what lies where, for screen and print alike."""

from __future__ import annotations

from typing import get_args

import pytest

from detailbench.trials.range_drawing import (
    Fell,
    RangeDrawing,
    RungShown,
    Sign,
    range_drawing,
    says,
    sign_marks,
    sign_words,
)

LINE = 20.0


def width(text: str) -> float:
    return 8.0 * len(text)


RANGE = (
    RungShown("a", 1, "soft foam", "works", "on top: finished clear", (Fell(1, 2, "works", cut_row=2),), step=2),
    RungShown("b", 2, "medium foam", "unknown", "not tried on this paint", served=3),
    RungShown("c", 3, "firm foam", "hazy", "cleared, finish not clear", (Fell(0, 1, "hazy"),), step=1),
    RungShown("d", 4, "wool", "forbidden", "not to be used here", (Fell(2, 3, "stopped"),), next=True),
)


def drawn(wide: float) -> RangeDrawing:
    return range_drawing(RANGE, wide, LINE, width)


def overlaps(drawing: RangeDrawing, kinds: tuple[str, ...]) -> list[tuple[str, str]]:
    found = []
    for row in drawing.rows:
        boxes = [b for b in row.boxes if b.kind in kinds and b.wide > 0]
        for i, a in enumerate(boxes):
            for b in boxes[i + 1 :]:
                across = min(a.x + a.wide, b.x + b.wide) - max(a.x, b.x)
                down = min(a.y + a.high, b.y + b.high) - max(a.y, b.y)
                if across > 0.01 and down > 0.01:
                    found.append((a.words, b.words))
    return found


@pytest.mark.parametrize("wide", [300.0, 380.0, 800.0, 1200.0])
def test_nothing_lies_on_anything_else_and_nothing_leaves_the_picture(wide: float) -> None:
    drawing = drawn(wide)
    assert not overlaps(drawing, ("number", "sign", "name", "words", "trial", "step", "next"))
    for row in drawing.rows:
        for box in row.boxes:
            assert -0.01 <= box.x <= box.x + box.wide <= wide + 0.01, box
            assert -0.01 <= box.y <= box.y + box.high <= drawing.row_high + 0.01, box


def test_where_there_is_room_each_trial_has_a_column_from_left_to_right_as_made() -> None:
    drawing = drawn(800)
    assert drawing.in_columns
    at = {b.words.split(":")[0].split(" on")[0]: b.x for row in drawing.rows for b in row.boxes if b.kind == "trial"}
    assert at["trial 1"] < at["trial 2"] < at["trial 3"]


def test_in_a_narrow_picture_the_trials_stand_at_the_end_of_their_row() -> None:
    drawing = drawn(380)
    assert not drawing.in_columns
    trial = next(b for b in drawing.rows[2].boxes if b.kind == "trial")
    name = next(b for b in drawing.rows[2].boxes if b.kind == "name")
    assert trial.x > name.x
    assert trial.y >= name.y + name.high


def test_a_thread_joins_the_cut_and_what_was_tried_on_top_through_the_rows_between() -> None:
    threads = [any(b.kind == "thread" for b in row.boxes) for row in drawn(800).rows]
    assert threads == [True, True, True, False]
    on_top = next(b for b in drawn(800).rows[0].boxes if b.kind == "trial")
    assert on_top.on_top
    assert on_top.words == "trial 2 on top: finished clear"


def test_every_row_says_in_words_all_that_it_shows() -> None:
    rows = [row.says for row in drawn(800).rows]
    assert rows[0] == "1  soft foam\non top: finished clear; trial 2 on top; adopted, step 2"
    assert rows[1] == "2  medium foam\nnot tried on this paint; served on like paint 3 ×"
    assert rows[3] == "4  wool\nnot to be used here; trial 3; next by the rule"


def test_each_sign_has_a_shape_and_words_of_its_own() -> None:
    signs: tuple[Sign, ...] = get_args(Sign)
    assert len({sign_marks(s) for s in signs}) == len(signs)
    assert len({sign_words(s) for s in signs}) == len(signs)


def test_the_key_holds_the_signs_that_occur_and_no_other() -> None:
    assert [s for s, _words in drawn(800).signs] == ["works", "unknown", "hazy", "forbidden", "stopped"]


def test_rows_are_never_lower_than_asked_for() -> None:
    assert range_drawing(RANGE, 380, LINE, width, row_least=60).row_high == 60
    assert range_drawing(RANGE, 380, LINE, width, row_least=60).high == 240


def test_more_trials_than_fit_at_the_end_of_a_row_still_stand_in_its_words() -> None:
    many = RungShown("a", 1, "foam", "failed", "did not clear", tuple(Fell(i, i + 1, "failed") for i in range(7)))
    row = range_drawing((many,), 380, LINE, width).rows[0]
    assert sum(b.kind == "trial" for b in row.boxes) == 4
    assert "trials 1, 2, 3, 4, 5, 6, 7" in says(many)


def test_an_empty_range_has_no_rows() -> None:
    drawing = range_drawing((), 380, LINE, width)
    assert (drawing.rows, drawing.high) == ((), 0)
