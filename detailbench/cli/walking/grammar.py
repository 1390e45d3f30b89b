"""A whole walk script read: every line known before the first is played."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from detailbench.basics.errors import BadFile
from detailbench.basics.texts import _
from detailbench.cli.walking.line import Line, line_of
from detailbench.cli.walking.step import Step, read, usage
from detailbench.cli.walking.steps import (
    agreeing,
    arrival,
    expecting,
    handover,
    kit,
    layers,
    marks,
    measuring,
    papers,
    safe,
    sending,
    shop,
    standing,
    surface,
    trials,
    washing,
    work,
    workshop,
)

GROUPS = (
    workshop,
    shop,
    kit,
    arrival,
    surface,
    washing,
    marks,
    measuring,
    layers,
    sending,
    trials,
    work,
    handover,
    standing,
    papers,
    agreeing,
    safe,
    expecting,
)


def _verbs() -> dict[str, type[Step]]:
    found: dict[str, type[Step]] = {}
    for group in GROUPS:
        for cls in vars(group).values():
            if isinstance(cls, type) and issubclass(cls, Step) and cls.verb:
                found[cls.verb] = cls
    return found


VERBS = _verbs()


def read_walk(text: str, name: str) -> tuple[Step, ...]:
    """Every act of the script ``name``, in order. Raises BadFile naming the line for the first that cannot be read."""
    steps = []
    for number, written in enumerate(text.splitlines(), 1):
        line = line_of(written, name, number)
        if line.more:
            steps.append(_step(line))
    return tuple(steps)


def read_walk_file(path: Path) -> tuple[Step, ...]:
    """The same from a UTF-8 file."""
    try:
        text = path.read_text("utf-8")
    except OSError as error:
        raise BadFile(
            _("{name} cannot be read ({why}).").format(name=path.name, why=error.strerror), name=path.name
        ) from error
    except UnicodeDecodeError as error:
        raise BadFile(_("{name} is not UTF-8 text.").format(name=path.name), name=path.name) from error
    return read_walk(text, path.name)


def _step(line: Line) -> Step:
    first = line.take("")
    second = line.peek()
    if not first.quoted and second is not None and not second.quoted and f"{first.text} {second.text}" in VERBS:
        line.take("")
        return read(VERBS[f"{first.text} {second.text}"], line)
    if first.quoted or first.text not in VERBS:
        alike = [verb for verb in VERBS if verb.startswith(f"{first.text} ") and not first.quoted]
        why = _("“{word}” is not something a walk can do").format(word=first.text)
        if alike:
            why = _("“{word}” needs one of these behind it: {words}").format(
                word=first.text, words=", ".join(verb.split()[1] for verb in alike)
            )
        raise line.bad(why, first.text)
    return read(VERBS[first.text], line)


def help_lines() -> Iterable[str]:
    """Every verb: how it is written and what it does."""
    for cls in VERBS.values():
        yield f"{usage(cls)}\n    {cls.does}"
