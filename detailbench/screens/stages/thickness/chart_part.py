"""The chart: a panel's places, its twin's, the other panels' means; and the same in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name, short_name
from detailbench.body.panels import twin_key
from detailbench.findings.panels import PanelSeen
from detailbench.screens.look.parts import gives_way, sentence
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.screens.stages.thickness.odd_place import odd_of
from detailbench.screens.stages.thickness.survey import Survey

if TYPE_CHECKING:
    from detailbench.screens.charts.scatter import Column, ScatterChart

FEW = 10


class ChartPart(QWidget):
    """The chart library is loaded when this is first opened."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        self.chart: ScatterChart | None = None
        self.words = sentence()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(desk.context.dress.look.measure.space("small"))
        self._column.addWidget(self.words)
        desk.changed.connect(self.redraw)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self.chart is None:
            from detailbench.screens.charts.scatter import ScatterChart

            self.chart = ScatterChart(self._desk.context.dress)
            gives_way(self.chart, self._desk.context.dress.look.measure.px(50))
            self._column.insertWidget(0, self.chart, 1)
        self.redraw()

    def redraw(self) -> None:
        if self.chart is None or not self.isVisible():
            return
        survey, panel = self._desk.survey, self._desk.panel
        if survey is None or not panel:
            self.chart.show_columns((), "")
            self.words.setText(_("Choose a panel."))
            return
        columns = self._columns(survey, panel)
        self.chart.show_columns(columns, "µm")
        said = []
        for column in columns:
            name = column.title.replace("\n", " ")
            said.append(f"{name}: {_values(column)}")
        self.words.setText("; ".join(said) + " µm")
        self.chart.setAccessibleName(_("Scatter of thickness. {words}").format(words=self.words.text()))

    def _columns(self, survey: Survey, panel: str) -> tuple[Column, ...]:
        from detailbench.screens.charts.scatter import Column

        columns = [_places_column(survey.latest(panel), panel_name(panel))]
        twin = twin_key(panel)
        if twin and twin in self._desk.context.outline.panels:
            columns.append(_places_column(survey.latest(twin), _("its twin")))
        found = survey.odd
        family = next((f for f in found.families if panel in f.keys), None) if found is not None else None
        keys = [k for k in (family.keys if family is not None else ()) if k not in (panel, twin)]
        means = []
        for key in keys:
            figures = survey.latest(key).figures
            if figures is not None:
                means.append((figures.mean_um, short_name(key)))
        if means:
            means.sort()
            ends = {0, len(means) - 1}
            columns.append(
                Column(
                    _("others, means"),
                    tuple(v for v, _name in means),
                    tuple(name if i in ends else "" for i, (_v, name) in enumerate(means)),
                    family.own_mean_um if family is not None else None,
                )
            )
        return tuple(columns)


def _values(column: Column) -> str:
    """A column's values in words; many of them by their number and ends."""
    values = column.values_um
    if len(values) <= FEW:
        return ", ".join(format_number(v, 0) for v in values) or _("nothing measured")
    return _("{n} from {low} to {high}").format(
        n=format_number(len(values)), low=format_number(min(values), 0), high=format_number(max(values), 0)
    )


def _places_column(seen: PanelSeen, title: str) -> Column:
    from detailbench.screens.charts.scatter import Column

    own = [p for p in seen.places if p.value_um is not None]
    odd = odd_of(seen)
    return Column(
        title,
        tuple(p.value_um for p in own if p.value_um is not None),
        tuple(format_number(p.place.number) for p in own),
        seen.figures.mean_um if seen.figures is not None else None,
        frozenset(i for i, p in enumerate(own) if odd is not None and p.place.id == odd.place.id),
    )
