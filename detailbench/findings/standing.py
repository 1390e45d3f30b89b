"""How a job stands, derived from what was done: never a state that is kept."""

from __future__ import annotations

from typing import Literal

from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture, ShopPicture
from detailbench.record.things import Document, Visit

Standing = Literal["arrived", "in_work", "handed_over"]


def standing_of(picture: JobPicture) -> Standing:
    """Arrived: nothing begun · in work: something was seen, measured or done · handed over: report closed, car gone."""
    begun = bool(picture.marks or picture.readings or picture.trials or picture.runs or picture.state_notes)
    return _standing(picture.visits, picture.documents, begun)


def standing_words(picture: JobPicture) -> str:
    """The standing in words."""
    return _words(standing_of(picture))


def listed_standing_words(shop: ShopPicture, job_id: str, begun: frozenset[str]) -> str:
    """The same for a list, from the shop's picture and the jobs in which something was done (``Bench.begun_jobs``)."""
    visits = tuple(v for v in shop.visits if v.job_id == job_id)
    documents = tuple(d for d in shop.documents if d.job_id == job_id)
    return _words(_standing(visits, documents, job_id in begun))


def _standing(visits: tuple[Visit, ...], documents: tuple[Document, ...], begun: bool) -> Standing:
    visit = visits[-1] if visits else None
    if visit is not None and visit.left_at is not None and any(d.kind == "handover" for d in documents):
        return "handed_over"
    return "in_work" if begun else "arrived"


def _words(standing: Standing) -> str:
    return {"arrived": _("arrived"), "in_work": _("in work"), "handed_over": _("handed over")}[standing]
