"""What is told of a picture again and again is worked out once: a picture never changes.

Some of it rests on a job's own entries and the shop's kit and settings alone. A job in which nothing was entered gets a
new picture whenever anything is entered elsewhere; that part goes over into it.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar

from detailbench.basics.numbers import thickness_unit
from detailbench.basics.texts import language
from detailbench.record.picture import JobPicture

Asked = ParamSpec("Asked")
Told = TypeVar("Told")


KIT = ("gauges", "shims", "lamps", "machines", "pads", "products", "combinations", "towels", "discs", "settings")


def told_of_kit(find: Callable[[JobPicture], Told]) -> Callable[[JobPicture], Told]:
    """As ``told_once``, for what rests on the job's own entries and the shop's kit and settings only, with no words in
    it: ``carried_over`` keeps it."""

    @wraps(find)
    def found(picture: JobPicture) -> Told:
        kept = vars(picture).setdefault("_told_of_kit", {})
        if find not in kept:
            kept[find] = find(picture)
        told: Told = kept[find]
        return told

    return found


def carried_over(had: JobPicture, now: JobPicture) -> JobPicture:
    """``now``, the same job with nothing entered in it since ``had``: what was told of it stays told where the shop's
    kit and settings are still the same."""
    if "_told_of_kit" in vars(had) and all(getattr(had.shop, k) == getattr(now.shop, k) for k in KIT):
        vars(now)["_told_of_kit"] = vars(had)["_told_of_kit"]
    return now


def told_once(
    find: Callable[Concatenate[JobPicture, Asked], Told],
) -> Callable[Concatenate[JobPicture, Asked], Told]:
    """Keep what ``find`` tells with the picture itself, by what was asked and by the language and the unit it is told
    in; it goes when the picture goes. What was asked must be hashable; nobody may change what is told, and it does not
    hold the picture itself: the two would keep each other."""

    @wraps(find)
    def found(picture: JobPicture, /, *asked: Asked.args, **named: Asked.kwargs) -> Told:
        # beside the fields, as functools.cached_property does it: no comparison and no copy sees it
        kept = vars(picture).setdefault("_told_once", {})
        key = (find, language(), thickness_unit(), asked, tuple(sorted(named.items())))
        if key not in kept:
            kept[key] = find(picture, *asked, **named)
        told: Told = kept[key]
        return told

    return found
