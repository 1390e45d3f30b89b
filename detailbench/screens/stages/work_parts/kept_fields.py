"""Fields that are kept one by one: each, when entered, is a move of its own."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import read_typed
from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.text_field import NoteField, TextField

Read = Callable[[JobPicture], str]
ToMove = Callable[[str, str], Any]  # job id, text → move


class KeptFields:
    """Binds fields to what the picture says and to the move that changes it."""

    def __init__(self, context: Context, owner: object) -> None:
        self._context, self._owner = context, owner
        self._bound: list[tuple[Any, Read]] = []
        self._typed: list[TextField] = []
        context.job_opened.connect(self._other_job)

    def text(self, title: str, read: Read, to_move: ToMove, check: Callable[[str], object] | None = None) -> TextField:
        field = TextField(title, check=check)
        field.committed.connect(lambda text: self._enter(to_move, text, field.refuse))
        self._bound.append((field.set_text, read))
        self._typed.append(field)
        return field

    def note(self, title: str, read: Read, to_move: ToMove, lines: int = 2) -> NoteField:
        field = NoteField(title, lines=lines)
        field.committed.connect(lambda text: self._enter(to_move, text, lambda sentence: field.say(sentence)))
        self._bound.append((field.set_text, read))
        return field

    def choice(
        self, title: str, choices: list[tuple[str, str]], read: Read, to_move: ToMove, columns: int = 3
    ) -> ChoiceRow:
        field = ChoiceRow(title, choices, columns=columns)
        field.chosen.connect(lambda key: self._enter(to_move, key, lambda _sentence: self.redraw()))
        self._bound.append((field.set_value, read))
        return field

    def redraw(self) -> None:
        """Show what is kept now."""
        picture = self._context.picture
        for show, read in self._bound:
            show("" if picture is None else read(picture))

    def _other_job(self) -> None:
        for field in self._typed:
            field.forget()
        self.redraw()

    def _enter(self, to_move: ToMove, text: str, refuse: Callable[[str], object]) -> None:
        if self._context.job_id is None:
            self._context.notice(_("Open or make a job first."), "stop")
            return
        self._context.do(to_move(self._context.job_id, text), initiator=self._owner, at=refuse)


def whole_number(text: str) -> int | None:
    """A typed whole number, or None where nothing stands. Raises BadInput."""
    if not text.strip():
        return None
    bare = text.replace(" ", "").replace("\u00a0", "").replace("\u202f", "")
    for mark in (".", ",", "'", "’"):
        parts = bare.split(mark)
        if len(parts) > 1 and all(p.isdigit() for p in parts) and all(len(p) == 3 for p in parts[1:]):
            bare = "".join(parts)  # an odometer never shows thousandths, so a mark before three digits groups
    if not bare.isdigit():
        raise BadInput(_("Type a whole number, digits only."), given=text)
    return int(bare)


def some_number(text: str) -> float | None:
    """A typed number, or None where nothing stands. Raises BadInput with the reader's own sentence."""
    if not text.strip():
        return None
    typed = read_typed(text, expects="plain")
    if typed.value is None or typed.question:
        raise BadInput(typed.question or typed.sentence, given=text)
    return typed.value
