"""Invented scenes for the tests of the later stages: a stocked shop, a measured car, and a window over one stage."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from invented_shop import InventedShop
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QListWidget, QWidget
from pytestqt.qtbot import QtBot

from detailbench.moves import readings, shop, surface, trials, work
from detailbench.record.things import Trial
from detailbench.screens.app import application
from detailbench.screens.stages.stage import Stage
from detailbench.screens.window import Window

S = TypeVar("S", bound=Stage)
OpenStage = Callable[..., Window]


def shown_window(qtbot: QtBot, invented: InventedShop, job: str, *stages: Stage, **options: object) -> Window:
    """A shown, active window over these stages with the job open."""
    application()
    size = options.pop("size", (1366, 768))
    window = Window(invented.clock, stages=stages, pages=(), **options)  # type: ignore[arg-type]
    qtbot.addWidget(window)
    window.resize(*size)  # type: ignore[misc]
    with qtbot.waitExposed(window):
        window.show()
    window.attach(invented.bench)
    window.open_job(job)
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    QApplication.processEvents()
    return window


def ready_job(invented: InventedShop, *panels: str) -> str:
    """A car with these panels measured and confirmed, its paint system known."""
    return invented.begin(("ready", panels), lambda: _ready_job(invented, panels))


def _ready_job(invented: InventedShop, panels: tuple[str, ...]) -> str:
    bench = invented.bench
    bench.do(shop.SetSetting("shop_name", "Invented Paintworks"))
    job = invented.job()
    for group in bench.job(job).groups:
        bench.do(surface.SetPaintSystem(job, group.id, "clear_over_colour"))
    session = invented.checked(job)
    bench.do(surface.SetState(job, panels, clean="wiped"))
    for panel in panels:
        for value in (118.0, 120.0, 117.0, 121.0, 119.0, 116.0):
            invented.clock.forward(seconds=4)
            bench.do(readings.RecordReading(job, panel, value))
    invented.clock.forward(minutes=1)
    bench.do(readings.RecordCheck(job, session, invented.zero, (0.1, 0.2, 0.0, 0.1, -0.1), again=True))
    bench.do(readings.RecordCheck(job, session, invented.foil, (102.0, 102.5, 101.8, 102.2, 102.1)))
    invented.clock.forward(minutes=1)
    return job


def judged_trial(
    invented: InventedShop,
    job: str,
    rung: int,
    cleared: str,
    finish: str,
    *,
    panel: str = "bonnet",
    on: str = "",
    **changed: object,
) -> Trial:
    """A trial of this rung of the shop's range, judged; ``changed``: what of its technique is another."""
    from detailbench.findings.trial_story import range_combinations

    group = invented.group(job, panel)
    combination = range_combinations(invented.picture(job), group.id)[rung]
    technique = {"dial": "middle", "force_word": "moderate", "passes": 4, "seconds": 60}
    technique |= {"section_w_mm": 350, "section_h_mm": 260, **changed}
    made = invented.bench.do(
        trials.RecordTrial(job, group.id, panel, combination.id, on_top_of=on, technique=technique)
    )
    invented.bench.do(trials.JudgeTrial(job, made.id, cleared, finish))
    return next(t for t in invented.picture(job).trials if t.id == made.id)


def adopted(invented: InventedShop, job: str) -> tuple[str, ...]:
    """One step adopted for the bonnet's group; the ids of its steps."""
    return invented.begin(("adopted", job), lambda: _adopted(invented, job))


def _adopted(invented: InventedShop, job: str) -> tuple[str, ...]:
    trial = judged_trial(invented, job, 4, "yes", "clear")
    group = invented.group(job)
    judged_trial(invented, job, 4, "yes", "clear", panel="roof")  # confirmed on a second panel
    invented.bench.do(work.AdoptProcess(job, group.id, [{"combination_id": trial.combination_id}]))
    return tuple(s.id for s in invented.picture(job).steps)


# reading and acting as a person does
def named(root: QWidget, name: str) -> QAbstractButton:
    """The visible button of this accessible name."""
    QApplication.processEvents()  # what was just added is shown in the next turn
    found = [b for b in root.findChildren(QAbstractButton) if b.isVisible() and b.accessibleName() == name]
    assert found, f"no visible button “{name}”"
    return found[0]


def click(root: QWidget, name: str) -> None:
    """Press the visible button of this accessible name with the mouse."""
    QTest.mouseClick(named(root, name), Qt.MouseButton.LeftButton)


def field(root: QWidget, name: str) -> QWidget:
    """The visible widget one types into of this accessible name."""
    QApplication.processEvents()
    found = [w for w in root.findChildren(QWidget) if w.isVisible() and w.accessibleName() == name]
    assert found, f"no visible field “{name}”"
    return found[-1]


def slowly(root: QWidget) -> None:
    """As if time had gone by since the last key: what looked like the start of a gauge's burst is let go."""
    window = root.window()
    assert isinstance(window, Window)
    window.bursts.let_go()


def strike(window: Window, keys: str) -> None:
    """Strike letters one after the other, wherever the focus is."""
    for sign in keys:
        QTest.keyClicks(QApplication.focusWidget() or window, sign)
        slowly(window)


def type_into(root: QWidget, name: str, text: str) -> None:
    """Put typing into a field, entered with Enter."""
    into = field(root, name)
    into.setFocus()
    QTest.keyClick(into, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    for sign in text:
        QTest.keyClicks(into, sign)
        slowly(root)
    QTest.keyClick(into, Qt.Key.Key_Return)


def pick(root: QWidget, list_name: str, start: str) -> None:
    """Tap the line of a list that begins with these words."""
    shown = field(root, list_name)
    assert isinstance(shown, QListWidget)
    item = next(shown.item(i) for i in range(shown.count()) if shown.item(i).text().startswith(start))
    shown.scrollToItem(item)
    at = shown.visualItemRect(item).center()
    QTest.mouseClick(shown.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(at.x(), at.y()))


def words(root: QWidget) -> str:
    """Every visible word of a part of the window."""
    told = [label.text() for label in root.findChildren(QLabel) if label.isVisible()]
    for shown in root.findChildren(QListWidget):
        if shown.isVisible():
            told += [shown.item(i).text() for i in range(shown.count())]
    told += [b.text() for b in root.findChildren(QAbstractButton) if b.isVisible()]
    return "\n".join(told)


def scrolls(window: Window) -> int:
    """How far the open card would have to be scrolled."""
    area = window.centre.card.stack.currentWidget()
    QApplication.processEvents()
    return int(area.verticalScrollBar().maximum())  # type: ignore[attr-defined]
