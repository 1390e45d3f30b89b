"""What is told of a picture again and again is worked out once: a picture never changes."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar

from detailbench.basics.texts import language
from detailbench.record.picture import JobPicture

Asked = ParamSpec("Asked")
Told = TypeVar("Told")


def told_once(
    find: Callable[Concatenate[JobPicture, Asked], Told],
) -> Callable[Concatenate[JobPicture, Asked], Told]:
    """Keep what ``find`` tells with the picture itself, by what was asked and the language it is told in; it goes when
    the picture goes. What was asked must be hashable, and nobody may change what is told."""

    @wraps(find)
    def found(picture: JobPicture, /, *asked: Asked.args, **named: Asked.kwargs) -> Told:
        # beside the fields, as functools.cached_property does it: no comparison and no copy sees it
        kept = vars(picture).setdefault("_told_once", {})
        key = (find, language(), asked, tuple(sorted(named.items())))
        if key not in kept:
            kept[key] = find(picture, *asked, **named)
        told: Told = kept[key]
        return told

    return found
