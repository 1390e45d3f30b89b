"""The three-field state in words: of a panel now, and of everything seen or measured in it."""

from __future__ import annotations

from typing import Protocol

from detailbench.basics.texts import _


class Stateful(Protocol):
    """A panel's state, or a thing that was seen in it."""

    @property
    def clean(self) -> str: ...
    @property
    def work(self) -> str: ...
    @property
    def cover(self) -> str: ...


def cover_words() -> dict[str, str]:
    return {
        "bare": _("bare"),
        "earlier_coating": _("earlier coating"),
        "protected": _("protected"),
        "not_known": _("not known"),
    }


def state_words(state: Stateful) -> str:
    """``washed, as found, cover not known``."""
    clean = {
        "dirty": _("dirty"),
        "washed": _("washed"),
        "decontaminated": _("decontaminated"),
        "wiped": _("panel-wiped"),
    }[state.clean]
    work = _("polished") if state.work == "polished" else _("as found")
    cover = _("cover not known") if state.cover == "not_known" else cover_words()[state.cover]
    return f"{clean}, {work}, {cover}"
