"""Closing the report, copying it out, checking it, opening it: what the close page does, without its widgets."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import QStandardPaths, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QFileDialog, QWidget

from detailbench.basics.texts import _
from detailbench.findings.settings import setting
from detailbench.record.things import Document
from detailbench.screens.context import Context
from detailbench.screens.stages.handover.beside import Beside

AskTarget = Callable[[QWidget, Path], Path | None]
OpenFile = Callable[[Path], bool]


def ask_target(over: QWidget, suggested: Path) -> Path | None:
    """The system's own dialog for where to."""
    name, _kind = QFileDialog.getSaveFileName(over, _("Copy the closed report to"), str(suggested), "PDF (*.pdf)")
    return Path(name) if name else None


def open_file(path: Path) -> bool:
    """Open it with whatever the system opens such files with."""
    return QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))


class ReportActs:
    """Keeps the opened key for as long as the program runs, so that the passphrase is asked for once."""

    def __init__(
        self, context: Context, *, ask_target: AskTarget = ask_target, open_file: OpenFile = open_file
    ) -> None:
        self.context = context
        self.beside: Beside[Any] = Beside(context)
        self.ask_target, self.open_file = ask_target, open_file
        self.key: Any = None
        self.said = ""  # what the last check or copy came to

    # the key
    @property
    def has_key_file(self) -> bool:
        """Whether the workshop's key was made already."""
        from detailbench.moves.documents import key_path

        bench: Any = self.context.bench
        return bench is not None and key_path(bench.folder).exists()

    @property
    def workshop_name(self) -> str:
        """The name the key is made in; empty until typed under Shop."""
        shop = self.context.shop
        return str(setting(shop, "shop_name")).strip() if shop is not None else ""

    # documents
    def documents(self) -> tuple[Document, ...]:
        """The closed handover reports, the newest first."""
        picture = self.context.picture
        found = picture.documents if picture is not None else ()
        return tuple(reversed([d for d in found if d.kind == "handover"]))

    def suggested(self, document: Document) -> Path:
        """Where a copy would usually go."""
        picture = self.context.picture
        name = picture.evidence_of(document.evidence_id).name if picture is not None else ""
        folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        return Path(folder or Path.home()) / (name or f"handover-{document.sha256[:8]}.pdf")

    # acts
    def close(self, passphrase: str, window: QWidget, failed: Callable[[object], object]) -> bool:
        """Close the report as the job stands, beside the window."""
        from detailbench.moves.documents import CloseReport, open_key

        bench: Any = self.context.bench
        picture = self.context.picture
        if bench is None or picture is None:
            return False
        known, folder, shop, clock, job_id = self.key, bench.folder, bench.shop(), self.context.clock, picture.job.id

        opened = [known] if known is not None else []

        def work() -> None:
            if not opened:
                opened.append(open_key(folder, shop, passphrase, clock))
            bench.do(CloseReport(job_id, opened[0]), None)

        def refused(error: object) -> None:
            self.key = opened[0] if opened else None  # an opened key stays open, whatever stopped the report
            failed(error)

        def then(_result: None) -> None:
            self.key = opened[0]
            self.said = _("The report is closed. Copy it out, or open the copy.")

        return self.beside.start(
            work,
            then,
            window=window,
            failed=refused,
            writes=_("The report is being closed: nothing else is entered until that is done. One moment."),
        )

    def copy_out(self, document: Document, target: Path) -> bool:
        """Write a closed report to a file of one's own; an existing file stays."""
        from detailbench.basics.errors import DetailbenchError
        from detailbench.moves.documents import copy_out

        bench: Any = self.context.bench
        try:
            copy_out(bench.store, document, target)
        except DetailbenchError as error:
            self.said = str(error)
            self.context.notice(self.said, "stop")
            return False
        self.said = _("Copied to {name}.").format(name=target)
        self.context.notice(self.said, "saved")
        return True

    def check(self, document: Document, copy: Path, window: QWidget) -> bool:
        """Check the copy if there is one, else the kept report, against the record; the answer is in ``said``."""
        from detailbench.seal.verifying import verify_pdf

        bench: Any = self.context.bench
        of_copy = copy.is_file()
        name = copy.name if of_copy else _("The kept report")

        def work() -> tuple[str, ...]:
            content = read_copy(copy) if of_copy else bench.store.files.read(document.sha256)
            found = verify_pdf(content, recorded_sha256=document.sha256, expected_fingerprint=document.key_fingerprint)
            return found.sentences

        def then(sentences: tuple[str, ...]) -> None:
            self.said = " ".join((f"{name}:", *sentences))

        return self.beside.start(work, then, window=window)

    def open(self, copy: Path) -> None:
        """Open the copy with the system's own viewer."""
        if not copy.is_file():
            self.said = _("Copy it out first: the viewer opens the copy.")
        elif self.open_file(copy):
            self.said = _("{name} is handed to the viewer.").format(name=copy.name)
        else:
            self.said = _("Nothing on this computer opens {name}.").format(name=copy.name)


def read_copy(path: Path) -> bytes:
    """A file's bytes. Raises RecordTrouble in words."""
    from detailbench.basics.errors import RecordTrouble

    try:
        return path.read_bytes()
    except OSError as error:
        raise RecordTrouble(
            _("{name} could not be read ({why}).").format(name=path.name, why=error.strerror or error)
        ) from error
