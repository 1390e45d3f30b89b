"""A retired machine, pad or compound: its combinations are proposed for no new trial, what was seen with them stays."""

from __future__ import annotations

import pytest
from invented_findings import Hands

from detailbench.findings.adviser import AdviserSays, adviser_says, ask_adviser
from detailbench.findings.kit_names import combination_name, combinations_in_use
from detailbench.findings.kit_retired import hang_on, out_of_use
from detailbench.findings.range_picture import range_picture
from detailbench.findings.range_shown import range_shown
from detailbench.findings.trial_story import known_range, range_combinations, told
from detailbench.moves.shop import AddToShop, ChangeInShop, Retire
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.moves.turning import TurnJob
from detailbench.record.things import Combination


def at(hands: Hands, rung: int) -> Combination:
    return range_combinations(hands.picture, hands.shop.group(hands.job, "roof").id)[rung]


def asked(hands: Hands) -> AdviserSays:
    group = hands.shop.group(hands.job, "roof")
    question = ask_adviser(hands.picture, group.id, panel="roof")
    assert question is not None
    return adviser_says(question)


def names_with(hands: Hands, pad_id: str) -> set[str]:
    shop = hands.picture.shop
    return {combination_name(shop, c.id) for c in shop.combinations if c.pad_id == pad_id}


def test_neither_the_rule_nor_the_adviser_begins_with_a_retired_pad(hands: Hands) -> None:
    middle = at(hands, 4)
    assert combination_name(hands.picture.shop, middle.id) in asked(hands).plain
    hands.do(Retire("pad", middle.pad_id))
    says = asked(hands)
    assert "Start with" in says.plain
    for name in names_with(hands, middle.pad_id):
        assert name not in says.plain + says.line


def test_what_was_not_tried_goes_out_of_the_range_and_what_was_says_it_is_retired(hands: Hands) -> None:
    tried = hands.tried("roof", rung=4, cleared="no")
    pad = at(hands, 4).pad_id
    others = [c.id for c in combinations_in_use(hands.picture.shop) if c.pad_id == pad and c.id != tried]
    assert others
    hands.do(Retire("pad", pad))
    group = hands.shop.group(hands.job, "roof")
    rungs = {r.key: r for r in range_shown(hands.picture, range_picture(hands.picture, group.id))}
    assert not set(others) & set(rungs)
    assert rungs[tried].words.startswith("retired, for no new trial; ")
    assert sum("retired" in r.words for r in rungs.values()) == 1
    assert rungs[tried].sign == "failed"


@pytest.mark.parametrize("kind", ["combination", "machine", "pad", "product"])
def test_after_an_outcome_the_next_step_is_never_a_retired_one(hands: Hands, kind: str) -> None:
    hands.tried("roof", rung=3, cleared="no")
    group = hands.shop.group(hands.job, "roof")
    (one,) = told(hands.picture, group.id)
    assert one.advice is not None
    way = next(o for o in (one.advice.chosen, *one.advice.next_options) if o.result == "stronger")
    assert way.rung is not None
    next_up = at(hands, way.rung)
    part = next_up.id if kind == "combination" else getattr(next_up, f"{kind}_id")
    hands.do(Retire(kind, part))
    gone = out_of_use(hands.picture.shop)
    assert next_up.id in gone
    (one,) = told(hands.picture, group.id)
    assert one.advice is not None
    range_ = known_range(hands.picture, group.id)
    for option in (one.advice.chosen, *one.advice.next_options):
        assert option.rung is None or range_[option.rung].rung.key not in gone, option.result
        assert option.then is None or range_[option.then].rung.key not in gone


def test_one_that_served_is_kept_for_what_it_did_though_it_is_retired_since(hands: Hands) -> None:
    tried = hands.tried("roof", rung=3)
    hands.do(Retire("combination", tried))
    (one,) = told(hands.picture, hands.shop.group(hands.job, "roof").id)
    assert one.advice is not None
    assert one.advice.chosen.result == "keep"


def test_what_a_retired_one_did_not_clear_no_milder_one_is_tried_for(hands: Hands) -> None:
    hands.tried("roof", rung=4, cleared="no")
    tried = at(hands, 4)
    before = asked(hands).move
    hands.do(Retire("combination", tried.id))
    move = asked(hands).move
    assert before is not None
    assert move is not None
    assert (move.kind, at(hands, move.rung or 0).rung > tried.rung) == ("try", True)


def test_a_part_that_has_another_name_is_not_retired(hands: Hands) -> None:
    middle = at(hands, 4)
    hands.do(ChangeInShop("pad", middle.pad_id, {"name": "invented name"}))
    assert out_of_use(hands.picture.shop) == frozenset()
    new = next(p for p in hands.picture.shop.pads if p.replaces == middle.pad_id)
    hands.do(Retire("pad", new.id))
    assert middle.id in out_of_use(hands.picture.shop)


def test_a_job_whose_car_has_left_tells_what_it_told(hands: Hands) -> None:
    hands.tried("roof", rung=3, cleared="no")
    group = hands.shop.group(hands.job, "roof")
    hands.do(TurnJob(hands.job, "fetched_early", "the owner fetched it"))
    before = [t.advice for t in told(hands.picture, group.id)]
    hands.do(Retire("pad", at(hands, 4).pad_id))
    assert [t.advice for t in told(hands.picture, group.id)] == before
    assert not any(seen.retired for seen in known_range(hands.picture, group.id))


def test_retiring_says_what_hangs_on_it(hands: Hands) -> None:
    pad = at(hands, 4).pad_id
    held = [combination_name(hands.picture.shop, c.id) for c in hang_on(hands.picture.shop, pad)]
    assert held
    said = hands.shop.bench.do(Retire("pad", pad)).note
    assert all(name in said for name in held[:3])
    assert "for no new trial" in said
    assert hands.shop.bench.do(Retire("pad", pad, back=True)).note == ""


def test_more_than_twelve_are_not_ranked_and_it_says_what_to_do(hands: Hands) -> None:
    shop = hands.picture.shop
    extra = []
    taken = {(c.machine_id, c.pad_id, c.product_id) for c in shop.combinations}
    free = [
        (m.id, p.id, q.id)
        for m in shop.machines for p in shop.pads for q in shop.products
        if m.movement != "hand" and (m.id, p.id, q.id) not in taken
    ]  # fmt: skip
    for rung, (machine, pad, product) in enumerate(free[: 13 - len(combinations_in_use(shop))], 20):
        values = {"machine_id": machine, "pad_id": pad, "product_id": product, "rung": rung}
        extra.append(hands.do(AddToShop("combination", values)))
    says = asked(hands)
    assert says.move is None
    assert says.line == "13 combinations may be used here and the adviser ranks 12: retire under Shop what is not used."
    hands.do(Retire("combination", extra[-1]))
    assert asked(hands).move is not None


def test_more_than_twelve_in_doubt_are_told_the_same(hands: Hands) -> None:
    for cleared in ("no", "yes"):
        hands.tried("roof", rung=4, cleared=cleared)
    test_more_than_twelve_are_not_ranked_and_it_says_what_to_do(hands)


def test_a_retired_one_can_still_be_recorded_where_somebody_used_it(hands: Hands) -> None:
    middle = at(hands, 4)
    hands.do(Retire("pad", middle.pad_id))
    group = hands.shop.group(hands.job, "roof")
    trial = hands.do(RecordTrial(hands.job, group.id, "roof", middle.id))
    hands.do(JudgeTrial(hands.job, trial, "no", "clear"))
    assert [t.trial.combination_id for t in told(hands.picture, group.id)] == [middle.id]
