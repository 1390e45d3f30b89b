"""The rules of the house as functions over a folder that holds a ``detailbench`` tree.

Each returns its breaches as sentences, empty when the rule is kept, so every rule can be tried on a made-up bad tree.
"""

from __future__ import annotations

import ast
import re
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

PACKAGE = "detailbench"
FLOORS = {
    "__main__": 5.0, "cli": 4.0, "screens": 4.0, "moves": 3.0, "report": 3.0, "seal": 3.0, "findings": 2.5,
    "record": 2.0, "body": 1.0, "thickness": 1.0, "marks": 1.0, "trials": 1.0, "work": 1.0, "photos": 1.0,
    "basics": 0.0, "": -1.0,
}  # fmt: skip
TRADE = ("body", "thickness", "marks", "trials", "work", "photos")
OWNERS = {
    "babel": ("basics",), "platformdirs": ("basics",),
    "svgelements": ("body",), "shapely": ("body",),
    "PIL": ("photos",), "pi_heif": ("photos",), "cv2": ("photos",),
    "sqlalchemy": ("record",), "alembic": ("record",), "rfc8785": ("record",), "filelock": ("record",),
    "pydantic": ("record",), "psycopg": ("record",),
    "reportlab": ("report",), "pikepdf": ("report",),
    "pyhanko": ("seal",), "pyhanko_certvalidator": ("seal",), "asn1crypto": ("seal",), "cryptography": ("seal",),
    "keyring": ("seal",),
    "PySide6": ("screens",), "shiboken6": ("screens",), "pyqtgraph": ("screens/charts",), "pypdfium2": ("screens",),
    "serial": ("screens/gauges",),
    "scipy": TRADE, "numpy": tuple(FLOORS),
}  # fmt: skip
LONGEST = 400
VAGUE = {"util", "utils", "misc", "common", "helper", "helpers", "manager", "managers"}
TOP_LEVEL = {
    "README.md", "DEVELOPERS.md", "CHANGELOG.md", "LICENSE", "pyproject.toml",
    PACKAGE, "resources", "tests", "packaging",
}  # fmt: skip
MADE_BY_TOOLS = {"build", "dist", "htmlcov", "coverage.xml"}
MARKERS = re.compile(r"\b(" + "|".join(("TO" + "DO", "FIX" + "ME", "X" * 3, "raise NotImplemented" + "Error")) + r")\b")
CODE_ENDINGS = {".py", ".pyc", ".so", ".dll", ".js", ".mjs", ".sh", ".bat", ".exe", ".qml", ".lua", ".wasm", ".jar"}


@dataclass(frozen=True)
class Import:
    """One import statement's target, wherever it stands. ``inner``: inside a function, so paid for only when run."""

    path: Path
    line: int
    target: str
    inner: bool

    def at(self, root: Path) -> str:
        return f"{self.path.relative_to(root).as_posix()}:{self.line}"


def sources(root: Path, *folders: str) -> list[Path]:
    """Python files of ours under ``folders`` (the package alone when none is named), in order."""
    found = [p for f in folders or (PACKAGE,) for p in (root / f).rglob("*.py") if "__pycache__" not in p.parts]
    return sorted(found)


def parsed(path: Path) -> ast.Module:
    return ast.parse(path.read_text("utf-8"), str(path))


def module_name(root: Path, path: Path) -> str:
    parts = list(path.relative_to(root).with_suffix("").parts)
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def room_of(module: str) -> str:
    """``detailbench.body.vin`` → ``body``; the package itself → the empty name."""
    parts = module.split(".")
    return parts[1] if len(parts) > 1 else ""


def imports(root: Path) -> list[Import]:
    """Every import of every module, those inside functions included; names that are modules count as modules."""
    modules = {module_name(root, p) for p in sources(root)}
    return [found for path in sources(root) for found in _imports_of(root, path, modules)]


def _imports_of(root: Path, path: Path, modules: set[str]) -> Iterator[Import]:
    tree = parsed(path)
    functions = [n for n in ast.walk(tree) if isinstance(n, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda)]
    inner = {id(n) for f in functions for n in ast.walk(f)}
    package = module_name(root, path).split(".")
    if path.name != "__init__.py":
        package = package[:-1]
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            targets = [a.name for a in node.names]
        elif isinstance(node, ast.ImportFrom):
            above = package[: len(package) - node.level + 1] if node.level else []
            base = ".".join([*above, *([node.module] if node.module else [])])
            targets = sorted({_meant(base, a.name, modules) for a in node.names})
        else:
            continue
        for target in targets:
            yield Import(path, node.lineno, target, id(node) in inner)


def _meant(base: str, name: str, modules: set[str]) -> str:
    full = f"{base}.{name}"
    return full if full in modules or base == "scipy" else base


def ours(target: str) -> bool:
    return target == PACKAGE or target.startswith(PACKAGE + ".")


def upward_imports(root: Path) -> list[str]:
    """Imports go down only; side by side only where the house says so."""
    breaches = []
    for one in imports(root):
        if not ours(one.target):
            continue
        me, other = room_of(module_name(root, one.path)), room_of(one.target)
        if me != other and other and not _may_import(root, one, me, other):
            breaches.append(f"{one.at(root)}: {me or PACKAGE} imports {one.target}")
    return breaches


def _may_import(root: Path, one: Import, me: str, other: str) -> bool:
    if me not in FLOORS or other not in FLOORS:
        return False  # a room the house does not know
    if FLOORS[me] != FLOORS[other]:
        return FLOORS[me] > FLOORS[other]
    if me == "work":  # plans use what the other trade rooms found
        return True
    if me == "cli":  # the command line opens the window, and pays for Qt only then
        return one.inner
    joins = root / PACKAGE / "moves" / "documents.py"  # a document is drawn, then sealed
    return one.path == joins and other in ("report", "seal")


def circles(root: Path) -> list[str]:
    """Groups of modules that import each other round (strongly connected, Tarjan's algorithm)."""
    graph: dict[str, set[str]] = {module_name(root, p): set() for p in sources(root)}
    for one in imports(root):
        me = module_name(root, one.path)
        if one.target in graph and one.target != me:
            graph[me].add(one.target)
    order: dict[str, int] = {}
    low: dict[str, int] = {}
    stack: list[str] = []
    found: list[str] = []

    def visit(node: str) -> None:
        order[node] = low[node] = len(order)
        stack.append(node)
        for other in sorted(graph[node]):
            if other not in order:
                visit(other)
                low[node] = min(low[node], low[other])
            elif other in stack:
                low[node] = min(low[node], order[other])
        if low[node] == order[node]:
            group = stack[stack.index(node) :]
            del stack[stack.index(node) :]
            if len(group) > 1:
                found.append(" ↔ ".join(sorted(group)))

    for node in sorted(graph):
        if node not in order:
            visit(node)
    return sorted(found)


def strangers(root: Path) -> list[str]:
    """A third-party library is imported only by the room that owns it, and each has an owner."""
    breaches = []
    for one in imports(root):
        library = one.target.split(".")[0]
        if ours(one.target) or library in sys.stdlib_module_names:
            continue
        here = one.path.parent.relative_to(root / PACKAGE).as_posix()
        if library not in OWNERS:
            breaches.append(f"{one.at(root)}: {library} has no owner room")
        elif not any(here == room or here.startswith(room + "/") for room in OWNERS[library]):
            breaches.append(f"{one.at(root)}: {library} belongs to {', '.join(OWNERS[library])}")
        elif library == "scipy" and (one.target != "scipy.special" or not one.inner):
            breaches.append(f"{one.at(root)}: only scipy.special, and only inside the function that needs it")
    return breaches


def migrations_that_import_ours(root: Path) -> list[str]:
    """A migration is frozen: it must not change when our code does."""
    folder = root / PACKAGE / "record" / "migrations"
    return [f"{one.at(root)}: {one.target}" for one in imports(root) if folder in one.path.parents and ours(one.target)]


def writers_outside(root: Path) -> list[str]:
    """Only moves/ opens a writing session (and record/, which offers the door)."""
    return [
        f"{path.relative_to(root).as_posix()}:{node.lineno}: opens a writing session"
        for path in sources(root)
        if room_of(module_name(root, path)) not in ("moves", "record")
        for node in ast.walk(parsed(path))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr == "writing"
    ]


def broad_excepts(root: Path) -> list[str]:
    """No ``except`` that swallows everything: what nobody expected reaches the one hook of the running program.

    Cleaning up and raising again is not swallowing.
    """
    breaches = []
    for path in sources(root):
        for node in ast.walk(parsed(path)):
            if isinstance(node, ast.ExceptHandler) and _is_broad(node.type) and not _raises_again(node):
                breaches.append(f"{path.relative_to(root).as_posix()}:{node.lineno}: broad except")
    return breaches


def _is_broad(caught: ast.expr | None) -> bool:
    names = caught.elts if isinstance(caught, ast.Tuple) else [caught]
    return any(n is None or (isinstance(n, ast.Name) and n.id in ("Exception", "BaseException")) for n in names)


def _raises_again(handler: ast.ExceptHandler) -> bool:
    last = handler.body[-1]
    return isinstance(last, ast.Raise) and last.exc is None


def changing_globals(root: Path) -> list[str]:
    """No function rebinds a module's name."""
    return [
        f"{path.relative_to(root).as_posix()}:{node.lineno}: global {', '.join(node.names)}"
        for path in sources(root)
        for node in ast.walk(parsed(path))
        if isinstance(node, ast.Global)
    ]


def waits_and_blocks(root: Path) -> list[str]:
    """No fixed sleep anywhere; in screens/ no ``exec()`` but the application's own."""
    breaches = []
    for path in sources(root, PACKAGE, "tests"):
        for node in ast.walk(parsed(path)):
            if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute)):
                continue
            receiver = ast.unparse(node.func.value)
            if (receiver, node.func.attr) == ("time", "sleep") or node.func.attr == "qWait":
                breaches.append(f"{path.relative_to(root).as_posix()}:{node.lineno}: a fixed sleep")
            blocks = node.func.attr in ("exec", "exec_") and path.is_relative_to(root / PACKAGE / "screens")
            if blocks and receiver.rsplit(".", 1)[-1] not in ("app", "QApplication", "QGuiApplication"):
                breaches.append(f"{path.relative_to(root).as_posix()}:{node.lineno}: exec() blocks the click path")
    return breaches


def long_files(root: Path) -> list[str]:
    """No file of ours is longer than the limit."""
    lengths = [(p, len(p.read_text("utf-8").splitlines())) for p in sources(root, PACKAGE, "tests", "packaging")]
    return [f"{p.relative_to(root).as_posix()}: {n} lines" for p, n in lengths if n > LONGEST]


def vague_names(root: Path) -> list[str]:
    """Files, folders and classes say what they are for."""
    breaches = []
    for path in sources(root, PACKAGE, "tests", "packaging"):
        words = {w for part in path.relative_to(root).with_suffix("").parts for w in part.lower().split("_")}
        if words & VAGUE:
            breaches.append(path.relative_to(root).as_posix())
        for node in ast.walk(parsed(path)):
            if (
                isinstance(node, ast.ClassDef)
                and re.findall("[A-Z][a-z]+", node.name)[-1:]
                and (re.findall("[A-Z][a-z]+", node.name)[-1].lower() in VAGUE)
            ):
                breaches.append(f"{path.relative_to(root).as_posix()}:{node.lineno}: class {node.name}")
    return breaches


def unfinished(root: Path) -> list[str]:
    """No marker of unfinished work in any text file of ours."""
    breaches = []
    endings = {".py", ".md", ".toml", ".sh", ".bat", ".txt", ""}
    for folder in (PACKAGE, "tests", "packaging", ".ci"):
        for path in sorted((root / folder).rglob("*")):
            if path.is_file() and path.suffix in endings and "__pycache__" not in path.parts:
                lines = path.read_text("utf-8").splitlines()
                breaches += [
                    f"{path.relative_to(root).as_posix()}:{n}: {found[0]}"
                    for n, line in enumerate(lines, 1)
                    if (found := MARKERS.search(line))
                ]
    return breaches


def code_in_resources(root: Path) -> list[str]:
    """resources/ holds data: nothing that a machine would run."""
    breaches = []
    for path in sorted((root / "resources").rglob("*")):
        if not path.is_file():
            continue
        start = path.read_bytes()
        runs = path.suffix.lower() in CODE_ENDINGS or start.startswith(b"#!") or path.stat().st_mode & 0o111
        if runs or (path.suffix.lower() == ".svg" and b"<script" in start.lower()):
            breaches.append(path.relative_to(root).as_posix())
    return breaches


def extra_top_level(root: Path) -> list[str]:
    """The top of the checkout holds what it should and nothing else (hidden files and tools' output aside)."""
    return sorted(
        p.name
        for p in root.iterdir()
        if not p.name.startswith(".") and p.name not in TOP_LEVEL | MADE_BY_TOOLS and not p.name.endswith(".egg-info")
    )
