"""A gauge on a line of its own, played on a pseudo-terminal: noise, half lines, unplugging, old values, two gauges."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from bay_hand import Bay, bay, invented, plain, prepared

from detailbench.findings.walking import panel_places
from detailbench.moves.gauge_lines import SetGaugeLine
from detailbench.moves.readings import StartSession
from detailbench.moves.shop import AddToShop
from detailbench.thickness.gauge_line import GaugeLine, LineForm

__all__ = ["bay", "invented", "prepared"]


def pseudo_terminals() -> bool:
    """Whether this system hands any out: not on Windows, nor in a sandbox that mounts none."""
    try:
        ends = os.openpty()
    except (AttributeError, OSError):
        return False
    for end in ends:
        os.close(end)
    return True


pytestmark = pytest.mark.skipif(not pseudo_terminals(), reason="this system has no pseudo-terminals")


class Device:
    """An invented gauge at a port that can be pulled out and put in again."""

    def __init__(self, port: Path) -> None:
        self.port = port
        self._ends: list[int] = []

    def plug_in(self) -> None:
        import tty  # not there on Windows

        ours, theirs = os.openpty()
        tty.setraw(theirs)
        self._ends = [ours, theirs]
        self.port.unlink(missing_ok=True)
        self.port.symlink_to(os.ttyname(theirs))

    def pull_out(self) -> None:
        self.port.unlink(missing_ok=True)
        for end in self._ends:
            os.close(end)
        self._ends = []

    def send(self, data: bytes) -> None:
        os.write(self._ends[0], data)


@pytest.fixture
def device(tmp_path: Path) -> Iterator[Device]:
    made = Device(tmp_path / "invented-port")
    made.plug_in()
    yield made
    made.pull_out()


@pytest.fixture
def plugged(bay: Bay, device: Device) -> Bay:
    """The walk stands on the bonnet, the gauge is in hand and at its port."""
    bay.shop.checked(bay.job)
    bay.open("thickness")
    bay.click("Walk")
    bay.click_map("bonnet")
    bay.shop.bench.do(SetGaugeLine(bay.shop.gauge, GaugeLine(str(device.port))))
    there(bay)
    return bay


def there(bay: Bay) -> None:
    bay.qtbot.waitUntil(lambda: "invented gauge: there" in bay.window.strip.gauge.whole)


def away(bay: Bay) -> None:
    bay.qtbot.waitUntil(lambda: "invented gauge: away" in bay.window.strip.gauge.whole)


def values(bay: Bay, panel: str = "bonnet") -> list[float | None]:
    picture = bay.picture
    return [r.value_um for p in panel_places(picture, panel) for r in picture.readings if r.place_id == p.id]


def waiting(bay: Bay) -> list[str]:
    return [w.text for w in bay.shop.bench.shop().waiting]


def until(bay: Bay, count: int) -> None:
    bay.qtbot.waitUntil(lambda: len(values(bay)) + len(waiting(bay)) == count)


def test_a_value_sent_lands_on_the_walk_whatever_has_the_focus(plugged: Bay, device: Device) -> None:
    bay = plugged
    assert bay.thickness.card is not None
    line = bay.thickness.card.walk.entry.field.line
    line.setFocus()
    bay.keys("12")
    device.send(b"118.5\r\n")
    until(bay, 1)
    assert values(bay) == [118.5]
    assert bay.picture.readings[0].source == "gauge"
    assert line.text() == "12"
    assert bay.said == "bonnet 1: 118.5 µm"


def test_from_another_stage_it_says_where_it_landed_and_one_undo_takes_it_back(plugged: Bay, device: Device) -> None:
    bay = plugged
    bay.open("marks")
    device.send(b"118\r\n")
    until(bay, 1)
    assert bay.said == "bonnet 1: 118 µm, from Marks"
    bay.click("Undo the last entry")
    assert values(bay) == []


def test_the_devices_own_mark_leaves_no_doubt_and_mil_is_read_as_mil(plugged: Bay, device: Device) -> None:
    bay = plugged
    form = LineForm("semicolon", 2, 3, decimal=",")
    bay.shop.bench.do(SetGaugeLine(bay.shop.gauge, GaugeLine(str(device.port), form=form)))
    there(bay)
    device.send(b"1;1118,125;um\r\n")
    until(bay, 1)
    device.send(b"2;4,655;mil\r\n")
    until(bay, 2)
    assert values(bay) == [1118.125, pytest.approx(4.655 * 25.4)]


def test_half_a_line_waits_for_its_rest(plugged: Bay, device: Device) -> None:
    bay = plugged
    device.send(b"11")
    bay.qtbot.wait(50)
    assert values(bay) == []
    device.send(b"8\r\n")
    until(bay, 1)
    assert values(bay) == [118.0]


def test_noise_is_not_taken_for_a_value_and_what_might_be_one_waits(plugged: Bay, device: Device) -> None:
    bay = plugged
    device.send(b"\xff\xfe\x00\x07\r\n1\x008\r\n")
    until(bay, 2)
    assert values(bay) == []
    assert "no gauge writes" in bay.shop.bench.shop().waiting[-1].why
    bay.qtbot.wait(600)
    device.send(b"118\r\n")
    until(bay, 3)
    assert values(bay) == [118.0]


def test_what_goes_on_unreadable_is_said_once_and_not_kept_for_ever(plugged: Bay, device: Device) -> None:
    bay = plugged
    device.send(b"\x01\x02\x05\x06\n" * 200)
    bay.qtbot.waitUntil(lambda: "goes on sending what cannot be read" in bay.said)
    assert len(waiting(bay)) == 8
    bay.qtbot.wait(600)
    device.send(b"118\n")
    until(bay, 9)
    assert values(bay) == [118.0]


def test_a_gauge_pulled_out_is_said_and_found_again_by_itself(plugged: Bay, device: Device) -> None:
    bay = plugged
    device.send(b"118\r\n11")
    until(bay, 1)
    device.pull_out()
    away(bay)
    assert waiting(bay) == ["11"]
    assert "away" in bay.said
    device.plug_in()
    there(bay)
    bay.qtbot.wait(600)
    device.send(b"119\r\n")
    until(bay, 3)
    assert values(bay) == [118.0, 119.0]


def test_thirty_old_values_sent_again_after_a_break_wait_in_the_tray(plugged: Bay, device: Device) -> None:
    bay = plugged
    device.send(b"118\r\n")
    until(bay, 1)
    device.pull_out()
    away(bay)
    device.plug_in()
    there(bay)
    bay.qtbot.wait(600)
    device.send(b"".join(f"{n}\r\n".encode() for n in range(100, 130)))
    until(bay, 31)
    assert values(bay) == [118.0]
    assert waiting(bay) == [str(n) for n in range(100, 130)]
    assert "30 values arrived at once" in bay.said


def test_no_value_is_no_value(plugged: Bay, device: Device) -> None:
    bay = plugged
    form = LineForm(nothing=("----",))
    bay.shop.bench.do(SetGaugeLine(bay.shop.gauge, GaugeLine(str(device.port), form=form)))
    there(bay)
    device.send(b"----\r\n")
    until(bay, 1)
    assert [(r.value_um, r.no_value) for r in bay.picture.readings] == [(None, "nothing")]


def test_a_gauge_that_is_not_in_hand_sends_to_the_tray_and_its_value_keeps_its_gauge(
    plugged: Bay, device: Device, tmp_path: Path
) -> None:
    bay = plugged
    other = bay.shop.bench.do(AddToShop("gauge", {"name": "second invented gauge"})).id
    second = Device(tmp_path / "second-port")
    second.plug_in()
    bay.shop.bench.do(SetGaugeLine(other, GaugeLine(str(second.port))))
    bay.qtbot.waitUntil(lambda: "second invented gauge: there" in bay.window.strip.gauge.whole)
    second.send(b"131\r\n")
    device.send(b"118\r\n")
    until(bay, 2)
    assert values(bay) == [118.0]
    (held,) = bay.shop.bench.shop().waiting
    assert (held.text, held.gauge_id) == ("131", other)
    assert "“second invented gauge” is not in hand" in held.why
    session = bay.shop.bench.do(StartSession(bay.job, other)).id
    second.send(b"132\r\n")
    until(bay, 3)
    assert [r.session_id for r in bay.picture.readings][-1] == session
    bay.window.far.leave()
    bay.click("New: put on bonnet")
    assert [(r.value_um, r.session_id == session) for r in bay.picture.readings] == [
        (118.0, False),
        (132.0, True),
        (131.0, True),
    ]
    bay.window.close()
    second.pull_out()


def test_the_gauge_check_takes_raw_values_below_zero(bay: Bay, device: Device) -> None:
    bay.shop.bench.do(StartSession(bay.job, bay.shop.gauge, 21.0))
    bay.shop.bench.do(SetGaugeLine(bay.shop.gauge, GaugeLine(str(device.port))))
    there(bay)
    bay.open("thickness")
    bay.click("Gauge")
    device.send(b"-0.2\r\n")
    bay.qtbot.waitUntil(lambda: len(bay.picture.check_readings) == 1)
    assert bay.picture.check_readings[0].value_um == -0.2


def test_a_line_taken_away_frees_the_port(plugged: Bay, device: Device) -> None:
    bay = plugged
    bay.shop.bench.do(SetGaugeLine(bay.shop.gauge, None))
    assert bay.window.strip.gauge.whole == "nothing yet"
    device.send(b"118\r\n")
    bay.qtbot.wait(300)
    assert values(bay) == []
    assert plain(bay.said) != ""
