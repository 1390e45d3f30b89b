"""The kit in full, the range, earlier trials and training, through moves."""

from __future__ import annotations

from typing import Any

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.cli.walking.core.expecting import holds, same
from detailbench.cli.walking.core.hand import Hand, Unmet
from detailbench.cli.walking.core.shop import found
from detailbench.cli.walking.core.working import rung_of
from detailbench.cli.walking.kinds import amount
from detailbench.cli.walking.steps import kit as k
from detailbench.findings.kit_names import combination_name, combinations_in_use
from detailbench.findings.like_before import like_before
from detailbench.findings.training import agreement, newest_round, next_question, questions
from detailbench.findings.trials_before import Sought, trials_with
from detailbench.moves.kit_range import MoveInRange, RenewRange
from detailbench.moves.shop import AddToShop, Retire
from detailbench.moves.training import AnswerTraining
from detailbench.record.picture import JobPicture
from detailbench.trials.sanding_grade import sanding_grade


def _put(hand: Hand, table: str, **values: Any) -> None:
    hand.do(AddToShop(table, {name: value for name, value in values.items() if value is not None}))


def machine(step: k.AddMachine, hand: Hand) -> None:
    _put(
        hand, "machine", name=step.machine, movement=step.movement, orbit_mm=amount(step.orbit),
        plate_mm=amount(step.plate), own_rpm=amount(step.turns), dials=step.dials,
        vibration_m_s2=amount(step.vibration), vibration_k_m_s2=amount(step.uncertainty),
        weight_n=amount(step.weight), noise_db=amount(step.noise),
    )  # fmt: skip


def pad(step: k.AddPad, hand: Hand) -> None:
    _put(hand, "pad", name=step.pad, material=step.material, diameter_mm=amount(step.diameter))


def product(step: k.AddProduct, hand: Hand) -> None:
    _put(hand, "product", name=step.product, kind=step.kind, working_time_s=amount(step.works), batch=step.batch)


def towel(step: k.AddTowel, hand: Hand) -> None:
    _put(hand, "towel", name=step.towel, use=step.use)


def disc(step: k.AddDisc, hand: Hand) -> None:
    _put(hand, "sanding_disc", name=step.disc, grade=sanding_grade(step.grade).grade, diameter_mm=amount(step.diameter))


def combination(step: k.AddCombination, hand: Hand) -> None:
    if not (step.machine and step.pad and step.product):
        raise BadInput(_("A combination needs a machine, a pad and a compound or polish."), field="combination")
    parts = {f"{what}_id": found(hand, what, name).id for what, name in (
        ("machine", step.machine), ("pad", step.pad), ("product", step.product),
    )}  # fmt: skip
    rung = max((c.rung for c in combinations_in_use(hand.bench.shop())), default=-1) + 1
    hand.do(AddToShop("combination", {**parts, "rung": rung}))


def rung(step: k.MoveRung, hand: Hand) -> None:
    id_ = rung_of(hand, step.rung).id
    if step.to == "retired":
        hand.do(Retire("combination", id_))
    else:
        hand.do(MoveInRange(id_, 1 if step.to == "stronger" else -1))


def renew(_step: k.RenewTheRange, hand: Hand) -> None:
    hand.do(RenewRange())


def expect_rung(step: k.ExpectRung, hand: Hand) -> None:
    shop = hand.bench.shop()
    names = [combination_name(shop, c.id) for c in combinations_in_use(shop)]
    if step.rung >= len(names):
        raise Unmet(_("The shop's range has no rung {n}.").format(n=step.rung))
    holds(step.part, names[step.rung])


def search(step: k.SearchTrials, hand: Hand) -> None:
    sought = Sought(step.code, step.year, step.refinished, step.feel, step.sticky, step.words)
    fits = trials_with(hand.bench.jobs_with_trials(), sought)
    if step.found is not None:
        same(len(fits), step.found)


def like_paint(step: k.ExpectLikePaint, hand: Hand) -> None:
    told = like_before(hand.picture, hand.bench.jobs_with_trials())
    if step.part:
        holds(step.part, told.sentence if told is not None else "")
    else:
        same(told, None)


def _job(hand: Hand, number: str) -> JobPicture:
    for job in hand.bench.shop().jobs:
        if job.number == number:
            return hand.bench.job(job.id)
    raise Refused(_("There is no job “{number}”.").format(number=number), rule="no_job")


def train(step: k.Train, hand: Hand) -> None:
    picture = _job(hand, step.number)
    asked = questions(picture, hand.bench.changed_rows(picture.job.id))
    answers = () if step.anew else newest_round(hand.bench.shop(), picture.job.id, hand.person)
    following = next_question(asked, answers)
    if following is None:
        raise Refused(_("Every trial of that job is answered in this round."), rule="no_question")
    hand.do(AnswerTraining(picture.job.id, following.trial.id, step.result, anew=step.anew))


def trained(step: k.ExpectTrained, hand: Hand) -> None:
    picture = _job(hand, step.number)
    answers = newest_round(hand.bench.shop(), picture.job.id, hand.person)
    holds(step.part, agreement(questions(picture, hand.bench.changed_rows(picture.job.id)), answers).sentence)


ACTS = {
    k.AddMachine: machine,
    k.AddPad: pad,
    k.AddProduct: product,
    k.AddTowel: towel,
    k.AddDisc: disc,
    k.AddCombination: combination,
    k.MoveRung: rung,
    k.RenewTheRange: renew,
    k.ExpectRung: expect_rung,
    k.SearchTrials: search,
    k.ExpectLikePaint: like_paint,
    k.Train: train,
    k.ExpectTrained: trained,
}
