"""Both cards fit the smallest screen in both looks, can be reached by Tab, and say what each control is."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from bay_hand import Bay, invented, prepared
from invented_shop import InventedShop
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QAbstractItemView, QApplication, QLineEdit, QScrollArea, QWidget
from pytestqt.qtbot import QtBot

from detailbench.moves.marks import RecordMark
from detailbench.moves.surface import SetState
from detailbench.screens.entry.tabs import Tabs
from detailbench.screens.look.looks import LookKey

__all__ = ["invented", "prepared"]


@pytest.fixture(params=["bay", "desk"])
def bay(
    request: pytest.FixtureRequest, invented: InventedShop, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Bay]:
    """A job with marks, readings and a failed comparison, in one look after the other."""
    look: LookKey = request.param
    made = Bay(invented, qtbot, monkeypatch, look, invented.begin("marks and readings", lambda: full_job(invented)))
    yield made
    made.window.close()


def full_job(invented: InventedShop) -> str:
    job = invented.job()
    lamp = invented.bench.shop().lamps[0].id
    invented.measured(job, values=(118.0, 119.0, 118.0, 4.6, 118.0, 119.0, 118.0, 190.0))
    for kind, severity, depth in (("swirl", 3, None), ("chip", 2, 4), ("scratch_single", 4, 2), ("bird_etch", 2, 2)):
        invented.bench.do(RecordMark(job, "bonnet", kind, severity, depth=depth, lamp_id=lamp))
    return job


def tabs_of(bay: Bay, stage: str) -> Tabs:
    bay.open(stage)
    bay.window.context.select_panel("bonnet")
    card = bay.window.centre.card.card
    assert card is not None
    found = card.findChild(Tabs)
    assert found is not None
    return found


def page_scrolls(bay: Bay) -> bool:
    around = bay.window.centre.card.stack.currentWidget()
    assert isinstance(around, QScrollArea)
    return around.verticalScrollBar().isVisible()


def settle() -> None:
    for _turn in range(5):
        QApplication.processEvents()


@pytest.mark.parametrize("stage", ["marks", "thickness"])
def test_no_part_of_a_card_makes_the_page_scroll(bay: Bay, stage: str) -> None:
    tabs = tabs_of(bay, stage)
    for key in tabs.buttons:
        tabs.open_tab(key)
        settle()
        assert not page_scrolls(bay), key


def test_the_open_questions_of_a_mark_fit_as_well(bay: Bay) -> None:
    tabs = tabs_of(bay, "marks")
    tabs.open_tab("enter")
    for keys in ("w", "2", "⎋o", "⎋"):
        bay.keys(keys)
        settle()
        assert not page_scrolls(bay), keys
    assert bay.marks.card is not None
    tabs.open_tab("list")
    bay.marks.card.marks.open_detail()
    settle()
    assert not page_scrolls(bay)
    bay.shop.bench.do(SetState(bay.job, ("bonnet",), work="polished"))
    tabs.open_tab("enter")
    settle()
    assert not page_scrolls(bay)


def controls(card: QWidget) -> list[QWidget]:
    kinds = (QAbstractButton, QLineEdit, QAbstractItemView)
    return [w for w in card.findChildren(QWidget) if isinstance(w, kinds) and w.isVisible()]


@pytest.mark.parametrize("stage", ["marks", "thickness"])
def test_every_control_has_a_name_and_none_stands_twice(bay: Bay, stage: str) -> None:
    tabs = tabs_of(bay, stage)
    card = bay.window.centre.card.card
    assert card is not None
    for key in tabs.buttons:
        tabs.open_tab(key)
        settle()
        names = [w.accessibleName() for w in controls(card)]
        assert all(names), key
        assert len(set(names)) == len(names), sorted(names)


@pytest.mark.parametrize("stage", ["marks", "thickness"])
def test_tab_leads_to_every_control_of_the_card(bay: Bay, stage: str) -> None:
    tabs = tabs_of(bay, stage)
    card = bay.window.centre.card.card
    assert card is not None
    for key in tabs.buttons:
        tabs.open_tab(key)
        settle()
        wanted = {w for w in controls(card) if w.isEnabled() and w.focusPolicy() & Qt.FocusPolicy.TabFocus}
        assert wanted
        reached: set[QWidget] = set()
        for _stop in range(120):
            bay.window.focusNextPrevChild(True)
            now = QApplication.focusWidget()
            if now in wanted and now in reached:
                break
            if now is not None:
                reached.add(now)
        assert wanted <= reached, [w.accessibleName() for w in wanted - reached]


@pytest.mark.parametrize("stage", ["marks", "thickness"])
def test_everything_to_press_is_a_whole_target(bay: Bay, stage: str) -> None:
    tabs = tabs_of(bay, stage)
    card = bay.window.centre.card.card
    assert card is not None
    target = bay.window.dress.look.measure.target
    for key in tabs.buttons:
        tabs.open_tab(key)
        settle()
        small = [
            (w.accessibleName(), w.size())
            for w in controls(card)
            if isinstance(w, QAbstractButton) and (w.height() < target - 1 or w.width() < target - 1)
        ]
        assert small == [], key
