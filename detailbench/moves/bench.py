"""The bench: an open workshop and its one door."""

from __future__ import annotations

from collections.abc import Callable, Set
from dataclasses import dataclass, replace
from pathlib import Path

from detailbench.basics.clock import Clock
from detailbench.basics.errors import Refused
from detailbench.basics.texts import _
from detailbench.findings.clock import clock_behind, jump_back
from detailbench.findings.told_once import carried_over
from detailbench.moves.gone import said_of_gone
from detailbench.moves.move import SHOP, Move
from detailbench.moves.place import AcceptPlace, place_words
from detailbench.record.back_then import Changed, changed_rows
from detailbench.record.begun import begun_jobs, jobs_with_trials
from detailbench.record.checking import CheckResult, check
from detailbench.record.journal import Standing, last_at, standing
from detailbench.record.picture import JobPicture, ShopPicture, job_pictures, one
from detailbench.record.store import Store
from detailbench.record.telling import Line, entries
from detailbench.record.where_it_lies import worries
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class Changes:
    """What a move, undo or redo changed: the tables, the ids, where, in words. ``id`` is the thing the move made,
    ``note`` a sentence for the person or empty, ``n`` the journal entry."""

    kinds: frozenset[str]
    ids: tuple[str, ...]
    scope: str
    says: str
    id: str = ""
    note: str = ""
    n: int = 0


Watcher = Callable[[Changes, object], None]


class Bench:
    """Opens a workshop folder (made if new). ``person`` is the id of who is entering; documents say it was chosen,
    not proven. When someone else has the workshop, ``read_only`` says so and every move is refused."""

    def __init__(self, folder: Path, clock: Clock, *, person: str = "", read_only: bool = False) -> None:
        self.clock = clock
        self.store = Store(folder, clock.now(), read_only=read_only)
        self._person = person
        self._watchers: list[Watcher] = []
        self._shop: ShopPicture | None = None
        self._jobs: dict[str, JobPicture] = {}
        self._tried: dict[str, JobPicture] = {}
        self._changed: tuple[tuple[str, int], Changed] | None = None
        self._head = -1
        self._worries = worries(folder) if self.store.read_only is None else ()
        self._say_who()

    @property
    def person(self) -> str:
        """The id of who is entering; empty while nobody was chosen."""
        return self._person

    @person.setter
    def person(self, person: str) -> None:
        self._person = person
        self._say_who()

    def _say_who(self) -> None:
        if self._person and self.read_only is None:
            self.store.say_who(next((p.name for p in self.store.shop().people if p.id == self._person), ""))

    @property
    def folder(self) -> Path:
        return self.store.folder

    @property
    def read_only(self) -> str | None:
        return self.store.read_only

    # looking
    def shop(self) -> ShopPicture:
        """The shop's picture; the same object until something changes."""
        if self._shop is None or self._head != self._shop.head:
            self._shop = self.store.shop()
            self._head = self._shop.head
            self._jobs.clear()
        return self._shop

    def job(self, job_id: str) -> JobPicture:
        """A job's picture; the same object until something changes."""
        shop = self.shop()
        if job_id not in self._jobs:
            self._jobs[job_id] = self.store.job(job_id, shop, self._several)
        return self._jobs[job_id]

    def jobs_with_trials(self) -> tuple[JobPicture, ...]:
        """The pictures of every job in which a trial was made, oldest first, each without its ``last``. A job is read
        again only when something was entered in it."""
        with self.store.reading() as connection:
            ids = jobs_with_trials(connection)
        return self._several(ids)

    def _several(self, ids: Set[str]) -> tuple[JobPicture, ...]:
        """Those of these jobs that were not kept are read now; each is of the shop as it is, or of the one it was read
        with where another process has written since the last look."""
        shop = self.shop()
        with self.store.reading() as connection:
            for picture in job_pictures(connection, ids - self._tried.keys(), shop):
                self._tried[picture.job.id] = picture
        for job in shop.jobs:
            had = self._tried.get(job.id)
            if had is not None and had.shop.head < shop.head:
                now = replace(had, job=job, car=one(shop.cars, job.car_id), shop=shop)
                self._tried[job.id] = carried_over(had, now)
        return tuple(self._tried[job.id] for job in shop.jobs if job.id in ids)

    def changed_rows(self, job_id: str) -> Changed:
        """What was put right in a job and in the shop's kit, to tell how the job stood once; kept until something
        changes."""
        key = (job_id, self.shop().head)
        if self._changed is None or self._changed[0] != key:
            with self.store.reading() as connection:
                self._changed = key, changed_rows(connection, (job_id, SHOP))
        return self._changed[1]

    def evidence_bytes(self, sha256: str) -> bytes:
        """A kept file. Raises RecordTrouble when it is missing or changed."""
        return self.store.files.read(sha256)

    def entries(self, scope: str = SHOP) -> tuple[Line, ...]:
        """The journal of a job (or the shop's own), oldest first."""
        with self.store.reading() as connection:
            return entries(connection, scope)

    def begun_jobs(self) -> frozenset[str]:
        """The jobs in which something was seen, measured or done."""
        with self.store.reading() as connection:
            return begun_jobs(connection)

    def check(self, known_head: str | None = None) -> CheckResult:
        """Replay the whole journal against the rows; safe in a thread of its own."""
        return check(self.store, known_head)

    def standing(self, scope: str = SHOP) -> Standing:
        """What can be taken back and done again in a job (or the shop's own list)."""
        with self.store.reading() as connection:
            return standing(connection, scope)

    def clock_trouble(self) -> str:
        """What to say at the start when the computer's clock is before the last entry; empty when it is not."""
        with self.store.reading() as connection:
            return clock_behind(last_at(connection), self.clock.now())

    @property
    def place_trouble(self) -> str:
        """Why nothing should be written where the workshop lies, with the safe way; empty when nothing speaks against
        it, or a person has accepted it."""
        return place_words(self._worries, self.shop()) if self._worries else ""

    def accept_place(self, initiator: object = None) -> Changes:
        """Work here all the same."""
        return self.do(AcceptPlace(tuple(w.kind for w in self._worries)), initiator)

    # writing
    def do(self, move: Move, initiator: object = None) -> Changes:
        """Make a move in one transaction, on the disk when this returns. Raises Refused, BadInput, RecordTrouble."""
        if not isinstance(move, AcceptPlace):
            self._may_write_here()
        with self.store.writing(self.clock.now(), self.person) as w:
            w.know(self._jobs)
            jumped = jump_back(w.last_at(), w.now)
            done = move.make(w)
            note = " ".join(part for part in (done.note, jumped) if part)
            if w.changes:
                w.sign_off(done.scope, type(move).__name__, done.says, undoable=move.undoable)
            changes = self._changes(w, done.scope, done.says, done.id, note)
        if w.changes:
            self._tell(changes, initiator)
        if w.forgets:
            self.store.leave_no_trace()
        return changes

    def _may_write_here(self) -> None:
        if self.place_trouble:
            raise Refused(self.place_trouble, rule="place")

    def undo(self, scope: str = SHOP, initiator: object = None) -> Changes:
        """Take back the last move of a job, whoever made it. Raises Refused when there is none."""
        self._may_write_here()
        with self.store.writing(self.clock.now(), self.person) as w:
            done = w.standing(scope).done
            if not done:
                raise Refused(_("There is nothing here that can be taken back."), rule="undo")
            n, says = done[-1]
            for change in reversed(w.changes_of(n)):
                w.take_back(change)
            if w.leaves_loose_ends():
                raise Refused(_("This cannot be taken back: something entered since rests on it."), rule="in_use")
            says, note = said_of_gone(w, scope, _("taken back: {what}").format(what=says))
            w.sign_off(scope, "undo", says, undoable=False, refers_to=n)
            changes = self._changes(w, scope, says, note=note)
        return self._tell(changes, initiator)

    def redo(self, scope: str = SHOP, initiator: object = None) -> Changes:
        """Do again what was last taken back. Raises Refused when there is nothing."""
        self._may_write_here()
        with self.store.writing(self.clock.now(), self.person) as w:
            undone = w.standing(scope).undone
            if not undone:
                raise Refused(_("There is nothing here to do again."), rule="redo")
            n, says = undone[-1]
            for change in w.changes_of(n):
                w.apply(change.again())
            if w.leaves_loose_ends():
                raise Refused(_("This cannot be done again: what it rests on was taken back."), rule="in_use")
            says, note = said_of_gone(w, scope, _("done again: {what}").format(what=says))
            w.sign_off(scope, "redo", says, undoable=False, refers_to=n)
            changes = self._changes(w, scope, says, note=note)
        return self._tell(changes, initiator)

    @staticmethod
    def _changes(w: Writer, scope: str, says: str, id_: str = "", note: str = "") -> Changes:
        kinds = frozenset(c.table for c in w.changes)
        return Changes(kinds, tuple(c.id for c in w.changes), scope, says, id_, note, w.n if w.changes else 0)

    # telling
    def watch(self, watcher: Watcher) -> Callable[[], None]:
        """Call ``watcher(changes, initiator)`` after every change; returns what ends it."""
        self._watchers.append(watcher)
        return lambda: self._watchers.remove(watcher)

    def look_for_others(self) -> bool:
        """True when another process has written since the last look; watchers are told."""
        head = self.store.head()[0]
        if self._head in (-1, head):
            return False
        self._head = -1
        self._tell(Changes(frozenset({"*"}), (), "*", _("changed in another window"), n=head), None)
        return True

    def _tell(self, changes: Changes, initiator: object) -> Changes:
        self._head = -1
        self._tried.pop(changes.scope, None)
        if changes.scope in (SHOP, "*"):  # the shop's own, or another window: any job may differ now
            self._tried.clear()
        for watcher in tuple(self._watchers):
            watcher(changes, initiator)
        return changes

    def close(self) -> None:
        self.store.close()
