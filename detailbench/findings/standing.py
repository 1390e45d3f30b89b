"""How a job stands, derived from what was done: never a state that is kept."""

from __future__ import annotations

from typing import Literal

from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture

Standing = Literal["arrived", "in_work", "handed_over"]


def standing_of(picture: JobPicture) -> Standing:
    """Arrived: nothing begun · in work: something was seen, measured or done · handed over: report closed, car gone."""
    visit = picture.visits[-1] if picture.visits else None
    if visit is not None and visit.left_at is not None and any(d.kind == "handover" for d in picture.documents):
        return "handed_over"
    if picture.marks or picture.readings or picture.trials or picture.runs or picture.state_notes:
        return "in_work"
    return "arrived"


def standing_words(picture: JobPicture) -> str:
    """The standing in words."""
    words = {"arrived": _("arrived"), "in_work": _("in work"), "handed_over": _("handed over")}
    return words[standing_of(picture)]
