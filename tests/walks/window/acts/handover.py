"""The Handover stage."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.cli.walking.steps import handover as said_
from window.act import Act
from window.acts import papers
from window.walk import Walk

CARD = "Card"
ANSWERS = {"accepted": "accepted", "with_remarks": "accepted with remarks", "not_accepted": "not accepted"}


def _accepting(walk: Walk) -> None:
    page(walk, "Accept")
    walk.hand.pick("acceptance", "Signatures", CARD)


def _arriving(walk: Walk) -> None:
    walk.hand.turn_to("Arrival")
    walk.hand.turn_card("Signing")
    walk.hand.pick("on arrival", "Signatures", CARD)


MOMENTS = {"handover": _accepting, "arrival": _arriving}
WAYS = {"telephone": "by telephone", "message": "by message", "declined": "declined", "absent": "absent"}


class Protect(Act):
    step = said_.Protect

    @staticmethod
    def play(said: said_.Protect, walk: Walk) -> None:
        page(walk, "Protect")
        choose_panels(walk, "on", said.panels)
        walk.hand.pick("kind", said.kind, CARD)
        walk.hand.type_into("product", said.product, CARD)
        if said.batch:
            walk.hand.type_into("batch", said.batch, CARD)
        for name, quantity in (
            ("air, °C", said.air),
            ("humidity, %", said.humidity),
            ("surface, °C", said.surface),
            ("cure, as the sheet says, h", said.cure),
        ):
            if quantity is not None:
                walk.hand.fill(name, f"{quantity.value:g}", CARD)
        walk.hand.press("Enter the protection", CARD)
        walk.eyes.expect_notice("Protection entered")


class Accept(Act):
    step = said_.Accept

    @staticmethod
    def play(said: said_.Accept, walk: Walk) -> None:
        page(walk, "Accept")
        for panels, met in ((said.as_agreed, "yes"), (said.not_as_agreed, "no")):
            for panel in panels:
                walk.hand.pick("acceptance", "Sections", CARD)
                walk.hand.pick(f"as agreed, {panel_name(panel)}", met, CARD)
        walk.hand.pick("acceptance", "Answer", CARD)
        walk.hand.pick("the owner's word, the car looked at together", ANSWERS[said.answer], CARD)
        if said.remarks:
            walk.hand.type_into("remarks, printed as typed", said.remarks, CARD)
        if said.light:
            walk.hand.type_into("looked at under (lamp, daylight)", said.light, CARD)
        if said.level:
            walk.hand.pick("as agreed", {"met": "yes", "not_met": "no"}[said.level], CARD)
        walk.hand.press("Enter the answer", CARD)
        walk.eyes.expect(f": {ANSWERS[said.answer]}.", CARD)


class SignIt(Act):
    """A signature is drawn by the signer's own hand on the glass, whoever works the keys."""

    step = said_.SignIt

    @staticmethod
    def play(said: said_.SignIt, walk: Walk) -> None:
        MOMENTS[said.moment](walk)
        before = len(walk.eyes.lines("Signatures"))
        walk.hand.pick("who", said.role, CARD)
        if walk.eyes.said_of("name, as it is printed", CARD) != said.signer:
            walk.hand.fill("name, as it is printed", said.signer, CARD)
        if said.way == "drawn":
            own = said.role == "workshop"
            walk.hand.press("Sign" if own else "Hand the screen over to sign", CARD)
            walk.draw("Pad to sign on")
            walk.hand.press("Signed", "Page to sign")
            if not own:
                back = f"The workshop takes the screen back: who?: {walk.person}"
                walk.hand.press(back, "Page to sign")
        else:
            walk.hand.press(f"or answered otherwise: {WAYS[said.way]}", CARD)
        walk.expect("signatures", lambda: len(walk.eyes.lines("Signatures")), before + 1)


class CloseTheReport(Act):
    step = said_.CloseTheReport

    @staticmethod
    def play(said: said_.CloseTheReport, walk: Walk) -> None:
        papers.close(walk, "report")


class PrintReport(Act):
    step = said_.PrintReport

    @staticmethod
    def play(said: said_.PrintReport, walk: Walk) -> None:
        papers.PAPERS["report"].to_copy(walk)
        walk.hand.type_into("copy to", str(walk.beside / said.file), CARD)
        walk.hand.press("Copy the report out", CARD)
        walk.eyes.expect_notice("Copied to")


class VerifyFile(Act):
    step = said_.VerifyFile

    @staticmethod
    def play(said: said_.VerifyFile, walk: Walk) -> None:
        papers.PAPERS["report"].to_copy(walk)
        walk.hand.type_into("copy to", str(walk.beside / said.file), CARD)
        check_seal(walk)
        walk.eyes.expect(f"{said.file}: Not changed since it was closed", CARD)


class Leaves(Act):
    step = said_.Leaves

    @staticmethod
    def play(said: said_.Leaves, walk: Walk) -> None:
        page(walk, "Close")
        walk.hand.press("The car is fetched", CARD)


def choose_panels(walk: Walk, title: str, panels: tuple[str, ...]) -> None:
    """For which panels: the whole car, one that is chosen on the map, or those that were polished."""
    if panels == ("all",):
        walk.hand.pick(title, "whole car", CARD)
    elif len(panels) == 1:
        walk.hand.panel(panel_name(panels[0]))
        walk.hand.pick(title, "this panel", CARD)
    else:
        walk.hand.pick(title, "polished", CARD)


def page(walk: Walk, title: str) -> None:
    """Open a page of the Handover card."""
    walk.hand.turn_to("Handover")
    walk.hand.turn_card(title)


def check_seal(walk: Walk) -> None:
    """Have the seal checked and wait for the answer."""
    walk.hand.press("Check the seal", CARD)
    walk.eyes.control("Check the seal", CARD)
