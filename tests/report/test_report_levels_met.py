"""Two finish groups with an approved test section each: the owner's word on one is not printed under the other."""

from __future__ import annotations

from decimal import Decimal

import pytest
from invented_findings import Hands
from invented_findings import hands as hands
from reading_reports import figures, said_in
from whole_job import frozen

from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.handover import RecordAcceptance
from detailbench.moves.surface import MakeGroup
from detailbench.report import DocumentContent
from detailbench.report.content.parts import Counted, plain


def agreed(hands: Hands, panel: str, level: str, price: str = "100") -> str:
    hands.tried(panel)
    trial = hands.picture.trials[-1].id
    asked = hands.do(
        AskOwner(hands.job, "test_section", "Like this?", Decimal(price), (panel,), trial_id=trial, level=level)
    )
    hands.do(AnswerOwner(hands.job, asked, "yes", "present"))
    return asked


@pytest.fixture
def sections(hands: Hands) -> tuple[str, str]:
    hands.do(MakeGroup(hands.job, "the roof", ("roof",)))
    return agreed(hands, "bonnet", "swirls gone"), agreed(hands, "roof", "haze gone")


def part(content: DocumentContent, title: str) -> str:
    return said_in(next(s for s in (*content.sections, content.signing) if s.title == title))


def test_each_section_carries_its_own_answer_and_the_line_to_be_signed_names_both(
    hands: Hands, sections: tuple[str, str]
) -> None:
    bonnet, roof = sections
    hands.do(
        RecordAcceptance(hands.job, "with_remarks", "still hazy", "daylight", sections={bonnet: "yes", roof: "no"})
    )
    content = frozen(hands.shop, hands.job).content()
    body, of_roof = part(content, "Test sections").split("the roof: ", 1)
    assert ("At handover: as agreed." in body, "At handover: not as agreed." in body) == (True, False)
    assert ("At handover: as agreed." in of_roof, "At handover: not as agreed." in of_roof) == (False, True)
    accepted = part(content, "Acceptance and signatures")
    assert "Body, bonnet: swirls gone: as agreed." in accepted
    assert "the roof, roof: haze gone: not as agreed." in accepted
    assert (
        "Accepted with the remarks above. Test section on the bonnet, “swirls gone”: as agreed. Test section on the "
        "roof, “haze gone”: not as agreed. I received this report"
    ) in accepted


def on_page_one(hands: Hands, title: str = "Answer") -> str:
    rows = frozen(hands.shop, hands.job).content().front.rows.rows
    return " ".join(plain(text) for row in rows if row.label == title for text in row.texts)


def test_page_one_says_on_which_panel_the_work_is_not_as_agreed(hands: Hands, sections: tuple[str, str]) -> None:
    bonnet, roof = sections
    hands.do(
        RecordAcceptance(hands.job, "with_remarks", "still hazy", "daylight", sections={bonnet: "yes", roof: "no"})
    )
    said = on_page_one(hands)
    assert said.startswith("Accepted by the owner with remarks, printed on the last page, ")
    assert said.endswith(". Not as agreed: roof.")
    hands.later()
    both = {bonnet: "no", roof: "no"}
    hands.do(RecordAcceptance(hands.job, "not_accepted", "still hazy", "daylight", sections=both))
    assert on_page_one(hands).endswith(". Not as agreed: bonnet and roof.")
    hands.later()
    both = {bonnet: "yes", roof: "yes"}
    hands.do(RecordAcceptance(hands.job, "accepted", "", "daylight", sections=both))
    assert "ot as agreed" not in on_page_one(hands)


def test_of_the_only_section_page_one_says_it_too(hands: Hands) -> None:
    agreed(hands, "roof", "haze gone")
    hands.do(RecordAcceptance(hands.job, "with_remarks", "still hazy", "daylight", "no"))
    assert on_page_one(hands).endswith(". Not as agreed: roof.")


def test_of_many_panels_not_as_agreed_page_one_gives_the_number_and_what_it_counts(hands: Hands) -> None:
    panels = ("bonnet", "roof", "tailgate", "wing_front_l")
    for panel in panels[1:]:
        hands.do(MakeGroup(hands.job, f"the {panel}", (panel,)))
    answers = {agreed(hands, panel, "haze gone"): "no" for panel in panels}
    hands.do(RecordAcceptance(hands.job, "not_accepted", "still hazy", "daylight", sections=answers))
    assert on_page_one(hands).endswith(". Not as agreed: 4 panels.")
    counted = [f for f in figures(frozen(hands.shop, hands.job).content()) if isinstance(f.trace, Counted)]
    assert any(set(f.trace.of) == set(panels) for f in counted if isinstance(f.trace, Counted))


def test_not_as_agreed_of_no_section_by_name_stands_on_page_one(hands: Hands, sections: tuple[str, str]) -> None:
    hands.do(RecordAcceptance(hands.job, "with_remarks", "still hazy", "daylight", "no"))
    assert on_page_one(hands).endswith(". Not as agreed; of which test section was not said.")


def test_a_word_of_no_section_by_name_is_printed_under_none(hands: Hands, sections: tuple[str, str]) -> None:
    hands.do(RecordAcceptance(hands.job, "with_remarks", "still hazy", "daylight", "no"))
    content = frozen(hands.shop, hands.job).content()
    assert "At handover" not in part(content, "Test sections")
    assert "not as agreed; of which test section was not said" in part(content, "Acceptance and signatures")


def test_of_two_agreed_sections_of_one_finish_group_it_is_printed_which_counts(hands: Hands) -> None:
    agreed(hands, "bonnet", "swirls gone", "640")
    hands.later()
    agreed(hands, "roof", "less will do", "500")
    content = frozen(hands.shop, hands.job).content()
    text = " ".join(said_in(section) for section in content.sections)
    assert text.count("a newer answer about the same finish group counts, on its section on the roof") == 1
    assert "level for these panels: less will do" in text
    assert "level for these panels: swirls gone" not in text
