"""The frozen views everything is drawn from: one for a job, one for the shop."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Set
from dataclasses import dataclass, field, fields, replace
from functools import cache
from typing import Any, TypeAlias, TypeVar, get_args, get_type_hints

from sqlalchemy import Connection, Select, bindparam, select

from detailbench.basics.errors import RecordTrouble
from detailbench.basics.texts import _
from detailbench.record import things as t
from detailbench.record.begun import jobs_measured
from detailbench.record.journal import head
from detailbench.record.tables import BY_NAME, TABLES, personal, thing_of
from detailbench.record.thing import Thing

T = TypeVar("T", bound=Thing)
Personal = Mapping[tuple[str, str], str]
Several: TypeAlias = "Callable[[Set[str]], tuple[JobPicture, ...]]"
MOST_OTHERS = 200  # the newest: more tell no more, and a shop of many years would wait for them at every first look
FEW = 4  # jobs that are read one by one rather than by whole tables


@dataclass(frozen=True)
class ShopPicture:
    """The shop as it is: its people, kit, settings, cars, jobs. Retired things are in it: old jobs name them."""

    people: tuple[t.Person, ...] = ()
    gauges: tuple[t.Gauge, ...] = ()
    shims: tuple[t.Shim, ...] = ()
    lamps: tuple[t.Lamp, ...] = ()
    machines: tuple[t.Machine, ...] = ()
    pads: tuple[t.Pad, ...] = ()
    products: tuple[t.Product, ...] = ()
    combinations: tuple[t.Combination, ...] = ()
    towels: tuple[t.Towel, ...] = ()
    discs: tuple[t.SandingDisc, ...] = ()
    settings: tuple[t.Setting, ...] = ()
    cars: tuple[t.Car, ...] = ()
    jobs: tuple[t.Job, ...] = ()
    visits: tuple[t.Visit, ...] = ()
    parties: tuple[t.Party, ...] = ()
    documents: tuple[t.Document, ...] = ()
    turns: tuple[t.JobTurn, ...] = ()
    evidence: tuple[t.Evidence, ...] = ()
    clock_notes: tuple[t.ClockNote, ...] = ()
    waiting: tuple[t.WaitingValue, ...] = ()
    readings_files: tuple[t.ReadingsFile, ...] = ()
    training_answers: tuple[t.TrainingAnswer, ...] = ()
    job_files_out: tuple[t.JobFileOut, ...] = ()
    forgettings: tuple[t.Forgetting, ...] = ()
    personal: Personal = field(default_factory=dict)
    head: int = 0
    chain_head: str = ""

    def said(self, subject: str, name: str) -> str:
        """A personal value, or empty."""
        return self.personal.get((subject, name), "")

    def setting(self, key: str) -> str | None:
        """The newest value of a setting as JSON text, or None where the shop never set it."""
        found = [s.value for s in self.settings if s.key == key]
        return found[-1] if found else None


@dataclass(frozen=True)
class JobPicture:
    """One job as it stands. Tuples are in the order of entry; withdrawn things are not in it. ``last``: the job of the
    same car before this one (that one's own ``last`` is left out), or None. ``others``: where steps were adopted here,
    the shop's newest other jobs in which trials can have been measured; what the steps take is told from them too."""

    job: t.Job
    car: t.Car
    shop: ShopPicture
    visits: tuple[t.Visit, ...] = ()
    parties: tuple[t.Party, ...] = ()
    damages: tuple[t.Damage, ...] = ()
    repairs: tuple[t.StatedRepair, ...] = ()
    custody: tuple[t.Custody, ...] = ()
    car_moves: tuple[t.CarMoved, ...] = ()
    remarks: tuple[t.Remark, ...] = ()
    turns: tuple[t.JobTurn, ...] = ()
    limits: tuple[t.OwnerLimit, ...] = ()
    limits_seen: tuple[t.LimitSeen, ...] = ()
    agreements: tuple[t.Agreement, ...] = ()
    supplement: tuple[t.SupplementItem, ...] = ()
    mishaps: tuple[t.Mishap, ...] = ()
    groups: tuple[t.FinishGroup, ...] = ()
    state_notes: tuple[t.StateNote, ...] = ()
    holds: tuple[t.Hold, ...] = ()
    wash_steps: tuple[t.WashStep, ...] = ()
    rub_tests: tuple[t.RubTest, ...] = ()
    marks: tuple[t.Mark, ...] = ()
    mark_checks: tuple[t.MarkCheck, ...] = ()
    panel_looks: tuple[t.PanelLook, ...] = ()
    photos: tuple[t.Photo, ...] = ()
    sessions: tuple[t.GaugeSession, ...] = ()
    check_readings: tuple[t.CheckReading, ...] = ()
    corrections: tuple[t.GaugeCorrection, ...] = ()
    places: tuple[t.Place, ...] = ()
    readings: tuple[t.Reading, ...] = ()
    gloss_readings: tuple[t.GlossReading, ...] = ()
    place_decisions: tuple[t.PlaceDecision, ...] = ()
    trials: tuple[t.Trial, ...] = ()
    outcomes: tuple[t.TrialOutcome, ...] = ()
    paint_feels: tuple[t.PaintFeel, ...] = ()
    processes: tuple[t.Process, ...] = ()
    steps: tuple[t.ProcessStep, ...] = ()
    runs: tuple[t.StepRun, ...] = ()
    overrides: tuple[t.Override, ...] = ()
    protections: tuple[t.Protection, ...] = ()
    second_looks: tuple[t.SecondLook, ...] = ()
    other_work: tuple[t.OtherWork, ...] = ()
    documents: tuple[t.Document, ...] = ()
    deliveries: tuple[t.Delivery, ...] = ()
    histories: tuple[t.History, ...] = ()
    forgettings: tuple[t.Forgetting, ...] = ()
    acceptances: tuple[t.Acceptance, ...] = ()
    signatures: tuple[t.Signature, ...] = ()
    last: JobPicture | None = None
    others: tuple[JobPicture, ...] = ()

    @property
    def personal(self) -> Personal:
        return self.shop.personal

    def said(self, subject: str, name: str) -> str:
        """A personal value, or empty."""
        return self.shop.said(subject, name)

    def evidence_of(self, evidence_id: str) -> t.Evidence:
        """The evidence behind a photo or document. Raises RecordTrouble when there is none."""
        return one(self.shop.evidence, evidence_id)


def one(things: tuple[T, ...], id_: str) -> T:
    """The thing with this id. Raises RecordTrouble when there is none."""
    for thing in things:
        if thing.id == id_:
            return thing
    raise RecordTrouble(_("Nothing here has the id {id}….").format(id=id_[:8]))


def _kinds(cls: type[Any]) -> dict[str, type[Thing]]:
    """Picture field → the thing in its tuple."""
    hints = get_type_hints(cls, localns={"Thing": Thing})
    out = {}
    for f in fields(cls):
        parts = get_args(hints[f.name])
        if len(parts) == 2 and parts[1] is Ellipsis and issubclass(parts[0], Thing):
            out[f.name] = parts[0]
    return out


SHOP_KINDS = _kinds(ShopPicture)
JOB_KINDS = _kinds(JobPicture)


@cache
def _query(name: str, of_a_job: bool) -> Select[Any]:
    # made once: every entry reads every table again
    table = TABLES[BY_NAME[name]]
    query = select(table).where(table.c.withdrawn.is_(False)).order_by(table.c.seq)
    return query.where(table.c.job_id == bindparam("job")) if of_a_job else query


def _all(connection: Connection, cls: type[T], job_id: str | None = None) -> tuple[T, ...]:
    rows = connection.execute(_query(cls.table, job_id is not None), {} if job_id is None else {"job": job_id})
    return tuple(thing_of(cls, row) for row in rows.mappings())


def shop_picture(connection: Connection) -> ShopPicture:
    """Read the shop's picture."""
    values: dict[tuple[str, str], str] = {}
    rows = connection.execute(select(personal).where(personal.c.withdrawn.is_(False)).order_by(personal.c.seq))
    for row in rows:
        if row.value is not None:
            values[(row.subject, row.field)] = row.value
    number, chain = head(connection)
    parts: dict[str, Any] = {name: _all(connection, cls) for name, cls in SHOP_KINDS.items()}
    return ShopPicture(personal=values, head=number, chain_head=chain, **parts)


def job_picture(
    connection: Connection, job_id: str, shop: ShopPicture | None = None, several: Several | None = None
) -> JobPicture:
    """Read a job's picture. ``several`` hands over the pictures of other jobs, for a caller that keeps them; else they
    are read. Raises RecordTrouble when there is no such job."""
    shop = _shop_now(connection, shop)
    job = one(shop.jobs, job_id)
    same_car = [j for j in shop.jobs if j.car_id == job.car_id]
    before = same_car[: same_car.index(job)]
    last = _job_alone(connection, before[-1], shop) if before else None
    picture = _job_alone(connection, job, shop, last)
    if not picture.steps:
        return picture
    measured = jobs_measured(connection) - {job.id, *(j.id for j in before[-1:])}
    ids = frozenset([j.id for j in shop.jobs if j.id in measured][-MOST_OTHERS:])
    return replace(picture, others=several(ids) if several is not None else job_pictures(connection, ids, shop))


def _shop_now(connection: Connection, shop: ShopPicture | None) -> ShopPicture:
    """The shop these rows are of: read anew where another process wrote since it was read."""
    return shop if shop is not None and shop.head == head(connection)[0] else shop_picture(connection)


def job_pictures(connection: Connection, job_ids: Collection[str], shop: ShopPicture) -> tuple[JobPicture, ...]:
    """The pictures of several jobs, in the order they were begun, each without its ``last`` and ``others``: of many
    jobs every table is read once, so that looking through them does not ask for each of them alone."""
    shop = _shop_now(connection, shop) if job_ids else shop
    wanted = [job for job in shop.jobs if job.id in job_ids]
    if len(wanted) <= FEW:
        return tuple(_job_alone(connection, job, shop) for job in wanted)
    parts: dict[str, dict[str, list[Thing]]] = {job.id: {name: [] for name in JOB_KINDS} for job in wanted}
    for name, cls in JOB_KINDS.items():
        for thing in _all(connection, cls):
            of = parts.get(getattr(thing, "job_id", ""))
            if of is not None:
                of[name].append(thing)
    pictures = []
    for job in wanted:
        tuples: dict[str, Any] = {name: tuple(found) for name, found in parts[job.id].items()}
        pictures.append(JobPicture(job=job, car=one(shop.cars, job.car_id), shop=shop, **tuples))
        _names_what_is_there(pictures[-1])
    return tuple(pictures)


def _job_alone(connection: Connection, job: t.Job, shop: ShopPicture, last: JobPicture | None = None) -> JobPicture:
    parts: dict[str, Any] = {name: _all(connection, cls, job.id) for name, cls in JOB_KINDS.items()}
    picture = JobPicture(job=job, car=one(shop.cars, job.car_id), shop=shop, last=last, **parts)
    _names_what_is_there(picture)
    return picture


def _names_what_is_there(picture: JobPicture) -> None:
    """Raise RecordTrouble where a value is of a place, session or foil that is not there: no move leaves that."""
    places = {p.id for p in picture.places}
    sessions = {s.id for s in picture.sessions}
    shims = {s.id for s in picture.shop.shims}
    named: list[tuple[Thing, str, bool]] = []
    named += [(r, "place_id", r.place_id in places and r.session_id in sessions) for r in picture.readings]
    named += [(r, "place_id", r.place_id in places and r.session_id in sessions) for r in picture.gloss_readings]
    named += [(c, "shim_id", c.shim_id in shims and c.session_id in sessions) for c in picture.check_readings]
    for thing, field_name, there in named:
        if not there:
            raise RecordTrouble(
                _(
                    "Table {table}, row {row}…: it names a place, session or foil that is not there ({field}), so it "
                    "was changed outside this program. Nothing was changed now."
                ).format(table=thing.table, row=thing.id[:8], field=field_name)
            )
