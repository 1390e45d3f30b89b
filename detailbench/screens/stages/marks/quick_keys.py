"""Twelve kinds under the left and right hand's resting fingers; every other kind by its words."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.marks.catalogue import Kind, catalogue
from detailbench.marks.severity import depth_words, severity_words
from detailbench.screens.entry.key_grid import KeyChoice
from detailbench.screens.stages.marks.open_mark import scale_of

LETTERS = "asdfghjklqwe"  # the home row, and three above it where keyboards differ least
OTHER, AGAIN, NOTHING, PHOTOS, NO_DEPTH = "o", "r", "n", "p", "x"


def by_letter() -> dict[str, Kind]:
    """The quick kinds by their letters."""
    return dict(zip(LETTERS, catalogue().quick, strict=False))


def kind_choices() -> tuple[KeyChoice, ...]:
    return tuple(
        KeyChoice(kind.key, letter, kind.name, _("kind: {name}").format(name=kind.name))
        for letter, kind in by_letter().items()
    )


def severity_choices(kind: Kind) -> tuple[KeyChoice, ...]:
    """The six digits with their words on the kind's scale."""
    return tuple(
        KeyChoice(str(n), str(n), words, _("severity {n}: {words}").format(n=n, words=words))
        for n in range(6)
        for words in (severity_words(n, scale_of(kind)),)
    )


def depth_choices() -> tuple[KeyChoice, ...]:
    """The six depths, and *not judged*."""
    digits = tuple(
        KeyChoice(str(n), str(n), depth_words(n), _("depth {n}: {words}").format(n=n, words=depth_words(n)))
        for n in range(6)
    )
    return (*digits, KeyChoice(NO_DEPTH, NO_DEPTH, _("depth not judged")))


def matching(words: str) -> tuple[Kind, ...]:
    """Kinds whose name, looks or key hold every typed word; names that begin with them first."""
    typed = words.casefold().split()
    found = []
    for order, kind in enumerate(catalogue().kinds):
        name, whole = kind.name.casefold(), f"{kind.name} {kind.looks} {kind.key}".casefold()
        if all(word in whole for word in typed):
            starts = not typed or any(part.startswith(typed[0]) for part in name.split())
            found.append((0 if starts else 1, order, kind))
    return tuple(kind for _rank, _order, kind in sorted(found, key=lambda f: f[:2]))
