"""Where no trial may be made, and so none is proposed: the same rules that refuse to record one."""

from __future__ import annotations

from datetime import date

from detailbench.basics.texts import _
from detailbench.findings.cure import cure_of, cure_words
from detailbench.findings.gates import held_back, no_abrasive
from detailbench.findings.standing import standing_stops
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup


def no_trial_here(picture: JobPicture, group: FinishGroup, panel: str, day: date) -> str:
    """Why nothing is tried on this panel, or, with ``panel`` empty, on any panel of the group; empty where something
    may be. A person may set most of it aside with a reason; a proposal does not."""
    stands = standing_stops(picture)
    if stands:
        return _("No trial here. {why}").format(why=" ".join(s.sentence for s in stands))
    if cure_of(picture, group, day) == "not_cured":
        return _("No trial here. {why}").format(why=cure_words(picture, group, day))
    if panel in group.panels:
        stops = no_abrasive(picture, panel)
        return _("No trial here. {why}").format(why=" ".join(s.sentence for s in stops)) if stops else ""
    held = held_back(picture)
    if group.panels and all(p in held for p in group.panels):
        return _("No trial on these panels. {why}").format(why=" ".join(dict.fromkeys(held[p] for p in group.panels)))
    return ""
