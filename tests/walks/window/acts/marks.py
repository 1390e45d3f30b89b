"""The Marks stage."""

from __future__ import annotations

from detailbench.body.names import panel_name
from detailbench.body.outlines import load_outline
from detailbench.cli.walking.kinds import At
from detailbench.cli.walking.steps import marks as said_
from detailbench.marks.catalogue import kind as kind_of
from window.act import Act
from window.acts import arrival, photos, standing, trials
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
        asked = kind_of(said.kind).depth_asked
        if said.depth is not None and asked:
            walk.hand.answer(walk.eyes.name_like(f"depth {said.depth}: .*", CARD), CARD)
        elif asked:
            walk.hand.answer("depth not judged", CARD)
        if not walk.wait(lambda: marks_listed(walk) == before + 1):
            raise Stuck(f"the card says {marks_listed(walk)} marks, not {before + 1}")
        if said.depth is not None and not asked:
            open_last(walk)
            walk.hand.pick("depth", str(said.depth), CARD)
        if said.intent:
            open_last(walk)
            walk.hand.pick("intent", said.intent.replace("_", " "), CARD)


class CorrectLastMark(Act):
    step = said_.CorrectLastMark

    @staticmethod
    def play(said: said_.CorrectLastMark, walk: Walk) -> None:
        if said.kind is not None or said.note is not None:
            raise Stuck("kind and note of a mark cannot be corrected on the screen")
        begin(walk)
        open_last(walk)
        for title, value in (("severity", said.severity), ("depth", said.depth)):
            if value is not None:
                walk.hand.pick(title, str(value), CARD)
        if said.intent is not None:
            walk.hand.pick("intent", said.intent.replace("_", " "), CARD)


class Strike(Act):
    step = said_.Strike

    @staticmethod
    def play(said: said_.Strike, walk: Walk) -> None:
        if said.what == "mark":
            begin(walk)
            before = marks_listed(walk)
            open_last(walk)
            walk.hand.press("Strike out this mark", CARD)
            walk.expect("marks", lambda: marks_listed(walk), before - 1)
        elif said.what in ("damage", "repair", "limit", "remark", "bearer"):
            arrival.strike(walk, said.what)
        elif said.what == "reading":
            walk.hand.turn_to("Thickness")
            walk.hand.turn_card("Walk")
            walk.hand.panel(panel_name(walk.panel))
            taken = [line for line in walk.eyes.lines("Places of this panel") if not line.endswith("due")]
            walk.hand.choose("Places of this panel", taken[-1])
            walk.hand.press("Strike out the reading", CARD)
        elif said.what == "work":
            standing.strike_work(walk)
        elif said.what == "photo":
            photos.strike(walk)
        elif said.what == "trial":
            trials.strike(walk)
        else:
            raise Stuck(f"nobody has struck out a {said.what} on the screen yet")


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


def open_last(walk: Walk) -> None:
    """Open the mark entered last on the panel in hand."""
    walk.hand.press(walk.eyes.name_like(LIST_TAB, CARD), CARD)
    if walk.eyes.has("Back to the list", CARD):
        walk.hand.press("Back to the list", CARD)
    walk.hand.open_line("Marks on this panel", walk.eyes.lines("Marks on this panel")[-1])


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


def from_words_mm(panel: str, at: At) -> tuple[float, float]:
    """How far a place lies from where the panel's words stand, to the right and down, mm."""
    from detailbench.body.edges import EdgePosition, from_edges

    drawn = load_outline("estate").panels[panel]
    x, y, _moved = from_edges(
        drawn, EdgePosition(at.edge_a, at.a_mm, at.edge_b, at.b_mm, drawn.width_mm, drawn.height_mm)
    )
    return x - drawn.label[0], y - drawn.label[1]
