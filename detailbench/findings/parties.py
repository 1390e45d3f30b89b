"""Who brings the car and who fetches it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from detailbench.record.picture import JobPicture, ShopPicture
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


def authority_of(picture: JobPicture, party: Party) -> str:
    """On whose word a bearer acts, in words; it may name somebody, so it is personal. Empty where nobody said."""
    return picture.said(party.id, "authority") or party.authority


PERSONAL = ("name", "contact", "address", "telephone", "mail")


@dataclass(frozen=True)
class LastOwner:
    """Who owned the car in its newest job: person or company, and the personal values that are filled."""

    kind: str
    said: Mapping[str, str]


def last_owner(shop: ShopPicture, car_id: str) -> LastOwner | None:
    """The owner in the newest job of a car, or None where there is no job or nobody was noted."""
    jobs = [j for j in shop.jobs if j.car_id == car_id]
    if not jobs:
        return None
    newest = max(jobs, key=lambda j: j.seq)
    owner = next((p for p in shop.parties if p.role == "owner" and p.job_id == newest.id), None)
    if owner is None:
        return None
    return LastOwner(owner.kind, {name: value for name in PERSONAL if (value := shop.said(owner.id, name))})
