"""The paper template to measure by: every place with its two distances, no reading, nothing of the owner."""

from __future__ import annotations

import pytest
from invented_findings import Hands, hands
from invented_shop import invented, prepared
from reading_reports import pdf_text

from detailbench.basics.errors import BadInput
from detailbench.body.outlines import load_outline
from detailbench.body.where import walk_order
from detailbench.findings.panels import READABLE
from detailbench.findings.walking import panel_places
from detailbench.moves.surface import SetState
from detailbench.report.pages.template import template_pdf, template_places

__all__ = ["hands", "invented", "prepared"]


def test_every_panel_a_gauge_can_read_has_its_places_in_walking_order(hands: Hands) -> None:
    outline = load_outline(hands.picture.car.style, hands.picture.car.length_mm)
    panels = list(dict.fromkeys(p.panel for p in template_places(hands.picture)))
    assert panels == [k for k in walk_order(outline) if outline.panels[k].substrate in READABLE]


def test_places_the_job_has_are_those_on_paper(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="wiped"))
    hands.checked_session()
    hands.read("roof", 111.0)
    kept = panel_places(hands.picture, "roof")
    printed = [p for p in template_places(hands.picture) if p.panel == "roof"]
    assert [(p.number, p.at.edge_a, p.at.a_mm, p.at.edge_b, p.at.b_mm) for p in printed] == [
        (p.number, p.edge_a, p.edge_a_mm, p.edge_b, p.edge_b_mm) for p in kept
    ]


def test_every_place_stands_on_paper_with_two_distances(hands: Hands) -> None:
    words = " ".join(pdf_text(template_pdf(hands.picture)).split())
    for place in template_places(hands.picture):
        assert f"{place.at.a_mm:.0f} mm" in words
        assert f"{place.at.b_mm:.0f} mm" in words
    assert words.count(" mm ") >= len(template_places(hands.picture))


def test_no_reading_and_nothing_of_the_owner_stands_on_it(hands: Hands) -> None:
    hands.checked_session()
    hands.read("roof", 7654.0)
    words = pdf_text(template_pdf(hands.picture))
    assert "Invented Owner" not in words
    assert "INV 01" not in words
    assert "7654" not in words.replace(",", "").replace("\u202f", "")


def test_the_same_car_gives_the_same_bytes_on_either_paper(hands: Hands) -> None:
    a4 = template_pdf(hands.picture)
    assert template_pdf(hands.picture) == a4
    assert template_pdf(hands.picture, page_size="Letter") != a4


def test_a_paper_there_is_none_of_is_refused(hands: Hands) -> None:
    with pytest.raises(BadInput):
        template_pdf(hands.picture, page_size="A9")
