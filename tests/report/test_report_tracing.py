"""Every number a report prints leads back to the record or to a working, and the workings can be redone."""

from __future__ import annotations

import ast
import json
import math
import re
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path
from string import Formatter

import pytest
from reading_reports import figures, pdf_pages, texts, traced_value, workings
from whole_job import Whole

from detailbench.basics.calculations import Calculation
from detailbench.basics.shelf import resources
from detailbench.marks.calculations import CALCULATIONS as MARKS
from detailbench.record.picture import JobPicture
from detailbench.report import DocumentContent, DocumentPdf
from detailbench.report.content.parts import Counted, Figure, Worked
from detailbench.thickness.calculations import CALCULATIONS as THICKNESS
from detailbench.trials.calculations import CALCULATIONS as TRIALS
from detailbench.work.calculations import CALCULATIONS as WORK

BY_NAME: dict[str, Calculation] = {c.name: c for c in (*THICKNESS, *MARKS, *TRIALS, *WORK)}
PACKAGE = Path(__file__).resolve().parents[2] / "detailbench"


def shop_with(picture: JobPicture, **values: float) -> JobPicture:
    """The job in a shop with other settings, its readings untouched."""
    kept = tuple(s for s in picture.shop.settings if s.key not in values)
    new = tuple(replace(picture.shop.settings[0], id=k, key=k, value=json.dumps(v)) for k, v in values.items())
    return replace(picture, shop=replace(picture.shop, settings=(*kept, *new)))


def thicker(picture: JobPicture) -> JobPicture:
    """Half of the car reads 90 µm more."""
    places = {p.id: p.panel for p in picture.places}
    readings = tuple(
        replace(r, value_um=r.value_um + 90.0) if r.value_um is not None and places[r.place_id].endswith("_l") else r
        for r in picture.readings
    )
    return replace(picture, readings=readings)


def hot(picture: JobPicture) -> JobPicture:
    return replace(picture, sessions=(*picture.sessions[:-1], replace(picture.sessions[-1], temperature_c=33.0)))


def uneven(picture: JobPicture) -> JobPicture:
    """Repeats on the bonnet disagree, and one of its places a person chose is low."""
    place = next(p for p in picture.places if p.panel == "bonnet")
    places = tuple(replace(p, origin="chosen") if p.id == place.id else p for p in picture.places)
    readings = tuple(
        replace(r, value_um=r.value_um - 30.0 + 9.0 * (r.seq % 2))
        if r.value_um is not None and r.place_id == place.id
        else r
        for r in picture.readings
    )
    return replace(picture, places=places, readings=readings)


Told = tuple[JobPicture, DocumentContent]
STATES: dict[str, Callable[[JobPicture], JobPicture]] = {
    "as it was": lambda p: p,
    "high totals": lambda p: shop_with(p, leave_below_um=113.5, careful_below_um=130.0),
    "two groups": thicker,
    "hot": hot,
    "uneven": uneven,
}


@pytest.fixture(scope="module", params=STATES)
def told(request: pytest.FixtureRequest, whole: Whole) -> Told:
    """The whole job in several states, with its content."""
    picture = STATES[request.param](whole.picture)
    return picture, whole.content(picture)


def same(one: object, other: object) -> bool:
    if isinstance(one, int | float) and isinstance(other, int | float):
        return math.isclose(one, other, rel_tol=1e-9, abs_tol=1e-9)
    return one == other


def test_every_figure_is_what_its_trace_leads_to(told: Told, whole: Whole) -> None:
    picture, content = told
    appendix = workings(content)
    found = figures(content)
    assert len(found) > 500
    wrong = [f for f in found if not same(f.value, traced_value(f, picture, appendix, whole.now))]
    assert wrong == []


def test_every_figure_is_printed_as_its_value_rounded(told: Told) -> None:
    """Half of the last digit at most; the bounds that round to the safe side stay within one digit."""
    content = told[1]
    for figure in figures(content):
        if isinstance(figure.value, str):
            continue
        shown = re.search(r"\d+(?:\.(\d+))?", figure.shown)
        assert shown is not None, figure
        step = 10.0 ** -len(shown[1] or "")
        slack = (
            1.0
            if isinstance(figure.trace, Worked) and figure.trace.at[0] in ("lower_bound_um", "less_than_um")
            else 0.5
        )
        assert abs(abs(figure.value) - float(shown[0])) <= slack * step + 1e-9, figure


def test_a_count_counts_nothing_twice(content: DocumentContent) -> None:
    for figure in figures(content):
        if isinstance(figure.trace, Counted):
            assert len(set(figure.trace.of)) == len(figure.trace.of), figure


@cache
def fixed_words() -> str:
    """Every literal piece of text in the program and its resources, fields cut out: what needs no trace."""
    pieces: list[str] = []
    for path in PACKAGE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                pieces += _fixed(node.value)
    for file in resources().rglob("*.json"):
        pieces += _strings(json.loads(file.read_text("utf-8")))
    return "\0".join(pieces)


def _fixed(text: str) -> list[str]:
    try:
        return [words for words, _name, _spec, _how in Formatter().parse(text) if words]
    except ValueError:
        return [text]


def _strings(value: object) -> list[str]:
    if isinstance(value, str):
        return _fixed(value)
    if isinstance(value, dict):
        return [s for v in value.values() for s in _strings(v)]
    if isinstance(value, list):
        return [s for v in value for s in _strings(v)]
    return []


def test_no_digit_is_printed_that_is_neither_a_figure_nor_typed_nor_a_fixed_word(
    told: Told,
) -> None:
    content = told[1]
    loose = []
    for text in texts(content):
        for part in text:
            if isinstance(part, str) and re.search(r"\d", part) and not part.startswith("Severity: 0"):
                pieces = [p for p in re.split(r"(?<=[.,;:]) | (?=\()", part) if re.search(r"\d", p)]
                loose += [p for p in pieces if p.rstrip(".,;: ") not in fixed_words()]
    assert loose == []


def test_every_working_printed_is_redone_by_its_calculation(told: Told) -> None:
    content = told[1]
    found = workings(content)
    assert {w.name for w in found.values()} >= {"panel", "odd_panels", "gauge_check", "place", "dew_point", "work_plan"}
    for ref, working in found.items():
        inputs = json.loads(json.dumps(dict(working.inputs)))
        again = BY_NAME[working.name].run(inputs)
        assert json.loads(json.dumps(dict(again.results))) == json.loads(json.dumps(dict(working.results))), ref


def test_every_working_called_upon_is_in_the_appendix_and_none_is_there_for_nothing(
    told: Told,
) -> None:
    content = told[1]
    called = {f.trace.ref for f in figures(content) if isinstance(f.trace, Worked)}
    assert called == set(workings(content))


def test_the_inputs_as_printed_on_paper_give_the_results_as_printed(
    content: DocumentContent, made: DocumentPdf
) -> None:
    names = {ref: w.name for ref, w in workings(content).items()}
    pages = pdf_pages(made.pdf)
    begin = next(i for i, p in enumerate(pages) if "Every computed figure in this report" in p)
    text = " ".join(
        line.replace("\u00a0", " ")
        for page in pages[begin:-1]
        for line in page.splitlines()
        if not re.search(r"page \d+ of \d+", line)
    )
    printed = re.findall(
        r"(W\d+)\s+inputs (\{.*?\})\s+→ (\{.*?\})(?=\s*(?:W\d+\s+inputs|[a-z_]+ (?:Formula|Source)|Formula|$))", text
    )
    assert {ref for ref, _inputs, _results in printed} == set(names)
    for ref, inputs, results in printed:
        again = BY_NAME[names[ref]].run(json.loads(inputs))
        assert json.loads(json.dumps(dict(again.results))) == json.loads(results), ref


def test_a_reference_stands_beside_what_was_computed(made: DocumentPdf) -> None:
    text = " ".join(pdf_pages(made.pdf)[0].replace("\u00a0", " ").split())
    assert re.search(r"Bonnet: removed 2\.\d µm \(\d\.\d to \d\.\d, 95 %\) W\d+", text)


@pytest.mark.parametrize("value", [118.0, 0.0])
def test_the_tracing_catches_a_figure_that_is_not_what_was_recorded(
    value: float, whole: Whole, content: DocumentContent
) -> None:
    honest = next(f for f in figures(content) if f.shown == "112" and getattr(f.trace, "table", "") == "reading")
    forged = Figure(honest.shown, value, honest.trace)
    assert not same(forged.value, traced_value(forged, whole.picture, workings(content), whole.now))
