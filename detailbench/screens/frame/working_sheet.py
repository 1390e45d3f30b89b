"""The working of a figure: formula, inputs with units, result, source, what would change it."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QScrollArea, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.basics.workings import COMMON_PRACTICE, Plain, Working
from detailbench.screens.frame.sheet import Sheet
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import caption, label, sentence

FIGURES = 5  # significant figures on screen; the exact value stays in the Working


class WorkingSheet(Sheet):
    """Shows one Working at a time."""

    least_mm = 120.0

    def __init__(self, over: QWidget, dress: Dress) -> None:
        super().__init__(over, dress, _("Why this figure"))
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.body.addWidget(self._scroll, 1)
        self.working: Working | None = None

    def show_working(self, working: Working) -> None:
        self.working = working
        self.set_title(_("Why this figure: {name}").format(name=words(working.name)))
        m = self.dress.look.measure
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, m.space("small"), 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(label(working.formula, "strong", wrap=True))
        for title, values in ((_("put in"), working.inputs), (_("comes out"), working.results)):
            column.addSpacing(m.space("small"))
            column.addWidget(caption(title))
            column.addLayout(self._table(values))
        for title, text in (
            (_("source"), source_text(working)),
            (_("what would change it"), working.changes_with),
            (_("mind"), "\n".join(working.notes)),
        ):
            if text:
                column.addSpacing(m.space("small"))
                column.addWidget(caption(title))
                column.addWidget(sentence(text))
        column.addStretch(1)
        self._scroll.setWidget(inside)
        self.open_sheet()

    def _table(self, values: Mapping[str, Plain]) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(self.dress.look.measure.space("gap"))
        grid.setVerticalSpacing(self.dress.look.measure.space("hair"))
        grid.setColumnStretch(1, 1)
        for row, (name, value) in enumerate(values.items()):
            what, unit = name_and_unit(name)
            grid.addWidget(label(what, "sentence", wrap=True), row, 0, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(label(shown(value, unit), wrap=True), row, 1, Qt.AlignmentFlag.AlignTop)
        return grid


_UNITS = {
    "um": "µm", "mm": "mm", "m2": "m²", "m": "m", "s": "s", "min": "min", "c": "°C", "n": "N", "kg": "kg", "g": "g",
    "pct": "%", "deg": "°", "rpm": "1/min", "j_m2": "J/m²", "m_s": "m/s", "m_s2": "m/s²", "um2": "µm²", "mil": "mil",
}  # fmt: skip


def words(name: str) -> str:
    """A name as it stands in a working, in words."""
    return name.replace("_", " ")


def name_and_unit(name: str) -> tuple[str, str]:
    """``readings_um`` as ("readings", "µm"); a name without unit keeps all of itself."""
    parts = name.split("_")
    for count in (2, 1):
        unit = _UNITS.get("_".join(parts[-count:]))
        if unit and len(parts) > count:
            return " ".join(parts[:-count]), unit
    return words(name), ""


def shown(value: Plain, unit: str = "") -> str:
    """A plain value for the eye, with its unit."""
    if isinstance(value, list):
        text = "; ".join(shown(v) for v in value)
    elif isinstance(value, dict):
        text = ", ".join(f"{name_and_unit(k)[0]} {shown(v, name_and_unit(k)[1])}" for k, v in value.items())
    elif value is None:
        return "–"
    elif isinstance(value, bool):
        return _("yes") if value else _("no")
    elif isinstance(value, (int, float)):
        text = format_number(float(f"{value:.{FIGURES}g}"))
    else:
        return value
    return f"{text}\u00a0{unit}" if unit and text else text


def source_text(working: Working) -> str:
    """The source in the words of the working; the trade's habits are named as such."""
    text, kind = working.source.text, working.source.kind_words()
    if working.source.from_memory or working.source.kind == "own derivation":
        return f"{text} ({kind})"
    if working.source.kind == "common practice" and COMMON_PRACTICE not in text:
        return f"{text} ({kind})" if text else kind
    return text
