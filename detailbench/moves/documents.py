"""Close a document: pages from the report room, sealed with the workshop's key, kept with its hash. All or nothing."""

from __future__ import annotations

import os
from dataclasses import dataclass, field
from pathlib import Path
from typing import ClassVar
from uuid import uuid4

from detailbench import __version__
from detailbench.basics.clock import Clock, HandClock
from detailbench.basics.errors import RecordTrouble, Refused
from detailbench.basics.texts import _
from detailbench.findings.settings import setting
from detailbench.moves.move import Done
from detailbench.record.picture import ShopPicture
from detailbench.record.store import Store
from detailbench.record.things import Document
from detailbench.record.writing import Writer
from detailbench.seal.keys import WorkshopKey, load_key, make_key

KEY_FILE = ("key", "workshop.pem")


def key_path(folder: Path) -> Path:
    """Where a workshop keeps its own key, encrypted."""
    return folder.joinpath(*KEY_FILE)


def open_key(folder: Path, shop: ShopPicture, passphrase: str, clock: Clock) -> WorkshopKey:
    """The workshop's own key, made on first use in the workshop's name; never in an owner's. Raises Refused where the
    shop has no name yet, BadInput for a wrong passphrase."""
    path = key_path(folder)
    if path.exists():
        return load_key(path, passphrase)
    name = str(setting(shop, "shop_name")).strip()
    if not name:
        raise Refused(_("Type the workshop's name under Shop first: the key is made in that name."), rule="shop_name")
    path.parent.mkdir(parents=True, exist_ok=True)
    return make_key(path, name, passphrase, clock)


@dataclass(frozen=True)
class CloseReport:
    """Close the handover report as the job stands. It cannot be undone; a later one names the one it replaces."""

    undoable: ClassVar[bool] = False
    job_id: str
    key: WorkshopKey = field(repr=False)
    page_size: str = "A4"

    def make(self, w: Writer) -> Done:
        from detailbench.report import OWNER_BOX, handover_content, handover_pdf
        from detailbench.seal.sealing import seal_pdf

        picture = w.job(self.job_id)
        earlier = [d for d in picture.documents if d.kind == "handover"]
        content = handover_content(
            picture, now=w.now, version=__version__, read_file=w.evidence_bytes, key_fingerprint=self.key.fingerprint
        )
        made = handover_pdf(content, page_size=self.page_size)
        sealed = seal_pdf(
            made.pdf,
            self.key,
            HandClock(w.now),
            reason=_("Handover report of job {number}").format(number=picture.job.number),
            name=self.key.workshop,
            owner_box=OWNER_BOX,
        )
        kept = w.keep_file(sealed, "application/pdf", f"handover-{picture.job.number}-{len(earlier) + 1}.pdf")
        document = w.add(
            Document,
            job_id=self.job_id,
            kind="handover",
            evidence_id=kept.id,
            sha256=kept.sha256,
            pages=made.pages,
            key_fingerprint=self.key.fingerprint,
            chain_head=w.chain_head,
            replaces=earlier[-1].id if earlier else "",
        )
        return Done(self.job_id, _("handover report closed"), document.id)


def copy_out(store: Store, document: Document, target: Path) -> Path:
    """Write a closed document to ``target``; an existing file stays. Raises RecordTrouble."""
    return write_whole(target, store.files.read(document.sha256))


def write_whole(target: Path, content: bytes) -> Path:
    """Write a new file whole or not at all; an existing file stays. Raises RecordTrouble."""
    if target.exists():
        raise RecordTrouble(_("{name} is there already; choose another name.").format(name=target.name))
    part = target.with_name(f".{uuid4().hex}.part")  # its own name: what a killed try left behind is in nobody's way
    try:
        with part.open("xb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        part.replace(target)
    except OSError as error:
        part.unlink(missing_ok=True)
        raise RecordTrouble(
            _("{name} could not be written ({why}); nothing half-written was left.").format(
                name=target.name, why=error.strerror or error
            )
        ) from error
    return target


def newest_document(store: Store, job_id: str, kind: str = "handover") -> Document:
    """The newest closed document of a kind. Raises Refused when none was closed."""
    found = [d for d in store.job(job_id).documents if d.kind == kind]
    if not found:
        raise Refused(_("No such document was closed in this job yet."), rule="no_document")
    return found[-1]
