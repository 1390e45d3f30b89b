"""The supplement: which items a closed document lists, which the owner answered, and the start that waits for it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

import pytest
from invented_findings import Hands

from detailbench.basics.errors import BadInput, Refused
from detailbench.findings.supplement import items, not_closed, offered, supplement_stops, unanswered
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.marks import RecordMark, StrikeMark
from detailbench.moves.move import Done
from detailbench.moves.supplement import AddSupplementItem, StrikeSupplementItem
from detailbench.moves.surface import SetState
from detailbench.moves.work import StartStep
from detailbench.record.things import Document
from detailbench.record.writing import Writer


@dataclass(frozen=True)
class Closed:
    """A document of this kind as it stands after closing; its pages are no part of these tests."""

    undoable: ClassVar[bool] = False
    job_id: str
    kind: str

    def make(self, w: Writer) -> Done:
        kept = w.keep_file(f"pages of {self.kind} {w.n}".encode(), "application/pdf", "pages.pdf")
        made = w.add(
            Document, job_id=self.job_id, kind=self.kind, evidence_id=kept.id, sha256=kept.sha256, pages=1,
            key_fingerprint="", chain_head=w.chain_head,
        )  # fmt: skip
        return Done(self.job_id, "closed", made.id)


def item(hands: Hands, words: str = "two deep scratches", panel: str = "roof") -> str:
    return hands.do(AddSupplementItem(hands.job, words, panel))


def asked(hands: Hands, document: str) -> str:
    return hands.do(AskOwner(hands.job, "supplement", "the scratches stay?", document_id=document))


def told(hands: Hands, document: str, answer: str) -> None:
    hands.do(AnswerOwner(hands.job, asked(hands, document), answer, "telephone"))


def stops(hands: Hands) -> list[str]:
    return [stop.rule for stop in supplement_stops(hands.picture)]


# closed and answered
def test_without_an_item_nothing_stops(hands: Hands) -> None:
    assert stops(hands) == []


def test_an_item_stops_until_it_is_closed_and_answered(hands: Hands) -> None:
    item(hands)
    assert stops(hands) == ["supplement"]
    assert "not closed" in supplement_stops(hands.picture)[0].sentence
    document = hands.do(Closed(hands.job, "supplement"))
    assert not_closed(hands.picture) == ()
    assert "has not answered the supplement" in supplement_stops(hands.picture)[0].sentence
    agreement = asked(hands, document)
    assert stops(hands) == ["supplement"]
    hands.do(AnswerOwner(hands.job, agreement, "yes", "telephone"))
    assert stops(hands) == []


@pytest.mark.parametrize(("answer", "left"), [("yes", 0), ("yes_with_remark", 0), ("no", 0), ("withdrawn", 1)])
def test_any_answer_is_an_answer_and_a_question_taken_back_is_none(hands: Hands, answer: str, left: int) -> None:
    item(hands)
    agreement = asked(hands, hands.do(Closed(hands.job, "supplement")))
    remark = "leave them" if answer == "yes_with_remark" else ""
    hands.do(AnswerOwner(hands.job, agreement, answer, "telephone", remark=remark))
    assert len(unanswered(hands.picture)) == left


def test_what_was_found_after_the_closing_waits_for_the_next_supplement(hands: Hands) -> None:
    first = item(hands)
    told(hands, hands.do(Closed(hands.job, "supplement")), "yes")
    second = item(hands, "one more", "bonnet")
    seen = {s.item.id: s for s in items(hands.picture)}
    assert seen[first].answered
    assert seen[second].document is None
    assert stops(hands) == ["supplement"]
    told(hands, hands.do(Closed(hands.job, "supplement")), "no")
    assert stops(hands) == []


def test_an_answer_to_the_earlier_supplement_is_none_to_the_later_item(hands: Hands) -> None:
    item(hands)
    first = hands.do(Closed(hands.job, "supplement"))
    item(hands, "one more", "bonnet")
    hands.do(Closed(hands.job, "supplement"))
    told(hands, first, "yes")
    assert [i.words for i in unanswered(hands.picture)] == ["one more"]


def test_an_answer_to_the_later_supplement_answers_all_it_lists(hands: Hands) -> None:
    item(hands)
    hands.do(Closed(hands.job, "supplement"))
    item(hands, "one more", "bonnet")
    told(hands, hands.do(Closed(hands.job, "supplement")), "yes")
    assert unanswered(hands.picture) == ()


def test_another_kind_of_document_lists_nothing(hands: Hands) -> None:
    item(hands)
    arrival = hands.do(Closed(hands.job, "arrival"))
    with pytest.raises(BadInput, match="no supplement"):
        asked(hands, arrival)
    assert stops(hands) == ["supplement"]


# the gate
def test_a_start_is_refused_and_a_name_with_a_reason_sets_it_aside(hands: Hands) -> None:
    step = hands.adopted("roof")
    hands.survey({"roof": (110.0, 111.0, 112.0, 109.0, 110.0)})
    item(hands)
    with pytest.raises(Refused, match="supplement") as caught:
        hands.do(StartStep(hands.job, "roof", step.id))
    assert (caught.value.rule, caught.value.may_override) == ("supplement", True)
    hands.do(StartStep(hands.job, "roof", step.id, override="owner stands beside"))
    assert [(o.rule, o.reason) for o in hands.picture.overrides] == [("supplement", "owner stands beside")]


# striking
def test_an_item_is_struck_only_while_no_closed_supplement_lists_it(hands: Hands) -> None:
    first = item(hands)
    hands.do(StrikeSupplementItem(hands.job, first))
    assert hands.picture.supplement == ()
    second = item(hands)
    hands.do(Closed(hands.job, "supplement"))
    with pytest.raises(Refused, match="closed supplement lists it"):
        hands.do(StrikeSupplementItem(hands.job, second))
    assert [i.id for i in hands.picture.supplement] == [second]


# marks that ask to be told
def mark(hands: Hands, depth: int | None = None, intent: str = "leave", panel: str = "roof") -> str:
    return hands.do(RecordMark(hands.job, panel, "scratch_single", 3, depth, intent))


def test_marks_to_refer_and_marks_deeper_than_felt_and_seen_wet_are_offered_never_added(hands: Hands) -> None:
    deep, to_refer = mark(hands, 4), mark(hands, 3, "refer")
    mark(hands, 3)
    mark(hands)
    assert [m.id for m in offered(hands.picture)] == [deep, to_refer]
    assert hands.picture.supplement == ()
    assert stops(hands) == []


def test_an_offered_mark_is_taken_in_once_with_its_own_words_and_panel(hands: Hands) -> None:
    found = mark(hands, 4)
    hands.do(AddSupplementItem(hands.job, mark_id=found))
    taken = hands.picture.supplement[-1]
    assert (taken.panel, taken.mark_id) == ("roof", found)
    assert "severity 3" in taken.words
    assert offered(hands.picture) == ()
    with pytest.raises(Refused, match="already"):
        hands.do(AddSupplementItem(hands.job, mark_id=found))


def test_what_was_marked_before_the_arrival_record_was_closed_is_the_owners_to_know_already(hands: Hands) -> None:
    mark(hands, 4)
    hands.do(Closed(hands.job, "arrival"))
    assert offered(hands.picture) == ()
    later = mark(hands, 5)
    assert [m.id for m in offered(hands.picture)] == [later]


def test_a_mark_an_item_rests_on_stays_until_the_item_is_struck(hands: Hands) -> None:
    found = mark(hands, 4)
    made = hands.do(AddSupplementItem(hands.job, mark_id=found))
    with pytest.raises(Refused, match="supplement"):
        hands.do(StrikeMark(hands.job, found))
    hands.do(StrikeSupplementItem(hands.job, made))
    hands.do(StrikeMark(hands.job, found))
    assert hands.picture.marks == ()


# refusals
@pytest.mark.parametrize(("words", "panel"), [("", "roof"), (" … ", "roof"), ("a scratch", "wheel")])
def test_an_item_without_words_or_of_no_panel_is_refused(hands: Hands, words: str, panel: str) -> None:
    with pytest.raises(BadInput):
        hands.do(AddSupplementItem(hands.job, words, panel))
    assert hands.picture.supplement == ()


def test_an_item_of_a_mark_stands_at_the_marks_panel(hands: Hands) -> None:
    found = mark(hands, 4)
    with pytest.raises(BadInput, match="on the roof"):
        hands.do(AddSupplementItem(hands.job, "a scratch", "bonnet", found))


def test_what_is_typed_is_kept_as_typed(hands: Hands) -> None:
    words = '<b>&" =HYPERLINK("x") ' + "long " * 60
    item(hands, words)
    assert hands.picture.supplement[-1].words == words.strip()


def test_an_item_may_be_of_the_whole_car(hands: Hands) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="washed"))
    item(hands, "tar spots all along the lower half", "")
    assert supplement_stops(hands.picture)[0].sentence.endswith("tar spots all along the lower half.")
