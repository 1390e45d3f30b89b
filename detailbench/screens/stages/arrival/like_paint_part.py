"""That this shop worked on like paint before, as soon as the colour code or year is known; one press shows it."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.findings.like_before import like_before
from detailbench.findings.trials_before import Sought
from detailbench.screens.context import Context
from detailbench.screens.look.parts import button, sentence


class LikePaintPart(QWidget):
    """Takes no room while there is nothing to say."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._jobs: tuple[str, ...] = ()
        self.says = sentence()
        self.show_it = button(_("Show these trials"), self._show, name=_("Show the trials on like paint"))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.says, 1)
        row.addWidget(self.show_it)

    def redraw(self) -> None:
        bench, picture = self._context.bench, self._context.picture
        known = picture is not None and (picture.car.paint_code.strip() or picture.car.year is not None)
        found = None
        if bench is not None and picture is not None and known:
            found = like_before(picture, bench.jobs_with_trials())
        self._jobs = (*found.jobs, *found.elsewhere) if found is not None else ()
        text = found.sentence if found is not None else ""
        self.says.setText(text)
        self.says.setAccessibleName(text)
        self.setVisible(found is not None)

    def _show(self) -> None:
        """The trials of those jobs, on the History page."""
        self._context.sought = Sought(jobs=self._jobs)
        self._context.stage_wanted.emit("history")
