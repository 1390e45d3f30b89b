"""What the map shows: the colouring chosen, and what the open stage draws upon the panels."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.screens.frame.frame import Frame
from detailbench.screens.map.colouring import Colouring, Drawing
from detailbench.screens.stages.stage import ColouringChoice


class MapShows:
    """Colours and draws the map from the context's picture."""

    def __init__(self, window: Frame) -> None:
        self._window = window
        self._choice: ColouringChoice | None = None

    def stage_opened(self) -> None:
        """The stage's own first question is asked of the map."""
        stage = self._window.stage
        choices = stage.colourings() if stage is not None else ()
        self._choice = choices[0] if choices else None

    def redraw(self) -> None:
        context, centre, stage = self._window.context, self._window.centre, self._window.stage
        has = context.picture is not None
        centre.map.show_outline(context.outline if has else None)
        colouring = self._choice.make(context) if has and self._choice else Colouring("", "")
        drawing = stage.drawing(context) if has and stage is not None else Drawing()
        centre.map.show_colouring(colouring)
        centre.map.show_drawing(drawing)
        centre.header.legend.show_colouring(colouring)
        title = self._choice.title if self._choice else "–"
        centre.header.show_button.setText(_("show: {what}").format(what=title))

    def choices(self) -> tuple[ColouringChoice, ...]:
        """All there are, the open stage's first."""
        window = self._window
        stages = sorted(window.stages, key=lambda s: s is not window.stage)
        return tuple(c for s in stages for c in s.colourings())

    def ask(self) -> None:
        choices = self.choices()
        if choices:
            now = self._choice.key if self._choice else ""
            self._window.centre.shows.show_choices([(c.key, c.title) for c in choices], now)

    def choose(self, key: str) -> None:
        self._choice = next((c for c in self.choices() if c.key == key), self._choice)
        self.redraw()
