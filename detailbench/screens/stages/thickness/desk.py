"""What the person is doing in the Thickness stage: where the next value lands, what waits in the tray."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QObject, QTimer, Signal

from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition, to_edges
from detailbench.body.names import panel_name
from detailbench.findings.walking import OUTER
from detailbench.moves.gloss import StrikeGloss
from detailbench.moves.reading_mending import NotAValue, ReadAsMil
from detailbench.moves.readings import AddPlace, DecidePlace, ProposePlaces, StrikeReading
from detailbench.moves.walk_mending import ChangeSides, ShiftBack
from detailbench.record.things import Reading
from detailbench.screens.context import Context
from detailbench.screens.stages.thickness import walk
from detailbench.screens.stages.thickness.gauge_check_desk import GaugeCheckDesk
from detailbench.screens.stages.thickness.gloss_hand import GlossHand
from detailbench.screens.stages.thickness.landing import Landing
from detailbench.screens.stages.thickness.sent_values import SentValues
from detailbench.screens.stages.thickness.survey import Survey, SurveyKeeper
from detailbench.screens.stages.thickness.walk import WalkPlace
from detailbench.screens.stages.thickness.watched_files import WatchedFiles
from detailbench.screens.stages.thickness.words import place_words
from detailbench.thickness.sent_text import SentText, read_sent

KEY = "thickness"
NEAR_MM = 60.0  # a click as near as this means the place that is there


@dataclass(frozen=True)
class Pointed:
    """Somewhere a person pointed at that is no place yet."""

    panel: str
    at: EdgePosition


class ThicknessDesk(QObject):
    """Knows nothing the picture knows; ``changed`` says that something here is to be drawn anew."""

    changed = Signal()
    tab_wanted = Signal(str)
    asked_in_field = Signal(str)  # a sent text that can be read in two ways

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self.context = context
        self.rounds = 1
        self.pointed: Pointed | None = None
        self.part = "walk"  # the part of the card that is open
        self.check = GaugeCheckDesk(context, self, self.changed.emit, lambda: self.tab_wanted.emit("walk"))
        self._surveys = SurveyKeeper()
        self.gloss = GlossHand(context, self.places)
        self.landing = Landing(context, self)
        self.sent = SentValues(context, self)
        self.watched = WatchedFiles(context)
        self._wanted_id = ""
        self._panel_seen = ""
        self._fresh = False
        context.place_chosen.connect(self._placed)
        context.panel_selected.connect(self._selected)
        context.job_opened.connect(self._begin)
        context.stage_opened.connect(lambda _key: self.told())
        context.changed.connect(lambda *_a: self.changed.emit())
        context.take_bursts_with(self.sent.take_burst)

    # looking
    @property
    def here(self) -> bool:
        """The Thickness stage is in front, with a job."""
        return self.context.open_stage == KEY and self.context.picture is not None

    @property
    def checking(self) -> bool:
        """A value sent now is one of the gauge check."""
        return self.here and self.part == "gauge" and self.check.takes

    def checks(self, gauge_id: str) -> bool:
        """A value of this gauge (empty: nobody can tell which) would be one of the gauge check."""
        gauge = self.check.gauge
        return self.checking and (not gauge_id or (gauge is not None and gauge.id == gauge_id))

    def check_value(self, text: str, value_um: float | None = None) -> str:
        return self.check.sent(text) if value_um is None else self.check.value(value_um)

    def ask_in_field(self, text: str) -> None:
        """A sent text that can be read in two ways is asked about at the place."""
        self.tab_wanted.emit("walk")
        self.asked_in_field.emit(text)

    @property
    def survey(self) -> Survey | None:
        picture = self.context.picture
        return None if picture is None else self._surveys.of(picture)

    @property
    def panel(self) -> str:
        return self.context.selected_panel

    def places(self, panel: str = "") -> tuple[WalkPlace, ...]:
        """The places of a panel (the selected one) in walking order."""
        picture, panel = self.context.picture, panel or self.panel
        return () if picture is None or not panel else walk.places_of(picture, self.context.outline, panel)

    def references(self, panel: str = "") -> tuple[WalkPlace, ...]:
        """Its places in shuts and on undersides; the walk does not go there by itself."""
        picture, panel = self.context.picture, panel or self.panel
        return () if picture is None or not panel else walk.references_of(picture, panel)

    @property
    def place(self) -> WalkPlace | None:
        """Where the next value of the selected panel lands."""
        return self.place_for("gloss" if self.gloss.on else "thickness")

    def place_for(self, kind: str, angle_deg: int = 0) -> WalkPlace | None:
        """Where the next value of this kind lands: where a person chose, else where the walk stands."""
        places = self.places()
        wanted = next((p for p in (*places, *self.references()) if p.id and p.id == self._wanted_id), None)
        if wanted is not None:
            return wanted
        return self.gloss.next_of(places, angle_deg) if kind == "gloss" else walk.next_of(places, self.rounds)

    @property
    def place_is_chosen(self) -> bool:
        """A person chose where the next value lands."""
        return bool(self._wanted_id)

    @property
    def complete(self) -> bool:
        """The selected panel has all that is asked for of what is being measured."""
        if self.gloss.on:
            return self.gloss.complete(self.places())
        return walk.is_complete(self.places(), self.rounds)

    @property
    def done_here(self) -> bool:
        """The selected panel has all that is asked for, and nobody chose a place for one more."""
        return bool(self.panel) and self.complete and not self.place_is_chosen

    @property
    def last(self) -> Reading | None:
        """The reading entered last in this job."""
        picture = self.context.picture
        return picture.readings[-1] if picture is not None and picture.readings else None

    def panel_after(self) -> str:
        """The next panel with places due; empty: none."""
        survey = self.survey
        return "" if survey is None else walk.panel_after(survey.panels_due, self.context.panel_order, self.panel)

    # what happens around
    def _begin(self) -> None:
        self.pointed, self._wanted_id = None, ""
        self.sent.begin()
        self.check.begin()
        self.gloss.begin()
        self.told()

    def _selected(self, panel: str) -> None:
        if panel != self._panel_seen:
            self._panel_seen, self._fresh = panel, True
            QTimer.singleShot(0, self, self._settle)
        if self.pointed is not None and self.pointed.panel != panel:
            self.pointed = None
        if self._wanted_id and all(p.id != self._wanted_id for p in (*self.places(), *self.references())):
            self._wanted_id = ""
        self.changed.emit()
        self._show_place()

    def _settle(self) -> None:
        self._fresh = False

    def _placed(self, panel: str, x_mm: float, y_mm: float) -> None:
        if not self.here or self._fresh:
            return  # the tap that chose the panel names no place on it
        drawn = self.context.outline.panels[panel]
        near = []
        for place in (*self.places(panel), *self.references(panel)):
            x, y = walk.on_drawing(drawn, place.at)
            near.append((((x - x_mm) ** 2 + (y - y_mm) ** 2) ** 0.5, place.number, place))
        least = min(near, key=lambda n: n[:2], default=None)
        if least is not None and least[0] <= NEAR_MM:
            self.pointed = None
            self.choose_place(least[2].number)
        else:
            self.pointed = Pointed(panel, to_edges(drawn, x_mm, y_mm))
            self.told()

    # the walk
    def choose_place(self, number: int) -> None:
        """The next value lands on this place."""
        place = next((p for p in (*self.places(), *self.references()) if p.number == number), None)
        if place is None:
            return
        if not place.id and self.context.job_id is not None:
            self.context.do(ProposePlaces(self.context.job_id, self.panel), self)
            place = next((p for p in self.places() if p.number == number), place)
        self._wanted_id = place.id
        self.told()

    def add_place(self, surface: str = OUTER, origin: str = "chosen") -> None:
        """A place of the person's own, where was pointed at: on the outer skin, in the shut or on the underside; of
        ``origin`` control it is kept from the polishing."""
        pointed, job = self.pointed, self.context.job_id
        if pointed is None or job is None:
            return
        done = self.context.do(AddPlace(job, pointed.panel, pointed.at, origin, surface), self)
        if done is not None:
            self.pointed = None
            self._wanted_id = str(getattr(done, "id", ""))
            self.told()

    def read(self, text: str) -> SentText:
        """A text as it would be taken now: by the gauge in hand, thickness or gloss."""
        if self.gloss.on:
            return self.gloss.read(text)
        gauge = self.check.gauge
        found = read_sent(text, layers=gauge.layers if gauge is not None else None)
        return self.gloss.read_beside(found) if found.kind == "gloss" else found

    def typed(self, read: SentText) -> None:
        """A value was typed for the place the walk stands at."""
        self.landing.land(read, "typed")

    def land(self, read: SentText, source: str, no_value: str = "", session_id: str = "") -> str:
        """A value sent; the sentence where it landed, empty when it was not taken."""
        return self.landing.land(read, source, no_value, session_id)

    def landed(self) -> None:
        """The place somebody chose has its value; the walk goes on by itself."""
        self._wanted_id, self.pointed = "", None

    def no_value(self, why: str) -> None:
        """The gauge gives nothing at the place the walk stands at; a nought just entered there becomes that."""
        last, job = self.last, self.context.job_id
        if job is None or not self.panel:
            self.context.notice(_("Choose a panel first."), "plain")
            return
        if last is not None and "zero" in last.flags and any(last in p.readings for p in self.places()):
            self.make_no_value(last.id, why)
            return
        self.landing.land(SentText(""), "typed", why)

    def measure_gloss(self, on: bool, angle_deg: int = 0) -> None:
        """Gloss next, or thickness."""
        self.gloss.turn(on, angle_deg)
        self.told()

    def use_rounds(self, rounds: int) -> None:
        """How many readings each place is to have."""
        self.rounds = rounds
        self.told()

    def next_panel(self, step: int = 1) -> None:
        """On to the next panel with places due, or to the one before in walking order."""
        order = self.context.panel_order
        there = self.panel_after() if step > 0 else ""
        if not there:
            at = (order.index(self.panel) + step) % len(order) if self.panel in order else 0
            there = order[at]
        self.context.select_panel(there)

    # putting right
    def strike(self, reading_id: str) -> None:
        self._mend(lambda job: StrikeReading(job, reading_id))

    def strike_gloss(self, reading_id: str) -> None:
        self._mend(lambda job: StrikeGloss(job, reading_id))

    def shift_back(self, reading_id: str) -> None:
        """This reading and those after it move one place back; the walk goes on behind them."""
        if self._mend(lambda job: ShiftBack(job, reading_id)):
            self._walk_on()

    def make_no_value(self, reading_id: str, why: str = "nothing") -> None:
        self._mend(lambda job: NotAValue(job, reading_id, why))

    def as_mil(self, reading_id: str) -> None:
        self._mend(lambda job: ReadAsMil(job, reading_id))

    def change_sides(self, panels: tuple[str, ...]) -> None:
        if self._mend(lambda job: ChangeSides(job, panels)):
            self._walk_on()

    def _walk_on(self) -> None:
        self._wanted_id = ""
        self.told()

    def decide(self, place_id: str, moment: str, decision: str, reason: str) -> bool:
        """Set an odd place aside, or keep it; True when that was taken."""
        return self._mend(lambda job: DecidePlace(job, place_id, moment, decision, reason))

    def _mend(self, move: Callable[[str], object]) -> bool:
        job = self.context.job_id
        done = job is not None and self.context.do(move(job), self) is not None
        self.told()
        return done

    def told(self) -> None:
        """Something here changed: have all who show it draw anew."""
        self.changed.emit()
        self.context.drawing_changed.emit()
        self._show_place()
        self.context.next_changed.emit()

    def _show_place(self) -> None:
        """The map marks where the next value lands."""
        place = self.place
        if self.here and self.panel:
            stands = place is not None and (not self.complete or self.place_is_chosen)
            self.context.selected_place = place.number if place is not None and stands else None

    # in words
    def waits(self) -> str:
        """What the next value records, in one line."""
        if self.checking:
            return self.check.waits()
        if self.gloss.on:
            return self.gloss.waits(self.place)
        if self.check.session is None:
            return _("take the gauge in hand")
        place = self.place
        if place is None:
            return _("choose a panel")
        places = self.places()
        if walk.is_complete(places, self.rounds) and not self._wanted_id:
            after = self.panel_after()
            if not after:
                return _("every panel measured")
            return _("{panel}, the first place").format(panel=panel_name(after))
        return place_words(place, len(places))
