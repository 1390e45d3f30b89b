"""A whole finished job, frozen, and what a report makes of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from invented_shop import InventedShop

from detailbench.basics.errors import RecordTrouble
from detailbench.record.picture import JobPicture
from detailbench.report import DocumentContent, handover_content

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

    def content(self, picture: JobPicture | None = None, fingerprint: str = FINGERPRINT) -> DocumentContent:
        return handover_content(
            picture or self.picture, now=self.now, version="9.9.9", read_file=self.read, key_fingerprint=fingerprint
        )


def frozen(shop: InventedShop, job: str) -> Whole:
    """The job as it stands now."""
    picture = shop.bench.job(job)
    files = {e.sha256: shop.bench.store.files.read(e.sha256) for e in picture.shop.evidence}
    return Whole(picture, shop.clock.now(), files)
