"""Which panels an entry of the wash is for: the selected one, several that were picked, or the whole car."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.screens.context import Context

SIDES = {"left": "_l", "right": "_r"}


class PanelsMeant(QObject):
    """What was picked is forgotten when another job is opened; nothing of it is kept in the record."""

    changed = Signal()

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._context = context
        self.scope = ""  # nobody said yet: the selected panel, once there is one
        self.several: frozenset[str] = frozenset()
        context.job_opened.connect(self.forget)

    @property
    def panels(self) -> tuple[str, ...]:
        """The panels meant now, in the drawing's order."""
        if self._context.picture is None:
            return ()
        keys = tuple(self._context.outline.panels)
        if self.scope == "car":
            return keys
        wanted = self.several if self.scope == "several" else {self._context.selected_panel}
        return tuple(key for key in keys if key in wanted)

    def mean(self, scope: str) -> None:
        self.scope = scope
        self.changed.emit()

    def turn(self, panel: str) -> None:
        """Take a panel in, or leave it out when it is in; entries are for the picked ones from then on."""
        if panel:
            self.scope = "several"
            self.several = self.several ^ {panel}
            self.changed.emit()
            said = _("{panel} is taken in.") if panel in self.several else _("{panel} is left out.")
            said = said.format(panel=panel_name(panel))
            self._context.notice(said[:1].upper() + said[1:], "plain")

    def take_side(self, side: str) -> None:
        """Take in every panel of one side."""
        keys = self._context.outline.panels
        self.scope = "several"
        self.several = self.several | {key for key in keys if key.endswith(SIDES[side])}
        self.changed.emit()

    def forget(self) -> None:
        self.scope, self.several = "", frozenset()
        self.changed.emit()

    def words(self) -> str:
        """The panels meant, by name while they are few; what to do where there are none."""
        panels = self.panels
        if not panels:
            return (
                _("Tap a panel, or type / and its name")
                if self.scope in ("", "panel")
                else _("Tap the panels to take in")
            )
        if len(panels) <= 2:
            return " + ".join(panel_name(key) for key in panels)
        count = format_number(len(panels))
        return (_("whole car, {n} panels") if self.scope == "car" else _("{n} panels")).format(n=count)
