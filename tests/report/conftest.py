"""One whole invented job for the tests of this folder, made once; and a fresh shop where a test needs its own."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from invented_handover import HandoverJob
from invented_shop import INVENTED_NOW, InventedShop, invented, invented_shop, prepared
from week_job import Week, played
from whole_job import Whole, frozen

from detailbench.basics.clock import HandClock
from detailbench.report import DocumentContent, DocumentPdf, document_pdf

__all__ = ["invented", "prepared"]


@pytest.fixture(scope="session")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Whole:
    shop = invented_shop(tmp_path_factory.mktemp("handover") / "workshop", HandClock(INVENTED_NOW))
    made = HandoverJob(shop)
    made.all()
    found = frozen(shop, made.job)
    shop.bench.close()
    return found


@pytest.fixture(scope="session")
def content(whole: Whole) -> DocumentContent:
    return whole.content()


@pytest.fixture(scope="session")
def made(content: DocumentContent) -> DocumentPdf:
    return document_pdf(content)


@pytest.fixture
def report_of(invented: InventedShop) -> Callable[[str], DocumentContent]:
    """The content of a job in the shop of this test, as it stands when asked."""
    return lambda job: frozen(invented, job).content()


@pytest.fixture(scope="session")
def week(tmp_path_factory: pytest.TempPathFactory) -> Week:
    """The week as it really goes, behind its last line."""
    return played(tmp_path_factory.mktemp("week"))
