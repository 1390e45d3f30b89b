"""Every kind of document from the shell, closed or as a draft, on either paper."""

from __future__ import annotations

from pathlib import Path

import pikepdf
import pypdfium2
import pytest
from invented_shop import InventedShop

from detailbench.cli import run
from detailbench.moves.documents import CloseDocument, open_key
from detailbench.moves.shop import SetSetting


def written(file: Path) -> str:
    """The text of page one."""
    with pypdfium2.PdfDocument(file) as document:
        page = document[0]
        words = page.get_textpage()
        found = str(words.get_text_range())
        words.close()
        page.close()
        return found


@pytest.fixture
def folder(invented: InventedShop) -> Path:
    """A job with a closed arrival record and nothing else closed."""
    bench = invented.bench
    bench.do(SetSetting("shop_name", "Invented Bay"))
    job = invented.job()
    bench.do(CloseDocument(job, open_key(bench.folder, bench.shop(), "invented words", invented.clock), "arrival"))
    bench.close()
    return invented.folder


def print_it(folder: Path, to: Path, *more: str) -> int:
    return run(["print", *more, "--workshop", str(folder), "--job", "2031-001", "--to", str(to)])


def test_the_closed_document_of_the_kind_asked_for_is_written(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert print_it(folder, tmp_path / "a.pdf", "arrival") == 0
    assert "Arrival record" in written(tmp_path / "a.pdf")
    assert run(["verify", str(tmp_path / "a.pdf"), "--workshop", str(folder)]) == 0
    assert "Not changed since it was closed." in capsys.readouterr().out
    assert print_it(folder, tmp_path / "r.pdf") == 1
    assert "No such document was closed in this job yet." in capsys.readouterr().err
    assert not (tmp_path / "r.pdf").exists()


@pytest.mark.parametrize(
    ("kind", "title"),
    [("arrival", "Arrival record"), ("supplement", "Supplement"), ("report", "Handover report")],
)
def test_a_draft_of_any_kind_on_the_paper_asked_for(kind: str, title: str, folder: Path, tmp_path: Path) -> None:
    assert print_it(folder, tmp_path / "d.pdf", kind, "--draft", "--paper", "Letter") == 0
    assert title in written(tmp_path / "d.pdf")
    with pikepdf.open(tmp_path / "d.pdf") as pdf:
        assert [float(v) for v in pdf.pages[0].mediabox] == [0, 0, 612, 792]


def test_a_closed_document_stays_on_its_paper(folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert print_it(folder, tmp_path / "a.pdf", "arrival", "--paper", "Letter") == 1
    assert "stays on the paper it was closed on" in capsys.readouterr().err


def test_a_template_to_measure_by_is_written_and_is_never_a_draft(folder: Path, tmp_path: Path) -> None:
    assert print_it(folder, tmp_path / "t.pdf", "template") == 0
    assert "Template to measure by" in written(tmp_path / "t.pdf")
    assert print_it(folder, tmp_path / "d.pdf", "template", "--draft") == 1
    assert not (tmp_path / "d.pdf").exists()
