"""The tree keeps the rules of the house, and each rule is seen to catch a made-up tree that breaks it."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import house_rules
import pytest

ROOT = Path(__file__).resolve().parents[1]

Rule = Callable[[Path], list[str]]

RULES: tuple[Rule, ...] = (
    house_rules.upward_imports,
    house_rules.circles,
    house_rules.strangers,
    house_rules.migrations_that_import_ours,
    house_rules.writers_outside,
    house_rules.broad_excepts,
    house_rules.changing_globals,
    house_rules.waits_and_blocks,
    house_rules.long_files,
    house_rules.vague_names,
    house_rules.unfinished,
    house_rules.code_in_resources,
    house_rules.extra_top_level,
)


def name_of(rule: Rule) -> str:
    return rule.__name__


@pytest.mark.parametrize("rule", RULES, ids=name_of)
def test_the_house_keeps_its_rule(rule: Rule) -> None:
    assert rule(ROOT) == []


def test_the_rules_look_at_the_whole_package() -> None:
    modules = {house_rules.module_name(ROOT, p) for p in house_rules.sources(ROOT)}
    assert {f"detailbench.{room}" for room in house_rules.FLOORS if room} <= modules


MARK = "TO" + "DO"

# rule, the files of a tree that breaks it, a word of the breach
BAD: list[tuple[Rule, dict[str, str], str]] = [
    (house_rules.upward_imports, {"body/vin.py": "from detailbench.record import store"}, "body imports"),
    (house_rules.upward_imports, {"body/vin.py": "def f():\n    import detailbench.moves.bench"}, "moves.bench"),
    (house_rules.upward_imports, {"record/store.py": "from ..findings import job"}, "record imports"),
    (house_rules.upward_imports, {"marks/kinds.py": "from detailbench.body.panels import Panel"}, "marks imports"),
    (house_rules.upward_imports, {"body/a.py": "from detailbench.work import plan"}, "body imports"),
    (house_rules.upward_imports, {"report/pages.py": "from detailbench.moves import Bench"}, "report imports"),
    (house_rules.upward_imports, {"seal/sign.py": "from detailbench.moves.bench import Bench"}, "seal imports"),
    (house_rules.upward_imports, {"seal/sign.py": "from detailbench.report import pages"}, "seal imports"),
    (house_rules.upward_imports, {"moves/wash.py": "from detailbench.report import pages"}, "moves imports"),
    (house_rules.upward_imports, {"cli/open.py": "from detailbench.screens import window"}, "cli imports"),
    (house_rules.upward_imports, {"screens/open.py": "def f():\n    from detailbench.cli import run"}, "screens"),
    (house_rules.upward_imports, {"cellar/wine.py": "from detailbench.basics import units"}, "cellar imports"),
    (house_rules.circles, {"body/a.py": "from detailbench.body import b", "body/b.py": "from .a import x"}, "body.a ↔"),
    (
        house_rules.circles,
        {
            "body/a.py": "import detailbench.body.b",
            "body/b.py": "def f():\n    from detailbench.body import c",
            "body/c.py": "from detailbench.body.a import x",
        },
        "body.a ↔ detailbench.body.b ↔ detailbench.body.c",
    ),
    (house_rules.strangers, {"marks/a.py": "import PySide6.QtCore"}, "belongs to screens"),
    (house_rules.strangers, {"screens/map.py": "def f():\n    import pyqtgraph"}, "belongs to screens/charts"),
    (house_rules.strangers, {"moves/a.py": "from sqlalchemy import select"}, "belongs to record"),
    (house_rules.strangers, {"basics/a.py": "import requests"}, "no owner room"),
    (house_rules.strangers, {"thickness/a.py": "import scipy.special"}, "inside the function"),
    (house_rules.strangers, {"thickness/a.py": "def f():\n    from scipy import stats"}, "only scipy.special"),
    (
        house_rules.migrations_that_import_ours,
        {"record/migrations/versions/v2.py": "def upgrade():\n    from detailbench.record import tables"},
        "detailbench.record",
    ),
    (house_rules.writers_outside, {"screens/a.py": "with store.writing(now, me) as w:\n    pass"}, "writing session"),
    (house_rules.broad_excepts, {"body/a.py": "try:\n    f()\nexcept Exception:\n    pass"}, "broad except"),
    (house_rules.broad_excepts, {"body/a.py": "try:\n    f()\nexcept:\n    pass"}, "broad except"),
    (house_rules.broad_excepts, {"body/a.py": "try:\n    f()\nexcept (OSError, Exception) as e:\n    g(e)"}, "broad"),
    (house_rules.changing_globals, {"body/a.py": "n = 0\ndef f():\n    global n\n    n += 1"}, "global n"),
    (house_rules.waits_and_blocks, {"record/a.py": "import time\ntime.sleep(1)"}, "fixed sleep"),
    (house_rules.waits_and_blocks, {"screens/a.py": "QTest.qWait(100)"}, "fixed sleep"),
    (house_rules.waits_and_blocks, {"screens/a.py": "def f():\n    QDialog().exec()"}, "blocks"),
    (house_rules.long_files, {"body/a.py": "x = 1\n" * 401}, "401 lines"),
    (house_rules.vague_names, {"body/paint_utils.py": ""}, "paint_utils"),
    (house_rules.vague_names, {"common/paint.py": ""}, "common"),
    (house_rules.vague_names, {"body/a.py": "class PanelManager:\n    pass"}, "PanelManager"),
    (house_rules.unfinished, {"body/a.py": f"x = 1  # {MARK}: later"}, MARK),
    (house_rules.code_in_resources, {"../resources/a.py": "x = 1"}, "a.py"),
    (house_rules.code_in_resources, {"../resources/a": "#!/bin/sh"}, "a"),
    (house_rules.code_in_resources, {"../resources/a.svg": "<svg><SCRIPT/></svg>"}, "a.svg"),
    (house_rules.extra_top_level, {"../notes.txt": ""}, "notes.txt"),
]

GOOD: list[tuple[Rule, dict[str, str]]] = [
    (house_rules.upward_imports, {"work/plan.py": "from detailbench.trials import Result"}),
    (house_rules.upward_imports, {"moves/documents.py": "from detailbench import report, seal"}),
    (house_rules.upward_imports, {"cli/open.py": "def f():\n    from detailbench.screens import window"}),
    (house_rules.upward_imports, {"findings/job.py": "from detailbench import __version__"}),
    (house_rules.circles, {"body/__init__.py": "from .a import x", "body/a.py": "from . import b", "body/b.py": ""}),
    (house_rules.strangers, {"screens/charts/a.py": "import pyqtgraph, numpy"}),
    (house_rules.strangers, {"trials/a.py": "def f():\n    from scipy.special import ndtri"}),
    (house_rules.writers_outside, {"moves/a.py": "with store.writing(now, me) as w:\n    pass"}),
    (house_rules.broad_excepts, {"record/a.py": "try:\n    f()\nexcept BaseException:\n    g()\n    raise"}),
    (house_rules.waits_and_blocks, {"screens/a.py": "def f(app):\n    return app.exec()"}),
    (house_rules.long_files, {"body/a.py": "x = 1\n" * 400}),
]


def laid(folder: Path, files: dict[str, str]) -> Path:
    """A made-up tree with every room in it, plus ``files`` (paths from the package)."""
    for room in house_rules.FLOORS:
        (folder / "detailbench" / room).mkdir(parents=True, exist_ok=True)
        (folder / "detailbench" / room / "__init__.py").touch()
    for name, text in files.items():
        path = (folder / "detailbench" / name).resolve()
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return folder


@pytest.mark.parametrize(("rule", "files", "word"), BAD)
def test_a_tree_that_breaks_the_rule_is_caught(rule: Rule, files: dict[str, str], word: str, tmp_path: Path) -> None:
    breaches = rule(laid(tmp_path, files))
    assert any(word in b for b in breaches), breaches


@pytest.mark.parametrize(("rule", "files"), GOOD)
def test_a_tree_that_keeps_the_rule_is_left_alone(rule: Rule, files: dict[str, str], tmp_path: Path) -> None:
    assert rule(laid(tmp_path, files)) == []


def in_a_fresh_python(code: str) -> str:
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, cwd=ROOT, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout.strip()


def test_everything_outside_the_screens_imports_where_no_qt_is_installed() -> None:
    count = in_a_fresh_python(
        """
import importlib, pkgutil, sys

class NoQt:
    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] in ("PySide6", "shiboken6", "pyqtgraph"):
            raise ModuleNotFoundError(f"{name} is not installed here")

sys.meta_path.insert(0, NoQt())
import detailbench
seen = 0
for found in pkgutil.walk_packages(detailbench.__path__, "detailbench."):
    if not found.name.startswith("detailbench.screens"):
        importlib.import_module(found.name)
        seen += 1
print(seen)
"""
    )
    assert int(count) >= len(house_rules.FLOORS) - 3


def test_importing_the_package_loads_nothing_else() -> None:
    loaded = in_a_fresh_python(
        "import sys; before = set(sys.modules); import detailbench; print(*sorted(set(sys.modules) - before))"
    )
    assert set(loaded.split()) <= {"detailbench", "__future__"}
