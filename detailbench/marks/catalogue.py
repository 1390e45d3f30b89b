"""The catalogue of mark kinds: read from ``resources/marks.json`` (or a shop's edited copy) and checked whole."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from detailbench.basics import shelf
from detailbench.basics.errors import BadFile, BadInput
from detailbench.basics.texts import _
from detailbench.marks.words import FLAGS, GROUPS, LAMPS, MEASURES, REMOVABLE, SURFACES

FIRST_INTENTS = frozenset({"target", "reduce", "leave", "clean_first", "refer", "hold", "by_depth"})
ISO_PARTS = frozenset({"4628-1", "4628-2", "4628-3", "4628-4", "4628-5", "4628-6"})
QUICK_KEYS = 12


@dataclass(frozen=True)
class Kind:
    """One kind of mark: what is seen, never who did it.

    ``groups``: home group first, then G where the kind may also be made while working. ``lamps``: letters of
    ``words.LAMPS``; ``hidden_in``: lamps under which it does not show. ``measures``: keys of ``words.MEASURES``.
    ``first_intent``: an intent key or ``by_depth``; ``also_intent``: the second one offered. ``quick``: place on
    the twelve quick keys, 1…12, or None. The texts are English; ``name``, ``looks`` and ``polishing`` translate.
    """

    key: str
    groups: tuple[str, ...]
    surface: str
    name_text: str
    looks_text: str
    lamps: frozenset[str]
    hidden_in: frozenset[str]
    also_by: tuple[str, ...]
    removable: str
    polishing_text: str
    measures: tuple[str, ...]
    iso: str | None
    first_intent: str
    also_intent: str | None
    flags: frozenset[str]
    quick: int | None

    @property
    def group(self) -> str:
        return self.groups[0]

    @property
    def name(self) -> str:
        return _(self.name_text)

    @property
    def looks(self) -> str:
        return _(self.looks_text)

    @property
    def polishing(self) -> str:
        return _(self.polishing_text)

    @property
    def ours(self) -> bool:
        """May be made by the shop itself; must then be clear before the car is given back."""
        return "ours" in self.flags or "G" in self.groups

    @property
    def by_agreement(self) -> bool:
        return "by_agreement" in self.flags

    @property
    def mask(self) -> bool:
        return "mask" in self.flags

    @property
    def cure(self) -> bool:
        return "cure" in self.flags

    @property
    def cause_word(self) -> bool:
        """The trade's word carries a cause; documents print "looks like" before it."""
        return "cause_word" in self.flags

    @property
    def mishap_if_ours(self) -> bool:
        return "mishap_if_ours" in self.flags

    @property
    def depth_asked(self) -> bool:
        return self.first_intent == "by_depth" or "depth" in self.measures

    @property
    def printed_name(self) -> str:
        """The name for a document: "looks like …" where the word carries a cause."""
        if self.cause_word:
            return _("looks like: {name}").format(name=self.name)
        return self.name


@dataclass(frozen=True)
class Catalogue:
    """All kinds in their order; ``quick`` the kinds of the quick keys in key order."""

    kinds: tuple[Kind, ...]

    @property
    def quick(self) -> tuple[Kind, ...]:
        return tuple(sorted((k for k in self.kinds if k.quick is not None), key=lambda k: k.quick or 0))

    def kind(self, key: str) -> Kind:
        """The kind with that key. Raises BadInput where there is none."""
        for one in self.kinds:
            if one.key == key:
                return one
        raise BadInput(_("There is no kind of mark called “{key}”.").format(key=key), field="kind", given=key)

    def in_group(self, group: str) -> tuple[Kind, ...]:
        """The kinds of a group; a kind made while working is also in G."""
        return tuple(k for k in self.kinds if group in k.groups)


def read_catalogue(data: Mapping[str, Any], name: str = "marks.json") -> Catalogue:
    """A catalogue from its data. Raises BadFile naming the kind and the field that is wrong."""
    rows = data.get("kinds")
    if not isinstance(rows, list) or not rows:
        raise BadFile(_("{name} holds no kinds of marks.").format(name=name), name=name)
    kinds_read = tuple(_kind(row, i, name) for i, row in enumerate(rows, start=1))
    seen: set[str] = set()
    keys_taken: set[int] = set()
    for one in kinds_read:
        if one.key in seen:
            raise _bad(name, one.key, "key", one.key, _("the key stands twice"))
        seen.add(one.key)
        if one.quick is not None:
            if one.quick in keys_taken:
                raise _bad(name, one.key, "quick", one.quick, _("the quick key stands twice"))
            keys_taken.add(one.quick)
    return Catalogue(kinds_read)


def _bad(name: str, key: str, column: str, value: object, why: str) -> BadFile:
    sentence = _("{name}, kind “{key}”, {column}: {why}.").format(name=name, key=key, column=column, why=why)
    return BadFile(sentence, name=name, column=column, value=str(value))


def _kind(row: object, number: int, name: str) -> Kind:
    if not isinstance(row, dict):
        raise _bad(name, str(number), "", row, _("this is not a kind"))
    key = row.get("key")
    if not isinstance(key, str) or not key.isidentifier():
        raise _bad(name, str(number), "key", key, _("the key must be one word"))

    def text(column: str) -> str:
        value = row.get(column)
        if not isinstance(value, str) or not value.strip():
            raise _bad(name, key, column, value, _("words are missing"))
        return value

    def words(column: str, known: frozenset[str] | None, empty: bool = False) -> tuple[str, ...]:
        value = row.get(column, [])
        if not isinstance(value, list) or (not value and not empty):
            raise _bad(name, key, column, value, _("a list is needed"))
        for word in value:
            if not isinstance(word, str) or (known is not None and word not in known):
                raise _bad(name, key, column, word, _("“{word}” is not known").format(word=word))
        if len(set(value)) != len(value):
            raise _bad(name, key, column, value, _("a word stands twice"))
        return tuple(value)

    def one_of(column: str, known: frozenset[str], empty: bool = False) -> str | None:
        value = row.get(column)
        if value is None and empty:
            return None
        if not isinstance(value, str) or value not in known:
            raise _bad(name, key, column, value, _("“{word}” is not known").format(word=value))
        return value

    quick = row.get("quick")
    if quick is not None and (not isinstance(quick, int) or isinstance(quick, bool) or not 1 <= quick <= QUICK_KEYS):
        raise _bad(name, key, "quick", quick, _("the quick key must be 1 to {most}").format(most=QUICK_KEYS))
    return Kind(
        key=key,
        groups=words("groups", frozenset(GROUPS)),
        surface=one_of("surface", frozenset(SURFACES)) or "",
        name_text=text("name"),
        looks_text=text("looks"),
        lamps=frozenset(words("lamps", frozenset(LAMPS))),
        hidden_in=frozenset(words("hidden_in", frozenset(LAMPS), empty=True)),
        also_by=words("also_by", frozenset({"touch", "lens"}), empty=True),
        removable=one_of("removable", frozenset(REMOVABLE)) or "",
        polishing_text=text("polishing"),
        measures=words("measures", frozenset(MEASURES)),
        iso=one_of("iso", ISO_PARTS, empty=True),
        first_intent=one_of("first_intent", FIRST_INTENTS) or "",
        also_intent=one_of("also_intent", FIRST_INTENTS - {"by_depth"}, empty=True),
        flags=frozenset(words("flags", FLAGS, empty=True)),
        quick=quick,
    )


@cache
def catalogue() -> Catalogue:
    """The catalogue the program ships."""
    return read_catalogue(shelf.data("marks.json"))


def kinds() -> tuple[Kind, ...]:
    """All kinds the program ships, in catalogue order."""
    return catalogue().kinds


def kind(key: str) -> Kind:
    """One kind by key. Raises BadInput where there is none."""
    return catalogue().kind(key)
