"""The shop's settings: bounds, whose a value is, and a value an older program kept that cannot be."""

from __future__ import annotations

import json

import pytest
from invented_findings import Hands
from invented_shop import INVENTED_NOW
from test_findings_removal import measured

from detailbench.basics.errors import BadInput
from detailbench.findings.range_picture import range_picture
from detailbench.findings.settings import DEFAULTS, all_kept_unfit, kept_unfit, paint_to_paint, setting, whose
from detailbench.findings.settings_bounds import WITHIN, setting_unfit
from detailbench.findings.technique import setup_of, technique_figures
from detailbench.moves.shop import SetSetting
from detailbench.moves.trials import CorrectTrial
from detailbench.record.things import Setting


def kept_by_an_older_program(hands: Hands, key: str, value: float) -> None:
    with hands.shop.bench.store.writing(INVENTED_NOW, "") as w:
        w.add(Setting, key=key, value=json.dumps(value))
        w.sign_off("shop", "SetSetting", "setting changed", undoable=True)
    hands.shop.reopened()


def test_every_default_lies_within_its_own_bounds() -> None:
    assert [key for key, d in DEFAULTS.items() if setting_unfit(key, d.value)] == []
    assert set(WITHIN) <= set(DEFAULTS)


@pytest.mark.parametrize(
    ("key", "value"),
    [("stop_metal_c", 2000.0), ("stop_plastic_c", 0.0), ("start_below_c", 90.0), ("force_firm_n", 1e9),
     ("wait_s", 1e9), ("trial_min", 1e6), ("paint_to_paint_percent", 0.0)],
)  # fmt: skip
def test_a_setting_that_cannot_be_is_refused(hands: Hands, key: str, value: float) -> None:
    with pytest.raises(BadInput, match=r"between|more than nothing") as refused:
        hands.do(SetSetting(key, value))
    assert refused.value.field == key


def test_a_stop_setting_that_was_changed_is_told_as_the_shops_own(hands: Hands) -> None:
    trial = measured(hands).trial
    hands.do(CorrectTrial(hands.job, trial.id, {"surface_after_c": 44.0}))

    def told() -> str:
        made = next(t for t in hands.picture.trials if t.id == trial.id)
        warm = technique_figures(hands.picture, setup_of(made)).warmth
        assert warm is not None
        return warm.sentence

    assert "common practice, no source" in told()
    hands.do(SetSetting("stop_metal_c", 60.0))
    assert "60" in told()
    assert "(the shop's own setting)" in told()
    assert "common practice" not in told()


def test_a_scatter_of_nothing_kept_long_ago_is_as_if_not_set_and_is_said(hands: Hands) -> None:
    measured(hands)
    group = hands.shop.group(hands.job, "tailgate")
    before = range_picture(hands.picture, group.id)
    kept_by_an_older_program(hands, "paint_to_paint_percent", 0.0)
    shop = hands.picture.shop
    assert paint_to_paint(shop) == 0.4
    assert [r.taken_line for r in range_picture(hands.picture, group.id).rungs] == [r.taken_line for r in before.rungs]
    assert any(r.taken.median_rate is not None for r in before.rungs)
    said = kept_unfit(shop, "paint_to_paint_percent").replace("\u00a0", " ")
    assert (
        said
        == "Kept here is 0 %, which cannot be used. That must be more than nothing. Until it is changed 40 % is used."
    )
    assert "scatter of what comes off" in all_kept_unfit(shop)
    assert whose(shop, "paint_to_paint_percent") == "common practice, no source"
    hands.do(SetSetting("paint_to_paint_percent", 30.0))
    assert all_kept_unfit(hands.picture.shop) == ""
    assert (
        setting(hands.picture.shop, "paint_to_paint_percent"),
        whose(hands.picture.shop, "paint_to_paint_percent"),
    ) == (
        30.0,
        "the shop's own setting",
    )
