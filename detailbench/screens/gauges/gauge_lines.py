"""The shop's gauges that have a line of their own: their values join the one way every burst takes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, Signal

from detailbench.basics.errors import DetailbenchError
from detailbench.basics.texts import _
from detailbench.screens.context import Burst, Context
from detailbench.screens.gauges.port_reader import PortEvent, PortReader

if TYPE_CHECKING:
    from detailbench.thickness.gauge_line import CutLine, GaugeLine, LineCutter

UNREADABLE_IN_A_ROW = 8  # more than that is no disturbance but a wrong speed or form

MakeReader = Callable[["GaugeLine", Callable[[PortEvent], None]], PortReader]


@dataclass
class _Plugged:
    """One gauge at its port, as this window knows it."""

    name: str
    line: GaugeLine
    reader: PortReader
    cutter: LineCutter
    here: bool = False
    unreadable: int = 0


class GaugeLines(QObject):
    """``burst`` gives each value, ``stands`` what the strip says about gauges that are away."""

    burst = Signal(object)
    stands = Signal(str)
    _came = Signal(str, object)  # gauge, PortEvent: over from the reader's thread

    def __init__(self, context: Context, parent: QObject, reader: MakeReader = PortReader) -> None:
        super().__init__(parent)
        self._context = context
        self._make = reader
        self._plugged: dict[str, _Plugged] = {}
        self._trouble = ""
        self._came.connect(self._heard, Qt.ConnectionType.QueuedConnection)
        context.changed.connect(lambda _changes, _who: self.follow())
        context.left.connect(self.stop)

    def follow(self) -> None:
        """Listen where the shop says, and nowhere else."""
        from detailbench.findings.gauge_lines import lines  # the record is loaded only with the workshop

        shop = self._context.shop
        wanted = {}
        if shop is not None and self._context.can_write:
            try:
                wanted = lines(shop)
            except DetailbenchError as error:
                if str(error) != self._trouble:
                    self._context.notice(str(error), "stop")
                self._trouble = str(error)
        for gauge_id in [g for g, p in self._plugged.items() if wanted.get(g) != p.line]:
            self._plugged.pop(gauge_id).reader.stop()
        for gauge_id, line in wanted.items():
            if gauge_id not in self._plugged:
                name = next((g.name for g in shop.gauges if g.id == gauge_id), "") if shop is not None else ""
                self._plug_in(gauge_id, name, line)
        self._tell()

    def _plug_in(self, gauge_id: str, name: str, line: GaugeLine) -> None:
        from detailbench.thickness.gauge_line import LineCutter

        reader = self._make(line, lambda event: self._came.emit(gauge_id, event))
        self._plugged[gauge_id] = _Plugged(name, line, reader, LineCutter())
        reader.start()

    def stop(self) -> None:
        """Listen no more; the ports are free when this returns."""
        for plugged in self._plugged.values():
            plugged.reader.stop()
        self._plugged.clear()

    @property
    def words(self) -> str:
        """Which gauges are there and which are not, for the strip; those that are away first."""
        return ", ".join(
            (_("{gauge}: there") if p.here else _("{gauge}: away")).format(gauge=p.name)
            for p in sorted(self._plugged.values(), key=lambda p: p.here)
        )

    def _tell(self) -> None:
        self.stands.emit(self.words)

    def _heard(self, gauge_id: str, event: PortEvent) -> None:
        plugged = self._plugged.get(gauge_id)
        if plugged is None:
            return  # unplugged by the shop while this was on its way
        if event.kind == "here":
            plugged.here = True
            self._context.notice(_("“{gauge}” is there.").format(gauge=plugged.name), "plain")
            self._tell()
        elif event.kind == "away":
            plugged.here = False
            for cut in plugged.cutter.cut_off():
                self._take(gauge_id, plugged, cut, event.at_ms)
            self._context.notice(
                _("“{gauge}” is away from {port} ({why}); it is looked for again by itself.").format(
                    gauge=plugged.name, port=plugged.line.port, why=event.why
                ),
                "flagged",
            )
            self._tell()
        else:
            for cut in plugged.cutter.feed(event.data, event.at_ms):
                self._take(gauge_id, plugged, cut, event.at_ms)

    def _take(self, gauge_id: str, plugged: _Plugged, cut: CutLine, at_ms: float) -> None:
        from detailbench.thickness.gauge_line import LineRead, read_line

        read = LineRead(cut.text, sentence=cut.sentence) if cut.sentence else read_line(cut.text, plugged.line.form)
        if read.beside:
            return
        plugged.unreadable = plugged.unreadable + 1 if read.sentence else 0
        if plugged.unreadable > UNREADABLE_IN_A_ROW:
            if plugged.unreadable == UNREADABLE_IN_A_ROW + 1:
                self._context.notice(
                    _(
                        "“{gauge}” goes on sending what cannot be read; that is not kept. See its line in the shop."
                    ).format(gauge=plugged.name),
                    "stop",
                )
            return
        self.burst.emit(Burst(read.text, at_ms, gauge_id, read))
