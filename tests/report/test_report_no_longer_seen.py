"""In print: what is true of an adopted process now, where its trials speak against it, or a milder cut cleared too."""

from __future__ import annotations

import pytest
from invented_findings import Hands
from invented_findings import hands as hands
from reading_reports import pdf_text, said_in
from whole_job import frozen

from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.moves.work import AdoptProcess
from detailbench.report import DocumentContent, document_pdf


def content(hands: Hands) -> DocumentContent:
    return frozen(hands.shop, hands.job).content()


def section(hands: Hands) -> str:
    return said_in(next(s for s in content(hands).sections if s.title == "Test sections"))


def trial(hands: Hands, rung: int, *seen: str, panel: str = "roof", on: str = "") -> str:
    combination = hands.picture.shop.combinations[rung].id
    group = hands.shop.group(hands.job, panel)
    made = hands.do(RecordTrial(hands.job, group.id, panel, combination, on_top_of=on))
    hands.do(JudgeTrial(hands.job, made, *seen))
    return made


def polished(hands: Hands) -> None:
    """A step adopted as the mildest that served, and one panel polished with it."""
    hands.tried("roof", 2, "no", "clear")
    step = hands.adopted("roof")
    group = hands.shop.group(hands.job, "roof").id
    steps = [{"combination_id": step.combination_id}]
    hands.do(AdoptProcess(hands.job, group, steps, words="the mildest that served"))  # as the screen once kept it
    hands.polish("roof", hands.picture.steps[-1])


@pytest.mark.parametrize(
    ("seen", "because"),
    [
        (("no", "clear", ""), "last seen not to clear on this paint."),
        (("", "", "colour_on_pad"), "stopped since (colour on pad)"),
    ],
)
def test_what_no_longer_speaks_for_the_process_is_printed_in_the_place_of_the_mildest(
    hands: Hands, seen: tuple[str, str, str], because: str
) -> None:
    polished(hands)
    assert "it was the mildest that served" in section(hands)
    hands.do(JudgeTrial(hands.job, hands.picture.trials[-1].id, *seen))
    text = section(hands)
    assert "The trials no longer speak for the adopted process." in text
    assert because in text
    printed = " ".join(pdf_text(document_pdf(content(hands)).pdf).split())
    assert "its test sections no longer speak for it, see Test sections" in printed
    assert "the mildest that served" not in printed


def test_a_cut_beside_a_milder_one_that_cleared_is_not_called_the_mildest(hands: Hands) -> None:
    trial(hands, 3, "yes", "even_haze")
    for panel in ("roof", "tailgate"):
        trial(hands, 1, "yes", "clear", panel=panel, on=trial(hands, 4, "yes", "even_haze", panel=panel))
    group = hands.shop.group(hands.job, "roof")
    steps = [{"combination_id": hands.picture.shop.combinations[n].id} for n in (4, 1)]
    hands.do(AdoptProcess(hands.job, group.id, steps))
    text = section(hands)
    assert "The two steps were seen to work on this paint; a milder cut was seen to clear as well." in text
    assert "the mildest" not in text.split("Adopted", 1)[-1]


def test_by_hand_after_trials_by_machine_is_printed_as_not_tried(hands: Hands) -> None:
    hands.polish("roof", hands.adopted("roof", means="hand"))
    text = section(hands)
    assert ", by hand." in text
    assert "tried by machine only, not seen to work by hand on this paint." in text
    assert "the mildest" not in text.split("Adopted", 1)[-1]
    printed = " ".join(pdf_text(document_pdf(content(hands)).pdf).split())
    assert "it was not tried by the means it was done with, see Test sections" in printed
    assert "by hand what was tried by machine, or the other way round" in printed
