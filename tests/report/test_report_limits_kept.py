"""Whether the record shows the owner's limits kept, in the words printed with each."""

from __future__ import annotations

from collections.abc import Callable

from invented_limits import PutLimit
from invented_shop import InventedShop
from reading_reports import said_in

from detailbench.moves.handover import RecordProtection
from detailbench.moves.surface import SetState
from detailbench.moves.washing import RecordWashStep
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


def test_clay_or_protection_on_a_panel_not_to_be_touched_is_printed_as_not_kept(
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
        assert "Not kept: work is recorded on roof." in said_in(report_of(job))
