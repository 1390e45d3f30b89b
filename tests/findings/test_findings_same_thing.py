"""A combination is what it is made of, never what it is called: two of one name are two, one under two names is one."""

from __future__ import annotations

from dataclasses import replace

import pytest
from invented_findings import Hands

from detailbench.basics.errors import Refused
from detailbench.findings.kit_names import combination_name, combinations_in_use, parts
from detailbench.findings.kit_renewal import stand_ins, stands_for
from detailbench.findings.processes import runs_of
from detailbench.findings.range_picture import range_picture
from detailbench.findings.trial_story import confirming_sentence, known_range, may_adopt_steps, told
from detailbench.moves.kit_range import RenewRange
from detailbench.moves.shop import AddToShop, ChangeInShop
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.moves.work import AdoptProcess
from detailbench.record.things import Combination


def rung(hands: Hands, at: int) -> Combination:
    return combinations_in_use(hands.picture.shop)[at]


def name(hands: Hands, combination_id: str) -> str:
    return combination_name(hands.picture.shop, combination_id)


def with_part(hands: Hands, like: Combination, **part: str) -> str:
    """Another combination of the range, with other parts."""
    parts = {"machine_id": like.machine_id, "pad_id": like.pad_id, "product_id": like.product_id, "rung": like.rung + 1}
    return hands.do(AddToShop("combination", {**parts, **part}))


def tried(hands: Hands, combination_id: str, panel: str = "roof", cleared: str = "yes", finish: str = "clear") -> str:
    group = hands.shop.group(hands.job, panel)
    made = hands.do(RecordTrial(hands.job, group.id, panel, combination_id))
    hands.do(JudgeTrial(hands.job, made, cleared, finish))
    return made


def group_id(hands: Hands) -> str:
    return hands.shop.group(hands.job, "roof").id


def adopt(hands: Hands, *combinations: str) -> str:
    return hands.do(AdoptProcess(hands.job, group_id(hands), [{"combination_id": c} for c in combinations]))


def small_pad(hands: Hands, like: Combination) -> str:
    """The starter kit's small pad of the same name."""
    pads = hands.picture.shop.pads
    large = next(p for p in pads if p.id == like.pad_id)
    return next(p.id for p in pads if p.name == large.name and p.id != large.id)


def test_a_small_pad_is_not_adopted_on_the_trials_of_a_large_one_of_its_name(hands: Hands) -> None:
    large = rung(hands, 4)
    small = with_part(hands, large, pad_id=small_pad(hands, large))
    for panel in ("roof", "tailgate"):
        tried(hands, large.id, panel)
    with pytest.raises(Refused, match=r"firm foam 80 mm.*not seen to clear on this paint yet"):
        adopt(hands, small)
    adopt(hands, large.id)


def test_a_small_pad_confirms_nothing_of_a_large_one_of_its_name(hands: Hands) -> None:
    large = rung(hands, 4)
    small = with_part(hands, large, pad_id=small_pad(hands, large))
    tried(hands, large.id, "roof")
    tried(hands, small, "tailgate")
    group = hands.shop.group(hands.job, "roof")
    assert confirming_sentence(hands.picture, group, [large.id]) is not None


def test_a_pad_given_another_diameter_carries_nothing_of_what_was_seen_over(hands: Hands) -> None:
    was = rung(hands, 4)
    for panel in ("roof", "tailgate"):
        tried(hands, was.id, panel)
    hands.do(ChangeInShop("pad", was.pad_id, {"diameter_mm": 90.0}))
    hands.do(RenewRange())
    group = hands.shop.group(hands.job, "roof")
    other = next(c for c in combinations_in_use(hands.picture.shop) if "90 mm" in name(hands, c.id))
    assert may_adopt_steps(hands.picture, group, [other.id])[1] is not None


def test_names_say_what_tells_two_combinations_apart_and_only_then(hands: Hands) -> None:
    plain = rung(hands, 4)
    assert name(hands, plain.id) == "free orbital · firm foam · cutting compound"
    small = with_part(hands, plain, pad_id=small_pad(hands, plain))
    assert name(hands, plain.id) == "free orbital · firm foam 140 mm · cutting compound"
    assert name(hands, small) == "free orbital · firm foam 80 mm · cutting compound"
    machine = hands.do(AddToShop("machine", {"name": "free orbital", "movement": "forced", "orbit_mm": 8.0}))
    other = with_part(hands, plain, machine_id=machine)
    assert name(hands, other).startswith("free orbital orbital, forced orbit 8 mm · ")
    compound = hands.do(AddToShop("product", {"name": "cutting compound", "kind": "one_step"}))
    third = with_part(hands, plain, product_id=compound)
    assert name(hands, third).endswith("cutting compound one step")


def test_two_parts_alike_in_all_but_their_makers_are_numbered(hands: Hands) -> None:
    plain = rung(hands, 4)
    twin = hands.do(AddToShop("pad", {"name": "firm foam", "material": "foam", "diameter_mm": 140.0}))
    second = with_part(hands, plain, pad_id=twin)
    assert name(hands, plain.id) == "free orbital · firm foam · cutting compound"
    assert name(hands, second) == "free orbital · firm foam no. 2 · cutting compound"
    assert stands_for(hands.picture.shop, second) == second


def test_a_new_batch_of_one_name_is_the_same_thing_and_needs_no_number(hands: Hands) -> None:
    plain = rung(hands, 4)
    hands.do(ChangeInShop("product", plain.product_id, {"batch": "B 7"}))
    hands.do(RenewRange())
    shop = hands.picture.shop
    now = stands_for(shop, plain.id)
    assert now != plain.id
    assert name(hands, now) == name(hands, plain.id) == "free orbital · firm foam · cutting compound"


def test_what_was_seen_under_the_old_name_confirms_and_stands_on_one_rung(hands: Hands) -> None:
    was = rung(hands, 4)
    n = len(known_range(hands.picture, group_id(hands)))
    tried(hands, was.id, "roof")
    hands.do(ChangeInShop("product", was.product_id, {"name": "renamed compound"}))
    hands.do(RenewRange())
    now = stand_ins(hands.picture.shop)[was.id]
    assert "renamed compound" in name(hands, now)
    tried(hands, now, "tailgate")
    range_ = known_range(hands.picture, group_id(hands))
    assert len(range_) == n
    assert [s.rung.key for s in range_ if s.works] == [now]
    assert [t.name for t in told(hands.picture, group_id(hands))] == [name(hands, was.id), name(hands, now)]
    adopt(hands, now)
    shown = next(r for r in range_picture(hands.picture, group_id(hands)).rungs if r.combination_id == now)
    assert (len(shown.trials), shown.steps) == (2, (1,))
    assert len(hands.picture.processes[-1].trial_ids) == 2


def test_adopted_under_the_old_name_it_goes_on_under_the_new_one(hands: Hands) -> None:
    was = rung(hands, 4)
    for panel in ("roof", "tailgate"):
        tried(hands, was.id, panel)
    adopt(hands, was.id)
    step = hands.picture.steps[-1]
    hands.polish("roof", step)
    hands.do(ChangeInShop("pad", was.pad_id, {"name": "renamed foam"}))
    hands.do(RenewRange())
    now = stands_for(hands.picture.shop, was.id)
    adopt(hands, now)
    again = hands.picture.steps[-1]
    assert again.combination_id == now
    assert [r.step_id for r in runs_of(hands.picture, "roof", again.id)] == [step.id]
    hands.do_anyway("tailgate", again)


def test_a_combination_is_named_once_for_a_picture_of_the_shop_and_anew_for_another(hands: Hands) -> None:
    shop = hands.picture.shop
    combination = combinations_in_use(shop)[0]
    name = combination_name(shop, combination.id)
    machine, _pad, _product = parts(shop, combination)
    renamed = replace(shop, machines=tuple(replace(m, name="other name") for m in shop.machines if m.id == machine.id))
    assert combination_name(renamed, combination.id) != name
    assert combination_name(shop, combination.id) is name
