"""The grain of a sanding disc by its FEPA grade, looked up and never reckoned between two grades."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from detailbench.basics.numbers import format_quantity
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working

# median grain size in µm of the microgrits of coated abrasives
GRAIN_UM: Mapping[str, float] = {
    "P240": 58.5,
    "P280": 52.2,
    "P320": 46.2,
    "P360": 40.5,
    "P400": 35.0,
    "P500": 30.2,
    "P600": 25.8,
    "P800": 21.8,
    "P1000": 18.3,
    "P1200": 15.3,
    "P1500": 12.6,
    "P2000": 10.3,
    "P2500": 8.4,
}
SOURCE = Source("FEPA 43-1, ISO 6344-3: median grain size of microgrits for coated abrasives", from_memory=True)
WRITTEN = re.compile(r"p\s*(\d+)", re.IGNORECASE)


@dataclass(frozen=True)
class SandingGrade:
    """``grade`` as the standard writes it, or as it was typed; ``grain_um`` None where the table does not have it."""

    grade: str
    grain_um: float | None
    sentence: str
    working: Working


def sanding_grade(typed: str) -> SandingGrade:
    """What the standard's table says of a grade. A grade between two of the table's, finer or coarser than all of
    them, or written in another way, is kept as it is typed and its grain is not known here."""
    body = " ".join(typed.split())
    written = WRITTEN.fullmatch(body)
    grade = f"P{int(written[1])}" if written else body
    grain = GRAIN_UM.get(grade)
    if grain is not None:
        sentence = _("{grade}: grain about {grain}.").format(grade=grade, grain=format_quantity(grain, "µm"))
    elif written:
        sentence = _("{grade} is not in the table of grades here: its grain is not known.").format(grade=grade)
    elif body:
        sentence = _("“{grade}” is not written as a FEPA grade (like P2000): its grain is not known.").format(
            grade=grade
        )
    else:
        sentence = _("No grade was typed: its grain is not known.")
    working = Working(
        name="sanding_grade",
        formula=_("looked up in the table of grades; between two grades nothing is reckoned"),
        inputs={"grade": grade},
        results={"grain_um": grain},
        source=SOURCE,
        changes_with=_("another grade"),
        notes=(sentence,),
    )
    return SandingGrade(grade, grain, sentence, working)
