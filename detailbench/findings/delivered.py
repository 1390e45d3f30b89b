"""Whether a closed document has left the shop."""

from __future__ import annotations

from collections.abc import Sequence

from detailbench.record.picture import JobPicture
from detailbench.record.things import Delivery, Document

SENT = ("mail", "message")  # what goes to somebody who is not here


def to_whom_missing(picture: JobPicture, delivery: Delivery) -> bool:
    """Whether it was sent and nobody noted to whom; not where that was deleted with the owner's data."""
    if delivery.way not in SENT or picture.said(delivery.id, "to"):
        return False
    deleted = [f.seq for f in picture.forgettings]
    return not deleted or delivery.seq > deleted[-1]


def newest_has_left(picture: JobPicture, documents: Sequence[Document]) -> bool:
    """Whether the newest of these documents (in the order closed) is noted to have left; False where there is none."""
    return bool(documents) and any(d.document_id == documents[-1].id for d in picture.deliveries)
