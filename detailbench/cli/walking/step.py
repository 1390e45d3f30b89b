"""A step: one act of a walk script as plain values. Knows how it is written, nothing of how it is carried out."""

from __future__ import annotations

from dataclasses import MISSING, Field, dataclass, field, fields
from typing import Any, ClassVar, TypeVar

from detailbench.basics.texts import _
from detailbench.cli.walking.kinds import Kind
from detailbench.cli.walking.line import Line

T = TypeVar("T", bound="Step")


@dataclass(frozen=True, kw_only=True)
class Step:
    """``verb`` is the word or two words a line begins with; ``does`` says it in a few words; ``line`` is where it
    stood."""

    verb: ClassVar[str] = ""
    does: ClassVar[str] = ""
    name: str
    line: int


def value(kind: Kind, default: Any = MISSING) -> Any:
    """A value that stands behind the verb, in the order of the class. With a default it may be left out."""
    metadata = {"kind": kind, "named": False}
    return field(metadata=metadata) if default is MISSING else field(default=default, metadata=metadata)


def named(kind: Kind, default: Any = None) -> Any:
    """A value behind its own name: ``initials AE``; it may be left out."""
    return field(default=default, metadata={"kind": kind, "named": True})


def flag() -> Any:
    """A word that is there or not: ``again``."""
    return field(default=False, metadata={"kind": None, "named": True})


def _written(cls: type[Step]) -> list[Field[Any]]:
    return [f for f in fields(cls) if "named" in f.metadata]


def _key(f: Field[Any]) -> str:
    return f.name.replace("_", "-").rstrip("-")


def usage(cls: type[Step]) -> str:
    """How the verb is written."""
    parts = [cls.verb]
    for f in _written(cls):
        if f.metadata["named"]:
            kind = f.metadata["kind"]
            parts.append(f"[{_key(f)}{'' if kind is None else ' ' + kind.shown}]")
        else:
            shown = f.metadata["kind"].shown
            parts.append(shown if f.default is MISSING else f"[{shown}]")
    return " ".join(parts)


def read(cls: type[T], line: Line) -> T:
    """The step a line says, its verb already taken. Raises BadFile naming the line."""
    line.usage = usage(cls)
    values: dict[str, Any] = {}
    own = _written(cls)
    by_name = {_key(f): f for f in own if f.metadata["named"]}
    for f in own:
        if f.metadata["named"]:
            continue
        token = line.peek()
        if f.default is not MISSING and (token is None or (token.text in by_name and not token.quoted)):
            continue
        values[f.name] = f.metadata["kind"].read(line)
    while line.more:
        token = line.take("")
        known = by_name.get(token.text)
        if known is None or token.quoted:
            raise line.bad(_("“{word}” is not expected here").format(word=token.text), token.text)
        if known.name in values:
            raise line.bad(_("“{word}” stands twice").format(word=token.text), token.text)
        kind = known.metadata["kind"]
        values[known.name] = True if kind is None else kind.read(line)
    return cls(name=line.name, line=line.number, **values)
