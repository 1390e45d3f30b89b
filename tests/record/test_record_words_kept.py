"""The words a field may hold are those of the trade rooms: what one may say, the other keeps."""

from __future__ import annotations

import pytest

from detailbench.record.words_kept import WORDS, choices
from detailbench.trials.outcome import PAINT_SYSTEMS, Cleared, Finish, Result, Stopped


@pytest.mark.parametrize(
    ("table", "field", "said"),
    [
        ("finish_group", "paint_system", PAINT_SYSTEMS),
        ("trial_outcome", "cleared", Cleared),
        ("trial_outcome", "finish", Finish),
        ("trial_outcome", "stopped", Stopped),
        ("trial_outcome", "next_result", Result),
    ],
)
def test_what_a_trial_may_say_is_what_is_kept(table: str, field: str, said: object) -> None:
    assert set(choices(table, field)) == {str(word) for word in said}  # type: ignore[attr-defined]


def test_an_empty_word_is_no_choice() -> None:
    assert all("" not in choices(table, field) for table, own in WORDS.items() for field in own)
