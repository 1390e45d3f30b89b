"""Who brings the car and who fetches it."""

from __future__ import annotations

from detailbench.record.picture import JobPicture
from detailbench.record.things import Party

ERRANDS = ("brings", "fetches", "both")


def owner_of(picture: JobPicture) -> Party | None:
    """The owner, or None while nobody was noted."""
    return next((p for p in picture.parties if p.role == "owner"), None)


def bearer_for(picture: JobPicture, errand: str) -> Party | None:
    """The newest bearer on this errand (brings, fetches; both: whoever does both), or None: the owner comes in person
    or nobody was noted. A bearer noted without an errand brings the car."""
    wanted = {errand, "both"} | ({""} if errand == "brings" else set())
    return next((p for p in reversed(picture.parties) if p.role == "bearer" and p.errand in wanted), None)
