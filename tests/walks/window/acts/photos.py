"""Photographs: of a panel in the Marks stage, of the car on arrival; paired, struck out, counted."""

from __future__ import annotations

from pathlib import Path

from detailbench.body.names import panel_name
from detailbench.cli.walking.steps import expecting
from detailbench.cli.walking.steps import marks as said_
from detailbench.photos.drawn import SWIRLS, drawn_reflection
from window.act import Act
from window.acts import arrival, trials
from window.stuck import Stuck, Unusable
from window.walk import Walk

CARD = "Card"
TAB = r"Photos( \d+)?"
PHOTOS = "Photos of this panel"
OF_THE_CAR = "Photos of the car"
SHOWS = {
    "vin_plate": "VIN plate",
    "plate": "plate",
    "odometer": "odometer",
    "clock": "clock",
    "whole_car": "whole car",
}
UNTOUCHED, POLISHED = "untouched half", "polished half"
TURNS = 3  # the moments a press leads through


class AddPicture(Act):
    step = said_.AddPicture

    @staticmethod
    def play(said: said_.AddPicture, walk: Walk) -> None:
        add(walk, walk.beside / said.file, said.of or walk.panel, said)


class DrawnPicture(Act):
    """The camera's file is drawn; it is taken in like any other."""

    step = said_.DrawnPicture

    @staticmethod
    def play(said: said_.DrawnPicture, walk: Walk) -> None:
        walk.drawn += 1
        file = walk.beside / f"drawn-{said.shows or walk.panel}-{said.moment}-{walk.drawn}.jpg"
        file.write_bytes(drawn_reflection(SWIRLS[said.swirls], seed=walk.drawn))
        add(walk, file, walk.panel, said)


class PairPictures(Act):
    step = said_.PairPictures

    @staticmethod
    def play(said: said_.PairPictures, walk: Walk) -> None:
        if said.section:  # the second half was set beside the first when it came
            trials.page(walk, "Story")
            walk.eyes.expect(f"photo of the {POLISHED}, kept", CARD)
            return
        to_panel(walk, walk.panel)
        after = [line for line in walk.eyes.lines(PHOTOS) if ": after" in line]
        befores = [name for name in walk.eyes.names(CARD) if name.startswith("stands beside, from before: ")]
        if after and not befores:
            walk.hand.choose(PHOTOS, after[-1])
            befores = [name for name in walk.eyes.names(CARD) if name.startswith("stands beside, from before: ")]
        if not after or not befores:
            raise Unusable("there is no pair of a photo from before and one from after")
        walk.hand.press(befores[-1], CARD)
        walk.eyes.expect("see before", CARD)


class ExpectPhotos(Act):
    step = expecting.ExpectPhotos

    @staticmethod
    def play(said: expecting.ExpectPhotos, walk: Walk) -> None:
        open_photos(walk)
        walk.eyes.expect(in_job(said.count), CARD)


def in_job(count: int) -> str:
    """How the card counts the photographs of the job."""
    return {0: "no photo in this job yet", 1: "1 photo in this job"}.get(count, f"{count} photos in this job")


def open_photos(walk: Walk) -> None:
    """The photographs' part of the Marks card."""
    walk.hand.turn_to("Marks")
    walk.hand.turn_card(walk.eyes.name_like(TAB, CARD))


def to_panel(walk: Walk, panel: str) -> None:
    """The photographs of a panel."""
    open_photos(walk)
    walk.hand.panel(panel_name(panel))


def taken_in(walk: Walk) -> None:
    """Wait until the file was taken in; what is refused, or there already, says so."""
    if not walk.wait(lambda: "photos taken in" in walk.eyes.notice()):
        raise Stuck(f"the photo is not taken in; the notice line says: {walk.eyes.notice()}")
    if "1 of 1 photos" not in walk.eyes.notice():
        raise Unusable(f"the photo is not taken in: {walk.eyes.notice()}")


def add(walk: Walk, file: Path, panel: str, said: said_.AddPicture | said_.DrawnPicture) -> None:
    """Choose the file in the dialog. What shows no paint belongs to the car, on Arrival."""
    if said.shows == "test_section":
        add_half(walk, file)
        return
    if said.shows or not panel:
        arrival.page(walk, "Visit")
        walk.hand.pick("photo of", SHOWS[said.shows], CARD)
        walk.hand.press("Add photos of the car", CARD)
        walk.hand.choose_file(file)
        taken_in(walk)
        return
    to_panel(walk, panel)
    for _turn in range(TURNS):
        if walk.eyes.said_of("Taken when", CARD) == said.moment:
            break
        walk.hand.press("Taken when", CARD)
    else:
        if walk.eyes.said_of("Taken when", CARD) != said.moment:
            raise Unusable(f"no press leads to “{said.moment}”")
    before = len(walk.eyes.lines(PHOTOS)) if walk.eyes.has(PHOTOS, CARD) else 0
    walk.hand.press("Add photos to this panel", CARD)
    walk.hand.choose_file(file)
    taken_in(walk)
    walk.expect("photos", lambda: len(walk.eyes.lines(PHOTOS)), before + 1)
    if said.caption:
        walk.hand.choose(PHOTOS, f"photo {before + 1}: ")
        walk.hand.fill("what it shows", said.caption, CARD)


def add_half(walk: Walk, file: Path) -> None:
    """The next half of the newest trial's section on the panel in hand, the untouched one first."""
    trials.page(walk, "Story")
    walk.hand.panel(panel_name(walk.panel))
    here = [line for line in walk.eyes.lines(trials.STORY) if f", {panel_name(walk.panel)}, " in line]
    if not here:
        raise Unusable("there is no trial yet")
    walk.hand.choose(trials.STORY, here[-1].partition(",")[0] + ",")
    first = f"add the photo of the {UNTOUCHED}"
    walk.hand.press(first if walk.eyes.has(first, CARD) else f"add the photo of the {POLISHED}", CARD)
    walk.hand.choose_file(file)
    taken_in(walk)


def strike(walk: Walk) -> None:
    """Strike out the newest photograph of the panel in hand, or of the car where no panel is."""
    if walk.panel:
        to_panel(walk, walk.panel)
        lines = walk.eyes.lines(PHOTOS)
        walk.hand.choose(PHOTOS, f"photo {len(lines)}: ")
        walk.hand.press("Strike out this photo", CARD)
        rest = len(lines) - 1
        walk.expect("photos", lambda: len(walk.eyes.lines(PHOTOS)) if walk.eyes.has(PHOTOS, CARD) else 0, rest)
        return
    arrival.page(walk, "Visit")
    lines = walk.eyes.lines(OF_THE_CAR)
    walk.hand.choose(OF_THE_CAR, lines[-1])
    walk.hand.press("Strike out the chosen photo", CARD)
