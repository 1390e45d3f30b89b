"""The card of the Marks stage: enter, what is on this panel, photos."""

from __future__ import annotations

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.entry.file_choice import FileChooser, choose_files
from detailbench.screens.entry.tabs import Tabs
from detailbench.screens.map.view import PanelMap
from detailbench.screens.stages.marks.desk import MarksDesk
from detailbench.screens.stages.marks.enter_part import EnterPart
from detailbench.screens.stages.marks.list_part import ListPart
from detailbench.screens.stages.marks.photo_drop import PhotoDrop
from detailbench.screens.stages.marks.photos_part import PhotosPart


class MarksCard(QWidget):
    """Three parts, one open at a time."""

    def __init__(self, desk: MarksDesk, choose: FileChooser = choose_files) -> None:
        super().__init__()
        self._desk = desk
        self._map_drop: PhotoDrop | None = None
        self.enter = EnterPart(desk)
        self.marks = ListPart(desk)
        self.photos = PhotosPart(desk, choose)
        self.tabs = Tabs(
            (
                ("enter", _("Enter"), self.enter),
                ("list", _("Marks"), self.marks),
                ("photos", _("Photos"), self.photos),
            ),
            desk.context.dress.look.measure.space("small"),
        )
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.tabs)
        desk.tab_wanted.connect(self.tabs.open_tab)
        desk.changed.connect(self._count)
        self._count()

    def _count(self) -> None:
        panel = bool(self._desk.context.selected_panel)
        self.tabs.set_count("list", len(self._desk.results()) if panel else None)
        self.tabs.set_count("photos", len(self.photos.photos()) if panel else None)

    def showEvent(self, event: QShowEvent) -> None:
        if self._map_drop is None and (map_ := self.window().findChild(PanelMap)) is not None:
            self._map_drop = PhotoDrop(map_, lambda: self._desk.here, self.photos.dropped)
        super().showEvent(event)
