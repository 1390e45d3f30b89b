"""The appendix: workings gathered by calculation, formula and source once, inputs and results in full each time."""

from __future__ import annotations

import json
from itertools import groupby

from reportlab.platypus import Flowable, Paragraph

from detailbench.basics.texts import _
from detailbench.report.content.blocks import Workings
from detailbench.report.content.refs import NumberedWorking
from detailbench.report.pages.letters import BOLD, MONO, marked_up
from detailbench.report.pages.look import FIGURES, HEADING, NOTE, WORKING


def workings(block: Workings) -> list[Flowable]:
    """Every working, calculation by calculation."""
    out: list[Flowable] = []
    order = list(dict.fromkeys(n.working.name for n in block.numbered))
    ranked = sorted(block.numbered, key=lambda n: (order.index(n.working.name), int(n.ref[1:])))
    for name, group in groupby(ranked, key=lambda n: n.working.name):
        out += _calculation(name, list(group))
    return out


def _calculation(name: str, numbered: list[NumberedWorking]) -> list[Flowable]:
    first = numbered[0].working
    out: list[Flowable] = [Paragraph(marked_up(name, BOLD), HEADING)]
    formulas = list(dict.fromkeys(n.working.formula for n in numbered))
    if len(formulas) == 1:
        out.append(_line(_("Formula"), first.formula))
    out.append(_line(_("Source"), f"{first.source.text} ({first.source.kind_words()})"))
    if first.changes_with:
        out.append(_line(_("Changes with"), first.changes_with))
    notes = list(dict.fromkeys(note for n in numbered for note in n.working.notes))
    out += [Paragraph(marked_up(note), NOTE) for note in notes]
    for each in numbered:
        out += _one(each, with_formula=len(formulas) > 1)
    return out


def _line(label: str, words: str) -> Paragraph:
    return Paragraph(f"{marked_up(label, BOLD)}: {marked_up(words)}".replace(label, label, 1), WORKING)


def _one(numbered: NumberedWorking, *, with_formula: bool) -> list[Flowable]:
    working = numbered.working
    out: list[Flowable] = []
    if with_formula:
        out.append(_line(_("Formula of {ref}").format(ref=numbered.ref), working.formula))
    plain = working.as_json()
    words = f"{_('inputs')} {as_text(plain['inputs'])}\n→ {as_text(plain['results'])}"
    anchor = f'<a name="{numbered.ref}"/>'
    out.append(Paragraph(anchor + marked_up(words, MONO), FIGURES, bulletText=numbered.ref))
    return out


def as_text(value: object) -> str:
    """JSON as printed; given back to the command it reads the same."""
    return json.dumps(value, ensure_ascii=False)
