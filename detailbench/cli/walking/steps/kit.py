"""The kit in full, the range, the trials of earlier jobs and going through one of them again."""

# ruff: noqa: RUF009 -- value() and named() describe fields, as dataclasses.field() does

from __future__ import annotations

from dataclasses import dataclass

from detailbench.cli.walking.kinds import TEXT, Kind, Quantity, quantity, whole, word
from detailbench.cli.walking.line import Line
from detailbench.cli.walking.step import Step, flag, named, value
from detailbench.trials.outcome import Result


def _dials(line: Line) -> tuple[tuple[str, float], ...]:
    pairs = []
    while (token := line.peek()) is not None and token.quoted:
        line.take("a dial position")
        pairs.append((token.text, quantity("rpm").read(line).value))
    if not pairs:
        raise line.bad("a dial position in quotes and its rpm are expected")
    return tuple(pairs)


DIALS = Kind('"position" NUMBER rpm …', _dials)


@dataclass(frozen=True, kw_only=True)
class AddMachine(Step):
    verb = "shop machine"
    does = "a machine, a small one or a hand applicator"
    machine: str = value(TEXT)
    movement: str = named(word("free_orbit", "forced", "rotary", "hand"), "free_orbit")
    orbit: Quantity | None = named(quantity("mm"))
    plate: Quantity | None = named(quantity("mm"))
    turns: Quantity | None = named(quantity("rpm"))
    dials: tuple[tuple[str, float], ...] = named(DIALS, ())
    vibration: Quantity | None = named(quantity("m/s2"))
    uncertainty: Quantity | None = named(quantity("m/s2"))
    weight: Quantity | None = named(quantity("N"))
    noise: Quantity | None = named(quantity("dB"))


@dataclass(frozen=True, kw_only=True)
class AddPad(Step):
    verb = "shop pad"
    does = "a pad"
    pad: str = value(TEXT)
    material: str = named(word("foam", "wool", "fibre"), "foam")
    diameter: Quantity | None = named(quantity("mm"))


@dataclass(frozen=True, kw_only=True)
class AddProduct(Step):
    verb = "shop product"
    does = "a compound or polish"
    product: str = value(TEXT)
    kind: str = named(word("cutting", "medium", "finishing", "one_step"), "medium")
    works: Quantity | None = named(quantity("s"))
    batch: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class AddTowel(Step):
    verb = "shop towel"
    does = "a towel, by what it is for"
    towel: str = value(TEXT)
    use: str = named(word("wiping", "last_wipe", "drying"), "wiping")


@dataclass(frozen=True, kw_only=True)
class AddDisc(Step):
    verb = "shop disc"
    does = "a sanding disc by its FEPA grade; a grade the table does not have is kept, its grain unknown"
    disc: str = value(TEXT)
    grade: str = named(TEXT, "")
    diameter: Quantity | None = named(quantity("mm"))


@dataclass(frozen=True, kw_only=True)
class AddCombination(Step):
    verb = "shop combination"
    does = "machine, pad and compound or polish together, at the strong end of the range"
    machine: str = named(TEXT, "")
    pad: str = named(TEXT, "")
    product: str = named(TEXT, "")


@dataclass(frozen=True, kw_only=True)
class MoveRung(Step):
    verb = "shop rung"
    does = "move a rung of the range one place (0 the mildest), or take it out of the range"
    rung: int = value(whole())
    to: str = value(word("milder", "stronger", "retired"))


@dataclass(frozen=True, kw_only=True)
class RenewTheRange(Step):
    verb = "shop renew-range"
    does = "what replaced a part goes into every combination of the range"


@dataclass(frozen=True, kw_only=True)
class ExpectRung(Step):
    verb = "expect rung"
    does = "the rung of the range (0 the mildest) names this"
    rung: int = value(whole())
    part: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class SearchTrials(Step):
    verb = "search trials"
    does = "the trials of all jobs that fit; so many are found"
    code: str = named(TEXT, "")
    year: int | None = named(whole())
    refinished: str = named(word("yes", "no"), "")
    feel: str = named(word("soft", "medium", "hard"), "")
    sticky: str = named(word("yes", "no"), "")
    words: str = named(TEXT, "")
    found: int | None = named(whole())


@dataclass(frozen=True, kw_only=True)
class ExpectLikePaint(Step):
    verb = "expect like-paint"
    does = "what is said of like paint in this shop before, with this in it; an empty text: nothing"
    part: str = value(TEXT)


@dataclass(frozen=True, kw_only=True)
class Train(Step):
    verb = "train"
    does = "who is entering goes through an ended job again, by its number, and says what comes next"
    number: str = value(TEXT)
    result: str = value(word(*Result, shown="RESULT"))
    anew: bool = flag()


@dataclass(frozen=True, kw_only=True)
class ExpectTrained(Step):
    verb = "expect trained"
    does = "how often the same was said in the newest round of that job, with this in the sentence"
    number: str = value(TEXT)
    part: str = value(TEXT)
