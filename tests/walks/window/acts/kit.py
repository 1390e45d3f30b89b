"""The kit in full and the range on the Shop page, earlier trials on the History page, training."""

from __future__ import annotations

from detailbench.cli.walking.kinds import Quantity
from detailbench.cli.walking.steps import kit as said_
from detailbench.trials.outcome import Result
from window.act import Act
from window.acts.shop import turn
from window.walk import Walk

RANGE = "range, mildest first"
FOUND = "trials found, newest first"
JOBS = "jobs that have ended"
ANSWERED = "Next trial"
MOVEMENTS = {"free_orbit": "free orbit", "forced": "forced orbit", "rotary": "rotary", "hand": "by hand"}
MATERIALS = {"foam": "foam", "wool": "wool", "fibre": "microfibre"}
KINDS = {"cutting": "cutting", "medium": "medium", "finishing": "finishing", "one_step": "one step"}
USES = {"wiping": "wiping polish off", "last_wipe": "last wipe", "drying": "drying"}


def number(quantity: Quantity | None) -> str:
    return "" if quantity is None else f"{quantity.value:g}"


def put(walk: Walk, part: str, one: str, name: str, typed: dict[str, str], picked: dict[str, str]) -> None:
    """Fill the form of one thing and add it."""
    turn(walk, part)
    for field, text in ({"name": name} | typed).items():
        if text:
            walk.hand.type_into(field, text)
    for title, choice in picked.items():
        walk.hand.pick(title, choice)
    walk.hand.press(f"Add: {one}")
    walk.eyes.line(part, name)


class AddMachine(Act):
    step = said_.AddMachine

    @staticmethod
    def play(said: said_.AddMachine, walk: Walk) -> None:
        typed = {
            "orbit, mm": number(said.orbit),
            "plate, mm": number(said.plate),
            "dial: orbits or turns a minute": "; ".join(f"{at} {rpm:g}" for at, rpm in said.dials),
            "plate's own turns a minute": number(said.turns),
            "vibration, m/s²": number(said.vibration),
            "its uncertainty K, m/s²": number(said.uncertainty),
            "weight on the paint, N": number(said.weight),
            "noise at the ear, dB(A)": number(said.noise),
        }
        put(walk, "Machines", "machine", said.machine, typed, {"movement": MOVEMENTS[said.movement]})


class AddPad(Act):
    step = said_.AddPad

    @staticmethod
    def play(said: said_.AddPad, walk: Walk) -> None:
        diameter = number(said.diameter) or "150"  # what moves take for granted is typed off the pad here
        put(walk, "Pads", "pad", said.pad, {"diameter, mm": diameter}, {"material": MATERIALS[said.material]})


class AddProduct(Act):
    step = said_.AddProduct

    @staticmethod
    def play(said: said_.AddProduct, walk: Walk) -> None:
        typed = {"working time, s": number(said.works), "batch": said.batch}
        part = "Compounds and polishes"
        put(walk, part, "compound or polish", said.product, typed, {"kind": KINDS[said.kind]})


class AddTowel(Act):
    step = said_.AddTowel

    @staticmethod
    def play(said: said_.AddTowel, walk: Walk) -> None:
        put(walk, "Towels", "towel", said.towel, {}, {"for": USES[said.use]})


class AddDisc(Act):
    step = said_.AddDisc

    @staticmethod
    def play(said: said_.AddDisc, walk: Walk) -> None:
        typed = {"grade, like P2000": said.grade, "diameter, mm": number(said.diameter)}
        put(walk, "Sanding discs", "sanding disc", said.disc, typed, {})


class AddCombination(Act):
    step = said_.AddCombination

    @staticmethod
    def play(said: said_.AddCombination, walk: Walk) -> None:
        turn(walk, "Range")
        before = len(walk.eyes.lines(RANGE))
        walk.hand.choose("machines", said.machine)
        walk.hand.choose("pads", said.pad)
        walk.hand.choose("compounds and polishes", said.product)
        walk.hand.press("Add at the strong end")
        walk.expect(RANGE, lambda: len(walk.eyes.lines(RANGE)), before + 1)


class MoveRung(Act):
    step = said_.MoveRung

    @staticmethod
    def play(said: said_.MoveRung, walk: Walk) -> None:
        turn(walk, "Range")
        before = walk.eyes.lines(RANGE)
        walk.hand.choose(RANGE, f"{said.rung + 1}  ")
        buttons = {
            "milder": "One place milder",
            "stronger": "One place stronger",
            "retired": "Retire: combination",
        }
        walk.hand.press(buttons[said.to])
        walk.expect("the range has changed", lambda: walk.eyes.lines(RANGE) != before, True)


class RenewTheRange(Act):
    step = said_.RenewTheRange

    @staticmethod
    def play(said: said_.RenewTheRange, walk: Walk) -> None:
        turn(walk, "Range")
        walk.hand.press("Put what replaced their parts into the whole range")
        walk.eyes.expect_notice("range takes what replaced its parts")


class ExpectRung(Act):
    step = said_.ExpectRung

    @staticmethod
    def play(said: said_.ExpectRung, walk: Walk) -> None:
        turn(walk, "Range")
        walk.expect(RANGE, lambda: said.part in walk.eyes.lines(RANGE)[said.rung], True)


class SearchTrials(Act):
    step = said_.SearchTrials

    @staticmethod
    def play(said: said_.SearchTrials, walk: Walk) -> None:
        walk.hand.turn_to("History")
        walk.hand.turn_sheet("Trials of all jobs", "")
        for field, text in (
            ("paint code, as typed", said.code),
            ("year", "" if said.year is None else str(said.year)),
            ("combination, finish or result", said.words),
        ):
            walk.hand.fill(field, text)
        for title, choice in (("refinished", said.refinished), ("paint feel", said.feel), ("sticky", said.sticky)):
            walk.hand.pick(title, choice or "any")
        if said.found is not None:
            walk.expect("trials found", lambda: len(walk.eyes.lines(FOUND)), said.found)


class ExpectLikePaint(Act):
    step = said_.ExpectLikePaint

    @staticmethod
    def play(said: said_.ExpectLikePaint, walk: Walk) -> None:
        walk.hand.turn_to("Arrival")
        walk.hand.turn_card("Car")
        if said.part:
            walk.eyes.expect(said.part, "Card")
        else:
            walk.expect("like paint", lambda: walk.eyes.has("Show the trials on like paint"), False)


def open_training(walk: Walk, job: str) -> None:
    turn(walk, "Training")
    walk.hand.choose(JOBS, job)


class Train(Act):
    step = said_.Train

    @staticmethod
    def play(said: said_.Train, walk: Walk) -> None:
        open_training(walk, said.number)
        if said.anew:
            walk.hand.press("Begin anew")
        elif walk.eyes.has(ANSWERED):
            walk.hand.press(ANSWERED)
        label = Result(said.result).label
        walk.hand.press(f"what comes next: {label}")
        walk.eyes.expect(f"Said: {label}")


class ExpectTrained(Act):
    step = said_.ExpectTrained

    @staticmethod
    def play(said: said_.ExpectTrained, walk: Walk) -> None:
        turn(walk, "Training")
        walk.eyes.expect(said.part)
