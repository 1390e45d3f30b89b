"""The statement that is signed: word for word what the report will print."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture


def answer_words(answer: str) -> str:
    """The owner's answer on the screen."""
    return {
        "accepted": _("accepted"),
        "with_remarks": _("accepted with remarks"),
        "not_accepted": _("not accepted"),
    }[answer]


def statement(picture: JobPicture, role: str = "owner") -> str:
    """The handover statement of the newest answer as this role signs it; with none, the one with blanks."""
    from detailbench.report.content.accepting import signed_answer
    from detailbench.report.content.figures import day, recorded
    from detailbench.report.content.parts import plain, typed
    from detailbench.report.content.standing import standing

    if not picture.acceptances:
        return plain(standing("handover_open"))
    found = picture.acceptances[-1]
    return plain(
        standing(
            "handover_workshop" if role == "workshop" else "handover",
            day=day(found.entered_at, recorded(found, "entered_at")),
            light=typed(found.light) or (_("light that was not noted"),),
            answer=signed_answer(picture, found),
        )
    )
