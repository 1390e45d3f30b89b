"""Whether the record shows the owner's limits kept, in the words printed with each."""

from __future__ import annotations

from collections.abc import Callable

from invented_limits import PutLimit
from invented_shop import InventedShop
from reading_reports import said_in

from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.handover import RecordProtection
from detailbench.moves.surface import SetState
from detailbench.moves.washing import RecordWashStep
from detailbench.record.things import OwnerLimit
from detailbench.report import DocumentContent

ReportOf = Callable[[str], DocumentContent]


def test_how_a_panel_was_wiped_under_no_solvent_is_printed_with_the_limit(
    invented: InventedShop, report_of: ReportOf
) -> None:
    job, do = invented.job(), invented.bench.do
    do(PutLimit(job, "no_solvent", ("roof",)))
    do(SetState(job, ("bonnet",), clean="wiped", how="usual wipe, alcohol"))
    do(SetState(job, ("bonnet", "roof"), clean="wiped", how="distilled water only"))
    text = said_in(report_of(job))
    assert (
        "Kept: no step with solvent is recorded there. Roof wiped, as the workshop says: “distilled water only”."
        in text
    )
    assert "as the workshop says: “usual wipe" not in text


def test_what_was_done_before_a_limit_was_entered_is_not_held_against_it(
    invented: InventedShop, report_of: ReportOf
) -> None:
    kept, clayed, waxed = (invented.job() for _n in range(3))
    do = invented.bench.do
    do(RecordWashStep(clayed, "clay", ("roof",)))
    do(RecordProtection(waxed, ("roof",), "invented wax", "wax"))
    do(RecordWashStep(kept, "clay", ("roof",), why_not="owner wants none"))
    for job in (kept, clayed, waxed):
        do(PutLimit(job, "bar_panel", ("roof",)))
    assert "Kept: no clay, test section, work or protection is recorded there." in said_in(report_of(kept))
    for job in (clayed, waxed):
        said = said_in(report_of(job))
        assert "Kept since it was entered; work on roof is recorded from before." in said
        assert "Not kept" not in said


def test_what_was_done_after_a_limit_that_bound_is_printed_as_not_kept(
    invented: InventedShop, report_of: ReportOf
) -> None:
    job, do = invented.job(), invented.bench.do
    limit = do(PutLimit(job, "bar_panel", ("roof",))).id
    wet = do(PutLimit(job, "no_solvent", ("roof",))).id
    for each in (limit, wet):
        do(AnswerOwner(job, do(AskOwner(job, "limit", "may it be?", limit_id=each)).id, "yes", "telephone"))
    do(RecordWashStep(job, "clay", ("roof",)))
    do(RecordProtection(job, ("roof",), "invented wax", "wax"))
    do(RecordWashStep(job, "panel_wipe", ("roof",)))
    with invented.bench.store.writing(invented.clock.now(), invented.person) as w:  # no move leaves it so
        for each in (limit, wet):
            w.change(w.get(OwnerLimit, each), lifted_by="")
        w.sign_off(job, "AnswerOwner", "answered", undoable=True)
    said = said_in(report_of(job))
    assert "Not kept: work is recorded on roof." in said
    assert "Not kept: a step with solvent is recorded on roof." in said
