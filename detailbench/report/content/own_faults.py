"""What went wrong on the workshop's own side, and which rules were set aside, for page one: counted, with where to
read on."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.report.content.blocks import Fact
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.gauge_checks import checks_failed
from detailbench.report.content.parts import Text, joined, said
from detailbench.report.content.wording import counted


def own_fault_facts(g: Gathered) -> tuple[Fact, ...]:
    """One row of page one, or none where nothing is recorded."""
    p = g.picture
    found = (
        (
            [m.id for m in p.mishaps],
            counted([m.id for m in p.mishaps], _("{n} mishap"), _("{n} mishaps")),
            _("What was agreed"),
        ),
        (
            checks_failed(g),
            counted(
                [c.session.id for c in checks_failed(g)], _("{n} gauge check failed"), _("{n} gauge checks failed")
            ),
            _("Gauges and checks"),
        ),
    )
    lines: list[Text] = [said(_("{what} (see {where})"), what=what, where=where) for any_, what, where in found if any_]
    return (Fact(_("Own faults"), (joined(lines, "; "),)),) if lines else ()


def set_aside_facts(g: Gathered) -> tuple[Fact, ...]:
    """The rules a person set aside, a row of their own on page one: a decision with a reason is no fault."""
    ids = [o.id for o in g.picture.overrides]
    one_, many = (
        _("{n} rule, by a person who gave a reason (see Work)."),
        _("{n} rules, each by a person who gave a reason (see Work)."),
    )
    return (Fact(_("Set aside"), (counted(ids, one_, many),)),) if ids else ()
