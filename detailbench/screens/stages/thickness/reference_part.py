"""What was read in the selected panel's shut and underneath: a list of its own, beside its like on other panels."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number, format_thickness, format_thickness_interval
from detailbench.basics.texts import _
from detailbench.findings.reference_places import Reference, note_words
from detailbench.screens.look.parts import sentence
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.screens.stages.thickness.words import surface_words, value_words


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
        survey, panel = self._desk.survey, self._desk.panel
        found = survey.references if survey is not None else ()
        own = [r for r in found if r.panel == panel]
        self.setVisible(bool(own))
        lines = []
        for reference in own:
            lines += _lines(reference)
            lines += _others(reference, [r for r in found if r.surface == reference.surface and r.panel != panel])
        self.values.setText("\n".join([*lines, note_words()]) if own else "")


def _lines(reference: Reference) -> list[str]:
    """Every place with what was read there."""
    out = []
    if reference.figures is not None:
        text = (
            _("{where}: mean {mean} of one place")
            if reference.figures.places == 1
            else _("{where}: mean {mean} of {n} places")
        )
        mean = format_thickness(reference.figures.mean_um, digits=1)
        where = surface_words(reference.surface)
        out.append(text.format(where=where, mean=mean, n=format_number(reference.figures.places)))
    for seen in reference.places:
        values = ", ".join(value_words(r) for r in seen.readings) or _("not measured yet")
        text = _("place {n} {where}: {values}").format(
            n=format_number(seen.place.number), where=surface_words(reference.surface), values=values
        )
        out.append(text if seen.confirmed or not seen.readings else f"{text} ({_('not confirmed')})")
    return out


def _others(own: Reference, others: list[Reference]) -> list[str]:
    """The means of the same on other panels, as a span."""
    means = [r.figures.mean_um for r in others if r.figures is not None]
    if not means:
        return []
    if len(means) == 1:
        text = {
            "shut": _("in the shut of one other panel: {span}"),
            "underside": _("on the underside of one other panel: {span}"),
        }[own.surface]
        return [text.format(span=format_thickness(means[0], digits=0))]
    text = {
        "shut": _("in the shuts of {n} other panels: {span}"),
        "underside": _("on the undersides of {n} other panels: {span}"),
    }[own.surface]
    span = format_thickness_interval(min(means), max(means), digits=0)
    return [text.format(n=format_number(len(means)), span=span)]
