"""Keeps the frame's facts fresh: counts on the rail, the strip, the header."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.screens.context import Context
from detailbench.screens.frame.frame import Frame

SHOP = "shop"


class Live:
    """Redraws the frame from the context's picture."""

    def __init__(self, window: Frame, context: Context) -> None:
        self._window = window
        self._context = context
        self.can_undo = False
        self.can_redo = False

    @property
    def scope(self) -> str:
        """Undo takes back the open job's last move; with no job open, or on the shop's page, the shop's."""
        page = self._window.page
        own = page.scope if page is not None else ""
        return own or self._context.job_id or SHOP

    def all(self) -> None:
        self.counts()
        self.strip()
        self.header()
        self._window.show_keys()

    def counts(self) -> None:
        picture = self._context.picture
        for stage in self._window.stages:
            done, due = (None, None) if picture is None else stage.counts(picture)
            apart = None if picture is None else stage.counts_apart(picture)
            self._window.rail.set_counts(stage.key, done, due, apart)

    def strip(self) -> None:
        bench = self._context.bench
        if bench is not None:
            self._window.strip.set_waiting(len(bench.shop().waiting))
            self._window.strip.set_person(self.person_name())
        self.last_entry()
        self.next()

    def last_entry(self) -> None:
        """What was entered last and can be taken back; where entries are not saved yet, that instead."""
        bench, unsaved = self._context.bench, self._context.unsaved
        last = unsaved.words
        self.can_undo = self.can_redo = False
        if bench is not None and not unsaved.waiting:
            standing = bench.standing(self.scope)
            self.can_undo = bool(standing.done) and bench.read_only is None
            self.can_redo = bool(standing.undone) and bench.read_only is None
            last = last or (standing.done[-1][1] if standing.done else "")
        self._window.strip.set_last(last, can_undo=self.can_undo, can_redo=self.can_redo, not_saved=unsaved.anything)
        self._window.show_keys()

    def next(self) -> None:
        stage = self._window.stage
        waits = stage.what_next(self._context) if stage is not None and self._context.picture is not None else ""
        self._window.strip.set_next(waits)

    def person_name(self) -> str:
        """The chosen person's name, empty while nobody is chosen."""
        bench = self._context.bench
        if bench is None:
            return ""
        return next((p.name for p in bench.shop().people if p.id == bench.person), "")

    def header(self) -> None:
        picture = self._context.picture
        if picture is None:
            text = _("no job open")
        else:
            car = ", ".join(part for part in (picture.car.described, picture.car.colour) if part)
            text = _("job {number}").format(number=picture.job.number) + (f" · {car}" if car else "")
        self._window.centre.header.job.set_whole(text)
        bench = self._context.bench
        if bench is not None and bench.read_only:
            self._window.strip.set_gauge(_("reading only"))
