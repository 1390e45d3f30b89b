"""What was typed and not entered belongs to the job it was typed for."""

from __future__ import annotations

from typing import Protocol

from detailbench.screens.context import Context


class Emptied(Protocol):
    """A field that can be emptied for the next entry."""

    def clear(self) -> None: ...


def emptied_for_each_job(context: Context, *fields: Emptied) -> None:
    """Empty these fields whenever another job is opened: nobody's words stand in somebody else's job."""

    def empty() -> None:
        for field in fields:
            field.clear()

    context.job_opened.connect(empty)
