"""A job whose owner was forgotten still prints: it says so where a name stood and holds nothing that was deleted."""

from __future__ import annotations

from invented_shop import InventedShop
from photographed_samples import photo
from reading_reports import pdf_text, said_in

from detailbench.moves.forgetting import ForgetOwner
from detailbench.moves.handover import RecordAcceptance, Sign
from detailbench.moves.photos import AddPhoto
from detailbench.record.things import Photo
from detailbench.report import DocumentContent, document_pdf, handover_content

SECRETS = ("Quintessa Unmistakable", "000 111", "INV 01", "please mind the roof", "plate-of-quintessa")


def report_of(invented: InventedShop, job: str) -> DocumentContent:
    return handover_content(
        invented.picture(job),
        now=invented.clock.now(),
        version="0",
        read_file=invented.bench.evidence_bytes,
        key_fingerprint="",
    )


def test_a_forgotten_job_prints_without_a_word_of_its_owner(invented: InventedShop) -> None:
    do = invented.bench.do
    job = invented.job("Quintessa Unmistakable")
    invented.measured(job)
    do(AddPhoto(job, photo(), "plate-of-quintessa.jpg"))
    with invented.bench.store.writing(invented.clock.now(), invented.person) as w:
        w.change(w.every(Photo, job_id=job)[0], shows="plate")
        w.sign_off(job, "CorrectPhoto", "photo corrected", undoable=True)
    do(RecordAcceptance(job, "with_remarks", "please mind the roof"))
    do(Sign(job, "owner", name="Quintessa Unmistakable", strokes=[[(0.1, 0.2), (0.3, 0.4)]]))
    do(Sign(job, "workshop", name="Ana Invented", strokes=[[(0.1, 0.2), (0.3, 0.4)]]))
    before = said_in(report_of(invented, job))
    assert [s for s in SECRETS[:4] if s not in before] == []
    do(ForgetOwner(job))
    content = report_of(invented, job)
    after = said_in(content)
    assert [s for s in SECRETS if s in after] == []
    assert "(name deleted on 10 March 2031)" in after
    assert "was forgotten with its owner's data; only its hash stays" in after
    assert "Ana Invented" in after
    assert "118" in after
    printed = pdf_text(document_pdf(content).pdf)
    assert [s for s in SECRETS if s in printed] == []
