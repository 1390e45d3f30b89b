"""Words on screen and in print: English (GB) is the source; a pseudo-language finds what nobody translated."""

from __future__ import annotations

from collections.abc import Sequence
from contextvars import ContextVar
from functools import cache

from detailbench.basics.shelf import resource

SOURCE = "en_GB"
PSEUDO = "pseudo"

_language: ContextVar[str] = ContextVar("detailbench_language", default=SOURCE)
_ACCENTS = str.maketrans("aeiounscyAEIOUNSCY", "àéîöûñšçýÀÉÎÖÛÑŠÇÝ")


def speak(language: str) -> None:
    """Choose the language for everything asked from now on in this context."""
    _language.set(language)


def language() -> str:
    """The language chosen."""
    return _language.get()


@cache
def _catalogue(code: str) -> dict[str, str]:
    path = resource("locale", f"{code}.po")
    if not path.is_file():
        return {}
    from babel.messages.pofile import read_po  # only a translated start pays for it

    with path.open("rb") as file:
        return {str(m.id): str(m.string) for m in read_po(file) if m.id and m.string}


def _(text: str) -> str:
    """``text`` in the chosen language. Placeholders are ``str.format`` fields and stay untouched."""
    code = _language.get()
    if code == SOURCE:
        return text
    if code == PSEUDO:
        return "⟦" + _pseudo(text) + "⟧"
    return _catalogue(code).get(text, text)


@cache
def _pseudo(text: str) -> str:
    out, inside = [], False
    for char in text:
        if char == "{":
            inside = True
        out.append(char if inside else char.translate(_ACCENTS))
        if char == "}":
            inside = False
    return "".join(out)


def listed_words(words: Sequence[str]) -> str:
    """ "pad, compound and movement" """
    if len(words) < 2:
        return "".join(words)
    return _("{all_but_last} and {last}").format(all_but_last=", ".join(words[:-1]), last=words[-1])
