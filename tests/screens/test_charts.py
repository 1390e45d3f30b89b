"""The charts: what is drawn is what was handed in, nothing can turn or zoom it, and the same is said in words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pyqtgraph as pg
import pytest
from invented_charts import OTHERS, pairs, places, scatter, times
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QScrollArea, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from detailbench.basics.even_marks import thickness_ticks
from detailbench.basics.numbers import show_thickness_in
from detailbench.screens.charts.before_after import BeforeAfter
from detailbench.screens.charts.chart import Chart
from detailbench.screens.charts.panel_scatter import PanelScatter
from detailbench.screens.charts.time_chart import TimePlannedDone
from detailbench.screens.charts.values import BeforeAfterValues, PanelScatterValues, TimeValues
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.looks import LookKey

LOOKS: tuple[LookKey, ...] = ("bay", "desk")
KINDS = (PanelScatter, BeforeAfter, TimePlannedDone)
VALUES = {PanelScatter: scatter, BeforeAfter: pairs, TimePlannedDone: times}
SIZES = ((420, 290), (900, 500))


@pytest.fixture
def in_mil() -> Iterator[None]:
    show_thickness_in("mil")
    yield
    show_thickness_in("um")


def shown(qtbot: QtBot, kind: Any, values: Any = None, look: LookKey = "bay", size: tuple[int, int] = SIZES[0]) -> Any:
    """A chart of this kind on the glass with its invented values."""
    chart = kind(Dress(look))
    qtbot.addWidget(chart)
    chart.show_values(VALUES[kind]() if values is None else values)
    chart.resize(*size)
    with qtbot.waitExposed(chart):
        chart.show()
    QApplication.processEvents()
    return chart


def spots(plot: pg.PlotWidget) -> list[tuple[float, float, str]]:
    """Every dot: where it stands and its sign."""
    found = []
    for item in plot.getPlotItem().items:
        if isinstance(item, pg.ScatterPlotItem):
            found += [(s.pos().x(), s.pos().y(), s.symbol()) for s in item.points()]
    return found


def written(plot: pg.PlotWidget) -> list[pg.TextItem]:
    return [i for i in plot.getPlotItem().items if isinstance(i, pg.TextItem)]


def view(plot: pg.PlotWidget) -> list[list[float]]:
    return [list(side) for side in plot.viewRange()]


# what is drawn
def test_every_place_of_the_panel_and_its_twin_is_a_dot_at_its_value(qtbot: QtBot) -> None:
    chart = shown(qtbot, PanelScatter)
    drawn = sorted(y for _x, y, _sign in spots(chart.plot))
    for panel in scatter().panels[:2]:
        for dot in panel.dots:
            assert any(abs(y - dot.value_um) < 1e-9 for y in drawn), dot


def test_the_same_job_always_looks_the_same(qtbot: QtBot) -> None:
    one, other = shown(qtbot, PanelScatter), shown(qtbot, PanelScatter)
    assert spots(one.plot) == spots(other.plot)


def test_places_stand_from_left_to_right_in_walking_order(qtbot: QtBot) -> None:
    values = PanelScatterValues((places("bonnet", "this", 118.0),), "before any work")
    drawn = spots(shown(qtbot, PanelScatter, values).plot)
    assert [y for _x, y, _s in sorted(drawn)] == [d.value_um for d in values.panels[0].dots]


def test_signs_tell_apart_without_colour(qtbot: QtBot) -> None:
    first, twin, *rest = scatter().panels
    aside = replace(twin, dots=(replace(twin.dots[0], set_aside=True), *twin.dots[1:]))
    chart = shown(qtbot, PanelScatter, PanelScatterValues((first, aside, *rest), ""))
    signs = {y: sign for _x, y, sign in spots(chart.plot)}
    plain, odd, of_twin, set_aside = (
        signs[d.value_um] for d in (first.dots[0], first.dots[3], aside.dots[1], aside.dots[0])
    )
    assert len({plain, odd, of_twin, set_aside}) == 4


def test_a_panel_far_off_does_not_squash_the_rest_and_is_an_arrow_at_the_rim(qtbot: QtBot) -> None:
    chart = shown(qtbot, PanelScatter)
    low, high = view(chart.plot)[1]
    assert high < 200
    assert sum(1 for _x, y, sign in spots(chart.plot) if sign == "t1" and low < y < high) == 8
    assert "beyond the rim" in chart.key.text()


def test_a_panel_chosen_that_is_itself_far_off_is_drawn_at_its_values(qtbot: QtBot) -> None:
    far = PanelScatterValues((places("right rear door", "this", 231.0), *scatter().panels[2:5]), "")
    chart = shown(qtbot, PanelScatter, far)
    assert not [sign for _x, _y, sign in spots(chart.plot) if sign in ("t", "t1")]


def test_a_lower_bound_is_cut_off_as_its_sentence_is(qtbot: QtBot) -> None:
    first, *rest = scatter().panels
    chart = shown(qtbot, PanelScatter, PanelScatterValues((replace(first, lower_bound_um=104.9), *rest), ""))
    assert next(n.text for n in chart._axis._names) == "left front door\n— 115\n- - 104"
    assert "lower bound 104" in chart.words()


def test_mean_and_lower_bound_stand_in_figures(qtbot: QtBot) -> None:
    chart = shown(qtbot, PanelScatter)
    names = [n.text for n in chart._axis._names]
    assert names[0] == "left front door\n— 115\n- - 104"
    assert names[2:] == [f"{n} {231 if n == 'rear door R' else 116}" for n in OTHERS]


def test_a_pair_is_a_ring_and_a_square_joined(qtbot: QtBot) -> None:
    drawn = spots(shown(qtbot, BeforeAfter).plot)
    for i, pair in enumerate(pairs().pairs[:7]):
        assert (i, pair.before_um, "o") in drawn
        assert (i, pair.after_um, "s") in drawn


def test_a_place_that_is_not_compared_is_a_cross(qtbot: QtBot) -> None:
    chart = shown(qtbot, BeforeAfter)
    assert (7, 119.0, "x") in spots(chart.plot)
    assert "not compared" in chart.key.text()


def test_the_mean_difference_stands_with_its_interval_against_nought(qtbot: QtBot) -> None:
    chart = shown(qtbot, BeforeAfter)
    assert [t.toPlainText() for t in written(chart.removed_plot)] == ["0", "3.2", "2.5", "1.8"]
    low, high = view(chart.removed_plot)[1]
    assert low < 0 < high


@pytest.mark.parametrize("said", ["not distinguishable from zero (less than 1.7 µm)", "Not comparable: another gauge."])
def test_what_cannot_be_told_is_said_under_the_chart(qtbot: QtBot, said: str) -> None:
    values = replace(pairs(), removed_um=None, low_um=None, high_um=None, outcome="not comparable", sentence=said)
    chart = shown(qtbot, BeforeAfter, values)
    assert chart.said.isVisible()
    assert chart.said.text() == said
    assert not chart.removed_plot.isVisible()


def test_bars_are_as_long_as_the_minutes(qtbot: QtBot) -> None:
    chart = shown(qtbot, TimePlannedDone)
    bars = [i.opts for i in chart.plot.getPlotItem().items if isinstance(i, pg.BarGraphItem)]
    assert [b["width"][0] for b in bars] == [30.0, 41.0, 40.0, 12.0, 20.0, 18.0]
    words = [t.toPlainText() for t in written(chart.plot)]
    assert words == ["41 of 30 min", "12 of 40 min", "20 min", "time not known, 18 min planned"]


def test_what_is_under_way_is_hatched(qtbot: QtBot) -> None:
    chart = shown(qtbot, TimePlannedDone)
    done = [i.opts for i in chart.plot.getPlotItem().items if isinstance(i, pg.BarGraphItem)]
    styles = [b["brush"].style() for b in done]
    assert styles[1] == Qt.BrushStyle.SolidPattern
    assert styles[3] == Qt.BrushStyle.BDiagPattern


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_yet_is_said_and_no_empty_axes_are_drawn(qtbot: QtBot, kind: Any) -> None:
    empty = {PanelScatter: PanelScatterValues((), ""), BeforeAfter: None, TimePlannedDone: TimeValues((), 0.0)}
    chart = kind(Dress("bay"))
    qtbot.addWidget(chart)
    chart.show_values(empty[kind])
    with qtbot.waitExposed(chart):
        chart.show()
    assert not chart.plot.isVisible()
    assert chart.said.isVisible()
    assert chart.said.text() == chart.words() == chart.accessibleDescription()


# both looks, any size
@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("look", LOOKS)
@pytest.mark.parametrize("kind", KINDS)
def test_what_is_written_stays_inside_the_plot(qtbot: QtBot, kind: Any, look: LookKey, size: tuple[int, int]) -> None:
    chart = shown(qtbot, kind, look=look, size=size)
    plots = [chart.plot] + ([chart.removed_plot] if isinstance(chart, BeforeAfter) else [])
    for plot in plots:
        room = plot.rect().adjusted(-1, -1, 1, 1)
        for text in written(plot):
            box = plot.mapFromScene(text.sceneBoundingRect()).boundingRect()
            assert room.left() <= box.left(), text.toPlainText()
            assert box.right() <= room.right(), text.toPlainText()


@pytest.mark.parametrize("kind", KINDS)
def test_a_change_of_look_draws_anew(qtbot: QtBot, kind: Any) -> None:
    host = QWidget()
    qtbot.addWidget(host)
    dress = Dress("bay")
    chart = kind(dress)
    QVBoxLayout(host).addWidget(chart)
    chart.show_values(VALUES[kind]())
    dress.wear(host, "desk")
    assert chart.plot.backgroundBrush().color() == QColor(dress.look.palette.well)
    assert QColor(dress.look.palette.ink) in [t.color for t in written(chart.plot)]


# fixed
@pytest.mark.parametrize("kind", KINDS)
def test_the_wheel_scrolls_what_the_chart_stands_in_and_never_the_chart(qtbot: QtBot, kind: Any) -> None:
    area, inner = QScrollArea(), QWidget()
    qtbot.addWidget(area)
    chart = kind(Dress("bay"))
    chart.show_values(VALUES[kind]())
    chart.setMinimumHeight(600)
    QVBoxLayout(inner).addWidget(chart)
    area.setWidgetResizable(True)
    area.setWidget(inner)
    area.resize(440, 300)
    with qtbot.waitExposed(area):
        area.show()
    before = view(chart.plot)
    QTest.wheelEvent(area.windowHandle(), QPointF(200, 150), QPoint(0, -120))
    QApplication.processEvents()
    assert area.verticalScrollBar().value() > 0
    assert view(chart.plot) == before


@pytest.mark.parametrize("kind", KINDS)
def test_a_drag_and_the_right_button_do_nothing(qtbot: QtBot, kind: Any) -> None:
    chart = shown(qtbot, kind)
    before = view(chart.plot)
    middle = chart.plot.geometry().center()
    for button in (Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton):
        target = chart.childAt(middle) or chart
        QTest.mousePress(target, button, pos=middle)
        QTest.mouseMove(target, middle + QPoint(60, 40))
        QTest.mouseRelease(target, button, pos=middle + QPoint(60, 40))
    assert view(chart.plot) == before
    assert QApplication.activePopupWidget() is None


@pytest.mark.parametrize("kind", KINDS)
def test_no_part_of_a_chart_takes_the_focus(qtbot: QtBot, kind: Any) -> None:
    chart = shown(qtbot, kind)
    stops = [w for w in chart.findChildren(QWidget) if w.focusPolicy() & Qt.FocusPolicy.TabFocus and w.isVisible()]
    assert stops == []


# in words
@pytest.mark.parametrize("kind", KINDS)
def test_the_ear_hears_what_the_eye_sees(qtbot: QtBot, kind: Any) -> None:
    chart: Chart = shown(qtbot, kind)
    assert chart.accessibleName()
    assert chart.accessibleDescription() == chart.words()


def test_the_words_of_the_scatter_name_every_place_the_mean_and_the_bound(qtbot: QtBot) -> None:
    said = shown(qtbot, PanelScatter).words()
    assert "place 4: 98.0 (stands out)" in said
    assert "mean 115.2; lower bound 104" in said
    assert "Its twin, right front door: place 1: 121.3" in said
    assert "rear door R: mean 231, from 227 to 236." in said


def test_the_words_of_before_and_after_name_every_pair_and_the_finding(qtbot: QtBot) -> None:
    said = shown(qtbot, BeforeAfter).words()
    assert "Place 1: 118.0 before, 115.5 after." in said
    assert "Place 8: not comparable, no reading after." in said
    assert said.endswith("removed 2.5 µm (1.8 to 3.2, 95 %)")


def test_the_words_of_the_time_name_every_panel_and_what_is_left(qtbot: QtBot) -> None:
    said = shown(qtbot, TimePlannedDone).words()
    assert "roof: 12 of 40 min, under way." in said
    assert "left front wing: time not known, 18 min planned, finished." in said
    assert said.endswith("Planned and not done yet: 48\u00a0min.")


# mil
def test_thickness_is_shown_in_the_unit_chosen(qtbot: QtBot, in_mil: None) -> None:
    chart = shown(qtbot, PanelScatter)
    assert chart.key.text().startswith("mil")
    assert "place 1: 4.65" in chart.words()
    changed: BeforeAfterValues = pairs()
    assert "Place 1: 4.65 before, 4.55 after." in shown(qtbot, BeforeAfter, changed).words()


def test_marks_of_the_axis_are_even_in_mil_too(in_mil: None) -> None:
    assert [words for _um, words in thickness_ticks(99.0, 130.0)] == ["4.00", "4.50", "5.00"]


def test_marks_of_the_axis_are_even_in_micrometres() -> None:
    assert thickness_ticks(99.0, 130.0) == [(100.0, "100"), (110.0, "110"), (120.0, "120"), (130.0, "130")]
