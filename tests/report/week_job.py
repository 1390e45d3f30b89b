"""A week as it really went, played from its walk script, frozen; and every document made of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from whole_job import FINGERPRINT

from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.player import play
from detailbench.cli.walking.grammar import read_walk_file
from detailbench.record.past import PutRight, put_right
from detailbench.record.picture import JobPicture
from detailbench.report import DocumentContent, content_of

HERE = Path(__file__).parent
KINDS = ("arrival", "supplement", "handover")


@dataclass(frozen=True)
class Week:
    """The job as a frozen picture, the bytes of its files by hash, what was put right."""

    picture: JobPicture
    past: tuple[PutRight, ...]
    now: datetime
    files: dict[str, bytes]

    def content(
        self, kind: str = "handover", picture: JobPicture | None = None, past: Sequence[PutRight] | None = None
    ) -> DocumentContent:
        return content_of(kind)(
            picture or self.picture,
            now=self.now,
            version="9.9.9",
            read_file=self.files.__getitem__,
            key_fingerprint=FINGERPRINT,
            past=self.past if past is None else past,
        )


def played(folder: Path, script: str = "week_as_it_went.walk") -> Week:
    """Play the script in a new workshop and freeze the job as it stands behind its last line."""
    hand = Hand(folder / "workshop", HERE, folder, "an invented passphrase")
    play(read_walk_file(HERE / script), hand)
    hand.open()
    picture = hand.picture
    with hand.bench.store.reading() as connection:
        past = put_right(connection, hand.job)
    files = {e.sha256: hand.bench.store.files.read(e.sha256) for e in picture.shop.evidence}
    now = hand.clock.now()
    hand.close()
    return Week(picture, past, now, files)
