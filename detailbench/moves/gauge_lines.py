"""A gauge on a line of its own."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.findings.gauge_lines import as_text, key_of, lines
from detailbench.moves.move import SHOP, Done
from detailbench.record.things import Gauge, Setting
from detailbench.record.writing import Writer
from detailbench.thickness.gauge_line import GaugeLine


@dataclass(frozen=True)
class SetGaugeLine:
    """Where this gauge is plugged in and how it writes; None: it has no line of its own any more."""

    undoable: ClassVar[bool] = True
    gauge_id: str
    line: GaugeLine | None

    def make(self, w: Writer) -> Done:
        gauge = w.get(Gauge, self.gauge_id)
        if self.line is not None:
            for other, line in lines(w.shop()).items():
                if other != gauge.id and line.port == self.line.port:
                    name = w.get(Gauge, other).name
                    raise Refused(
                        _("“{gauge}” is plugged in at that port; a port has one gauge.").format(gauge=name), rule="port"
                    )
        thing = w.add(Setting, key=key_of(gauge.id), value=as_text(self.line))
        says = _("the line of “{gauge}” set") if self.line is not None else _("“{gauge}” has no line any more")
        return Done(SHOP, says.format(gauge=gauge.name), thing.id)


def carry_line(w: Writer, old_id: str, new_id: str) -> None:
    """A changed gauge is a new thing in the record and stays plugged in where it was."""
    kept = w.shop().setting(key_of(old_id))
    if kept is not None:
        w.add(Setting, key=key_of(new_id), value=kept)
