"""Finds what nobody translated: in the pseudo-language every word of the program bears an accent, so a plain one is
either what somebody typed or a text that never went through the catalogue."""

from __future__ import annotations

import ast
import json
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parent.parent
PACKAGE = ROOT / "detailbench"
WORD = re.compile(r"[^\W\d_²³]+")
HASH = re.compile(r"\b[0-9a-f]{4,8}(?: [0-9a-f]{4,8})+\b|\b[0-9a-f]{32,}\b")
PLAIN = re.compile(r"[aeiounscyAEIOUNSCY]")

# units, symbols and the codes of currencies are the same in every language
UNITS = frozenset(
    {
        "mil",
        "min",
        "mm",
        "cm",
        "km",
        "µm",
        "m",
        "s",
        "h",
        "N",
        "J",
        "C",
        "K",
        "rpm",
        "kg",
        "g",
        "ml",
        "MB",
        "kB",
        "mi",
        "EUR",
    }
)
# what stands on the keys
KEYS = frozenset(
    {
        "Ctrl",
        "Shift",
        "Alt",
        "Esc",
        "Enter",
        "Return",
        "Space",
        "Tab",
        "Home",
        "End",
        "Ins",
        "Del",
        "F",
        "PgUp",
        "PgDown",
    }
)
# the program's own name, file kinds, and open standards named by their letters
NAMES = frozenset(
    {"detailbench", "PDF", "CSV", "SQLite", "ISO", "ASTM", "JCGM", "NIST", "VIN", "HSE", "HSG", "INDG", "SHA", "UTC"}
)
SAME_EVERYWHERE = UNITS | KEYS | NAMES


@dataclass(frozen=True)
class Message:
    """One call of ``_``: where, and the text asked for; None where it is not a literal string."""

    file: str
    line: int
    text: str | None
    source: str


@cache
def messages() -> tuple[Message, ...]:
    """Every call of ``_`` in the package."""
    found = []
    for file in sorted(PACKAGE.rglob("*.py")):
        code = file.read_text("utf-8")
        lines = code.encode().splitlines()  # once a file: ast.get_source_segment cuts it anew for every call
        for node in ast.walk(ast.parse(code)):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "_":
                first = node.args[0] if len(node.args) == 1 and not node.keywords else None
                text = first.value if isinstance(first, ast.Constant) and isinstance(first.value, str) else None
                source = _cut(lines, first) if first is not None else ""
                found.append(Message(file.relative_to(PACKAGE).as_posix(), node.lineno, text, source))
    return tuple(found)


def _cut(lines: list[bytes], node: ast.expr) -> str:
    """The code of a node, its columns counted in bytes."""
    last = node.end_lineno or node.lineno
    piece = lines[node.lineno - 1 : last]
    piece[-1] = piece[-1][: node.end_col_offset]
    piece[0] = piece[0][node.col_offset :]
    return b"\n".join(piece).decode()


@cache
def own_texts() -> frozenset[str]:
    """Every text of the program itself: in the code and on the shelf."""
    texts = {m.text for m in messages() if m.text is not None}
    for name in ("marks.json", "kit.json", "cautions.json", "texts/standing.json"):
        texts |= set(strings_in(json.loads((ROOT / "resources" / name).read_text("utf-8"))))
    return frozenset(texts)


def strings_in(value: Any) -> Iterator[str]:
    """Every text inside frozen things, mappings and rows."""
    if isinstance(value, str):
        yield value
    elif is_dataclass(value) and not isinstance(value, type):
        for field in fields(value):
            yield from strings_in(getattr(value, field.name))
    elif isinstance(value, Mapping):
        for key, each in value.items():
            yield from strings_in(key)
            yield from strings_in(each)
    elif isinstance(value, (list, tuple, set, frozenset)):
        for each in value:
            yield from strings_in(each)


def typed_in(*pictures: Any) -> tuple[str, ...]:
    """What people typed into a job and a shop: every text there that is not the program's own and not one of its keys
    (one word in small letters)."""
    found = {s for p in pictures for s in strings_in(p)} - own_texts()
    return tuple(sorted(s for s in found if not re.fullmatch(r"[a-z_]*", s)))


def plain_words(text: str, typed: Iterable[str] = (), allowed: Iterable[str] = ()) -> list[str]:
    """The words of a text that bear no accent and should: what was typed, what is the same everywhere and single
    letters (keys, symbols) left out."""
    typed = sorted(typed, key=len, reverse=True)
    for each in typed:
        if len(each) > 2:
            text = text.replace(each, " ")
    text = HASH.sub(" ", text)
    whole = {t for t in typed if len(t) <= 2}
    fine = SAME_EVERYWHERE | whole | frozenset(allowed)
    return [w for w in WORD.findall(text) if len(w) > 1 and PLAIN.search(w) and w not in fine]
