"""A stage whose own modules are loaded when it is first needed, so that the window is on the glass before the store."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Drawing
from detailbench.screens.stages.stage import ColouringChoice, CountsApart, FarFacts, Stage

if TYPE_CHECKING:
    from detailbench.record.picture import JobPicture
    from detailbench.screens.actions import Action


class LateStage(Stage):
    """Knows key and title at once; everything else it asks of the real stage, made on the first question."""

    def __init__(self, key: str, title: Callable[[], str], make: Callable[[], Stage]) -> None:
        self.key = key
        self._title = title
        self._make = make
        self._stage: Stage | None = None

    @property
    def title(self) -> str:  # type: ignore[override]  # follows the language
        return self._title()

    @property
    def stage(self) -> Stage:
        """The real one."""
        if self._stage is None:
            self._stage = self._make()
        return self._stage

    def begin(self, context: Context) -> None:
        self.stage.begin(context)

    def make_card(self, context: Context) -> QWidget:
        return self.stage.make_card(context)

    def counts(self, picture: JobPicture) -> tuple[float, int]:
        return self.stage.counts(picture)

    def counts_apart(self, picture: JobPicture) -> CountsApart | None:
        return self.stage.counts_apart(picture)

    def what_next(self, context: Context) -> str:
        return self.stage.what_next(context)

    def colourings(self) -> tuple[ColouringChoice, ...]:
        return self.stage.colourings()

    def drawing(self, context: Context) -> Drawing:
        return self.stage.drawing(context)

    def far(self, context: Context) -> FarFacts:
        return self.stage.far(context)

    def actions(self, context: Context) -> tuple[Action, ...]:
        return self.stage.actions(context)
