"""Choosing files without stopping the window: a dialog that lies beside it, and what a drop brings."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6.QtCore import QMimeData, Qt
from PySide6.QtWidgets import QFileDialog, QWidget

Chosen = Callable[[list[Path]], None]
FileChooser = Callable[[QWidget, str, Sequence[str], bool, Chosen], None]


def choose_files(over: QWidget, title: str, filters: Sequence[str], many: bool, chosen: Chosen) -> None:
    """Let a person choose files; ``chosen`` is called with them, and not at all when nothing was chosen."""
    dialog = QFileDialog(over, title)
    dialog.setFileMode(QFileDialog.FileMode.ExistingFiles if many else QFileDialog.FileMode.ExistingFile)
    dialog.setNameFilters(list(filters))
    dialog.setWindowModality(Qt.WindowModality.NonModal)
    dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    dialog.filesSelected.connect(lambda names: chosen([Path(n) for n in names]))
    dialog.show()


def choose_folder(over: QWidget, title: str, chosen: Callable[[Path], None]) -> None:
    """Let a person choose a folder; ``chosen`` is called with it, and not at all when none was chosen."""
    dialog = QFileDialog(over, title)
    dialog.setFileMode(QFileDialog.FileMode.Directory)
    dialog.setOption(QFileDialog.Option.ShowDirsOnly)
    dialog.setWindowModality(Qt.WindowModality.NonModal)
    dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    dialog.fileSelected.connect(lambda name: chosen(Path(name)))
    dialog.show()


def files_in(data: QMimeData) -> list[Path]:
    """The local files something dropped or pasted names."""
    return [Path(url.toLocalFile()) for url in data.urls() if url.isLocalFile()] if data.hasUrls() else []
