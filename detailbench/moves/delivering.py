"""How a closed document left the shop: noted, and corrected by a following move, never undone."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.moves.move import Done
from detailbench.record.picture import one
from detailbench.record.things import Delivery, Document
from detailbench.record.words_kept import choices
from detailbench.record.writing import Writer

WAYS = choices("delivery", "way")


def _fits(w: Writer, document: Document, way: str, at: datetime | None) -> None:
    """Raise BadInput for a way there is none of, or a time at which it cannot have left."""
    if way not in WAYS:
        raise BadInput(
            _("It left by mail, by message, in print, or was handed over as a file."), field="way", given=way
        )
    if at is None:
        return
    if at.tzinfo is None:
        raise BadInput(_("The time needs its offset, like +02:00."), field="at", given=at)
    if at > w.now:
        raise BadInput(_("That time is still to come; note it once it has left."), field="at", given=at)
    if at < document.entered_at:
        raise BadInput(_("It was closed later than that; it cannot have left before."), field="at", given=at)


@dataclass(frozen=True)
class NoteDelivery:
    """A closed document left the shop: by mail, message, print, or handed over; to whom is personal (``to``). ``at``:
    when it left, if that was not now."""

    undoable: ClassVar[bool] = False
    job_id: str
    document_id: str
    way: str
    to: str = ""
    at: datetime | None = None
    note: str = ""

    def make(self, w: Writer) -> Done:
        document = one(w.job(self.job_id).documents, self.document_id)
        _fits(w, document, self.way, self.at)
        thing = w.add(
            Delivery,
            job_id=self.job_id,
            document_id=document.id,
            way=self.way,
            note=self.note.strip(),
            stated_at=self.at,
        )
        if self.to.strip():
            w.personal(thing.id, "to", self.to.strip())
        return Done(self.job_id, _("delivery noted"), thing.id)


@dataclass(frozen=True)
class CorrectDelivery:
    """Put a noted delivery right; what stays None stays as it was. ``never_left``: it did not leave after all. The
    note as it was stays in the journal."""

    undoable: ClassVar[bool] = False
    job_id: str
    delivery_id: str
    way: str | None = None
    to: str | None = None
    at: datetime | None = None
    note: str | None = None
    never_left: bool = False

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        old = one(picture.deliveries, self.delivery_id)
        if self.never_left:
            w.withdraw(old)
            return Done(self.job_id, _("delivery corrected: it did not leave"), old.id)
        way = old.way if self.way is None else self.way
        at = old.stated_at if self.at is None else self.at
        note = old.note if self.note is None else self.note.strip()
        _fits(w, one(picture.documents, old.document_id), way, at)
        told = self.to is not None and self.to.strip() != picture.said(old.id, "to")
        if (way, at, note) == (old.way, old.stated_at, old.note) and not told:
            raise Refused(_("Nothing differs from what is noted."), rule="same")
        w.change(old, way=way, stated_at=at, note=note)
        if told and self.to is not None:
            w.personal(old.id, "to", self.to.strip())
        return Done(self.job_id, _("delivery corrected"), old.id)
