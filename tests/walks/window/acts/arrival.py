"""The car comes in: the Jobs page and the Arrival stage."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.body.outlines import style_name
from detailbench.cli.walking.steps import arrival as said_
from window.act import Act
from window.walk import Walk


class BeginJob(Act):
    step = said_.BeginJob

    @staticmethod
    def play(said: said_.BeginJob, walk: Walk) -> None:
        to_jobs(walk)
        if said.again_of:
            walk.hand.choose("jobs", f"{said.again_of} ")
            to_jobs(walk)  # a tap on a line opens that job; back in the list it is the chosen one
            walk.hand.press(AGAIN)
        if said.owner:
            walk.hand.type_into("new job: owner's name", said.owner)
        if said.plate:
            walk.hand.type_into("new job: plate", said.plate)
        if not said.again_of:
            walk.hand.pick("body style", style_name(said.style))
        walk.hand.pick("kind of job", {"correction": "correction", "inspection": "inspection only"}[said.kind])
        walk.hand.press("Begin this job")
        walk.eyes.expect("job ")
        walk.panel = ""


class OpenJob(Act):
    step = said_.OpenJob

    @staticmethod
    def play(said: said_.OpenJob, walk: Walk) -> None:
        to_jobs(walk)
        walk.hand.open_line("jobs", f"{said.number} ")
        walk.eyes.expect(f"job {said.number}")
        walk.panel = ""


class NoteOwner(Act):
    step = said_.NoteOwner

    @staticmethod
    def play(said: said_.NoteOwner, walk: Walk) -> None:
        page(walk, "Owner")
        if said.company:
            walk.hand.pick("owner is a", "company", CARD)
        for name, text in (
            ("owner's name", said.owner),
            ("who speaks for the company", said.contact),
            ("telephone", said.telephone),
            ("mail", said.mail),
            ("address", said.address),
        ):
            if text is not None:
                walk.hand.fill(name, text, CARD)


class NoteCar(Act):
    step = said_.NoteCar

    @staticmethod
    def play(said: said_.NoteCar, walk: Walk) -> None:
        page(walk, "Car")
        for name, text in (
            ("car, in words", said.described),
            ("colour", said.colour),
            ("paint code", said.paint_code),
            ("year", said.year),
            ("length, mm, if known", said.length.value if said.length is not None else None),
            ("VIN", said.vin),
            ("no VIN, because", said.no_vin),
        ):
            if text is not None:
                walk.hand.fill(name, str(text), CARD)
        if said.lightness is not None:
            walk.hand.pick("lightness of the colour", said.lightness, CARD)


class Odometer(Act):
    step = said_.Odometer

    @staticmethod
    def play(said: said_.Odometer, walk: Walk) -> None:
        if said.when == "in":
            page(walk, "Visit")
            walk.hand.pick("counts", said.shows.unit, CARD)
            walk.hand.fill("odometer on arrival", f"{said.shows.value:.0f}", CARD)
        else:
            walk.hand.turn_to("Handover")
            walk.hand.turn_card("Close")
            walk.hand.fill(walk.eyes.name_like("odometer out, .*", CARD), f"{said.shows.value:.0f}", CARD)


class NoteHopes(Act):
    step = said_.NoteHopes

    @staticmethod
    def play(said: said_.NoteHopes, walk: Walk) -> None:
        page(walk, "Hopes")
        for name, text in (
            ("hoped-for level, in the owner's words", said.hopes),
            ("what will surely remain", said.remain),
            ("price range", said.price),
        ):
            if text is not None:
                walk.hand.fill(name, text, CARD)


class NoteLight(Act):
    step = said_.NoteLight

    @staticmethod
    def play(said: said_.NoteLight, walk: Walk) -> None:
        page(walk, "Visit")
        walk.hand.fill("seen in what light", said.light, CARD)


class NoteBearer(Act):
    step = said_.NoteBearer

    @staticmethod
    def play(said: said_.NoteBearer, walk: Walk) -> None:
        page(walk, "Bearer")
        walk.hand.pick("errand", said.errand, CARD)
        for name, text in (
            ("bearer's name", said.bearer),
            ("bearer's telephone", said.telephone),
            ("authority: on whose word, in words", said.authority),
        ):
            if text is not None:
                walk.hand.fill(name, text, CARD)


class NoteArrived(Act):
    step = said_.NoteArrived

    @staticmethod
    def play(said: said_.NoteArrived, walk: Walk) -> None:
        page(walk, "Visit")
        walk.hand.fill("arrived, as stated", said.at.strftime("%Y-%m-%d %H:%M"), CARD)


class NoteCustody(Act):
    step = said_.NoteCustody

    @staticmethod
    def play(said: said_.NoteCustody, walk: Walk) -> None:
        if said.when == "in":
            page(walk, "Custody")
        else:
            walk.hand.turn_to("Handover")
            walk.hand.turn_card("Custody")
        energy = said.fuel or said.charge
        if energy is not None:
            walk.hand.pick("runs on", "fuel" if said.fuel else "charge", CARD)
        for name, text in (
            ("how full, %", None if energy is None else f"{energy.value:g}"),
            ("keys", said.keys),
            ("where they hang" if said.when == "in" else "given to whom", said.keys_at),
            ("warning lamps", said.lamps),
            ("valuables", said.valuables),
            ("where the car stands", said.stands),
        ):
            if text is not None:
                walk.hand.fill(name, str(text), CARD)


class CarIsMoved(Act):
    """From where is what stands there by the newest word."""

    step = said_.CarIsMoved

    @staticmethod
    def play(said: said_.CarIsMoved, walk: Walk) -> None:
        page(walk, "Custody")
        walk.hand.type_into("moved to", said.to, CARD)
        if said.by or said.by_other:
            walk.hand.type_into("by whom, if not by you", said.by or said.by_other, CARD)
        walk.hand.press("Note that the car was moved", CARD)
        walk.eyes.expect(f"from {said.from_} to {said.to}." if said.from_ else f"to {said.to}.", CARD)


class NoteDamage(Act):
    step = said_.NoteDamage

    @staticmethod
    def play(said: said_.NoteDamage, walk: Walk) -> None:
        page(walk, "Damage")
        walk.hand.pick("note", "damage", CARD)
        if said.on:
            walk.hand.panel(panel_name(said.on))
        part = said.part or ("panel" if said.on else "other")
        walk.hand.pick("where", "elsewhere" if part == "other" else part, CARD)
        walk.hand.type_into("existing damage, in words", said.words, CARD)
        if said.where:
            walk.hand.type_into("which one", said.where, CARD)
        walk.hand.press("Note this damage", CARD)
        walk.eyes.line("existing damage", said.words)


class NoteRepair(Act):
    step = said_.NoteRepair

    @staticmethod
    def play(said: said_.NoteRepair, walk: Walk) -> None:
        page(walk, "Damage")
        walk.hand.pick("note", "stated repair", CARD)
        if said.on:
            walk.hand.panel(panel_name(said.on))
        walk.hand.pick("on", "panel" if said.on else "whole car", CARD)
        walk.hand.pick("stated by", said.by, CARD)
        walk.hand.type_into("repair as stated, in words", said.words, CARD)
        walk.hand.press("Note this repair", CARD)
        walk.eyes.line("existing damage", said.words)


LIMITS = {
    "bar_panel": "not touched",
    "most_off": "most off",
    "no_sanding": "no sanding",
    "no_solvent": "no solvent",
    "other": "other",
}


class NoteLimit(Act):
    step = said_.NoteLimit

    @staticmethod
    def play(said: said_.NoteLimit, walk: Walk) -> None:
        page(walk, "Limits")
        for panel in said.on or ("",):
            walk.hand.pick("owner's limit", LIMITS[said.kind], CARD)
            if panel:
                walk.hand.panel(panel_name(panel))
            walk.hand.pick("for", "this panel" if panel else "whole car", CARD)
            if said.most is not None:
                walk.hand.type_into("at most, µm", f"{said.most.um:g}", CARD)
            if said.words:
                walk.hand.type_into("in the owner's words", said.words, CARD)
            before = len(walk.eyes.lines("Owner's limits"))
            walk.hand.press("Note this limit", CARD)
            walk.expect("limits", lambda: len(walk.eyes.lines("Owner's limits")), before + 1)


class NoteRemark(Act):
    step = said_.NoteRemark

    @staticmethod
    def play(said: said_.NoteRemark, walk: Walk) -> None:
        if said.moment == "arrival":
            page(walk, "Signing")
            walk.hand.pick("on arrival", "Remarks", CARD)
        else:
            walk.hand.turn_to("Handover")
            walk.hand.turn_card("Accept")
            walk.hand.pick("acceptance", "Remarks", CARD)
        walk.hand.pick("remark by", said.role, CARD)
        walk.hand.type_into("remark, printed as typed", said.words, CARD)
        walk.hand.press("Note this remark", CARD)
        walk.eyes.line("Remarks", said.words)


AGAIN = "New job for its car"
CARD = "Card"


def page(walk: Walk, title: str) -> None:
    """Open a page of the Arrival card."""
    walk.hand.turn_to("Arrival")
    walk.hand.turn_card(title)


def to_jobs(walk: Walk) -> None:
    """Open the list of jobs, past the first steps of a new workshop."""
    walk.hand.turn_to("Jobs")
    if walk.eyes.has("To the jobs"):
        walk.hand.press("To the jobs")


STRIKES = {
    "damage": ("Damage", "", "existing damage", "Strike out the chosen line"),
    "repair": ("Damage", "", "existing damage", "Strike out the chosen line"),
    "limit": ("Limits", "", "Owner's limits", "Strike out the chosen limit"),
    "remark": ("Signing", "Remarks", "Remarks", "Strike out the chosen remark"),
}


def strike(walk: Walk, what: str) -> None:
    """Strike out the newest of its kind on the Arrival card; of damage and repairs the last line is a repair's."""
    if what == "bearer":
        page(walk, "Bearer")
        walk.hand.press("Take the bearer out", CARD)
        return
    title, face, name, button = STRIKES[what]
    page(walk, title)
    if face:
        walk.hand.pick("on arrival", face, CARD)
    stated = {line for line in walk.eyes.lines(name) if ", as the " in line or ", as papers " in line}
    lines = [line for line in walk.eyes.lines(name) if (line in stated) == (what == "repair")]
    walk.hand.choose(name, lines[-1])
    walk.hand.press(button, CARD)
