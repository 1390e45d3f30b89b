"""Photographs dropped on the car: they go to the panel they were let go over."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QEvent, QObject, QPointF
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent
from PySide6.QtWidgets import QWidget

from detailbench.body.where import panel_at
from detailbench.screens.entry.file_choice import files_in
from detailbench.screens.map.view import PanelMap


class PhotoDrop(QObject):
    """Watches a widget for drops. ``wanted`` says whether they are welcome now; ``dropped`` gets panel and files."""

    def __init__(self, onto: QWidget, wanted: Callable[[], bool], dropped: Callable[[str, list[Path]], object]) -> None:
        super().__init__(onto)
        self._onto = onto
        self._wanted = wanted
        self._dropped = dropped
        target = onto.viewport() if isinstance(onto, PanelMap) else onto
        target.setAcceptDrops(True)
        target.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if isinstance(event, QDropEvent) and self._wanted():  # entering and moving are drops that are not done yet
            files = files_in(event.mimeData())
            if not files:
                return False
            event.acceptProposedAction()
            if not isinstance(event, (QDragEnterEvent, QDragMoveEvent)):
                self._dropped(self._panel_at(event.position()), files)
            return True
        return False

    def _panel_at(self, at: QPointF) -> str:
        """The panel under a point of the map; empty beside the car, or on the card."""
        map_ = self._onto
        if not isinstance(map_, PanelMap) or map_.outline is None:
            return ""
        handle = next((key for key, box in map_.handle_boxes().items() if box.contains(at)), "")
        if handle:
            return handle
        spot = map_.mapToScene(at.toPoint())
        return next(iter(panel_at(map_.outline, spot.x(), spot.y())), "")
