"""A job out to a file and in again: for another workshop, another computer, another program."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, ClassVar

from detailbench.basics.errors import BadFile, DetailbenchError, RecordTrouble
from detailbench.basics.texts import _
from detailbench.body.outlines import load_outline
from detailbench.findings.due import due
from detailbench.moves.documents import write_whole
from detailbench.moves.fitting_in import fits
from detailbench.moves.move import Done
from detailbench.record.evidence import digest_of
from detailbench.record.job_history import names_head, tells_the_same
from detailbench.record.job_json import files_of, job_out, thing_as_json
from detailbench.record.job_reading import JobFile, read_job, read_journal
from detailbench.record.store import Store
from detailbench.record.thing import Thing
from detailbench.record.things import (
    Agreement,
    Combination,
    Document,
    Evidence,
    Gauge,
    GaugeSession,
    History,
    Job,
    Lamp,
    Machine,
    OwnerLimit,
    Pad,
    Product,
    Reading,
    SandingDisc,
    Towel,
)
from detailbench.record.writing import Writer

STATE_NOT_CONTENT = frozenset({"retired", "forgotten"})  # both may come later on either side
NAMES_EARLIER = frozenset({"same_as", "replaces"})  # what an earlier job or an older thing holds need not travel
SHOWN = 3
# another workshop's kit is kept to tell the job by; on this shop's shelf and in its range it does not stand
KIT = (Machine, Pad, Product, Combination, Towel, SandingDisc, Lamp)


def files_beside(target: Path) -> Path:
    """The folder of a job file's kept files."""
    return target.with_name(f"{target.stem}-files")


@dataclass(frozen=True)
class Written:
    """Where the job went, with its hash; how many kept files beside it; the hashes of those that stayed behind.
    ``not_noted``: why the workshop does not know that it went, or empty."""

    file: Path
    files: int
    left_out: tuple[str, ...]
    sha256: str
    not_noted: str = ""


def write_job(store: Store, job_id: str, target: Path, *, personal: bool = True, files: bool = True) -> Written:
    """Write a job to a new file, its kept files into a new folder beside it. Raises RecordTrouble."""
    beside = files_beside(target)
    if files and beside.exists():
        raise RecordTrouble(_("{name} is there already; choose another name.").format(name=beside.name))
    with store.reading() as connection:
        picture = store.job(job_id)
        content = job_out(connection, picture, personal=personal)
    every = {e.sha256 for e in files_of(picture)}
    sent = {e.sha256 for e in files_of(picture, personal=personal)} if files else set()
    left = set(every - sent)
    if sent:
        beside.mkdir()
    for sha256 in sorted(sent):
        try:
            write_whole(beside / sha256, store.files.read(sha256))
        except RecordTrouble:
            if (beside / sha256).exists() or store.files.problem(sha256) is None:
                raise
            left.add(sha256)
    write_whole(target, content)  # last: a file that is there is whole
    return Written(target, len(every) - len(left), tuple(sorted(left)), digest_of(content))


@dataclass(frozen=True)
class ImportJob:
    """A job from a file, as one move. Ids stay; what is here already must be the same, and the journal that comes with
    it must hang together and tell what the file holds. ``files``: the folder its kept files lie in; what is not there,
    or not what its hash says, is named as missing. ``known_head``: a hash of its journal kept elsewhere, as a closed
    document carries it. It cannot be undone."""

    undoable: ClassVar[bool] = False
    content: bytes = field(repr=False)
    name: str = "job.json"
    files: Path | None = None
    known_head: str | None = None

    def make(self, w: Writer) -> Done:
        read = read_job(self.content, self.name)
        complain = _complaints(self.name)
        _names_what_is_there(w, read, complain)
        _is_of_the_trade(read, complain)
        _documents_are_their_files(read, complain)
        _clear_coats_were_read(read, complain)
        new = [thing for thing in read.things if not _here_already(w, thing, complain)]
        tells_the_same(read.told, read.things, complain)
        if self.known_head is not None and not names_head(read.told, self.known_head):
            raise complain(_("the head given is not in its journal: its end was cut or it was written anew."),
                           "journal", self.known_head)  # fmt: skip
        missing = self._kept(w, read)
        note = _missing_words(missing)
        if not new:
            same = _the_same(w, read)
            says = _("job {number} looked at").format(number=read.job.number)
            return Done(read.job.id, says, read.job.id, f"{same} {note}".strip())
        known = w.every(Job, id=read.job.id)
        if known:
            raise complain(_("this job is here already with other content; nothing was taken in."),
                           f"{new[0].table} {new[0].id}", None)  # fmt: skip
        number = _free_number(w, read.job.number)
        for thing in new:
            w.bring_in(_as_taken_in(thing, number))
        brought, here = {thing.id for thing in new}, w.shop()
        for subject, name, value in read.personal or ():
            if subject in brought or not here.said(subject, name):  # a plate known here is this workshop's word
                w.personal(subject, name, value)
        kept = w.keep_file(read.journal, "application/json", f"journal-{number}.json")
        w.add(History, job_id=read.job.id, evidence_id=kept.id, head=read.head, entries=read.entries)
        try:
            due(w.job(read.job.id))  # a job that cannot be shown is not taken in
        except DetailbenchError as error:
            raise complain(str(error), "", None) from error
        if any(isinstance(thing, KIT) for thing in new):
            note = f"{_('Its kit is kept as retired: it tells the job and stands in no list of yours.')} {note}".strip()
        if number != read.job.number:
            words = _("Its number {old} is taken here; it is {new} now.")
            note = f"{words.format(old=read.job.number, new=number)} {note}".strip()
        return Done(read.job.id, _("job {number} taken in").format(number=number), read.job.id, note)

    def _kept(self, w: Writer, read: JobFile) -> list[str]:
        """Keep the files that lie beside; the hashes of those that are nowhere."""
        missing = []
        earlier = {t.evidence_id: t for t in read.things if isinstance(t, History)}
        for evidence in (t for t in read.things if isinstance(t, Evidence) and not t.forgotten):
            if w.has_file(evidence.sha256):
                continue
            content = _read(self.files / evidence.sha256) if self.files is not None else None
            if content is None or digest_of(content) != evidence.sha256:
                missing.append(evidence.sha256)
                continue
            if evidence.id in earlier:
                self._hangs_together(earlier[evidence.id], content, read)
            w.keep_bytes(content)
        return missing

    def _hangs_together(self, history: History, content: bytes, read: JobFile) -> None:
        """An earlier journal that travels along is the one its history names."""
        name = f"{self.name}, history {history.id}"
        head, entries = read_journal(content, name, read.job.id)
        if (head, entries) != (history.head, history.entries):
            raise _complaints(name)(
                _("the journal kept for it ends in {head} after {n} entries, the history names {stated}.").format(
                    head=head[:12], n=entries, stated=history.head[:12]
                ),
                "",
                None,
            )


def _as_taken_in(thing: Thing, number: str) -> Thing:
    if isinstance(thing, Job):
        return replace(thing, number=number)
    return replace(thing, retired=True) if isinstance(thing, KIT) else thing


def _the_same(w: Writer, read: JobFile) -> str:
    """That nothing of the job differs; of its personal data what does, and that what is here stays."""
    shop = w.shop()
    here = {key: value for key, value in shop.personal.items() if key[0] in {t.id for t in read.things}}
    if read.personal is None:
        if here:
            return _(
                "This job is here already, the same; the file was written without personal data, and those here stay."
            )
        return _("This job is here already, the same.")
    theirs = {(subject, name): value for subject, name, value in read.personal}
    parts = []
    for words, n in (
        (_("{n} values of the file are not here and were not taken in."), len(theirs.keys() - here.keys())),
        (_("{n} values differ; those here stay."), sum(here.get(key, value) != value for key, value in theirs.items())),
        (_("{n} values are here and not in the file; they stay."), len(here.keys() - theirs.keys())),
    ):
        if n:
            parts.append(words.format(n=n))
    if not parts:
        return _("This job is here already, the same.")
    days = [f.entered_at.date().isoformat() for f in shop.forgettings if f.job_id == read.job.id]
    if days and theirs.keys() - here.keys():
        parts.append(_("The owner was forgotten here on {day}.").format(day=days[-1]))
    return _("This job is here already, the same but for personal data: {what}").format(what=" ".join(parts))


def _here_already(w: Writer, thing: Thing, complain: Callable[..., BadFile]) -> bool:
    found = w.every(type(thing), id=thing.id)
    if not found:
        return False
    if found[0].withdrawn:
        raise complain(_("it was taken back in this workshop; nothing was taken in."),
                       f"{thing.table} {thing.id}", None)  # fmt: skip
    ours, theirs = thing_as_json(found[0]), thing_as_json(thing)
    passing = STATE_NOT_CONTENT | ({"number"} if isinstance(thing, Job) else set())
    for name, value in theirs.items():
        if name not in passing and ours[name] != value:
            raise complain(
                _("this id is here already with other content ({ours}); nothing was taken in.").format(
                    ours=str(ours[name])[:40]
                ),
                f"{thing.table} {thing.id}.{name}",
                value,
            )
    return True


def _read(path: Path) -> bytes | None:
    try:
        return path.read_bytes()
    except OSError:
        return None


def _missing_words(missing: list[str]) -> str:
    if not missing:
        return ""
    shown = ", ".join(f"{sha256[:12]}…" for sha256 in missing[:SHOWN])
    if len(missing) > SHOWN:
        shown = _("{names} and {n} more").format(names=shown, n=len(missing) - SHOWN)
    return _("{n} kept files are missing: {which}.").format(n=len(missing), which=shown)


def _complaints(name: str) -> Callable[[str, str, object], BadFile]:
    def complain(why: str, where: str, value: object) -> BadFile:
        sentence = _("{at}: {why}").format(at=f"{name}, {where}" if where else name, why=why)
        if value is not None:
            sentence += " " + _("It holds: {value}").format(value=str(value)[:60])
        return BadFile(sentence, name=name, column=where, value="" if value is None else str(value)[:60])

    return complain


def _names_what_is_there(w: Writer, read: JobFile, complain: Callable[..., BadFile]) -> None:
    for thing, name, target, id_ in read.outside:
        if name in NAMES_EARLIER:
            continue
        found = w.every(target, id=id_)
        if not found or found[0].withdrawn:
            raise complain(_("it names a thing that is neither in the file nor here."),
                           f"{thing.table} {thing.id}.{name}", id_)  # fmt: skip


def _is_of_the_trade(read: JobFile, complain: Callable[..., BadFile]) -> None:
    try:
        known = load_outline(read.car.style, read.car.length_mm).panels
    except DetailbenchError as error:
        raise complain(str(error), f"car {read.car.id}.style", read.car.style) from error
    said_yes = {a.id: a.limit_id for a in read.things if isinstance(a, Agreement) and a.answer == "yes"}
    for thing in read.things:
        fits(thing, complain)
        if isinstance(thing, OwnerLimit) and thing.lifted_by and said_yes.get(thing.lifted_by) != thing.id:
            raise complain(_("the owner never said yes to lifting this limit."),
                           f"owner_limit {thing.id}.lifted_by", thing.lifted_by)  # fmt: skip
        for panel in _panels(thing):
            if panel and panel not in known:
                raise complain(_("This car has no panel “{panel}”.").format(panel=panel[:40]),
                               f"{thing.table} {thing.id}.panel", panel)  # fmt: skip


def _clear_coats_were_read(read: JobFile, complain: Callable[..., BadFile]) -> None:
    """A clear coat stands only beside a gauge that resolves layers: no other can have read it."""
    layered = {t.id for t in read.things if isinstance(t, Gauge) and t.layers}
    by = {t.id: t.gauge_id for t in read.things if isinstance(t, GaugeSession)}
    for thing in read.things:
        if isinstance(thing, Reading) and thing.clear_um is not None and by.get(thing.session_id) not in layered:
            raise complain(
                _("the gauge it names resolves no layers, so it read no clear coat."),
                f"reading {thing.id}.clear_um",
                thing.clear_um,
            )


def _documents_are_their_files(read: JobFile, complain: Callable[..., BadFile]) -> None:
    hashes = {t.id: t.sha256 for t in read.things if isinstance(t, Evidence)}
    for thing in read.things:
        if isinstance(thing, Document) and hashes.get(thing.evidence_id, thing.sha256) != thing.sha256:
            raise complain(
                _("the document and its kept file have different hashes: the file's is {kept}.").format(
                    kept=hashes[thing.evidence_id]
                ),
                f"document {thing.id}.sha256",
                thing.sha256,
            )


def _panels(thing: Thing) -> Iterator[str]:
    yield str(getattr(thing, "panel", ""))
    many: Any = getattr(thing, "panels", ())
    yield from (str(panel) for panel in many)


def _free_number(w: Writer, number: str) -> str:
    taken = {str(n) for n in w.ever(Job, "number")}
    tries = (number, *(f"{number}-{n}" for n in range(2, 10_000)))
    return next(each for each in tries if each not in taken)
