"""Every word of the window goes through the catalogue: the whole window in a made-up language, in both looks."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from every_text import Painted, Reader, parts_of
from invented_handover import HandoverJob
from invented_shop import INVENTED_NOW, InventedShop, invented_shop
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot
from untranslated import plain_words, typed_in

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import Refused
from detailbench.basics.texts import PSEUDO, SOURCE, _, speak
from detailbench.findings.settings import in_force
from detailbench.moves import surface, work
from detailbench.moves.bench import Bench
from detailbench.screens.app import application
from detailbench.screens.entry.why_button import WhyButton
from detailbench.screens.frame.working_sheet import WorkingSheet, source_text
from detailbench.screens.frame.working_words import in_words, words
from detailbench.screens.look.looks import LookKey
from detailbench.screens.window import Window

pytestmark = [pytest.mark.slow, pytest.mark.timeout(900)]  # the whole window is read, part by part
PANELS = ("bonnet", "quarter_rear_l", "bumper_rear")
# typed by the invented people, though the program has the same words or they look like one of its keys
TYPED = ("clear coat lifting", "badge not removed", "polisher", "zero plate", "dark blue", "EUR")


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> InventedShop:
    """A workshop with a job handed back and one in the middle of its work, closed; made in the made-up language, so
    that what was said then and is kept bears accents too."""
    speak(PSEUDO)
    shop = invented_shop(tmp_path_factory.mktemp("pseudo") / "workshop", HandClock(INVENTED_NOW))
    HandoverJob(shop).all()
    second = HandoverJob(shop)
    second.arrive()
    second.see()
    second.measure()
    second.try_out()
    second.do(surface.HoldPanel(second.job, "quarter_rear_l", "Clear coat lifting"))
    step = shop.bench.job(second.job).steps[0]
    second.do(work.StartStep(second.job, "bonnet", step.id))
    shop.clock.forward(minutes=4)
    shop.bench.close()
    speak(SOURCE)
    return shop


@pytest.fixture
def workshop(made: InventedShop, tmp_path: Path) -> Iterator[Bench]:
    folder = tmp_path / "workshop"
    shutil.copytree(made.folder, folder)
    bench = Bench(folder, HandClock(made.clock.now()), person=made.person)
    yield bench
    bench.close()


@pytest.fixture
def pseudo() -> Iterator[None]:
    speak(PSEUDO)
    yield
    speak(SOURCE)


@pytest.fixture
def painted(monkeypatch: pytest.MonkeyPatch) -> Painted:
    return Painted(monkeypatch)


def shown(qtbot: QtBot, bench: Bench, look: LookKey) -> Window:
    application()
    window = Window(bench.clock, look=look)
    qtbot.addWidget(window)
    window.resize(1600, 1000)
    with qtbot.waitExposed(window):
        window.show()
    window.attach(bench)
    QApplication.processEvents()
    return window


def own_words(sheet: WorkingSheet) -> frozenset[str]:
    """What of a working is the record's own and the same in every language, so that it can be given back to the
    ``workings`` command: its name, its formula, its values and their names; and the title of its published source."""
    working = sheet.working
    assert working is not None
    found = {working.formula, working.source.text, source_text(working)}
    for values in (working.inputs, working.results):
        for name, value in values.items():
            found |= set(in_words(name, value))
    title = _("Why this figure: {name}").format(name=words(working.name))
    return frozenset(found | {title})


def read_stage(window: Window, reader: Reader, key: str) -> None:
    """Every part of a stage, with different panels chosen, and the working of every figure shown."""
    window.open(key)
    for panel in PANELS:
        window.context.select_panel(panel)
        open_card = window.centre.page or window.centre.card.stack.currentWidget()
        assert open_card is not None
        for part in parts_of(open_card):
            reader.look(f"{key} {part} {panel}")
            for why in [w for w in open_card.findChildren(WhyButton) if w.isVisible()]:
                why.explain()
                reader.read(window.centre.working, f"{key} {part} {panel} why", but=own_words(window.centre.working))
                window.centre.working.close_sheet()
        if window.centre.page is not None:
            return


def read_all(window: Window, painted: Painted) -> Reader:
    """The whole window, with every sheet."""
    reader = Reader(window, painted)
    for key, _title in window.rail_entries():
        read_stage(window, reader, key)
    window.open(window.stages[0].key)
    window.ask_person()
    reader.look("who is entering")
    window.close_top()
    for stage in window.stages:
        window.open(stage.key)
        window.shows.ask()
        reader.look(f"{stage.key} show")
        window.close_top()
        for choice in stage.colourings():
            window.shows.choose(choice.key)
            reader.look(f"{stage.key} colouring {choice.key}")
        window.far.switch()
        reader.look(f"{stage.key} far view")
        window.close_top()
    window.find_panel()
    reader.look("finding a panel")
    window.context.notice("", "plain")
    window.wipe_lock.switch()
    reader.look("wipe lock")
    window.wipe_lock.switch()
    panel, step = "bonnet", next(iter(window.context.picture.steps)).id  # type: ignore[union-attr]
    window.context.override_wanted.emit(
        work.StartStep(window.context.job_id or "", panel, step), Refused("", rule="thickness", may_override=True)
    )
    reader.look("setting a rule aside")
    window.close_top()
    window.owner.asked()
    assert window.owner.agreements is not None
    for page in ("asked", "ask", "limits"):
        window.owner.agreements.pages.turn(page)
        reader.look(f"with the owner: {page}")
    window.close_top()
    window.owner.mishap()
    reader.look("mishap")
    window.close_top()
    return reader


@pytest.mark.parametrize(("which", "look"), [(0, "desk"), (1, "bay")], ids=["handed back", "at work"])
def test_no_text_of_the_window_is_left_untranslated(
    qtbot: QtBot, workshop: Bench, pseudo: None, painted: Painted, look: LookKey, which: int
) -> None:
    window = shown(qtbot, workshop, look)
    shop = workshop.shop()
    job = shop.jobs[which].id
    window.open_job(job)
    reader = read_all(window, painted)
    typed = TYPED + typed_in(
        shop,
        [str(value) for _default, value in in_force(shop)],
        workshop.job(job),
        *(workshop.job(j.id) for j in shop.jobs),
    )
    faults = reader.faults(lambda text: plain_words(text, typed))
    assert not faults, "\n".join(f"{where}\n    {text}" for text, where in faults.items())


def test_no_text_of_an_empty_workshop_is_left_untranslated(
    qtbot: QtBot, tmp_path: Path, clock: HandClock, pseudo: None, painted: Painted
) -> None:
    bench = Bench(tmp_path / "empty", clock)
    window = shown(qtbot, bench, "bay")
    reader = Reader(window, painted)
    for page in window.pages:
        window.open(page.key)
        made = window.centre.page
        assert made is not None
        for part in parts_of(made):
            reader.look(f"{page.key} {part}")
    faults = reader.faults(plain_words)
    window.close()
    bench.close()
    assert not faults, "\n".join(f"{where}\n    {text}" for text, where in faults.items())


def test_the_reader_finds_a_text_that_nobody_translated(qtbot: QtBot, pseudo: None, painted: Painted) -> None:
    host = QWidget()
    qtbot.addWidget(host)
    label = QLabel(_("{n} marks on the {panel}").format(n=3, panel="bonnet"), host)
    label.setAccessibleName(_("marks"))
    host.resize(300, 60)
    with qtbot.waitExposed(host):
        host.show()
    reader = Reader(host, painted)
    reader.look("here")
    assert list(reader.faults(plain_words).values()) == ["here: QLabel: bonnet"]
