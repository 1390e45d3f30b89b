"""Forgetting an owner: names, addresses, plate, texts, drawn signatures, the files that show them. The chain stays."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.moves.move import Done
from detailbench.record.backups_made import backups_made, known_gone
from detailbench.record.picture import JobPicture
from detailbench.record.thing import JobThing
from detailbench.record.things import ALL, Agreement, Delivery, Document, Evidence, Forgetting, Photo, Signature
from detailbench.record.writing import Writer

SHOWS_WHO = ("vin_plate", "plate")
JOB_THINGS = tuple(cls for cls in ALL if issubclass(cls, JobThing))


@dataclass(frozen=True)
class ForgetOwner:
    """Delete the personal data of this job and, as a car is its owner's, of the other jobs of the car: values with
    their salts, drawn signatures but the workshop's own, photographs of the plate and the VIN plate, proofs of
    agreements, and the closed documents, whose hashes stay. It cannot be undone, and its note says what it cannot
    reach."""

    undoable: ClassVar[bool] = False
    job_id: str
    only_this_job: bool = False

    def make(self, w: Writer) -> Done:
        picture = w.job(self.job_id)
        same_car = [j.id for j in picture.shop.jobs if j.car_id == picture.car.id]
        alone = self.only_this_job and len(same_car) > 1
        jobs = [self.job_id] if alone else same_car
        car = () if alone else (picture.car.id,)
        before = {f.job_id for f in picture.shop.forgettings}
        values = files = 0
        for job_id in jobs:
            photos = w.every(Photo, job_id=job_id)
            named = {p.evidence_id for p in photos} | {a.evidence_id for a in w.every(Agreement, job_id=job_id)} - {""}
            n = w.forget_values({*self._subjects(w, job_id), *named, *(car if job_id == self.job_id else ())})
            m = sum(w.forget_file(sha256) for sha256 in self._files(w, job_id, photos))
            if n or m or job_id not in before:
                w.add(Forgetting, job_id=job_id, values_gone=n, files_gone=m)
            values, files = values + n, files + m
        w.forgets = True  # also where nothing was left: what an interrupted forgetting left on the disk goes now
        if not w.changes:
            raise Refused(_("There is nothing left here to forget."), rule="forgotten")
        gone = _("Deleted: values {n}, files {m}.").format(n=values, m=files)
        return Done(self.job_id, _("the owner's data forgotten"), picture.car.id, f"{gone} {out_of_reach(w, picture)}")

    @staticmethod
    def _subjects(w: Writer, job_id: str) -> Iterator[str]:
        for cls in JOB_THINGS:
            for thing in w.every(cls, job_id=job_id):
                if not (isinstance(thing, Signature) and thing.role == "workshop"):
                    yield thing.id

    @staticmethod
    def _files(w: Writer, job_id: str, photos: tuple[Photo, ...]) -> Iterator[str]:
        """The hashes of what shows or names the owner."""
        ids = {p.evidence_id for p in photos if p.shows in SHOWS_WHO}
        ids |= {d.evidence_id for d in w.every(Document, job_id=job_id)}
        ids |= {a.evidence_id for a in w.every(Agreement, job_id=job_id)}
        for id_ in sorted(ids - {""}):
            for evidence in w.every(Evidence, id=id_):
                yield evidence.sha256


def out_of_reach(w: Writer, picture: JobPicture) -> str:
    """What no move can delete, in sentences: backups made, copies that left the shop, what stands in the chain."""
    parts = []
    made = [b for b in backups_made(w.folder) if not known_gone(b)]
    if made:
        where = ", ".join(f"{b.folder} ({b.at[:10]})" for b in made)
        parts.append(_("Not reached, still holding it: backups {n}, in {where}.").format(n=len(made), where=where))
    jobs = {j.id for j in picture.shop.jobs if j.car_id == picture.car.id}
    left = [d for job_id in jobs for d in w.every(Delivery, job_id=job_id) if not d.withdrawn]
    if left:
        when = ", ".join(sorted(f"{(d.stated_at or d.entered_at).date().isoformat()} ({d.way})" for d in left))
        parts.append(_("Copies that left the shop: {n}, on {when}.").format(n=len(left), when=when))
    out = [f for f in w.shop().job_files_out if f.personal and f.of_job in jobs]
    if out:
        when = ", ".join(f"{f.entered_at.date().isoformat()} ({f.sha256[:12]}…)" for f in out)
        parts.append(_("Job files written out with it: {n}, on {when}.").format(n=len(out), when=when))
    names = sum(bool(e.name) and not e.name.startswith(OUR_NAMES) for e in w.every(Evidence))
    if names:
        parts.append(
            _("{n} file names of photographs stand in the journal from an earlier version and stay.").format(n=names)
        )
    parts.append(_("The VIN, and what was typed into notes, stand in the journal and stay."))
    return " ".join(parts)


OUR_NAMES = ("handover-", "arrival-", "supplement-", "journal-")
