"""An invented car of about 118 µm with one door of 241: no clear-coat figure of it leaves this program by any way, and
the shop's own picture of an estimated clear coat is in no file and on no page."""

from __future__ import annotations

import ast
import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from invented_findings import Hands
from test_findings_room_left import ABOUT, DOOR, places

import detailbench
from detailbench.basics.workings import Working
from detailbench.findings.gates import held_back
from detailbench.findings.permissions import permissions
from detailbench.findings.room_left import clear_pictures
from detailbench.moves.shop import SetSetting
from detailbench.moves.surface import SetPaintSystem
from detailbench.record.job_json import job_out
from detailbench.report import DocumentContent, content_of
from detailbench.report.content.parts import Figure
from detailbench.thickness.clear_picture import ClearPicture

PACKAGE = Path(detailbench.__file__).parent
UNDERCOATS = 69.0
ODD = 0.3719  # no figure is round, so that none is met by chance
MEANS = {key: about + ODD for key, about in ABOUT.items()}


@pytest.fixture
def measured(hands: Hands) -> Hands:
    hands.do(SetSetting("reserve_um", 20.0))
    hands.do(SetSetting("leave_below_um", 80.0))
    for group in hands.picture.groups:
        hands.do(SetPaintSystem(hands.job, group.id, "clear_over_colour"))
    hands.survey({key: places(mean) for key, mean in MEANS.items()})
    return hands


def content(hands: Hands, kind: str) -> DocumentContent:
    return content_of(kind)(
        hands.picture, now=hands.shop.clock.now(), version="0", read_file=lambda _sha: b"", key_fingerprint="", past=()
    )


def parts(thing: Any) -> Iterator[Any]:
    """Everything in a content: figures, workings, texts."""
    if isinstance(thing, Figure | Working | str | int | float):
        yield thing
    elif hasattr(thing, "__dataclass_fields__"):
        for name in thing.__dataclass_fields__:
            yield from parts(getattr(thing, name))
    elif isinstance(thing, tuple | list):
        for each in thing:
            yield from parts(each)
    elif isinstance(thing, dict):
        for each in thing.values():
            yield from parts(each)


def made_up(hands: Hands) -> set[float]:
    """Every number somebody could take for a clear coat: of the shop's pictures, and totals less the undercoats."""
    out = {mean - UNDERCOATS for mean in MEANS.values()}
    for seen in clear_pictures(hands.picture).values():
        if isinstance(seen.found, ClearPicture):
            out |= {seen.found.mean_um, seen.found.low_um, seen.found.high_um, seen.found.scatter_um}
    return out


def numbers(thing: Any) -> Iterator[float]:
    if isinstance(thing, dict):
        thing = list(thing.values())
    if isinstance(thing, list | tuple):
        for each in thing:
            yield from numbers(each)
    elif isinstance(thing, int | float) and not isinstance(thing, bool):
        yield float(thing)


def test_the_shop_has_its_picture_of_the_plain_panels_so_that_this_test_is_about_something(measured: Hands) -> None:
    found = clear_pictures(measured.picture)
    assert isinstance(found["roof"].found, ClearPicture)
    assert not isinstance(found[DOOR].found, ClearPicture)
    assert len(made_up(measured)) > len(ABOUT)


@pytest.mark.parametrize("kind", ["handover", "arrival", "supplement"])
def test_no_document_holds_such_a_figure_a_working_or_the_assumption(measured: Hands, kind: str) -> None:
    made = list(parts(content(measured, kind)))
    forbidden = made_up(measured)
    names = {w.name for w in made if isinstance(w, Working)}
    assert not {"clear_picture", "room_left"} & names
    values = [f.value for f in made if isinstance(f, Figure) and isinstance(f.value, int | float)]
    values += [n for w in made if isinstance(w, Working) for n in numbers(w.as_json()["results"])]
    assert not [v for v in values if any(abs(v - f) < 1e-6 for f in forbidden)]
    told = " ".join(p for p in made if isinstance(p, str))
    assert not re.search(r"undercoat|factory layers|perhaps|assumed for the shop", told, re.IGNORECASE)
    assert "Room left" not in told


def test_the_jobs_file_holds_no_clear_coat_and_no_assumption(measured: Hands) -> None:
    bench = measured.shop.bench
    with bench.store.reading() as connection:
        told = json.loads(job_out(connection, measured.picture))
    assert {r["clear_um"] for r in told["things"]["reading"]} == {None}
    flat = json.dumps(told)
    assert not re.search(r"undercoat|factory|clear_picture|room_left", flat)
    found = [n for name, rows in told["things"].items() if name != "place" for row in rows for n in numbers(row)]
    assert not [n for n in found if any(abs(n - f) < 1e-6 for f in made_up(measured))]


def test_the_rulings_and_the_plan_say_nothing_of_it(measured: Hands) -> None:
    forbidden = made_up(measured)
    for key, ruling in permissions(measured.picture).items():
        assert ruling.room is None, key
        told = json.loads(json.dumps(ruling.working.as_json()))
        assert not [n for n in numbers(told["results"]) if any(abs(n - f) < 1e-6 for f in forbidden)], key
    door = permissions(measured.picture)[DOOR]
    assert door.clear_coat == "Clear coat unknown."
    assert "more paint is not more permission" in " ".join(r.sentence for r in door.reasons)
    assert not re.search(r"clear coat.*\d", " ".join(held_back(measured.picture).values()))


ASKS = "detailbench.findings.room_left"
MAY_ASK = ("screens",)


def importers() -> list[str]:
    found = []
    for path in PACKAGE.rglob("*.py"):
        room = path.relative_to(PACKAGE).parts[0]
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            names = []
            if isinstance(node, ast.ImportFrom) and node.module:
                names = [node.module, *(f"{node.module}.{n.name}" for n in node.names)]
            elif isinstance(node, ast.Import):
                names = [n.name for n in node.names]
            if any(n == ASKS or n.startswith(f"{ASKS}.") for n in names):
                found.append(room)
    return found


def test_only_the_shops_own_screen_asks_for_the_picture() -> None:
    assert set(importers()) <= {*MAY_ASK}
