"""What went wrong on the workshop's own side, for page one: counted, with where to read on."""

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
        (
            p.overrides,
            counted([o.id for o in p.overrides], _("{n} rule set aside"), _("{n} rules set aside")),
            _("Work"),
        ),
    )
    lines: list[Text] = [said(_("{what} (see {where})"), what=what, where=where) for any_, what, where in found if any_]
    return (Fact(_("Own faults"), (joined(lines, "; "),)),) if lines else ()
