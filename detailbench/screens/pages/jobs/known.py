"""What the workshop knows of its jobs and cars, in lines to choose from."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from detailbench.basics.texts import _
from detailbench.body.vin import check_vin
from detailbench.findings.forgotten import forgotten_words
from detailbench.report.content.figures import day_words

if TYPE_CHECKING:
    from detailbench.record.picture import ShopPicture
    from detailbench.record.things import Car, Job


def car_words(shop: ShopPicture, car: Car) -> str:
    """The car in words, its colour and its plate; a car nobody described yet says so."""
    parts = [car.described or _("car not described yet"), car.colour, shop.said(car.id, "plate")]
    return ", ".join(part for part in parts if part)


def owner_name(shop: ShopPicture, job: Job) -> str:
    """The owner's name, that it was forgotten, or empty."""
    owner = next((p for p in shop.parties if p.role == "owner" and p.job_id == job.id), None)
    return (shop.said(owner.id, "name") if owner is not None else "") or forgotten_words(shop, job.id)


def job_words(shop: ShopPicture, job: Job) -> str:
    """Number, car, colour, plate and owner of a job."""
    car = next(c for c in shop.cars if c.id == job.car_id)
    owner = owner_name(shop, job)
    kind = _("inspection") if job.kind == "inspection" else ""
    return " · ".join(part for part in (job.number, kind, car_words(shop, car), owner) if part)


def jobs_with(shop: ShopPicture, typed: str) -> tuple[Job, ...]:
    """The jobs whose line has a word beginning with each typed word (or holds it, like a plate), newest first."""
    words = typed.casefold().split()
    found = []
    for job in shop.jobs:
        car = next(c for c in shop.cars if c.id == job.car_id)
        line = f"{job_words(shop, job)} {car.vin}".casefold()
        if all(word in line for word in words):
            found.append(job)
    return tuple(sorted(found, key=lambda j: j.seq, reverse=True))


def last_here(shop: ShopPicture, car: Car) -> datetime | None:
    """When the car last arrived, or None."""
    jobs = {j.id for j in shop.jobs if j.car_id == car.id}
    return max((v.arrived_at for v in shop.visits if v.job_id in jobs), default=None)


def cars_with_vin(shop: ShopPicture, vin: str) -> tuple[Car, ...]:
    """Cars known under this VIN, the one here last first. An empty number knows no car; a plate is no key."""
    number = check_vin(vin).normalised
    if not number:
        return ()
    here = [(at, car) for car in shop.cars if car.vin == number and (at := last_here(shop, car)) is not None]
    return tuple(car for _at, car in sorted(here, key=lambda found: found[0], reverse=True))


def known_words(shop: ShopPicture, car: Car) -> str:
    """``last here 3 March 2031: invented estate, blue``."""
    at = last_here(shop, car)
    assert at is not None
    return _("Last here {date}: {car}.").format(date=day_words(at), car=car_words(shop, car))
