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
class CloseDocument:
    """Close a document as the job stands: arrival, supplement or handover. It cannot be undone; a later one of its kind
    names the one it replaces. ``page_size`` A4 or Letter; empty: as the shop set it."""

    undoable: ClassVar[bool] = False
    job_id: str
    key: WorkshopKey = field(repr=False)
    kind: str = "handover"
    page_size: str = ""

    def make(self, w: Writer) -> Done:
        from detailbench.report import OWNER_BOX, content_of, document_pdf
        from detailbench.seal.sealing import seal_pdf

        content_for = content_of(self.kind)
        picture = w.job(self.job_id)
        if self.kind == "supplement" and not picture.supplement:
            raise Refused(_("Nothing was noted for a supplement yet: enter what was found first."), rule="supplement")
        earlier = [d for d in picture.documents if d.kind == self.kind]
        content = content_for(
            picture,
            now=w.now,
            version=__version__,
            read_file=w.evidence_bytes,
            key_fingerprint=self.key.fingerprint,
            past=w.past(self.job_id),
        )
        made = document_pdf(content, page_size=self.page_size or str(setting(picture.shop, "page_size")))
        reasons = {
            "arrival": _("Arrival record of job {number}"),
            "supplement": _("Supplement of job {number}"),
            "handover": _("Handover report of job {number}"),
        }
        sealed = seal_pdf(
            made.pdf,
            self.key,
            HandClock(w.now),
            reason=reasons[self.kind].format(number=picture.job.number),
            name=self.key.workshop,
            owner_box=OWNER_BOX,
        )
        name = f"{self.kind}-{picture.job.number}-{len(earlier) + 1}.pdf"
        kept = w.keep_file(sealed, "application/pdf", name)
        document = w.add(
            Document,
            job_id=self.job_id,
            kind=self.kind,
            evidence_id=kept.id,
            sha256=kept.sha256,
            pages=made.pages,
            key_fingerprint=self.key.fingerprint,
            chain_head=w.chain_head,
            replaces=earlier[-1].id if earlier else "",
        )
        done = {
            "arrival": _("arrival record closed"),
            "supplement": _("supplement closed"),
            "handover": _("handover report closed"),
        }
        return Done(self.job_id, done[self.kind], document.id)


CloseReport = CloseDocument


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
    """The newest closed document of a kind (empty: of any). Raises Refused when none was closed."""
    found = [d for d in store.job(job_id).documents if kind in (d.kind, "")]
    if not found:
        raise Refused(_("No such document was closed in this job yet."), rule="no_document")
    return found[-1]
