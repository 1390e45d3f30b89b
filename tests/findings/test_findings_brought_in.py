"""A job taken in from another workshop is told as theirs: neither its kit nor its trials are this shop's experience."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from invented_findings import Hands
from invented_shop import INVENTED_NOW, InventedShop
from test_findings_removal import measured

from detailbench.basics.clock import HandClock
from detailbench.findings.adviser import adviser_says, ask_adviser
from detailbench.findings.brought_in import as_own, own_trials
from detailbench.findings.kit_names import combinations_in_use
from detailbench.findings.like_before import like_before
from detailbench.findings.like_paint import like_paint
from detailbench.findings.range_picture import range_picture
from detailbench.findings.removal import measured_trials
from detailbench.findings.trial_story import told
from detailbench.findings.trials_before import trials_before
from detailbench.moves.arrival import DescribeCar, NewJob
from detailbench.moves.bench import Bench
from detailbench.moves.job_exchange import ImportJob, write_job
from detailbench.moves.starter import StockStarterKit
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.record.checking import check


@pytest.fixture
def theirs(tmp_path: Path) -> Iterator[Bench]:
    """Another workshop with a range of its own."""
    bench = Bench(tmp_path / "theirs", HandClock(INVENTED_NOW))
    bench.do(StockStarterKit())
    yield bench
    bench.close()


def taken_in(hands: Hands, theirs: Bench, folder: Path) -> str:
    """What ``ImportJob`` said."""
    hands.do(DescribeCar(hands.job, {"paint_code": "X 1"}))
    write_job(hands.shop.bench.store, hands.job, folder / "job.json")
    return theirs.do(ImportJob((folder / "job.json").read_bytes(), "job.json")).note


def on_the_shelf(bench: Bench) -> list[str]:
    shop = bench.shop()
    return [t.id for t in (*shop.machines, *shop.pads, *shop.products, *shop.lamps) if not t.retired]


def test_their_combinations_are_kept_to_tell_the_job_and_do_not_stand_in_the_range(
    hands: Hands, theirs: Bench, tmp_path: Path
) -> None:
    hands.tried("roof")
    before, shelf = combinations_in_use(theirs.shop()), on_the_shelf(theirs)
    assert "kept as retired" in taken_in(hands, theirs, tmp_path)
    assert combinations_in_use(theirs.shop()) == before
    assert on_the_shelf(theirs) == shelf
    assert len(theirs.shop().combinations) == len(before) + 1
    picture = theirs.job(hands.job)
    (group,) = (g for g in picture.groups if "roof" in g.panels)
    (told_one,) = told(picture, group.id)
    assert told_one.outcome is not None
    assert "medium polish" in told_one.name
    assert check(theirs.store).troubles == ()


def test_kit_this_shop_has_itself_stays_in_its_range(hands: Hands, tmp_path: Path) -> None:
    hands.tried("roof")
    write_job(hands.shop.bench.store, hands.job, tmp_path / "job.json")
    before = combinations_in_use(hands.shop.bench.shop())
    assert hands.shop.bench.do(ImportJob((tmp_path / "job.json").read_bytes())).note.startswith("This job is here")
    assert combinations_in_use(hands.shop.bench.shop()) == before


def test_their_trials_are_never_told_as_tried_here(hands: Hands, theirs: Bench, tmp_path: Path) -> None:
    hands.tried("roof")
    taken_in(hands, theirs, tmp_path)
    mine = theirs.do(NewJob(car={"paint_code": "X1"})).scope
    found = like_before(theirs.job(mine), theirs.jobs_with_trials())
    assert found is not None
    said = "Tried by another workshop, same colour code: one job. Nothing adopted there is known to serve."
    assert found.sentence == said
    assert (found.jobs, found.elsewhere) == ((), (hands.job,))
    assert [t.elsewhere for t in trials_before(theirs.jobs_with_trials())] == [True]
    assert [t.elsewhere for t in trials_before([hands.picture])] == [False]


def test_their_trials_move_neither_the_prior_nor_the_range_picture(hands: Hands, tmp_path: Path) -> None:
    """Even with the same kit: a copy of this workshop took the job in."""
    hands.tried("roof")
    taken_in(hands, other := copied(hands.shop, tmp_path), tmp_path)
    mine = other.do(NewJob(car={"paint_code": "X1"})).scope
    picture = other.job(mine)
    (group,) = (g for g in picture.groups if "roof" in g.panels)
    assert like_paint(picture, group.id, other.jobs_with_trials()) == ()
    assert all(rung.before == () for rung in range_picture(picture, group.id, other.jobs_with_trials()).rungs)
    assert like_paint(picture, group.id, [hands.picture]) != ()  # the same as this shop's own would
    other.close()


def copied(shop: InventedShop, folder: Path) -> Bench:
    """A workshop begun with this one's kit."""
    bench = Bench(folder / "copy", HandClock(INVENTED_NOW))
    kit = shop.bench.shop()
    with bench.store.writing(INVENTED_NOW, "") as w:
        for thing in (*kit.machines, *kit.pads, *kit.products, *kit.combinations, *kit.people):
            w.bring_in(thing)
        w.sign_off("shop", "AddToShop", "the kit of then", undoable=False)
    return bench


def test_what_they_measured_is_no_reading_of_this_shop(hands: Hands, theirs: Bench, tmp_path: Path) -> None:
    trial = measured(hands).trial
    assert measured_trials((hands.picture,), trial.combination_id)
    taken_in(hands, theirs, tmp_path)
    assert measured_trials((theirs.job(hands.job),), trial.combination_id) == ()


def test_what_is_tried_here_since_is_this_shops_unless_it_stands_on_their_place(
    hands: Hands, theirs: Bench, tmp_path: Path
) -> None:
    hands.tried("roof", finish="even_haze")
    taken_in(hands, theirs, tmp_path)
    (first,) = theirs.job(hands.job).trials
    (group,) = (g for g in theirs.job(hands.job).groups if "roof" in g.panels)
    own = combinations_in_use(theirs.shop())[1].id
    on_theirs = theirs.do(RecordTrial(hands.job, group.id, "roof", own, on_top_of=first.id)).id
    fresh = theirs.do(RecordTrial(hands.job, group.id, "roof", own)).id
    theirs.do(JudgeTrial(hands.job, on_theirs, "yes", "clear"))
    theirs.do(JudgeTrial(hands.job, fresh, "no", "clear"))
    picture = theirs.job(hands.job)
    assert [t.id for t in own_trials(picture)] == [fresh]
    assert [[t.id for t in p.trials] for p in as_own([picture])] == [[fresh]]


def test_nothing_is_ranked_where_only_their_kit_was_tried(hands: Hands, theirs: Bench, tmp_path: Path) -> None:
    hands.tried("roof", cleared="no")
    taken_in(hands, theirs, tmp_path)
    picture = theirs.job(hands.job)
    (group,) = (g for g in picture.groups if "roof" in g.panels)
    asked = ask_adviser(picture, group.id, panel="roof")
    assert asked is not None
    says = adviser_says(asked)
    assert (says.move, says.how) == (None, "nothing")
    assert "another workshop with its own kit: begin from the mild end of yours" in says.plain
    own = theirs.do(RecordTrial(hands.job, group.id, "roof", combinations_in_use(theirs.shop())[0].id)).id
    theirs.do(JudgeTrial(hands.job, own, "no", "clear"))
    asked = ask_adviser(theirs.job(hands.job), group.id, panel="roof")
    assert asked is not None
    assert asked.plain is not None
    assert "nobody knows: nothing is ranked" in adviser_says(asked).line
