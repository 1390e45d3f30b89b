"""The one family of errors a person can meet: each carries a sentence fit for the screen."""

from __future__ import annotations


class DetailbenchError(Exception):
    """Something a person can understand and act on. ``str(error)`` is the sentence shown."""


class BadInput(DetailbenchError):
    """A value that cannot be taken as it stands; what was given is kept where it was typed."""

    def __init__(self, sentence: str, *, field: str = "", given: object = None) -> None:
        super().__init__(sentence)
        self.field = field
        self.given = given


class BadFile(DetailbenchError):
    """A file, or one line of it, that cannot be read. Names file, line, column and value where known."""

    def __init__(
        self, sentence: str, *, name: str = "", line: int | None = None, column: str = "", value: str = ""
    ) -> None:
        super().__init__(sentence)
        self.name = name
        self.line = line
        self.column = column
        self.value = value


class Refused(DetailbenchError):
    """An act the rules stop. ``rule`` names the rule; ``may_override`` says whether a person with a reason may."""

    def __init__(self, sentence: str, *, rule: str = "", may_override: bool = False) -> None:
        super().__init__(sentence)
        self.rule = rule
        self.may_override = may_override


class RecordTrouble(DetailbenchError):
    """The workshop folder cannot be opened, written or trusted as it stands."""


class NotSaved(RecordTrouble):
    """The disk did not take an entry; nothing was changed, and the same entry may be tried again as it is."""
