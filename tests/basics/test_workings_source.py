"""What is said of where a formula comes from: recalled is not read."""

from __future__ import annotations

import pytest

from detailbench.basics.workings import Source, Working


@pytest.mark.parametrize(
    ("source", "kind"),
    [
        (Source("an invented book, 3.3"), "published"),
        (Source("an invented book, 3.3", from_memory=True), "from memory"),
        (Source("sum over panels", "own derivation"), "own derivation"),
        (Source("", "common practice"), "common practice, no source"),
    ],
)
def test_one_word_says_what_kind_of_source_it_is(source: Source, kind: str) -> None:
    assert source.kind_words() == kind


def test_a_recalled_source_is_nowhere_called_published() -> None:
    told = Working("mean", "sum / n", {}, {}, Source("an invented book, 3.3", from_memory=True)).as_json()
    assert (told["source"], told["source_kind"]) == ("an invented book, 3.3 (from memory)", "from memory")
