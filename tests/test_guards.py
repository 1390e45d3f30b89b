"""Guards against what has gone wrong before: a bad Qt release, slow starts, pins that name a place, a gap in set-up."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
import threading
import tomllib
from pathlib import Path

import left_behind
import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from detailbench.basics.clock import HandClock
from detailbench.basics.shelf import resource

ROOT = Path(__file__).resolve().parents[1]
PINS = ("requirements.txt", "requirements-dev.txt")
PYPROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
BAD_QT = "6.12.0"  # loses a reference to None on every void call before Python 3.12, and aborts after some thousands


def in_a_fresh_python(code: str) -> str:
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, cwd=ROOT, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout.strip()


def pinned(name: str) -> dict[str, set[str]]:
    """Package → the versions pinned (more than one where the Python decides)."""
    found: dict[str, set[str]] = {}
    for line in (ROOT / "packaging" / name).read_text("utf-8").splitlines():
        if one := re.match(r"([A-Za-z0-9._-]+)==([^\s;\\]+)", line):
            found.setdefault(canonicalize_name(one[1]), set()).add(one[2])
    return found


def wanted(*extras: str) -> list[Requirement]:
    project = PYPROJECT["project"]
    texts = [*project["dependencies"], *(t for e in extras for t in project["optional-dependencies"][e])]
    return [Requirement(t) for t in texts]


@pytest.mark.skipif(sys.version_info >= (3, 12), reason="None cannot be lost from Python 3.12 on")
def test_a_void_qt_call_loses_no_reference_to_none() -> None:
    change = in_a_fresh_python(
        """
import sys
from PySide6.QtCore import QObject
thing = QObject()
before = sys.getrefcount(None)
for _ in range(4000):
    thing.setObjectName("mark")
print(sys.getrefcount(None) - before)
"""
    )
    assert int(change) > -100


def test_the_qt_release_that_loses_references_is_outside_the_range_and_not_pinned() -> None:
    (qt,) = [r for r in wanted() if canonicalize_name(r.name) == "pyside6-essentials"]
    assert not qt.specifier.contains(BAD_QT)
    for name in PINS:
        assert pinned(name)["pyside6-essentials"].isdisjoint({BAD_QT})


@pytest.mark.parametrize("name", PINS)
def test_a_pin_file_holds_pins_and_hashes_and_names_no_place(name: str) -> None:
    text = (ROOT / "packaging" / name).read_text("utf-8")
    pin = r"[a-z0-9][a-z0-9.\-]*(\[[a-z,]+\])?==[A-Za-z0-9.!+]+( ; [a-zA-Z_0-9.<>=!' ]+)? \\"
    for line in text.splitlines():
        assert re.fullmatch(pin, line) or re.fullmatch(r"    --hash=sha256:[0-9a-f]{64}( \\)?", line), line
    assert text.count("==") <= text.count("--hash")


@pytest.mark.parametrize(("name", "extras"), [(PINS[0], ("build",)), (PINS[1], ("build", "dev"))])
def test_every_package_the_project_asks_for_is_pinned_within_its_range(name: str, extras: tuple[str, ...]) -> None:
    pins = pinned(name)
    for one in wanted(*extras):
        versions = pins.get(canonicalize_name(one.name), set())
        assert versions, f"{one.name} is not pinned in {name}"
        assert all(one.specifier.contains(v) for v in versions), f"{one} does not allow {versions}"


def test_what_runs_is_tested_with_the_same_pins() -> None:
    run, test = pinned(PINS[0]), pinned(PINS[1])
    assert {n: test.get(n) for n in run} == run


HEAVY = {"scipy", "pyqtgraph", "reportlab", "pikepdf", "pyhanko", "pydantic", "PIL", "pi_heif", "keyring", "cv2"}
NEVER = {"pandas", "statsmodels", "matplotlib"}
STORE = {"sqlalchemy", "alembic"}
QT = {"PySide6"}

# what is imported → the libraries that must not come along; each is loaded where it is first needed
STARTS = {
    "detailbench.__main__": HEAVY | NEVER | STORE | QT | {"numpy", "babel", "shapely"},
    "detailbench.basics.*": HEAVY | NEVER | STORE | QT,
    "detailbench.body.*": HEAVY | NEVER | STORE | QT,
    "detailbench.thickness.*": HEAVY | NEVER | STORE | QT,
    "detailbench.marks.*": HEAVY | NEVER | STORE | QT,
    "detailbench.trials.*": HEAVY | NEVER | STORE | QT,
    "detailbench.work.*": HEAVY | NEVER | STORE | QT,
    "detailbench.findings.*": HEAVY | NEVER | QT | {"alembic"},
    "detailbench.record": HEAVY | NEVER | QT | {"alembic"},
    "detailbench.moves": HEAVY | NEVER | QT | {"alembic"},
    "detailbench.screens.*": HEAVY | NEVER | {"alembic"},
}


@pytest.mark.parametrize("start", STARTS)
def test_a_start_does_not_load_what_it_does_not_need(start: str) -> None:
    loaded = in_a_fresh_python(
        f"""
import importlib, pkgutil, sys
name = {start.removesuffix(".*")!r}
top = importlib.import_module(name)
for found in pkgutil.walk_packages(top.__path__, name + ".") if {start.endswith(".*")} else ():
    if ".charts" not in found.name:  # charts are what pyqtgraph is for
        importlib.import_module(found.name)
print(*sorted({{m.split(".")[0] for m in sys.modules}}))
"""
    )
    assert set(loaded.split()) & STARTS[start] == set()


def test_the_window_is_on_the_glass_before_the_store_and_everything_heavy() -> None:
    loaded = in_a_fresh_python(
        """
import sys
from detailbench.screens.app import application, open_window
app = application()
window = open_window(None)
while not window.windowHandle().isExposed():
    app.processEvents()
print(*sorted({m.split(".")[0] for m in sys.modules}))
window.close()
"""
    )
    assert "PySide6" in loaded.split()
    assert set(loaded.split()) & (HEAVY | NEVER | STORE) == set()


def test_the_resources_are_found_in_a_checkout() -> None:
    assert resource() == ROOT / "resources"


def test_a_wheel_carries_the_resources() -> None:
    wheel = PYPROJECT["tool"]["hatch"]["build"]["targets"]["wheel"]
    assert wheel["sources"]["resources"] == "detailbench/_resources"
    assert {"detailbench", "resources"} <= set(wheel["only-include"])


# programs the tests may call, and the Debian package that brings each
PROGRAMS = {
    "pdftoppm": "poppler-utils", "pdftotext": "poppler-utils", "pdfinfo": "poppler-utils", "pdffonts": "poppler-utils",
    "pdfimages": "poppler-utils", "pdfsig": "poppler-utils", "pdfdetach": "poppler-utils", "qpdf": "qpdf",
    "xvfb-run": "xvfb", "Xvfb": "xvfb", "java": "default-jre-headless", "xdotool": "xdotool", "msgfmt": "gettext",
}  # fmt: skip
EVERYWHERE = {"sh", "python3", "env", "cat", "kill"}


def programs_called(path: Path) -> set[str]:
    """Names of programs a test file starts by a literal name."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.args):
            continue
        owner, first = ast.unparse(node.func.value), node.args[0]
        if owner == "subprocess" and isinstance(first, ast.List) and first.elts:
            first = first.elts[0]
        elif (owner, node.func.attr) != ("shutil", "which"):
            continue
        if isinstance(first, ast.Constant) and isinstance(first.value, str):
            found.add(first.value)
    return found


def test_every_program_the_tests_call_is_set_up_by_packaging_test() -> None:
    setup = set((ROOT / "packaging" / "setup.sh").read_text("utf-8").replace('"', " ").split())
    for path in sorted((ROOT / "tests").rglob("*.py")):
        for program in programs_called(path) - EVERYWHERE:
            assert program in PROGRAMS, f"{path.name} calls {program}: name its Debian package here"
            assert PROGRAMS[program] in setup, f"{path.name} calls {program}: add {PROGRAMS[program]} to setup.sh"


def test_a_called_program_is_noticed(tmp_path: Path) -> None:
    file = tmp_path / "test_x.py"
    file.write_text(
        'subprocess.run(["pdfsig", path])\nsubprocess.run([sys.executable])\nshutil.which("qpdf")\n', "utf-8"
    )
    assert programs_called(file) == {"pdfsig", "qpdf"}


def test_a_thread_left_running_is_noticed() -> None:
    before, enough = set(threading.enumerate()), threading.Event()
    worker = threading.Thread(target=enough.wait, name="left over", daemon=True)
    worker.start()
    assert left_behind.threads(before, patience_s=0.0) == ["left over"]
    enough.set()
    worker.join()
    assert left_behind.threads(before) == []


@pytest.mark.usefixtures("qapp")
def test_timers_threads_and_windows_left_behind_are_noticed_and_windows_closed() -> None:
    from PySide6.QtCore import QThread, QTimer
    from PySide6.QtWidgets import QApplication, QWidget
    from shiboken6 import isValid

    window = QWidget()
    window.show()
    inside = QTimer(window)
    inside.start(60_000)
    alone = QTimer()
    alone.start(70_000)
    thread = QThread()
    thread.start()
    left = left_behind.in_qt()
    assert [text.split(",")[0] for text in left] == ["a QThread", "a timer of 70000 ms"]
    assert not isValid(window)
    assert not isValid(inside)
    assert window not in QApplication.topLevelWidgets()
    alone.stop()
    thread.quit()
    thread.wait()
    assert left_behind.in_qt() == []


def test_the_clock_of_the_tests_stands_still_until_it_is_moved(clock: HandClock) -> None:
    start = clock.now()
    assert clock.now() == start
    clock.forward(minutes=5)
    assert (clock.now() - start).total_seconds() == 300
