"""Marks counted in the frame: what is not quite none or all is never rounded to it."""

from __future__ import annotations

import pytest

from detailbench.findings.counting import counted_words


@pytest.mark.parametrize(
    ("before", "left", "words"),
    [
        (999, 999, "0 of 999 counted marks gone: 0 % (0 to below 1 %, 95 %)."),
        (999, 0, "999 of 999 counted marks gone: 100 % (above 99 to 100 %, 95 %)."),
        (999, 998, "1 of 999 counted marks gone: below 1 % (below 1 to 1 %, 95 %)."),
        (24, 3, "21 of 24 counted marks gone: 88 % (69 to 96 %, 95 %)."),
    ],
)
def test_a_bound_is_not_rounded_to_nothing_or_everything(before: int, left: int, words: str) -> None:
    assert counted_words(before, left).replace("\N{NO-BREAK SPACE}", " ").startswith(words)
