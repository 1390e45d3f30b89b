"""The walk round the car is turned round by the shop once, and every list follows it."""

from __future__ import annotations

from typing import Any

import pytest
from invented_findings import Hands

from detailbench.basics.errors import BadInput
from detailbench.findings.plan import work_plan
from detailbench.findings.walking import panels_in_order
from detailbench.moves.shop import SetSetting
from detailbench.report import handover_content
from detailbench.report.pages.template import template_places


def turned(hands: Hands) -> tuple[str, ...]:
    hands.do(SetSetting("walk_from", "bumper_rear"))
    hands.do(SetSetting("walk_turn", "right"))
    return panels_in_order(hands.picture)


def test_plan_paper_and_report_follow_the_shops_walk(hands: Hands) -> None:
    usual = panels_in_order(hands.picture)
    order = turned(hands)
    assert order[0] == "bumper_rear"
    assert order != usual
    assert sorted(order) == sorted(usual)
    papers = list(dict.fromkeys(p.panel for p in template_places(hands.picture)))
    assert papers == [k for k in order if k in papers]
    plan = work_plan(hands.picture)
    assert list(plan.without_process) == [k for k in order if k in plan.without_process]
    hands.survey({"roof": (118.0,) * 5, "tailgate": (119.0,) * 5, "bonnet": (117.0,) * 5})
    content = handover_content(
        hands.picture, now=hands.shop.clock.now(), version="0", read_file=lambda _sha: b"", key_fingerprint=""
    )
    section = next(s for s in content.sections if s.title == "Readings, panel by panel")
    sheets = [b.panel for b in section.blocks if hasattr(b, "dots")]
    assert sheets == [k for k in order if k in ("roof", "tailgate", "bonnet")]


@pytest.mark.parametrize(
    ("key", "value"),
    [("walk_from", "tonneau"), ("walk_from", ""), ("walk_turn", "back"), ("most_risk", 0.5), ("most_risk", 0),
     ("largest_share", 1.0), ("reserve_um", 0), ("undercoats_u_um", 0), ("reserve_um", -3.0)],
)  # fmt: skip
def test_a_setting_that_cannot_be_is_refused_in_words(hands: Hands, key: str, value: Any) -> None:
    with pytest.raises(BadInput):
        hands.do(SetSetting(key, value))
