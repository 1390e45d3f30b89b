"""When a limit of the owner's binds, so that only an agreement lifts it."""

from __future__ import annotations

from detailbench.record.picture import JobPicture
from detailbench.record.things import OwnerLimit


def bound(picture: JobPicture, limit: OwnerLimit) -> bool:
    """Whether something rests on a limit: an agreement about it, someone who read it, or a document closed since."""
    return (
        bool(limit.lifted_by)
        or any(a.limit_id == limit.id for a in picture.agreements)
        or any(s.limit_id == limit.id for s in picture.limits_seen)
        or any(d.seq > limit.seq for d in picture.documents)
    )
