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
        if said.owner:
            walk.hand.type_into("new job: owner's name", said.owner)
        if said.plate:
            walk.hand.type_into("new job: plate", said.plate)
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
        for name, text in (
            ("owner's name", said.owner),
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
            page(walk, "Hopes")
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
        page(walk, "Hopes")
        walk.hand.fill("seen in what light", said.light, CARD)


class NoteDamage(Act):
    step = said_.NoteDamage

    @staticmethod
    def play(said: said_.NoteDamage, walk: Walk) -> None:
        page(walk, "Damage")
        if said.on:
            walk.hand.panel(panel_name(said.on))
        walk.hand.type_into("existing damage, in words", said.words, CARD)
        walk.hand.press("Note this damage", CARD)
        walk.eyes.line("existing damage", said.words)


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
