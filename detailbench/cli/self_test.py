"""Is this installation whole? Each part is really used once, in a folder that is thrown away."""

from __future__ import annotations

import sys
import tempfile
from argparse import Namespace
from collections.abc import Callable
from pathlib import Path

from detailbench.basics.clock import SystemClock
from detailbench.basics.errors import DetailbenchError
from detailbench.basics.shelf import resources
from detailbench.cli import TROUBLE

PASSPHRASE = "a passphrase for this test only"


def try_it(words: Namespace) -> int:
    """Say part by part whether it works; exit code 1 when one does not."""
    parts: tuple[tuple[str, Callable[[Path], str]], ...] = (
        ("resources", _resources),
        ("outline", _outline),
        ("calculations", _calculations),
        ("workshop", _workshop),
        ("backup", _restore),
        ("seal", _seal),
        ("window library", _window),
    )
    well = True
    with tempfile.TemporaryDirectory() as folder:
        for name, part in parts:
            try:
                print(f"{name}: {part(Path(folder))}")
            except (DetailbenchError, ImportError, OSError, AssertionError) as error:
                print(f"{name}: does not work: {error}", file=sys.stderr)
                well = False
    return 0 if well else TROUBLE


def _resources(folder: Path) -> str:
    return f"{sum(1 for p in resources().rglob('*') if p.is_file())} files"


def _outline(folder: Path) -> str:
    from detailbench.body.check_outline import check_outline
    from detailbench.body.outlines import load_outline, styles

    for style in styles():
        complaints = check_outline(resources() / "outlines" / f"{style}.svg")
        if complaints:
            raise AssertionError(complaints[0])
    return ", ".join(f"{s} with {len(load_outline(s).panels)} panels" for s in styles())


def _calculations(folder: Path) -> str:
    from detailbench.cli.calculations import calculations

    found = calculations()["dew_point"].run({"air_c": 20.0, "humidity_percent": 50.0, "surface_c": 20.0})
    return f"{len(calculations())} known; dew point at 20 °C and 50 %: {found.results['dew_point_c']:.4f} °C"


def _workshop(folder: Path) -> str:
    from detailbench.moves.arrival import NewJob
    from detailbench.moves.bench import Bench
    from detailbench.record.checking import check

    bench = Bench(folder / "workshop", SystemClock())
    try:
        bench.do(NewJob())
        found = check(bench.store)
    finally:
        bench.close()
    if found.troubles:
        raise AssertionError(found.troubles[0])
    return f"made, written, checked ({found.entries} entry, {found.rows} rows)"


def _restore(folder: Path) -> str:
    from detailbench.record.backing_up import back_up, make_backup_folder
    from detailbench.record.restoring import restore

    make_backup_folder(folder / "backups")
    made = back_up(folder / "workshop", folder / "backups", SystemClock().now())
    found = restore(folder / "backups", folder / "restored", SystemClock().now(), head=made.head)
    if found.check.troubles or found.check.entries != made.entries:
        raise AssertionError("what was restored is not what was backed up")
    return f"backed up, brought back, checked ({found.check.entries} entry)"


def _seal(folder: Path) -> str:
    from detailbench.seal.keys import load_key, make_key

    key = make_key(folder / "key.pem", "Self-test workshop", PASSPHRASE, SystemClock())
    if load_key(folder / "key.pem", PASSPHRASE).fingerprint != key.fingerprint:
        raise AssertionError("the key read back is not the key made")
    return "key made and opened again"


def _window(folder: Path) -> str:
    from importlib import import_module
    from importlib.metadata import version

    import_module("detailbench.screens.app")
    return f"PySide6-Essentials {version('PySide6-Essentials')}"
