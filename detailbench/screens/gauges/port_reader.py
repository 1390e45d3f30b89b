"""Listens at one port, in a thread of its own, and finds it again after it was pulled out. No Qt here."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal

from detailbench.thickness.gauge_line import GaugeLine

try:
    from termios import error as _TerminalError  # a port pulled out while it is being set up
except ImportError:  # there are no terminals on this system
    _TerminalError = OSError  # type: ignore[assignment,misc]

TROUBLE = (OSError, ValueError, _TerminalError)  # the port library's own error is an OSError
WAIT_S = 0.2  # how long a read waits, and so how soon the thread ends when told to
AGAIN_S = 1.0


@dataclass(frozen=True)
class PortEvent:
    """What happened at the port: it is here, bytes came (``at_ms`` of a clock that only goes forward), it is away."""

    kind: Literal["here", "bytes", "away"]
    data: bytes = b""
    at_ms: float = 0.0
    why: str = ""


def open_port(line: GaugeLine) -> Any:
    """The port, opened for us alone. Raises one of TROUBLE."""
    import serial  # loaded only where a gauge has a line

    return serial.Serial(
        line.port,
        line.speed,
        bytesize=int(line.framing[0]),
        parity=line.framing[1],
        stopbits=int(line.framing[2]),
        timeout=WAIT_S,
        exclusive=True,
    )


class PortReader:
    """``hear`` is called in the thread of the reader."""

    def __init__(
        self,
        line: GaugeLine,
        hear: Callable[[PortEvent], None],
        again_s: float = AGAIN_S,
        opened: Callable[[GaugeLine], Any] = open_port,
    ) -> None:
        self.line = line
        self._hear = hear
        self._again_s = again_s
        self._opened = opened
        self._ends = threading.Event()
        self._said_away = ""
        self._thread = threading.Thread(target=self._run, name=f"gauge at {line.port}", daemon=True)

    def start(self) -> None:
        self._thread.start()

    def stop(self) -> None:
        """End and wait for the end: the port is free then."""
        self._ends.set()
        if self._thread.is_alive():
            self._thread.join()

    def _run(self) -> None:
        while not self._ends.is_set():
            try:
                port = self._opened(self.line)
            except TROUBLE as error:
                self._away(error)
            else:
                self._said_away = ""
                self._hear(PortEvent("here"))
                try:
                    self._listen(port)
                except TROUBLE as error:
                    self._away(error)
                finally:
                    port.close()
            self._ends.wait(self._again_s)

    def _listen(self, port: Any) -> None:
        while not self._ends.is_set():
            data = port.read(port.in_waiting or 1)
            if data:
                self._hear(PortEvent("bytes", bytes(data), time.monotonic() * 1000))

    def _away(self, error: Exception) -> None:
        """Said once, and again when the reason changes; not at every look."""
        why = getattr(error, "strerror", None) or str(error)
        if why != self._said_away:
            self._said_away = why
            self._hear(PortEvent("away", why=why))


def ports_here() -> tuple[str, ...]:
    """Names of the serial ports this computer shows now."""
    from serial.tools.list_ports import comports  # loaded only where somebody looks

    return tuple(sorted(port.device for port in comports()))
