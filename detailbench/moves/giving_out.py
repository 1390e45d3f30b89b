"""A job's file that leaves the workshop, and the note of it: forgetting an owner names the copies it cannot reach."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import ClassVar

from detailbench.basics.errors import BadInput, DetailbenchError
from detailbench.basics.texts import _
from detailbench.moves.bench import Bench
from detailbench.moves.job_exchange import Written, write_job
from detailbench.moves.move import SHOP, Done
from detailbench.record.evidence import IS_A_DIGEST
from detailbench.record.picture import one
from detailbench.record.things import JobFileOut
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class NoteJobFileOut:
    """A job's file was written out: its hash, and whether its owner's data are in it. It is gone, so this cannot be
    undone."""

    undoable: ClassVar[bool] = False
    of_job: str
    sha256: str
    personal: bool = True

    def make(self, w: Writer) -> Done:
        if not IS_A_DIGEST.fullmatch(self.sha256):
            raise BadInput(_("That is no hash of a file."), field="sha256", given=self.sha256)
        job = one(w.shop().jobs, self.of_job)
        made = w.add(JobFileOut, of_job=job.id, sha256=self.sha256, personal=self.personal)
        return Done(SHOP, _("file of job {number} written out").format(number=job.number), made.id)


def give_job(bench: Bench, job_id: str, target: Path, *, personal: bool = True, files: bool = True) -> Written:
    """Write a job to a new file and note that it left. Where nothing can be noted (the workshop is open elsewhere, say)
    the file is written all the same, and ``not_noted`` says so."""
    written = write_job(bench.store, job_id, target, personal=personal, files=files)
    try:
        bench.do(NoteJobFileOut(job_id, written.sha256, personal))
    except DetailbenchError as error:
        text = _("It is not noted in the workshop, so forgetting its owner will not name this file: {why}")
        return replace(written, not_noted=text.format(why=str(error)))
    return written
