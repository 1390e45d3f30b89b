"""The card of the Thickness stage: gauge, walk, panel, chart, file."""

from __future__ import annotations

from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.entry.file_choice import FileChooser, choose_files
from detailbench.screens.entry.tabs import Tabs
from detailbench.screens.map.view import PanelMap
from detailbench.screens.stages.thickness.chart_part import ChartPart
from detailbench.screens.stages.thickness.desk import KEY, ThicknessDesk
from detailbench.screens.stages.thickness.file_part import FilePart
from detailbench.screens.stages.thickness.gauge_part import GaugePart
from detailbench.screens.stages.thickness.panel_part import PanelPart
from detailbench.screens.stages.thickness.walk_part import WalkPart


class ThicknessCard(QWidget):
    """Five parts, one open at a time."""

    def __init__(self, desk: ThicknessDesk, choose: FileChooser = choose_files) -> None:
        super().__init__()
        self._desk = desk
        self.gauge = GaugePart(desk)
        self.walk = WalkPart(desk)
        self.figures = PanelPart(desk)
        self.chart = ChartPart(desk)
        self.file = FilePart(desk, choose)
        self.tabs = Tabs(
            (
                ("gauge", _("Gauge"), self.gauge),
                ("walk", _("Walk"), self.walk),
                ("panel", _("Panel"), self.figures),
                ("chart", _("Chart"), self.chart),
                ("file", _("File"), self.file),
            ),
            desk.context.dress.look.measure.space("small"),
        )
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.tabs)
        self.tabs.opened.connect(self._opened)
        desk.tab_wanted.connect(self._turn_to)
        desk.context.job_opened.connect(self.begin)
        self.begin()

    def begin(self) -> None:
        """The gauge comes first while there is none in hand."""
        none = self._desk.check.session is None and not self._desk.gloss.on
        self.tabs.open_tab("gauge" if none else "walk")
        self._opened(self.tabs.now)

    def _turn_to(self, key: str) -> None:
        """What was pressed or typed into lies on the other page now: the keys stay on the card, or on the map."""
        self.tabs.open_tab(key)
        if key != "walk" or isinstance(QApplication.focusWidget(), PanelMap):
            return
        if self.walk.entry.isVisible() and self.walk.entry.isEnabled():
            self.walk.entry.setFocus()
        elif self.walk.on.isVisible():
            self.walk.on.setFocus()

    def _opened(self, key: str) -> None:
        self._desk.part = key
        self._desk.context.next_changed.emit()

    def type_value(self, sign: str) -> None:
        """A figure typed wherever the focus was: it begins a value of the walk, or of the check."""
        if not self.isVisible():
            self._desk.context.stage_wanted.emit(KEY)  # the card was put away: a figure is not typed unseen
        if self.tabs.now == "gauge" and self._desk.check.takes:
            self.gauge.entry.begin_with(sign)
            return
        self.tabs.open_tab("walk")
        self.walk.entry.begin_with(sign)

    @property
    def takes_figures(self) -> bool:
        """A figure typed now has somewhere to go."""
        if self.tabs.now == "gauge":
            return self._desk.check.takes
        return bool(self._desk.panel) and (self._desk.check.session is not None or self._desk.gloss.on)
