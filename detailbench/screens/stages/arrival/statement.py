"""The statement signed on arrival, as it is kept. Remarks are personal: they stand apart, above it."""

from __future__ import annotations

from datetime import datetime

from detailbench.basics.texts import _
from detailbench.findings.entered_later import arrival_entered
from detailbench.findings.parties import authority_of, bearer_for
from detailbench.record.picture import JobPicture
from detailbench.screens.stages.signing.words import role_words


def arrival_statement(picture: JobPicture, role: str, now: datetime) -> str:
    """As this role signs it today."""
    from detailbench.report.content.figures import day_words
    from detailbench.report.content.parts import Sayable, plain, typed
    from detailbench.report.content.standing import standing

    bearer = bearer_for(picture, "brings")
    authority = authority_of(picture, bearer).rstrip(".") if bearer is not None else ""
    later = arrival_entered(picture)
    late = "_late" if role != "workshop" and later is not None and later.after_work else ""
    parts: dict[str, Sayable] = {
        "day": day_words(now),
        "remarks": _("as noted above") if arrival_remarks(picture) else _("none"),
        "authority": typed(authority) or (_("somebody not noted"),),
    }
    return plain(standing(f"arrival{late}_{role}", **parts))


def arrival_remarks(picture: JobPicture) -> str:
    """Every remark of the arrival, each with who made it."""
    said = [(r.role, picture.said(r.id, "remarks")) for r in picture.remarks if r.moment == "arrival"]
    return "\n".join(f"{role_words(role)}: {words}" for role, words in said if words)


def first_to_sign(picture: JobPicture) -> str:
    """Who stands at the desk: the bearer where one brings the car."""
    return "bearer" if bearer_for(picture, "brings") is not None else "owner"
