"""The panel map: taps, arrow keys, typed words, handles, zoom, and what a screen reader hears."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QAccessible, QImage, QPainter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from detailbench.body.edges import to_edges
from detailbench.body.names import panel_name
from detailbench.body.outlines import load_outline
from detailbench.body.where import in_direction
from detailbench.screens.app import application
from detailbench.screens.look.dress import Dress
from detailbench.screens.map.accessible import MapVoice
from detailbench.screens.map.colouring import Colouring, Drawing, DrawnPlace, PanelFill
from detailbench.screens.map.items import PanelItem
from detailbench.screens.map.over import Over
from detailbench.screens.map.taps import Taps
from detailbench.screens.map.view import PanelMap

ESTATE = load_outline("estate")


@pytest.fixture
def panel_map(qtbot: QtBot) -> PanelMap:
    application()
    made = PanelMap(Dress("bay"))
    qtbot.addWidget(made)
    made.resize(900, 760)
    with qtbot.waitExposed(made):
        made.show()
    made.show_outline(ESTATE)
    return made


def tap(panel_map: PanelMap, at: QPoint | QPointF) -> None:
    point = at if isinstance(at, QPoint) else at.toPoint()
    QTest.mouseClick(panel_map.viewport(), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, point)


@pytest.mark.parametrize("key", list(ESTATE.panels))
def test_a_tap_on_any_panel_or_its_handle_chooses_it(panel_map: PanelMap, qtbot: QtBot, key: str) -> None:
    with qtbot.waitSignal(panel_map.panel_chosen) as chosen:
        tap(panel_map, panel_map.point_of(key))
    assert chosen.args == [key]
    assert panel_map.chosen == key


def test_a_tap_gives_the_place_in_mm_on_the_panel(panel_map: PanelMap, qtbot: QtBot) -> None:
    x, y = ESTATE.panels["bonnet"].label
    with qtbot.waitSignal(panel_map.place_clicked) as placed:
        tap(panel_map, panel_map.view_point(x + 200, y - 100))
    assert placed.args is not None
    key, got_x, got_y = placed.args
    half_pixel = 0.75 / panel_map.scale_px
    assert key == "bonnet"
    assert got_x == pytest.approx(x + 200, abs=half_pixel)
    assert got_y == pytest.approx(y - 100, abs=half_pixel)


def test_a_tap_on_a_handle_chooses_without_naming_a_place(panel_map: PanelMap, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(panel_map.place_clicked):
        tap(panel_map, panel_map.point_of("pillar_b_l"))
    assert panel_map.chosen == "pillar_b_l"


def test_a_tap_on_a_bumpers_side_in_the_flank_is_a_place_on_the_bumper(panel_map: PanelMap, qtbot: QtBot) -> None:
    shape = next(c for c, _area in ESTATE.continuation_shapes if c.panel == "bumper_rear")
    xs = [p[0] for s in shape.path for p in s.points]
    ys = [p[1] for s in shape.path for p in s.points]
    middle = (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2
    with qtbot.waitSignal(panel_map.place_clicked) as placed:
        tap(panel_map, panel_map.view_point(*middle))
    assert placed.args is not None
    key, x, y = placed.args
    assert key == "bumper_rear"
    position = to_edges(ESTATE.panels["bumper_rear"], x, y)
    assert 0 <= position.a_mm <= position.panel_h_mm
    assert 0 <= position.b_mm <= position.panel_w_mm


def test_a_tap_beside_the_car_changes_nothing(panel_map: PanelMap, qtbot: QtBot) -> None:
    panel_map.choose("roof")
    with qtbot.assertNotEmitted(panel_map.panel_chosen):
        tap(panel_map, QPoint(4, 4))
    assert panel_map.chosen == "roof"


def test_a_second_tap_on_the_same_place_takes_the_next_panel_and_comes_round() -> None:
    taps = Taps()
    flap = ESTATE.panels["fuel_flap"]
    at = (flap.bounds[0] - 30, (flap.bounds[1] + flap.bounds[3]) / 2)
    got = [taps.panel(ESTATE, *at, px_per_mm=0.1, target_px=45) for _tap in range(8)]
    assert got[:2] == ["quarter_rear_r", "fuel_flap"]
    once_round = len(set(got))
    assert got == (got[:once_round] * 8)[:8]
    assert taps.panel(ESTATE, *ESTATE.panels["roof"].label, px_per_mm=0.1, target_px=45) == "roof"
    assert taps.panel(ESTATE, *at, px_per_mm=0.1, target_px=45) == "quarter_rear_r"


def test_two_taps_in_the_middle_of_a_large_panel_stay_on_it() -> None:
    taps = Taps()
    at = ESTATE.panels["bonnet"].label
    assert [taps.panel(ESTATE, *at, px_per_mm=0.1, target_px=45) for _tap in range(3)] == ["bonnet"] * 3


def test_a_large_neighbour_is_never_offered_for_a_tap_beside_it() -> None:
    taps = Taps()
    roof = ESTATE.panels["roof"]
    at = ((roof.bounds[0] + roof.bounds[2]) / 2, roof.bounds[3] - 20)
    got = {taps.panel(ESTATE, *at, px_per_mm=0.1, target_px=45) for _tap in range(4)}
    assert "roof" in got
    assert "tailgate" not in got


@pytest.mark.parametrize("direction", ["up", "down", "left", "right"])
def test_arrow_keys_move_in_the_drawings_plane(panel_map: PanelMap, direction: str) -> None:
    keys = {"up": Qt.Key.Key_Up, "down": Qt.Key.Key_Down, "left": Qt.Key.Key_Left, "right": Qt.Key.Key_Right}
    panel_map.choose("roof")
    QTest.keyClick(panel_map, keys[direction])
    expected = in_direction(ESTATE, "roof", direction)  # type: ignore[arg-type]
    assert panel_map.chosen == expected != "roof"


def test_the_first_arrow_key_begins_at_the_bonnet(panel_map: PanelMap) -> None:
    QTest.keyClick(panel_map, Qt.Key.Key_Down)
    assert panel_map.chosen == "bonnet"


def test_a_place_can_be_chosen_by_keys_alone_and_never_leaves_the_panel(panel_map: PanelMap, qtbot: QtBot) -> None:
    panel_map.choose("bonnet")
    QTest.keyClick(panel_map, Qt.Key.Key_Return)
    for _step in range(3):
        QTest.keyClick(panel_map, Qt.Key.Key_Right)
    QTest.keyClick(panel_map, Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier)
    with qtbot.waitSignal(panel_map.place_clicked) as placed:
        QTest.keyClick(panel_map, Qt.Key.Key_Return)
    x, y = ESTATE.panels["bonnet"].label
    assert placed.args == ["bonnet", pytest.approx(x + 150), pytest.approx(y - 10)]
    QTest.keyClick(panel_map, Qt.Key.Key_Return)
    for _step in range(40):
        QTest.keyClick(panel_map, Qt.Key.Key_Right)
    assert panel_map.cross is not None
    assert panel_map.cross.x_mm <= ESTATE.panels["bonnet"].bounds[2]
    QTest.keyClick(panel_map, Qt.Key.Key_Escape)
    assert panel_map.cross is None


def test_the_whole_car_and_every_handle_is_seen_at_first(panel_map: PanelMap) -> None:
    room = panel_map.viewport().rect().toRectF()
    for key, item in panel_map.items_by_key.items():
        assert room.contains(panel_map.viewportTransform().mapRect(item.shape().boundingRect())), key
    for key, box in panel_map.handle_boxes().items():
        assert room.contains(box), key


@pytest.mark.parametrize("look", ["bay", "desk"])
@pytest.mark.parametrize("width", [640, 784, 1300])
def test_handles_never_lie_on_one_another(panel_map: PanelMap, look: str, width: int) -> None:
    panel_map._dress.wear(panel_map, look)  # type: ignore[arg-type]
    panel_map.resize(width, 620)
    panel_map.show_colouring(Colouring("c", "c", {k: PanelFill(0.5, "", "118.5") for k in ESTATE.panels}))
    boxes = list(panel_map.handle_boxes().values())
    assert boxes
    for i, box in enumerate(boxes):
        assert not any(box.intersects(other) for other in boxes[i + 1 :])


def test_zooming_keeps_the_point_under_the_hand(panel_map: PanelMap) -> None:
    x, y = ESTATE.panels["door_front_l"].label
    before = panel_map.view_point(x, y)
    panel_map.zoom(3.0, before)
    after = panel_map.view_point(x, y)
    assert (after - before).manhattanLength() < 2.5
    scale = panel_map.scale_px
    QTest.keyClick(panel_map, Qt.Key.Key_0)
    assert panel_map.scale_px == pytest.approx(scale / 3)


def test_plus_and_minus_zoom_and_minus_never_goes_beyond_the_whole_car(panel_map: PanelMap) -> None:
    whole = panel_map.scale_px
    QTest.keyClick(panel_map, Qt.Key.Key_Minus)
    assert panel_map.scale_px == pytest.approx(whole)
    QTest.keyClick(panel_map, Qt.Key.Key_Plus)
    assert panel_map.scale_px > whole


def test_a_chosen_panel_out_of_sight_is_brought_into_sight(panel_map: PanelMap) -> None:
    panel_map.zoom(5.0, panel_map.view_point(*ESTATE.panels["bonnet"].label))
    panel_map.choose("bumper_rear")
    box = panel_map.viewportTransform().mapRect(panel_map.items_by_key["bumper_rear"].shape().boundingRect())
    assert panel_map.viewport().rect().contains(box.center().toPoint())


def test_the_car_moves_out_from_under_the_card(panel_map: PanelMap) -> None:
    panel_map.set_covered(300)
    right = panel_map.viewport().width() - 300
    for key, box in panel_map.handle_boxes().items():
        assert box.right() < right, key


def test_a_panels_words_stand_clear_of_its_places(panel_map: PanelMap) -> None:
    item = panel_map.items_by_key["roof"]
    x, y = item.part.label
    glass = QImage(panel_map.viewport().size(), QImage.Format.Format_RGB32)
    painter = QPainter(glass)
    with_none, with_one = Stood(painter, panel_map), Stood(painter, panel_map)
    with_none.names([item])
    with_one.names([item], places=[DrawnPlace("roof", 1, x, y)])
    painter.end()
    assert with_none.at == [panel_map.view_point(x, y)]
    (moved,) = with_one.at
    assert abs(moved.y() - panel_map.view_point(x, y).y()) > 15


class Stood(Over):
    """Keeps where the words of each panel stand."""

    def __init__(self, painter: QPainter, panel_map: PanelMap) -> None:
        super().__init__(painter, Dress("bay"), panel_map.viewportTransform())
        self.at: list[QPointF] = []

    def _lines(self, item: PanelItem, at: QPointF, name: str, room: QRectF, upright: bool) -> None:
        self.at.append(at)


def test_a_colouring_shows_on_the_glass(panel_map: PanelMap) -> None:
    at = panel_map.view_point(*ESTATE.panels["roof"].label).toPoint() + QPoint(0, 60)
    plain = panel_map.grab().toImage().pixelColor(at)
    panel_map.show_colouring(Colouring("c", "c", {"roof": PanelFill(1.0)}))
    filled = panel_map.grab().toImage().pixelColor(at)
    assert filled.lightness() > plain.lightness() + 60


class Counted(PanelMap):
    """Counts how often the car is drawn."""

    drawn = 0

    def drawForeground(self, painter: QPainter, rect: QRectF | QRect) -> None:
        self.drawn += 1
        super().drawForeground(painter, rect)


@pytest.fixture
def counted(qtbot: QtBot) -> Counted:
    application()
    made = Counted(Dress("bay"))
    qtbot.addWidget(made)
    made.resize(900, 760)
    with qtbot.waitExposed(made):
        made.show()
    made.show_outline(ESTATE)
    made.grab()
    return made


def test_what_comes_and_goes_over_the_car_does_not_have_it_drawn_again(counted: Counted) -> None:
    before, drawn = counted.grab().toImage(), counted.drawn
    over = QWidget(counted.viewport())
    over.resize(counted.size())
    over.show()
    QApplication.processEvents()
    over.hide()
    QApplication.processEvents()
    counted.choose("")
    counted.show_drawing(Drawing())
    counted.show_colouring(Colouring("c", "c"))
    assert counted.grab().toImage() == before
    assert counted.drawn == drawn > 0


CHANGES: dict[str, Callable[[Counted], object]] = {
    "chosen": lambda m: m.choose("roof"),
    "colouring": lambda m: m.show_colouring(Colouring("c", "c", {"roof": PanelFill(1.0)})),
    "places": lambda m: m.show_drawing(Drawing(places=(DrawnPlace("roof", 1, *ESTATE.panels["roof"].label),))),
    "pointed at": lambda m: QTest.mouseMove(m.viewport(), m.view_point(*ESTATE.panels["roof"].label).toPoint()),
    "closer": lambda m: m.zoom(1.5),
    "covered": lambda m: m.set_covered(300),
    "smaller": lambda m: m.resize(700, 560),
    "cross": lambda m: QTest.keyClick(m, Qt.Key.Key_Return),
    "cross moved": lambda m: QTest.keyClick(m, Qt.Key.Key_Left),
    "no car": lambda m: m.show_outline(None),
    "longer car": lambda m: m.show_outline(load_outline("estate", 5000)),
}


@pytest.mark.parametrize("change", CHANGES)
def test_whatever_changes_on_the_car_is_on_the_glass_by_itself(counted: Counted, qtbot: QtBot, change: str) -> None:
    if change.startswith("cross"):
        counted.choose("roof")
    if change == "cross moved":
        QTest.keyClick(counted, Qt.Key.Key_Return)
    painted: list[bool] = []
    QApplication.processEvents()
    before = counted.grab().toImage()
    watch = Painted(painted, counted)
    CHANGES[change](counted)
    qtbot.waitUntil(lambda: bool(painted))
    watch.deleteLater()
    assert counted.grab().toImage() != before


class Painted(QObject):
    """Hears that a map's glass was painted."""

    def __init__(self, painted: list[bool], on: PanelMap) -> None:
        super().__init__(on)
        self._painted = painted
        on.viewport().installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.Paint:
            self._painted.append(True)
        return False


def test_another_look_is_drawn_anew(counted: Counted) -> None:
    before = counted.grab().toImage()
    counted._dress.wear(counted, "desk")
    assert counted.grab().toImage() != before


def test_a_screen_reader_hears_every_panel_with_what_is_known(panel_map: PanelMap) -> None:
    panel_map.show_colouring(Colouring("c", "c", {"bonnet": PanelFill(0.5, "", "118", "mean 118 µm")}))
    panel_map.choose("bonnet")
    voice = QAccessible.queryAccessibleInterface(panel_map)
    assert isinstance(voice, MapVoice)
    heard = [voice.child(i) for i in range(voice.childCount())]
    names = [h.text(QAccessible.Text.Name) for h in heard if h is not None]
    assert names == [panel_name(k) for k in ESTATE.panels]
    bonnet = heard[names.index("bonnet")]
    assert bonnet is not None
    assert bonnet.text(QAccessible.Text.Description) == "bonnet: mean 118 µm"
    assert bonnet.state().selected
    assert panel_map.viewport().rect().contains(panel_map.viewport().mapFromGlobal(bonnet.rect().center()))
    assert voice.indexOfChild(bonnet) == names.index("bonnet")
