"""The Marks stage."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.body.outlines import load_outline
from detailbench.cli.walking.kinds import At
from detailbench.cli.walking.steps import marks as said_
from detailbench.marks.catalogue import kind as kind_of
from window.act import Act
from window.stuck import Stuck
from window.walk import Walk

CARD = "Card"
LIST_TAB = r"Marks( \d+)?"


class NoteMark(Act):
    step = said_.NoteMark

    @staticmethod
    def play(said: said_.NoteMark, walk: Walk) -> None:
        begin(walk)
        before = marks_listed(walk)
        if said.at is not None:
            across, down = shares(walk.panel, said.at)
            walk.hand.place(panel_name(walk.panel), across, down)
        walk.hand.answer(f"kind: {kind_of(said.kind).name}", CARD)
        walk.hand.answer(walk.eyes.name_like(f"severity {said.severity}: .*", CARD), CARD)
        if said.depth is not None:
            walk.hand.answer(walk.eyes.name_like(f"depth {said.depth}: .*", CARD), CARD)
        elif kind_of(said.kind).depth_asked:
            walk.hand.answer("depth not judged", CARD)
        if not walk.wait(lambda: marks_listed(walk) == before + 1):
            raise Stuck(f"the card says {marks_listed(walk)} marks, not {before + 1}")
        if said.intent:
            walk.hand.press(walk.eyes.name_like(LIST_TAB, CARD), CARD)
            walk.hand.open_line("Marks on this panel", kind_of(said.kind).name)
            walk.hand.pick("intent", said.intent.replace("_", " "), CARD)
            walk.hand.press("Enter", CARD)


class LookNothing(Act):
    step = said_.LookNothing

    @staticmethod
    def play(said: said_.LookNothing, walk: Walk) -> None:
        begin(walk)
        walk.hand.answer("Looked, nothing seen", CARD)
        walk.eyes.expect("looked, nothing seen")


class LookAgain(Act):
    step = said_.LookAgain

    @staticmethod
    def play(said: said_.LookAgain, walk: Walk) -> None:
        begin(walk)
        walk.eyes.expect(f"{kind_of(said.kind).name}, severity now", CARD)
        walk.hand.answer(walk.eyes.name_like(f"severity {said.severity}: .*", CARD), CARD)


def begin(walk: Walk) -> None:
    """The stage and the panel, and the first lamp of the shop where none is in use."""
    walk.hand.turn_to("Marks")
    walk.hand.turn_card("Enter")
    walk.hand.panel(panel_name(walk.panel))
    if walk.eyes.says("which lamp is in use", CARD):
        lamps = [name for name in walk.eyes.names(CARD) if name.endswith(")")]
        walk.hand.answer(lamps[0], CARD)


def marks_listed(walk: Walk) -> int:
    """How many marks the card's tab says the panel has."""
    tab = walk.eyes.name_like(LIST_TAB, CARD)
    return int(tab.partition(" ")[2] or 0)


def shares(panel: str, at: At) -> tuple[float, float]:
    """Where a place lies, as shares of the panel's box on the drawing."""
    from detailbench.body.edges import EdgePosition, from_edges

    drawn = load_outline("estate").panels[panel]
    x, y, _moved = from_edges(
        drawn, EdgePosition(at.edge_a, at.a_mm, at.edge_b, at.b_mm, drawn.width_mm, drawn.height_mm)
    )
    x0, y0, x1, y1 = drawn.bounds
    return (x - x0) / (x1 - x0), (y - y0) / (y1 - y0)
