"""The one window: stage rail, panel map, card, entry strip. It wires the parts; it holds no rules and no data."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QCloseEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.clock import Clock
from detailbench.basics.errors import DetailbenchError, Refused
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.screens.actions import Action, KeyDoor
from detailbench.screens.bench_door import BenchLike, ChangesLike
from detailbench.screens.context import Context, NoticeKind
from detailbench.screens.entry.burst_filter import BurstFilter
from detailbench.screens.entry.wheel_rule import WheelRule
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.frame.acts import window_actions
from detailbench.screens.frame.card_keeper import CardKeeper
from detailbench.screens.frame.centre import Centre
from detailbench.screens.frame.come_back import Absence, stage_to_return_to, you_were_here
from detailbench.screens.frame.far_keeper import FarKeeper
from detailbench.screens.frame.input_door import InputDoor
from detailbench.screens.frame.live import Live
from detailbench.screens.frame.map_shows import MapShows
from detailbench.screens.frame.notices import Flash, NoticeLine, looks_as
from detailbench.screens.frame.override_sheet import OverrideSheet
from detailbench.screens.frame.owner_keeper import OwnerKeeper
from detailbench.screens.frame.rail import Rail
from detailbench.screens.frame.safe_keeper import SafeKeeper
from detailbench.screens.frame.shop_habits import ShopHabits
from detailbench.screens.frame.strip import EntryStrip
from detailbench.screens.frame.tabbing import next_stop
from detailbench.screens.frame.who_enters import WhoEnters
from detailbench.screens.frame.wipe_lock import WipeLock
from detailbench.screens.gauges.gauge_lines import GaugeLines
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.looks import LookKey
from detailbench.screens.sound.player import Sounds
from detailbench.screens.stages import all_pages, all_stages
from detailbench.screens.stages.stage import Page, Stage

LOOK_FOR_OTHERS_MS = 1000
SMALLEST = (1024, 600)


class Window(QWidget):
    """Build it, ``show()`` it, then ``attach`` a bench and ``open_job``. Stages and pages are given as tuples."""

    closing = Signal()
    bursts: BurstFilter

    def __init__(
        self,
        clock: Clock,
        *,
        stages: Sequence[Stage] | None = None,
        pages: Sequence[Page] | None = None,
        look: LookKey = "bay",
        logical_dpi: float = 96.0,
        shop_factor: float = 1.0,
        open_first: bool = True,
    ) -> None:
        super().__init__()
        self.setObjectName("window")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground, True)
        self.setWindowTitle("detailbench")
        self.setMinimumSize(*SMALLEST)
        self.stages = tuple(all_stages() if stages is None else stages)
        self.pages = tuple(all_pages() if pages is None else pages)
        self.stage: Stage | None = None
        self.page: Page | None = None
        self.dress = Dress(look, logical_dpi, shop_factor)
        self.context = Context(clock, self.dress, self)
        self._made_pages: dict[str, QWidget] = {}
        self.wipe_lock = WipeLock(self)
        self.live = Live(self, self.context)
        self.safe = SafeKeeper(self, self.context, self.live)
        self.shows = MapShows(self)
        self.habits = ShopHabits(self, self.context)
        self._build()
        self._actions: tuple[Action, ...] = window_actions(self)
        self._connect()
        absence = Absence(clock, self._say_where, self)
        app = QApplication.instance()
        assert app is not None
        # a burst is seen before it can be a key
        first = (self.bursts, self.wipe_lock, absence, KeyDoor(self, self.actions_now), WheelRule(self))
        self._door = InputDoor(first, self)
        app.installEventFilter(self._door)
        self.dress.wear(self)
        self._others = QTimer(self)
        self._others.setInterval(LOOK_FOR_OTHERS_MS)
        self._others.timeout.connect(self.safe.look_for_others)
        self._begun = False
        self._opened = ""
        if open_first:
            self._open_first()
        self.live.all()

    def _build(self) -> None:
        dress = self.dress
        entries = [(s.key, s.title) for s in self.stages]
        self.rail = Rail(entries, [(p.key, p.title) for p in self.pages], dress)
        self.who = WhoEnters(self)
        self.centre = Centre(dress, self.who.choose, self.shows.choose)
        self.notices = NoticeLine(dress, self)
        self.strip = EntryStrip(dress, self.ask_person, self.undo, self.redo)
        self.override = OverrideSheet(self, dress, self.context.do, self.who.name, self.who.ask)
        self.owner = OwnerKeeper(self, lambda: self.far.leave() if self.far.shown else None)
        self.rail.add_acts(self.owner.buttons)
        self.flash = Flash(self, dress)
        self.bursts = BurstFilter(self)
        self.far = FarKeeper(self, self)
        CardKeeper(self, self)
        self.gauge_lines = GaugeLines(self.context, self)
        self.sounds = Sounds(self.context, self)
        upper = QHBoxLayout()
        upper.setSpacing(0)
        upper.addWidget(self.rail)
        upper.addWidget(self.centre, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(upper, 1)
        column.addWidget(self.notices)
        column.addWidget(self.strip)

    def _connect(self) -> None:
        context, centre = self.context, self.centre
        context.changed.connect(self._changed)
        context.job_opened.connect(self._job_opened)
        context.panel_selected.connect(self._panel_selected)
        context.drawing_changed.connect(self.shows.redraw)
        context.next_changed.connect(self._next_changed)
        context.noticed.connect(self._noticed)
        context.working_wanted.connect(centre.working.show_working)
        context.override_wanted.connect(self._ask_override)
        context.stage_wanted.connect(self.open)
        context.sheet_wanted.connect(centre.take_in)
        centre.map.panel_chosen.connect(self._panel_picked)
        centre.map.place_clicked.connect(context.choose_place)
        centre.map.words_wanted.connect(self.find_panel)
        centre.show_wanted.connect(self.shows.ask)
        centre.finder.found.connect(self._panel_picked)
        centre.finder.closed.connect(self.to_map)
        for sheet in (centre.working, centre.shows, self.override):
            sheet.closed.connect(self.to_map)
        centre.person.closed.connect(self.who.go_back)
        context.owner_wanted.connect(self.owner.ask)
        context.person_wanted.connect(self.who.ask)
        self.rail.chosen.connect(self.open)
        self.wipe_lock.changed.connect(self._wipe_changed)
        self.gauge_lines.burst.connect(self.far.take_burst)
        self.gauge_lines.stands.connect(self.strip.set_gauge_lines)

    # the bench and the job
    def attach(self, bench: BenchLike) -> None:
        """Work at this bench from now on."""
        self._begin()
        self._open_first()
        self.context.attach(bench)
        self._others.start()
        self.safe.at_the_start()

    @property
    def home(self) -> Page | None:
        """The page that is open while no job is."""
        return next((p for p in self.pages if p.home), None)

    def open_job(self, job_id: str | None) -> None:
        self.context.open_job(job_id)

    def _job_opened(self) -> None:
        self.centre.map.choose("")
        if self.home is not None and self.context.picture is None:
            self.open(self.home.key)
        elif self.page is not None and self.page is self.home and self.context.picture is not None:
            self.open(stage_to_return_to(self.context.picture, self.stages))
        self.shows.redraw()
        self.live.all()
        self._say_where()
        self.centre.arrange()

    def _changed(self, changes: ChangesLike | None, initiator: object) -> None:
        self.shows.redraw()
        self.live.all()
        self.far.fill_if_shown()
        if changes is not None and changes.says:
            note = getattr(changes, "note", "")
            self._noticed(f"{changes.says}. {note}" if note else changes.says, "flagged" if note else "saved")

    # stages and pages
    def _begin(self) -> None:
        """Let the stages hear from now on. Not before the window is shown: it loads what they stand on."""
        if not self._begun:
            self._begun = True
            for stage in self.stages:
                stage.begin(self.context)

    def _open_first(self) -> None:
        """Open the page for no job, else the day's first stage, unless something is open."""
        keys = [self.home.key] if self.home is not None else [key for key, _title in self.rail_entries()]
        if keys and not self._opened:
            self.open(keys[0])

    def rail_entries(self) -> list[tuple[str, str]]:
        return [(s.key, s.title) for s in self.stages] + [(p.key, p.title) for p in self.pages]

    def opener(self, key: str) -> Callable[[], None]:
        return lambda: self.open(key)

    def open(self, key: str) -> None:
        """Open a stage or a page by its key."""
        stage = next((s for s in self.stages if s.key == key), None)
        page = next((p for p in self.pages if p.key == key), None)
        self.far.allow()
        if stage is not None:
            self.stage, self.page = stage, None
            if not self.centre.card.has(key):
                self.centre.card.add(key, stage.make_card(self.context))
            self.centre.card.show_card(key)
            self.centre.card_open = True
            self.centre.set_page(None)
            self.shows.stage_opened()
            self._title_card()
        elif page is not None:
            self.stage, self.page = None, page
            if key not in self._made_pages:
                self._made_pages[key] = page.make_page(self.context)
            self.centre.set_page(self._made_pages[key])
        else:
            return
        self._opened = key
        self.rail.show_chosen(key)
        self.context.stage_is_open(key)
        self.shows.redraw()
        self.live.strip()
        self.show_keys()

    # the map
    def _panel_picked(self, key: str) -> None:
        self.context.select_panel(key)

    def _panel_selected(self, key: str) -> None:
        self.centre.map.choose(key, self.context.selected_place)
        self._title_card()
        if key and not self.centre.card_open and self.stage is not None:
            self.centre.set_card_open(True)
        self.shows.redraw()
        self.show_keys()

    def _title_card(self) -> None:
        key = self.context.selected_panel
        name = panel_name(key) if key else (self.stage.title if self.stage else "")
        self.centre.card.set_title(name[:1].upper() + name[1:])

    def find_panel(self) -> None:
        self.centre.finder.open_for(frozenset(self.centre.map.items_by_key))

    def to_map(self) -> None:
        """Give the keys to the map."""
        if self.centre.map.isVisible():
            self.centre.map.setFocus(Qt.FocusReason.ShortcutFocusReason)

    # actions
    def actions_now(self) -> tuple[Action, ...]:
        """The open stage's actions first: an open mark's letters win over the frame's. Not while something lies over
        the map: Escape then closes that."""
        own = self.stage.actions(self.context) if self.stage is not None and self.context.picture is not None else ()
        return self._actions + own if self.has_top else own + self._actions

    def show_keys(self) -> None:
        self.strip.show_keys(self.actions_now())

    def explain(self) -> None:
        """F1: the working of what has the focus, else of the first figure on the card; again: close it."""
        if self.centre.working.isVisible():
            self.centre.working.close_sheet()
            return
        focused = QApplication.focusWidget()
        if isinstance(focused, WhyButton):
            focused.explain()
            return
        where = self.centre.page or self.centre.card.card
        whys = [] if where is None else [w for w in where.findChildren(WhyButton) if w.isVisible()]
        if whys:
            whys[0].explain()
        else:
            self.context.notice(_("There is no figure here to explain."), "plain")

    def undo(self) -> None:
        self._take_back(undo=True)

    def redo(self) -> None:
        self._take_back(undo=False)

    def _take_back(self, *, undo: bool) -> None:
        bench = self.context.bench
        if bench is None:
            return
        try:
            done = (bench.undo if undo else bench.redo)(self.live.scope, self)
            if done.note:
                self.context.notice(done.note, "flagged")
        except DetailbenchError as error:
            self.context.notice(str(error), "stop")

    def ask_person(self) -> None:
        self.who.ask()

    def switch_look(self) -> None:
        self.dress.wear(self, self.dress.other())
        self.centre.arrange()
        self.shows.redraw()

    @property
    def has_top(self) -> bool:
        """True when something lies over the map that Escape would close."""
        return self.far.shown or any(s.isVisible() for s in (*self.centre.sheets, self.override))

    def close_top(self) -> None:
        if self.far.shown:
            self.far.leave()
            return
        for sheet in (self.override, *self.centre.sheets):
            if sheet.isVisible():
                sheet.close_sheet()
                return

    def _ask_override(self, move: object, refused: Refused) -> None:
        m = self.dress.look.measure
        self.override.setGeometry(
            self.rail.width() + m.px(4), self.height() // 4, m.px(120), self.override.height_for(m.px(120))
        )
        self.override.ask(move, refused)

    def _wipe_changed(self, on: bool) -> None:
        sentence = (
            _("Wipe lock: touch and mouse are off. F8 turns them on again.") if on else _("Touch and mouse are on.")
        )
        self.context.notice(sentence, "stop" if on else "plain")

    # what speaks
    def _noticed(self, sentence: str, kind: NoticeKind) -> None:
        self.notices.say(sentence, kind)
        self.flash.flash(looks_as(kind))
        self.sounds.sound(looks_as(kind))
        self.show_keys()

    def _next_changed(self) -> None:
        self.centre.map.choose(self.context.selected_panel, self.context.selected_place)
        self.live.next()
        self.show_keys()
        self.far.fill_if_shown()

    # coming back
    def _say_where(self) -> None:
        if self.context.picture is not None:
            bench = self.context.bench
            person = bench.person if bench is not None else ""
            words = you_were_here(self.context.picture, self.context.clock.now(), person)
            if words:
                self.notices.say(words, "plain")

    def focusNextPrevChild(self, next: bool) -> bool:
        centre = self.centre
        sheets = [s for s in (self.override, *centre.sheets, centre.finder) if s.isVisible()]
        main = [centre.page] if centre.page is not None else [centre.header, centre.map, centre.zoom_row, centre.card]
        areas = [self.far.view] if self.far.shown else [*sheets, self.rail, *main, self.strip]
        there = next_stop(self, areas, next)
        if there is None:
            return False
        there.setFocus(Qt.FocusReason.TabFocusReason if next else Qt.FocusReason.BacktabFocusReason)
        return True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        event.accept()

    def resizeEvent(self, event: QResizeEvent) -> None:
        self.far.view.setGeometry(self.rect())
        self.flash.setGeometry(self.rect())

    def closeEvent(self, event: QCloseEvent) -> None:
        self._others.stop()
        self.bursts.let_go()
        self.context.leave()
        self.closing.emit()
        super().closeEvent(event)
