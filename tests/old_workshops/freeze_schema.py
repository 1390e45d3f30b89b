"""Freeze a workshop of the present schema for all later versions: run once when a schema is released.

``python tests/old_workshops/freeze_schema.py`` plays the small walk and writes ``schema_N.sqlite.gz`` beside this file,
with ``schema_N.json``: what every later program must find in it. A frozen pair is never written again.
"""

from __future__ import annotations

import gzip
import json
import tempfile
from pathlib import Path

from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.player import play
from detailbench.cli.walking.grammar import read_walk_file
from detailbench.record.schema import SCHEMA
from detailbench.record.store import DATABASE, Store

HERE = Path(__file__).parent


def freeze() -> Path:
    """Write the pair for the present schema; returns the database's file. Raises FileExistsError when it is there."""
    with tempfile.TemporaryDirectory() as folder:
        hand = Hand(Path(folder), HERE, HERE)
        play(read_walk_file(HERE.parent / "walks" / "small_first.walk"), hand)
        store = Store(Path(folder), hand.clock.now(), read_only=True)
        found = facts(store)
        store.close()
        content = (Path(folder) / DATABASE).read_bytes()
    file = HERE / f"schema_{SCHEMA}.sqlite.gz"
    with file.open("xb") as out:
        out.write(gzip.compress(content, mtime=0))
    file.with_name(f"schema_{SCHEMA}.json").write_text(json.dumps(found, indent=1, ensure_ascii=False) + "\n", "utf-8")
    return file


def facts(store: Store) -> dict[str, object]:
    """What a program of any later version must still find."""
    shop = store.shop()
    jobs = [store.job(job.id, shop) for job in shop.jobs]
    return {
        "head": shop.chain_head,
        "people": [p.name for p in shop.people],
        "jobs": [p.job.number for p in jobs],
        "owners": [p.said(p.parties[0].id, "name") for p in jobs],
        "readings_um": [[r.value_um for r in p.readings] for p in jobs],
        "entered_at": [[r.entered_at.isoformat() for r in p.readings] for p in jobs],
    }


if __name__ == "__main__":
    print(freeze())
