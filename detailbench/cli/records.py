"""What lies in a workshop: its jobs, and whether it can be trusted."""

from __future__ import annotations

from argparse import Namespace
from pathlib import Path

from detailbench.basics.clock import SystemClock
from detailbench.basics.errors import BadInput, RecordTrouble
from detailbench.basics.texts import _
from detailbench.cli import TROUBLE
from detailbench.cli.words import workshop_of
from detailbench.record.picture import ShopPicture
from detailbench.record.store import DATABASE, Store
from detailbench.record.things import Job


def known_workshop(words: Namespace) -> Path:
    """The workshop's folder. Raises RecordTrouble when there is none."""
    folder = workshop_of(words)
    if not (folder / DATABASE).is_file():
        raise RecordTrouble(_("There is no workshop in {folder}.").format(folder=folder))
    return folder


def open_to_read(words: Namespace) -> Store:
    """The workshop, for reading. Raises RecordTrouble when there is none."""
    return Store(known_workshop(words), SystemClock().now(), read_only=True)


def job_named(shop: ShopPicture, number: str) -> Job:
    """The job with this number. Raises BadInput when there is none, naming those there are."""
    for job in shop.jobs:
        if job.number == number:
            return job
    there = ", ".join(j.number for j in shop.jobs) or _("none yet")
    raise BadInput(_("There is no job {number}; there are: {there}.").format(number=number, there=there), field="job")


def list_jobs(words: Namespace) -> int:
    """One line a job: number, car, owner, standing."""
    from detailbench.body.outlines import style_name
    from detailbench.findings.standing import standing_words

    store = open_to_read(words)
    try:
        shop = store.shop()
        for job in shop.jobs:
            picture = store.job(job.id, shop)
            owner = next((p for p in picture.parties if p.role == "owner"), None)
            name = picture.said(owner.id, "name") if owner is not None else ""
            parts = (job.number, picture.car.described or style_name(picture.car.style), name, standing_words(picture))
            print("  ".join(_on_one_line(p) for p in parts if p))
        if not shop.jobs:
            print(_("No job yet."))
    finally:
        store.close()
    return 0


def check_it(words: Namespace) -> int:
    """Replay the journal against the rows; every trouble a sentence."""
    from detailbench.record.checking import check

    store = open_to_read(words)
    try:
        found = check(store, words.head)
    finally:
        store.close()
    for trouble in found.troubles:
        print(trouble)
    for note in found.notes:
        print(note)
    print(
        _("{entries} journal entries, {rows} rows, {files} kept files looked at. Head: {head}").format(
            entries=found.entries, rows=found.rows, files=found.files, head=found.head
        )
    )
    if words.head is None:
        print(_("No hash kept elsewhere was given: a cut tail or a chain written anew would not show."))
    return TROUBLE if found.troubles else 0


def check_drawing(words: Namespace) -> int:
    """Check an outline file; every complaint a sentence."""
    from detailbench.body.check_outline import check_outline

    complaints = check_outline(words.file)
    for complaint in complaints:
        print(complaint)
    if not complaints:
        print(_("The drawing keeps its rules."))
    return TROUBLE if complaints else 0


def _on_one_line(text: str) -> str:
    """Typed words as part of a line: no breaks, and no signs a terminal would obey."""
    return "".join(c if c.isprintable() else "·" for c in " ".join(text.split()))
