"""How a job stands, derived from what was done: never a state that is kept, and nothing branches on one."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from detailbench.basics.texts import _
from detailbench.findings.stop import Stop
from detailbench.record.begun import WORK
from detailbench.record.picture import JOB_KINDS, JobPicture, ShopPicture
from detailbench.record.things import Document, JobTurn, Visit

Standing = Literal[
    "arrived", "in_work", "paused", "handed_over", "fetched_early", "stopped_after_trial", "unfinished", "refused"
]
ENDS: tuple[Standing, ...] = ("fetched_early", "stopped_after_trial", "unfinished", "refused")
BEGUN = tuple(name for name, cls in JOB_KINDS.items() if cls in WORK)


def standing_of(picture: JobPicture) -> Standing:
    """Arrived: nothing begun · in work: something was washed, seen, measured or done · paused · handed over: report
    closed, car gone · or one of the ways a job ends otherwise. A car that came back begins a new visit: turns taken
    before it are over."""
    begun = any(getattr(picture, name) for name in BEGUN)
    return _standing(picture.visits, picture.documents, picture.turns, begun)


def standing_words(picture: JobPicture) -> str:
    """The standing in words."""
    return turn_words(standing_of(picture))


def standing_stops(picture: JobPicture) -> tuple[Stop, ...]:
    """What stands against a trial or a start as the job stands: the car is not here, the job has ended or is paused.
    What it was paused for may be the owner's answer: it is taken up again first, by no override and not by the way."""
    if picture.visits and picture.visits[-1].left_at is not None:
        return (Stop("ended", _("The car is not here: note its return first.")),)
    standing = standing_of(picture)
    if standing in ENDS:
        text = _("The job has ended ({turn}): take it up again first.")
        return (Stop("ended", text.format(turn=turn_words(standing))),)
    if standing == "paused":
        text = _("The job is paused ({reason}). Take it up again first: under Handover, “Goes on”, or on Jobs.")
        return (Stop("paused", text.format(reason=why_it_stands(picture).rstrip(".")), may_override=False),)
    return ()


def why_it_stands(picture: JobPicture) -> str:
    """The reason given for a pause or an end, where the job stands there; else empty."""
    turn = _last_turn(picture.visits, picture.turns)
    return turn.reason if turn is not None and turn.turn == standing_of(picture) else ""


def listed_standing(shop: ShopPicture, job_id: str, begun: frozenset[str]) -> Standing:
    """The same for a list, from the shop's picture and the jobs in which something was done (``Bench.begun_jobs``)."""
    visits = tuple(v for v in shop.visits if v.job_id == job_id)
    documents = tuple(d for d in shop.documents if d.job_id == job_id)
    turns = tuple(t for t in shop.turns if t.job_id == job_id)
    return _standing(visits, documents, turns, job_id in begun)


def listed_standing_words(shop: ShopPicture, job_id: str, begun: frozenset[str]) -> str:
    """The same in words."""
    return turn_words(listed_standing(shop, job_id, begun))


def _last_turn(visits: Sequence[Visit], turns: Sequence[JobTurn]) -> JobTurn | None:
    """The last turn of the visit that is on now."""
    return next((t for t in reversed(turns) if not visits or t.seq > visits[-1].seq), None)


def _standing(
    visits: Sequence[Visit], documents: Sequence[Document], turns: Sequence[JobTurn], begun: bool
) -> Standing:
    visit = visits[-1] if visits else None
    turn = _last_turn(visits, turns)
    for end in ENDS:
        if turn is not None and turn.turn == end:
            return end
    if visit is not None and visit.left_at is not None and any(d.kind == "handover" for d in documents):
        return "handed_over"
    if turn is not None and turn.turn == "paused":
        return "paused"
    return "in_work" if begun else "arrived"


def turn_words(turn: str) -> str:
    """A standing or a turn in words."""
    words = {
        "arrived": _("arrived"),
        "in_work": _("in work"),
        "paused": _("paused"),
        "resumed": _("goes on"),
        "handed_over": _("handed over"),
        "fetched_early": _("fetched early"),
        "stopped_after_trial": _("stopped after the trial"),
        "unfinished": _("given back unfinished"),
        "refused": _("refused"),
    }
    return words[turn]
