"""What a stage's card is handed: the bench, the open job, the selection, and ways to speak to the person.

A card keeps no state that matters. It draws ``context.picture`` and turns gestures into moves through
``context.do``. When ``changed`` comes with itself as initiator it must not move the person's cursor.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal

from PySide6.QtCore import QObject, Signal

from detailbench.basics import texts
from detailbench.basics.clock import Clock
from detailbench.basics.errors import DetailbenchError, NotSaved, Refused
from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.screens.asking import AskAbout
from detailbench.screens.bench_door import BenchLike, BenchNotices, ChangesLike
from detailbench.screens.look.dress import Dress
from detailbench.screens.unsaved import Unsaved

if TYPE_CHECKING:
    from detailbench.body.panels import Outline
    from detailbench.record.picture import JobPicture, ShopPicture
    from detailbench.thickness.gauge_line import LineRead

NoticeKind = Literal["saved", "flagged", "next", "timer", "stop", "plain"]


@dataclass(frozen=True)
class Burst:
    """A value that came in one go, as a gauge sends it: the text as sent, and when (ms of the clock of the way it
    came). ``gauge_id`` and ``read`` where it came by a gauge's own line: which gauge, and the line as understood."""

    text: str
    at_ms: float
    gauge_id: str = ""
    read: LineRead | None = None


BurstTaker = Callable[[Burst], str]


class Context(QObject):
    """One open window's common ground. ``picture`` is None while no job is open."""

    changed = Signal(object, object)  # ChangesLike, initiator: picture and shop are already fresh
    job_opened = Signal()
    panel_selected = Signal(str)  # empty: none
    place_chosen = Signal(str, float, float)  # panel, x and y in mm on the drawing
    drawing_changed = Signal()  # colouring, marks or places want drawing again
    next_changed = Signal()  # what the next value will record has changed
    noticed = Signal(str, str)  # sentence, NoticeKind
    working_wanted = Signal(object)
    override_wanted = Signal(object, object)  # the move, Refused
    stage_wanted = Signal(str)
    owner_wanted = Signal(object)  # AskAbout: the sheet about what was put to the owner
    sheet_wanted = Signal(object)  # a Sheet of a stage's own, to lie over the map from now on
    supplement_wanted = Signal()  # what was found, for the owner to answer: in the Wash stage
    person_wanted = Signal()  # who is entering must be chosen first
    left = Signal()  # the bench is about to be let go: workers end here
    stage_opened = Signal(str)  # the stage or page now in front
    timer_changed = Signal(str, bool)  # what the timer shows, runs

    def __init__(self, clock: Clock, dress: Dress, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.clock = clock
        self.dress = dress
        self.bench: BenchLike | None = None
        self.job_id: str | None = None
        self.picture: JobPicture | None = None
        self.selected_panel = ""
        self.selected_place: int | None = None
        self.open_stage = ""
        self.sought: Any = None  # what the History page is to look for when it comes to the front
        self.opened_key: Any = None  # the workshop's own key, once its passphrase was typed
        self.unsaved = Unsaved(self)
        self._notices: BenchNotices | None = None
        self._taker: BurstTaker | None = None

    @property
    def locale(self) -> str:
        """The language chosen, for the number functions."""
        return texts.language()

    @property
    def shop(self) -> ShopPicture | None:
        """The shop's picture; None before the workshop is open."""
        return None if self.bench is None else self.bench.shop()

    @property
    def can_write(self) -> bool:
        return self.bench is not None and self.bench.read_only is None

    @property
    def panel_order(self) -> tuple[str, ...]:
        """The panels in the order this shop walks round the car (the usual one while no job is open)."""
        from detailbench.body.where import walk_order
        from detailbench.findings.walking import panels_in_order

        return walk_order(self.outline) if self.picture is None else panels_in_order(self.picture)

    @property
    def outline(self) -> Outline:
        """The drawing of the open job's car (an estate while no job is open)."""
        from detailbench.body.outlines import load_outline

        if self.picture is None:
            return load_outline("estate")
        car = self.picture.car
        return load_outline(car.style, car.length_mm)

    def attach(self, bench: BenchLike) -> None:
        """Work at this bench from now on."""
        self.bench = bench
        self._notices = BenchNotices(bench, self)
        self._notices.changed.connect(self._heard)
        self.changed.emit(None, None)

    def leave(self) -> None:
        """Hear nothing more from the bench."""
        self.left.emit()
        if self._notices is not None:
            self._notices.end()
        self._notices = self.bench = self.opened_key = None

    def open_job(self, job_id: str | None) -> None:
        """Show this job (None: no job)."""
        if self.bench is None:
            return
        self.picture = None if job_id is None else self.bench.job(job_id)
        self.job_id = job_id
        self.selected_panel, self.selected_place = "", None
        self.unsaved.forget_work()
        self.job_opened.emit()

    def stage_is_open(self, key: str) -> None:
        """The window says which stage or page is in front now."""
        self.open_stage = key
        self.stage_opened.emit(key)

    def _heard(self, changes: ChangesLike, initiator: object | None) -> None:
        if self.bench is not None and self.job_id is not None:
            if all(job.id != self.job_id for job in self.bench.shop().jobs):
                self.open_job(None)  # its beginning was taken back
            else:
                self.picture = self.bench.job(self.job_id)
        self.changed.emit(changes, initiator)

    def do(
        self, move: Any, initiator: object | None = None, at: Callable[[str], object] | None = None
    ) -> ChangesLike | None:
        """Do a move. A refusal or a fault becomes a notice (or a question for an override) and gives None; ``at``
        hears its sentence too, to put it at the place where it was typed."""
        if self.bench is None:
            self.notice(_("The workshop is not open yet."), "stop")
            return None
        try:
            return self.bench.do(move, initiator)
        except Refused as refused:
            if refused.may_override:
                self.override_wanted.emit(move, refused)
            elif refused.rule == "other":
                self.owner_wanted.emit(AskAbout("limits"))
            elif refused.rule == "no_person":
                self.person_wanted.emit()
            sentence = str(refused)
        except NotSaved as error:
            self.unsaved.keep(move, initiator)
            sentence = str(error)
        except DetailbenchError as error:
            sentence = str(error)
        self.notice(sentence, "stop")
        if at is not None:
            at(sentence)
        return None

    def select_panel(self, key: str, place: int | None = None) -> None:
        """Make this the selected panel (empty: none), and a place on it."""
        before = self.selected_panel, self.selected_place
        self.selected_panel, self.selected_place = key, place
        if before != (key, place):
            self.panel_selected.emit(key)
            self.next_changed.emit()

    def choose_place(self, panel: str, x_mm: float, y_mm: float) -> None:
        """A place on the drawing was pointed at: selects the panel and tells who listens."""
        if panel != self.selected_panel:
            self.select_panel(panel)
        self.place_chosen.emit(panel, x_mm, y_mm)

    def notice(self, sentence: str, kind: NoticeKind = "plain") -> None:
        """Say one sentence in the notice line; the kind decides its sign and flash."""
        self.noticed.emit(sentence, kind)

    def show_working(self, working: Working) -> None:
        """Open the working beside the card, without stopping anything."""
        self.working_wanted.emit(working)

    def take_bursts_with(self, taker: BurstTaker | None) -> None:
        """Who puts a gauge's values where they belong, in every stage; returns the sentence where it landed."""
        self._taker = taker

    def burst(self, burst: Burst) -> str:
        """Hand on a burst; the sentence says where it landed."""
        if self._taker is None:
            return _("A value came ({text}), and nothing here takes readings yet. It was not kept.").format(
                text=burst.text
            )
        return self._taker(burst)
