"""Closing a document, copying it out, checking it, opening it: what a closing page does, without its widgets."""

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
from detailbench.screens.stages.closing.beside import Beside
from detailbench.screens.stages.closing.words import ClosingWords, closing_words

AskTarget = Callable[[QWidget, Path], Path | None]
OpenFile = Callable[[Path], bool]


def ask_target(over: QWidget, suggested: Path) -> Path | None:
    """The system's own dialog for where to."""
    name, _kind = QFileDialog.getSaveFileName(over, _("Copy the closed document to"), str(suggested), "PDF (*.pdf)")
    return Path(name) if name else None


def open_file(path: Path) -> bool:
    """Open it with whatever the system opens such files with."""
    return QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))


class ClosingActs:
    """One kind of document. The opened key is the context's for as long as the program runs, so that the passphrase is
    asked for once, whatever is closed."""

    def __init__(
        self, context: Context, kind: str, *, ask_target: AskTarget = ask_target, open_file: OpenFile = open_file
    ) -> None:
        self.context = context
        self.kind = kind
        self.beside: Beside[Any] = Beside(context)
        self.ask_target, self.open_file = ask_target, open_file
        self.said = ""  # what the last check or copy came to

    @property
    def words(self) -> ClosingWords:
        return closing_words(self.kind)

    # the key
    @property
    def key(self) -> Any:
        """The opened key, or None."""
        return self.context.opened_key

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
        """The closed documents of this kind, the newest first."""
        picture = self.context.picture
        found = picture.documents if picture is not None else ()
        return tuple(reversed([d for d in found if d.kind == self.kind]))

    def suggested(self, document: Document) -> Path:
        """Where a copy would usually go."""
        picture = self.context.picture
        name = picture.evidence_of(document.evidence_id).name if picture is not None else ""
        folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
        return Path(folder or Path.home()) / (name or f"{self.kind}-{document.sha256[:8]}.pdf")

    # acts
    def close(self, passphrase: str, window: QWidget, failed: Callable[[object], object]) -> bool:
        """Close the document as the job stands, beside the window."""
        from detailbench.basics.errors import NotSaved
        from detailbench.moves.documents import CloseDocument, open_key

        bench: Any = self.context.bench
        picture = self.context.picture
        if bench is None or picture is None:
            return False
        known, folder, shop, clock, job_id = self.key, bench.folder, bench.shop(), self.context.clock, picture.job.id

        kind = self.kind
        opened = [known] if known is not None else []

        def work() -> None:
            if not opened:
                opened.append(open_key(folder, shop, passphrase, clock))
            bench.do(CloseDocument(job_id, opened[0], kind), None)

        def refused(error: object) -> None:
            self.context.opened_key = opened[0] if opened else None  # stays open, whatever stopped it
            failed(error)
            if isinstance(error, NotSaved) and opened:  # the disk did: one key begins it again once there is room
                self.context.unsaved.keep_work(self.words.stopped, lambda: self.close("", window, failed))

        def then(_result: None) -> None:
            self.context.opened_key = opened[0]
            self.context.unsaved.forget_work()
            self.said = self.words.done

        return self.beside.start(
            work,
            then,
            window=window,
            failed=refused,
            writes=self.words.busy,
        )

    def copy_out(self, document: Document, target: Path) -> bool:
        """Write a closed document to a file of one's own; an existing file stays."""
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
        """Check the copy if there is one, else the kept file, against the record; the answer is in ``said``."""
        from detailbench.seal.verifying import verify_pdf

        bench: Any = self.context.bench
        of_copy = copy.is_file()
        name = copy.name if of_copy else self.words.kept

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
