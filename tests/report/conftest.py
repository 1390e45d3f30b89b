"""One whole invented job for the tests of this folder, made once; and a fresh shop where a test needs its own."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

import pytest
from invented_handover import HandoverJob
from invented_shop import INVENTED_NOW, InventedShop, invented, invented_shop, prepared

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import RecordTrouble
from detailbench.record.picture import JobPicture
from detailbench.report import HandoverContent, HandoverPdf, handover_content, handover_pdf

__all__ = ["invented", "prepared"]

FINGERPRINT = "ab12 cd34 ef56 ab12 cd34 ef56 ab12 cd34"


@dataclass(frozen=True)
class Whole:
    """A finished job as a frozen picture, with the bytes of its files by hash."""

    picture: JobPicture
    now: datetime
    files: dict[str, bytes]

    def read(self, sha256: str) -> bytes:
        try:
            return self.files[sha256]
        except KeyError as error:
            raise RecordTrouble("The kept file is missing from the workshop folder.") from error

    def content(self, picture: JobPicture | None = None, fingerprint: str = FINGERPRINT) -> HandoverContent:
        return handover_content(
            picture or self.picture, now=self.now, version="9.9.9", read_file=self.read, key_fingerprint=fingerprint
        )


def frozen(shop: InventedShop, job: str) -> Whole:
    """The job as it stands now."""
    picture = shop.bench.job(job)
    files = {e.sha256: shop.bench.store.files.read(e.sha256) for e in picture.shop.evidence}
    return Whole(picture, shop.clock.now(), files)


@pytest.fixture(scope="session")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Whole:
    shop = invented_shop(tmp_path_factory.mktemp("handover") / "workshop", HandClock(INVENTED_NOW))
    made = HandoverJob(shop)
    made.all()
    found = frozen(shop, made.job)
    shop.bench.close()
    return found


@pytest.fixture(scope="session")
def content(whole: Whole) -> HandoverContent:
    return whole.content()


@pytest.fixture(scope="session")
def made(content: HandoverContent) -> HandoverPdf:
    return handover_pdf(content)


@pytest.fixture
def report_of(invented: InventedShop) -> Callable[[str], HandoverContent]:
    """The content of a job in the shop of this test, as it stands when asked."""
    return lambda job: frozen(invented, job).content()
