"""Whether a closed document has left the shop."""

from __future__ import annotations

from collections.abc import Sequence

from detailbench.record.picture import JobPicture
from detailbench.record.things import Document


def newest_has_left(picture: JobPicture, documents: Sequence[Document]) -> bool:
    """Whether the newest of these documents (in the order closed) is noted to have left; False where there is none."""
    return bool(documents) and any(d.document_id == documents[-1].id for d in picture.deliveries)
