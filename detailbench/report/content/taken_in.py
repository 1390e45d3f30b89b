"""A job that came as a file from another workshop: every document says so, on page one and inside."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.report.content.blocks import Fact
from detailbench.report.content.figures import moment_with_offset, number, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.papers import hash_figure
from detailbench.report.content.parts import Recorded, Text, said


def taken_in_facts(g: Gathered, *, whole: bool = False) -> tuple[Fact, ...]:
    """When the job was taken in and what that means for what is printed; none for the shop's own. ``whole``: with the
    journal it came with."""
    words = _(
        "Recorded in another workshop's book and taken in here on {at}. The workshop and the "
        "settings named on these pages are those of the workshop that printed them."
    )
    out: list[Text] = []
    for h in g.picture.histories:
        out.append(said(words, at=moment_with_offset(h.entered_at, recorded(h, "entered_at"))))
        if whole:
            out.append(
                said(
                    _("It came with its own journal: {n} entries, its last hash {hash}."),
                    n=number(h.entries, recorded(h, "entries"), 0),
                    hash=hash_figure(h.head, Recorded("history", (h.id,), "head")),
                )
            )
    return (Fact(_("Taken in"), tuple(out)),) if out else ()
