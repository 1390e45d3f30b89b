"""What was read in the selected panel's shut and underneath: a list of its own, beside its like on other panels."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number, format_thickness_interval
from detailbench.basics.texts import _
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.screens.stages.thickness.words import surface_words, value_words

SURFACES = ("shut", "underside")


class ReferencePart(QWidget):
    """Hidden where the panel has no such place."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        self.values = sentence()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.values)

    def redraw(self) -> None:
        places = self._desk.references()
        self.setVisible(bool(places))
        if not places:
            return
        lines = []
        for surface in SURFACES:
            own = [p for p in places if p.surface == surface]
            for place in own:
                values = ", ".join(value_words(r) for r in place.readings) or _("not measured yet")
                lines.append(
                    _("place {n} {where}: {values}").format(
                        n=format_number(place.number), where=surface_words(surface), values=values
                    )
                )
            if own:
                lines += self._others(surface)
        lines.append(_("Thinner by build: compared with their like only, never with the panel."))
        self.values.setText("\n".join(lines))

    def _others(self, surface: str) -> list[str]:
        """The span of the same on the other panels."""
        desk = self._desk
        found = [
            r.value_um
            for key in desk.context.outline.panels
            if key != desk.panel
            for p in desk.references(key)
            if p.surface == surface
            for r in p.readings
            if r.value_um is not None
        ]
        if not found:
            return []
        text = {
            "shut": _("in the shuts of other panels: {span}, {n} readings"),
            "underside": _("on the undersides of other panels: {span}, {n} readings"),
        }[surface]
        span = format_thickness_interval(min(found), max(found), digits=0)
        return [text.format(span=span, n=format_number(len(found)))]
