"""What a job names of the kit goes with its file: the disc of a sanding step, the second lamp of an outcome."""

from __future__ import annotations

from pathlib import Path

import pytest
from invented_findings import Hands
from invented_shop import INVENTED_NOW, InventedShop

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import Refused
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.bench import Bench
from detailbench.moves.job_exchange import ImportJob, write_job
from detailbench.moves.shop import AddToShop
from detailbench.moves.training import AnswerTraining
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.moves.turning import TurnJob
from detailbench.moves.work import AdoptProcess


def tried(hands: Hands, panel: str, **seen: str) -> str:
    group = hands.shop.group(hands.job, panel)
    trial = hands.do(RecordTrial(hands.job, group.id, panel, hands.picture.shop.combinations[2].id))
    hands.do(JudgeTrial(hands.job, trial, "yes", "clear", **seen))  # type: ignore[arg-type]
    return trial


def test_the_disc_and_the_second_lamp_are_there_where_the_job_is_taken_in(
    invented: InventedShop, tmp_path: Path
) -> None:
    hands = Hands(invented, invented.job())
    disc = hands.do(AddToShop("sanding_disc", {"name": "fine disc", "grade": "P2000"}))
    second = invented.bench.shop().lamps[1].id
    asked = hands.do(AskOwner(hands.job, "sanding", "May the run be sanded?", panels=("roof",)))
    hands.do(AnswerOwner(hands.job, asked, "yes", "present"))
    tried(hands, "roof", second_lamp_id=second)
    tried(hands, "bonnet")
    group = invented.group(hands.job, "roof")
    polishing = {"combination_id": hands.picture.shop.combinations[2].id}
    hands.do(AdoptProcess(hands.job, group.id, [{"means": "sanding", "disc_id": disc}, polishing]))
    file = tmp_path / "job.json"
    write_job(invented.bench.store, hands.job, file)
    theirs = Bench(tmp_path / "theirs", HandClock(INVENTED_NOW))
    theirs.do(ImportJob(file.read_bytes(), "job.json"))
    assert [d.name for d in theirs.shop().discs if d.id == disc] == ["fine disc"]
    assert second in {lamp.id for lamp in theirs.shop().lamps}
    theirs.close()


def test_a_trial_somebody_learned_from_is_not_taken_back_from_under_the_answer(invented: InventedShop) -> None:
    hands = Hands(invented, invented.job())
    trial = tried(hands, "roof")
    hands.do(TurnJob(hands.job, "stopped_after_trial", "the owner thinks it over"))
    hands.do(AnswerTraining(hands.job, trial, "keep"))
    for _n in range(2):
        invented.bench.undo(hands.job)  # the turn, then the outcome
    with pytest.raises(Refused, match="something entered since rests on it"):
        invented.bench.undo(hands.job)
